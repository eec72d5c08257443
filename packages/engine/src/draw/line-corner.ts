import { segmentDistance2 } from '../shape/edge-tree.ts'

/** The points Douglas–Peucker keeps within `tol` of the line, by index; first and last always. */
export function kept(p: Float64Array, tol: number): number[] {
  const n = p.length / 2
  const keep = new Uint8Array(n)
  keep[0] = keep[n - 1] = 1
  const stack = [0, n - 1]
  while (stack.length > 0) {
    const b = stack.pop()!
    const a = stack.pop()!
    let most = tol * tol
    let far = -1
    for (let k = a + 1; k < b; k++) {
      const d = segmentDistance2(p[2 * a]!, p[2 * a + 1]!, p[2 * b]!, p[2 * b + 1]!, p[2 * k]!, p[2 * k + 1]!)
      if (d > most) {
        most = d
        far = k
      }
    }
    if (far < 0) continue
    keep[far] = 1
    stack.push(a, far, far, b)
  }
  return [...keep.keys()].filter(k => keep[k] === 1)
}

/**
 * Corners in order, by index: kept points where the line (x0, y0, x1, y1, ...) turns by more than `cornerDeg` between
 * two arms of six strays. A closed line repeats its first point at the end. The ends of an open one are none.
 */
export function cornersOf(p: Float64Array, closed: boolean, strayMm: number, cornerDeg: number): number[] {
  const n = p.length / 2
  const arm = 6 * strayMm
  const round = closed ? n - 1 : n
  const arrived = (from: number, step: 1 | -1): number => {
    for (let k = 1; k < round; k++) {
      let at = from + step * k
      if (closed) at = (at + round) % round
      else if (at < 0 || at >= n) return at < 0 ? 0 : n - 1
      if (Math.hypot(p[2 * at]! - p[2 * from]!, p[2 * at + 1]! - p[2 * from + 1]!) >= arm) return at
    }
    return from
  }
  const turns: { at: number; deg: number }[] = []
  for (const at of kept(p, strayMm / 2)) {
    if (closed ? at === n - 1 : at === 0 || at === n - 1) continue
    const [a, b] = [arrived(at, -1), arrived(at, 1)]
    const one = Math.atan2(p[2 * at + 1]! - p[2 * a + 1]!, p[2 * at]! - p[2 * a]!)
    const two = Math.atan2(p[2 * b + 1]! - p[2 * at + 1]!, p[2 * b]! - p[2 * at]!)
    const deg = Math.abs(((((two - one) * 180) / Math.PI + 540) % 360) - 180)
    if (deg > cornerDeg) turns.push({ at, deg })
  }
  // Of several in a row within an arm of each other, the sharpest.
  const count = turns.length
  const state = new Uint8Array(count)
  const near = (i: number, j: number): boolean => {
    const [a, b] = [2 * turns[i]!.at, 2 * turns[j]!.at]
    return (p[a]! - p[b]!) ** 2 + (p[a + 1]! - p[b + 1]!) ** 2 < arm * arm
  }
  const order = [...turns.keys()].sort((i, j) => turns[j]!.deg - turns[i]!.deg || i - j)
  for (const i of order) {
    if (state[i] !== FREE) continue
    state[i] = CORNER
    for (const step of [1, -1])
      for (let k = 1; k < count; k++) {
        const j = closed ? (i + step * k + count * k) % count : i + step * k
        if (turns[j] === undefined || state[j] === CORNER || !near(i, j)) break
        state[j] = PASSED
      }
  }
  return turns.filter((_, i) => state[i] === CORNER).map(t => t.at)
}

const [FREE, CORNER, PASSED] = [0, 1, 2] as const
