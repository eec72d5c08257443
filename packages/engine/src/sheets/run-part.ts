import type { Sheet } from './mark.ts'

/** A figure with its name: "Peak", "35", "°C". */
export interface RunFact {
  readonly label: string
  readonly value: string
  readonly unit: string
  /** Another matter begins: it stands on a line of its own. */
  readonly begins?: true
}

/** The fact as the first of a new line. */
export function newLine(f: RunFact): RunFact {
  return { ...f, begins: true }
}

/** Figures of a step line by line: one matter a line, so that no line runs on. */
export function factLines(facts: readonly RunFact[]): RunFact[][] {
  const out: RunFact[][] = []
  for (const f of facts) {
    const last = out.at(-1)
    if (last === undefined || f.begins === true) out.push([f])
    else last.push(f)
  }
  return out
}

/** A place to write what was measured: its name, unit, and what the plan says it should be. */
export interface RunBlank {
  readonly label: string
  readonly unit: string
  readonly planned: string | null
}

/**
 * One thing that goes into a vessel. Grams are rounded to the step of the scale, or to two figures where the
 * scale cannot weigh them; volumes of the two parts alone.
 */
export interface RunShare {
  readonly name: string
  readonly g: number
  /** `g` in words: with all decimals of the scale. */
  readonly words: string
  readonly ml: number | null
}

/** What is weighed into each of a number of equal batches. */
export interface RunAmounts {
  readonly batches: number
  readonly shares: readonly RunShare[]
  /** Sum of the shares to the step of the scale, g: what it reads at the end. */
  readonly totalG: number
  /** Unrounded sum of all batches of one blank, g: what the plan mixes. */
  readonly mixedG: number
  /** Decimals that the scale shows. */
  readonly places: number
  readonly blanks: number
  readonly vessel: string
  /** The lot of the shelf that all of it is mixed from; null: none is known, or there are several. */
  readonly lot: string | null
}

/** A number or two that bound it, with a unit or without; or what stands for none. */
const FIGURE = /^([±+−-]?[\d.,]+( to [\d.,]+)?( \S+)?|–)$/

/** Which columns of a table hold figures alone: they stand at the right, under their heads. The first names its row. */
export function figureColumns(t: Pick<RunTable, 'head' | 'rows'>): boolean[] {
  return t.head.map((_, k) => k > 0 && t.rows.every(r => FIGURE.test(r[k] ?? '–')))
}

/** A plain table: the cut list. */
export interface RunTable {
  readonly title: string
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

/** What the sheet says of one step beyond its heading. */
export interface RunDetail {
  /** Plain sentences: what to do. */
  readonly does: readonly string[]
  readonly facts: readonly RunFact[]
  readonly amounts: RunAmounts | null
  readonly table: RunTable | null
  /** Grades of paper, with passes, minutes and discs. */
  readonly sanding: RunTable | null
  /** How a pour heats and thickens, drawn, and its words for those who do not see it. */
  readonly course: { readonly sheet: Sheet; readonly words: string } | null
  /** Its windows, each with its band and the reading that would sharpen it. */
  readonly windows: RunTable | null
  readonly blanks: readonly RunBlank[]
}

/** A detail with nothing in it but what is given. */
export function detail(parts: Partial<RunDetail>): RunDetail {
  return {
    does: [],
    facts: [],
    amounts: null,
    table: null,
    sanding: null,
    course: null,
    windows: null,
    blanks: [],
    ...parts
  }
}

/** A figure from a label, words and a unit. */
export function fact(label: string, value: string, unit = ''): RunFact {
  return { label, value, unit }
}

/** A blank, with what the plan says when it says something. */
export function blank(label: string, unit: string, planned: string | null = null): RunBlank {
  return { label, unit, planned }
}
