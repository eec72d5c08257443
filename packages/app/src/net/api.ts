import type { Json } from '../worker/document.ts'

/** An answer that is not what was asked for: what the server says. */
export class ApiProblem extends Error {
  readonly status: number
  readonly code: string
  readonly body: Json
  constructor(status: number, body: Json) {
    const error = (body['error'] ?? {}) as { code?: string; says?: string }
    super(error.says ?? `the server answered ${status}`)
    this.status = status
    this.code = error.code ?? 'unknown'
    this.body = body
  }
}

/** The network is not there, or the server is not. */
export class Unreachable extends Error {}

/** A server that is silent for this long is not there, ms. */
const PATIENCE_MS = 15_000
/**
 * Slowest network a body is given time for, bytes a second. The lowest rate of IEEE 802.11 is 1 Mbit/s (memory), and
 * half of a rate reaches the user (practice): a phone at the far end of the workshop.
 */
export const SLOWEST_BYTES_PER_S = 0.5 * (1_000_000 / 8)

/** How long a body of so many bytes may be on its way until the answer begins, ms; at least 15 s. */
export function patienceMs(bytes: number): number {
  return PATIENCE_MS + (1000 * bytes) / SLOWEST_BYTES_PER_S
}

/**
 * Asks the server. A body is given time by its size; an answer may be as long as it likes while it keeps coming.
 * @throws ApiProblem for an answer of 400 and up, Unreachable without a whole one
 */
export async function api<T = Json>(method: string, path: string, body?: unknown): Promise<T> {
  const blob = body === undefined || body instanceof Blob ? body : jsonBody(body)
  const over = new AbortController()
  let late = setTimeout(() => over.abort(), patienceMs(blob?.size ?? 0))
  const heard = () => {
    clearTimeout(late)
    late = setTimeout(() => over.abort(), PATIENCE_MS)
  }
  let response: Response
  let text: string
  try {
    response = await fetch(path, {
      method,
      headers: { 'x-castwright': '1', ...(blob === undefined ? {} : { 'content-type': blob.type }) },
      ...(blob === undefined ? {} : { body: blob }),
      signal: over.signal
    })
    text = await wholeText(response, heard)
  } catch {
    throw new Unreachable()
  } finally {
    clearTimeout(late)
  }
  let read: unknown = {}
  try {
    read = text === '' ? {} : JSON.parse(text)
  } catch {
    if (response.ok) throw new Unreachable()
  }
  if (!response.ok) throw new ApiProblem(response.status, read as Json)
  return read as T
}

function jsonBody(value: unknown): Blob {
  return new Blob([JSON.stringify(value)], { type: 'application/json' })
}

// Each part that comes is a sign of life.
async function wholeText(response: Response, heard: () => void): Promise<string> {
  heard()
  const reader = response.body?.getReader()
  if (reader === undefined) return ''
  const decoder = new TextDecoder()
  let text = ''
  for (;;) {
    const { done, value } = await reader.read()
    if (done) return text + decoder.decode()
    heard()
    text += decoder.decode(value, { stream: true })
  }
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz234567'

/** A new id: 16 letters, 80 bits of chance. */
export function newId(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))].map(b => LETTERS[b % 32]).join('')
}

export interface PieceSummary {
  readonly id: string
  readonly name: string
  readonly kind: string | null
  readonly revision: number
  readonly saved: string
}

export interface Aside {
  readonly number: number
  readonly base: number
  readonly saved: string
  readonly device: string | null
}

export interface StoredPiece {
  readonly id: string
  readonly revision: number
  readonly saved: string
  readonly document: Json
  readonly files: Readonly<Record<string, string>>
  readonly aside?: readonly Aside[]
  /** What was measured of it, one record each. */
  readonly readings?: readonly Json[]
}
