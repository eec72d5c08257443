import { COLD_C } from '../cuts/run/cold.ts'
import { formatC } from '../quantity/format.ts'
import type { StepKind } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

const CUTTING: readonly StepKind[] = ['flatten', 'cut', 'mark', 'trim', 'work edges']

/** Cast resin that is cut in the cold. */
export const coldBrittle: Check = {
  id: 'cold-brittle',
  about: 'cast resin cut or turned in a cold shop, where it chips and shatters',
  cases: ['C85'],
  run
}

function run(work: Work): Found[] {
  const { day } = work.shop.climate
  if (day >= COLD_C) return []
  const poured = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.value.kind === 'cast')
  if (poured < 0) return []
  const step = work.steps.find((s, i) => i > poured && CUTTING.includes(s.kind))
  if (step === undefined) return []
  return [
    {
      severity: 'caution',
      at: step.at,
      says: `${step.says}: the shop is at ${formatC(day)} at its warmest, and cast resin below ${formatC(COLD_C)} is brittle: it chips at edges and thin walls break. Warm the blank through, or take half the depth with a sharp cutter.`,
      value: day,
      unit: '°C',
      limit: COLD_C,
      basis: 'below 15 °C or with walls under 1.5 mm light cuts: makers’ reports, common practice, no source',
      settledBy: 'a thermometer held against the blank, not in the air'
    }
  ]
}
