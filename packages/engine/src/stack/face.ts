import type { Face, Piece, Pour } from '../piece/piece-schema.ts'
import { difference, intersection } from '../shape/combine.ts'
import { area } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Step } from '../steps/step.ts'
import { pourFace } from '../steps/step.ts'
import { clipMemo } from './clip-memo.ts'
import type { Side, StackEvent } from './event.ts'
import { solveLevel } from './free.ts'
import type { Geometry } from './geometry.ts'
import { breaksOf, integrate, levelCut, openArea } from './level-cut.ts'
import type { PourFacts } from './stack.ts'
import { sideOf } from './stack.ts'

/** One face: its height, and the layers behind dams that stand out from it. Heights z mm as cast. */
export interface FaceHeight {
  readonly plain: number
  readonly raised: readonly { readonly region: Region; readonly z: number }[]
}

/** Both faces after a step, and what the step did to them. */
export interface Faces {
  readonly low: FaceHeight
  readonly high: FaceHeight
  readonly event: StackEvent | null
}

/** Least area that counts as not covered, mm². */
const OPEN_MM2 = 1

/**
 * Heights of both faces after each step. No cut changes them, so they are found before the cuts are placed.
 *
 * A face is level at its highest place. Flattening and sanding take from there. A flood over the whole face lies
 * `depth` over the lowest place it covers, so it first fills what lies lower than the face; one kept to a region
 * by dams does the same there and stands out where it comes higher than the face.
 */
export function faceHeights(
  piece: Piece,
  g: Geometry,
  steps: readonly Step[],
  facts: readonly PourFacts[],
  casts: readonly StackEvent[],
  castHeight: number
): Faces[] {
  const uncut: StackEvent[] = [...casts]
  let low: FaceHeight = { plain: 0, raised: [] }
  let high: FaceHeight = { plain: castHeight, raised: [] }
  return steps.map(step => {
    let event: StackEvent | null = null
    const change = (side: Side, face: FaceHeight) => {
      if (side === 'low') low = face
      else high = face
    }
    if (step.kind === 'flatten' || step.kind === 'sand') {
      const side = sideOf(piece, step.face as Face)
      const before = side === 'low' ? low : high
      const z = outermost(before, side) + inwardOf(side) * (step.byMm ?? 0)
      change(side, {
        plain: inner(side, before.plain, z),
        raised: before.raised.map(r => ({ region: r.region, z: inner(side, r.z, z) }))
      })
      event = { kind: 'trim', side, z }
    } else if (step.kind === 'pour' && step.pour!.value.kind === 'flood') {
      const { index, value } = step.pour!
      const side = sideOf(piece, pourFace(value, piece))
      const face = side === 'low' ? low : high
      const region = g.pourRegions[index] ?? null
      const covered = region ?? g.outline
      const floor = lowestOf(g, uncut, side, covered, faceAt(face, side, region))
      const level = floodLevel(value, facts[index]!, g, uncut, side, covered, floor)
      event = {
        kind: 'flood',
        index,
        region,
        from: Math.min(floor, level),
        to: Math.max(floor, level)
      }
      if (region === null) {
        const plain = outer(side, face.plain, level)
        change(side, {
          plain,
          raised: face.raised.filter(r => r.z !== plain && outer(side, r.z, plain) === r.z)
        })
      } else if (outer(side, face.plain, level) !== face.plain) {
        change(side, { plain: face.plain, raised: [...face.raised, { region, z: level }] })
      }
    }
    if (event !== null) uncut.push(event)
    return { low, high, event }
  })
}

/** Height of a face at its outermost place. */
export function outermost(face: FaceHeight, side: Side): number {
  return face.raised.reduce((z, r) => outer(side, z, r.z), face.plain)
}

/** Height of a face where a region lies (null: anywhere): its highest place there. */
export function faceAt(face: FaceHeight, side: Side, region: Region | null): number {
  return face.raised.reduce(
    (z, r) => (region === null || intersection(r.region, region).rings.length > 0 ? outer(side, z, r.z) : z),
    face.plain
  )
}

/** Into the material from a face, along z. */
export function inwardOf(side: Side): 1 | -1 {
  return side === 'low' ? 1 : -1
}

function outer(side: Side, a: number, b: number): number {
  return side === 'low' ? Math.min(a, b) : Math.max(a, b)
}

function inner(side: Side, a: number, b: number): number {
  return side === 'low' ? Math.max(a, b) : Math.min(a, b)
}

/**
 * The lowest place of a face inside a region, seen from outside it, cuts and the holes of formers left aside:
 * level cuts are laid over each other from the face inward until nothing is open any more.
 */
function lowestOf(
  g: Geometry,
  events: readonly StackEvent[],
  side: Side,
  region: Region,
  face: number
): number {
  const inward = inwardOf(side)
  const stops = [face, ...breaksOf(g, events).filter(z => inward * (z - face) > 1e-9)]
  stops.sort((a, b) => inward * (a - b))
  let open = g.formers.reduce((rest, f) => difference(rest, f.region), region)
  for (let k = 0; k + 1 < stops.length; k++) {
    const [from, to] = [stops[k]!, stops[k + 1]!]
    for (const part of levelCut(g, events, (from + to) / 2)) open = difference(open, part.region)
    if (area(open) <= OPEN_MM2) return from
  }
  // Open right through somewhere: resin would run out there, so the depth is reckoned from the face.
  return face
}

function floodLevel(
  pour: Pour,
  facts: PourFacts,
  g: Geometry,
  events: readonly StackEvent[],
  side: Side,
  region: Region,
  floor: number
): number {
  if (pour.height !== undefined) return outer(side, floor, pour.height)
  if (pour.mass === undefined) return floor - inwardOf(side) * (pour.depth ?? 0)
  const outward = -inwardOf(side)
  const z = (height: number) => floor + outward * height
  const memo = clipMemo()
  const openAtHeight = (height: number) => openArea(g, events, region, z(height), memo)
  const volume = (height: number) =>
    integrate(g, events, Math.min(floor, z(height)), Math.max(floor, z(height)), at =>
      openArea(g, events, region, at, memo)
    )
  const filled = (pour.mass / facts.densityGMl) * 1000 * (1 - facts.levelFall)
  const height = solveLevel(volume, openAtHeight, filled, 0, filled / OPEN_MM2)
  return z(Number.isFinite(height) ? height : 0)
}
