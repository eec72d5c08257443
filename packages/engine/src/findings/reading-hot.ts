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

/** What the readings of a pour say: the hottest, and the last by its time. */
interface Measured {
  readonly mostC: number
  readonly lastC: number
  readonly lastMs: number
}

function run(work: Work): Found[] {
  const measured = new Map<string, Measured>()
  for (const r of work.readings) {
    if (r.kind !== 'temperature' || r.pour === undefined) continue
    const had = measured.get(r.pour)
    const ms = Date.parse(r.at)
    const later = had === undefined || ms >= had.lastMs
    measured.set(r.pour, {
      mostC: Math.max(had?.mostC ?? r.temperature, r.temperature),
      lastC: later ? r.temperature : had.lastC,
      lastMs: later ? ms : had.lastMs
    })
  }
  return work.entries.pours.flatMap(({ id, at }): Found[] => {
    const m = measured.get(id)
    if (m === undefined || m.mostC < CAUTION_ABOVE_C) return []
    const stop = m.lastC >= STOP_ABOVE_C
    const cooled = m.lastC < CAUTION_ABOVE_C
    const effect = heatEffect(m.mostC)?.says ?? 'at the limit for clear work'
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: `${id} was measured at ${formatC(m.mostC)}${m.lastC < m.mostC ? `, last at ${formatC(m.lastC)}` : ''}: ${effect}. ${stop ? HOT : cooled ? OVER : WARM}`,
        value: m.mostC,
        unit: '°C',
        limit: stop ? STOP_ABOVE_C : CAUTION_ABOVE_C,
        basis:
          'the readings themselves; limits 60 and 100 °C: engineering judgement (memory), the data sheet of the resin goes before'
      }
    ]
  })
}

const HOT =
  'Keep away from the fumes and let it be: open doors and windows, move what can burn away from it if that can be done safely, pour nothing more on it and put no water on it. What is left in the cup: outdoors, spread thin in a metal tray. The safety data sheet of the resin goes before this.'
const WARM =
  'Pour nothing more on it, move air over it, and watch it until it falls. The safety data sheet of the resin goes before this.'
const OVER =
  'Look it over before anything is poured on it: cracks, amber, bubbles, timber or mould that let go.'
