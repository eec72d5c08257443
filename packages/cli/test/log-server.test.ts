import { createHash } from 'node:crypto'
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, request } from 'node:http'
import type { AddressInfo } from 'node:net'
import { describe, expect, it, onTestFinished } from 'vitest'
import { serve } from '../../server/src/index.ts'
import { exchangeLog } from '../src/command/log.ts'
import { Failure } from '../src/failure.ts'
import { SOUND, testFolder } from './folder.ts'
import { JPEG, PNG } from './photo.ts'

const { put, at } = testFolder()
const NOW = ['--as-of', '2026-12-05T14:00+01:00']
const height = (id: string, mm: number, hour = 10) => ({
  kind: 'height',
  pour: 'clear',
  height: mm,
  id: `reading-${id}`,
  at: `2026-12-05T${hour}:00+01:00`
})

let n = 0
/** A piece in a file and on a running server of its own, on a free port of loopback; the server stops by itself. */
async function both(own: readonly object[], theirs: readonly object[], now: () => Date = () => new Date()) {
  const name = `exchange${++n}`
  const document = { ...SOUND, name }
  const path = put(`${name}.piece.json`, JSON.stringify(document))
  const file = put(`${name}.readings.jsonl`, own.map(r => `${JSON.stringify(r)}\n`).join(''))
  const dataDir = at(`data-${n}`)
  const server = await serve({ dataDir, port: 0, site: dataDir, version: 'test', now })
  onTestFinished(async () => {
    await server.close()
    rmSync(dataDir, { recursive: true, force: true })
  })
  const ask = async (method: string, part: string, body?: object) => {
    const answer = await fetch(`${server.url}/api/pieces/${name}${part}`, {
      method,
      headers: { 'x-castwright': '1', 'content-type': 'application/json' },
      ...(body === undefined ? {} : { body: JSON.stringify(body) })
    })
    if (!answer.ok) throw new Error(await answer.text())
    return (await answer.json()) as { readings: { id: string }[]; upTo: number }
  }
  await ask('PUT', '', { base: 0, edit: `laid-down-${n}`, document })
  if (theirs.length > 0) await ask('POST', '/readings', { readings: theirs })
  return {
    url: server.url,
    name,
    log: (url = server.url) => exchangeLog([path, '--server', url, ...NOW]),
    there: async (since = 0) => await ask('GET', `/readings?since=${since}`),
    send: (readings: readonly object[]) => ask('POST', '/readings', { readings }),
    here: () =>
      readFileSync(file, 'utf8')
        .trimEnd()
        .split('\n')
        .map(l => (JSON.parse(l) as { id: string }).id)
  }
}

const idsOf = ({ readings }: { readonly readings: readonly { readonly id: string }[] }) =>
  readings.map(r => r.id)

