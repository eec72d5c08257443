import type { EnergyBalance, ResinResult } from '../../resin/column-result.ts'
import type { FieldCells } from './field-cells.ts'
import type { FieldKernel } from './field-kernel.ts'
import type { Probes } from './field-probe.ts'
import type { FieldProblem } from './field-problem.ts'
import { historyOf, type PourRecord } from './field-record.ts'

/** What came of one pour: as of a layer of a column, with the place of its hottest cell. */
export interface FieldPour extends ResinResult {
  readonly pour: number
  /** Cell of the highest temperature, ix, iy, iz. */
  readonly peakCell: readonly [number, number, number]
  /** When 95 % of its volume had gelled, s; null if not within the run. Mean over its volume likewise. */
  readonly mostGelS: number | null
  readonly meanGelS: number | null
}

/** What came of a whole mould. */
export interface FieldResult {
  /** In the order of the problem's pours. */
  readonly pours: readonly FieldPour[]
  readonly energy: EnergyBalance
  /** Of the problem's probes. */
  readonly probes: Probes
  readonly timeS: number
  /** Whether the run came to its end, or was looked at before. */
  readonly ended: boolean
  readonly steps: number
  readonly refused: number
  /** Highest temperature so far of the cells of a layer, °C, nx·ny numbers, x running fastest; NaN where nothing is. */
  readonly peakMap: (layer: number) => Float32Array
  /** Temperature and conversion now of a cell; NaN where nothing is. */
  readonly at: (
    ix: number,
    iy: number,
    iz: number
  ) => { readonly tempC: number; readonly conversion: number; readonly peakC: number; readonly gelS: number }
}

/** Gathers the result from what the run left behind. */
export function fieldResult(run: {
  readonly problem: FieldProblem
  readonly cells: FieldCells
  readonly kernel: FieldKernel
  readonly records: readonly PourRecord[]
  readonly probes: Probes
  readonly lostJ: number
  readonly sourceJ: number
  readonly timeS: number
  readonly ended: boolean
  readonly steps: number
  readonly refused: number
}): FieldResult {
  const { problem, cells, kernel } = run
  const { nx, nz, first } = cells.shape
  const index = (ix: number, iy: number, iz: number): number => first + (iy * nx + ix) * nz + iz
  return {
    pours: run.records.filter(r => r.rows.length > 0).map(r => pourOf(r, cells, kernel)),
    energy: energyOf(run),
    probes: run.probes,
    timeS: run.timeS,
    ended: run.ended,
    steps: run.steps,
    refused: run.refused,
    peakMap: layer => {
      const out = new Float32Array(problem.nx * problem.ny)
      for (let iy = 0; iy < problem.ny; iy++)
        for (let ix = 0; ix < problem.nx; ix++) {
          const c = index(ix, iy, layer)
          out[iy * problem.nx + ix] = kernel.kBase[c]! > 0 ? kernel.peakC[c]! : Number.NaN
        }
      return out
    },
    at: (ix, iy, iz) => {
      const c = index(ix, iy, iz)
      if (!(kernel.kBase[c]! > 0))
        return { tempC: Number.NaN, conversion: Number.NaN, peakC: Number.NaN, gelS: Number.NaN }
      const conversion = kernel.conversion()[c]!
      return { tempC: kernel.tempC[c]!, conversion, peakC: kernel.peakC[c]!, gelS: kernel.gelS[c]! }
    }
  }
}

function pourOf(r: PourRecord, cells: FieldCells, kernel: FieldKernel): FieldPour {
  const { nx, ny, nz, first } = cells.shape
  const conversion = kernel.conversion()
  const gel = r.resin.kinetics.gelConversion
  const times: number[] = []
  const volumes: number[] = []
  let hottest = first
  let peakC = -1000
  for (let column = 0; column < nx * ny; column++) {
    for (let iz = r.fromLayer; iz < r.toLayer; iz++) {
      const c = first + column * nz + iz
      if (!r.resins.includes(kernel.resin[c]!)) continue
      // A refused step may have left a mark; the conversion says whether it stands.
      times.push(conversion[c]! >= gel ? kernel.gelS[c]! - r.atS : Number.POSITIVE_INFINITY)
      volumes.push(cells.volumeM3[iz]!)
      if (kernel.peakC[c]! > peakC) {
        peakC = kernel.peakC[c]!
        hottest = c
      }
    }
  }
  const iz = (hottest - first) % nz
  const column = (hottest - first - iz) / nz
  let above = 0
  for (let k = r.fromLayer; k < iz; k++) above += cells.dzM[k]!
  const heights: number[] = []
  const temps: number[] = []
  const cured: number[] = []
  let z = 0
  for (let k = r.fromLayer; k < r.toLayer; k++) {
    const c = first + column * nz + k
    if (r.resins.includes(kernel.resin[c]!)) {
      heights.push((z + cells.dzM[k]! / 2) * 1000)
      temps.push(kernel.tempC[c]!)
      cured.push(Math.min(1, Math.max(0, conversion[c]!)))
    }
    z += cells.dzM[k]!
  }
  return {
    kind: 'resin',
    pour: r.pour,
    peakC,
    peakAtS: r.peakAtS,
    peakAtMm: (above + cells.dzM[iz]! / 2) * 1000,
    peakCell: [column % nx, Math.floor(column / nx), iz],
    ...gelTimes(times, volumes),
    history: historyOf(r),
    final: { temp: { positionMm: heights, value: temps }, conversion: { positionMm: heights, value: cured } }
  }
}

function gelTimes(
  times: readonly number[],
  volumes: readonly number[]
): Pick<FieldPour, 'firstGelS' | 'halfGelS' | 'mostGelS' | 'allGelS' | 'meanGelS'> {
  const order = Float64Array.from(times.keys()).sort((a, b) => times[a]! - times[b]!)
  const whole = volumes.reduce((sum, v) => sum + v, 0)
  const known = (s: number | undefined): number | null => (s !== undefined && Number.isFinite(s) ? s : null)
  const share = (part: number): number | null => {
    let sum = 0
    for (const k of order) {
      sum += volumes[k]!
      if (sum >= part * whole * (1 - 1e-12)) return known(times[k])
    }
    return null
  }
  let mean = 0
  for (let k = 0; k < times.length; k++) mean += (volumes[k]! / whole) * times[k]!
  return {
    firstGelS: known(times[order[0]!]),
    halfGelS: share(0.5),
    mostGelS: share(0.95),
    allGelS: known(times[order[order.length - 1]!]),
    meanGelS: known(mean)
  }
}

function energyOf(run: Parameters<typeof fieldResult>[0]): EnergyBalance {
  const { problem, cells, kernel } = run
  const { nx, ny, nz, first } = cells.shape
  const conversion = kernel.conversion()
  let releasedJ = run.sourceJ
  let storedJ = 0
  for (let c = first; c < first + nx * ny * nz; c++) {
    if (!(kernel.kBase[c]! > 0)) continue
    const m = problem.materials[cells.material[c]! - 1]!
    storedJ += kernel.capacity[c]! * (kernel.tempC[c]! - m.startC)
    if (m.kind === 'resin') releasedJ += kernel.heat[c]! * (conversion[c]! - (m.startConversion ?? 0))
  }
  const { lostJ } = run
  const largest = Math.max(Math.abs(releasedJ), Math.abs(lostJ), Math.abs(storedJ))
  return { releasedJ, lostJ, storedJ, closure: largest > 0 ? (releasedJ - lostJ - storedJ) / largest : 0 }
}
