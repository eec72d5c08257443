import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { unzipSync, zipSync } from 'fflate'
import { afterAll, describe, expect, test } from 'vitest'
import type { ZipLimits } from '../src/zip-reader.ts'
import { ZipReader } from '../src/zip-reader.ts'
import { ZipWriter } from '../src/zip-writer.ts'

/** Checked against a general library of the format, in both directions. */
const folder = mkdtempSync(join(tmpdir(), 'castwright-zip-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const LIMITS: ZipLimits = {
  entries: 100,
  entryBytes: 1_000_000,
  bytes: 3_000_000,
  names: /^[a-z]+(\/[a-z]+)?\.(json|png)$/
}
const files: Record<string, Uint8Array> = {
  'a.json': new TextEncoder().encode('{"a":1}'),
  'pieces/b.json': new TextEncoder().encode(JSON.stringify(Array.from({ length: 2000 }, (_, i) => i % 7))),
  'photos/c.png': Uint8Array.from({ length: 50_000 }, (_, i) => (i * i * 31 + (i >> 3)) & 255),
  'empty.json': new Uint8Array(0)
}

function written(): Buffer {
  const zip = new ZipWriter()
  const parts = Object.entries(files).map(([name, bytes]) => zip.add(name, bytes, name.endsWith('.json')))
  return Buffer.concat([...parts, zip.end()])
}

function readAll(bytes: Uint8Array, limits = LIMITS): Record<string, Uint8Array> {
  const path = join(folder, 'archive.zip')
  writeFileSync(path, bytes)
  const zip = new ZipReader(path, limits)
  try {
    return Object.fromEntries([...zip.entries].map(([name, e]) => [name, new Uint8Array(zip.read(e))]))
  } finally {
    zip.close()
  }
}

describe('a zip', () => {
  test('that we write is read by the library, to the last byte', () => {
    expect(unzipSync(written())).toEqual(files)
    expect(written().equals(written()), 'the same content gives the same bytes').toBe(true)
  })
  test('that the library writes is read by us', () => {
    expect(readAll(zipSync(files))).toEqual(files)
    expect(readAll(zipSync(files, { level: 0 }))).toEqual(files)
    expect(readAll(written())).toEqual(files)
  })
})

describe('refused before anything of it is used', () => {
  const bomb = zipSync({ 'a.json': new Uint8Array(2_000_000) })
  /** Changes a field of the list of the archive: `offset` into the first head (APPNOTE 4.3.12). */
  const forged = (bytes: Uint8Array, offset: number, value: number): Buffer => {
    const out = Buffer.from(bytes)
    out.writeUInt32LE(value, out.readUInt32LE(out.length - 6) + offset)
    return out
  }
  test.each([
    ['a name that leaves', zipSync({ '../a.json': new Uint8Array(3) }), /name "..\/a.json"/],
    ['a name from the root', zipSync({ '/a.json': new Uint8Array(3) }), /name/],
    ['too large an entry', bomb, /more in it/],
    ['an entry that tells less than it holds', forged(bomb, 24, 5000), /cannot be unpacked/],
    [
      'an entry that tells more than deflate can',
      forged(zipSync({ 'a.json': new Uint8Array(9) }), 24, 900_000),
      /more in it/
    ],
    ['a wrong checksum', forged(zipSync(files), 16, 12_345), /damaged/],
    ['an entry said to lie elsewhere', forged(zipSync(files), 42, 40), /over each other|not where/],
    ['one that is cut off', written().subarray(0, -3), /cut off/],
    ['words', Buffer.from('not a zip at all, only words'), /no zip/],
    ['nothing', new Uint8Array(0), /0 bytes/]
  ])('%s', (_, bytes, says) => {
    expect(() => readAll(bytes)).toThrow(says)
  })
  test('too many entries, and too much in all', () => {
    const many = Object.fromEntries(
      Array.from({ length: 101 }, (_, i) => [`${'a'.repeat(i + 1)}.json`, new Uint8Array(1)])
    )
    expect(() => readAll(zipSync(many))).toThrow(/101 entries/)
    const much = Object.fromEntries(['a', 'b', 'c', 'd'].map(n => [`${n}.json`, new Uint8Array(900_000)]))
    expect(() => readAll(zipSync(much))).toThrow(/more in it/)
  })
  test('two entries over one another (the same bytes unpacked many times)', () => {
    const two = Buffer.from(zipSync({ 'a.json': new Uint8Array(500), 'b.json': new Uint8Array(500) }))
    const list = two.readUInt32LE(two.length - 6)
    two.writeUInt32LE(0, list + 46 + 6 + 42)
    expect(() => readAll(two)).toThrow(/over each other/)
  })
})
