import { kilos, roughMass } from '../quantity/rough.ts'
import { HEAVY_G } from '../steps/safety.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A casting too heavy for one pair of hands, in a shop that has no second. Said once, at its heaviest move. */
export const liftHeavy: Check = {
  id: 'lift-heavy',
  about: 'a casting that one person cannot lift or turn',
  cases: [],
  run
}

function run(work: Work): Found[] {
  if (work.shop.secondPair || work.moves.length === 0) return []
  const worst = work.moves.reduce((a, b) => (b.massG > a.massG ? b : a))
  if (worst.massG <= HEAVY_G) return []
  const step = work.steps[worst.step]!
  const mould = worst.mouldG > 0 ? `, ${roughMass(worst.mouldG)} of it the mould` : ''
  return [
    {
      severity: 'caution',
      at: step.at === '' ? '/mould' : step.at,
      says: `“${step.says}”: about ${roughMass(worst.massG, 'up')}${mould}, and the shop has one pair of hands. Have a second pair there, or a trolley and boards to slide it on.`,
      value: worst.massG,
      unit: 'g',
      limit: HEAVY_G,
      basis: `masses of what went in less what came off; ${kilos(HEAVY_G)} close to the body for a man, 16 kg for a woman, less when reaching: guidance of health agencies (memory)`,
      settledBy: 'a scale under one end: twice what it reads'
    }
  ]
}
