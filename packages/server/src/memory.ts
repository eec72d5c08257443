import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'

/** Bytes let go of after which the engine of JavaScript is told to collect them. */
const OFTEN_BYTES = 4_000_000

/** Once nothing came or went for so long, what was still being sent is collected too, ms. */
const QUIET_MS = 1000

let collector: (() => void) | null = null
let letGoBytes = 0
let quiet: NodeJS.Timeout | undefined

/**
 * Says that so many bytes outside the heap are no longer needed. Photos are megabytes each, and the collector sees
 * only the small objects that hold them: by itself it lets a dozen gather before it looks. A collection takes a few
 * ms, once for every few megabytes that came or went. `now` is for work that does not pause.
 */
export function letGo(bytes: number, when: 'soon' | 'now' = 'soon'): void {
  letGoBytes += bytes
  if (letGoBytes < OFTEN_BYTES) return
  letGoBytes = 0
  // Soon: once what asked has returned, and nothing holds them any more.
  if (when === 'now') collect()
  else setImmediate(collect)
  clearTimeout(quiet)
  quiet = setTimeout(collect, QUIET_MS)
  quiet.unref()
}

function collect(): void {
  if (collector === null) {
    setFlagsFromString('--expose-gc')
    collector = runInNewContext('gc') as () => void
  }
  collector()
}
