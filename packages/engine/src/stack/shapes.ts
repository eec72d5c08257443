import type { Region } from '../shape/region.ts'
import type { Solid } from './solid.ts'

/** Every plane shape of a piece as a region, and its timbers as bodies. Lists run with the piece's own. */
export interface Geometry {
  readonly outline: Region
  /** Inside of the mould on the plan, ears included. */
  readonly mould: Region
  readonly formers: readonly { readonly region: Region; readonly from: number; readonly to: number | null }[]
  readonly timbers: readonly Solid[]
  /** null: the whole mould. */
  readonly pourRegions: readonly (Region | null)[]
  /** Per pour and per stones entry: the zone, or null for the whole pour and for placed ones. */
  readonly zones: readonly (readonly (Region | null)[])[]
  /** Region of a cut given by its shape; null for a groove along a line. */
  readonly cutRegions: readonly (Region | null)[]
  /** Of each cut: its islands (by their places in the list) that lie wholly outside its shape. */
  readonly idleIslands: readonly (readonly number[])[]
  readonly cutLines: readonly (readonly Float64Array[] | null)[]
  readonly markingLines: readonly (readonly Float64Array[])[]
  readonly keepClear: readonly Region[]
}
