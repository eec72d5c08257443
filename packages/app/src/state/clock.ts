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
