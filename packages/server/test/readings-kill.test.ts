import { expect, test } from 'vitest'
import { openFolder } from '../src/database.ts'
import { keepReadings, ReadingKeeper, readingsSince } from '../src/reading-rows.ts'
import { KILLS, killed, ownFolder, pause, randomFrom, send } from './killed.ts'

/**
 * SIGKILL under the load of readings in batches: what was acknowledged must be there (durability, as SQLite states it
 * for synchronous=FULL with a write-ahead log; memory), whole and once, and what was sent again counts once.
 */
const SEED = 20_261_128
const WRITERS = 3
const PIECE = 'bench00001'
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
  const all = await Promise.all([underKills(half, SEED), underKills(KILLS - half, SEED + 1)])
  // A load that never wrote would prove nothing.
  expect(all[0] + all[1]).toBeGreaterThan(KILLS * 20)
}, 3_600_000)

async function underKills(kills: number, seed: number): Promise<number> {
  const data = ownFolder()
  const random = randomFrom(seed)
  const acknowledged = new Set<string>()
  let next = 0
  let begun: Promise<Response> | undefined
  const write = async (url: string) => {
    const document = { castwright: 1, name: 'bench' }
    begun ??= send(url, 'PUT', `/api/pieces/${PIECE}`, {
      base: 0,
      edit: 'edit-00001',
      document,
      says: 'begun'
    })
    await begun
    const from = next
    const count = 1 + Math.floor(random() * 40)
    next += count
    // Some of the batch were sent before: a phone does not know what arrived.
    const again = from > 10 ? [record(from - 10)] : []
    const readings = [...again, ...Array.from({ length: count }, (_, i) => record(from + i))]
    const answer = await send(url, 'POST', `/api/pieces/${PIECE}/readings`, { readings })
    if (answer.status !== 200) throw new Error(`${answer.status} ${await answer.text()}`)
    for (const id of ((await answer.json()) as { ids: string[] }).ids) acknowledged.add(id)
  }
  for (let kill = 0; kill < kills; kill++) {
    // The engine is loaded with the first reading: the load begins after that.
    const before = acknowledged.size
    const loaded = async () => {
      while (acknowledged.size === before) await pause(5)
      await pause(random() * 150)
    }
    const says = `after kill ${kill}, seed ${seed}`
    const open = await killed(data, Array(WRITERS).fill(write), loaded, says)
    const kept = readingsSince(open, PIECE, 0).readings as { id: string }[]
    const ids = new Set(kept.map(r => r.id))
    expect(ids.size, `each once, ${says}`).toBe(kept.length)
    expect(
      [...acknowledged].filter(id => !ids.has(id)),
      `lost ${says}`
    ).toEqual([])
    for (const r of kept) expect(r).toEqual(record(Number(r.id.slice(8))))
    open.close()
  }
  return acknowledged.size
}

test('what comes after a number is asked for by it, and a batch is all or nothing', () => {
  const open = openFolder(ownFolder(), () => new Date())
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

test('who comes together is kept together; one that cannot be kept holds up none of the others', async () => {
  const open = openFolder(ownFolder(), () => new Date())
  open.db
    .prepare("INSERT INTO piece (id, name, revision, saved) VALUES (?, 'bench', 1, '2026-12-05')")
    .run(PIECE)
  const keeper = new ReadingKeeper(open)
  const kept = (n: number) => [{ id: record(n).id, record: JSON.stringify(record(n)) }]
  const all = await Promise.all([1, 2, 3, 2].map(n => keeper.keep(PIECE, kept(n), '2026-12-05')))
  expect(all).toEqual([[true], [true], [true], [false]])
  const nowhere = keeper.keep('nopiece001', kept(4), '2026-12-05')
  const here = keeper.keep(PIECE, kept(5), '2026-12-05')
  await expect(nowhere).rejects.toThrow()
  expect(await here).toEqual([true])
  expect(readingsSince(open, PIECE, 0).readings).toEqual([1, 2, 3, 5].map(record))
  open.close()
})
