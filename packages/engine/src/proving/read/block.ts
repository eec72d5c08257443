import { G_GROUPS, M_GROUPS } from './codes.ts'

/** Bit of a letter in {@link Block.mask}: A is 0. */
export const bit = (letter: string): number => 1 << (letter.charCodeAt(0) - 65)

/** Place of a letter in {@link Block.value} and {@link Block.column}. */
export const slot = (letter: string): number => letter.charCodeAt(0) - 65

export const X = slot('X')
export const F = slot('F')
export const H = slot('H')
export const I = slot('I')
export const L = slot('L')
export const P = slot('P')
export const Q = slot('Q')
export const R = slot('R')
export const S = slot('S')
export const T = slot('T')

/** The words X, Y and Z. */
export const AXES = bit('X') | bit('Y') | bit('Z')

/** The words of one line, read but not yet carried out. One block is used for all lines: no line makes an object. */
export class Block {
  /** Bits of the letters that the line holds, G, M and N left out. */
  mask = 0
  /** By letter; means nothing where the mask has no bit. */
  readonly value = new Float64Array(26)
  readonly column = new Int32Array(26)
  /** Bits of the G groups present; then the code times ten, and its column, by group. */
  gMask = 0
  readonly g = new Int16Array(G_GROUPS)
  readonly gColumn = new Int32Array(G_GROUPS)
  mMask = 0
  readonly m = new Int16Array(M_GROUPS)
  readonly mColumn = new Int32Array(M_GROUPS)
  mCount = 0
  /** Where the last comment of the line begins and ends in the text; from < 0: none. */
  commentFrom = -1
  commentTo = -1
  /** Parameters to be set once all is read: number, value, one pair after another. */
  readonly settings: number[] = []

  clear(): void {
    this.mask = 0
    this.gMask = 0
    this.mMask = 0
    this.mCount = 0
    this.commentFrom = -1
    if (this.settings.length > 0) this.settings.length = 0
  }

  has(letter: number): boolean {
    return (this.mask & (1 << letter)) !== 0
  }

  hasG(group: number): boolean {
    return (this.gMask & (1 << group)) !== 0
  }

  /** Column of a word; when the line holds no such word, of the G code of a group, or of the first of X, Y, Z. */
  at(letter: number, group: number): number {
    return this.has(letter) ? this.column[letter]! : this.atCode(group)
  }

  /** Column of the G code of a group; when it stands on a line before, of the first of X, Y, Z. */
  atCode(group: number): number {
    return this.hasG(group) ? this.gColumn[group]! : this.firstAxisColumn()
  }

  /** Column of the first of X, Y and Z; 0: none of them. */
  firstAxisColumn(): number {
    for (let k = X; k < X + 3; k++) if (this.has(k)) return this.column[k]!
    return 0
  }
}
