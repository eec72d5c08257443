import { MOST_BODY } from './guard.ts'
import { refused, ServerProblem } from './problem.ts'

/** A body is waited for this long, ms. */
const PATIENCE_MS = 20_000

/** The bytes of a request, no more than `most`. @throws ServerProblem 413, 408 */
export async function bodyBytes(request: Request, most = MOST_BODY): Promise<Uint8Array> {
  const reader = request.body?.getReader()
  if (reader === undefined) return new Uint8Array(0)
  const parts: Uint8Array[] = []
  let size = 0
  const late = setTimeout(() => void reader.cancel(), PATIENCE_MS)
  try {
    for (;;) {
      const { done, value } = await reader.read()
      if (done) break
      size += value.length
      if (size > most) {
        void reader.cancel()
        throw new ServerProblem(413, 'too-large', `found more than ${most} bytes; allowed: ${most}`)
      }
      parts.push(value)
    }
  } finally {
    clearTimeout(late)
  }
  return Buffer.concat(parts)
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
