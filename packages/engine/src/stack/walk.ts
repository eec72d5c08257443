import type { Entries } from '../piece/entry.ts'
import type { Piece, Pour } from '../piece/piece-schema.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Step } from '../steps/step.ts'
import { pourFace } from '../steps/step.ts'
import { castLevels, highest } from './cast-levels.ts'
import { cutDepth, endedAt, markDepth, removalOf, unmade } from './cut-depth.ts'
import type { Removal, Side, StackEvent } from './event.ts'
import type { Faces } from './face.ts'
import { faceAt, faceHeights, outermost } from './face.ts'
import { figureLines, figureOutlines } from './figure-lines.ts'
import type { Geometry } from './geometry.ts'
import { strokeAll } from './groove-region.ts'
import { inlay } from './inlay.ts'
import { integrate, openArea } from './level-cut.ts'
import { layerPour } from './pour.ts'
import { coatedArea } from './solid.ts'
import type { CutDepth, PourFacts, PourStack, Stack, State } from './stack.ts'
import { sideOf } from './stack.ts'

/**
 * Walks the steps and builds the stack: levels of the pours, faces after each step, floors of the cuts.
 *
 * Two passes. The first finds levels and faces, which no cut changes; the second places cuts, whose depth is
 * measured from the face that exists on their day, or from the finished face.
 *
 * Limits: a flood over open cuts is taken to bridge them, as if they were plugged (findings say when they are
 * not); figures of a marking are not in the stack, only its lines.
 * @throws InputProblem for a mass that the mould cannot hold
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
  const faces = faceHeights(piece, geometry, steps, facts, casts.events, castHeight)
  const untouched = { plain: 0, raised: [] }
  const last: Faces = faces[faces.length - 1] ?? {
    low: untouched,
    high: { plain: castHeight, raised: [] },
    event: null
  }
  const events: StackEvent[] = [...casts.events]
  const states: State[] = []
  const pours: (PourStack | undefined)[] = [...casts.pours]
  const cuts: CutDepth[] = piece.cuts.map((c, index) => unmade(index, sideOf(piece, c.face)))
  const markings: CutDepth[] = piece.markings.map((m, index) => unmade(index, sideOf(piece, m.face)))
  const removals = new Map<number, Removal>()
  const marks = new Map<number, readonly Removal[]>()
  const open = new Set<number>()
  const poured: number[] = []
  let happened = 0
  steps.forEach((step, i) => {
    const now = faces[i]!
    const low = outermost(now.low, 'low')
    const high = outermost(now.high, 'high')
    // Where a face has no raised layers, the plan of what is cut does not matter.
    const zOf = (side: Side, plan: () => Region) =>
      now[side].raised.length === 0 ? now[side].plain : faceAt(now[side], side, plan())
    const endOf = (side: Side, plan: () => Region) =>
      last[side].raised.length === 0 ? last[side].plain : faceAt(last[side], side, plan())
    const planOfCut = (index: number) => () =>
      geometry.cutRegions[index] ?? planOf(geometry.cutLines[index]!, piece.cuts[index]!.width)
    const farFace = (side: Side) => (side === 'low' ? high : low)
    if (step.kind === 'demould') {
      events.push({ kind: 'demould' })
    } else if (step.kind === 'flatten' || step.kind === 'sand') {
      events.push(now.event!)
    } else if (step.kind === 'cut') {
      const { index, value } = step.cut!
      const side = sideOf(piece, value.face)
      const plan = planOfCut(index)
      const depth = cutDepth(value, index, side, zOf(side, plan), endOf(side, plan), step)
      cuts[index] = depth
      const removal = removalOf(value, geometry, index, side, depth)
      removals.set(index, removal)
      open.add(index)
      events.push({ kind: 'cut', index, removal })
    } else if (step.kind === 'mark') {
      const { index, value } = step.marking!
      const side = sideOf(piece, value.face)
      const lines = [...geometry.markingLines[index]!, ...figureLines(value)]
      const plan = () => planOf(lines, value.width)
      const depth = markDepth(value, index, side, zOf(side, plan), endOf(side, plan), step)
      markings[index] = depth
      const removal: Removal = {
        side,
        floor: depth.floor,
        region: null,
        lines,
        profile: { kind: 'v', widthMm: value.width, angleDeg: value.angle }
      }
      const outlines = figureOutlines(value, side, endOf(side, plan))
      const cut = outlines === null ? [removal] : [removal, outlines]
      marks.set(index, cut)
      for (const r of cut) events.push({ kind: 'mark', index, removal: r })
    } else if (step.kind === 'fill') {
      const { index, value } = step.marking!
      const cut = marks.get(index)
      const side = sideOf(piece, value.face)
      if (cut) {
        const z = zOf(side, () => planOf(cut[0]!.lines!, value.width))
        events.push({
          kind: 'fill',
          what: 'marking',
          index,
          removals: cut.map(r => endedAt(r, farFace(side))),
          side,
          z
        })
      }
    } else if (step.kind === 'pour') {
      const { index, value } = step.pour!
      poured.push(index)
      if (value.kind === 'inlay') {
        const side = sideOf(piece, pourFace(value, piece))
        const filled = entries.cuts.filter(c => value.into!.includes(c.id)).map(c => c.index)
        const holes = filled.flatMap(k => removals.get(k) ?? []).map(r => endedAt(r, farFace(side)))
        const z = Math[side === 'low' ? 'min' : 'max'](...filled.map(k => zOf(side, planOfCut(k))))
        const done = inlay(index, value, facts[index]!, geometry, events, holes, side, z)
        pours[index] = done.pour
        for (const k of filled) open.delete(k)
        events.push({ kind: 'fill', what: 'pour', index, removals: holes, side, z: done.z })
      } else if (value.kind === 'seal') {
        const surface = geometry.timbers.reduce((sum, t) => sum + coatedArea(t), 0)
        pours[index] = layerPour(index, value, facts[index]!, surface, null, { from: 0, to: 0 })
      } else if (now.event?.kind === 'flood') {
        const { from, to } = now.event
        const region = geometry.pourRegions[index] ?? geometry.outline
        const filled = integrate(geometry, events, from, to, at => openArea(geometry, events, region, at))
        const side = sideOf(piece, pourFace(value, piece))
        pours[index] = layerPour(index, value, facts[index]!, area(region), side, { from, to }, filled)
        events.push(now.event)
      }
    }
    happened = Math.max(happened, casts.after[i]!)
    states.push({
      step,
      // Nothing is worked before all is set and poured, unless the order is at fault.
      events: events.length > casts.events.length ? events.length : happened,
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
    pours: piece.pours.map((p, i) => pours[i] ?? unpoured(i, p, facts[i]!)),
    cuts,
    markings,
    castHeight,
    finishedLow: outermost(last.low, 'low'),
    finishedHigh: outermost(last.high, 'high')
  }
}

// A pour that no step makes.
function unpoured(index: number, pour: Pour, facts: PourFacts): PourStack {
  return layerPour(index, { ...pour, mass: undefined }, facts, 0, null, { from: 0, to: 0 }, 0)
}

// Where lines run, about as wide as they are cut.
function planOf(lines: readonly Float64Array[], widthMm: number | undefined): Region {
  return strokeAll(lines, widthMm ?? 1, 0.1)
}
