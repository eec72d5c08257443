import type { Entries } from '../piece/entry.ts'
import type { Cut, Face, Marking, Piece } from '../piece/piece-schema.ts'
import { intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Step } from '../steps/step.ts'
import type { Removal, Side, StackEvent } from './event.ts'
import { removalsAt } from './event.ts'
import type { Geometry } from './geometry.ts'
import { vDepthMm } from './groove.ts'
import { integrate } from './level-cut.ts'
import { castPour, inlayPour, layerPour } from './pour.ts'
import { coatedArea } from './solid.ts'
import type { CutDepth, PourFacts, PourStack, Stack, State } from './stack.ts'
import { sideOf } from './stack.ts'
import { topRange } from './top.ts'

/**
 * Walks the steps and builds the stack: levels of the pours, faces after each step, floors of the cuts.
 *
 * Two passes. The first finds levels and faces, which no cut changes; the second places cuts, whose depth is
 * measured from the face that exists on their day, or from the finished face.
 */
export function walk(
  piece: Piece,
  entries: Entries,
  geometry: Geometry,
  steps: readonly Step[],
  facts: readonly PourFacts[]
): Stack {
  const casts = castLevels(piece, geometry, steps, facts)
  const castHeight = highest(geometry, casts.events)
  const faces = faceHeights(piece, steps, castHeight)
  const last = faces[faces.length - 1] ?? { low: 0, high: castHeight }
  const events: StackEvent[] = [...casts.events]
  const states: State[] = []
  const pours: (PourStack | undefined)[] = [...casts.pours]
  const cuts: CutDepth[] = piece.cuts.map((c, index) => unmade(index, sideOf(piece, c.face)))
  const markings: CutDepth[] = piece.markings.map((m, index) => unmade(index, sideOf(piece, m.face)))
  const removals = new Map<number, Removal>()
  const marks = new Map<number, Removal>()
  const open = new Set<number>()
  const poured: number[] = []
  let happened = 0
  let out = false
  steps.forEach((step, i) => {
    const { low, high } = faces[i]!
    const zOf = (side: Side) => (side === 'low' ? low : high)
    if (
      step.kind === 'set timber' ||
      (step.kind === 'pour' && step.pour!.value.kind === 'cast') ||
      step.kind === 'make mould'
    ) {
      happened = Math.max(happened, casts.after[i] ?? happened)
      if (step.kind === 'pour') poured.push(step.pour!.index)
    } else if (step.kind === 'demould') {
      out = true
      events.push({ kind: 'demould' })
    } else if (step.kind === 'flatten' || step.kind === 'sand') {
      const side = sideOf(piece, step.face as Face)
      events.push({ kind: 'trim', side, z: zOf(side) })
    } else if (step.kind === 'cut') {
      const { index, value } = step.cut!
      const side = sideOf(piece, value.face)
      const depth = cutDepth(value, index, side, zOf(side), last, step)
      cuts[index] = depth
      const removal = removalOf(value, geometry, index, side, depth)
      removals.set(index, removal)
      open.add(index)
      events.push({ kind: 'cut', index, removal })
    } else if (step.kind === 'mark') {
      const { index, value } = step.marking!
      const side = sideOf(piece, value.face)
      const depth = markDepth(value, index, side, zOf(side), last, step)
      markings[index] = depth
      const removal: Removal = {
        side,
        floor: depth.floor,
        region: null,
        lines: geometry.markingLines[index]!,
        profile: { kind: 'v', widthMm: value.width, angleDeg: value.angle }
      }
      marks.set(index, removal)
      events.push({ kind: 'mark', index, removal })
    } else if (step.kind === 'fill') {
      const { index, value } = step.marking!
      const removal = marks.get(index)
      const side = sideOf(piece, value.face)
      if (removal)
        events.push({ kind: 'fill', what: 'marking', index, removals: [removal], side, z: zOf(side) })
    } else if (step.kind === 'pour') {
      const { index, value } = step.pour!
      poured.push(index)
      if (value.kind === 'inlay') {
        const side = sideOf(piece, value.face ?? 'front')
        const filled = entries.cuts.filter(c => value.into!.includes(c.id)).map(c => c.index)
        const holes = filled.flatMap(k => removals.get(k) ?? [])
        const z = zOf(side)
        const deepest = Math.max(0, ...filled.map(k => cuts[k]!.day ?? high - low))
        const volume =
          holes.length === 0
            ? 0
            : integrate(geometry, events, low, high, at =>
                area(intersection(geometry.outline, removalsAt(holes, at)))
              )
        pours[index] = inlayPour(
          index,
          value,
          facts[index]!,
          volume,
          deepest,
          z,
          side,
          holes.length === 0 ? 0 : area(removalsAt(holes, side === 'low' ? z + 1e-6 : z - 1e-6))
        )
        for (const k of filled) open.delete(k)
        events.push({ kind: 'fill', what: 'pour', index, removals: holes, side, z })
      } else if (value.kind === 'seal') {
        const surface = geometry.timbers.reduce((sum, t) => sum + coatedArea(t), 0)
        pours[index] = layerPour(index, value, facts[index]!, surface, null, { from: 0, to: 0 })
      } else if (value.kind === 'flood') {
        const side = sideOf(piece, value.face ?? 'front')
        const region = geometry.pourRegions[index] ?? geometry.outline
        // The face already stands at its new height: the layer lies below it.
        const thick = (value.depth ?? value.height ?? 0) || 0
        const layer = layerPour(
          index,
          value,
          facts[index]!,
          area(region),
          side,
          side === 'low' ? { from: low, to: low + thick } : { from: high - thick, to: high }
        )
        pours[index] = layer
        events.push({
          kind: 'flood',
          index,
          region: geometry.pourRegions[index] ?? null,
          from: side === 'low' ? low : high - thick,
          to: side === 'low' ? low + thick : high
        })
      }
    }
    states.push({
      step,
      events: out ? events.length : happened,
      lowZ: low,
      highZ: high,
      open: [...open],
      poured: [...poured]
    })
  })
  return {
    piece,
    entries,
    geometry,
    steps,
    events,
    states,
    pours: piece.pours.map((p, i) => pours[i] ?? layerPour(i, p, facts[i]!, 0, null, { from: 0, to: 0 })),
    cuts,
    markings,
    castHeight,
    finishedLow: last.low,
    finishedHigh: last.high
  }
}

