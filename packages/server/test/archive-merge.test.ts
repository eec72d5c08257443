import { join } from 'node:path'
import Database from 'libsql'
import { expect, test } from 'vitest'
import type { Desk } from './desk.ts'
import { desk, pieceNamed } from './desk.ts'

const save = async (d: Desk, base: number, edit: string, more: Record<string, unknown> = {}) =>
  (
    await d.ask('PUT', '/api/pieces/merged0001', {
      base,
      edit,
      document: pieceNamed('Merged', { edit, ...more })
    })
  ).status
const exported = async (d: Desk) => new Uint8Array(await (await d.ask('GET', '/api/export')).arrayBuffer())
const bring = async (d: Desk, bytes: Uint8Array) => {
  const answer = await d.ask('POST', '/api/import', bytes, { 'content-type': 'application/zip' })
  expect(answer.status, await answer.clone().text()).toBe(200)
  return (await answer.json()) as Record<string, number>
}
interface Piece {
  readonly revision: number
  readonly document: { readonly edit: string }
  readonly aside: readonly { readonly number: number }[]
  readonly files: Record<string, string>
}
const piece = async (d: Desk) => (await (await d.ask('GET', '/api/pieces/merged0001')).json()) as Piece
const asides = (d: Desk): { number: number; edit: string; settled: number }[] => {
  const db = new Database(join(d.folder, 'castwright.db'))
  const rows = db.prepare('SELECT number, edit, settled FROM aside ORDER BY number').all() as {
    number: number
    edit: string
    settled: number
  }[]
  db.close()
  return rows.map(({ number, edit, settled }) => ({ number, edit, settled }))
}

test('a history that goes on from the one here goes on here, and an older one changes nothing', async () => {
  const [one, two] = [await desk(), await desk()]
  await save(one, 0, 'edit-one-1')
  await bring(two, await exported(one))
  const older = await exported(one)
  await save(one, 1, 'edit-one-2')
  await save(one, 2, 'edit-one-3')
  expect(await bring(two, await exported(one))).toMatchObject({ pieces: 0, revisions: 2 })
  expect(await piece(two)).toMatchObject({ revision: 3, document: { edit: 'edit-one-3' }, aside: [] })
  expect(await bring(two, older)).toMatchObject({ pieces: 0, revisions: 0 })
  expect(await piece(two)).toMatchObject({ revision: 3, aside: [] })
  await one.close()
  await two.close()
})

test('histories that went their own ways: what is here stays, every other revision is kept aside, once', async () => {
  const [one, two] = [await desk(), await desk()]
  await save(one, 0, 'edit-both-1')
  await bring(two, await exported(one))
  await save(one, 1, 'edit-one-2')
  await save(one, 2, 'edit-one-3')
  await save(two, 1, 'edit-two-2')
  const archive = await exported(one)
  await bring(two, archive)
  await bring(two, archive)
  const here = await piece(two)
  expect(here).toMatchObject({ revision: 2, document: { edit: 'edit-two-2' } })
  expect(asides(two).map(a => [a.edit, a.settled])).toEqual([
    ['edit-one-2', 1],
    ['edit-one-3', 0]
  ])
  expect(here.aside).toHaveLength(1)
  const kept = (await (
    await two.ask('GET', `/api/pieces/merged0001/asides/${here.aside[0]!.number}`)
  ).json()) as { document: { edit: string } }
  expect(kept.document.edit).toBe('edit-one-3')
  await one.close()
  await two.close()
})

test('what lay aside on both sides under one number is kept on both', async () => {
  const [one, two] = [await desk(), await desk()]
  await save(one, 0, 'edit-both-1')
  await bring(two, await exported(one))
  expect(await save(one, 0, 'late-one-1')).toBe(409)
  expect(await save(two, 0, 'late-two-1')).toBe(409)
  await bring(two, await exported(one))
  expect(
    asides(two)
      .map(a => a.edit)
      .sort()
  ).toEqual(['late-one-1', 'late-two-1'])
  await one.close()
  await two.close()
})

test('drawings of one name that differ are both kept', async () => {
  const [one, two] = [await desk(), await desk()]
  const svg = (n: number) => `<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0H${n}"/></svg>`
  for (const [d, n] of [
    [one, 1],
    [two, 2]
  ] as const) {
    await save(d, 0, 'edit-both-1')
    await d.ask('PUT', '/api/pieces/merged0001/files/slab.svg', svg(n), { 'content-type': 'text/plain' })
  }
  const archive = await exported(one)
  await bring(two, archive)
  await bring(two, archive)
  expect((await piece(two)).files).toEqual({ 'slab.svg': svg(2), 'slab (archive).svg': svg(1) })
  await one.close()
  await two.close()
})

test('a shop on both sides: the one here stays, the other is kept aside', async () => {
  const [one, two] = [await desk(), await desk()]
  const put = (d: Desk, edit: string) =>
    d.ask('PUT', '/api/shop', { base: 0, edit, document: { castwright: 1, name: edit } })
  await put(one, 'shop-one-1')
  await put(two, 'shop-two-1')
  await bring(two, await exported(one))
  const shop = (await (await two.ask('GET', '/api/shop')).json()) as {
    document: { name: string }
    aside: { number: number }[]
  }
  expect(shop.document.name).toBe('shop-two-1')
  const aside = (await (await two.ask('GET', `/api/shop/asides/${shop.aside[0]!.number}`)).json()) as {
    document: { name: string }
  }
  expect(aside.document.name).toBe('shop-one-1')
  await one.close()
  await two.close()
})

test('a long history: fifteen megabytes of revisions go out and come in, equal', async () => {
  const [one, two] = [await desk(), await desk()]
  await save(one, 0, 'edit-first')
  const db = new Database(join(one.folder, 'castwright.db'))
  const put = db.prepare(
    "INSERT INTO revision (piece, number, edit, document, says, device, saved) VALUES ('merged0001', ?, ?, ?, '', NULL, '2026-11-27T09:00:00.000Z')"
  )
  const text = (n: number) =>
    JSON.stringify(
      pieceNamed('Merged', { n, filling: Array.from({ length: 5000 }, (_, i) => (i * n) % 9973) })
    )
  db.exec('BEGIN')
  for (let n = 2; n <= 600; n++) put.run(n, `edit-long-${n}`, text(n))
  db.exec("UPDATE piece SET revision = 600 WHERE id = 'merged0001'; COMMIT")
  db.close()
  const archive = await exported(one)
  expect(await bring(two, archive)).toMatchObject({ pieces: 1, revisions: 600 })
  expect(Buffer.compare(await exported(two), archive), 'the same content, the same bytes').toBe(0)
  await one.close()
  await two.close()
}, 60_000)

test('what is written while an archive goes out does not show in it', async () => {
  const [one, two] = [await desk(), await desk()]
  for (let n = 0; n < 6; n++) await save(one, n, `edit-slow-${n}`, { filling: 'x'.repeat(1_000_000) })
  const answer = await one.ask('GET', '/api/export')
  await save(one, 6, 'edit-after')
  await bring(two, new Uint8Array(await answer.arrayBuffer()))
  expect(await piece(two)).toMatchObject({ revision: 6 })
  expect(await piece(one)).toMatchObject({ revision: 7 })
  await one.close()
  await two.close()
})
