import { MOST_BODY } from './guard.ts'
import { letGo } from './memory.ts'
import { refused, ServerProblem } from './problem.ts'

/** A body may be silent this long, and take this long in all before its size counts, ms. */
const PATIENCE_MS = 20_000
const WHOLE_MS = 60_000
/** The slowest a body that goes on may come, bytes a second: half of 1 Mbit/s, the lowest rate of 802.11 (memory). */
const SLOWEST_BYTES_PER_S = 62_500

/** Room for a body of a size that is not said, bytes. */
const FIRST_BYTES = 65_536

/** The bytes of a request, no more than `most`. @throws ServerProblem 413, 408 */
export async function bodyBytes(request: Request, most = MOST_BODY): Promise<Buffer> {
  // As large as it is said to be, when it is said: parts are copied once and let go of one by one.
  const said = Number(request.headers.get('content-length') ?? '0')
  let whole = Buffer.allocUnsafe(said > 0 && said <= most ? said : FIRST_BYTES)
  let size = 0
  for await (const part of bodyParts(request, most)) {
    if (size + part.length > whole.length) {
      const larger = Buffer.allocUnsafe(Math.min(most, Math.max(2 * whole.length, size + part.length)))
      whole.copy(larger, 0, 0, size)
      whole = larger
    }
    whole.set(part, size)
    size += part.length
    letGo(part.length)
  }
  letGo(size)
  return whole.subarray(0, size)
}

/**
 * The bytes of a request as they come. One that stops in the middle is no body: what came of it is not used.
 * @throws ServerProblem 413 beyond `most`, 408 when too slow, 400 when it breaks off
 */
export async function* bodyParts(
  request: Request,
  most: number,
  patienceMs = PATIENCE_MS
): AsyncGenerator<Uint8Array, void> {
  const reader = request.body?.getReader()
  if (reader === undefined) return
  const begun = Date.now()
  let size = 0
  try {
    for (;;) {
      const part = await within(
        reader.read(),
        Math.min(patienceMs, begun + WHOLE_MS + (1000 * size) / SLOWEST_BYTES_PER_S - Date.now())
      )
      if (part.done) return
      size += part.value.length
      if (size > most)
        throw new ServerProblem(413, 'too-large', `found more than ${most} bytes; allowed: ${most}`)
      yield part.value
    }
  } finally {
    void reader.cancel().catch(() => undefined)
  }
}

async function within<T>(reading: Promise<T>, ms: number): Promise<T> {
  let late: NodeJS.Timeout | undefined
  try {
    return await Promise.race([
      reading,
      new Promise<never>((_, fail) => {
        late = setTimeout(
          () =>
            fail(
              new ServerProblem(408, 'too-slow', 'the body: found one that stopped; allowed: a steady one')
            ),
          Math.max(0, ms)
        )
      })
    ])
  } catch (e) {
    if (e instanceof ServerProblem) throw e
    throw refused('the body: found one that broke off; allowed: a whole one')
  } finally {
    clearTimeout(late)
  }
}

export async function bodyText(request: Request, most: number): Promise<string> {
  const bytes = await bodyBytes(request, most)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw refused('the body: found bytes that are no UTF-8; allowed: text in UTF-8')
  }
}

/** A JSON object. @throws ServerProblem for anything else, and for another content type */
export async function bodyJson(request: Request, most = 2_500_000): Promise<Record<string, unknown>> {
  const type = request.headers.get('content-type') ?? ''
  if (!/^application\/json\b/i.test(type))
    throw new ServerProblem(
      415,
      'not-json',
      `found content of type "${type.slice(0, 60)}"; allowed: application/json`
    )
  let value: unknown
  try {
    value = JSON.parse(await bodyText(request, most))
  } catch (e) {
    if (e instanceof ServerProblem) throw e
    throw refused('the body: found text that is no JSON; allowed: a JSON object')
  }
  if (value === null || typeof value !== 'object' || Array.isArray(value))
    throw refused('the body: allowed: a JSON object')
  return value as Record<string, unknown>
}
