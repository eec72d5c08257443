import { crc32, deflateRawSync } from 'node:zlib'
import { ServerProblem } from './problem.ts'

/** What the format holds without its later widening (PKWARE APPNOTE 6.3, 4.4: 32-bit sizes, 16-bit counts; memory). */
const MOST_ENTRIES = 65_000
const MOST_BYTES = 4_200_000_000
/** 1 January 2000, as the format writes days: the same content gives the same bytes. */
const DAY = (20 << 9) | (1 << 5) | 1
const VERSION = 20

/**
 * Writes a zip entry by entry, each with its sizes before it: an archive of any length needs no more memory than
 * its largest entry, and a reader needs not search for the end of one.
 */
export class ZipWriter {
  private readonly heads: Buffer[] = []
  private length = 0

  /** The bytes of the next entry. `packed`: deflated; what is packed already (a photo) is not. */
  add(name: string, bytes: Uint8Array, packed: boolean): Buffer {
    const data = packed ? deflateRawSync(bytes, { level: 6 }) : bytes
    const facts = Buffer.alloc(26)
    facts.writeUInt16LE(VERSION, 0)
    facts.writeUInt16LE(packed ? 8 : 0, 4)
    facts.writeUInt16LE(DAY, 8)
    facts.writeUInt32LE(crc32(bytes), 10)
    facts.writeUInt32LE(data.length, 14)
    facts.writeUInt32LE(bytes.length, 18)
    facts.writeUInt16LE(name.length, 22)
    const label = Buffer.from(name, 'latin1')
    const head = Buffer.alloc(16)
    head.writeUInt32LE(this.length, 12)
    this.heads.push(
      Buffer.concat([Buffer.from('PK\u0001\u0002\u0014\u0000', 'latin1'), facts, head.subarray(2), label])
    )
    const out = Buffer.concat([Buffer.from('PK\u0003\u0004', 'latin1'), facts, label, data])
    this.length += out.length
    if (this.heads.length > MOST_ENTRIES || this.length > MOST_BYTES)
      throw new ServerProblem(
        413,
        'too-much',
        `the archive: found more than one file holds; allowed: ${MOST_ENTRIES} entries and ${MOST_BYTES} bytes`
      )
    return out
  }

  /** The list of entries, which ends the archive. */
  end(): Buffer {
    const list = Buffer.concat(this.heads)
    const tail = Buffer.alloc(22)
    tail.write('PK\u0005\u0006', 0, 'latin1')
    tail.writeUInt16LE(this.heads.length, 8)
    tail.writeUInt16LE(this.heads.length, 10)
    tail.writeUInt32LE(list.length, 12)
    tail.writeUInt32LE(this.length, 16)
    return Buffer.concat([list, tail])
  }
}
