import type { Complaints } from './complaint.ts'

/** 10^0 to 10^22: those that a double holds exactly. */
const POWERS = new Float64Array(23)
for (let k = 0; k < POWERS.length; k++) POWERS[k] = Number(`1e${k}`)
/** So many digits are held exactly by a double. */
const EXACT_DIGITS = 15

/** Walks over the characters of one line. Spaces and tabs mean nothing outside comments, even inside numbers. */
export class Scanner {
  readonly text: string
  readonly complaints: Complaints
  /** Where the line begins in the text, and the first place that is no more of it. */
  from = 0
  end = 0
  pos = 0

  constructor(text: string, complaints: Complaints) {
    this.text = text
    this.complaints = complaints
  }

  line(from: number, end: number): void {
    this.from = from
    this.end = end
    this.pos = from
  }

  /** The next character that is no space, as its code; 0 at the end of the line. It is not passed. */
  peek(): number {
    const text = this.text
    const end = this.end
    let i = this.pos
    while (i < end) {
      const c = text.charCodeAt(i)
      if (c !== 32 && c !== 9) {
        this.pos = i
        return c
      }
      i++
    }
    this.pos = i
    return 0
  }

  /** Column of the place where the scanner stands. */
  column(): number {
    return this.pos - this.from + 1
  }

  /** The character where the scanner stands, in words. */
  here(): string {
    const c = this.peek()
    if (this.pos >= this.end) return 'the end of the line'
    if (c < 32 || (c > 126 && c < 160)) return `a control character (code ${c})`
    return `"${String.fromCodePoint(this.text.codePointAt(this.pos)!)}"`
  }

  /**
   * A number: sign, digits with at most one point, at least one digit, no exponent. Correctly rounded: up to 15 digits
   * by one exact division, else by the language's own conversion (NISTIR 6556, 3.3.2.1, asks for about 17 digits).
   */
  number(): number {
    const text = this.text
    const end = this.end
    let i = this.pos
    let c = i < end ? text.charCodeAt(i) : 0
    while (c === 32 || c === 9) c = ++i < end ? text.charCodeAt(i) : 0
    const from = i
    const negative = c === 45
    if (c === 45 || c === 43) c = ++i < end ? text.charCodeAt(i) : 0
    let whole = 0
    let digits = 0
    let places = 0
    let point = false
    for (;;) {
      const d = c - 48
      if (d >= 0 && d <= 9) {
        whole = whole * 10 + d
        digits++
        if (point) places++
      } else if (c === 46) {
        if (point)
          this.complaints.fail(
            i - this.from + 1,
            'The number has two points.',
            this.seen(from, i + 1),
            'one point'
          )
        point = true
      } else if (c !== 32 && c !== 9) break
      if (++i >= end) break
      c = text.charCodeAt(i)
    }
    this.pos = i
    if (digits === 0) this.noNumber(from, i)
    if (digits <= EXACT_DIGITS) {
      const value = places === 0 ? whole : whole / POWERS[places]!
      return negative ? -value : value
    }
    return Number(text.slice(from, i).replace(/[ \t]/g, ''))
  }

  private noNumber(from: number, to: number): never {
    this.pos = to
    const c = to < this.end ? this.text.charCodeAt(to) : 0
    const value = c === 91 || c === 35 || (c > 64 && c < 91) || (c > 96 && c < 123)
    return this.complaints.fail(
      from - this.from + 1,
      to > from && value ? 'A sign stands before something that is no plain number.' : 'A number is missing.',
      to > from ? this.seen(from, Math.min(this.end, to + 1)) : this.here(),
      to > from && value ? 'a sign before digits only; write [0 - ...]' : 'a number such as 12, -0.5 or .25'
    )
  }

  /** Passes a word of capitals, small letters and spaces between them the same; false and not moved when it is not there. */
  word(name: string): boolean {
    const back = this.pos
    for (let k = 0; k < name.length; k++) {
      const c = this.peek()
      if ((c & 0xdf) !== name.charCodeAt(k) || c < 65 || c > 127) {
        this.pos = back
        return false
      }
      this.pos++
    }
    return true
  }

  /** A piece of the line, quoted and at most 40 long. */
  seen(from: number, to: number): string {
    const piece = this.text.slice(from, Math.min(to, from + 40)).trim()
    return `"${piece.replace(/\p{Cc}/gu, '?')}${to > from + 40 ? '…' : ''}"`
  }
}
