/**
 * Seeded chance for tests: mulberry32, a 32-bit generator of full period (public domain; memory). The same seed
 * gives the same numbers on every machine.
 */
export interface Chance {
  /** 0 ≤ x < 1. */
  next(): number
  span(from: number, to: number): number
  /** A whole number from `from` to `to`, both included. */
  whole(from: number, to: number): number
  is(probability: number): boolean
  pick<T>(list: readonly T[]): T
}

export function chance(seed: number): Chance {
  let state = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) >>> 0
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const span = (from: number, to: number) => from + next() * (to - from)
  return {
    next,
    span,
    whole: (from, to) => from + Math.floor(next() * (to - from + 1)),
    is: probability => next() < probability,
    pick: list => list[Math.floor(next() * list.length)]!
  }
}
