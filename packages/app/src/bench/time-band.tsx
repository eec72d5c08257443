import type { BenchTimer } from '../../../engine/src/sheets/bench-timer.ts'
import { now } from '../state/clock.ts'
import { benchWords as b } from '../text/bench.ts'
import { clockTime, counted } from './time-words.ts'

const HOUR = 3_600_000

/** The time that counts at a step: the one that is over first; else the wait or best time that passed last. */
export function headTimer(timers: readonly BenchTimer[], nowMs: number): BenchTimer | null {
  const ahead = timers.filter(t => endOf(t) > nowMs).sort((p, q) => endOf(p) - endOf(q))
  return ahead[0] ?? timers.findLast(t => t.kind === 'wait' || t.kind === 'best') ?? null
}

function endOf(t: BenchTimer): number {
  if (t.kind === 'moment' || t.kind === 'wait') return t.openMs
  return t.closeMs ?? Number.POSITIVE_INFINITY
}

/** What is counted, and in which words. */
export function countOf(t: BenchTimer, nowMs: number): { readonly ms: number; readonly says: string } {
  if (t.kind === 'wait')
    return nowMs < t.openMs ? { ms: t.openMs - nowMs, says: b.waits } : { ms: 0, says: b.over }
  if (t.kind === 'moment')
    return nowMs < t.openMs ? { ms: t.openMs - nowMs, says: b.due } : { ms: nowMs - t.openMs, says: b.past }
  if (nowMs < t.openMs) return { ms: t.openMs - nowMs, says: b.opens }
  if (t.closeMs === null) return { ms: nowMs - t.openMs, says: b.over }
  if (nowMs > t.closeMs) return { ms: nowMs - t.closeMs, says: b.past }
  return { ms: t.closeMs - nowMs, says: t.kind === 'until' ? b.leftUntil : b.left }
}

/** The best time as a band with soft ends, where now lies in it, and the count in large figures. */
export function TimeBand({ timer }: { readonly timer: BenchTimer }) {
  const at = now.value
  const { ms, says } = countOf(timer, at)
  const { figure, unit } = counted(ms)
  return (
    <section class="time" aria-label={timer.says}>
      <h3>{timer.says}</h3>
      {timer.kind === 'best' || timer.kind === 'until' ? <Band timer={timer} at={at} /> : null}
      <p class="count">
        <b>{figure}</b>
        <span>
          <strong>{b.units[unit][figure === '1' ? 0 : 1]}</strong> {says}
          <br />
          {b.open(
            clockTime(timer.openMs, at),
            timer.closeMs === null || timer.kind === 'wait' ? null : clockTime(timer.closeMs, at)
          )}
        </span>
      </p>
    </section>
  )
}

function Band({ timer, at }: { readonly timer: BenchTimer; readonly at: number }) {
  const close = timer.closeMs ?? timer.openMs + 12 * HOUR
  const [a0, a1] = timer.openBandMs ?? [timer.openMs, timer.openMs]
  const [c0, c1] = timer.closeBandMs ?? [close, close]
  const first = Math.min(a0, at)
  const last = Math.max(c1, at)
  const room = Math.max(0.06 * (last - first), 60_000)
  const [from, to] = [first - room, last + room]
  const x = (ms: number) => `${((100 * (ms - from)) / (to - from)).toFixed(2)}%`
  const wash = `linear-gradient(to right, transparent ${x(a0)}, var(--window) ${x(Math.max(a0, a1))}, var(--window) ${x(Math.max(a1, c0))}, transparent ${x(Math.max(c0, c1))})`
  return (
    <div class="band-of-time" aria-hidden="true">
      <span class="now-words" style={{ left: x(at) }}>
        {b.now(clockTime(at, at))}
      </span>
      <div class="bar" style={{ background: wash }}>
        <i style={{ left: x(timer.openMs) }} />
        {timer.closeMs === null ? null : <i style={{ left: x(timer.closeMs) }} />}
        <u style={{ left: x(at) }} />
      </div>
      <span class="end" style={{ left: x(timer.openMs) }}>
        {clockTime(timer.openMs, at)}
      </span>
      {timer.closeMs === null ? null : (
        <span class="end" style={{ left: x(timer.closeMs) }}>
          {clockTime(timer.closeMs, at)}
        </span>
      )}
    </div>
  )
}
