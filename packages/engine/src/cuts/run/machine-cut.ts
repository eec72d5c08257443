import type { Materials } from '../../cast/facts.ts'
import type { Entry } from '../../piece/entry.ts'
import type { Shop } from '../../piece/shop-schema.ts'
import { bounds, inside } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { coresAfter } from '../../stack/core.ts'
import type { CutDepth, Stack } from '../../stack/stack.ts'
import type { CutterChoice, NoCutter } from './choose.ts'
import { chooseCutter } from './choose.ts'
import { COLD_C } from './cold.ts'
import type { Cutter, CutterBox } from './cutters.ts'
import { cuttersOf } from './cutters.ts'
import type { CutRun } from './feeds.ts'
import { feedsFor } from './feeds.ts'
import type { MachineNeed } from './machine-need.ts'
import { grooveNeed, markingNeed, shapeNeed } from './machine-need.ts'
import type { Met } from './met.ts'
import { metOf, metOnce } from './met.ts'

/** One cut of the machine with the cutter that is taken and how it is run. */
export interface MachineCut {
  /** JSON Pointer to the cut, the marking, or what the flattening comes from. */
  readonly at: string
  readonly id: string
  readonly of: 'cut' | 'marking' | 'flatten'
  /** Index of its step; of a flattening the first. */
  readonly step: number
  readonly need: MachineNeed['need']
  readonly met: readonly Met[]
  readonly choice: CutterChoice | NoCutter | { readonly unknown: string }
  /** null where there is no cutter. */
  readonly run: CutRun | null
}

/** What the machine cuts, with what; empty without a machine in the shop. */
export interface MachineCuts {
  readonly box: CutterBox
  readonly cuts: readonly MachineCut[]
}

/** Depth for a face that is flattened to where it stands already, mm: one light pass. */
const LIGHT_MM = 0.5
/** Walls may be off by so much, mm: a cutter bends no more than a third of it. */
const TOLERANCE_MM = 0.1
/** Places along each side of the box of a region, and along lines, at which its core is asked. */
const ACROSS = 5
const ALONG = 12

/** No paths are made here: what is found answers at every edit, in a millisecond or so a cut. */
export function machineCutsOf(
  stack: Stack,
  materials: Pick<Materials, 'timbers'>,
  shop: Pick<Shop, 'machine' | 'cutters' | 'climate'>
): MachineCuts {
  const { machine } = shop
  if (machine === undefined) return { box: { cutters: [], says: null, unknown: [] }, cuts: [] }
  const box = cuttersOf(shop)
  const out: MachineCut[] = []
  const add = (
    of: Pick<MachineCut, 'at' | 'id' | 'of' | 'step'> & { readonly cutter?: string | undefined },
    { need, operation }: MachineNeed,
    met: readonly Met[]
  ) => {
    const { cutter: named, ...rest } = of
    const choice = chosen(named, need, box.cutters)
    const run =
      'cutter' in choice
        ? feedsFor({
            cutter: choice.cutter,
            met,
            operation,
            machine,
            depthMm: need.depthMm,
            tolMm: TOLERANCE_MM,
            light: shop.climate.day < COLD_C
          })
        : null
    out.push({ ...rest, need, met, choice, run })
  }
  const { geometry, entries } = stack
  for (const c of entries.cuts) {
    const depth = stack.cuts[c.index]!
    if (c.value.way !== 'machine' || depth.step === null) continue
    const deep = depthMm(stack, depth)
    const region = geometry.cutRegions[c.index] ?? null
    const lines = geometry.cutLines[c.index] ?? null
    const need = region === null ? grooveNeed(c.value, deep) : shapeNeed(c.value, region, deep, box.cutters)
    if (need === null || deep <= 0) continue
    const places = region === null ? placesAlong(lines ?? []) : placesIn(region)
    add(
      { at: c.at, id: c.id, of: 'cut', step: stack.steps.indexOf(depth.step), cutter: c.value.cutter },
      need,
      metAt(stack, depth, places, materials)
    )
  }
  for (const m of entries.markings) {
    const depth = stack.markings[m.index]!
    if (m.value.way !== 'machine' || depth.step === null || depth.day === null || depth.day <= 0) continue
    const met = metAt(stack, depth, placesAlong(geometry.markingLines[m.index]!), materials)
    add(
      { at: m.at, id: m.id, of: 'marking', step: stack.steps.indexOf(depth.step), cutter: namedBy(m) },
      markingNeed(m.value, depth.day),
      met
    )
  }
  // Both faces with one bit: the first flattening stands for both.
  const first = stack.steps.findIndex(s => s.kind === 'flatten')
  const flatten = stack.steps[first]
  if (flatten !== undefined) {
    const [before, after] = [stack.states[first - 1], stack.states[first]!]
    const off = (before?.highZ ?? after.highZ) - after.highZ + after.lowZ - (before?.lowZ ?? after.lowZ)
    const met = metFlat(stack, materials)
    const need = { kind: 'flatten', depthMm: off > 0 ? off : LIGHT_MM } as const
    add({ at: flatten.at, id: flatten.says, of: 'flatten', step: first }, { need, operation: 'flatten' }, met)
  }
  return { box, cuts: out }
}

