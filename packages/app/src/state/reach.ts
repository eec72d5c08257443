import { signal } from '@preact/signals'
import { ApiProblem, api, Unreachable } from '../net/api.ts'
import { w } from '../text/words.ts'

/** Since when the server is out of reach, as this device's clock says; null while it is in reach. */
export const awaySince = signal<Date | null>(null)
/** Who this device is to the server; null: not paired. */
export const device = signal<{ id: string; name: string; desk: boolean } | null>(null)
export const paired = signal(true)

/** How often a server out of reach is looked for, ms. */
const LOOK_MS = 4000

const back: (() => void)[] = []
let looking: ReturnType<typeof setInterval> | undefined

/** Tells when the server comes back in reach. */
export function whenBack(then: () => void): void {
  back.push(then)
}

export function reached(): void {
  if (awaySince.value === null) return
  awaySince.value = null
  clearInterval(looking)
  for (const then of back) then()
}

export function unreached(): void {
  if (awaySince.value !== null) return
  awaySince.value = new Date()
  // A server that was started again tells nobody: it is looked for.
  clearInterval(looking)
  looking = setInterval(() => void greet(), LOOK_MS)
}

interface Hello {
  readonly device: { id: string; name: string; desk: boolean } | null
}

/** Asks whether the server is there and knows this device. */
export async function greet(): Promise<void> {
  try {
    const hello = await api<Hello>('GET', '/api/hello')
    device.value = hello.device
    paired.value = hello.device !== null
    reached()
  } catch {
    unreached()
  }
}

/** What the server answered, in words. */
export function problemSays(e: ApiProblem): string {
  return e.code === 'no-such-piece' ? w.state.gone : e.message
}

/** Does what asks the server; empty when it went well, else what it met, in words. */
export async function told(ask: () => Promise<void>): Promise<string> {
  try {
    await ask()
    reached()
    return ''
  } catch (e) {
    if (e instanceof ApiProblem) return problemSays(e)
    if (!(e instanceof Unreachable)) return e instanceof Error ? e.message : String(e)
    unreached()
    return w.state.unreachable
  }
}
