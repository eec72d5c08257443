import type { Complaints } from './complaint.ts'

/** Highest number of a parameter. */
export const MOST_PARAMETER = 5399

/** Axes of the standard per set of parameters: X Y Z A B C. */
const PER_SET = 6
/** Where the numbers of the homes and of the shifts begin. */
export const HOME_28 = 5161
export const HOME_30 = 5181
export const SHIFT = 5211
export const SYSTEM = 5220
/** First parameter of work system n is FIRST_SYSTEM + 20 (n - 1). */
export const FIRST_SYSTEM = 5221
const PROBED = 5061

/** Numbers kept between programs, #1 to #5399. What the program has not set lies in the control and is not known. */
export class Parameters {
  private readonly value = new Float64Array(MOST_PARAMETER + 1)
  private readonly known = new Uint8Array(MOST_PARAMETER + 1)
  private readonly complaints: Complaints

  constructor(complaints: Complaints, given: Readonly<Record<number, number>>) {
    this.complaints = complaints
    for (const [n, v] of Object.entries(given)) this.put(Number(n), v)
  }

  isKnown(n: number): boolean {
    return this.known[n] === 1
  }

  get(n: number, column: number): number {
    if (this.known[n] === 1) return this.value[n]!
    return this.complaints.fail(
      column,
      n >= PROBED && n < PROBED + PER_SET
        ? 'The parameter holds where a probe touched, which is known at the machine only.'
        : 'The parameter is read before the program sets it: its value lies in the control and is not known here.',
      `#${n}`,
      `a parameter set on a line before, or its value given beside the program`
    )
  }

  put(n: number, value: number): void {
    this.value[n] = value
    this.known[n] = 1
  }

  forget(n: number): void {
    this.known[n] = 0
  }

  /** Sets by the program: not the zeros of the work systems, which must be set by their codes to be followed. */
  set(n: number, value: number, column: number): void {
    if (n >= SHIFT && n < FIRST_SYSTEM + 9 * 20)
      this.complaints.fail(
        column,
        'The zero is moved by writing into its parameter, which acts at a later moment and is not followed here.',
        `#${n}`,
        'G10 L2, G92 or G54 to G59.3'
      )
    this.put(n, value)
  }
}
