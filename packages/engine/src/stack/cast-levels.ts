import type { Piece } from '../piece/piece-schema.ts'
import { intersection } from '../shape/combine.ts'
import { area, inside } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Step } from '../steps/step.ts'
import { needsMould } from '../steps/step.ts'
import type { StackEvent } from './event.ts'
import type { Geometry } from './geometry.ts'
import { boxInside } from './placement.ts'
import { castPour } from './pour.ts'
import type { PourFacts, PourStack } from './stack.ts'
import { topRange } from './top.ts'

/**
 * Timbers, formers and pours into the mould, in order, with the levels they come to. Boards that are set in no
 * mould are there once they are prepared, those that nobody prepares from the start.
 */
export function castLevels(piece: Piece, g: Geometry, steps: readonly Step[], facts: readonly PourFacts[]) {
  const events: StackEvent[] = []
  const pours: (PourStack | undefined)[] = []
  const after: number[] = []
  const set = new Set<number>()
  const gaps = new Map<number, number>()
  const bare = !needsMould(piece) && !steps.some(s => s.kind === 'set timber')
  const prepared = (index: number) =>
    steps.some(s => s.kind === 'prepare timber' && (s.timber === undefined || s.timber.index === index))
  const place = (index: number) => {
    if (set.has(index)) return
    events.push({ kind: 'timber', index })
    set.add(index)
  }
  if (bare) for (const index of g.timbers.keys()) if (!prepared(index)) place(index)
  for (const step of steps) {
    if (step.kind === 'make mould') {
      g.formers.forEach((f, index) => {
        events.push({ kind: 'former', index, from: f.from, to: f.to ?? Number.MAX_VALUE })
      })
    } else if (bare && step.kind === 'prepare timber') {
      for (const index of step.timber ? [step.timber.index] : g.timbers.keys()) place(index)
    } else if (step.kind === 'set timber') {
      for (const index of step.timber ? [step.timber.index] : g.timbers.keys()) {
        if (set.has(index)) continue
        place(index)
        // What lies hollow is on average half as far off as at its worst.
        const gap = (area(g.timbers[index]!.lower) * piece.timbers[index]!.level) / 2
        if (gap > 0) gaps.set(index, gap)
      }
    } else if (step.kind === 'pour' && step.pour!.value.kind === 'cast') {
      const { index, value } = step.pour!
      const region = g.pourRegions[index] ?? null
      const gap = gapUnder(g, events, region, gaps)
      const pour = castPour(index, value, facts[index]!, g, events, region, gap)
      pours[index] = pour
      const measured = facts[index]!.measuredMm ?? null
      const built = measured !== null && pour.level === measured
      events.push({ kind: 'pour', index, region, to: pour.level, ...(built ? { built } : {}) })
    }
    after.push(events.length)
  }
  return { events, pours, after }
}

// The gaps that the next pour creeps into: under timbers that lie on the floor it covers. Each is filled once.
function gapUnder(
  g: Geometry,
  events: readonly StackEvent[],
  region: Region | null,
  gaps: Map<number, number>
): number {
  const meets = (a: Region, b: Region | null) => b === null || intersection(a, b).rings.length > 0
  let filled = 0
  for (const e of events)
    if (e.kind === 'pour' && (e.region === null || meets(e.region, region))) filled = Math.max(filled, e.to)
  let sum = 0
  for (const [index, gap] of gaps) {
    const t = g.timbers[index]!
    if (t.base > filled + 1e-6) continue
    if (!meets(t.lower, region)) continue
    sum += gap
    gaps.delete(index)
  }
  return sum
}

/** The highest place of a casting inside the outline, mm as cast. */
export function highest(g: Geometry, events: readonly StackEvent[]): number {
  let top = 0
  for (const e of events) {
    if (e.kind === 'pour') top = Math.max(top, e.to)
    if (e.kind === 'timber') {
      const t = g.timbers[e.index]!
      if (t.high <= top) continue
      if (boxInside(t.bounds, g.outline) || (t.top.kind === 'flat' && anyCornerInside(t.upper, g.outline)))
        top = t.high
      else {
        const within = intersection(t.upper, g.outline)
        if (within.rings.length > 0) top = Math.max(top, topRange(t.top, within.rings).high)
      }
    }
  }
  return top
}

// A flat top stands as high everywhere: one corner inside tells as much as the clip.
function anyCornerInside(region: Region, outline: Region): boolean {
  return region.rings.some(ring => {
    for (let k = 0; k < ring.length; k += 2) if (inside(outline, ring[k]!, ring[k + 1]!)) return true
    return false
  })
}
