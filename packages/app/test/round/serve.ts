import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { extname, join } from 'node:path'
import { build } from 'vite'

const TYPES: Record<string, string> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.woff2': 'font/woff2'
}

/** The policy the app is served under: what it forbids must not be needed here either. */
const POLICY =
  "default-src 'none'; script-src 'self'; style-src 'self'; font-src 'self'; img-src 'self' blob: data:; connect-src 'self'"

/** Builds the page of the view and serves it from this machine; `stop` ends it. */
export async function serveRound(): Promise<{ url: string; stop: () => Promise<void> }> {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-round-'))
  await build({
    configFile: false,
    root: import.meta.dirname,
    logLevel: 'warn',
    resolve: { conditions: ['source', 'browser', 'module', 'import', 'default'] },
    build: { outDir: folder, emptyOutDir: true, target: 'es2022', minify: false, chunkSizeWarningLimit: 9000 }
  })
  const server = createServer((ask, answer) => {
    const name = ask.url === '/' ? '/index.html' : ask.url!.split('?')[0]!
    try {
      const body = readFileSync(join(folder, name.replaceAll('..', '')))
      answer.writeHead(200, {
        'content-type': TYPES[extname(name)] ?? 'application/octet-stream',
        'content-security-policy': POLICY
      })
      answer.end(body)
    } catch {
      answer.writeHead(404).end()
    }
  })
  await new Promise<void>(done => server.listen(0, '127.0.0.1', done))
  const { port } = server.address() as AddressInfo
  return {
    url: `http://127.0.0.1:${port}/`,
    stop: async () => {
      await new Promise(done => server.close(done))
      rmSync(folder, { recursive: true, force: true })
    }
  }
}
