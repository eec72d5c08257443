import type { Ladder } from '../coat/ladder.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Step } from '../steps/step.ts'
import type { FaceFinish } from './faces.ts'
import type { Left } from './marks.ts'

/** Sanding that is done at one step, of one face. */
export interface SandedThere {
  readonly face: Face
  readonly ladder: Ladder
  readonly left: Left
  readonly pastesUm: readonly number[]
  /** Under a flood among the pours: the coat of the finish comes later. */
  readonly under: boolean
}

/** What is sanded at step `i`: a face where it is last flattened or sanded, else just before its coat or flood. */
export function sandedAt(faces: readonly FaceFinish[], steps: readonly Step[], i: number): SandedThere[] {
  const step = steps[i]!
  return faces.flatMap(f => {
    const out: SandedThere[] = f.floods.flatMap(({ under, step: poured }) =>
      under !== null && (under.step ?? poured) === i
        ? [{ face: f.face, ladder: under.ladder, left: under.left, pastesUm: [], under: true }]
        : []
    )
    const { sanding } = f
    if (sanding === null) return out
    const before = step.kind === 'coat' && (step.face === 'both' || step.face === f.face)
    if (sanding.step === i || (sanding.step === null && before))
      out.push({
        face: f.face,
        ladder: sanding.ladder,
        left: sanding.left,
        pastesUm: sanding.pastesUm,
        under: false
      })
    return out
  })
}

/** What of a step's sanding can hurt: paper used wet, and coats sanded between. */
export function sandingHazards(
  faces: readonly FaceFinish[],
  steps: readonly Step[],
  i: number
): { readonly sands: boolean; readonly wet: boolean; readonly between: boolean } {
  const step = steps[i]!
  const there = sandedAt(faces, steps, i)
  return {
    sands: there.length > 0,
    wet: there.some(t => t.ladder.steps.some(s => s.grade.wet)),
    between:
      step.kind === 'coat' &&
      faces.some(
        f =>
          (step.face === 'both' || step.face === f.face) &&
          f.coat !== null &&
          f.coat.betweenGrit !== null &&
          f.coats > 1
      )
  }
}
