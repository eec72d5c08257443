import type { Face } from '../piece/piece-schema.ts'
import { decimals } from '../quantity/format.ts'
import type { Side } from '../stack/event.ts'
import type { Stack } from '../stack/stack.ts'
import { sideOf } from '../stack/stack.ts'
import { otherFace } from '../steps/step.ts'
import type { BowWay } from './bow-face.ts'
import { faceBow, less } from './bow-face.ts'
import type { BowMoment } from './bow-moment.ts'
import type { Within } from './bow-plies.ts'

/**
 * What each way of flattening both faces leaves of a bow on the face that was done before the last.
 *
 *   planned          first face flat at once, then the other: what that sets free bows the first
 *   other way round  the same, begun with the other face
 *   same depth       as planned, with as much off either face
 *   once more        the first face but for its last pass, the other, the first again: only that pass sets free
 *
 * Elastic, the piece ends at the same stresses whatever the order; what counts is what was still to come off when a
 * face was made flat.
 *
 * Check: none where the stack is alike towards both faces; turned over once more leaves less than as planned (test).
 *
 * Limits: those of fits/bow; cuts made between the two are left out; other floods and inlays come as planned.
 */
export interface FlattenWay {
  readonly way: 'as planned' | 'other way round' | 'same depth' | 'once more'
  readonly says: string
  /** The face that it leaves bent, and by how much over what, mm. */
  readonly face: Face
  readonly leavesMm: number
  readonly overMm: number
}

/** The last pass of a face that is done once more, mm (practice: a light pass all over). */
const LAST_PASS_MM = 0.5
/** Depths that differ by less are the same, mm. */
const SAME_MM = 0.2

/** Curvatures of every column and row with the piece standing between two heights. */
type BentAt = (within: Within) => readonly (readonly number[])[]

/** Empty unless both faces are flattened. */
export function flattenWays(
  stack: Stack,
  moments: readonly BowMoment[],
  ways: readonly BowWay[],
  bentAt: BentAt
): FlattenWay[] {
  const done = moments.filter(m => m.when === 'flattened').map(m => m.step)
  const faces = done.map(step => stack.steps[step]!.face as Face)
  const [first] = faces
  if (first === undefined || !faces.includes(otherFace(first))) return []
  const other = otherFace(first)
  const side = sideOf(stack.piece, first)
  const plane = (face: Face) => {
    const state = stack.states[done[faces.lastIndexOf(face)]!]!
    return sideOf(stack.piece, face) === 'low' ? state.lowZ : state.highZ
  }
  const off = (face: Face) =>
    done.reduce((sum, step, k) => sum + (faces[k] === face ? (stack.steps[step]!.byMm ?? 0) : 0), 0)
  const end = withPlane(withPlane(ALL, side, plane(first)), far(side), plane(other))
  const shift = (off(other) - off(first)) / 2
  const inward = side === 'low' ? 1 : -1
  const leaves = (bent: Within, flat: Within, face: Face) => {
    const [now, then] = [bentAt(bent), bentAt(flat)]
    const off = now.map((k, w) => less(k, then[w]!))
    const found = faceBow(
      ways,
      off.map(k => [k, k] as const),
      sideOf(stack.piece, face)
    )
    return { face, leavesMm: found.mm, overMm: found.overMm }
  }
  const evened = moved(end, inward * shift)
  const pass = Math.min(LAST_PASS_MM, off(first) / 2)
  const out: FlattenWay[] = [
    {
      way: 'as planned',
      says: `the ${first} first, then the ${other}`,
      ...leaves(end, withPlane(ALL, side, plane(first)), first)
    },
    {
      way: 'other way round',
      says: `the ${other} first, then the ${first}`,
      ...leaves(end, withPlane(ALL, far(side), plane(other)), other)
    }
  ]
  if (Math.abs(shift) > SAME_MM)
    out.push({
      way: 'same depth',
      says: `the ${first} first, and ${decimals(off(first) + shift, 1)} mm off either face`,
      ...leaves(evened, withPlane(ALL, side, plane(first) + inward * shift), first)
    })
  if (pass > 0)
    out.push({
      way: 'once more',
      says: `the ${first}, the ${other}, and the last ${decimals(pass, 1)} mm off the ${first} in the end`,
      ...leaves(end, withPlane(end, side, plane(first) - inward * pass), other)
    })
  return out
}

const ALL: Within = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]

function far(side: Side): Side {
  return side === 'low' ? 'high' : 'low'
}

function withPlane([low, high]: Within, side: Side, z: number): Within {
  return side === 'low' ? [z, high] : [low, z]
}

// Both planes by as much: what is taken more off one face is left on the other.
function moved([low, high]: Within, by: number): Within {
  return [low + by, high + by]
}
