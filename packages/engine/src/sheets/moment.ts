import type { Work } from '../findings/work.ts'

/** The first pour as a moment: milliseconds since 1970 and the offset of the document's zone, min. */
export interface FirstMoment {
  readonly ms: number
  readonly offsetMin: number
}

/** When the clock of a plan stands at nothing, if the document gives the moment of any step; else null. */
export function firstMoment(work: Work): FirstMoment | null {
  for (const [i, step] of work.steps.entries()) {
    const begins = step.begins ?? (step.kind === 'pour' ? step.pour!.value.start : undefined)
    if (begins === undefined) continue
    const sign = /([+-])(\d\d):(\d\d)$/.exec(begins)
    const offsetMin =
      sign === null ? 0 : (sign[1] === '-' ? -1 : 1) * (Number(sign[2]) * 60 + Number(sign[3]))
    return { ms: Date.parse(begins) - work.clock[i]!.startMin * 60_000, offsetMin }
  }
  return null
}

/** The number of the day, from 1, on which a moment falls that lies so many minutes after the first pour. */
export function dayNumber(startMin: number): number {
  return Math.floor(startMin / 1440 + 1e-9) + 1
}

const WEEKDAYS = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'] as const
const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/** "Sat 28 Nov", in the zone of the document. */
export function dateOf(ms: number, offsetMin: number): string {
  const d = new Date(ms + offsetMin * 60_000)
  return `${WEEKDAYS[d.getUTCDay()]} ${d.getUTCDate()} ${MONTHS[d.getUTCMonth()]}`
}

/** "09:05", in the zone of the document. */
export function timeOf(ms: number, offsetMin: number): string {
  const d = new Date(ms + offsetMin * 60_000)
  return `${String(d.getUTCHours()).padStart(2, '0')}:${String(d.getUTCMinutes()).padStart(2, '0')}`
}
