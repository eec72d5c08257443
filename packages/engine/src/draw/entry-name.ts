import type { PieceDocument } from '../piece/piece-schema.ts'

/** The lists of a piece whose entries are called by a name, and the word for one entry. */
const LISTS = [
  ['timbers', 'timber'],
  ['pours', 'pour'],
  ['cuts', 'cut'],
  ['hardware', 'hardware'],
  ['markings', 'marking']
] as const

export type NamedList = (typeof LISTS)[number][0]

/** Longest name of an entry, characters. */
const LONGEST = 60

/** What an entry of a list is called by others: its own name, or its word and number ("timber 2"). */
export function nameOf(list: NamedList | 'formers', entry: unknown, index: number): string {
  const id = (entry as { id?: unknown } | null)?.id
  const word = list === 'formers' ? 'former' : LISTS.find(([name]) => name === list)![1]
  return typeof id === 'string' ? id : `${word} ${index + 1}`
}

/** The names of one list of a piece; a document that is not sound has those that can be read. */
export function namesOf(document: PieceDocument, list: NamedList | 'formers'): string[] {
  const entries: unknown = list === 'formers' ? document.mould?.formers : document[list]
  return Array.isArray(entries) ? entries.map((entry, i) => nameOf(list, entry, i)) : []
}

/** Every name of a piece, and those that entries without a name would get if one more came to each list. */
export function takenNames(document: PieceDocument): Set<string> {
  const out = new Set<string>()
  for (const list of [...LISTS.map(([name]) => name), 'formers'] as const) {
    const names = namesOf(document, list)
    for (const name of [...names, nameOf(list, null, names.length), nameOf(list, null, names.length + 1)])
      out.add(name)
  }
  return out
}

/** `wanted`, or with the least number from 2 on that nothing in `taken` has: "near slab 2". Adds it to `taken`. */
export function freshName(taken: Set<string>, wanted: string): string {
  let name = wanted.slice(0, LONGEST)
  for (let n = 2; taken.has(name); n++) name = `${wanted.slice(0, LONGEST - 1 - String(n).length)} ${n}`
  taken.add(name)
  return name
}
