import type { EnergyBalance } from '../../resin/column-result.ts'
import type { PourCast } from '../cast.ts'
import type { FieldResult } from '../field/field-result.ts'
import type { Raster } from './raster.ts'

/** What the cast of a whole mould gives. Plain data: it can be sent from a worker. */
export interface WholeCast {
  /** By pour of the document; null where the column's stands (floods, inlays) or nothing is predicted. */
  readonly casts: readonly (PourCast | null)[]
  readonly effort: 'preview' | 'full'
  /** How near each pour is to its limits; null until searched, or for what is not predicted. */
  readonly edges: readonly (Edge | null)[]
  readonly map: PeakMap
  /** Where each pour is hottest: on the plan and as cast, mm. */
  readonly hottest: readonly (readonly [x: number, y: number, z: number] | null)[]
  readonly energy: EnergyBalance
  /** Temperatures at the places asked for, along the run. */
  readonly probes: readonly Probe[]
  readonly steps: number
  /** How often the pours were set to the windows of a cast, and whether they then held. */
  readonly rounds: number
  readonly settled: boolean
}

/** A thermometer at one place: mm on the plan and as cast, min after the first pour, °C; null while nothing is there. */
export interface Probe {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly min: readonly number[]
  readonly tempC: readonly (number | null)[]
}

/** Highest temperature of every cell: the map of a level is a slice of it. */
export interface PeakMap {
  readonly nx: number
  readonly ny: number
  readonly dxMm: number
  readonly dyMm: number
  /** Corner of the first cell, mm on the plan. */
  readonly x0: number
  readonly y0: number
  /** Faces between the layers of cells, heights as cast, mm; one more than there are layers. */
  readonly facesMm: readonly number[]
  /** °C, NaN where nothing is; x runs fastest, then y, then z. */
  readonly peakC: Float32Array
}

/** How near a pour is to the limit for clear work: what a millimetre and a degree may do. */
export interface Edge {
  readonly limitC: number
  /** Whether the top of the band is past the limit as planned: what is null below then means that nothing searched clears it. */
  readonly over: boolean
  /** Greatest depth when poured at which the top of the band stays within the limit, mm; 0: none down to half a millimetre does; null: no edge up to three times its depth. */
  readonly depthMm: number | null
  /** Of the room, K warmer (negative: cooler) at which the top of the band meets the limit; null: not within 15 K. */
  readonly roomK: number | null
  /** Rise of the likeliest peak for one more millimetre of depth, and for one more degree of room, K. */
  readonly perMm: number
  readonly perK: number
  /** What mixing 10 K warmer does: to the peak, K, and to the working time, min; null where it does not thicken. */
  readonly warmer: { readonly peakK: number; readonly workingMin: number | null }
}

/** The map of a run. */
export function peakMapOf(raster: Raster, result: FieldResult): PeakMap {
  const { nx, ny, dxMm, dyMm, x0, y0, levels } = raster
  const nz = levels.dzM.length
  const peakC = new Float32Array(nx * ny * nz)
  for (let iz = 0; iz < nz; iz++) peakC.set(result.peakMap(iz), iz * nx * ny)
  return { nx, ny, dxMm, dyMm, x0, y0, facesMm: levels.facesMm, peakC }
}

/** Temperature of the map at a place, °C; NaN where nothing is, or off the plan. */
export function peakAt(map: PeakMap, x: number, y: number, z: number): number {
  const cell = cellAt(map, x, y, z)
  if (cell === null) return Number.NaN
  const [ix, iy, iz] = cell
  return map.peakC[(iz * map.ny + iy) * map.nx + ix]!
}

/** The cell that holds a place, or null off the grid. */
export function cellAt(
  grid: Pick<PeakMap, 'nx' | 'ny' | 'dxMm' | 'dyMm' | 'x0' | 'y0' | 'facesMm'>,
  x: number,
  y: number,
  z: number
): readonly [ix: number, iy: number, iz: number] | null {
  const ix = Math.floor((x - grid.x0) / grid.dxMm)
  const iy = Math.floor((y - grid.y0) / grid.dyMm)
  const iz = grid.facesMm.findIndex((face, k) => k > 0 && z < face) - 1
  return ix < 0 || iy < 0 || ix >= grid.nx || iy >= grid.ny || z < 0 || iz < 0 ? null : [ix, iy, iz]
}
