/**
 * A branch x0,y0,r0,... with fewer places: each left out lies within `tolMm` of the straight line through x, y and r
 * between its neighbours (as `thinnedLine` in three dimensions: Ramer 1972; Douglas & Peucker 1973, memory). Ends and,
 * of a loop, the place farthest from its start stay.
 */
export function thinned3(branch: Float64Array, tolMm: number): Float64Array {
  const n = branch.length / 3
  if (n < 3) return branch
  const keep = new Uint8Array(n)
  keep[0] = 1
  keep[n - 1] = 1
  const stack: [number, number][] = [[0, n - 1]]
  while (stack.length > 0) {
    const [from, to] = stack.pop()!
    let [far, least] = [-1, tolMm]
    for (let k = from + 1; k < to; k++) {
      const d = strays(branch, from, to, k)
      if (d > least) [far, least] = [k, d]
    }
    if (far < 0) continue
    keep[far] = 1
    stack.push([from, far], [far, to])
  }
  const out: number[] = []
  for (let k = 0; k < n; k++)
    if (keep[k] === 1) out.push(branch[3 * k]!, branch[3 * k + 1]!, branch[3 * k + 2]!)
  return Float64Array.from(out)
}

function strays(p: Float64Array, a: number, b: number, k: number): number {
  let [long2, along] = [0, 0]
  for (let d = 0; d < 3; d++) {
    const v = p[3 * b + d]! - p[3 * a + d]!
    long2 += v * v
    along += v * (p[3 * k + d]! - p[3 * a + d]!)
  }
  const t = long2 === 0 ? 0 : Math.min(1, Math.max(0, along / long2))
  let sum = 0
  for (let d = 0; d < 3; d++) {
    const q = p[3 * a + d]! + t * (p[3 * b + d]! - p[3 * a + d]!) - p[3 * k + d]!
    sum += q * q
  }
  return Math.sqrt(sum)
}