describe('castwright log --server', () => {
  it('takes over what each lacks, once; again it takes nothing, and says where the build stands', async () => {
    const [a, b, c] = [height('aaaa', 18), height('bbbb', 18.4), height('cccc', 19, 11)]
    const x = await both([a, b], [b, c])
    const first = await x.log()
    expect(first.err).toContain(`1 sent to ${x.url}, 1 taken from it`)
    expect(first.out).toContain('19.0 mm high as read')
    const all = [a.id, b.id, c.id]
    expect(idsOf(await x.there()).sort()).toEqual(all)
    expect([...x.here()].sort()).toEqual(all)
    const again = await x.log()
    expect(again.err).toContain(`0 sent to ${x.url}, 0 taken from it`)
    expect(x.here()).toHaveLength(3)
    expect((await x.there()).readings).toHaveLength(3)
  })

  it('broken off after the server has them and before it could say so, it is done again: each is there once', async () => {
    const [a, b, c] = [height('aaaa', 18), height('bbbb', 18.4), height('cccc', 19, 11)]
    const x = await both([a, b], [c])
    // Between the two stands a wire that breaks with the first answer to what was sent.
    let cut = true
    const wire = createServer((asked, answer) => {
      const on = request(
        `${x.url}${asked.url}`,
        { method: asked.method, headers: { ...asked.headers, host: new URL(x.url).host } },
        got => {
          if (cut && asked.method === 'POST') {
            cut = false
            got.resume().on('end', () => asked.socket.destroy())
            return
          }
          answer.writeHead(got.statusCode!, got.headers)
          got.pipe(answer)
        }
      )
      asked.pipe(on)
    })
    await new Promise<void>(done => wire.listen(0, '127.0.0.1', done))
    onTestFinished(() => void wire.close())
    const url = `http://127.0.0.1:${(wire.address() as AddressInfo).port}`
    await expect(x.log(url)).rejects.toThrow(Failure)
    // They came through; the file is as it was.
    expect(idsOf(await x.there()).sort()).toEqual([a.id, b.id, c.id])
    expect(x.here()).toEqual([a.id, b.id])
    expect((await x.log(url)).err).toContain('0 sent to')
    expect([...x.here()].sort()).toEqual([a.id, b.id, c.id])
    expect(idsOf(await x.there())).toHaveLength(3)
  })

  it('what came since is told by the order in which it came: a clock of the server that goes back loses nothing', async () => {
    let hour = 12
    const x = await both([], [height('aaaa', 18)], () => new Date(Date.UTC(2026, 11, 5, hour--)))
    const { upTo } = await x.there()
    await x.send([height('bbbb', 18.4)])
    await x.send([height('cccc', 18.6)])
    const since = await x.there(upTo)
    expect(idsOf(since)).toEqual(['reading-bbbb', 'reading-cccc'])
    expect(idsOf(await x.there(since.upTo))).toEqual([])
    await x.log()
    expect(x.here().sort()).toEqual(['reading-aaaa', 'reading-bbbb', 'reading-cccc'])
  })

  it('photos go both ways by the name of their content, once; one that is nowhere is said', async () => {
    const taken = (id: string, bytes: Uint8Array) => ({
      kind: 'photo',
      photo: createHash('sha256').update(bytes).digest('hex').slice(0, 24),
      id: `reading-${id}`,
      at: '2026-12-05T10:00+01:00'
    })
    const [mine, theirs, lost] = [taken('mine', JPEG), taken('them', PNG), taken('lost', new Uint8Array(3))]
    const x = await both([mine, lost], [theirs])
    const folder = at(`${x.name}.photos`)
    mkdirSync(folder)
    writeFileSync(`${folder}/${mine.photo}.jpg`, JPEG)
    const photos = `${x.url}/api/pieces/${x.name}/photos`
    await fetch(photos, {
      method: 'POST',
      headers: { 'x-castwright': '1', 'content-type': 'image/png' },
      body: PNG
    })
    const first = await x.log()
    expect(first.err).toContain(`photos: 1 sent to ${x.url}, 1 taken from it`)
    expect(first.err).toContain(`photo ${lost.photo}: found neither`)
    expect(new Uint8Array(readFileSync(`${folder}/${theirs.photo}.png`))).toEqual(PNG)
    const there = await fetch(`${photos}/${mine.photo}`)
    expect(there.headers.get('content-type')).toBe('image/jpeg')
    expect(new Uint8Array(await there.arrayBuffer())).toEqual(JPEG)
    expect((await x.log()).err).toContain(`photos: 0 sent to ${x.url}, 0 taken from it`)
    expect(readdirSync(folder)).toHaveLength(2)
  })

  it('says what is wrong: no server, no address, no piece of that name', async () => {
    const x = await both([height('aaaa', 18)], [])
    await expect(x.log('http://127.0.0.1:9')).rejects.toThrow('allowed: a server that runs')
    await expect(x.log('desk')).rejects.toThrow('allowed: the address that castwright serve prints')
    const other = put('other.piece.json', JSON.stringify({ ...SOUND, name: 'other' }))
    await expect(exchangeLog([other, '--server', x.url, ...NOW])).rejects.toThrow(
      `found no piece called "other"`
    )
    expect((await x.there()).readings).toEqual([])
  })
})
