import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { openFolder } from '../src/database.ts'
import { keepReadings, readingsSince } from '../src/reading-rows.ts'

/**
 * SIGKILL under the load of readings in batches: what was acknowledged must be there (durability, as SQLite states it
 * for synchronous=FULL with a write-ahead log; memory), whole and once, and what was sent again counts once.
 */
const KILLS = Number(process.env['CASTWRIGHT_KILLS'] ?? 20)
const SEED = 20_261_128
const folders: string[] = []
const folder = () => {
  const made = mkdtempSync(join(tmpdir(), 'castwright-readings-'))
  folders.push(made)
  return made
}
afterAll(() => {
  for (const f of folders) rmSync(f, { recursive: true, force: true })
})

function randomFrom(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

function started(data: string): Promise<{ url: string; child: ChildProcess }> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'killed-server.mjs'), data], {
    stdio: ['ignore', 'pipe', 'inherit']
  })
  return new Promise((done, fail) => {
    child.stdout!.once('data', (line: Buffer) => done({ url: line.toString().trim(), child }))
    child.once('exit', code => fail(new Error(`the server ended with ${code} before it said its address`)))
  })
}

const HEADERS = { 'content-type': 'application/json', 'x-castwright': '1' }
const PIECE = 'bench00001'
const send = (url: string, method: string, path: string, body: object) =>
  fetch(`${url}/api/pieces/${PIECE}${path}`, { method, headers: HEADERS, body: JSON.stringify(body) })
const record = (n: number) => ({
  id: `reading-${String(n).padStart(6, '0')}`,
  at: '2026-12-05T09:00+01:00',
  kind: 'height',
  pour: 'green',
  height: (n % 900) + 1
})

test(`${KILLS} kills under the load of readings: none that was acknowledged is lost, none is there twice`, async () => {
  // Two servers side by side: what takes the time is that each loads the engine.
  const half = Math.ceil(KILLS / 2)
  const all = await Promise.all([killed(half, SEED), killed(KILLS - half, SEED + 1)])
  // A load that never wrote would prove nothing.
  expect(all[0] + all[1]).toBeGreaterThan(KILLS * 20)
}, 3_600_000)

async function killed(kills: number, seed: number): Promise<number> {
  const data = folder()
  const random = randomFrom(seed)
  const acknowledged = new Set<string>()
  let next = 0
  for (let kill = 0; kill < kills; kill++) {
    const { url, child } = await started(data)
    child.removeAllListeners('exit')
    let alive = true
    const ended = new Promise<void>(done => child.once('exit', () => done()))
    const document = { castwright: 1, name: 'bench' }
    if (kill === 0) await send(url, 'PUT', '', { base: 0, edit: 'edit-00001', document, says: 'begun' })
    const writer = async () => {
      while (alive) {
        const from = next
        const count = 1 + Math.floor(random() * 40)
        next += count
        // Some of the batch were sent before: a phone does not know what arrived.
        const again = from > 10 ? [record(from - 10)] : []
        const readings = [...again, ...Array.from({ length: count }, (_, i) => record(from + i))]
        try {
          const answer = await send(url, 'POST', '/readings', { readings })
          if (answer.status !== 200) throw new Error(`${answer.status} ${await answer.text()}`)
          for (const id of ((await answer.json()) as { ids: string[] }).ids) acknowledged.add(id)
        } catch (e) {
          if (alive && !/fetch failed|terminated|ECONNRESET|closed/.test(String(e))) throw e
          return
        }
      }
    }
    const writers = [writer(), writer(), writer()]
    // The engine is loaded with the first reading: the load begins after that.
    const before = acknowledged.size
    while (acknowledged.size === before) await new Promise(done => setTimeout(done, 5))
    await new Promise(done => setTimeout(done, random() * 150))
    child.kill('SIGKILL')
    alive = false
    await ended
    await Promise.all(writers)
    const open = openFolder(data, () => new Date())
    const check = open.db.prepare('PRAGMA integrity_check').get() as { integrity_check: string }
    expect(check.integrity_check, `after kill ${kill}, seed ${seed}`).toBe('ok')
    const kept = readingsSince(open, PIECE, 0).readings as { id: string }[]
    const ids = new Set(kept.map(r => r.id))
    expect(ids.size, `each once, after kill ${kill}`).toBe(kept.length)
    expect(
      [...acknowledged].filter(id => !ids.has(id)),
      `lost after kill ${kill}, seed ${seed}`
    ).toEqual([])
    for (const r of kept) expect(r).toEqual(record(Number(r.id.slice(8))))
    open.close()
  }
  return acknowledged.size
}

test('what comes after a number is asked for by it, and a batch is all or nothing', () => {
  const open = openFolder(folder(), () => new Date())
  open.db
    .prepare("INSERT INTO piece (id, name, revision, saved) VALUES (?, 'bench', 1, '2026-12-05')")
    .run(PIECE)
  const kept = (n: number) => ({ id: record(n).id, record: JSON.stringify(record(n)) })
  expect(keepReadings(open, PIECE, [kept(1), kept(2)], '2026-12-05')).toEqual([true, true])
  const first = readingsSince(open, PIECE, 0)
  expect(first.readings).toEqual([record(1), record(2)])
  expect(keepReadings(open, PIECE, [kept(2), kept(3)], '2026-12-06')).toEqual([false, true])
  expect(readingsSince(open, PIECE, first.upTo).readings).toEqual([record(3)])
  const broken = { id: 'reading-000009', record: null as unknown as string }
  expect(() => keepReadings(open, PIECE, [kept(4), broken], '2026-12-06')).toThrow()
  expect(readingsSince(open, PIECE, 0).readings).toHaveLength(3)
  open.close()
})
