import { closeSync, fstatSync, openSync, readSync } from 'node:fs'
import { crc32, inflateRawSync } from 'node:zlib'
import type { ServerProblem } from './problem.ts'
import { refused } from './problem.ts'

/** An entry as the list of an archive tells it; nothing of it is believed before it is read. Bytes. */
export interface ZipEntry {
  readonly name: string
  readonly packed: boolean
  readonly crc: number
  readonly packedBytes: number
  readonly bytes: number
  readonly at: number
  /** Where the next entry, or the list, begins. */
  readonly until: number
}

/** What an archive may hold. */
export interface ZipLimits {
  readonly entries: number
  readonly entryBytes: number
  readonly bytes: number
  readonly names: RegExp
}

const TAIL = 22
const HEAD = 46
const LOCAL = 30
/** Deflate packs at most about 1032 to 1 (its longest match is 258 bytes in 2 bits; zlib's own figure; memory). */
const MOST_RATIO = 1040

/**
 * Reads a zip on the disk, one entry at a time (PKWARE APPNOTE 6.3, sections 4.3 and 4.4; memory). The list at its end
 * is checked as a whole before an entry is read: names, sizes, that no two entries lie over each other. An entry is
 * unpacked to no more than the list says, and its checksum is checked.
 */
export class ZipReader {
  readonly entries: ReadonlyMap<string, ZipEntry>
  private readonly file: number

  /** @throws ServerProblem 400 for what is no whole archive within the limits */
  constructor(path: string, limits: ZipLimits) {
    this.file = openSync(path, 'r')
    try {
      this.entries = listed(this.file, limits)
    } catch (e) {
      closeSync(this.file)
      throw e
    }
  }

  /** The content of an entry. @throws ServerProblem 400 when it is not what the list says */
  read(entry: ZipEntry): Buffer {
    const local = part(this.file, entry.at, LOCAL)
    const from = entry.at + LOCAL + local.readUInt16LE(26) + local.readUInt16LE(28)
    const name = part(this.file, entry.at + LOCAL, local.readUInt16LE(26)).toString('latin1')
    if (local.readUInt32LE(0) !== 0x04034b50 || name !== entry.name || from + entry.packedBytes > entry.until)
      throw no('an entry that is not where its list says')
    const data = part(this.file, from, entry.packedBytes)
    let out = data
    if (entry.packed)
      try {
        out = inflateRawSync(data, { maxOutputLength: Math.max(1, entry.bytes) })
      } catch {
        throw no('an entry that cannot be unpacked to what its list says')
      }
    if (out.length !== entry.bytes || crc32(out) !== entry.crc) throw no('an entry that is damaged')
    return out
  }

  close(): void {
    closeSync(this.file)
  }
}

function listed(file: number, limits: ZipLimits): Map<string, ZipEntry> {
  const { size } = fstatSync(file)
  if (size < TAIL) throw no(`${size} bytes, which is no zip`)
  const tail = part(file, size - TAIL, TAIL)
  const count = tail.readUInt16LE(10)
  const length = tail.readUInt32LE(12)
  const start = tail.readUInt32LE(16)
  if (tail.readUInt32LE(0) !== 0x06054b50 || tail.readUInt16LE(20) !== 0)
    throw no('no zip, or one that is cut off')
  if (tail.readUInt32LE(4) !== 0 || tail.readUInt16LE(8) !== count || start + length !== size - TAIL)
    throw no('a list that is not where its end says')
  if (count > limits.entries) throw no(`${count} entries`)
  if (length > count * (HEAD + 1000)) throw no('a list that is longer than its entries')
  const list = part(file, start, length)
  const found: Omit<ZipEntry, 'until'>[] = []
  const names = new Set<string>()
  let sum = 0
  let k = 0
  for (let n = 0; n < count; n++) {
    if (k + HEAD > length || list.readUInt32LE(k) !== 0x02014b50) throw no('a list that is damaged')
    const secret = (list.readUInt16LE(k + 8) & 1) === 1
    const method = list.readUInt16LE(k + 10)
    const entry = {
      crc: list.readUInt32LE(k + 16),
      packed: method === 8,
      packedBytes: list.readUInt32LE(k + 20),
      bytes: list.readUInt32LE(k + 24),
      at: list.readUInt32LE(k + 42),
      name: list.subarray(k + HEAD, k + HEAD + list.readUInt16LE(k + 28)).toString('latin1')
    }
    k += HEAD + list.readUInt16LE(k + 28) + list.readUInt16LE(k + 30) + list.readUInt16LE(k + 32)
    sum += entry.bytes
    if (!limits.names.test(entry.name)) throw no(`an entry by the name "${entry.name.slice(0, 60)}"`)
    if (names.has(entry.name)) throw no(`two entries by the name ${entry.name}`)
    if ((method !== 0 && method !== 8) || secret || (!entry.packed && entry.bytes !== entry.packedBytes))
      throw no('an entry packed in another way')
    if (
      entry.bytes > limits.entryBytes ||
      sum > limits.bytes ||
      entry.bytes > entry.packedBytes * MOST_RATIO + 64
    )
      throw no('more in it than an archive may hold')
    names.add(entry.name)
    found.push(entry)
  }
  if (k !== length) throw no('a list that is damaged')
  found.sort((a, b) => a.at - b.at)
  return new Map(
    found.map((e, i) => {
      const until = found[i + 1]?.at ?? start
      if (e.at + LOCAL + e.name.length + e.packedBytes > until) throw no('entries that lie over each other')
      return [e.name, { ...e, until }]
    })
  )
}

function part(file: number, at: number, length: number): Buffer {
  const out = Buffer.alloc(length)
  let done = 0
  while (done < length) {
    const got = readSync(file, out, done, length - done, at + done)
    if (got === 0) throw no('one that is cut off')
    done += got
  }
  return out
}

function no(found: string): ServerProblem {
  return refused(`the archive: found ${found}; allowed: an archive that this program wrote`)
}
