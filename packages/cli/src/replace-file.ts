import {
  closeSync,
  existsSync,
  fchmodSync,
  fsyncSync,
  openSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeSync
} from 'node:fs'
import { diskWords, Failure } from './failure.ts'

/**
 * Puts a text in the place of a file, whole or not at all: written and flushed beside it, then moved over it.
 * A link is followed; the file's rights are kept.
 * @throws Failure; the file is then as it was
 */
export function replaceFile(path: string, text: string): void {
  let waiting: string | null = null
  try {
    const there = existsSync(path)
    const place = there ? realpathSync(path) : path
    waiting = `${place}.castwright-part`
    const handle = openSync(waiting, 'w', 0o666)
    try {
      if (there) fchmodSync(handle, statSync(place).mode & 0o777)
      const bytes = Buffer.from(text, 'utf8')
      let done = 0
      while (done < bytes.length) done += writeSync(handle, bytes, done)
      fsyncSync(handle)
    } finally {
      closeSync(handle)
    }
    renameSync(waiting, place)
  } catch (e) {
    if (waiting !== null) rmSync(waiting, { force: true })
    throw new Failure(
      `${path}: found ${diskWords(e)}; allowed: a file that can be written to. Nothing was stored`
    )
  }
}
