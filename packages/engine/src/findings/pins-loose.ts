import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setValue } from './fix.ts'
import { pinsWith } from './pin-fix.ts'
import type { Work } from './work.ts'

/** Faces that will miss each other by more than the piece bears. */
export const pinsLoose: Check = {
  id: 'pins-loose',
  about: 'what is cut from both faces may miss by more than the piece bears',
  cases: ['C74'],
  run
}

/** Least play a hole is drilled or milled with, mm (practice). */
const LEAST_PLAY_MM = 0.01

function run(work: Work): Found[] {
  const { misfit, toleranceMm, pins } = work.pins
  if (misfit === null || pins.length === 0) return []
  const [low, central, high] = misfit.mm
  if (central <= toleranceMm) return []
  const { playMm, machineMm, moistureMm } = misfit
  const shares = [
    `play of the pins ${decimals(playMm, 2)}`,
    `the machine ${decimals(machineMm, 2)}`,
    ...(moistureMm[2] < 0.005 ? [] : [`moving timber ${decimals(moistureMm[1], 2)}`])
  ]
  return [
    {
      severity: 'caution',
      at: work.document.pins === undefined ? '/mould' : '/pins',
      says: `what is cut from the two faces may miss by ${decimals(central, 2)} mm (at most ${decimals(high, 2)} mm) near ${decimals(misfit.x, 0)}, ${decimals(misfit.y, 0)}; ${decimals(toleranceMm, 2)} mm are borne: ${shares.join(', ')}.`,
      value: central,
      band: [low, high],
      unit: 'mm',
      limit: toleranceMm,
      basis:
        'two-pin formula (derived, held against a simulation), twice what the machine repeats to, Wood Handbook eq. 13-2',
      settledBy: 'a test cut from both faces in cheap board, measured',
      ...tighter(work)
    }
  ]
}

// The widest play that clears it: the misfit grows with it.
function tighter(work: Work): Pick<Found, 'fix' | 'fixSays'> {
  const { playMm, toleranceMm } = work.pins
  const clears = (play: number) => (pinsWith(work, { play }).misfit?.mm[1] ?? 0) <= toleranceMm
  if (playMm <= LEAST_PLAY_MM || !clears(LEAST_PLAY_MM)) return {}
  let [low, high] = [LEAST_PLAY_MM, playMm]
  while (high - low > 0.001) {
    const middle = (low + high) / 2
    if (clears(middle)) low = middle
    else high = middle
  }
  const play = rounded(low, 'down', 0.01)
  return {
    fix: setValue(work.document, '/pins/play', play),
    fixSays: `Play of the pins ${decimals(play, 2)}`
  }
}
