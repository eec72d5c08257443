import type { IncomingMessage } from 'node:http'
import { isIP } from 'node:net'
import { MOST_ARCHIVE } from './archive-form.ts'
import type { Device, DeviceStore } from './device-store.ts'
import { ServerProblem } from './problem.ts'

export const COOKIE = 'castwright'
/** Larger bodies are refused before they are read. */
export const MOST_BODY = 13_000_000

/** Who asks, and whether the request may be answered at all. */
export interface Guard {
  /** Names and addresses this server goes by, with and without the port. */
  readonly hosts: ReadonlySet<string>
  readonly https: boolean
  readonly devices: DeviceStore
  readonly now: () => Date
}

const LOOPBACK = /^(127\.\d+\.\d+\.\d+|::1|::ffff:127\.\d+\.\d+\.\d+)$/
const LOOPBACK_HOST = /^(localhost|127\.0\.0\.1|\[::1\])(:\d+)?$/

/** Whether a path, as the router reads it, is one that only paired devices may ask. */
export function isApi(path: string): boolean {
  return path.startsWith('/api/') || path === '/health'
}

/**
 * Refuses a request under a name that is not ours (a page elsewhere that points its own name here gets nothing), and
 * any change that does not come from our own pages. `path` is the one the router reads, percent signs taken out.
 * @throws ServerProblem 421, 403, 413
 */
export function admit(guard: Guard, request: Request, path: string): void {
  const host = request.headers.get('host') ?? ''
  if (!guard.hosts.has(host.toLowerCase()))
    throw new ServerProblem(
      421,
      'not-this-host',
      `asked under the name "${host.slice(0, 80)}"; allowed: the addresses the desk shows`
    )
  const length = Number(request.headers.get('content-length') ?? '0')
  const most = path === '/api/import' ? MOST_ARCHIVE : MOST_BODY
  if (!(length <= most)) throw new ServerProblem(413, 'too-large', `found ${length} bytes; allowed: ${most}`)
  if (request.method === 'GET' || request.method === 'HEAD') {
    const site = request.headers.get('sec-fetch-site')
    const own = site === null || site === 'same-origin' || site === 'none'
    // A link from elsewhere may open the app, and nothing else of it.
    const opens = request.headers.get('sec-fetch-mode') === 'navigate' && !isApi(path)
    if (!own && !opens)
      throw new ServerProblem(403, 'cross-site', 'asked by a page of another site; allowed: our own pages')
    return
  }
  const site = request.headers.get('sec-fetch-site')
  if (site !== null && site !== 'same-origin' && site !== 'none')
    throw new ServerProblem(
      403,
      'cross-site',
      'a change asked by a page of another site; allowed: our own pages'
    )
  const origin = request.headers.get('origin')
  if (origin !== null && origin !== `${guard.https ? 'https' : 'http'}://${host}`)
    throw new ServerProblem(
      403,
      'cross-site',
      `a change asked by ${origin.slice(0, 80)}; allowed: our own pages`
    )
  if (request.headers.get('x-castwright') !== '1')
    throw new ServerProblem(
      403,
      'no-header',
      'a change without the header x-castwright; allowed: our own pages'
    )
}

/** The device that asks: the desk itself over loopback, or one that was paired; null for neither. */
export function deviceOf(
  guard: Guard,
  request: Request,
  incoming: IncomingMessage | undefined
): Device | null {
  const host = request.headers.get('host') ?? ''
  const from = incoming?.socket.remoteAddress ?? ''
  if (LOOPBACK_HOST.test(host) && LOOPBACK.test(from)) return { id: 'desk', name: 'Desk', desk: true }
  const secret = cookie(request, COOKIE)
  return secret === null ? null : guard.devices.of(secret, guard.now().toISOString())
}

function cookie(request: Request, name: string): string | null {
  for (const part of (request.headers.get('cookie') ?? '').slice(0, 8000).split(';')) {
    const [key, ...value] = part.trim().split('=')
    if (key === name) return value.join('=')
  }
  return null
}

/** Every host name a server on these addresses and this port answers to. */
export function hostsOf(names: readonly string[], port: number): Set<string> {
  const out = new Set<string>()
  for (const name of ['localhost', '127.0.0.1', '[::1]', ...names.map(n => (isIP(n) === 6 ? `[${n}]` : n))]) {
    out.add(`${name.toLowerCase()}:${port}`)
    if (port === 80 || port === 443) out.add(name.toLowerCase())
  }
  return out
}

/**
 * Headers of every answer: no script but our own files, no other site, nothing guessed. 'wasm-unsafe-eval' lets the
 * worker compile the heat kernel that comes within our own script; it allows WebAssembly alone, no text as script
 * (CSP Level 3): eval and inline scripts stay refused. Without it the plain kernel would run, several times slower.
 */
const HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy':
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; font-src 'self'; img-src 'self' blob: data:; connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(self), geolocation=(), microphone=(), payment=(), usb=()'
}

/**
 * Headers of the answer to a request. Windows of other sites are kept apart from ours where the browser can: over
 * https and on loopback. Under a plain name it ignores that header and complains of it on every page.
 */
export function headersFor(guard: Guard, request: Request): Readonly<Record<string, string>> {
  const apart = guard.https || LOOPBACK_HOST.test(request.headers.get('host') ?? '')
  return apart ? { ...HEADERS, 'cross-origin-opener-policy': 'same-origin' } : HEADERS
}
