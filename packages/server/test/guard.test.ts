import { request } from 'node:http'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { authorityApi } from '../src/api-authority.ts'
import { sheetsApi } from '../src/api-sheets.ts'
import { makeApp } from '../src/app.ts'
import { openFolder } from '../src/database.ts'
import { DeviceStore } from '../src/device-store.ts'
import { EventFeed } from '../src/event-feed.ts'
import { hostsOf, isApi } from '../src/guard.ts'
import { PieceStore } from '../src/piece-store.ts'
import { Planner } from '../src/planner.ts'
import { ShopStore } from '../src/shop-store.ts'
import { Site } from '../src/site.ts'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

let d: Desk
const NAME = 'desk.test'
beforeAll(async () => {
  d = await desk({ names: [NAME] })
  await d.ask('PUT', '/api/pieces/guarded001', {
    base: 0,
    edit: 'guard-edit',
    document: pieceNamed('Guarded')
  })
})
afterAll(() => d.close())

interface Got {
  readonly status: number
  readonly headers: Record<string, string | string[] | undefined>
  readonly text: string
}

/** A request under any host name, as a browser elsewhere would send it. */
function raw(method: string, path: string, headers: Record<string, string>, body = ''): Promise<Got> {
  return new Promise((done, fail) => {
    const sized = body === '' ? headers : { ...headers, 'content-length': String(Buffer.byteLength(body)) }
    const r = request({ host: '127.0.0.1', port: d.serving.port, method, path, headers: sized }, answer => {
      let text = ''
      answer.on('data', part => {
        text += part
        // An event stream does not end: its beginning is answer enough.
        if (path === '/api/events') answer.destroy()
      })
      answer.on('close', () => done({ status: answer.statusCode!, headers: answer.headers, text }))
    })
    r.on('error', fail)
    r.end(body)
  })
}

const lan = (more: Record<string, string> = {}) => ({ host: `${NAME}:${d.serving.port}`, ...more })
const change = { 'x-castwright': '1', 'content-type': 'application/json' }

describe('an unpaired device', () => {
  test('gets nothing by any route there is, but to say who it is and to be paired', async () => {
    const open = openFolder(`${d.folder}/routes`, () => new Date())
    const pieces = new PieceStore(open.db)
    const devices = new DeviceStore(open.db)
    const parts = {
      open,
      pieces,
      devices,
      feed: new EventFeed(1),
      shop: new ShopStore(open.db),
      now: () => new Date(),
      engine: () => import('@castwright/engine'),
      version: 'test',
      https: false,
      lan: true,
      urls: () => ['http://x']
    }
    const app = makeApp(
      parts,
      { hosts: hostsOf([NAME], 80), https: false, devices, now: parts.now },
      new Site(null),
      () => undefined,
      more => {
        sheetsApi(more, parts, new Planner(), () => null)
        authorityApi(more, () => 'PEM')
      }
    )
    const routes = app.routes.filter(r => r.method !== 'ALL' && isApi(r.path))
    open.close()
    expect(routes.length).toBeGreaterThan(20)
    // Anything else is open to whoever asks: the files of the app, and what a phone installs before it is paired.
    const others = app.routes.filter(r => r.method !== 'ALL' && !isApi(r.path))
    expect(others.map(r => `${r.method} ${r.path}`).sort()).toEqual(['GET /*', 'GET /authority.crt'])
    const admitted: string[] = []
    for (const { method, path } of routes) {
      const got = await raw(
        method,
        path.replaceAll(/:\w+/g, 'guarded001'),
        lan(method === 'GET' ? {} : change),
        method === 'GET' ? '' : '{}'
      )
      if (got.status !== 401) admitted.push(`${method} ${path} ${got.status}`)
      else expect(got.text).not.toContain('Guarded')
    }
    expect(admitted.sort()).toEqual(['GET /api/hello 200', 'POST /api/pair 403'])
  })

  test('gets nothing by another spelling of a path either', async () => {
    const spellings = [
      '/%61pi/pieces',
      '/%61pi/pieces/guarded001',
      '/ap%69/export',
      '/%2561pi/pieces',
      '/api%2fpieces',
      '//api/pieces',
      '/./api/pieces',
      '/x/../api/pieces',
      '/api/./pieces',
      '/API/pieces',
      '/healt%68',
      '/%68ealth',
      '/api;/pieces',
      '/api/%70ieces/guarded001/plan.json'
    ]
    for (const path of spellings) {
      const got = await raw('GET', path, lan())
      expect([400, 401, 404, 503], path).toContain(got.status)
      expect(got.text, path).not.toMatch(/Guarded|integrity|^PK/)
    }
    expect((await raw('PUT', '/%61pi/shop', lan(change), '{}')).status).toBe(401)
  })

  test('a cookie that was made up lets nobody in', async () => {
    const got = await raw(
      'GET',
      '/api/pieces',
      lan({ cookie: 'castwright=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA' })
    )
    expect(got.status).toBe(401)
  })

  test('the name of the desk does not make a desk: the connection has to be this machine and the name too', async () => {
    expect((await raw('POST', '/api/pairing', lan(change), '{}')).status).toBe(401)
  })
})

