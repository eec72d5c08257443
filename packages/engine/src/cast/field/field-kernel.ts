import type { ResinMaterial } from './field-problem.ts'

/** Arrays of a kernel: plain ones are of 64 bits, those in the memory of WebAssembly of 32. */
export type Numbers = Float64Array | Float32Array

/** Sizes of the grid as the kernels see it. Index c = `first` + (iy·nx + ix)·nz + iz. */
export interface FieldShape {
  /** nx and nz are padded to multiples of four with cells that hold nothing. */
  readonly nx: number
  readonly ny: number
  readonly nz: number
  /** First cell; before it and after the last one lies a plane of nothing, so that neighbours always exist. */
  readonly first: number
  /** Length of the arrays. */
  readonly length: number
  /** Per line along x: the columns that hold anything, [from, to); padded to fours in the padded grid. */
  readonly fromX: Int32Array
  readonly toX: Int32Array
  /** Per line along y. */
  readonly fromY: Int32Array
  readonly toY: Int32Array
}

/**
 * One step of heat and cure is four calls: `stepZ`, `sweepX`, `sweepY`, and when it is accepted `finish`.
 *
 *   (C − θ·dt·Lz)(…)(…)·D = dt·L·T + ρHV·Δα        Douglas' splitting in increment form
 *   Δα = dt·r/(1 − dt/2·∂r/∂α) at T + ½·D_old·dt/dt_old        one-stage Rosenbrock
 *
 * Both are of second order. All arrays have the length of the shape. Temperatures in °C, heat in W/K, J/K, J.
 * Sources: Douglas, Numer Math 4 (1962) 41; Rosenbrock, Comput J 5 (1963) 329 (both memory).
 */
export interface FieldKernel {
  readonly shape: FieldShape
  /** Temperature, °C. */
  readonly tempC: Numbers
  /** Highest so far, °C. */
  readonly peakC: Numbers
  /** When it gelled, s; 0 while it has not. A cell may carry the mark of a refused step until it gels. */
  readonly gelS: Numbers
  /** Increment of the last accepted step and of the step being tried, K. */
  readonly increment: () => Numbers
  readonly tried: () => Numbers
  /** Conversion now, and after the step being tried. */
  readonly conversion: () => Numbers
  readonly triedConversion: () => Numbers
  /** ρ·cp·V, J/K; ρ·H·V, J. Cells of nothing have capacity 1 and no conductance. */
  readonly capacity: Numbers
  readonly heat: Numbers
  /** k = kBase + kSlope·α of each cell, W/(m·K); 0 for air. */
  readonly kBase: Numbers
  readonly kSlope: Numbers
  /** Conductance to the next cell along each axis, W/K, as `conduct` made it. */
  readonly conductances: { readonly gx: Numbers; readonly gy: Numbers; readonly gz: Numbers }
  /** Conductance to the air or mould around, W/K. */
  readonly film: Numbers
  /** Number of the resin of each cell, from 1; 0 where nothing cures. */
  readonly resin: Numbers
  /** Takes up the resins; once, before the first step. */
  readonly setResins: (resins: readonly ResinMaterial[]) => void
  /**
   * Conductances between cells, up to layer `layers`, at the conversion that lies `ahead` times the last change of
   * conversion before us.
   */
  readonly conduct: (layers: number, ahead: number) => void
  /** Explicit part, cure and the sweep along z. Returns the greatest change of conversion. */
  readonly stepZ: (step: FieldStep) => number
  /** Heat that leaves through the films, W, asked for right after `stepZ`; the run sums it up where it is missing. */
  readonly lossW?: (step: FieldStep) => number
  readonly sweepX: (step: FieldStep) => void
  /** Returns the greatest |D − ratio·D_old| of all cells, K. */
  readonly sweepY: (step: FieldStep) => number
  /** Makes the tried step the state. */
  readonly finish: (step: FieldStep) => void
  /** Outside heat, W into each cell, heeded when a step is `sourced`; null where the kernel cannot. */
  readonly source: Float64Array | null
  /** Hottest cell of a resin within layers of cells, °C. */
  readonly hottest: (resin: number, fromLayer: number, toLayer: number) => number
}

/** What a step is made with. */
export interface FieldStep {
  readonly dtS: number
  readonly theta: number
  /** dt/dt_old; 0 in the first step after a pour. */
  readonly ratio: number
  readonly ambientC: number
  /** s of the run at its start. */
  readonly timeS: number
  /** Layers of cells in use, a multiple of four. */
  readonly layers: number
  readonly sourced: boolean
}

/** What a kernel lays out at its start. */
export interface FieldLayout {
  readonly shape: FieldShape
  readonly dxM: number
  readonly dyM: number
  /** Heights of the layers, padded, m. */
  readonly dzM: Float64Array
}
