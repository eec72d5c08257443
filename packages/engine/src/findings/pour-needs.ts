import type { Span } from '../cast/bench-hours.ts'
import { attended, nobodyThere } from '../cast/bench-hours.ts'
import type { LocalTime } from '../cast/local-time.ts'
import { timeWords } from '../cast/local-time.ts'
import { beginsOf } from '../cast/starts.ts'
import type { Found } from './finding.ts'
import { intervalMin, laterMoment } from './interval.ts'
import { recoatPairs } from './recoat-window.ts'
import type { Work } from './work.ts'

/** A span after a pour in which somebody must be there for so long. */
export interface Need {
  /** What is done then: "the colours are drawn". */
  readonly does: string
  readonly span: Span
  /** Minutes within it that somebody must be there. */
  readonly min: number
}

/** A watch after a pour: leaks, bubbles. Practice: the first one to two hours. */
export const WATCH_MIN = 60
/** Least time at the bench to draw colours, to drop stones, to mix and pour the next, min: practice. */
const DRAW_MIN = 15
const STONES_MIN = 10
const NEXT_MIN = 30

/** What a pour asks of somebody at the bench, by its windows; `watched` leaves out the heat, which has its own check. */
export function needsOf(work: Work, pour: number): Need[] {
  const cast = work.casts[pour]
  const { value } = work.entries.pours[pour]!
  if (!cast || cast.runaway || value.kind === 'seal') return []
  const { windows: w } = cast
  const out: Need[] = [{ does: 'is watched for leaks and bubbles', span: [0, WATCH_MIN], min: WATCH_MIN }]
  const span = (does: string, open: number, close: number | null, min: number): void => {
    if (close !== null) out.push({ does, span: [open, close], min: Math.min(min, (close - open) / 2) })
  }
  if (value.marbling !== undefined && w.marbling !== null)
    span('has its colours drawn', w.marbling.open, w.marbling.close, DRAW_MIN)
  if (w.stones !== null) span('takes its stones', w.stones.open, w.stones.close, STONES_MIN)
  const next = nextOn(work, pour)
  if (next !== null && w.recoat.reached)
    span(
      `takes ${work.entries.pours[next]!.id}, the next pour,`,
      w.recoat.open,
      w.recoat.close === null ? null : Math.max(w.recoat.close, w.recoat.open + 2 * NEXT_MIN),
      NEXT_MIN
    )
  return out
}

// The next casting on a pour whose moment the plan chooses.
function nextOn(work: Work, pour: number): number | null {
  const casts = work.steps.flatMap((s, k) =>
    s.kind === 'pour' && s.pour!.value.kind === 'cast' ? [{ index: s.pour!.index, step: k }] : []
  )
  const n = casts.findIndex(c => c.index === pour)
  const next = casts[n + 1]
  if (n < 0 || next === undefined) return null
  const given = work.clock[next.step]!.given || work.entries.pours[next.index]!.value.after !== undefined
  return given ? null : next.index
}

/** How long somebody is there within a need when the pour starts `shiftMin` later, min. */
export function thereFor(work: Work, at: LocalTime, need: Need, shiftMin = 0): number {
  const span: Span = [need.span[0] + shiftMin, need.span[1] + shiftMin]
  return attended(work.shop, at, span).reduce((sum, [a, b]) => sum + b - a, 0)
}

/** Steps of the search for another start, and how far it goes, min. */
const STEP_MIN = 15
const FARTHEST_MIN = 36 * 60
/** In hand over what is needed, min: the windows of another hour differ a little. */
const IN_HAND_MIN = 10

// Whether a pour that starts so much later still lies within the window of the layer below, and a later one at its
// own moment within that of this pour.
function bonds(work: Work, step: number, shiftMin: number): boolean {
  return recoatPairs(work).every(({ below, next }) => {
    const moved = next.step === step ? shiftMin : below.step === step ? -shiftMin : 0
    const window = work.casts[below.index]?.windows.recoat
    // A pour that waits for the window moves along with it.
    const own = next.step === step || work.clock[next.step]!.given
    if (moved === 0 || window === undefined || !own) return true
    const wait = intervalMin(work, below.step, next.step) + moved
    return wait >= window.open && (window.close === null || wait <= Math.max(window.close, window.open))
  })
}

/**
 * The nearest other start at which somebody is there to mix and for every need, as the fix of a pour whose moment
 * the document gives; none when no start within a day and a half does.
 */
export function otherStart(
  work: Work,
  step: number,
  at: LocalTime,
  needs: readonly Need[]
): Pick<Found, 'fix' | 'fixSays'> & { readonly words: string | null } {
  const begins = beginsOf(work.steps[step]!)
  const fits = (shift: number): boolean =>
    nobodyThere(work.shop, at, shift) === null &&
    bonds(work, step, shift) &&
    needs.every(n => {
      const most = n.span[1] - n.span[0]
      return thereFor(work, at, n, shift) >= Math.min(most, n.min + IN_HAND_MIN) - 1e-6
    })
  for (let k = 1; k * STEP_MIN <= FARTHEST_MIN; k++)
    for (const shift of [-k * STEP_MIN, k * STEP_MIN]) {
      if (!fits(shift)) continue
      const words = timeWords(at, shift)
      if (begins === undefined) return { words }
      const value = laterMoment(begins, shift)
      const own = work.steps[step]!
      const path = own.begins !== undefined ? `/steps/${step}/at` : `${own.pour!.at}/start`
      return {
        words,
        fix: [{ op: 'replace', path, value }],
        fixSays: `${own.pour!.id} at ${value.replace('T', ' ').slice(0, 16)}`
      }
    }
  return { words: null }
}
