import type { Patch } from '../piece/patch.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import type { Files } from '../piece/region.ts'
import type { ClipKind, Clipping } from './clipping.ts'
import { LIST, MOST } from './clipping.ts'
import type { NamedList } from './entry-name.ts'
import { freshName, nameOf, namesOf, takenNames } from './entry-name.ts'
import { shiftEntry } from './entry-shift.ts'

export type { ClipKind, Clipping } from './clipping.ts'
export { clippingText, readClipping } from './clipping.ts'

/**
 * Copying an entry of one piece into another, or into the same. The piece that is pasted into need not be sound
 * as a whole; the entry is (see {@link readClipping}).
 */
type Entry = Record<string, unknown>

/** Entry `index` of a list, with the drawings it names; null when there is none. */
export function copied(
  document: PieceDocument,
  kind: ClipKind,
  index: number,
  files: Files = {}
): Clipping | null {
  const list: unknown = document[LIST[kind]]
  const entry: unknown = Array.isArray(list) ? list[index] : undefined
  if (entry === null || typeof entry !== 'object') return null
  const id = kind === 'edge' ? {} : { id: nameOf(LIST[kind] as NamedList, entry, index) }
  const named: Record<string, string> = {}
  eachFile(entry, name => {
    if (Object.hasOwn(files, name)) named[name] = files[name]!
    return name
  })
  return {
    castwright: 1,
    kind,
    entry: JSON.parse(JSON.stringify({ ...id, ...entry })) as Entry,
    files: named
  }
}

/** What pasting does: a patch of the piece, drawings to put beside it, and what the maker should know. */
export type Pasted =
  | {
      readonly patch: Patch
      readonly files: Files
      readonly id: string | null
      readonly says: readonly string[]
    }
  | { readonly problem: string }

/**
 * A clipping put into a piece under a fresh name. What it points at by name (the hardware of a cut, the cut of
 * hardware, the cuts of an inlay, the pour of hardware) stays when the piece has such an entry, and is taken off
 * and said so when it has not. A drawing whose name is taken by another drawing gets a new one.
 *
 * `have`: the drawings beside the piece already. `shiftMm`: moved by so much, so that a copy in the same piece does
 * not lie on its original.
 */
export function pasted(
  document: PieceDocument,
  clipping: Clipping,
  have: Files = {},
  shiftMm: readonly [number, number] = [0, 0]
): Pasted {
  const list = LIST[clipping.kind]
  const there: unknown = document[list]
  if (there !== undefined && !Array.isArray(there))
    return { problem: `"${list}" of this piece is no list; mend that first` }
  const count = there === undefined ? 0 : (there as unknown[]).length
  if (count >= MOST[clipping.kind])
    return { problem: `${count} entries in "${list}" already; allowed: at most ${MOST[clipping.kind]}` }
  const says: string[] = []
  const entry = JSON.parse(JSON.stringify(clipping.entry)) as Entry
  mend(document, clipping.kind, entry, says)
  shiftEntry(entry, shiftMm[0], shiftMm[1])
  const files = drawings(entry, clipping.files, have, says)
  let id: string | null = null
  if (clipping.kind !== 'edge') {
    const wanted = typeof entry['id'] === 'string' ? entry['id'] : clipping.kind
    id = freshName(takenNames(document), wanted)
    entry['id'] = id
    if (id !== wanted) says.push(`"${wanted}" is called "${id}" here`)
  }
  const patch: Patch =
    there === undefined
      ? [{ op: 'add', path: `/${list}`, value: [entry] }]
      : [{ op: 'add', path: `/${list}/-`, value: entry }]
  return { patch, files, id, says }
}

/** Keys that point at entries of other lists. */
const POINTS: Readonly<
  Partial<Record<ClipKind, Readonly<Record<string, readonly (NamedList | 'formers')[]>>>>
> = {
  cut: { for: ['hardware'] },
  hardware: { in: ['cuts', 'formers'], castIn: ['pours'] },
  pour: { into: ['cuts'] }
}

function mend(document: PieceDocument, kind: ClipKind, entry: Entry, says: string[]): void {
  for (const [key, lists] of Object.entries(POINTS[kind] ?? {})) {
    const value = entry[key]
    if (value === undefined) continue
    const known = new Set(lists.flatMap(l => namesOf(document, l)))
    const names = (Array.isArray(value) ? value : [value]) as string[]
    const stay = names.filter(name => known.has(name))
    for (const name of names)
      if (!known.has(name)) says.push(`"${key}" named "${name}", which this piece has not: taken off`)
    if (stay.length === names.length) continue
    if (Array.isArray(value) && stay.length > 0) entry[key] = stay
    else delete entry[key]
  }
}

// Names the drawings anew where need be; returns those the piece has not yet.
function drawings(entry: Entry, brought: Files, have: Files, says: string[]): Files {
  const out: Record<string, string> = {}
  const names = new Map<string, string>()
  const missing = new Set<string>()
  eachFile(entry, name => {
    const known = names.get(name)
    if (known !== undefined) return known
    let as = name
    if (!Object.hasOwn(brought, name)) {
      if (!Object.hasOwn(have, name)) missing.add(name)
    } else {
      const text = brought[name]!
      const dot = name.lastIndexOf('.')
      const taken = (n: string) => (Object.hasOwn(have, n) && have[n] !== text) || Object.hasOwn(out, n)
      for (let n = 2; taken(as); n++) as = `${name.slice(0, dot)} ${n}${name.slice(dot)}`
      if (!Object.hasOwn(have, as)) out[as] = text
      if (as !== name) says.push(`the drawing "${name}" is called "${as}" here`)
    }
    names.set(name, as)
    return as
  })
  for (const name of missing) says.push(`the drawing "${name}" did not come along: put it beside the piece`)
  return out
}

// Calls `rename` with the name of every drawing of an entry and writes what it returns: only shapes have a `file`.
function eachFile(value: unknown, rename: (name: string) => string): void {
  if (value === null || typeof value !== 'object') return
  for (const [key, inner] of Object.entries(value)) {
    if (key === 'file' && typeof inner === 'string') {
      const as = rename(inner)
      if (as !== inner) (value as Entry)[key] = as
    } else eachFile(inner, rename)
  }
}
