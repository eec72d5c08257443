import type { Cause, Share } from '../fits/share.ts'
import { decimals } from '../quantity/format.ts'

/** Less than this of a cause is not spoken of, mm on a side. */
const SPOKEN_MM = 0.01

/**
 * What closes a hole, the most first, mm on a side: of each cause the centre, or with `worst` the unfavourable end
 * of what is sure and the centre of chance.
 */
export function closedBy(
  shares: readonly Share[],
  worst: boolean
): { readonly cause: Cause; readonly mm: number }[] {
  return shares
    .map(s => ({ cause: s.cause, mm: -(worst && s.sure ? s.sideMm[0] : s.sideMm[1]) }))
    .filter(c => c.mm >= SPOKEN_MM)
    .sort((a, b) => b.mm - a.mm)
}

const WORDS: Record<Cause, string> = {
  cut: 'the cut takes',
  class: 'its class takes',
  coat: 'coats on its walls take',
  cure: 'the resin curing on takes',
  former: 'the resin springing in from its former takes',
  season: 'the driest air takes',
  warmth: 'the cold takes',
  'part size': 'the part’s own size takes',
  'part coat': 'the coat on the part takes'
}

/** "the driest air takes 0.12, coats on its walls take 0.05". */
export function lossWords(causes: readonly { readonly cause: Cause; readonly mm: number }[]): string {
  return causes
    .slice(0, 3)
    .map(c => `${WORDS[c.cause]} ${decimals(c.mm, 2)}`)
    .join(', ')
}
