import type { ChildProcess } from 'node:child_process'
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { openFolder } from '../src/database.ts'
import { PieceStore } from '../src/piece-store.ts'

/**
 * SIGKILL under write load. What a process was killed in the middle of is not known to anyone; what it acknowledged
 * must be there (durability, as SQLite states it for synchronous=FULL with a write-ahead log; memory).
 */
const KILLS = Number(process.env['CASTWRIGHT_KILLS'] ?? 20)
const WRITERS = 3
const SEED = 20_261_127
const folder = mkdtempSync(join(tmpdir(), 'castwright-kill-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** mulberry32, seeded: the moments of the kills. */
function randomFrom(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296
  }
}

function started(): Promise<{ url: string; child: ChildProcess }> {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'killed-server.mjs'), folder], {
    stdio: ['ignore', 'pipe', 'inherit']
  })
  return new Promise((done, fail) => {
    child.stdout!.once('data', (line: Buffer) => done({ url: line.toString().trim(), child }))
    child.once('exit', code => fail(new Error(`the server ended with ${code} before it said its address`)))
  })
}

test(`${KILLS} kills under write load: every acknowledged revision is there, and the database is whole`, async () => {
  const random = randomFrom(SEED)
  const acknowledged = new Map<string, string[]>()
  for (let w = 0; w < WRITERS; w++) acknowledged.set(`writer0000${w}`, [])
  let sent = 0
  for (let kill = 0; kill < KILLS; kill++) {
    const { url, child } = await started()
    child.removeAllListeners('exit')
    let alive = true
    const ended = new Promise<void>(done => child.once('exit', () => done()))
    const writer = async (id: string) => {
      const known = acknowledged.get(id)!
      while (alive) {
        // What a kill left in doubt may have been saved: the server says which revision is the newest.
        const document = {
          castwright: 1,
          name: id,
          count: sent,
          filling: 'x'.repeat(Math.floor(random() * 4000))
        }
        const body = { base: known.length, edit: `edit-${kill}-${sent++}-${id}`, document, says: 'load' }
        try {
          const answer = await fetch(`${url}/api/pieces/${id}`, {
            method: 'PUT',
            headers: { 'content-type': 'application/json', 'x-castwright': '1' },
            body: JSON.stringify(body)
          })
          const got = (await answer.json()) as { revision: number; document?: unknown }
          if (answer.status === 200) {
            expect(got.revision).toBe(known.length + 1)
            known.push(JSON.stringify(document))
          } else if (answer.status === 409) {
            // Saved, but its acknowledgement was lost with the process before this one.
            while (known.length < got.revision)
              known.push(known.length + 1 === got.revision ? JSON.stringify(got.document) : '?')
          } else throw new Error(`${answer.status} ${JSON.stringify(got)}`)
        } catch (e) {
          if (alive && !/fetch failed|terminated|ECONNRESET|closed/.test(String(e))) throw e
          return
        }
      }
    }
    const writers = [...acknowledged.keys()].map(writer)
    await new Promise(done => setTimeout(done, 40 + random() * 260))
    child.kill('SIGKILL')
    alive = false
    await ended
    await Promise.all(writers)
    const open = openFolder(folder, () => new Date())
    const check = open.db.prepare('PRAGMA integrity_check').get() as { integrity_check: string }
    expect(check.integrity_check, `after kill ${kill}, seed ${SEED}`).toBe('ok')
    const store = new PieceStore(open.db)
    for (const [id, documents] of acknowledged)
      documents.forEach((text, i) => {
        if (text !== '?')
          expect(store.document(id, i + 1) === text, `${id} revision ${i + 1} after kill ${kill}`).toBe(true)
      })
    open.close()
  }
  const all = [...acknowledged.values()].reduce((n, d) => n + d.length, 0)
  // A load that never wrote would prove nothing.
  expect(all).toBeGreaterThan(KILLS * WRITERS)
}, 3_600_000)
