import { inRange } from '../quantity/range.ts'
import { ZERO_CELSIUS_K } from './constant.ts'
import { type CureTable, cureTable } from './cure-table.ts'
import type { ResinModel } from './model.ts'
import { conversionAtViscosity, HONEY_PAS, viscosityPaS } from './thickening.ts'

/** Cell-centred values along a layer: position from the layer's inner face, mm, rising. */
export interface Profile {
  readonly positionMm: ArrayLike<number>
  readonly value: ArrayLike<number>
}

/** Resin in a column, fresh or still curing from an earlier pour. */
export interface ResinLayer {
  readonly kind: 'resin'
  readonly thicknessMm: number
  /** Cells across the layer; 40 if not given, 16 is enough for a band. */
  readonly cells?: number
  readonly resin: ResinModel
  readonly startC: number | Profile
  /** 0 if not given. */
  readonly startConversion?: number | Profile
  /** Scales the cure rate: 1.2 is a resin a fifth faster than recorded. 1 if not given. */
  readonly rateFactor?: number
  /**
   * Multiplies the conductivity while the resin is liquid (below 10 Pa·s and below α = 0.3), for the
   * mixing that a warm liquid does by itself. 1 (none, the hottest) if not given; 3 is the other end.
   */
  readonly kLiquidMultiplier?: number
  /** Another rate law in place of the resin's own, already in tables. */
  readonly table?: CureTable
}

/** Board, timber, stone: holds and leads heat, does not react. */
export interface InertLayer {
  readonly kind: 'inert'
  readonly thicknessMm: number
  /** Cells across the layer; 12 if not given. */
  readonly cells?: number
  /** Conductivity, W/(m·K), and volumetric heat capacity, J/(m³·K). */
  readonly kWmK: number
  readonly rhoCpJm3K: number
  readonly startC: number | Profile
}

export type Layer = ResinLayer | InertLayer

export type Shape = 'slab' | 'cylinder' | 'sphere'

/** Exponent of the radius in the area of a face: area = r^j, per unit of floor, length or solid angle. */
export const SHAPE_EXPONENT: Readonly<Record<Shape, 0 | 1 | 2>> = { slab: 0, cylinder: 1, sphere: 2 }

/** One resin layer as the kernels see it: its cells from ≤ i < to, its tables and its flow limit. */
export interface Reacting {
  readonly from: number
  readonly to: number
  readonly table: CureTable
  readonly factor: number
  readonly multiplier: number
  /** Conversion below which the resin still mixes itself, by whole °C from 0 to 100, held beyond. */
  readonly liquidBelow: Float64Array
}

/**
 * The cells of a column, flat arrays in SI; index i counts from the floor (slab) or the centre.
 * face f lies below cell f; face `cells` is the outer one. Areas and volumes are per m² of floor (slab),
 * per radian and metre (cylinder) or per steradian (sphere).
 */
export interface ColumnGrid {
  readonly cells: number
  /** First cell of each layer, and `cells` at the end. */
  readonly firstCell: readonly number[]
  readonly centreM: Float64Array
  readonly widthM: Float64Array
  readonly volume: Float64Array
  readonly faceArea: Float64Array
  /** ρ·cp·V, J/K, and ρ·H·V, J. */
  readonly capacity: Float64Array
  readonly heat: Float64Array
  /** Conductivity k = k0 + k1·α, W/(m·K). */
  readonly k0: Float64Array
  readonly k1: Float64Array
  /** Whether any conductivity changes during the run. */
  readonly kChanges: boolean
  readonly reacting: readonly Reacting[]
  readonly startK: Float64Array
  readonly startConversion: Float64Array
}

export const LIQUID_FROM_C = 0
const LIQUID_TO_C = 100
/** Beyond this conversion the multiplier is off whatever the viscosity (resin still thins when it warms). */
const LIQUID_CONVERSION = 0.3

