import type { FieldShape, FieldStep } from './field-kernel.ts'

/**
 * The implicit sweep along x of the increments in `tried`, all layers of a line at once. `tops`: layers in use of
 * each column. Allocates nothing.
 */
export function sweepAlongX(
  shape: FieldShape,
  gx: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  tops: Int32Array,
  upper: Float64Array,
  step: FieldStep
): void {
  const { nx, ny, nz, first, fromX, toX } = shape
  const g = step.theta * step.dtS
  for (let iy = 0; iy < ny; iy++) {
    const from = fromX[iy]!
    const to = toX[iy]!
    const start = first + iy * nx * nz
    eliminate(start, nz, iy * nx, 1, nz, 0, from, to, g, gx, capacity, tried, tops, upper)
    for (let n = to - 2; n >= from; n--) {
      const c0 = start + n * nz
      const up = (n - from) * nz - c0
      const end = c0 + Math.min(tops[iy * nx + n]!, tops[iy * nx + n + 1]!)
      for (let c = c0; c < end; c++) tried[c] = tried[c]! + upper[up + c]! * tried[c + nz]!
    }
  }
}

/** The same along y; returns the greatest |D − ratio·D_old| of all cells, K. */
export function sweepAlongY(
  shape: FieldShape,
  gy: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  tops: Int32Array,
  upper: Float64Array,
  increment: Float64Array,
  step: FieldStep
): number {
  const { nx, nz, first, fromY, toY } = shape
  const plane = nx * nz
  const g = step.theta * step.dtS
  const { ratio } = step
  const four = 4 * nz
  let most = 0
  // four columns that stand side by side at once: lines along y lie far apart in memory
  for (let ix = 0; ix < nx; ix += 4) {
    const from = Math.min(fromY[ix]!, fromY[ix + 1]!, fromY[ix + 2]!, fromY[ix + 3]!)
    const to = Math.max(toY[ix]!, toY[ix + 1]!, toY[ix + 2]!, toY[ix + 3]!)
    if (to <= from) continue
    const start = first + ix * nz
    eliminate(start, plane, ix, nx, four, four - nz, from, to, g, gy, capacity, tried, tops, upper)
    let after = 0
    for (let n = to - 1; n >= from; n--) {
      const c0 = start + n * plane
      const top = tops[n * nx + ix]! + four - nz
      const up = (n - from) * four - c0
      // where nothing lies behind there is nothing to take over
      const shared = c0 + Math.min(top, after)
      for (let c = c0; c < shared; c++) {
        const d = tried[c]! + upper[up + c]! * tried[c + plane]!
        tried[c] = d
        const off = Math.abs(d - ratio * increment[c]!)
        if (off > most) most = off
      }
      for (let c = shared; c < c0 + top; c++) {
        const off = Math.abs(tried[c]! - ratio * increment[c]!)
        if (off > most) most = off
      }
      after = top
    }
  }
  return most
}

/**
 * Forward half of the sweep of one line of columns: column n lies `stride` behind column n − 1, its number among the
 * columns of the plan is `column + n·apart`. A column is `size` numbers long, of which `lead` and its layers in use
 * are swept. Leaves the upper diagonal in `upper`, `size` numbers a column.
 */
function eliminate(
  start: number,
  stride: number,
  column: number,
  apart: number,
  size: number,
  lead: number,
  from: number,
  to: number,
  g: number,
  conductance: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  tops: Int32Array,
  upper: Float64Array
): void {
  if (to <= from) return
  const c0 = start + from * stride
  let before = tops[column + from * apart]! + lead
  for (let iz = 0; iz < before; iz++) {
    const c = c0 + iz
    const right = g * conductance[c]!
    const cap = capacity[c]!
    const inverse = 1 / (cap + right)
    upper[iz] = right * inverse
    tried[c] = cap * tried[c]! * inverse
  }
  for (let n = from + 1; n < to; n++) {
    const at = start + n * stride
    const now = (n - from) * size - at
    const top = tops[column + n * apart]! + lead
    const shared = at + Math.min(top, before)
    for (let c = at; c < shared; c++) {
      const left = g * conductance[c - stride]!
      const right = g * conductance[c]!
      const cap = capacity[c]!
      const inverse = 1 / (cap + right + left * (1 - upper[now + c - size]!))
      upper[now + c] = right * inverse
      tried[c] = (cap * tried[c]! + left * tried[c - stride]!) * inverse
    }
    // the column before ends lower: nothing comes from there
    for (let c = shared; c < at + top; c++) {
      const right = g * conductance[c]!
      const cap = capacity[c]!
      const inverse = 1 / (cap + right)
      upper[now + c] = right * inverse
      tried[c] = cap * tried[c]! * inverse
    }
    before = top
  }
}
