import type { FieldShape, FieldStep } from './field-kernel.ts'
import { type CureArrays, cureCells } from './plain-cure.ts'
import type { FlatRates } from './plain-rates.ts'

/** The arrays a step along z reads and writes; see field-kernel.ts. */
export interface ZArrays extends CureArrays {
  readonly capacity: Float64Array
  readonly film: Float64Array
  /** Number of the resin of each cell, and layers in use of each column (columns of four alike). */
  readonly number: Uint8Array
  readonly tops: Int32Array
  readonly gx: Float64Array
  readonly gy: Float64Array
  readonly gz: Float64Array
  readonly source: Float64Array
}

/**
 * The explicit part of a step, the cure of every cell, and the implicit sweep along z, column by column: each part
 * is a loop of its own, short enough that what one leaves the next finds in the cache. Returns the greatest change
 * of conversion. Allocates nothing.
 */
export function sweepZ(
  shape: FieldShape,
  a: ZArrays,
  rates: FlatRates,
  upper: Float64Array,
  step: FieldStep
): number {
  const { capacity, film, gz, tried, number, tops, source } = a
  const { nx, ny, nz, first, fromX, toX } = shape
  const g = step.theta * step.dtS
  let most = 0
  for (let iy = 0; iy < ny; iy++)
    for (let ix = fromX[iy]!; ix < toX[iy]!; ix++) {
      const layers = tops[iy * nx + ix]!
      const c0 = first + (iy * nx + ix) * nz
      const end = c0 + layers
      gather(a, c0, end, nz, nx * nz, step)
      if (step.sourced) for (let c = c0; c < end; c++) tried[c] = tried[c]! + step.dtS * source[c]!
      for (let c = c0; c < end; ) {
        const r = number[c]!
        const from = c++
        while (c < end && number[c] === r) c++
        if (r === 0) continue
        const change = cureCells(a, rates, r, from, c, step)
        if (change > most) most = change
      }
      // four columns are ready: solve them while they lie in the cache
      if ((ix & 3) === 3) solveFour(c0 - 3 * nz, nz, layers, g, gz, capacity, film, tried, upper)
    }
  return most
}

/** What flows into the cells of a column in the step at the temperatures of its start, J, into `tried`. */
function gather(
  { tempC, tried, film, gx, gy, gz }: ZArrays,
  c0: number,
  end: number,
  nz: number,
  plane: number,
  step: FieldStep
): void {
  const { dtS, ambientC } = step
  let t = tempC[c0]!
  let below = gz[c0 - 1]! * (t - tempC[c0 - 1]!)
  for (let c = c0; c < end; c++) {
    const over = tempC[c + 1]!
    const above = gz[c]! * (over - t)
    tried[c] =
      dtS *
      (above -
        below +
        gx[c - nz]! * (tempC[c - nz]! - t) +
        gx[c]! * (tempC[c + nz]! - t) +
        gy[c - plane]! * (tempC[c - plane]! - t) +
        gy[c]! * (tempC[c + plane]! - t) +
        film[c]! * (ambientC - t))
    below = above
    t = over
  }
}

/**
 * Solves four columns that stand side by side, in step: a column alone waits at every division for the one before.
 * The right side in `tried` becomes the increment. `upper` is room for four columns.
 */
function solveFour(
  c0: number,
  nz: number,
  layers: number,
  g: number,
  gz: Float64Array,
  capacity: Float64Array,
  film: Float64Array,
  tried: Float64Array,
  upper: Float64Array
): void {
  const c1 = c0 + nz
  const c2 = c1 + nz
  const c3 = c2 + nz
  let low0 = 0
  let low1 = 0
  let low2 = 0
  let low3 = 0
  let a0 = 0
  let a1 = 0
  let a2 = 0
  let a3 = 0
  let v0 = 0
  let v1 = 0
  let v2 = 0
  let v3 = 0
  for (let iz = 0; iz < layers; iz++) {
    const up0 = g * gz[c0 + iz]!
    const up1 = g * gz[c1 + iz]!
    const up2 = g * gz[c2 + iz]!
    const up3 = g * gz[c3 + iz]!
    const i0 = 1 / (capacity[c0 + iz]! + up0 + g * film[c0 + iz]! + low0 * (1 - a0))
    const i1 = 1 / (capacity[c1 + iz]! + up1 + g * film[c1 + iz]! + low1 * (1 - a1))
    const i2 = 1 / (capacity[c2 + iz]! + up2 + g * film[c2 + iz]! + low2 * (1 - a2))
    const i3 = 1 / (capacity[c3 + iz]! + up3 + g * film[c3 + iz]! + low3 * (1 - a3))
    a0 = up0 * i0
    a1 = up1 * i1
    a2 = up2 * i2
    a3 = up3 * i3
    v0 = (tried[c0 + iz]! + low0 * v0) * i0
    v1 = (tried[c1 + iz]! + low1 * v1) * i1
    v2 = (tried[c2 + iz]! + low2 * v2) * i2
    v3 = (tried[c3 + iz]! + low3 * v3) * i3
    low0 = up0
    low1 = up1
    low2 = up2
    low3 = up3
    const at = 4 * iz
    upper[at] = a0
    upper[at + 1] = a1
    upper[at + 2] = a2
    upper[at + 3] = a3
    tried[c0 + iz] = v0
    tried[c1 + iz] = v1
    tried[c2 + iz] = v2
    tried[c3 + iz] = v3
  }
  for (let iz = layers - 2; iz >= 0; iz--) {
    const at = 4 * iz
    v0 = tried[c0 + iz]! + upper[at]! * v0
    v1 = tried[c1 + iz]! + upper[at + 1]! * v1
    v2 = tried[c2 + iz]! + upper[at + 2]! * v2
    v3 = tried[c3 + iz]! + upper[at + 3]! * v3
    tried[c0 + iz] = v0
    tried[c1 + iz] = v1
    tried[c2 + iz] = v2
    tried[c3 + iz] = v3
  }
}
