import type { Kind } from '../../../engine/src/piece/kind.ts'
import { KINDS } from '../../../engine/src/piece/kind.ts'
import { startedPiece as started } from '../../../engine/src/piece/started.ts'
import type { Json, Start } from './messages.ts'

/** The document of a new piece. @throws Error for a kind that is not known */
export function startedPiece(start: Start): Json {
  const kind = KINDS.find(k => k.kind === start.kind)?.kind as Kind['kind'] | undefined
  if (kind === undefined)
    throw new Error(`the kind ${start.kind}; allowed: ${KINDS.map(k => k.kind).join(', ')}`)
  return started({ ...start, kind }) as unknown as Json
}
