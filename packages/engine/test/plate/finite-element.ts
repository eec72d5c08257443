/**
 * A layered cross-section in plane stress by finite elements of eight nodes, written for the tests alone and
 * slow on purpose: no plate theory in it. x runs along the strip, z through its thickness; each layer is alike in
 * all directions, and grows by a free strain in both.
 *
 * Source: serendipity element with 3 × 3 Gauss points (textbook: Zienkiewicz). Check: one layer that grows stays
 * straight (test).
 */
export interface Grown {
  readonly thicknessMm: number
  readonly modulusMPa: number
  readonly poisson: number
  readonly strain: number
}

const GAUSS = [
  [-Math.sqrt(0.6), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(0.6), 5 / 9]
] as const
/** Nodes of an element: four corners, then the middles of its sides. */
const NODES = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0]
] as const

function slopes(r: number, s: number): (readonly [number, number])[] {
  return NODES.map(([a, b], k) => {
    if (k < 4)
      return [
        (a * (1 + b * s) * (2 * a * r + b * s)) / 4,
        (b * (1 + a * r) * (2 * b * s + a * r)) / 4
      ] as const
    return a === 0
      ? ([-r * (1 + b * s), (b * (1 - r * r)) / 2] as const)
      : ([(a * (1 - s * s)) / 2, -s * (1 + a * r)] as const)
  })
}

/** Curvature −w'' of the free strip in its middle, 1/mm: from the heights of its lower face at three places. */
export function stripCurvaturePerMm(
  layers: readonly Grown[],
  lengthMm: number,
  along: number,
  each = 2
): number {
  const rows = layers.flatMap(l =>
    Array.from({ length: each }, () => ({ ...l, thicknessMm: l.thicknessMm / each }))
  )
  // Nodes on a grid of half elements; the middles of elements stay unused.
  const [nx, nz] = [2 * along + 1, 2 * rows.length + 1]
  const number = new Map<number, number>()
  for (let i = 0; i < nx; i++)
    for (let k = 0; k < nz; k++) if (i % 2 === 0 || k % 2 === 0) number.set(i * nz + k, number.size)
  const n = 2 * number.size
  // Numbered across the thickness first: what belongs together lies within a narrow band.
  const band = 2 * (2 * nz + nz + 4)
  const stiff = Array.from({ length: n }, () => new Float64Array(band + 1))
  const load = new Float64Array(n)
  const dx = lengthMm / along
  for (let i = 0; i < along; i++) {
    rows.forEach((layer, k) => {
      const { thicknessMm: dz, modulusMPa: e, poisson: v, strain } = layer
      const ids = NODES.map(([r, s]) => number.get((2 * i + 1 + r) * nz + (2 * k + 1 + s))!)
      const c = e / (1 - v * v)
      for (const [r, wr] of GAUSS)
        for (const [s, ws] of GAUSS) {
          const area = (wr * ws * dx * dz) / 4
          const b = slopes(r, s).map(([p, q]) => [(2 * p) / dx, (2 * q) / dz] as const)
          ids.forEach((p, a) => {
            const [ax, az] = b[a]!
            load[2 * p]! += area * c * (1 + v) * strain * ax
            load[2 * p + 1]! += area * c * (1 + v) * strain * az
            ids.forEach((q, d) => {
              const [bx, bz] = b[d]!
              const g = (c * (1 - v)) / 2
              const put = (row: number, column: number, x: number) => {
                if (column >= row) stiff[row]![column - row]! += area * x
              }
              put(2 * p, 2 * q, c * ax * bx + g * az * bz)
              put(2 * p, 2 * q + 1, c * v * ax * bz + g * az * bx)
              put(2 * p + 1, 2 * q, c * v * az * bx + g * ax * bz)
              put(2 * p + 1, 2 * q + 1, c * az * bz + g * ax * bx)
            })
          })
        }
    })
  }
  // Held so that it neither moves nor turns, and nothing more: one end's lower corner, and the other's height.
  for (const fixed of [2 * number.get(0)!, 2 * number.get(0)! + 1, 2 * number.get((nx - 1) * nz)! + 1])
    stiff[fixed]![0]! += 1e9
  const u = banded(stiff, load, band)
  const height = (i: number) => u[2 * number.get(i * nz)! + 1]!
  const [m, step] = [along, Math.round(along / 4) * 2]
  return -(height(m - step) - 2 * height(m) + height(m + step)) / ((step * dx) / 2) ** 2
}

// Symmetric banded elimination.
function banded(rows: readonly Float64Array[], right: Float64Array, band: number): Float64Array {
  const n = right.length
  const x = Float64Array.from(right)
  for (let j = 0; j < n; j++) {
    const pivot = rows[j]![0]!
    for (let i = 1; i <= band && j + i < n; i++) {
      const f = rows[j]![i]! / pivot
      if (f === 0) continue
      for (let k = i; k <= band; k++) rows[j + i]![k - i]! -= f * rows[j]![k]!
      x[j + i]! -= f * x[j]!
    }
  }
  for (let j = n - 1; j >= 0; j--) {
    let sum = x[j]!
    for (let i = 1; i <= band && j + i < n; i++) sum -= rows[j]![i]! * x[j + i]!
    x[j] = sum / rows[j]![0]!
  }
  return x
}
