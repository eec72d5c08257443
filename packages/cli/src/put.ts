import { writeSync } from 'node:fs'
import { diskWords, Failure } from './failure.ts'

/**
 * Writes all of a text to a standard stream and waits for it.
 * A reader that went away is no fault of ours; a full disk is told.
 * @throws Failure
 */
export async function put(stream: NodeJS.WriteStream, text: string): Promise<void> {
  if (text === '') return
  const bytes = Buffer.from(text, 'utf8')
  let done = 0
  while (done < bytes.length) {
    try {
      done += writeSync(stream === process.stderr ? 2 : 1, bytes, done)
    } catch (e) {
      const code = (e as { code?: unknown }).code
      if (code === 'EPIPE') return
      if (code !== 'EAGAIN') throw new Failure(`standard output: found ${diskWords(e)}`)
      // A pipe that is full for now.
      await new Promise(resolve => setTimeout(resolve, 2))
    }
  }
}
