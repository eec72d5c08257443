import { freshName, takenNames } from '../../../engine/src/draw/entry-name.ts'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { PieceDocument } from '../../../engine/src/piece/piece-schema.ts'
import type { Json } from '../worker/document.ts'

/** The lists of a piece whose entries are laid on the sheet. */
export type List = 'timbers' | 'pours' | 'cuts' | 'hardware' | 'markings'

/** The entries of a list; none for one that the document leaves out. */
export function entriesOf(document: Json, list: List): readonly Json[] {
  return (document[list] ?? []) as Json[]
}

/** The patch that lays one more entry in a list of a piece, which is begun when it is not there. */
export function addPatch(document: Json, list: List, value: Json): Patch {
  return document[list] === undefined
    ? [{ op: 'add', path: `/${list}`, value: [value] }]
    : [{ op: 'add', path: `/${list}/-`, value }]
}

/** A name for a new entry that nothing in the piece has: as wished, or with a number. */
export function newName(document: Json, wished: string): string {
  return freshName(takenNames(document as unknown as PieceDocument), wished)
}

/** What a new timber is of: as the first one of the piece, else white ash, 20 mm, dried for indoors (practice). */
export function timberLike(document: Json): {
  readonly species: string
  readonly thickness: number | string
  readonly moisture: number | string
} {
  const like = entriesOf(document, 'timbers')[0] ?? {}
  return {
    species: (like['species'] as string | undefined) ?? 'ash-white',
    thickness: (like['thickness'] as number | string | undefined) ?? 20,
    moisture: (like['moisture'] as number | string | undefined) ?? 8.5
  }
}
