import type { Work } from '../findings/work.ts'
import type { Operation, Patch } from '../piece/patch.ts'
import type { StepDocument } from '../piece/piece-schema.ts'
import type { Step } from '../steps/step.ts'
import { stepKeys } from '../steps/step-key.ts'
import type { BuildState } from './state.ts'

/**
 * The order of the build written out, where a change would put a new step before what is done already: what is done
 * stays in its place, new steps come after it, all else follows. null where the usual order does that by itself.
 *
 * Limits: written out, waits have the length they have now.
 */
export function orderKept(before: Work, state: BuildState, after: Work): Patch | null {
  const reached = state.steps.findLastIndex(s => s.progress !== 'left')
  if (reached < 0) return null
  const done = new Set(state.steps.slice(0, reached + 1).map(s => s.key))
  const keys = stepKeys(after.steps)
  const last = keys.findLastIndex(k => done.has(k))
  const early = keys.flatMap((k, i) => (i < last && !done.has(k) ? [i] : []))
  if (early.length === 0) return null
  const kept = keys.flatMap((k, i) => (i <= last && done.has(k) ? [i] : []))
  const order = [...kept, ...early, ...keys.slice(last + 1).map((_, k) => last + 1 + k)]
  const steps = order.map(i => stepDocument(after.steps[i]!, after.clock[i]!.waitMin))
  return [
    { op: before.document.steps === undefined ? 'add' : 'replace', path: '/steps', value: steps } as Operation
  ]
}

function stepDocument(step: Step, waitMin: number): StepDocument {
  const what = (step.timber ?? step.pour ?? step.cut ?? step.marking ?? step.hardware)?.id
  const at = step.begins === undefined ? {} : { at: step.begins }
  switch (step.kind) {
    case 'wait':
      return { do: 'wait', for: Math.round(waitMin), ...at }
    case 'flatten':
    case 'sand':
      return {
        do: step.kind,
        face: step.face as 'front' | 'back',
        ...(step.byMm === undefined ? {} : { by: Math.round(step.byMm * 100) / 100 }),
        ...at
      }
    case 'coat':
      return { do: 'coat', face: step.face!, ...at }
    default:
      return { do: step.kind, ...(what === undefined ? {} : { what }), ...at } as StepDocument
  }
}
