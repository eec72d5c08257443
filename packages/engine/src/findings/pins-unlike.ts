import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { placesFix } from './pin-fix.ts'
import type { Work } from './work.ts'

/** Pins that the piece does not go onto once it is turned over. */
export const pinsUnlike: Check = {
  id: 'pins-unlike',
  about: 'pins not alike about the line of turning: turned over the holes do not meet them',
  cases: ['C74'],
  run
}

function run(work: Work): Found[] {
  const { pins, goesOn, datum, given, playMm } = work.pins
  if (!given || goesOn || pins.length === 0) return []
  const { about, x0, y0 } = datum
  // How far the hole of each pin comes to lie from the nearest pin.
  const off = pins.map(p => {
    const [x, y] = about === 'x' ? [p.x, 2 * y0 - p.y] : [2 * x0 - p.x, p.y]
    return Math.min(...pins.map(q => Math.hypot(q.x - x, q.y - y)))
  })
  const worst = Math.max(...off)
  const k = off.indexOf(worst)
  return [
    {
      severity: 'stop',
      at: '/pins/at',
      says: `turned over about the ${about === 'x' ? 'level' : 'upright'} line, ${
        worst > playMm
          ? `the hole of pin ${k + 1} lies ${decimals(worst, 1)} mm beside the nearest pin`
          : 'a thick pin meets a thin hole'
      }: the piece does not go on. Pins on that line, or in mirrored pairs of one diameter, meet their holes again.`,
      value: worst,
      unit: 'mm',
      limit: playMm,
      basis: 'the pattern of the holes mirrored about the line: geometry',
      ...placesFix(work)
    }
  ]
}
