import type { Work } from '../findings/work.ts'
import { readyWords } from '../fits/drying-now.ts'
import { decimals } from '../quantity/format.ts'

type Season = Work['seasons'][number]

/** What was measured of a timber's moisture, in a few words; empty when nothing was. */
export function dryingWords({ log, source, moisturePct }: Season): string {
  if (log === null) return source === 'reading' ? `measured ${decimals(moisturePct, 1)} %` : ''
  if (log.ready === null) return `drying log: ${log.why}`
  return `${decimals(moisturePct, 1)} %, ${readyWords(log.ready)}`
}
