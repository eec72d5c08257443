import { formatC } from '../quantity/format.ts'
import { CAUTION_ABOVE_C, heatEffect, STOP_ABOVE_C } from '../resin/limits.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A pour that was measured hot: the reading says it, whatever the cast expects. */
export const readingHot: Check = {
  id: 'reading-hot',
  about: 'a pour that was measured hotter than it should get',
  cases: ['C03'],
  run
}

// The hottest reading of each pour.
function run(work: Work): Found[] {
  const hottest = new Map<string, number>()
  for (const r of work.readings)
    if (r.kind === 'temperature' && r.pour !== undefined)
      hottest.set(r.pour, Math.max(hottest.get(r.pour) ?? r.temperature, r.temperature))
  return work.entries.pours.flatMap(({ id, at }): Found[] => {
    const measured = hottest.get(id)
    if (measured === undefined || measured < CAUTION_ABOVE_C) return []
    const stop = measured >= STOP_ABOVE_C
    const todo = stop
      ? 'Keep away from the fumes and let it be: open doors and windows, move what can burn away from it if that can be done safely, and pour nothing more on it; put no water on it'
      : 'Pour nothing more on it, move air over it, and watch it until it falls'
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: `${id} was measured at ${formatC(measured)}: ${heatEffect(measured)?.says ?? 'past the limit for clear work'}. ${todo}. The safety data sheet of the resin goes before this.`,
        value: measured,
        unit: '°C',
        limit: stop ? STOP_ABOVE_C : CAUTION_ABOVE_C,
        basis:
          'the reading itself; limits 60 and 100 °C: engineering judgement (memory), the data sheet of the resin goes before'
      }
    ]
  })
}
