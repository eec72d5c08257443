import { bandInput } from '../cast/bed.ts'
import { nobodyThere } from '../cast/bench-hours.ts'
import { windowsOf } from '../cast/windows.ts'
import { RESINS } from '../catalogue/resin.ts'
import { JUST_NOTICED } from '../colour/difference.ts'
import { decimals, formatC, formatMinutes } from '../quantity/format.ts'
import { fixedClock } from '../quantity/zone-clock.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import { runSlab } from '../resin/slab.ts'
import type { Check, Found } from './finding.ts'
import { intervalMin } from './interval.ts'
import { momentOf } from './moment.ts'
import { castInputOf } from './pour-depth.ts'
import { recoatPairs } from './recoat-window.ts'
import type { Work } from './work.ts'

/** Layers of one clear resin from which on it is a build-up rather than a first and a second pour. */
const LAYERS = 3
const WEEK_S = 7 * 24 * 3600

/** A clear build-up in many layers: its timetable beside the single pour, and what will be seen. */
export const layersSeen: Check = {
  id: 'layers-seen',
  about: 'a clear thickness built up in layers: its timetable, and that the edge shows them',
  cases: ['C51'],
  run: work => chains(work).flatMap(chain => one(work, chain))
}

interface Poured {
  readonly index: number
  readonly step: number
}

// Runs of castings that lie on one another, of one resin and the same pigments, through which one looks.
function chains(work: Work): Poured[][] {
  const out: Poured[][] = []
  const looks = (p: Poured) => {
    const { resin, tint, opaque, marbling } = work.piece.pours[p.index]!
    return opaque === true || marbling !== undefined
      ? null
      : JSON.stringify([resin, tint.map(t => t.pigment)])
  }
  for (const { below, next } of recoatPairs(work)) {
    if (looks(below) === null || looks(below) !== looks(next)) continue
    const chain = out.find(c => c.at(-1)!.index === below.index)
    if (chain === undefined) out.push([below, next])
    else chain.push(next)
  }
  return out.filter(c => c.length >= LAYERS)
}

function one(work: Work, chain: readonly Poured[]): Found[] {
  const [first, last] = [chain[0]!, chain.at(-1)!]
  const { at, id } = work.entries.pours[first.index]!
  const totalMm = chain.reduce((sum, p) => sum + work.stack.pours[p.index]!.depth, 0)
  const lastMin = intervalMin(work, first.step, last.step)
  const nights = chain.filter(p => atNight(work, p.step)).length
  const single = singlePour(work, first.index, totalMm)
  return [
    {
      severity: 'note',
      at,
      says: `from ${id} on, ${chain.length} layers of ${decimals(totalMm / chain.length, 1)} mm, one every ${formatMinutes(lastMin / (chain.length - 1))}: the last ${formatMinutes(lastMin)} after the first${nights === 0 ? '' : `, ${nights} of them at night`}. ${single} The layers will be seen from the edge; within the recoat window they show less.${bands(work, chain)}`,
      value: chain.length,
      unit: 'pours',
      basis:
        'waits of the plan; the single pour: slow casting class of the catalogue on the same mould base, cure model; that layers show from the edge: common practice; colours from the side: Kubelka-Munk, CIEDE2000',
      settledBy: 'two layers in a cup, looked at from the side'
    }
  ]
}

// Without a moment the first pour is made at nine.
function atNight(work: Work, step: number): boolean {
  const at = momentOf(work, step) ?? {
    ms: (9 * 60 + work.clock[step]!.startMin) * 60_000,
    clock: fixedClock(0)
  }
  return nobodyThere({ ...work.shop, hours: undefined }, at, 0) !== null
}

// Of one tint the colours are alike, and only the faces between are seen; of several each layer is a band of its own.
function bands(work: Work, chain: readonly Poured[]): string {
  const apart = Math.max(0, ...chain.slice(0, -1).map(p => work.appearance.pours[p.index]!.besideNext ?? 0))
  return apart < JUST_NOTICED
    ? ''
    : ` Their tints differ from the side by up to ${decimals(apart, 1)}, where 1 is just noticed: bands, which no window takes away.`
}

function singlePour(work: Work, index: number, depthMm: number): string {
  const deep = RESINS.find(r => r.use === 'deep')!
  const input = castInputOf(work)
  const { pour } = bandInput(input, index, [], work.casts[index]?.startC ?? 20, depthMm)
  const { resin: run } = runSlab(
    { ...pour, resin: deep.model!, rateFactor: 1, startC: pour.roomC },
    WEEK_S,
    'quick'
  )
  const { demould } = windowsOf(deep, run)
  const heat = run.peakC > RUNAWAY_ABOVE_C ? 'would run away' : `comes to ${formatC(run.peakC)}`
  return `In one pour a slow deep resin ${heat} and leaves the mould after about ${formatMinutes(demould.open)}.`
}
