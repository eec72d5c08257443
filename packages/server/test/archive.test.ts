import { createHash } from 'node:crypto'
import { readdirSync, rmSync } from 'node:fs'
import { deflateSync } from 'node:zlib'
import { unzipSync, zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

let d: Desk
let whole: Uint8Array
beforeAll(async () => {
  d = await desk()
  for (let k = 0; k < 3; k++) {
    const id = `archive00${k}`
    for (let n = 0; n < 4; n++)
      await d.ask('PUT', `/api/pieces/${id}`, {
        base: n,
        edit: `edit-${k}-${n}xx`,
        document: pieceNamed(`Piece ${k}`, { n })
      })
    await d.ask('PUT', `/api/pieces/${id}`, {
      base: 1,
      edit: `late-${k}-xxx`,
      document: pieceNamed(`Piece ${k}`, { late: true })
    })
    await d.ask('PUT', `/api/pieces/${id}/files/slab.svg`, '<svg xmlns="http://www.w3.org/2000/svg"/>', {
      'content-type': 'text/plain'
    })
    await d.ask('POST', `/api/pieces/${id}/photos`, png(8 + k, 6), { 'content-type': 'image/png' })
    await d.ask('POST', `/api/pieces/${id}/readings`, {
      kind: 'moisture',
      timber: 'left',
      moisture: 9.1,
      id: `r-000000${k}`,
      at: '2026-12-01T10:00+01:00'
    })
  }
  await d.ask('PUT', '/api/shop', { base: 0, edit: 'shop-edit1', document: { castwright: 1, name: 'Shop' } })
  whole = new Uint8Array(await (await d.ask('GET', '/api/export')).arrayBuffer())
})
afterAll(() => d.close())

/** A grey picture: PNG as ISO/IEC 15948 lays it out (memory). */
function png(width: number, height: number): Uint8Array {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type), data])
    const out = Buffer.alloc(12 + data.length)
    out.writeUInt32BE(data.length, 0)
    body.copy(out, 4)
    out.writeUInt32BE(crc(body), 8 + data.length)
    return out
  }
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 8
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(Buffer.alloc((width + 1) * height))),
    chunk('IEND', Buffer.alloc(0))
  ])
}

/** An archive with one entry changed and its list made to agree: what a forger would send. */
function forged(change: (name: string, value: never) => unknown): Uint8Array {
  const zip = unzipSync(whole)
  for (const name of Object.keys(zip)) {
    if (!name.endsWith('.json') || name === 'castwright.json') continue
    const value = change(name, JSON.parse(Buffer.from(zip[name]!).toString()) as never)
    if (value !== undefined) zip[name] = new TextEncoder().encode(JSON.stringify(value))
  }
  return listed(zip)
}

function listed(zip: Record<string, Uint8Array>): Uint8Array {
  const list = Object.keys(zip)
    .filter(n => n !== 'castwright.json')
    .map(name => ({
      name,
      bytes: zip[name]!.length,
      sha256: createHash('sha256').update(zip[name]!).digest('hex')
    }))
  zip['castwright.json'] = new TextEncoder().encode(
    JSON.stringify({ castwrightArchive: 1, version: 'test', list })
  )
  return zipSync(zip)
}

function crc(bytes: Uint8Array): number {
  let c = 0xffffffff
  for (const b of bytes) {
    c ^= b
    for (let k = 0; k < 8; k++) c = c & 1 ? (c >>> 1) ^ 0xedb88320 : c >>> 1
  }
  return (c ^ 0xffffffff) >>> 0
}

const bring = (to: Desk, bytes: Uint8Array) =>
  to.ask('POST', '/api/import', bytes, { 'content-type': 'application/zip' })

async function everything(from: Desk): Promise<Record<string, string>> {
  const zip = unzipSync(new Uint8Array(await (await from.ask('GET', '/api/export')).arrayBuffer()))
  return Object.fromEntries(
    Object.entries(zip).map(([name, bytes]) => [name, Buffer.from(bytes).toString('base64')])
  )
}

test('out, wiped, and in again: equal to the last byte', async () => {
  const other = await desk()
  const answer = await bring(other, whole)
  expect(await answer.json()).toEqual({ pieces: 3, revisions: 13, photos: 3, readings: 3 })
  expect(await everything(other)).toEqual(await everything(d))
  // Brought a second time it adds nothing.
  expect(await (await bring(other, whole)).json()).toEqual({
    pieces: 0,
    revisions: 0,
    photos: 0,
    readings: 0
  })
  expect(await everything(other)).toEqual(await everything(d))
  await other.close()
  rmSync(other.folder, { recursive: true, force: true })
})

test('a piece changed here as well keeps what is here; the other is kept aside', async () => {
  const other = await desk()
  await other.ask('PUT', '/api/pieces/archive000', {
    base: 0,
    edit: 'own-edit-1',
    document: pieceNamed('Mine')
  })
  await bring(other, whole)
  const got = (await (await other.ask('GET', '/api/pieces/archive000')).json()) as {
    document: { name: string }
    aside: unknown[]
  }
  expect(got.document.name).toBe('Mine')
  expect(got.aside.length).toBeGreaterThan(0)
  await other.close()
})

