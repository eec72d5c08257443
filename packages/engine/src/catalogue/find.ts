import { ABRASIVES } from './abrasive.ts'
import { BOARDS } from './board.ts'
import { ROOMS } from './climate.ts'
import { COATS } from './coat.ts'
import { CUTTERS } from './cutter.ts'
import { HARDWARE } from './hardware.ts'
import { LINERS } from './liner.ts'
import { MIXING } from './mixing.ts'
import { PIGMENTS } from './pigment.ts'
import type { CatalogueRecord } from './record.ts'
import { RESINS } from './resin.ts'
import { HAZARDS } from './safety.ts'
import { STONES } from './stone.ts'
import { TIMBERS } from './timber.ts'
import { alike, tokensOf } from './word.ts'

/** Every catalogue by its kind. */
export const CATALOGUE = {
  timber: TIMBERS,
  resin: RESINS,
  pigment: PIGMENTS,
  stone: STONES,
  coat: COATS,
  board: BOARDS,
  liner: LINERS,
  cutter: CUTTERS,
  hardware: HARDWARE,
  room: ROOMS,
  mixing: MIXING,
  abrasive: ABRASIVES,
  hazard: HAZARDS
} as const

export type CatalogueKind = keyof typeof CATALOGUE
/** The type of a row of one kind: `RowOf<'timber'>` is a timber record. */
export type RowOf<Kind extends CatalogueKind> = (typeof CATALOGUE)[Kind][number]

/**
 * The row that a document means by `word`: by id; else by name; else by the words of the name in any order,
 * with or without what stands in brackets; else by botanical name. Case, blanks and punctuation do not count.
 * null when none or more than one fits: then offer {@link nearestIds}.
 */
export function find<Kind extends CatalogueKind>(kind: Kind, word: string): RowOf<Kind> | null {
  const wanted = tokensOf(word)
  if (wanted.length === 0) return null
  const rows: readonly RowOf<Kind>[] = CATALOGUE[kind]
  const ordered = wanted.join(' ')
  const sorted = [...wanted].sort().join(' ')
  const steps: readonly ((row: CatalogueRecord) => boolean)[] = [
    row => asAsked(row).id === ordered,
    row => asAsked(row).name === ordered,
    row => asAsked(row).sorted.includes(sorted)
  ]
  for (const fits of steps) {
    const found = rows.filter(fits)
    if (found.length > 0) return found.length === 1 ? found[0]! : null
  }
  return null
}

/** Words of a row as questions are held against them. Rows never change: each is taken apart once. */
interface RowWords {
  readonly id: string
  readonly name: string
  readonly sorted: readonly string[]
}
const taken = new WeakMap<CatalogueRecord, RowWords>()

function asAsked(row: CatalogueRecord): RowWords {
  const known = taken.get(row)
  if (known !== undefined) return known
  const words = {
    id: tokensOf(row.id).join(' '),
    name: tokensOf(row.name).join(' '),
    sorted: namesOf(row).map(name => [...tokensOf(name)].sort().join(' '))
  }
  taken.set(row, words)
  return words
}

/**
 * Ids of the `count` rows nearest to `word`, nearest first: for "not known; did you mean". Each word of the
 * question is held against its best match in a name; words of the name that nobody asked for weigh little.
 */
export function nearestIds(kind: CatalogueKind, word: string, count = 3): readonly string[] {
  if (!(Number.isInteger(count) && count >= 0)) {
    throw new RangeError(`count is ${count}; a whole number from 0 is asked for`)
  }
  const wanted = tokensOf(word)
  const scored = CATALOGUE[kind].map((row, order) => ({
    id: row.id,
    order,
    // The id breaks ties: "robinia" is first the row of that id, then the one that has it in brackets.
    score:
      Math.max(...namesOf(row).map(name => alike(wanted, tokensOf(name)))) +
      0.001 * alike(wanted, tokensOf(row.id))
  }))
  scored.sort((a, b) => b.score - a.score || a.order - b.order)
  return scored.slice(0, count).map(s => s.id)
}

/** What a row may be called: id, name, the name without brackets, what stands in them, the botanical name. */
function namesOf(row: CatalogueRecord): readonly string[] {
  const names = [row.id, row.name]
  if (row.name.includes('(')) {
    names.push(row.name.replace(/\([^)]*\)/g, ' '))
    for (const inside of row.name.match(/\(([^)]*)\)/g) ?? []) names.push(inside)
  }
  if ('botanical' in row && typeof row.botanical === 'string') names.push(row.botanical)
  return names
}
