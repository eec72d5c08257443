/** Cells of a picture along its longer side, at most. */
const MOST = 300

/** A picture of a block for the eye: the greatest, or the least, value of the cells under each of its pixels. */
export class SmallMap {
  readonly nx: number
  readonly ny: number
  /** Cells of the block under one pixel, along each side. */
  readonly every: number
  /** Row by row from the least y; 0 where nothing was added. */
  readonly values: Float32Array

  constructor(nx: number, ny: number, most = MOST) {
    this.every = Math.max(1, Math.ceil(Math.max(nx, ny) / most))
    this.nx = Math.ceil(nx / this.every)
    this.ny = Math.ceil(ny / this.every)
    this.values = new Float32Array(this.nx * this.ny)
  }

  add(i: number, j: number, value: number): void {
    const p = Math.floor(j / this.every) * this.nx + Math.floor(i / this.every)
    if (value > this.values[p]!) this.values[p] = value
  }

  /** The same for a map of least values, all greater than 0. */
  addLeast(i: number, j: number, value: number): void {
    const p = Math.floor(j / this.every) * this.nx + Math.floor(i / this.every)
    const known = this.values[p]!
    if (known === 0 || value < known) this.values[p] = value
  }
}
