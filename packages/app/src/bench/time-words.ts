/** Words as a sentence begins. */
export function capital(words: string): string {
  return words.slice(0, 1).toUpperCase() + words.slice(1)
}

/** A moment on the clock of this device: "09:05"; with its day when it is not today: "Sun 09:05". */
export function clockTime(ms: number, nowMs: number): string {
  const at = new Date(ms)
  const time = at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' })
  const days = dayOf(ms) - dayOf(nowMs)
  if (days === 0) return time
  const day = at.toLocaleDateString('en-GB', { weekday: 'short' })
  if (days > 0 && days < 7) return `${day} ${time}`
  return `${at.toLocaleDateString('en-GB', { weekday: 'short', day: 'numeric', month: 'short' })} ${time}`
}

function dayOf(ms: number): number {
  const d = new Date(ms)
  return Math.floor(Date.UTC(d.getFullYear(), d.getMonth(), d.getDate()) / 86_400_000)
}

const MIN = 60_000

/** A span as it is counted down: figures and what they count. Never less than a minute until it is over. */
export function counted(ms: number): {
  readonly figure: string
  readonly unit: 'minutes' | 'hours' | 'days'
} {
  const min = Math.ceil(Math.max(0, ms) / MIN)
  if (min < 100) return { figure: String(min), unit: 'minutes' }
  if (min < 48 * 60)
    return { figure: `${Math.floor(min / 60)}:${String(min % 60).padStart(2, '0')}`, unit: 'hours' }
  return { figure: String(Math.round(min / 144) / 10), unit: 'days' }
}
