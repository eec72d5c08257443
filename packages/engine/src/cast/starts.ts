import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import type { Step } from '../steps/step.ts'
import type { RoomAir } from './bed.ts'
import { airOf } from './bed.ts'
import { localTime, minuteOfDay } from './local-time.ts'

/** The hour at which a first pour is made when the document does not say, min after midnight. */
const USUAL_START = 9 * 60

/** When a step begins, if the document says. */
export function beginsOf(step: Step): string | undefined {
  return step.begins ?? (step.kind === 'pour' ? step.pour!.value.start : undefined)
}

/**
 * How long each casting waits for the one before, as far as the document says: by moments, by `after`, by the
 * waits of its own order. One entry a casting step, in order; null: it waits for the window.
 */
export function givenWaits(steps: readonly Step[]): (number | null)[] {
  const out: (number | null)[] = []
  let waited: number | null = null
  let before: number | null = null
  for (const step of steps) {
    if (step.kind === 'wait' && step.waitMin !== undefined) waited = (waited ?? 0) + step.waitMin
    if (step.kind !== 'pour' || step.pour!.value.kind !== 'cast') continue
    const begins = beginsOf(step)
    const ms = begins === undefined ? null : Date.parse(begins)
    const byMoment: number | null =
      ms !== null && before !== null ? Math.max(0, (ms - before) / 60_000) : null
    const wait: number | null = byMoment ?? step.pour!.value.after ?? waited
    out.push(wait)
    // A moment that follows from the one before and a wait is as good as a given one.
    before = ms ?? (before !== null && wait !== null ? before + wait * 60_000 : null)
    waited = null
  }
  return out
}

/**
 * The room as a pour sees it: time counts from the first pour into the mould, at the hour the document gives it,
 * else at nine; a layer made later counts from its own start.
 */
export function airFor(stack: Stack, shop: Shop, index: number): RoomAir {
  const air = airOf(shop)
  const cast = stack.piece.pours[index]!.kind === 'cast'
  const step = stack.steps.find(s =>
    s.kind !== 'pour' ? false : cast ? s.pour!.value.kind === 'cast' : s.pour!.index === index
  )
  const begins = step === undefined ? undefined : beginsOf(step)
  if (begins === undefined) return air
  const shiftS = (minuteOfDay(localTime(begins, shop)) - USUAL_START) * 60
  return shiftS === 0 ? air : timeS => air(timeS + shiftS)
}
