/**
 * A small set of linear equations, solved by elimination with the largest pivot of each column.
 *
 * Source: Gaussian elimination with partial pivoting (textbook). Check: the solution put back gives the right
 * side to the last digits (test).
 *
 * Limits: meant for a handful of unknowns; rows are scaled by their largest entry, because stretching and
 * bending of a plate stand in different units.
 *
 * @param matrix row after row, n × n; left as it is
 * @throws RangeError when the equations do not settle the unknowns
 */
export function solved(matrix: readonly number[], right: readonly number[]): number[] {
  const n = right.length
  const m = [...matrix]
  const x = [...right]
  const scale = right.map((_, i) => {
    let most = 0
    for (let k = 0; k < n; k++) most = Math.max(most, Math.abs(m[i * n + k]!))
    return most > 0 ? 1 / most : 0
  })
  for (let j = 0; j < n; j++) {
    let best = j
    for (let i = j + 1; i < n; i++)
      if (Math.abs(m[i * n + j]!) * scale[i]! > Math.abs(m[best * n + j]!) * scale[best]!) best = i
    if (!(Math.abs(m[best * n + j]!) * scale[best]! > 1e-12))
      throw new RangeError('the plate has no stiffness in some direction; every ply needs some')
    if (best !== j) {
      for (let k = 0; k < n; k++) swap(m, j * n + k, best * n + k)
      swap(x, j, best)
      swap(scale, j, best)
    }
    for (let i = j + 1; i < n; i++) {
      const f = m[i * n + j]! / m[j * n + j]!
      if (f === 0) continue
      for (let k = j; k < n; k++) m[i * n + k] = m[i * n + k]! - f * m[j * n + k]!
      x[i] = x[i]! - f * x[j]!
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = x[i]!
    for (let k = i + 1; k < n; k++) sum -= m[i * n + k]! * x[k]!
    x[i] = sum / m[i * n + i]!
  }
  return x
}

function swap(row: number[], i: number, k: number): void {
  const kept = row[i]!
  row[i] = row[k]!
  row[k] = kept
}
