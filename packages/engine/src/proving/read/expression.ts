import { nearest } from '../../piece/nearest.ts'
import { FUNCTIONS, functionValue, PER_DEGREE } from './function.ts'
import { WHOLE_WITHIN } from './number.ts'
import { MOST_PARAMETER, type Parameters } from './parameters.ts'
import type { Scanner } from './scanner.ts'

/**
 * Values that are worked out: [ ] with + - * / ** MOD AND OR XOR, functions in degrees, parameters (NISTIR 6556,
 * 3.3.2.2 to 3.3.2.4).
 *
 * Order: ** first, then * / MOD, then + - AND OR XOR; alike ones from left to right. AND OR XOR give 1 or 0. MOD is never
 * negative. ROUND goes away from 0 at a half, FIX down, FUP up. The details beyond the condensed rules are from memory.
 * Limit: 64 brackets or parameters within each other.
 */
const DEEPEST = 64
type Operator = '**' | '*' | '/' | 'MOD' | '+' | '-' | 'AND' | 'OR' | 'XOR'
const LEVEL: Readonly<Record<Operator, number>> = {
  '**': 3,
  '*': 2,
  '/': 2,
  MOD: 2,
  '+': 1,
  '-': 1,
  AND: 1,
  OR: 1,
  XOR: 1
}
const isLetter = (c: number): boolean => (c & 0xdf) >= 65 && (c & 0xdf) <= 90 && c < 128

export class Values {
  private readonly at: Scanner
  private readonly parameters: Parameters
  private depth = 0

  constructor(at: Scanner, parameters: Parameters) {
    this.at = at
    this.parameters = parameters
  }

  /** The value that stands where the scanner does: a number, a parameter, a function or an expression. */
  real(): number {
    const c = this.at.peek()
    if (c < 58 && c !== 35) return this.at.number()
    if (c === 91 || c === 35 || isLetter(c)) {
      // The depth starts anew with each value: a line left in the middle must not make the next one shallower.
      this.depth = 0
      return this.deep()
    }
    return this.at.number()
  }

  /** The number of a parameter, after its "#". */
  parameterNumber(): number {
    const column = this.at.column()
    this.at.pos++
    const n = this.inner()
    const whole = Math.round(n)
    if (!(Math.abs(n - whole) <= WHOLE_WITHIN) || whole < 1 || whole > MOST_PARAMETER)
      this.at.complaints.fail(
        column,
        'There is no parameter of that number.',
        `#${n}`,
        `#1 to #${MOST_PARAMETER}`
      )
    return whole
  }

  private inner(): number {
    const c = this.at.peek()
    if (c === 91 || c === 35 || isLetter(c)) return this.deep()
    return this.at.number()
  }

  private deep(): number {
    const column = this.at.column()
    if (++this.depth > DEEPEST)
      this.at.complaints.fail(
        column,
        'Too many brackets stand within each other.',
        `more than ${DEEPEST}`,
        `at most ${DEEPEST}`
      )
    const c = this.at.peek()
    const value =
      c === 35
        ? this.parameters.get(this.parameterNumber(), column)
        : c === 91
          ? this.bracket()
          : this.call(column)
    this.depth--
    return this.finite(value, column)
  }

  private finite(value: number, column: number): number {
    if (Number.isFinite(value)) return value
    return this.at.complaints.fail(
      column,
      'The value worked out is no number that can be used.',
      String(value),
      'a finite number'
    )
  }

  private bracket(): number {
    const column = this.at.column()
    this.at.pos++
    const value = this.chain(1)
    if (this.at.peek() !== 93)
      this.at.complaints.fail(
        this.at.pos >= this.at.end ? column : this.at.column(),
        this.at.pos >= this.at.end
          ? 'The bracket is never closed.'
          : 'An operator or a closing bracket is missing.',
        this.at.here(),
        '+ - * / ** MOD AND OR XOR or ]'
      )
    this.at.pos++
    return value
  }

  // Everything joined by operators of a level or above.
  private chain(level: number): number {
    let left = this.inner()
    for (;;) {
      this.at.peek()
      const before = this.at.pos
      const op = this.operator()
      if (op === null) return left
      if (LEVEL[op] < level) {
        this.at.pos = before
        return left
      }
      const column = before - this.at.from + 1
      left = this.finite(this.combine(left, op, this.chain(LEVEL[op] + 1), column), column)
    }
  }

  private operator(): Operator | null {
    const c = this.at.peek()
    if (c === 42) {
      this.at.pos++
      if (this.at.peek() !== 42) return '*'
      this.at.pos++
      return '**'
    }
    if (c === 43 || c === 45 || c === 47) {
      this.at.pos++
      return c === 43 ? '+' : c === 45 ? '-' : '/'
    }
    for (const word of ['MOD', 'AND', 'OR', 'XOR'] as const) if (this.at.word(word)) return word
    return null
  }

  private combine(a: number, op: Operator, b: number, column: number): number {
    switch (op) {
      case '+':
        return a + b
      case '-':
        return a - b
      case '*':
        return a * b
      case '/':
      case 'MOD':
        if (b === 0)
          this.at.complaints.fail(column, 'This divides by zero.', `${a} ${op} 0`, 'a divisor other than 0')
        if (op === '/') return a / b
        return a % b < 0 ? (a % b) + Math.abs(b) : a % b
      case '**':
        if (a < 0 && !Number.isInteger(b))
          this.at.complaints.fail(
            column,
            'A number below 0 has no such power.',
            `${a} ** ${b}`,
            'a whole power, or a number of 0 or more'
          )
        return a ** b
      case 'AND':
        return a !== 0 && b !== 0 ? 1 : 0
      case 'OR':
        return a !== 0 || b !== 0 ? 1 : 0
      default:
        return (a !== 0) !== (b !== 0) ? 1 : 0
    }
  }

  private call(column: number): number {
    const name = FUNCTIONS.find(f => this.at.word(f))
    if (name === undefined) {
      const word = /^[A-Za-z \t]*/
        .exec(this.at.text.slice(this.at.pos, this.at.end))![0]
        .replace(/[ \t]/g, '')
      // What nobody will read is not looked for.
      const meant = this.at.complaints.full ? null : nearest(word, FUNCTIONS)
      return this.at.complaints.fail(
        column,
        'A number is missing, and no function has that name.',
        `"${word.slice(0, 20)}"`,
        meant === null ? `a number, or ${FUNCTIONS.join(' ')}` : `a number, or ${meant} if that is meant`
      )
    }
    this.open(name)
    const a = this.bracket()
    if (name !== 'ATAN') return functionValue(name, a, column, this.at.complaints)
    if (this.at.peek() !== 47)
      this.at.complaints.fail(this.at.column(), 'ATAN wants two values.', this.at.here(), 'ATAN[...]/[...]')
    this.at.pos++
    this.open(name)
    return Math.atan2(a, this.bracket()) / PER_DEGREE
  }

  private open(name: string): void {
    if (this.at.peek() !== 91)
      this.at.complaints.fail(this.at.column(), `A bracket is missing after ${name}.`, this.at.here(), '[')
  }
}
