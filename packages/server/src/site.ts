import { readdirSync, readFileSync } from 'node:fs'
import { extname, join } from 'node:path'

interface SiteFile {
  readonly type: string
  readonly bytes: Buffer<ArrayBuffer>
  readonly compressed: Buffer<ArrayBuffer> | null
  readonly lasting: boolean
}

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
  '.webmanifest': 'application/manifest+json'
}

/**
 * The app's files, all read when the server starts: what is asked for is looked up in a table, so that no path of a
 * request ever reaches the file system.
 */
export class Site {
  private readonly files = new Map<string, SiteFile>()

  /** @throws nothing: without a folder the site is empty, and says so when asked */
  constructor(folder: string | null) {
    if (folder === null) return
    let entries: string[] = []
    try {
      entries = readdirSync(folder, { recursive: true, withFileTypes: true })
        .filter(f => f.isFile())
        .map(f => join(f.parentPath, f.name))
    } catch {
      return
    }
    const known = new Set(entries)
    for (const path of entries) {
      const type = TYPES[extname(path)]
      if (type === undefined) continue
      const name = path.slice(folder.length).replaceAll('\\', '/').replace(/^\/?/, '/')
      this.files.set(name, {
        type,
        bytes: Buffer.from(readFileSync(path)),
        compressed: known.has(`${path}.br`) ? Buffer.from(readFileSync(`${path}.br`)) : null,
        lasting: name.startsWith('/assets/')
      })
    }
  }

  /** The answer for a path; for places of the app the page itself; null for what is not there. */
  answer(path: string, accepts: string, page: boolean): Response | null {
    const file =
      this.files.get(path === '/' ? '/index.html' : path) ??
      (page ? this.files.get('/index.html') : undefined)
    if (file === undefined) return page ? notBuilt() : null
    const squeezed = file.compressed !== null && /\bbr\b/.test(accepts)
    return new Response(squeezed ? file.compressed : file.bytes, {
      headers: {
        'content-type': file.type,
        'cache-control': file.lasting ? 'public, max-age=31536000, immutable' : 'no-cache',
        ...(file.compressed === null ? {} : { vary: 'accept-encoding' }),
        ...(squeezed ? { 'content-encoding': 'br' } : {})
      }
    })
  }
}

function notBuilt(): Response {
  return new Response(
    '<!doctype html><title>Castwright</title><p>The app is not built yet: run "npm start" once.</p>',
    {
      status: 503,
      headers: { 'content-type': 'text/html; charset=utf-8' }
    }
  )
}
