import type { Block } from './block.ts'
import { takeG, takeM } from './code-word.ts'
import type { Complaints } from './complaint.ts'
import type { Values } from './expression.ts'
import type { Scanner } from './scanner.ts'

/** Characters a line may hold (NISTIR 6556, 3.3). */
const MOST_CHARACTERS = 256
/** Largest value of a word: a kilometre, a million turns a minute. */
export const MOST_VALUE = 1e6
const MOST_LINE_NUMBER_DIGITS = 5

// Bits of the letters that make words; G, M and N are dealt with apart.
let LETTERS = 0
for (const letter of 'ABCDFHIJKLPQRSTXYZ') LETTERS |= 1 << (letter.charCodeAt(0) - 65)

/** What a line is, besides the words in the block. */
export const LINE = { words: 0, blank: 1, tape: 2, deleted: 3 } as const

/** Reads the words of one line into a block (NISTIR 6556, 3.3). */
export class Words {
  private readonly at: Scanner
  private readonly values: Values
  private readonly complaints: Complaints
  private readonly skipDeleted: boolean

  /** @param skipDeleted whether lines that begin with "/" are passed over, as a switch at the control asks */
  constructor(at: Scanner, values: Values, skipDeleted: boolean) {
    this.at = at
    this.values = values
    this.complaints = at.complaints
    this.skipDeleted = skipDeleted
  }

  /** Fills the block; leaves the line with a complaint where it breaks a rule. */
  read(block: Block): number {
    const at = this.at
    block.clear()
    if (at.end - at.from > MOST_CHARACTERS)
      this.complaints.fail(
        MOST_CHARACTERS + 1,
        'The line is too long.',
        `${at.end - at.from} characters`,
        `at most ${MOST_CHARACTERS}`
      )
    let c = at.peek()
    if (c === 0 && at.pos >= at.end) return LINE.blank
    if (c === 37) {
      at.pos++
      c = at.peek()
      if (at.pos < at.end)
        this.complaints.fail(
          at.column(),
          'A tape mark "%" must stand alone on its line.',
          at.here(),
          '"%" alone'
        )
      return LINE.tape
    }
    if (c === 47) {
      this.complaints.once(
        'deleted',
        'note',
        at.column(),
        `Lines that begin with "/" are ${this.skipDeleted ? 'passed over' : 'carried out'}; a switch at the control decides.`,
        '"/"',
        'either way'
      )
      if (this.skipDeleted) return LINE.deleted
      at.pos++
      c = at.peek()
    }
    if (c === 78 || c === 110) {
      this.lineNumber()
      c = at.peek()
    }
    while (at.pos < at.end) {
      // Small letters count as capitals.
      const letter = (c & 0xdf) - 65
      if (c >= 65 && letter >= 0 && letter < 26 && c < 128) this.word(block, letter, c)
      else if (c === 40) this.comment(block)
      else if (c === 35) this.setting(block)
      else if (c === 59) {
        this.complaints.once(
          'semicolon',
          'warning',
          at.column(),
          'The standard knows comments in round brackets only; from ";" on the line is taken as a comment.',
          '";"',
          '( ... )'
        )
        block.commentFrom = at.pos + 1
        block.commentTo = at.end
        at.pos = at.end
      } else this.stray(c)
      c = at.peek()
    }
    return LINE.words
  }

  private word(block: Block, letter: number, c: number): void {
    const at = this.at
    const column = at.pos - at.from + 1
    if (letter === 6 || letter === 12) {
      at.pos++
      const value = this.values.real()
      if (letter === 6) takeG(block, value, column, this.complaints)
      else takeM(block, value, column, this.complaints)
      return
    }
    const flag = 1 << letter
    if ((LETTERS & flag) === 0) this.stranger(block, c, column)
    else {
      at.pos++
      const value = this.values.real()
      if ((block.mask & flag) !== 0)
        this.complaints.fail(
          column,
          `The line holds two ${String.fromCharCode(letter + 65)} words.`,
          `a second ${String.fromCharCode(letter + 65)}`,
          'one of each letter'
        )
      if (!(value <= MOST_VALUE && value >= -MOST_VALUE))
        this.complaints.fail(
          column,
          'The number is too large to be meant.',
          `${String.fromCharCode(letter + 65)}${value}`,
          `from -${MOST_VALUE} to ${MOST_VALUE}`
        )
      block.mask |= flag
      block.value[letter] = value
      block.column[letter] = column
    }
  }

  private lineNumber(): void {
    const at = this.at
    const column = at.column()
    at.pos++
    let digits = 0
    for (;;) {
      const c = at.peek()
      if (c < 48 || c > 57) break
      at.pos++
      digits++
    }
    const next = at.peek()
    if (digits === 0 || digits > MOST_LINE_NUMBER_DIGITS || next === 46)
      this.complaints.fail(
        column,
        'The line number is not one the standard allows.',
        next === 46 ? 'a number with a point' : digits === 0 ? at.here() : `${digits} digits`,
        `N0 to N99999, at most ${MOST_LINE_NUMBER_DIGITS} digits, no sign, no point`
      )
  }

  // Parameters are set after everything on the line has been read.
  private setting(block: Block): void {
    const at = this.at
    const column = at.column()
    const n = this.values.parameterNumber()
    if (at.peek() !== 61)
      this.complaints.fail(
        at.column(),
        'A parameter stands here with no value to set.',
        at.here(),
        `#${n}=value`
      )
    at.pos++
    block.settings.push(n, this.values.real(), column)
  }

  private comment(block: Block): void {
    const at = this.at
    const { text, end } = at
    for (let i = at.pos + 1; i < end; i++) {
      const c = text.charCodeAt(i)
      if (c === 40)
        this.complaints.fail(
          i - at.from + 1,
          'A comment begins inside a comment.',
          at.seen(at.pos, i + 1),
          'no "(" inside ( ... )'
        )
      if (c === 41) {
        block.commentFrom = at.pos + 1
        block.commentTo = i
        at.pos = i + 1
        return
      }
    }
    this.complaints.fail(
      at.column(),
      'The comment is not closed on its line.',
      at.seen(at.pos, end),
      '( ... )'
    )
  }

  private stranger(block: Block, c: number, column: number): void {
    const at = this.at
    const letter = String.fromCharCode(c & 0xdf)
    if (letter === 'O' && block.mask === 0 && block.gMask === 0 && block.mMask === 0) {
      at.pos++
      this.values.real()
      const after = at.peek()
      if (at.pos >= at.end || after === 40 || after === 59) {
        this.complaints.once(
          'program number',
          'warning',
          column,
          'An O word numbers the program on some controls; the standard has none. It is passed over.',
          at.seen(column - 1 + at.from, at.pos),
          'no O word'
        )
        return
      }
    }
    this.complaints.fail(
      column,
      letter === 'N'
        ? 'A line number must be the first word of its line.'
        : `No word of the standard begins with ${letter}.`,
      `"${String.fromCharCode(c)}"`,
      'A B C D F G H I J K L M N P Q R S T X Y Z'
    )
  }

  private stray(c: number): never {
    const at = this.at
    return this.complaints.fail(
      at.column(),
      c === 41
        ? 'A comment is closed that was never opened.'
        : c === 93
          ? 'A bracket is closed that was never opened.'
          : 'Here a word should begin.',
      at.here(),
      'a letter, "(" or "#"'
    )
  }
}
