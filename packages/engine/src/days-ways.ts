import type { ClashMember } from './calendar/solve/problem.ts'
import type { Days, WayOut } from './days-answer.ts'
import { COME_BACK, candidates, clock, LET_PASS, softOf } from './days-candidates.ts'
import type { Changed, Replanned } from './days-changed.ts'
import { NOT_AFTER_MIN, NOT_BEFORE_MIN, openOnce } from './days-open-once.ts'
import { dayText } from './quantity/day.ts'
import { zoneClock } from './quantity/zone-clock.ts'
import type { PlanInput } from './work.ts'

/**
 * Ways out of a clash, each planned anew by `plan`, soonest ready first. A way that gives no calendar is no way and is
 * left out.
 */
export function waysOut(
  inputs: readonly PlanInput[],
  days: Days,
  members: readonly ClashMember[],
  plan: (changed: Changed) => Replanned
): WayOut[] {
  const before: Changed = { inputs, hands: 1, givenUp: [], openOnce: [] }
  const once = openOnce(before, days, members, plan)
  const tried = candidates(inputs, days, members).flatMap(({ change, ...way }): Tried[] => {
    let changed: Changed = { ...before, ...change }
    let found = plan(changed)
    if (found.days.readyMs !== null) {
      const comes = way.id === COME_BACK ? comesBack(found.days, changed.givenUp) : ''
      if (comes === null) return []
      return [{ way: { ...way, says: `${way.says}${comes}`, readyDays: readyDays(found.days) }, passed: [] }]
    }
    if (way.id === COME_BACK) return []
    // What is left in its way may be something that can be let pass: one clash after another.
    const passed: string[] = []
    for (let n = 0; n < MOST_PASSED && found.days.readyMs === null; n++) {
      const soft = softOf(found.days, found.members)
      if (soft.length === 0) return []
      passed.push(...soft.map(g => g.late ?? g.says))
      changed = { ...changed, givenUp: [...changed.givenUp, ...soft.map(g => g.says)] }
      found = plan(changed)
    }
    if (found.days.readyMs === null) return []
    const also = [...new Set(passed)].join('; ')
    const says = `${way.says} Besides: ${also}.`
    return [{ way: { ...way, says, readyDays: readyDays(found.days) }, passed: changed.givenUp }]
  })
  const ways = tried.filter(t => !worthless(t, tried)).map(t => t.way)
  return [...ways, ...(once === null ? [] : [once])].sort((a, b) => a.readyDays - b.readyDays)
}

/** A way that was tried, and the waits that are let pass with it. */
interface Tried {
  readonly way: WayOut
  readonly passed: readonly string[]
}

/** Sooner by less than this is no sooner, days (practice). */
const SOONER_DAYS = 0.5

// A change that helps only with waits let pass is none where letting the same pass alone is ready as soon.
function worthless({ way, passed }: Tried, all: readonly Tried[]): boolean {
  return (
    way.id !== LET_PASS &&
    passed.length > 0 &&
    all.some(
      o =>
        o.way.id === LET_PASS &&
        o.way.readyDays <= way.readyDays + SOONER_DAYS &&
        o.passed.every(p => passed.includes(p))
    )
  )
}

/** Clashes one after another that windows are let pass for, one way (practice): beyond it the hours are at fault. */
const MOST_PASSED = 6

/** When the maker comes back; null: at night, which is no way out. */
function comesBack(days: Days, says: readonly string[]): string | null {
  const { shown } = zoneClock(days.timeZone)
  const moments = days.tasks
    .filter(t => says.includes(t.task.says))
    .map(t => days.originMs + t.startMin * 60_000)
  const clocks = moments.map(shown)
  if (clocks.some(c => c.minute < NOT_BEFORE_MIN || c.minute + 60 > NOT_AFTER_MIN)) return null
  const words = clocks.map(c => `${clock(c.minute)} on ${dayText(c)}`)
  return ` That is ${words.join(' and ')}.`
}

/** Days from the moment it was asked until all is ready. */
function readyDays(days: Days): number {
  return (Math.max(...days.readyMs!) - days.originMs) / 86_400_000
}
