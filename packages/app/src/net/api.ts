import type { Json } from '../worker/messages.ts'

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

/** A request is given up after this long, ms. */
const PATIENCE_MS = 15_000

/** Asks the server. @throws ApiProblem for an answer of 400 and up, Unreachable without one */
export async function api<T = Json>(method: string, path: string, body?: unknown): Promise<T> {
  const json = body !== undefined && !(body instanceof Blob)
  let response: Response
  try {
    response = await fetch(path, {
      method,
      headers: {
        'x-castwright': '1',
        ...(json
          ? { 'content-type': 'application/json' }
          : body instanceof Blob
            ? { 'content-type': body.type }
            : {})
      },
      ...(body === undefined ? {} : { body: json ? JSON.stringify(body) : (body as Blob) }),
      signal: AbortSignal.timeout(PATIENCE_MS)
    })
  } catch {
    throw new Unreachable()
  }
  const text = await response.text()
  let read: unknown = {}
  try {
    read = text === '' ? {} : JSON.parse(text)
  } catch {
    if (response.ok) throw new Unreachable()
  }
  if (!response.ok) throw new ApiProblem(response.status, read as Json)
  return read as T
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
}
