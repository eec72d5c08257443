import type { Problem } from './problem.ts'
import { InputProblem, shown } from './problem.ts'

/** Largest readings file, characters, and most lines: a logger's every two seconds of four days. */
const MOST_CUP_CHARACTERS = 12_000_000
const MOST_LINES = 200_000
const MOST_LINE_CHARACTERS = 2000

/** A line of a table with its number in the file. */
export interface Row {
  readonly line: number
  readonly cells: readonly string[]
}

/** A text of lines and columns taken apart. */
export interface Table {
  readonly rows: readonly Row[]
  /** `key: value` of comment lines, keys in small letters. */
  readonly told: ReadonlyMap<string, { readonly value: string; readonly line: number }>
  /** Whether a comma may be a decimal mark. */
  readonly decimalComma: boolean
}

/**
 * Takes a text apart into rows: cells between commas, semicolons or tabs (else blanks), quotes off, blank lines
 * and comments left out. A line that begins with # or // is a comment; "# mass: 200 g" is kept as told.
 *
 * The mark between cells is the strongest one of the lines that are no comments: tab, semicolon, comma, blanks.
 * @throws InputProblem for what is too large
 */
export function tableOf(text: string, source: string): Table {
  const refuse = (found: string, allowed: string): never => {
    throw new InputProblem(source, [{ path: '', found, allowed, example: '' }])
  }
  if (text.length > MOST_CUP_CHARACTERS) refuse(`${text.length} characters`, `at most ${MOST_CUP_CHARACTERS}`)
  if (text.includes('\u0000')) refuse('a binary file', 'a text file in UTF-8 with lines of readings')
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\n|\r/)
  if (lines.length > MOST_LINES) refuse(`${lines.length} lines`, `at most ${MOST_LINES}`)
  const told = new Map<string, { value: string; line: number }>()
  const kept: { line: number; text: string }[] = []
  lines.forEach((raw, i) => {
    const line = i + 1
    if (raw.length > MOST_LINE_CHARACTERS)
      refuse(`${raw.length} characters in line ${line}`, `at most ${MOST_LINE_CHARACTERS} in a line`)
    const trimmed = raw.trim()
    if (trimmed === '') return
    const comment = /^(?:#|\/\/)\s*(.*)$/.exec(trimmed)
    if (!comment) {
      kept.push({ line, text: raw })
      return
    }
    const pair = /^([A-Za-z][A-Za-z ]{0,30}?)\s*[:=]\s*(\S.{0,200})$/.exec(
      comment[1]!.replace(/[,;\t]+$/, '')
    )
    if (pair) told.set(pair[1]!.toLowerCase(), { value: pair[2]!.trim(), line })
  })
  const mark = ['\t', ';', ','].find(m => kept.some(k => cellsOf(k.text, m).length > 1)) ?? null
  return {
    rows: kept.map(k => ({
      line: k.line,
      cells: mark === null ? k.text.trim().split(/\s+/) : cellsOf(k.text, mark)
    })),
    told,
    decimalComma: mark !== ','
  }
}

// RFC 4180 quotes, on one line.
function cellsOf(text: string, mark: string): string[] {
  const out: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!
    if (quoted) {
      if (c !== '"') cell += c
      else if (text[i + 1] === '"') {
        cell += c
        i++
      } else quoted = false
    } else if (c === '"' && cell.trim() === '') {
      cell = ''
      quoted = true
    } else if (c === mark) {
      out.push(cell.trim())
      cell = ''
    } else cell += c
  }
  out.push(cell.trim())
  return out
}

/** A plain number of a cell; a comma is a decimal mark where the table allows it. null: no number. */
export function numberIn(cell: string, decimalComma: boolean): number | null {
  const text = decimalComma || /^[-+]?[0-9]+,[0-9]+$/.test(cell) ? cell.replace(',', '.') : cell
  return /^[-+]?(?:[0-9]{1,9}(?:\.[0-9]{0,9})?|\.[0-9]{1,9})$/.test(text) ? Number(text) : null
}

/** A problem at a line. */
export function at(line: number, found: string, allowed: string, example = ''): Problem {
  return { path: `/line ${line}`, found, allowed, example }
}

/** A cell as a message shows it. */
export function cellShown(cell: string): string {
  return cell === '' ? 'an empty cell' : shown(cell)
}
