import type { StepDocument } from '../piece/piece-schema.ts'
import type { Step } from './step.ts'

/**
 * A step as the document writes it. A wait keeps its reason where it has one, so that its length goes on following from
 * the windows; what comes off a face is written to 0.1 µm.
 *
 * Check: the usual order of the examples written out gives the same clock, tasks and waits (test).
 */
export function stepDocument(step: Step): StepDocument {
  const what = (step.timber ?? step.pour ?? step.cut ?? step.marking ?? step.hardware)?.id
  const at = step.begins === undefined ? {} : { at: step.begins }
  switch (step.kind) {
    case 'wait':
      return {
        do: 'wait',
        ...(step.waitMin === undefined ? {} : { for: Math.round(step.waitMin) }),
        ...(step.why === undefined ? {} : { until: step.why }),
        ...at
      }
    case 'flatten':
    case 'sand':
      return {
        do: step.kind,
        face: step.face as 'front' | 'back',
        ...(step.byMm === undefined ? {} : { by: Number(step.byMm.toFixed(4)) }),
        ...at
      }
    case 'coat':
      return { do: 'coat', face: step.face!, ...at }
    default:
      return { do: step.kind, ...(what === undefined ? {} : { what }), ...at } as StepDocument
  }
}
