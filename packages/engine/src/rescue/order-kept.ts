import type { Work } from '../findings/work.ts'
import type { Operation, Patch } from '../piece/patch.ts'
import { stepDocument } from '../steps/step-document.ts'
import { stepKeys } from '../steps/step-key.ts'
import type { BuildState } from './state.ts'

/**
 * The order of the build written out, where a change would put a new step before what is done already: what is done
 * stays in its place, new steps come after it, all else follows. null where the usual order does that by itself.
 * Written out, waits keep what they wait for.
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
  const steps = order.map(i => stepDocument(after.steps[i]!))
  return [
    { op: before.document.steps === undefined ? 'add' : 'replace', path: '/steps', value: steps } as Operation
  ]
}
