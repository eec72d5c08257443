import { zoneClock } from '../../src/quantity/zone-clock.ts'
import type { Evidence } from '../evidence.ts'

const MIN = 60_000

/** The first minute of a change found by the clock itself, min after a moment. */
function changeAfter(zone: string, from: string): number {
  const clock = zoneClock(zone)
  const start = Date.parse(from)
  const was = clock.offsetMin(start)
  for (let min = 0; min < 2880; min++) if (clock.offsetMin(start + min * MIN) !== was) return min
  return Number.NaN
}

const row = (what: string, source: string, published: number, ours: () => number): Evidence => ({
  model: 'quantity/zone-clock',
  what,
  source,
  confidence: 'memory',
  unit: 'min',
  published,
  tolerance: 0,
  why: 'a rule of law, exact to the minute',
  ours
})

const EU = 'Directive 2000/84/EC, articles 2 and 3: 01:00 UTC on the last Sunday'
const US = '15 U.S.C. 260a: 02:00 local on the first Sunday of November'

export const rows: readonly Evidence[] = [
  row('end of summer time in Berlin, minutes after 2026-10-25T00:00Z', EU, 60, () =>
    changeAfter('Europe/Berlin', '2026-10-25T00:00Z')
  ),
  row('begin of summer time in Berlin, minutes after 2026-03-29T00:00Z', EU, 60, () =>
    changeAfter('Europe/Berlin', '2026-03-29T00:00Z')
  ),
  row('end of summer time in New York, minutes after 2026-11-01T00:00Z', US, 360, () =>
    changeAfter('America/New_York', '2026-11-01T00:00Z')
  ),
  row('a day in Berlin on which summer time ends', `${EU} of October: 25 hours`, 1500, () => {
    const clock = zoneClock('Europe/Berlin')
    const at = (day: number) => clock.moment({ year: 2026, month: 10, day }, 0)
    return (at(26) - at(25)) / MIN
  })
]
