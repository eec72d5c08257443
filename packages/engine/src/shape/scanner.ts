import { DrawingError, quote } from './drawing-error.ts'

/** Largest number a drawing may hold: 10 km in mm. Larger ones are slips or attacks, and cost precision. */
export const LARGEST_NUMBER = 1e7

/**
 * Reads SVG's small languages (numbers, lists, functions) from left to right, once over each character.
 * Blanks are SVG's: space, tab, line feed, form feed, carriage return.
 */
export class Scanner {
  readonly text: string
  at = 0
  readonly #number = /[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?/y

  constructor(text: string) {
    this.text = text
  }

  get done(): boolean {
    return this.at >= this.text.length
  }

  /** The character ahead, '' at the end. */
  get next(): string {
    return this.text.charAt(this.at)
  }

  skipBlanks(): void {
    while (isBlank(this.text.charCodeAt(this.at))) this.at++
  }

  /** Skips blanks with at most one comma among them; says whether there was a comma. */
  skipComma(): boolean {
    this.skipBlanks()
    if (this.next !== ',') return false
    this.at++
    this.skipBlanks()
    return true
  }

  /** Takes one given character if it is ahead. */
  take(character: string): boolean {
    if (this.next !== character) return false
    this.at++
    return true
  }

  /** A run of letters, '' if none is ahead. */
  word(): string {
    const from = this.at
    while (/^[a-zA-Z]$/.test(this.next)) this.at++
    return this.text.slice(from, this.at)
  }

  /**
   * A number, null if none is ahead.
   * @throws DrawingError for a number beyond ±{@link LARGEST_NUMBER}
   */
  number(): number | null {
    this.#number.lastIndex = this.at
    const found = this.#number.exec(this.text)
    if (found === null) return null
    const value = Number(found[0])
    if (!(Math.abs(value) <= LARGEST_NUMBER)) {
      throw new DrawingError(
        `the number ${quote(found[0])} at index ${this.at}; allowed are −${LARGEST_NUMBER} to ${LARGEST_NUMBER}`
      )
    }
    this.at += found[0].length
    return value
  }
}

function isBlank(code: number): boolean {
  return code === 0x20 || (code >= 0x09 && code <= 0x0d && code !== 0x0b)
}

/** A whole text as numbers with blanks or commas between. @throws DrawingError for anything else */
export function numberList(text: string, what: string): number[] {
  const s = new Scanner(text)
  const out: number[] = []
  s.skipBlanks()
  while (!s.done) {
    const value = s.number()
    if (value === null)
      throw new DrawingError(`${what}: ${quote(s.text.slice(s.at))} at index ${s.at} is no number`)
    out.push(value)
    const comma = s.skipComma()
    if (comma && s.done) throw new DrawingError(`${what}: a number is missing after the last comma`)
  }
  return out
}
