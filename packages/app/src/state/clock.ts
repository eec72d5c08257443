import { signal } from '@preact/signals'

/** What the clock on the wall says, ms since 1970; it goes on only while somebody watches it. */
export const now = signal(Date.now())

let watchers = 0
let ticking: ReturnType<typeof setInterval> | undefined

/** Lets the clock go on until the answer is called. Times count from what was recorded, never from ticks. */
export function watchClock(): () => void {
  watchers++
  now.value = Date.now()
  ticking ??= setInterval(() => {
    now.value = Date.now()
  }, 1000)
  // A phone that was locked: the clock is right the moment it is looked at.
  const seen = () => {
    now.value = Date.now()
  }
  document.addEventListener('visibilitychange', seen)
  return () => {
    document.removeEventListener('visibilitychange', seen)
    if (--watchers > 0) return
    clearInterval(ticking)
    ticking = undefined
  }
}

/** A moment as documents write it: to the second, with what this device's clock is ahead of UTC. */
export function momentAt(ms: number): string {
  const ahead = -new Date(ms).getTimezoneOffset()
  const local = new Date(ms + ahead * 60_000).toISOString().slice(0, 19)
  const two = (n: number) => String(Math.floor(n)).padStart(2, '0')
  return `${local}${ahead < 0 ? '-' : '+'}${two(Math.abs(ahead) / 60)}:${two(Math.abs(ahead) % 60)}`
}
