import { WATER_KG_M3 } from '../mould/leak.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Mark of a cup off by more: a caution (2 %, what a careful eye reads) and a stop (5 %). Practice. */
const CAUTION_PCT = 2
const STOP_PCT = 5

/** Measuring cups whose marks are wrong, by the weight of water to the mark. */
export const cupMarks: Check = {
  id: 'cup-marks',
  about: 'a measuring cup whose marks are wrong',
  cases: ['C14'],
  run
}

function run(work: Work): Found[] {
  // The latest check of each mark counts; the worst of them is said.
  const marks = new Map<number, { readonly massG: number; readonly at: number }>()
  for (const r of work.readings) {
    if (r.kind !== 'cup check') continue
    const at = Date.parse(r.at)
    const known = marks.get(r.volume)
    if (known === undefined || at >= known.at) marks.set(r.volume, { massG: r.mass, at })
  }
  const worst = [...marks]
    .map(([volume, { massG }]) => ({ volume, massG, right: (volume * WATER_KG_M3) / 1000 }))
    .map(m => ({ ...m, off: (m.massG / m.right - 1) * 100 }))
    .reduce<{ volume: number; massG: number; right: number; off: number } | null>(
      (a, b) => (a !== null && Math.abs(a.off) >= Math.abs(b.off) ? a : b),
      null
    )
  if (worst === null || Math.abs(worst.off) <= CAUTION_PCT) return []
  const byVolume = work.entries.pours.find(p => p.value.measured?.by === 'volume')
  const at = byVolume === undefined ? '/pours' : `${byVolume.at}/measured`
  const stop = Math.abs(worst.off) > STOP_PCT && byVolume !== undefined
  const { volume, massG, right, off } = worst
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at,
      says: `water to the ${decimals(volume, 1)} ml mark of the cup weighs ${decimals(massG, 1)} g, not ${decimals(right, 1)}: the mark is ${decimals(Math.abs(off), 0)} % ${off > 0 ? 'high' : 'low'}. ${byVolume === undefined ? 'Do not measure with it' : 'Measured with it, a mix may be off ratio and stay soft'}: weigh both parts.`,
      value: off,
      unit: '%',
      limit: Math.sign(off) * (Math.abs(off) > STOP_PCT ? STOP_PCT : CAUTION_PCT),
      basis: `water ${decimals(WATER_KG_M3 / 1000, 4)} g/ml at 20 °C (tables, memory); 2 and 5 %: common practice`,
      settledBy: 'a second cup check, or a scale'
    }
  ]
}
