import type { CureTable } from '../../resin/cure-table.ts'
import type { ResinModel } from '../../resin/model.ts'

/**
 * Heat and cure in a whole mould, three directions, over the sequence of its pours.
 *
 *   ρ·cp·∂T/∂t = ∇·(k·∇T) + ρ·H·∂α/∂t          ∂α/∂t = cure rate (resin/cure.ts)
 *
 *   k = kLiquid + kSlope·α, times a multiplier while the resin is liquid; ρ·cp constant in each material
 *
 * Cells are boxes, `nx` by `ny` of one size on the plan, of the heights `dzM` from the mould base up. Each
 * belongs to one material; what is not yet poured is air. Outer faces lose heat through a film: upward faces,
 * downward ones, sideways ones, and those towards the mould each by a coefficient of their own.
 *
 * Limits: outlines are staircases of cells; the liquid moves by the multiplier alone; no radiation between
 * faces; no change of volume. Peaks above 150 °C are runaways, not figures.
 */
export interface FieldProblem {
  readonly nx: number
  readonly ny: number
  readonly dxM: number
  readonly dyM: number
  /** Heights of the layers of cells from below, m. */
  readonly dzM: readonly number[]
  /** nx·ny·nz numbers, z running fastest, then x, then y: index into `materials` plus one; 0: nothing ever. */
  readonly cells: Uint8Array
  readonly materials: readonly FieldMaterial[]
  /** W/(m²·K). `floor`: below the lowest layer; `side`: towards places off the plan; the others: towards air. */
  readonly films: {
    readonly floor: number
    readonly side: number
    readonly up: number
    readonly down: number
    readonly sideways: number
  }
  /** The room, °C, by s of the run. */
  readonly ambientC: (timeS: number) => number
  readonly untilS: number
  /** Cells whose temperature is written down along the run: indices into `cells`. */
  readonly probes?: readonly number[]
  readonly control?: FieldControl
  /** Heat brought in from outside the model, W/m³ of each cell at a time; plain kernel alone (tests, heaters). */
  readonly source?: (timeS: number, wm3: Float64Array) => void
}

export type FieldMaterial = InertMaterial | ResinMaterial

export interface InertMaterial {
  readonly kind: 'inert'
  readonly kWmK: number
  readonly rhoCpJm3K: number
  readonly startC: number
}

export interface ResinMaterial {
  readonly kind: 'resin'
  readonly resin: ResinModel
  /** When it is poured, s of the run, and how warm and how far cured it is then. */
  readonly atS: number
  readonly startC: number
  readonly startConversion?: number
  /** Scales the cure rate; 1 if not given. */
  readonly rateFactor?: number
  /** Conductivity times this while liquid; 1 if not given. */
  readonly liquidMultiplier?: number
  /** Which pour it belongs to: a pour with stones has cells of two materials. Its own number if not given. */
  readonly pour?: number
  /** What stones make of it: factors on conductivity and heat capacity, and the resin's share of the volume. */
  readonly stones?: { readonly k: number; readonly rhoCp: number; readonly share: number }
  /** Another rate law, in tables; plain kernel alone. */
  readonly table?: CureTable
}

/** Accuracy of a run. */
export interface FieldControl {
  /** Error of a step aimed at, K, and the greatest change of conversion in a step. */
  readonly errorK: number
  readonly change: number
  readonly longestS: number
}

/** Peaks within 0.2 K and gel within 0.2 % of the same grid with small steps (tests). */
export const FULL_FIELD: FieldControl = { errorK: 0.05, change: 0.02, longestS: 3600 }
/** For previews, bands and searches: within 0.7 K and 0.6 %. */
export const QUICK_FIELD: FieldControl = { errorK: 0.2, change: 0.05, longestS: 3600 }
