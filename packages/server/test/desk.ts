import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { ServeOptions, Serving } from '../src/index.ts'
import { serve } from '../src/index.ts'

/** A server of its own for a test: its folder, its address, and requests as our own pages make them. */
export interface Desk {
  readonly folder: string
  readonly serving: Serving
  ask(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<Response>
  close(): Promise<void>
}

export async function desk(options: Partial<ServeOptions> = {}): Promise<Desk> {
  const folder = options.dataDir ?? mkdtempSync(join(tmpdir(), 'castwright-server-'))
  const serving = await serve({ dataDir: folder, port: 0, site: null, version: 'test', ...options })
  return {
    folder,
    serving,
    ask: (method, path, body, headers = {}) =>
      fetch(`${serving.url}${path}`, {
        method,
        headers: {
          ...(method === 'GET' ? {} : { 'x-castwright': '1' }),
          ...(body !== undefined && !(body instanceof Uint8Array) && typeof body !== 'string'
            ? { 'content-type': 'application/json' }
            : {}),
          ...headers
        },
        ...(body === undefined
          ? {}
          : {
              body:
                body instanceof Uint8Array || typeof body === 'string'
                  ? (body as BodyInit)
                  : JSON.stringify(body)
            })
      }),
    close: async () => {
      await serving.close()
      if (options.dataDir === undefined) rmSync(folder, { recursive: true, force: true })
    }
  }
}

/** A document as small as the server takes. */
export const pieceNamed = (name: string, more: Record<string, unknown> = {}) => ({
  castwright: 1,
  name,
  ...more
})
