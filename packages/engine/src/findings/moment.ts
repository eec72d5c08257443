import type { LocalTime } from '../cast/local-time.ts'
import { localTime } from '../cast/local-time.ts'
import { beginsOf } from '../cast/starts.ts'
import type { Work } from './work.ts'

/** When a step begins on the shop's clock (index from 0); null when the document gives no moment at all. */
export function momentOf(work: Work, step: number): LocalTime | null {
  for (const [i, s] of work.steps.entries()) {
    const begins = beginsOf(s)
    if (begins === undefined) continue
    const at = localTime(begins, work.shop)
    return { ...at, ms: at.ms + (work.clock[step]!.startMin - work.clock[i]!.startMin) * 60_000 }
  }
  return null
}