function chosen(
  named: string | undefined,
  need: MachineNeed['need'],
  cutters: readonly Cutter[]
): MachineCut['choice'] {
  if (named === undefined) return chooseCutter(need, cutters)
  const cutter = cutters.find(c => c.id === named)
  if (cutter === undefined) return { unknown: named }
  // Another form may be meant; one that does not go in or does not reach is not.
  const fits = chooseCutter(need, [cutter])
  return 'none' in fits && fits.none.reason !== 'kind'
    ? fits
    : { cutter, why: 'named in the piece', limits: [] }
}

function namedBy(marking: Entry<unknown>): string | undefined {
  const { cutter } = marking.value as { cutter?: string }
  return cutter
}

// From the face of the day to the floor; right through: to the face on the other side.
function depthMm(stack: Stack, { day, step, side, faceZ }: CutDepth): number {
  if (day !== null) return day
  const before = stack.states[stack.steps.indexOf(step!)]
  const [low, high] = [before?.lowZ ?? 0, before?.highZ ?? stack.castHeight]
  return side === 'low' ? high - faceZ : faceZ - low
}

type Place = readonly [x: number, y: number]

function metAt(
  stack: Stack,
  depth: CutDepth,
  places: readonly Place[],
  materials: Pick<Materials, 'timbers'>
): Met[] {
  const i = stack.steps.indexOf(depth.step!)
  const count = [stack.states[i - 1]?.events ?? 0]
  const [low, high] = depth.side === 'low' ? [depth.faceZ, depth.floor] : [depth.floor, depth.faceZ]
  return metOnce(
    places.flatMap(([x, y]) =>
      coresAfter(stack.geometry, stack.events, x, y, count)[0]!
        .filter(p => p.to > low + 1e-6 && p.from < high - 1e-6)
        .map(p => metOf(p.material, materials.timbers))
    )
  )
}

// A flattened face is all that reaches it: every timber and, where anything is poured, resin.
function metFlat(stack: Stack, materials: Pick<Materials, 'timbers'>): Met[] {
  const timbers = stack.entries.timbers.map(t => metOf({ kind: 'timber', index: t.index }, materials.timbers))
  const cast = stack.entries.pours.filter(p => p.value.kind === 'cast')
  return metOnce([...timbers, ...cast.map(p => metOf({ kind: 'pour', index: p.index }, materials.timbers))])
}

function placesIn(region: Region): Place[] {
  const b = bounds(region)
  const out: Place[] = []
  for (let i = 0; i < ACROSS; i++) {
    for (let j = 0; j < ACROSS; j++) {
      const x = b.minX + ((i + 0.5) * (b.maxX - b.minX)) / ACROSS
      const y = b.minY + ((j + 0.5) * (b.maxY - b.minY)) / ACROSS
      if (inside(region, x, y)) out.push([x, y])
    }
  }
  // A frame round the piece holds few places of the grid.
  for (const ring of region.rings)
    for (let k = 0; k < ring.length; k += 2 * Math.max(1, Math.floor(ring.length / 2 / ALONG)))
      out.push([ring[k]!, ring[k + 1]!])
  return out
}

function placesAlong(lines: readonly Float64Array[]): Place[] {
  const points = lines.flatMap(line => {
    const out: Place[] = []
    for (let k = 0; k + 3 < line.length; k += 2)
      out.push([line[k]!, line[k + 1]!], [(line[k]! + line[k + 2]!) / 2, (line[k + 1]! + line[k + 3]!) / 2])
    return out
  })
  const every = Math.max(1, Math.floor(points.length / (2 * ALONG)))
  return points.filter((_, i) => i % every === 0)
}