/** Timbers, formers and pours into the mould, in order, with the levels they come to. */
function castLevels(piece: Piece, g: Geometry, steps: readonly Step[], facts: readonly PourFacts[]) {
  const events: StackEvent[] = []
  const pours: (PourStack | undefined)[] = []
  const after: (number | undefined)[] = []
  const set = new Set<number>()
  steps.forEach((step, i) => {
    if (step.kind === 'make mould') {
      g.formers.forEach((f, index) => {
        events.push({ kind: 'former', index, from: f.from, to: f.to ?? Number.MAX_VALUE })
      })
    } else if (step.kind === 'set timber') {
      for (const index of step.timber ? [step.timber.index] : g.timbers.keys()) {
        if (!set.has(index)) events.push({ kind: 'timber', index })
        set.add(index)
      }
    } else if (step.kind === 'pour' && step.pour!.value.kind === 'cast') {
      const { index, value } = step.pour!
      const region = g.pourRegions[index] ?? null
      const first = !events.some(e => e.kind === 'pour')
      const gap = first
        ? piece.timbers.reduce(
            (sum, t, k) => sum + (set.has(k) ? (area(g.timbers[k]!.lower) * t.level) / 2 : 0),
            0
          )
        : 0
      const pour = castPour(index, value, facts[index]!, g, events, region, gap)
      pours[index] = pour
      events.push({ kind: 'pour', index, region, to: pour.level })
    }
    after[i] = events.length
  })
  return { events, pours, after }
}

function highest(g: Geometry, events: readonly StackEvent[]): number {
  let top = 0
  for (const e of events) {
    if (e.kind === 'pour') top = Math.max(top, e.to)
    if (e.kind === 'timber') {
      const t = g.timbers[e.index]!
      const within = intersection(t.upper, g.outline)
      if (within.rings.length > 0) top = Math.max(top, topRange(t.top, within.rings).high)
    }
  }
  return top
}

/** Heights of both faces after each step. */
function faceHeights(
  piece: Piece,
  steps: readonly Step[],
  castHeight: number
): { low: number; high: number }[] {
  let low = 0
  let high = castHeight
  return steps.map(step => {
    const change = (side: Side, outward: number) => {
      if (side === 'low') low -= outward
      else high += outward
    }
    if (step.kind === 'flatten' || step.kind === 'sand')
      change(sideOf(piece, step.face as Face), -(step.byMm ?? 0))
    if (step.kind === 'pour' && step.pour!.value.kind === 'flood') {
      const { value } = step.pour!
      if (value.region === undefined)
        change(sideOf(piece, value.face ?? 'front'), value.depth ?? value.height ?? 0)
    }
    return { low, high }
  })
}

function unmade(index: number, side: Side): CutDepth {
  return {
    index,
    day: null,
    finished: null,
    floor: side === 'low' ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY,
    side,
    step: null,
    faceZ: 0
  }
}

// "low" cuts reach up from the low face, "high" cuts down from the high one.
function cutDepth(
  cut: Cut,
  index: number,
  side: Side,
  faceZ: number,
  last: { low: number; high: number },
  step: Step
): CutDepth {
  const inward = side === 'low' ? 1 : -1
  const endZ = side === 'low' ? last.low : last.high
  if (cut.through) {
    return { index, day: null, finished: null, floor: inward * Number.POSITIVE_INFINITY, side, step, faceZ }
  }
  const floor = cut.depth !== undefined ? faceZ + inward * cut.depth : endZ + inward * cut.finishedDepth!
  return { index, day: inward * (floor - faceZ), finished: inward * (floor - endZ), floor, side, step, faceZ }
}

function markDepth(
  marking: Marking,
  index: number,
  side: Side,
  faceZ: number,
  last: { low: number; high: number },
  step: Step
): CutDepth {
  const inward = side === 'low' ? 1 : -1
  const endZ = side === 'low' ? last.low : last.high
  const floor = endZ + inward * vDepthMm(marking.width, marking.angle)
  return { index, day: inward * (floor - faceZ), finished: inward * (floor - endZ), floor, side, step, faceZ }
}

function removalOf(cut: Cut, g: Geometry, index: number, side: Side, depth: CutDepth): Removal {
  const region = g.cutRegions[index] ?? null
  if (region !== null) return { side, floor: depth.floor, region, lines: null, profile: null }
  return {
    side,
    floor: depth.floor,
    region: null,
    lines: g.cutLines[index]!,
    profile: { kind: cut.profile, widthMm: cut.width ?? 0, angleDeg: cut.angle }
  }
}
