import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Two round holes across moving timber. */
export const pinsAcrossGrain: Check = {
  id: 'pins-across-grain',
  about: 'the distance of two round pin holes moves with the timber by more than their play takes',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const { pins, misfit } = work.pins
  if (misfit === null || pins.length === 0 || pins.some(p => p.slotMm > 0)) return []
  const { pitchMm, pitchTakenMm } = misfit
  const [low, central, high] = pitchMm.map(Math.abs) as [number, number, number]
  if (high <= pitchTakenMm) return []
  const certain = central > pitchTakenMm
  return [
    {
      severity: certain ? 'caution' : 'note',
      at: '/pins/slot',
      says: `between the two settings the timber moves the pin holes ${decimals(central, 2)} mm ${central === pitchMm[1] ? 'apart' : 'together'} (at most ${decimals(high, 2)}); the play takes ${decimals(pitchTakenMm, 2)}: the piece jams on its pins or does not go on. A slot in line with the pins gives way.`,
      value: central,
      band: [low, high],
      unit: 'mm',
      limit: pitchTakenMm,
      basis: 'Wood Handbook eq. 13-2 over the days between the settings; play of both pins halved (derived)',
      settledBy: 'the moisture of the timber, read when the holes are drilled',
      fix: setValue(work.document, '/pins/slot', true),
      fixSays: 'The second hole a slot'
    }
  ]
}
