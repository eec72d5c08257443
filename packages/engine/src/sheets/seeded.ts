/**
 * Numbers 0 ≤ u < 1 that look random and are the same on every run: a drawing must not change from one
 * print to the next. Mixing of a 32-bit counter by multiplication and shifts (mulberry32, public domain;
 * memory). For looks only: no statistic rests on it.
 */
export function seeded(seed: number): () => number {
  let state = Math.imul(seed | 0, 0x9e3779b1) ^ 0x5bd1e995
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