describe('what is no archive of ours', () => {
  const entry = (files: Record<string, string | Uint8Array>) =>
    zipSync(
      Object.fromEntries(
        Object.entries(files).map(([n, b]) => [n, typeof b === 'string' ? new TextEncoder().encode(b) : b])
      )
    )
  test.each([
    ['nothing', new Uint8Array(0)],
    ['words', new TextEncoder().encode('not a zip at all')],
    ['a path that leaves', entry({ '../../etc/passwd': 'x' })],
    ['a path from the root', entry({ '/castwright.json': '{}' })],
    ['a path with a backslash', entry({ 'pieces\\..\\x.json': '{}' })],
    [
      'a list that names nothing',
      entry({ 'castwright.json': '{"castwrightArchive":1,"list":[]}', 'shop.json': '[]' })
    ],
    ['a bomb', entry({ 'castwright.json': new Uint8Array(60_000_000) })]
  ])('%s is refused with words, and nothing comes in', async (_, bytes) => {
    const other = await desk()
    const answer = await bring(other, bytes)
    expect(answer.status).toBe(400)
    expect(((await answer.json()) as { error: { says: string } }).error.says).toMatch(/archive/)
    expect(((await (await other.ask('GET', '/api/pieces')).json()) as { pieces: unknown[] }).pieces).toEqual(
      []
    )
    await other.close()
  })

  type Item = Record<string, unknown>
  const first = (part: string, change: (item: Item) => unknown) => (name: string, list: Item[]) =>
    name === `pieces/archive000/${part}-0001.json` ? list.map((x, i) => (i === 0 ? change(x) : x)) : undefined
  test.each([
    ['a revision of another number', first('revisions', r => ({ ...r, number: 3 })), /lacks a revision/],
    ['a document that is none', first('revisions', r => ({ ...r, document: [] })), /JSON object/],
    ['an edit that is none', first('revisions', r => ({ ...r, edit: "x'); DROP TABLE piece" })), /"edit"/],
    ['a moment that is none', first('revisions', r => ({ ...r, saved: 'soon' })), /moment/],
    ['an aside made on nothing', first('asides', r => ({ ...r, base: -1 })), /made on/],
    ['a drawing that leaves the folder', first('files', f => ({ ...f, name: '../x.svg' })), /drawing/],
    ['a drawing that is a page', first('files', f => ({ ...f, name: 'x.html' })), /drawing/],
    ['a reading that is none', first('readings', r => ({ ...r, record: { kind: 'guess' } })), /reading/],
    ['a photo of another id', first('photos', p => ({ ...p, id: '0'.repeat(24) })), /photo/],
    ['a photo laid by a megabyte', first('photos', p => ({ ...p, laid: { x: 'x'.repeat(1e6) } })), /laid/],
    ['a list that is none', (n: string) => (n.includes('revisions') ? { a: 1 } : undefined), /no list/],
    [
      'a piece of another id',
      (n: string) => (n.endsWith('/piece.json') ? { id: 'otherpiece', away: null } : undefined),
      /another/
    ],
    ['nothing at all', () => null, /found|allowed|no list/]
  ])('%s, under a list that agrees, is refused, and nothing comes in', async (_, change, says) => {
    const other = await desk()
    const answer = await bring(other, forged(change as never))
    expect(answer.status).toBe(400)
    expect(((await answer.json()) as { error: { says: string } }).error.says).toMatch(says)
    expect(((await (await other.ask('GET', '/api/pieces')).json()) as { pieces: unknown[] }).pieces).toEqual(
      []
    )
    expect(readdirSync(other.folder).filter(n => n.endsWith('.zip'))).toEqual([])
    await other.close()
  })
  test('a photo that is a page, under its own name and a list that agrees', async () => {
    const page = new TextEncoder().encode('<html><script>alert(1)</script></html>')
    const id = createHash('sha256').update(page).digest('hex').slice(0, 24)
    const zip = unzipSync(forged(first('photos', p => ({ ...p, id })) as never))
    for (const name of Object.keys(zip)) if (name.startsWith('photos/archive000/')) delete zip[name]
    zip[`photos/archive000/${id}`] = page
    const other = await desk()
    const answer = await bring(other, listed(zip))
    expect([answer.status, await answer.text()]).toEqual([400, expect.stringMatching(/PNG, JPEG or WebP/)])
    await other.close()
  })

  test('200 archives changed by chance: refused or whole, never in part', async () => {
    const other = await desk()
    let a = 20_261_127
    const random = () => {
      a = (Math.imul(a, 1_664_525) + 1_013_904_223) >>> 0
      return a / 4_294_967_296
    }
    const state = async () => JSON.stringify(await everything(other))
    let before = await state()
    let took = 0
    for (let k = 0; k < 200; k++) {
      let bytes: Uint8Array<ArrayBufferLike> = Uint8Array.from(whole)
      const kind = k % 4
      if (kind === 0)
        for (let n = 0; n < 1 + random() * 20; n++)
          bytes[Math.floor(random() * bytes.length)] = Math.floor(random() * 256)
      else if (kind === 1) bytes = bytes.subarray(0, Math.floor(random() * bytes.length))
      else if (kind === 2) {
        const zip = unzipSync(bytes)
        const names = Object.keys(zip)
        const name = names[Math.floor(random() * names.length)]!
        if (random() < 0.5) delete zip[name]
        else zip[name]![Math.floor(random() * zip[name]!.length)]! ^= 1 + Math.floor(random() * 255)
        bytes = zipSync(zip)
      } else {
        const at = Math.floor(random() * bytes.length)
        bytes = Uint8Array.from([
          ...bytes.subarray(0, at),
          ...bytes.subarray(at + Math.floor(random() * 300))
        ])
      }
      const answer = await bring(other, bytes)
      expect([200, 400], `archive ${k}, seed 20261127`).toContain(answer.status)
      const after = await state()
      if (answer.status === 400) expect(after, `archive ${k}`).toBe(before)
      else {
        took++
        // A change in a part that no reader looks at leaves it whole.
        expect(JSON.parse(after), `archive ${k}`).toEqual(await everything(d))
      }
      before = after
    }
    expect(took).toBeLessThan(100)
    await other.close()
  }, 60_000)
})
