import { neverOpen } from './calendar/openings.ts'
import type { Days } from './days-answer.ts'
import { DAYS_CHECKS } from './findings/days-checks.ts'
import type { Finding, Found } from './findings/finding.ts'
import { findingOf } from './findings/finding.ts'
import { dayText } from './quantity/day.ts'
import { formatMinutes } from './quantity/format.ts'
import { zoneClock } from './quantity/zone-clock.ts'
import { capital } from './sheets/model.ts'
import type { PlanInput } from './work.ts'

const DAY_MIN = 1440
/** Longest account of a clash in one finding, characters: `castwright days` gives it all. */
const MOST_SAID = 220
const BASIS = 'the calendar: minutes of the tasks, waits of the models, hours of the shop'

/** What the days of one piece speak against, and what would mend it. */
export function foundInDays(days: Days, { piece, shop }: Pick<PlanInput, 'piece' | 'shop'>): Finding[] {
  const of = (check: keyof typeof DAYS_CHECKS, found: Found): Finding =>
    findingOf({ ...DAYS_CHECKS[check], cases: [], run: () => [] }, found)
  if (neverOpen(shop))
    return [
      of('never', {
        severity: 'caution',
        at: '',
        says: 'No hours at the bench are given on any day of the week: nothing can be planned in days. Give the hours of at least one day in the facts of the shop.',
        basis: 'hours of the shop'
      })
    ]
  if (days.clash !== null) {
    const [way] = days.waysOut
    const onPiece = days.waysOut.find(w => w.on === 'piece' && w.patch !== null)
    return [
      of('clash', {
        // A search that ended shows nothing against the piece.
        severity: days.waysOut.length > 0 || days.clash.smallest ? 'caution' : 'note',
        at: '',
        says: `No calendar keeps these together: ${cut(days.clash.says.join('; '))}. ${way === undefined ? 'No way out was found: other hours, or somebody to help.' : way.says}`,
        basis: BASIS,
        ...(onPiece !== undefined && { fix: onPiece.patch, fixSays: onPiece.says.replace(/\.$/, '') })
      })
    ]
  }
  const out: Finding[] = []
  const { wanted } = piece.value
  if (days.lateMin > 0 && wanted !== undefined) {
    const ready = dayOf(days, Math.max(...days.readyMs!))
    out.push(
      of('late', {
        severity: 'caution',
        at: '/wanted',
        says: `It is ready on ${ready}, ${formatMinutes(days.lateMin)} after ${wanted}, when it is wanted: agree on a later day, or look in the days for what holds it up.`,
        value: days.lateMin / DAY_MIN,
        unit: 'd',
        limit: 0,
        basis: BASIS,
        fix: [{ op: 'replace', path: '/wanted', value: ready }],
        fixSays: `Wanted on ${ready}`
      })
    )
    for (const o of days.orderBy) {
      const byMin = o.byMin - days.lateMin
      if (byMin >= 0) continue
      out.push(
        of('order', {
          severity: 'note',
          at: '/wanted',
          says: `${capital(o.name)} is ${o.days} days on its way: to be ready on ${wanted} it had to be ordered by ${dayOf(days, days.originMs + byMin * 60_000)}. Order it today, or get it elsewhere.`,
          value: -byMin / DAY_MIN,
          unit: 'd',
          limit: 0,
          basis: 'days of delivery as the shop gives them; the calendar'
        })
      )
    }
  }
  if (!days.settled)
    out.push(
      of('unsettled', {
        severity: 'note',
        at: '',
        says: 'The windows of the pours still move with the hour they are made: make the days again on the day before each pour.',
        basis: BASIS,
        settledBy: 'the hour the pour was mixed'
      })
    )
  return out
}

function cut(says: string): string {
  if (says.length <= MOST_SAID) return says
  return `${says.slice(0, says.lastIndexOf(' ', MOST_SAID)).replace(/[;,]$/, '')} and more`
}

function dayOf(days: Days, ms: number): string {
  return dayText(zoneClock(days.timeZone).shown(ms))
}
