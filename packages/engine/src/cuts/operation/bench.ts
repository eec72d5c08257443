import type { Materials } from '../../cast/facts.ts'
import type { Shop, ShopMachine } from '../../piece/shop-schema.ts'
import type { Region } from '../../shape/region.ts'
import type { Stack } from '../../stack/stack.ts'
import { linesToProgram, regionToPlan, regionToProgram, zToPlan, zToProgram } from '../pins/frame.ts'
import type { CutterBox } from '../run/cutters.ts'
import type { Met } from '../run/met.ts'
import { metAlong, placesAlong, placesIn } from './met-along.ts'
import type { MachineSetting } from './operation.ts'

/** Everything that operations are made from. */
export interface Bench {
  readonly stack: Stack
  readonly materials: Materials
  readonly shop: Shop
  readonly machine: ShopMachine
  readonly box: CutterBox
  /** How far a path may stray from the drawing, mm. */
  readonly tolMm: number
}

/** How far a cut right through goes on into the board beneath, mm: 0.5 to 1.3 by practice. */
export const INTO_BED_MM = 0.5

/** One step on its setting: what its cuts are reckoned from. */
export class Place {
  readonly bench: Bench
  readonly on: MachineSetting
  readonly step: number
  /** The step its operations stand under, where that is another; null: the same. */
  readonly listed: number | null

  constructor(bench: Bench, on: MachineSetting, step: number, listed: number | null = null) {
    this.bench = bench
    this.on = on
    this.step = step
    this.listed = listed
  }

  /** Events of the stack before the step. */
  get before(): number {
    return this.bench.stack.states[this.step - 1]?.events ?? 0
  }

  /** The face that is up when the step begins, z. */
  get topMm(): number {
    const { stack } = this.bench
    const state = stack.states[this.step - 1]
    const { frame } = this.on
    const z = frame.zSign > 0 ? (state?.highZ ?? stack.castHeight) : (state?.lowZ ?? 0)
    return zToProgram(frame, z)
  }

  /** The face that is down, z: it lies on the bed, where the piece was measured to reach. */
  get underMm(): number {
    return this.underPlannedMm + this.on.underMovedMm
  }

  private get underPlannedMm(): number {
    const { stack } = this.bench
    const state = stack.states[this.step - 1]
    const { frame } = this.on
    return zToProgram(frame, frame.zSign > 0 ? (state?.lowZ ?? 0) : (state?.highZ ?? stack.castHeight))
  }

  /** Where a cut ends, z: its floor as cast, or through what lies beneath. */
  floorMm(asCast: number): number {
    return Number.isFinite(asCast) ? zToProgram(this.on.frame, asCast) : this.throughMm
  }

  /** Where a cut right through ends, z: under the piece as planned and as measured, whichever is deeper. */
  get throughMm(): number {
    return Math.min(this.underMm, this.underPlannedMm) - INTO_BED_MM
  }

  region(plan: Region): Region {
    return regionToProgram(this.on.frame, plan)
  }

  lines(plan: readonly Float64Array[]): Float64Array[] {
    return linesToProgram(this.on.frame, plan)
  }

  metIn(region: Region, floorMm: number): Met[] {
    return this.met(placesIn(regionToPlan(this.on.frame, region)), floorMm)
  }

  metAlong(plan: readonly Float64Array[], floorMm: number): Met[] {
    return this.met(placesAlong(plan), floorMm)
  }

  private met(places: readonly (readonly [number, number])[], floorMm: number): Met[] {
    const a = zToPlan(this.on.frame, floorMm)
    const b = zToPlan(this.on.frame, this.topMm)
    const { stack, materials } = this.bench
    return metAlong(stack, this.before, places, Math.min(a, b), Math.max(a, b), materials)
  }
}