describe('pairing', () => {
  const open = async () =>
    (await (await d.ask('POST', '/api/pairing')).json()) as { words: string; url: string; qr: string }
  const pair = (body: unknown) => raw('POST', '/api/pair', lan(change), JSON.stringify(body))

  test('by words, once; then it sees the pieces; shut out it sees nothing at once', async () => {
    const { words, url, qr } = await open()
    expect(words.split(' ')).toHaveLength(3)
    expect(url).toMatch(/\/pair#[\w-]{20,}$/)
    expect(qr).toContain('<svg')
    const got = await pair({ words: words.toUpperCase(), name: 'Phone' })
    expect(got.status).toBe(200)
    const cookie = String(got.headers['set-cookie'])
    expect(cookie).toMatch(/HttpOnly/)
    expect(cookie).toMatch(/SameSite=Strict/)
    const session = lan({ cookie: cookie.split(';')[0]!.replace(/^\[?"?/, '') })
    expect((await raw('GET', '/api/pieces', session)).status).toBe(200)
    expect((await pair({ words, name: 'Second' })).status).toBe(403)
    expect((await raw('POST', '/api/pairing', { ...session, ...change }, '{}')).status).toBe(403)
    const { devices } = (await (await d.ask('GET', '/api/devices')).json()) as {
      devices: { id: string; name: string }[]
    }
    expect(devices.map(x => x.name)).toEqual(['Phone'])
    // Its event stream ends with it.
    const ended = new Promise<void>(done => {
      const r = request(
        { host: '127.0.0.1', port: d.serving.port, path: '/api/events', headers: session },
        answer => {
          answer.resume()
          answer.on('end', () => done())
          answer.on('close', () => done())
        }
      )
      r.end()
    })
    await new Promise(done => setTimeout(done, 150))
    expect((await d.ask('DELETE', `/api/devices/${devices[0]!.id}`)).status).toBe(200)
    await ended
    expect((await raw('GET', '/api/pieces', session)).status).toBe(401)
  })

  test('guessing is slowed down, and ends the pairing', async () => {
    const folder = openFolder(`${d.folder}/guess`, () => new Date())
    const store = new DeviceStore(folder.db)
    let at = Date.parse('2026-11-27T09:00:00Z')
    const { words } = store.open(at)
    const guess = (by: string, address: string) => {
      try {
        store.pair({ words: by }, 'x', address, new Date(at))
        return 200
      } catch (e) {
        return (e as { status: number }).status
      }
    }
    const answers = Array.from({ length: 7 }, () => guess('no such words', '10.0.0.9'))
    expect(answers).toEqual([403, 403, 403, 403, 403, 429, 429])
    expect(guess('no such words', '10.0.0.10')).toBe(403)
    for (let k = 0; k < 20; k++) {
      at += 13_000
      guess('no such words', '10.0.0.11')
    }
    at += 60_000
    expect(guess(words, '10.0.0.12'), 'twenty wrong tries end it, even for the right words').toBe(403)
    const late = store.open(at)
    at += 5 * 60_000 + 1
    expect(guess(late.words, '10.0.0.13'), 'and so do five minutes').toBe(403)
    folder.close()
  })
})

describe('requests from elsewhere', () => {
  test('a host name that is not ours is refused, so that no page can point its own name here', async () => {
    for (const host of ['evil.example', `evil.example:${d.serving.port}`, `127.0.0.1:${d.serving.port + 1}`])
      expect((await raw('GET', '/api/pieces', { host })).status, host).toBeGreaterThanOrEqual(400)
    expect((await raw('GET', '/api/pieces', { host: `evil.example:${d.serving.port}` })).status).toBe(421)
  })

  const own = () => ({ host: `127.0.0.1:${d.serving.port}` })
  const body = JSON.stringify({ base: 1, edit: 'cross-edit', document: pieceNamed('Crossed') })
  test.each([
    ['another origin', { origin: 'https://evil.example', ...change }],
    ['no origin (opaque)', { origin: 'null', ...change }],
    ['another site by fetch metadata', { 'sec-fetch-site': 'cross-site', ...change }],
    ['the same site, another origin', { 'sec-fetch-site': 'same-site', ...change }],
    ['without our header', { 'content-type': 'application/json' }]
  ])('a change from %s is refused', async (_, headers) => {
    const got = await raw('PUT', '/api/pieces/guarded001', { ...own(), ...headers }, body)
    expect(got.status).toBe(403)
  })
  test('a form of another page is no JSON and is refused', async () => {
    const got = await raw(
      'PUT',
      '/api/pieces/guarded001',
      { ...own(), 'x-castwright': '1', 'content-type': 'text/plain' },
      body
    )
    expect(got.status).toBe(415)
  })
  test('reading from another site is refused too', async () => {
    expect(
      (
        await raw('GET', '/api/pieces', {
          ...own(),
          'sec-fetch-site': 'cross-site',
          'sec-fetch-mode': 'no-cors'
        })
      ).status
    ).toBe(403)
  })
  test('a link from another site opens the app and nothing else', async () => {
    const link = {
      ...own(),
      'sec-fetch-site': 'cross-site',
      'sec-fetch-mode': 'navigate',
      accept: 'text/html'
    }
    for (const path of ['/api/export', '/%61pi/export', '/health'])
      expect((await raw('GET', path, link)).status, path).toBe(403)
    for (const path of ['/', '/pair']) expect((await raw('GET', path, link)).status, path).not.toBe(403)
  })
})

describe('answers', () => {
  test('carry a strict policy: no script but our files, no inline script, no other site', async () => {
    for (const path of ['/', '/api/pieces', '/api/no-such', '/health']) {
      const got = await raw('GET', path, { host: `127.0.0.1:${d.serving.port}`, accept: 'text/html' })
      const policy = String(got.headers['content-security-policy'])
      expect(policy).toContain("default-src 'none'")
      // WebAssembly for the heat kernel, and nothing else that is made into code from text or bytes.
      if (path === '/api/no-such') expect(policy).not.toContain('script-src')
      else expect(policy).toContain("script-src 'self' 'wasm-unsafe-eval';")
      expect(policy.replace("'wasm-unsafe-eval'", '')).not.toMatch(/unsafe|\*|https?:/)
      expect(got.headers['x-content-type-options']).toBe('nosniff')
      expect(got.headers['referrer-policy']).toBe('no-referrer')
    }
  })

  // A header that a browser ignores and complains of under plain http is left out there.
  test('keep windows of other sites apart on loopback; under a plain name nothing is said of it', async () => {
    const key = 'cross-origin-opener-policy'
    const here = await raw('GET', '/', { host: `127.0.0.1:${d.serving.port}` })
    expect(here.headers[key]).toBe('same-origin')
    const named = await raw('GET', '/', { host: `desk.test:${d.serving.port}` })
    expect(named.status).not.toBe(421)
    expect(named.headers[key]).toBeUndefined()
  })

  test('paths reach no file: what is not in the table is not there', async () => {
    for (const path of [
      '/../package.json',
      '/..%2f..%2fpackage.json',
      '/assets/../../package.json',
      '//etc/passwd',
      '/%2e%2e/x.js'
    ])
      expect(
        (await raw('GET', path, { host: `127.0.0.1:${d.serving.port}` })).status,
        path
      ).toBeGreaterThanOrEqual(404)
  })
})

describe('uploads', () => {
  const photo = (bytes: Uint8Array, type: string) =>
    d.ask('POST', '/api/pieces/guarded001/photos', bytes, { 'content-type': type })
  test.each([
    [
      'a page called a picture',
      new TextEncoder().encode('<html><script>alert(1)</script></html>'),
      'image/png'
    ],
    [
      'an SVG',
      new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'),
      'image/svg+xml'
    ],
    ['nothing', new Uint8Array(0), 'image/jpeg'],
    ['the head of a PNG alone', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a), 'image/png'],
    ['a PNG of 20,000 px', pngHead(20_000, 10), 'image/png']
  ])('%s is refused by its content', async (_, bytes, type) => {
    expect((await photo(bytes, type)).status).toBe(400)
  })

  test('a photo is served as what it is, in a sandbox, never sniffed', async () => {
    const got = (await (await photo(pngHead(40, 30), 'text/html')).json()) as {
      id: string
      type: string
      width: number
    }
    expect([got.type, got.width]).toEqual(['image/png', 40])
    const answer = await d.ask('GET', `/api/pieces/guarded001/photos/${got.id}`)
    expect(answer.headers.get('content-type')).toBe('image/png')
    expect(answer.headers.get('content-security-policy')).toContain('sandbox')
  })

  test('a body that is too large is refused before it is read', async () => {
    expect((await photo(new Uint8Array(13_100_000), 'image/png')).status).toBe(413)
  })

  test('a drawing goes out as text inside JSON, never as SVG', async () => {
    const text = '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"><path d="M0 0H10V10Z"/></svg>'
    expect(
      (await d.ask('PUT', '/api/pieces/guarded001/files/slab.svg', text, { 'content-type': 'text/plain' }))
        .status
    ).toBe(200)
    const piece = await d.ask('GET', '/api/pieces/guarded001')
    expect(piece.headers.get('content-type')).toContain('application/json')
    expect(((await piece.json()) as { files: Record<string, string> }).files['slab.svg']).toBe(text)
    for (const path of ['/api/pieces/guarded001/files/slab.svg', '/slab.svg', '/files/slab.svg']) {
      const got = await d.ask('GET', path)
      expect(got.headers.get('content-type') ?? '', path).not.toContain('svg')
    }
    for (const name of ['..%2fslab.svg', 'slab.html', 'a%5Cb.svg', '%00.svg'])
      expect(
        (await d.ask('PUT', `/api/pieces/guarded001/files/${name}`, text, { 'content-type': 'text/plain' }))
          .status,
        name
      ).toBeGreaterThanOrEqual(400)
  })
})

/** Signature and IHDR of a PNG of a size (ISO/IEC 15948; memory). */
function pngHead(width: number, height: number): Uint8Array {
  const out = Buffer.alloc(64)
  Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]).copy(out)
  out.writeUInt32BE(13, 8)
  out.write('IHDR', 12)
  out.writeUInt32BE(width, 16)
  out.writeUInt32BE(height, 20)
  out[24] = 8
  return out
}
