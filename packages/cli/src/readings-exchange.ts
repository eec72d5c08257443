import type { Reading } from '@castwright/engine'
import { readReadings } from '@castwright/engine'
import { Failure } from './failure.ts'
import { photoFolder } from './photo-folder.ts'
import { photosExchanged } from './photos-exchange.ts'
import { appendReadings } from './readings-file.ts'
import { asked } from './server-answer.ts'

/** Readings sent at once. */
const AT_ONCE = 500

/** What is exchanged with which server. */
export interface Exchange {
  readonly url: string
  /** The piece there; undefined: the one of this name. */
  readonly id: string | undefined
  readonly name: string
  readonly file: string
  readonly own: readonly Reading[]
}

/**
 * Sends a server the readings it lacks, and adds to the file those that only the server has; then the photos they tell of.
 * Ids make both count once, so it may be broken off anywhere and done again. @returns what was done, in words
 * @throws Failure
 */
export async function exchanged({ url, id, name, file, own }: Exchange): Promise<string[]> {
  const home = addressOf(url)
  const piece = id ?? (await pieceNamed(home, name))
  const path = `/api/pieces/${encodeURIComponent(piece)}/readings`
  const { readings: theirs } = (await asked(home, path)) as { readings: { id: string }[] }
  const known = new Set(theirs.map(r => r.id))
  const wanting = own.filter(r => !known.has(r.id))
  for (let i = 0; i < wanting.length; i += AT_ONCE)
    await asked(home, path, { readings: wanting.slice(i, i + AT_ONCE) })
  const mine = new Set(own.map(r => r.id))
  const fresh = theirs.filter(r => !mine.has(r.id))
  // What a newer Castwright may have kept there must read here before it is written.
  const taken = readReadings(fresh.map(r => `${JSON.stringify(r)}\n`).join(''), home).readings
  const cut = fresh.length === 0 ? null : appendReadings(file, fresh)
  const photos = await photosExchanged(home, piece, photoFolder(file), [...own, ...taken])
  return [
    ...(cut === null ? [] : [`${file}: its last record was cut off and is left out: ${cut.slice(0, 120)}`]),
    `${wanting.length} sent to ${home}, ${fresh.length} taken from it`,
    ...photos
  ]
}

function addressOf(url: string): string {
  try {
    const { protocol, origin } = new URL(url)
    if (protocol === 'http:' || protocol === 'https:') return origin
  } catch {
    // Told below.
  }
  throw new Failure(
    `--server: found "${url}"; allowed: the address that castwright serve prints, for example http://localhost:7341`
  )
}

async function pieceNamed(home: string, name: string): Promise<string> {
  const { pieces } = (await asked(home, '/api/pieces')) as { pieces: { id: string; name: string }[] }
  const found = pieces.filter(p => p.name === name)
  if (found.length === 1) return found[0]!.id
  throw new Failure(
    `${home}: found ${found.length === 0 ? 'no piece' : `${found.length} pieces`} called "${name}"; allowed: --id and the id of the piece there${
      pieces.length === 0
        ? ''
        : `: ${(found.length > 1 ? found : pieces)
            .slice(0, 12)
            .map(p => `${p.id} (${p.name})`)
            .join(', ')}`
    }`
  )
}
