import type { Numbers } from './number.ts'

/** Largest N of the standard (RS274/NGC, 3.3.1); they may begin again. */
const MOST_NUMBER = 99_999

/** What stands for a canned cycle where the last motion is kept in mind. */
const CYCLE = 'cycle'

/** Lines of a program as they are written: what the control still knows is not said twice. */
export class Blocks {
  readonly lines: string[] = []
  x = Number.NaN
  y = Number.NaN
  z = Number.NaN
  private readonly numbers: Numbers
  private readonly numbered: boolean
  private motion = ''
  private feed = ''
  private n = 0

  constructor(numbers: Numbers, numbered: boolean) {
    this.numbers = numbers
    this.numbered = numbered
  }

  /** A line as it is: comments, lines of the maker's own. */
  raw(line: string): void {
    this.lines.push(line)
  }

  block(...words: string[]): void {
    if (!this.numbered) {
      this.lines.push(words.join(' '))
      return
    }
    this.n = this.n === MOST_NUMBER ? 1 : this.n + 1
    this.lines.push(`N${this.n} ${words.join(' ')}`)
  }

  /** The control may have lost what it knew, or somebody may have changed it: everything is said anew. */
  forget(): void {
    this.endCycle()
    this.motion = ''
    this.feed = ''
    this.x = Number.NaN
    this.y = Number.NaN
    this.z = Number.NaN
  }

  /** Straight, in the unit. Nothing is written for a move that rounding took away. */
  straight(x: number, y: number, z: number, feed: string | null): void {
    const words: string[] = []
    if (!Number.isNaN(x) && x !== this.x) words.push(`X${this.numbers.length(x)}`)
    if (!Number.isNaN(y) && y !== this.y) words.push(`Y${this.numbers.length(y)}`)
    if (z !== this.z) words.push(`Z${this.numbers.length(z)}`)
    if (words.length === 0) return
    this.go(feed === null ? 'G0' : 'G1', words, feed)
    if (!Number.isNaN(x)) this.x = x
    if (!Number.isNaN(y)) this.y = y
    this.z = z
  }

  arc(x: number, y: number, z: number, i: number, j: number, clockwise: boolean, feed: string): void {
    const { numbers } = this
    const words = [`X${numbers.length(x)}`, `Y${numbers.length(y)}`]
    if (z !== this.z) words.push(`Z${numbers.length(z)}`)
    words.push(`I${numbers.length(i)}`, `J${numbers.length(j)}`)
    // Each arc says its own direction: a line read alone is right.
    this.endCycle()
    this.motion = ''
    this.go(clockwise ? 'G2' : 'G3', words, feed)
    this.x = x
    this.y = y
    this.z = z
  }

  /** A hole by a canned cycle, out to the height where it began (G98); the cycle stays on until another motion. */
  cycle(words: readonly string[], x: number, y: number, feed: string): void {
    const out = [...words]
    if (this.motion !== CYCLE) out.unshift('G98')
    if (feed !== this.feed) out.push(`F${feed}`)
    this.feed = feed
    this.motion = CYCLE
    this.block(...out)
    this.x = x
    this.y = y
  }

  /** Ends the cycle that is on, if one is. */
  endCycle(): void {
    if (this.motion !== CYCLE) return
    this.block('G80')
    this.motion = ''
  }

  dwell(seconds: number): void {
    this.endCycle()
    this.block('G4', `P${this.numbers.seconds(seconds)}`)
    this.motion = ''
  }

  private go(motion: string, words: readonly string[], feed: string | null): void {
    this.endCycle()
    const out = motion === this.motion ? [...words] : [motion, ...words]
    if (feed !== null && feed !== this.feed) {
      out.push(`F${feed}`)
      this.feed = feed
    }
    this.motion = motion
    this.block(...out)
  }
}
