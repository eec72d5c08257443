import { nearest } from './nearest.ts'
import type { Cut, Hardware, Marking, Piece, Pour, Timber } from './piece-schema.ts'
import type { Problem } from './problem.ts'
import { InputProblem, oneOf, readable } from './problem.ts'

/** The lists of a piece whose entries have names. */
export type EntryList = 'timbers' | 'pours' | 'cuts' | 'hardware' | 'markings' | 'formers'

/** An entry of a piece with the name others call it by and where it stands in the document. */
export interface Entry<T> {
  readonly id: string
  readonly at: string
  readonly index: number
  readonly value: T
}

/** Every named entry of a piece. An entry without an id is called by its list and number: "pour 1". */
export interface Entries {
  readonly timbers: readonly Entry<Timber>[]
  readonly pours: readonly Entry<Pour>[]
  readonly cuts: readonly Entry<Cut>[]
  readonly hardware: readonly Entry<Hardware>[]
  readonly markings: readonly Entry<Marking>[]
  readonly formers: readonly Entry<Piece['mould']['formers'][number]>[]
}

const WORD: Record<EntryList, string> = {
  timbers: 'timber',
  pours: 'pour',
  cuts: 'cut',
  hardware: 'hardware',
  markings: 'marking',
  formers: 'former'
}

/** Names all entries and checks that names are used once and that everything pointed at is there. @throws InputProblem */
export function entriesOf(piece: Piece, source: string): Entries {
  const list = <T extends { id?: string | undefined }>(name: EntryList, at: string, values: readonly T[]) =>
    values.map(
      (value, index): Entry<T> => ({
        id: value.id ?? `${WORD[name]} ${index + 1}`,
        at: `${at}/${index}`,
        index,
        value
      })
    )
  const entries: Entries = {
    timbers: list('timbers', '/timbers', piece.timbers),
    pours: list('pours', '/pours', piece.pours),
    cuts: list('cuts', '/cuts', piece.cuts),
    hardware: list('hardware', '/hardware', piece.hardware),
    markings: list('markings', '/markings', piece.markings),
    formers: list('formers', '/mould/formers', piece.mould.formers)
  }
  const problems = [...twice(entries), ...missing(piece, entries)]
  if (problems.length > 0) throw new InputProblem(source, problems)
  return entries
}

function twice(entries: Entries): Problem[] {
  const seen = new Map<string, string>()
  const out: Problem[] = []
  for (const entry of Object.values(entries).flat() as Entry<unknown>[]) {
    const first = seen.get(entry.id)
    if (first !== undefined) {
      out.push({
        path: `${entry.at}/id`,
        found: `the name "${entry.id}", which ${readable(first)} has too`,
        allowed: 'each name once',
        example: `"${entry.id} 2"`
      })
    }
    seen.set(entry.id, entry.at)
  }
  return out
}

function missing(piece: Piece, entries: Entries): Problem[] {
  const out: Problem[] = []
  const point = (path: string, id: string | undefined, lists: readonly EntryList[]) => {
    if (id === undefined) return
    const known = lists.flatMap(l => (entries[l] as readonly Entry<unknown>[]).map(e => e.id))
    if (known.includes(id)) return
    const near = nearest(id, known)
    const what = lists.map(l => WORD[l]).join(' or ')
    out.push({
      path,
      found: `"${id}", which no ${what} is called`,
      allowed: known.length === 0 ? `the name of a ${what}; the piece has none` : oneOf(known),
      example: near === null ? (known[0] ?? '') : `"${near}"`
    })
  }
  piece.pours.forEach((p, i) => {
    p.into?.forEach((c, j) => {
      point(`/pours/${i}/into/${j}`, c, ['cuts'])
    })
  })
  piece.cuts.forEach((c, i) => {
    point(`/cuts/${i}/for`, c.for, ['hardware'])
  })
  piece.hardware.forEach((h, i) => {
    point(`/hardware/${i}/in`, h.in, ['cuts', 'formers'])
    point(`/hardware/${i}/castIn`, h.castIn, ['pours'])
  })
  piece.steps?.forEach((s, i) => {
    const lists: Partial<Record<typeof s.do, EntryList>> = {
      'prepare timber': 'timbers',
      'set timber': 'timbers',
      pour: 'pours',
      'set stones': 'pours',
      cut: 'cuts',
      mark: 'markings',
      fill: 'markings',
      fit: 'hardware'
    }
    const wanted = lists[s.do]
    if (s.do === 'wait' && s.for === undefined && s.until === undefined)
      out.push({
        path: `/steps/${i}`,
        found: 'a wait that says neither how long nor until what',
        allowed: '"for", "until" or both',
        example: '{ "do": "wait", "until": "sand" }'
      })
    if (wanted && 'what' in s) point(`/steps/${i}/what`, s.what, [wanted])
  })
  return out
}
