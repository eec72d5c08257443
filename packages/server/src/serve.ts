import type { Server } from 'node:http'
import { createServer, Server as HttpsServer } from 'node:https'
import type { PageAssets } from '@castwright/engine'
import { serve as listen } from '@hono/node-server'
import { authorityApi } from './api-authority.ts'
import { sheetsApi } from './api-sheets.ts'
import { makeApp } from './app.ts'
import type { Certificates } from './certificates.ts'
import { openFolder } from './database.ts'
import { DeviceStore } from './device-store.ts'
import { kindOf } from './document.ts'
import { EventFeed } from './event-feed.ts'
import type { ReadingEngine } from './parts.ts'
import { PieceStore } from './piece-store.ts'
import { localAddresses, Places } from './places.ts'
import { Planner } from './planner.ts'
import { ServerProblem } from './problem.ts'
import { ShopStore } from './shop-store.ts'
import { Site } from './site.ts'

/** How often the addresses of this machine are looked at, ms. */
const LOOK_MS = 60_000

/** A piece the server begins with. */
export interface Example {
  readonly id: string
  readonly document: Record<string, unknown>
  readonly files: Readonly<Record<string, string>>
}

export interface ServeOptions {
  /** Folder of the database; made when missing. */
  readonly dataDir: string
  /** Port asked for; 0 for any. `tries` ports from it on are tried. */
  readonly port: number
  readonly tries?: number
  /** Serves the local network too, to paired devices. */
  readonly lan?: boolean
  /** Serves over https by a certificate authority of the folder's own. */
  readonly https?: boolean
  /** Names this server answers to besides its own. */
  readonly names?: readonly string[]
  /** Addresses of this machine in its local networks, looked at again every `lookMs`. */
  readonly addresses?: () => readonly string[]
  readonly lookMs?: number
  /** Folder of the built app; null: none. */
  readonly site: string | null
  /** Put in when there is no piece yet. */
  readonly examples?: readonly Example[]
  readonly version: string
  /** Script, style and type of the page; asked for when a page is. */
  readonly assets?: () => PageAssets
  readonly now?: () => Date
  /** An engine that is loaded already; left out: loaded when a reading comes. */
  readonly engine?: ReadingEngine
  readonly log?: (line: string) => void
}

export interface Serving {
  readonly url: string
  readonly urls: readonly string[]
  readonly port: number
  close(): Promise<void>
}

/**
 * Opens the folder and serves it until closed.
 * @throws ServerProblem when the folder or the port cannot be had
 */
export async function serve(options: ServeOptions): Promise<Serving> {
  const now = options.now ?? (() => new Date())
  const open = openFolder(options.dataDir, now)
  const pieces = new PieceStore(open.db)
  const devices = new DeviceStore(open.db)
  const feed = new EventFeed(now().getTime())
  const planner = new Planner()
  const lan = options.lan ?? false
  const https = options.https ?? false
  const places = new Places(lan, https, options.names ?? [], options.addresses ?? localAddresses)
  putExamples(pieces, options.examples ?? [], now)
  const parts = {
    open,
    pieces,
    devices,
    feed,
    shop: new ShopStore(open.db),
    now,
    engine: options.engine ?? (() => import('@castwright/engine')),
    version: options.version,
    https,
    lan,
    urls: () => places.forOthers
  }
  // Loaded on demand: a server over http writes no certificates.
  const certificates = async () =>
    (await import('./certificates.ts')).certificatesOf(options.dataDir, places.names, now())
  let secure: Certificates | null = null
  let server: Server
  try {
    if (https) secure = await certificates()
    const app = makeApp(
      parts,
      { hosts: places.hosts, https, devices, now },
      new Site(options.site),
      options.log ?? (() => undefined),
      more => {
        sheetsApi(more, parts, planner, () => options.assets?.() ?? null)
        if (https) authorityApi(more, () => secure?.authority ?? '')
      }
    )
    server = await bound(app.fetch, lan ? '0.0.0.0' : '127.0.0.1', options.port, options.tries ?? 1, secure)
  } catch (e) {
    open.close()
    throw e
  }
  const port = (server.address() as { port: number }).port
  places.at(port)
  // A laptop that is carried elsewhere, or a certificate that ends: the names it goes by are looked at again.
  let renewing: Promise<void> | null = null
  const renew = async () => {
    try {
      const made = await certificates()
      if (made.certificate !== secure?.certificate && server instanceof HttpsServer)
        server.setSecureContext({ key: made.key, cert: `${made.certificate}\n${made.authority}` })
      secure = made
    } catch (e) {
      options.log?.(String(e))
    }
    renewing = null
  }
  const look = setInterval(() => {
    places.look()
    // One at a time: an older one that ends later would bring its older names back.
    if (secure !== null) renewing ??= renew()
  }, options.lookMs ?? LOOK_MS)
  look.unref()
  return {
    url: places.urls[0]!,
    urls: places.urls,
    port,
    close: async () => {
      clearInterval(look)
      feed.end()
      planner.close()
      const closed = new Promise<void>(done => server.close(() => done()))
      server.closeIdleConnections()
      const cut = setTimeout(() => server.closeAllConnections(), 1500)
      await closed
      clearTimeout(cut)
      await renewing
      open.close()
    }
  }
}

function bound(
  fetch: Parameters<typeof listen>[0]['fetch'],
  host: string,
  port: number,
  tries: number,
  secure: Certificates | null
): Promise<Server> {
  return new Promise((done, fail) => {
    const options =
      secure === null
        ? { fetch, hostname: host, port }
        : {
            fetch,
            hostname: host,
            port,
            createServer,
            serverOptions: { key: secure.key, cert: `${secure.certificate}\n${secure.authority}` }
          }
    const server = listen(options, () => done(server as Server))
    // A large body on a slow radio takes longer than Node allows by itself; `body.ts` has its own patience.
    if ('requestTimeout' in server) server.requestTimeout = 0
    server.on('error', (e: Error & { code?: string }) => {
      if (e.code !== 'EADDRINUSE') fail(e)
      else if (tries > 1) done(bound(fetch, host, port + 1, tries - 1, secure))
      else
        fail(
          new ServerProblem(
            500,
            'port',
            `port ${port}: found in use; allowed: a free one: give another --port`
          )
        )
    })
  })
}

function putExamples(pieces: PieceStore, examples: readonly Example[], now: () => Date): void {
  if (pieces.list().length > 0 || pieces.list(true).length > 0) return
  for (const e of [...examples].reverse()) {
    const saved = now().toISOString()
    const name = String(e.document['name'])
    const kind = kindOf(e.document)
    pieces.save({
      id: e.id,
      base: 0,
      edit: `example-${e.id}`,
      text: JSON.stringify(e.document),
      name,
      kind,
      says: 'an example, invented',
      device: null,
      saved
    })
    for (const [file, text] of Object.entries(e.files)) pieces.putFile(e.id, file, text, saved)
  }
}
