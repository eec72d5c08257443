import type { CutMaterial } from '../../catalogue/chip-load.ts'

/** Depth of a pass in diameters: 1 in softwood, 0.5 to 1 in hardwood, 0.25 to 0.5 in resin. */
const pass: Readonly<Record<CutMaterial, number>> = {
  softwood: 1,
  hardwood: 0.75,
  dense: 0.5,
  board: 0.75,
  resin: 0.375
}

/** Depth of a pass of a flattening bit, mm: 0.3 to 1.5. */
const surfacingPassMm: Readonly<Record<CutMaterial, number>> = {
  softwood: 1,
  hardwood: 0.8,
  dense: 0.5,
  board: 0.8,
  resin: 0.5
}

/** Depth between lifts of a drill, in diameters. */
const peck: Readonly<Record<CutMaterial, number>> = {
  softwood: 1.5,
  hardwood: 1,
  dense: 0.75,
  board: 1,
  resin: 0.5
}

/**
 * Rules of the workshop on how cutters are run. All are common practice without a published source; where practice
 * gives a range the middle is taken, in resin the careful end.
 */
export const PRACTICE = {
  pass,
  /** Cutters up to 2 mm: 0.25 to 0.5 diameters in anything. */
  tinyMm: 2,
  tinyPass: 0.375,
  surfacingPassMm,
  /** A V goes 2 to 3 mm deep a pass. */
  vPassMm: 2,
  peck,
  /** Shallowest pass worth making, in diameters: below it chips are thinned instead. */
  leastPass: 0.1,
  leastSurfacingMm: 0.2,
  /** Sideways step of clearing, and of flattening in timber (40 to 70 % of the diameter). */
  step: 0.4,
  flattenStep: 0.5,
  /** Left on a wall for the last pass: 0.2 to 0.5. */
  allowanceMm: 0.3,
  allowanceResinMm: 0.2,
  /** Thinnest chip that cuts and does not rub: the radius of the edge, 0.01, in resin better 0.02. */
  leastChipMm: 0.01,
  leastChipResinMm: 0.02,
  /** Straight down: 30 to 50 % of the feed. */
  plungeShare: 0.4,
  plungeShareResin: 0.3,
  /** Down a ramp or helix: 2 to 5 degrees in timber, 1 to 3 in resin, at 60 % of the feed. */
  rampWoodDeg: 3,
  rampResinDeg: 2,
  rampShare: 0.6,
  /** What a pass that is gone over again may bend the cutter, mm: well inside the allowance. */
  roughBendMm: 0.1,
  /** Share of the spindle's power that reaches the edge for good. */
  spindleShare: 0.7,
  /** So far above the usual turns a wide bit is said to run too fast. */
  overTurns: 1.25,
  /** A machine with less play than this cuts climb; with more a climbing cutter pulls the table. */
  climbBelowErrorMm: 0.1,
  /** Turns of a drill: edge at 40 to 80 m/min in timber, 20 to 40 in resin. */
  drillRpm(diameterMm: number, resin: boolean): readonly [low: number, high: number] {
    const [low, high] = resin ? [20, 40] : [40, 80]
    return [(1000 * low) / (Math.PI * diameterMm), (1000 * high) / (Math.PI * diameterMm)]
  }
} as const
