import { closeSync, constants, fstatSync, openSync, readSync } from 'node:fs'
import { diskWords, Failure } from './failure.ts'

/** Largest document read, bytes: as many as the engine takes characters. */
export const MOST_DOCUMENT_BYTES = 16_000_000
/** Largest drawing read, bytes. */
export const MOST_SVG_BYTES = 8_000_000
/** Largest program read, bytes: ten million lines of a path. */
export const MOST_PROGRAM_BYTES = 400_000_000
/** Largest readings file read, bytes: ten years of a busy bench. */
export const MOST_READINGS_BYTES = 32_000_000

/**
 * The text of a file, read whole, bounded in size before a byte of it is read.
 * @throws Failure for what is no regular file, is too large, cannot be opened, or is not UTF-8 text
 */
export function readText(path: string, most: number): string {
  return decoded(bytesOf(path, most), path)
}

/**
 * The same of a file that is only ever added to: its last line may have been cut off in the middle of a letter.
 * @throws Failure
 */
export function readLog(path: string, most: number): string {
  const bytes = bytesOf(path, most)
  const end = bytes.lastIndexOf(10) + 1
  return decoded(bytes.subarray(0, end), path) + bytes.subarray(end).toString('utf8')
}

/** The bytes of a file, bounded in size before one of them is read. @throws Failure as {@link readText} */
export function bytesOf(path: string, most: number): Buffer {
  let handle: number
  try {
    // A pipe that nobody writes to must not be waited for.
    handle = openSync(path, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0))
  } catch (e) {
    throw new Failure(`${path}: found ${diskWords(e)}; allowed: a file that can be read`)
  }
  try {
    const stat = fstatSync(handle)
    if (!stat.isFile())
      throw new Failure(
        `${path}: found ${stat.isDirectory() ? 'a folder' : 'no regular file'}; allowed: a file`
      )
    if (stat.size > most)
      throw new Failure(`${path}: found ${megabytes(stat.size)}; allowed: at most ${megabytes(most)}`)
    // The size may lie (a file that grows, a file of the system): one byte more than allowed is enough to know.
    const bytes = Buffer.alloc(Math.max(stat.size, 65_536) + 1)
    let length = 0
    for (;;) {
      const got = readSync(handle, bytes, length, bytes.length - length, null)
      if (got === 0) break
      length += got
      if (length === bytes.length)
        throw new Failure(`${path}: found a file that grows while it is read; allowed: a file that rests`)
    }
    return bytes.subarray(0, length)
  } catch (e) {
    if (e instanceof Failure) throw e
    throw new Failure(`${path}: found ${diskWords(e)}; allowed: a file that can be read`)
  } finally {
    closeSync(handle)
  }
}

function decoded(bytes: Buffer, path: string): string {
  const wide =
    bytes.length >= 2 &&
    ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
  if (wide) throw new Failure(`${path}: found text in UTF-16; allowed: text in UTF-8`)
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    throw new Failure(`${path}: found a binary file; allowed: text in UTF-8`)
  }
}

function megabytes(bytes: number): string {
  return bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${Number((bytes / 1e6).toPrecision(3))} MB`
}
