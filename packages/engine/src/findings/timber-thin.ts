import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** What a planer's setting makes no difference of, mm. */
const SLACK_MM = 0.05

/** The board at hand is thinner than what the timber needs to be planed clean and flat out of it. */
export const timberThin: Check = {
  id: 'timber-thin',
  about: 'a board too thin to be planed to its timber',
  cases: ['C64'],
  run: work => work.timberFacts.flatMap(f => one(work, f))
}

function one(work: Work, { timber, rough }: Work['timberFacts'][number]): Found[] {
  if (rough === null || rough.givenMm === null || rough.givenMm >= rough.startMm - SLACK_MM) return []
  const { id, at } = work.entries.timbers[timber]!
  const parts = rough.parts.map(p => `${p.what} ${decimals(p.mm, 1)}`)
  return [
    {
      severity: 'caution',
      at: `${at}/rough/thickness`,
      says: `the board of ${id} is ${decimals(rough.givenMm, 1)} mm thick and wants ${decimals(rough.startMm, 1)}: ${parts.join(', ')}. Start thicker, rip it into narrower strips that cup less, or make the piece thinner.`,
      value: rough.givenMm,
      unit: 'mm',
      limit: rough.startMm,
      basis: `thickness from flatness (geometry); ${rough.parts
        .filter(p => p.from !== 'the piece')
        .map(p => `${p.what}: ${p.from}`)
        .join('; ')}`,
      settledBy: 'a straightedge across and along the board, and its four corners on a flat table',
      fix: setQuantity(work.document, `${at}/rough/thickness`, 'length', rough.startMm, 'up'),
      fixSays: `Start ${id} from ${decimals(Math.ceil(rough.startMm * 10) / 10, 1)} mm`
    }
  ]
}
