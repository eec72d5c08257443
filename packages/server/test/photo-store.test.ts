import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, onTestFinished, test } from 'vitest'
import { openFolder } from '../src/database.ts'
import { PhotoStore } from '../src/photo-store.ts'

test('photos are kept once, one by one, and nothing else becomes a row', () => {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-photos-'))
  const open = openFolder(folder, () => new Date())
  onTestFinished(() => {
    open.close()
    rmSync(folder, { recursive: true })
  })
  const { db } = open
  db.exec(
    "INSERT INTO piece (id, name, kind, revision, saved) VALUES ('photographed', 'P', NULL, 0, '2026-01-01')"
  )
  const store = new PhotoStore(db)
  const picture = { type: 'image/png', width: 3, height: 2 } as const
  const photo = (n: number) => ({
    id: String(n).repeat(24),
    piece: 'photographed',
    picture,
    bytes: new Uint8Array(100_000).fill(n),
    laid: n === 2 ? '{"at":[0,0]}' : null,
    saved: '2026-01-02'
  })
  expect([1, 2, 1].map(n => store.keep(photo(n)))).toEqual([true, true, false])
  expect(db.prepare('SELECT id, width, height, laid FROM photo ORDER BY id').all()).toMatchObject([
    { id: photo(1).id, width: 3, height: 2, laid: null },
    { id: photo(2).id, width: 3, height: 2, laid: '{"at":[0,0]}' }
  ])
  for (const n of [1, 2]) {
    const kept = store.photo('photographed', photo(n).id)!
    expect(kept.type).toBe('image/png')
    expect(Buffer.compare(kept.bytes, photo(n).bytes)).toBe(0)
  }
  expect(store.photo('another', photo(1).id)).toBeNull()
})