/** Lays the layers out from the floor up (slab) or from the centre out. Throws on a value out of range. */
export function columnGrid(shape: Shape, layers: readonly Layer[]): ColumnGrid {
  if (layers.length === 0) throw new Error('a column has 0 layers; at least 1')
  layers.forEach(checkLayer)
  const count = layers.map(layer => layer.cells ?? (layer.kind === 'resin' ? 40 : 12))
  const firstCell = [0]
  for (const n of count) firstCell.push(firstCell.at(-1)! + n)
  const cells = firstCell.at(-1)!
  const array = (): Float64Array => new Float64Array(cells)
  const grid = {
    cells,
    firstCell,
    centreM: array(),
    widthM: array(),
    volume: array(),
    faceArea: new Float64Array(cells + 1),
    capacity: array(),
    heat: array(),
    k0: array(),
    k1: array(),
    startK: array(),
    startConversion: array()
  }
  const j = SHAPE_EXPONENT[shape]
  const reacting: Reacting[] = []
  let kChanges = false
  let r = 0
  grid.faceArea[0] = j === 0 ? 1 : 0
  layers.forEach((layer, l) => {
    const inner = r
    const from = firstCell[l]!
    const to = firstCell[l + 1]!
    const width = layer.thicknessMm / 1000 / count[l]!
    for (let i = from; i < to; i++) {
      const outer = inner + (i - from + 1) * width
      grid.widthM[i] = width
      grid.centreM[i] = outer - width / 2
      grid.volume[i] = (outer ** (j + 1) - r ** (j + 1)) / (j + 1)
      grid.faceArea[i + 1] = outer ** j
      r = outer
      const above = (outer - width / 2 - inner) * 1000
      grid.startK[i] = ZERO_CELSIUS_K + at(layer.startC, above)
      if (layer.kind === 'resin') {
        const { bulk, kinetics } = layer.resin
        grid.capacity[i] = bulk.liquidKgM3 * bulk.cpJkgK * grid.volume[i]!
        grid.heat[i] = bulk.liquidKgM3 * kinetics.heatJPerKg * grid.volume[i]!
        grid.k0[i] = bulk.kLiquidWmK
        grid.k1[i] = bulk.kSlopeWmK
        grid.startConversion[i] = at(layer.startConversion ?? 0, above)
      } else {
        grid.capacity[i] = layer.rhoCpJm3K * grid.volume[i]!
        grid.k0[i] = layer.kWmK
      }
    }
    if (layer.kind === 'resin') {
      reacting.push(react(layer, from, to))
      kChanges ||= layer.resin.bulk.kSlopeWmK !== 0 || (layer.kLiquidMultiplier ?? 1) !== 1
    }
  })
  return { ...grid, reacting, kChanges }
}

function react(layer: ResinLayer, from: number, to: number): Reacting {
  const multiplier = layer.kLiquidMultiplier ?? 1
  return {
    from,
    to,
    table: layer.table ?? cureTable(layer.resin.kinetics),
    factor: layer.rateFactor ?? 1,
    multiplier,
    liquidBelow: multiplier === 1 ? new Float64Array(0) : liquidBelow(layer.resin)
  }
}

/** Conversion below which a resin still mixes itself, by whole °C from {@link LIQUID_FROM_C} to 100. */
export function liquidBelow({ kinetics, flow }: ResinModel): Float64Array {
  const gel = kinetics.gelConversion
  return Float64Array.from({ length: LIQUID_TO_C - LIQUID_FROM_C + 1 }, (_, i) => {
    const tempC = LIQUID_FROM_C + i
    const thin = viscosityPaS(flow, gel, tempC, LIQUID_CONVERSION) < HONEY_PAS
    return thin ? LIQUID_CONVERSION : conversionAtViscosity(flow, gel, tempC, HONEY_PAS)
  })
}

/** A constant, or a profile read straight between its points and held beyond its ends. */
function at(value: number | Profile, positionMm: number): number {
  if (typeof value === 'number') return value
  const { positionMm: x, value: v } = value
  const last = x.length - 1
  if (positionMm <= x[0]!) return v[0]!
  if (positionMm >= x[last]!) return v[last]!
  let i = 1
  while (x[i]! < positionMm) i++
  return v[i - 1]! + ((v[i]! - v[i - 1]!) * (positionMm - x[i - 1]!)) / (x[i]! - x[i - 1]!)
}

function checkLayer(layer: Layer): void {
  inRange('thickness in mm', layer.thicknessMm, 1e-6, 10_000)
  const cells = layer.cells ?? 1
  if (!Number.isInteger(cells)) throw new Error(`cells is ${cells}; a whole number from 1 to 100 000`)
  inRange('cells', cells, 1, 100_000)
  checkStart('start temperature in °C', layer.startC, -40, 400)
  if (layer.kind === 'inert') {
    inRange('conductivity in W/(m·K)', layer.kWmK, 1e-6, 1e9)
    inRange('heat capacity in J/(m³·K)', layer.rhoCpJm3K, 1, 1e9)
    return
  }
  const { bulk, kinetics } = layer.resin
  checkStart('start conversion', layer.startConversion ?? 0, 0, 1)
  inRange('rate factor', layer.rateFactor ?? 1, 1e-6, 1e6)
  inRange('liquid multiplier', layer.kLiquidMultiplier ?? 1, 1, 100)
  inRange('conductivity in W/(m·K)', bulk.kLiquidWmK, 1e-6, 1e9)
  inRange('slope of conductivity in W/(m·K)', bulk.kSlopeWmK, -bulk.kLiquidWmK / 2, 1e3)
  inRange('density in kg/m³', bulk.liquidKgM3, 1, 1e5)
  inRange('heat capacity in J/(kg·K)', bulk.cpJkgK, 1, 1e5)
  inRange('heat of reaction in J/kg', kinetics.heatJPerKg, 0, 1e12)
}

function checkStart(name: string, value: number | Profile, least: number, most: number): void {
  if (typeof value === 'number') {
    inRange(name, value, least, most)
    return
  }
  const { positionMm: x, value: v } = value
  if (x.length === 0 || x.length !== v.length)
    throw new Error(`${name}: a profile has ${x.length} positions and ${v.length} values`)
  for (let i = 0; i < x.length; i++) {
    inRange(name, v[i]!, least, most)
    if (!Number.isFinite(x[i]!) || (i > 0 && !(x[i]! > x[i - 1]!)))
      throw new Error(`${name}: position ${x[i]} mm at point ${i} does not rise`)
  }
}
