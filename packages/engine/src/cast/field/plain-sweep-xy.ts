import type { FieldShape, FieldStep } from './field-kernel.ts'

/** The implicit sweep along x of the increments in `tried`, all layers of a line at once. Allocates nothing. */
export function sweepAlongX(
  shape: FieldShape,
  gx: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  upper: Float64Array,
  step: FieldStep
): void {
  const { nx, ny, nz, first, fromX, toX } = shape
  for (let iy = 0; iy < ny; iy++)
    sweepLine(first + iy * nx * nz, nz, fromX[iy]!, toX[iy]!, gx, capacity, tried, upper, step)
}

/** The same along y; afterwards the greatest |D − ratio·D_old| of all cells, K. */
export function sweepAlongY(
  shape: FieldShape,
  gy: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  upper: Float64Array,
  increment: Float64Array,
  step: FieldStep
): number {
  const { nx, nz, first, fromY, toY } = shape
  const plane = nx * nz
  const layers = Math.min(step.layers, nz)
  const { ratio } = step
  let most = 0
  for (let ix = 0; ix < nx; ix++) {
    const from = fromY[ix]!
    const to = toY[ix]!
    sweepLine(first + ix * nz, plane, from, to, gy, capacity, tried, upper, step)
    for (let iy = from; iy < to; iy++) {
      const c0 = first + ix * nz + iy * plane
      for (let c = c0; c < c0 + layers; c++) {
        const off = Math.abs(tried[c]! - ratio * increment[c]!)
        if (off > most) most = off
      }
    }
  }
  return most
}

/** One line of columns: column n lies `stride` after column n − 1, `start` is column 0. */
function sweepLine(
  start: number,
  stride: number,
  from: number,
  to: number,
  conductance: Float64Array,
  capacity: Float64Array,
  tried: Float64Array,
  upper: Float64Array,
  step: FieldStep
): void {
  if (to <= from) return
  const { layers } = step
  const g = step.theta * step.dtS
  let at = start + from * stride
  for (let iz = 0; iz < layers; iz++) {
    const c = at + iz
    const right = g * conductance[c]!
    const cap = capacity[c]!
    const inverse = 1 / (cap + right)
    upper[iz] = right * inverse
    tried[c] = cap * tried[c]! * inverse
  }
  for (let n = from + 1; n < to; n++) {
    at = start + n * stride
    const now = (n - from) * layers
    const before = now - layers
    for (let iz = 0; iz < layers; iz++) {
      const c = at + iz
      const left = g * conductance[c - stride]!
      const right = g * conductance[c]!
      const cap = capacity[c]!
      const inverse = 1 / (cap + left + right - left * upper[before + iz]!)
      upper[now + iz] = right * inverse
      tried[c] = (cap * tried[c]! + left * tried[c - stride]!) * inverse
    }
  }
  for (let n = to - 2; n >= from; n--) {
    at = start + n * stride
    const now = (n - from) * layers
    for (let iz = 0; iz < layers; iz++) {
      const c = at + iz
      tried[c] = tried[c]! + upper[now + iz]! * tried[c + stride]!
    }
  }
}
