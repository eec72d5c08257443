import type { FieldCells } from './field-cells.ts'
import type { FieldKernel } from './field-kernel.ts'
import type { FieldProblem } from './field-problem.ts'

/** Temperatures of chosen cells along a run, °C; NaN while a cell holds nothing. */
export interface Probes {
  readonly timeS: Float64Array
  /** One array a probe, in the order of the problem. */
  readonly tempC: readonly Float64Array[]
}

/** Samples kept; when full, every other one is dropped. */
const MOST_SAMPLES = 800

/** Writes the chosen cells down after each step. */
export class ProbeRecord {
  private readonly at: readonly number[]
  private rows: number[][] = []
  private stride = 1
  private count = 0

  constructor(problem: FieldProblem, cells: FieldCells) {
    const { nx, nz, first } = cells.shape
    const layers = problem.dzM.length
    this.at = (problem.probes ?? []).map(c => {
      const column = Math.floor(c / layers)
      const iy = Math.floor(column / problem.nx)
      return first + (iy * nx + (column % problem.nx)) * nz + (c % layers)
    })
  }

  write(kernel: FieldKernel, timeS: number): void {
    if (this.at.length === 0 || this.count++ % this.stride !== 0) return
    this.rows.push([timeS, ...this.at.map(c => (kernel.kBase[c]! > 0 ? kernel.tempC[c]! : Number.NaN))])
    if (this.rows.length < MOST_SAMPLES) return
    this.rows = this.rows.filter((_, k) => k % 2 === 0)
    this.stride *= 2
  }

  result(): Probes {
    return {
      timeS: Float64Array.from(this.rows, row => row[0]!),
      tempC: this.at.map((_, k) => Float64Array.from(this.rows, row => row[k + 1]!))
    }
  }
}
