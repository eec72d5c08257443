import type { LayerHistory } from '../../resin/column-history.ts'
import { historyFrom } from '../../resin/column-history.ts'
import type { ResinModel } from '../../resin/model.ts'
import type { FieldCells } from './field-cells.ts'
import type { FieldKernel } from './field-kernel.ts'
import type { FieldProblem } from './field-problem.ts'

/** Where one pour lies and what is written down of it. */
export interface PourRecord {
  /** Number of the pour, its resins (numbers of the kernel) and when it is poured. */
  readonly pour: number
  readonly resins: readonly number[]
  readonly resin: ResinModel
  readonly atS: number
  readonly fromLayer: number
  readonly toLayer: number
  /** Cells that are read for the means, their share of the volume, and the top and the foot of their columns. */
  readonly cells: Int32Array
  readonly share: Float64Array
  readonly tops: Int32Array
  readonly feet: Int32Array
  readonly rows: number[][]
  peakC: number
  peakAtS: number
}

/** Cells read of one pour at a sample; columns are left out evenly to stay below. */
const MOST_READ = 3000
/** Samples kept of a pour; when full, every other one is dropped. */
const MOST_SAMPLES = 400

/** The records of all pours of a problem. */
export function recordsOf(problem: FieldProblem, c: FieldCells): PourRecord[] {
  const { nx, ny, nz, first } = c.shape
  const pours = new Map<number, number[]>()
  problem.materials.forEach((m, i) => {
    if (m.kind === 'resin') pours.set(m.pour ?? i, [...(pours.get(m.pour ?? i) ?? []), i])
  })
  return [...pours].map(([pour, materials]): PourRecord => {
    const columns: number[][] = []
    let all = 0
    let fromLayer = nz
    let toLayer = 0
    for (let column = 0; column < nx * ny; column++) {
      const own: number[] = []
      for (let iz = 0; iz < nz; iz++) {
        const at = first + column * nz + iz
        if (!materials.includes(c.material[at]! - 1)) continue
        own.push(at)
        fromLayer = Math.min(fromLayer, iz)
        toLayer = Math.max(toLayer, iz + 1)
      }
      all += own.length
      if (own.length > 0) columns.push(own)
    }
    const stride = Math.max(1, Math.ceil(all / MOST_READ))
    // Every so many columns, from the middle of the first run on: a fixed pattern, no chance.
    const read = columns.filter((_, k) => k % stride === stride >> 1 || columns.length <= stride)
    const cells = Int32Array.from(read.flat())
    const volumes = Float64Array.from(cells, at => c.volumeM3[(at - first) % nz]!)
    const sum = volumes.reduce((total, v) => total + v, 0)
    const head = problem.materials[materials[0]!]!
    if (head.kind !== 'resin') throw new Error('a pour without resin')
    const numbers = resinNumbers(problem)
    return {
      pour,
      resins: materials.map(i => numbers[i]!),
      resin: head.resin,
      atS: head.atS,
      fromLayer,
      toLayer,
      cells,
      share: volumes.map(v => v / sum),
      tops: Int32Array.from(read, column => column[column.length - 1]!),
      feet: Int32Array.from(read, column => column[0]!),
      rows: [],
      peakC: head.startC,
      peakAtS: 0
    }
  })
}

/** Number of each material among the resins, from 1; 0 for the others. */
export function resinNumbers(problem: FieldProblem): number[] {
  let next = 0
  return problem.materials.map(m => (m.kind === 'resin' ? ++next : 0))
}

/** Writes a sample of a pour that has been poured. */
export function writeSample(r: PourRecord, kernel: FieldKernel, timeS: number): void {
  const { tempC } = kernel
  const conversion = kernel.conversion()
  let most = -1000
  for (const number of r.resins) most = Math.max(most, kernel.hottest(number, r.fromLayer, r.toLayer))
  if (most > r.peakC) {
    r.peakC = most
    r.peakAtS = timeS - r.atS
  }
  let mean = 0
  let cured = 0
  let least = 2
  for (let i = 0; i < r.cells.length; i++) {
    const at = r.cells[i]!
    const a = conversion[at]!
    mean += r.share[i]! * tempC[at]!
    cured += r.share[i]! * a
    if (a < least) least = a
  }
  r.rows.push([
    timeS - r.atS,
    mean,
    most,
    meanOf(tempC, r.feet),
    meanOf(tempC, r.tops),
    cured,
    least,
    meanOf(conversion, r.tops)
  ])
  if (r.rows.length >= 2 * MOST_SAMPLES) {
    const kept = r.rows.filter((_, k) => k % 2 === 0)
    r.rows.length = 0
    r.rows.push(...kept)
  }
}

/** Whether a pour has gelled in the mean and its hottest place is past its peak by so many K. */
export function pastPeak(r: PourRecord, byK: number): boolean {
  const last = r.rows[r.rows.length - 1]
  return last !== undefined && last[5]! >= r.resin.kinetics.gelConversion && last[2]! < r.peakC - byK
}

function meanOf(values: ArrayLike<number>, at: Int32Array): number {
  let sum = 0
  for (let i = 0; i < at.length; i++) sum += values[at[i]!]!
  return sum / at.length
}

/** The samples as the column gives them, so that windows read both alike. */
export function historyOf(r: PourRecord): LayerHistory {
  return historyFrom(r.resin, r.rows.length, (k, field) => r.rows[k]![field]!)
}
