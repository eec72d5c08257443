import {
  closeSync,
  existsSync,
  fstatSync,
  fsyncSync,
  ftruncateSync,
  openSync,
  readSync,
  writeSync
} from 'node:fs'
import { dirname } from 'node:path'
import { readReadings } from '@castwright/engine'
import { diskWords, Failure } from './failure.ts'
import { MOST_READINGS_BYTES, readLog } from './text-file.ts'

/** The readings file that belongs to a piece: NAME.readings.jsonl beside NAME.piece.json. */
export function readingsPath(piece: string, asked: string | undefined): string {
  const beside = piece.replace(/(\.piece)?\.json$/, '.readings.jsonl')
  return asked ?? (beside === piece ? `${piece}.readings.jsonl` : beside)
}

/** The readings of a file with what could not be read of it; none where there is no file. @throws Failure, InputProblem */
export function readingsIn(path: string): ReturnType<typeof readReadings> {
  return existsSync(path)
    ? readReadings(readLog(path, MOST_READINGS_BYTES), path)
    : { readings: [], unread: [] }
}

/**
 * Adds records to the end of a readings file: in one write, flushed to the disk before this returns, so that what was
 * acknowledged survives a kill or a power cut at any instant. What is there already is never rewritten. A last record
 * that was cut off before it was whole (it was never acknowledged) is taken away first; the text of it is returned.
 * @throws Failure; then nothing new is in the file
 */
export function appendReadings(path: string, records: readonly object[]): string | null {
  let handle: number | null = null
  try {
    const fresh = !existsSync(path)
    handle = openSync(path, 'a+', 0o666)
    const tail = tailOf(handle)
    const whole = isJson(tail.toString('utf8'))
    const cut = tail.length > 0 && !whole ? tail.toString('utf8') : null
    if (cut !== null) ftruncateSync(handle, fstatSync(handle).size - tail.length)
    // The last record is whole, but its line was not ended.
    const first = tail.length > 0 && whole ? '\n' : ''
    const bytes = Buffer.from(first + records.map(r => `${JSON.stringify(r)}\n`).join(''), 'utf8')
    let done = 0
    while (done < bytes.length) done += writeSync(handle, bytes, done)
    fsyncSync(handle)
    if (fresh) flushFolder(dirname(path))
    return cut
  } catch (e) {
    if (e instanceof Failure) throw e
    throw new Failure(
      `${path}: found ${diskWords(e)}; allowed: a file that can be added to. Nothing is logged`
    )
  } finally {
    if (handle !== null) closeSync(handle)
  }
}

/** Bytes looked at from the end for the last line: no record is longer. */
const MOST_TAIL = 262_144

// What stands after the last line's end, by bytes: a cut may lie in the middle of a letter.
function tailOf(handle: number): Buffer {
  const { size } = fstatSync(handle)
  const bytes = Buffer.alloc(Math.min(size, MOST_TAIL))
  let done = 0
  while (done < bytes.length) {
    const got = readSync(handle, bytes, done, bytes.length - done, size - bytes.length + done)
    if (got === 0) break
    done += got
  }
  return bytes.subarray(bytes.lastIndexOf(10) + 1)
}

function isJson(text: string): boolean {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

/** Flushes a folder: a new name in it is on the disk only when the folder is. */
export function flushFolder(folder: string): void {
  try {
    const handle = openSync(folder === '' ? '.' : folder, 'r')
    try {
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
  } catch {
    // Some systems flush no folders; the record itself is flushed.
  }
}
