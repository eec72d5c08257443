import { expect, test } from 'vitest'
import { PieceStore } from '../src/piece-store.ts'
import { KILLS, killed, ownFolder, pause, randomFrom, send } from './killed.ts'

/**
 * SIGKILL under write load. What a process was killed in the middle of is not known to anyone; what it acknowledged
 * must be there (durability, as SQLite states it for synchronous=FULL with a write-ahead log; memory).
 */
const WRITERS = 3
const SEED = 20_261_127
const folder = ownFolder()

test(`${KILLS} kills under write load: every acknowledged revision is there, and the database is whole`, async () => {
  const random = randomFrom(SEED)
  const acknowledged = new Map<string, string[]>()
  for (let w = 0; w < WRITERS; w++) acknowledged.set(`writer0000${w}`, [])
  let sent = 0
  for (let kill = 0; kill < KILLS; kill++) {
    const writes = [...acknowledged].map(([id, known]) => async (url: string) => {
      // What a kill left in doubt may have been saved: the server says which revision is the newest.
      const filling = 'x'.repeat(Math.floor(random() * 4000))
      const document = { castwright: 1, name: id, count: sent, filling }
      const body = { base: known.length, edit: `edit-${kill}-${sent++}-${id}`, document, says: 'load' }
      const answer = await send(url, 'PUT', `/api/pieces/${id}`, body)
      const got = (await answer.json()) as { revision: number; document?: unknown }
      if (answer.status === 200) {
        expect(got.revision).toBe(known.length + 1)
        known.push(JSON.stringify(document))
      } else if (answer.status === 409) {
        // Saved, but its acknowledgement was lost with the process before this one.
        while (known.length < got.revision)
          known.push(known.length + 1 === got.revision ? JSON.stringify(got.document) : '?')
      } else throw new Error(`${answer.status} ${JSON.stringify(got)}`)
    })
    const says = `after kill ${kill}, seed ${SEED}`
    const open = await killed(folder, writes, () => pause(40 + random() * 260), says)
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
