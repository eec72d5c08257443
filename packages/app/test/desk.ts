import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import type { ServeOptions } from '../../server/src/index.ts'
import { serve } from '../../server/src/index.ts'

export type Document = Record<string, unknown>

/** A piece as the server answers it. */
export interface Stored {
  readonly id: string
  readonly revision: number
  readonly document: Document
}

/** A real server over a folder of its own, with the built app, on a free loopback port. */
export interface Desk {
  readonly url: string
  readonly port: number
  /** Lays a piece among the others, with the drawings it names. */
  lay(id: string, document: Document, files?: Readonly<Record<string, string>>): Promise<void>
  piece(id: string): Promise<Stored>
  pieces(): Promise<readonly { readonly id: string; readonly name: string; readonly revision: number }[]>
  revisions(id: string): Promise<number>
  ask(method: string, path: string, body?: unknown): Promise<Response>
}

const ROOT = join(import.meta.dirname, '..', '..', '..')
const SITE = join(import.meta.dirname, '..', 'dist', 'site')

/** Starts a server; it ends with the test that started it. `now` is its clock. */
export async function openDesk(
  options: Partial<Pick<ServeOptions, 'names' | 'lan' | 'now'>> = {}
): Promise<Desk> {
  const dataDir = mkdtempSync(join(tmpdir(), 'castwright-desk-'))
  const serving = await serve({ dataDir, port: 0, site: SITE, version: 'test', ...options })
  onTestFinished(async () => {
    await serving.close()
    rmSync(dataDir, { recursive: true, force: true })
  })
  const ask = (method: string, path: string, body?: unknown) =>
    fetch(`${serving.url}${path}`, {
      method,
      headers: {
        'x-castwright': '1',
        'content-type': typeof body === 'string' ? 'text/plain' : 'application/json'
      },
      ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) })
    })
  const asked = async <T>(path: string): Promise<T> => {
    const answer = await ask('GET', path)
    if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`)
    return (await answer.json()) as T
  }
  return {
    url: serving.url,
    port: serving.port,
    ask,
    lay: async (id, document, files = {}) => {
      const answer = await ask('PUT', `/api/pieces/${id}`, { base: 0, edit: `laid-${id}`, document })
      if (!answer.ok) throw new Error(`${id}: ${await answer.text()}`)
      for (const [name, text] of Object.entries(files))
        await ask('PUT', `/api/pieces/${id}/files/${name}`, text)
    },
    piece: id => asked<Stored>(`/api/pieces/${id}`),
    pieces: async () => (await asked<{ pieces: Stored[] }>('/api/pieces')).pieces as never,
    revisions: async id =>
      (await asked<{ revisions: unknown[] }>(`/api/pieces/${id}/revisions`)).revisions.length
  }
}

/** A piece of the folder of examples. */
export function example(name: string): Document {
  return JSON.parse(readFileSync(join(ROOT, 'examples', `${name}.piece.json`), 'utf8')) as Document
}

/** A drawing of the folder of examples. */
export function drawing(name: string): string {
  return readFileSync(join(ROOT, 'examples', name), 'utf8')
}
