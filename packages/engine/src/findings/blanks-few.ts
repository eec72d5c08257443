import { chanceOfGood } from '../mould/spoil.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Fewer blanks than the certainty that the maker wants asks for. */
export const blanksFew: Check = {
  id: 'blanks-few',
  about: 'too few blanks for the number of good pieces wanted',
  cases: ['O15'],
  run
}

function run(work: Work): Found[] {
  const { quantity } = work.piece
  if (typeof quantity === 'number' || quantity.blanks === undefined) return []
  const { pieces, blanks, loss, certainty } = quantity
  const { enough } = work.quantity
  if (blanks >= enough) return []
  const chance = chanceOfGood(pieces, blanks, loss / 100)
  const then = chanceOfGood(pieces, enough, loss / 100)
  return [
    {
      severity: 'caution',
      at: '/quantity/blanks',
      says: `${blanks} blanks give ${pieces} good ones with a chance of ${decimals(chance * 100, 0)} % when ${decimals(loss, 1)} % are lost; you want ${decimals(certainty, 1)} %: ${enough} blanks give ${decimals(then * 100, 0)} %.`,
      value: chance * 100,
      unit: '%',
      limit: certainty,
      basis: 'binomial distribution, losses independent; loss a blank and certainty as the piece says',
      settledBy: 'how many were lost in the batches before',
      fix: setValue(work.document, '/quantity/blanks', enough),
      fixSays: `${enough} blanks`
    }
  ]
}
