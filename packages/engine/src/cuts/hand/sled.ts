import type { BeamStretch } from '../../plate/beam.ts'
import { beamSag } from '../../plate/beam.ts'
import { GRAVITY_M_PER_S2 } from '../../quantity/gravity.ts'
import { inRange } from '../../quantity/range.ts'
import type { Passes } from './pass-depth.ts'
import { passesOf } from './pass-depth.ts'

/**
 * A router on a sled: a carriage of two beams spans the work from rail to rail; the router slides along it, the
 * carriage along the rails.
 *
 *   rails    = l + b + f          l  work along the rails, b  cutter, f  foot of the router (the carriage is as wide)
 *   span     = w + b + 2·c        w  work across, c  clearance to each rail
 *   rows     = ⌈(l + b/2)/s⌉ + 1  s = 0.6·b, the cutter starts and ends half off the work
 *   passes   = ⌈d/1⌉              d  what comes off
 *   sag      of two beams side by side under their own weight and the router with two hands in the middle
 *
 * Source: plane geometry; beam in plate/beam.ts. Step of 0.6 of the cutter, 1 mm a pass, two hands' 20 N and 20 mm of
 * clearance: common practice, no source. Plywood on edge: 10 GPa, 680 kg/m³ of the catalogue (birch plywood 18).
 * Check: P·L³/(48·E·I) + 5·q·L⁴/(384·E·I) for a load in one place (test).
 *
 * Limits: rails straight and lying on the bench all along; what they are out of true is copied into the work. Beams
 * alike, plywood or timber of that stiffness. Elastic sag only, no claim of strength.
 */
export interface SledJob {
  /** Along and across the rails, mm. */
  readonly lengthMm: number
  readonly widthMm: number
  readonly bitMm: number
  readonly baseMm: number
  readonly takeOffMm: number
  readonly routerG: number
  readonly beamThicknessMm: number
  readonly beamHeightMm: number
}

export interface SledPlan {
  readonly railsMm: number
  readonly spanMm: number
  readonly rows: number
  readonly passes: Passes
  /** How far the carriage goes down in the middle: the face comes out that much hollow. */
  readonly sagMm: number
  /** Way of the cutter in the work, all rows and passes, mm. */
  readonly wayMm: number
}

/** Step of the rows by the diameter of the cutter, depth of a pass mm, clearance mm, weight of two hands N (practice). */
const STEP_SHARE = 0.6
const SLED_PASS_MM = 1
const CLEARANCE_MM = 20
const HANDS_N = 20
/** Birch plywood, catalogue/board: along the grain of the face, N/mm², and kg/m³. */
const BEAM_NMM2 = 10_000
const BEAM_KGM3 = 680

/** @throws RangeError for sizes that no sled has */
export function sledPlan(job: SledJob): SledPlan {
  const { lengthMm, widthMm, bitMm, baseMm } = job
  inRange('length', lengthMm, 1, 20_000, 'mm')
  inRange('width', widthMm, 1, 20_000, 'mm')
  const spanMm = widthMm + bitMm + 2 * CLEARANCE_MM
  const rows = Math.ceil((lengthMm + bitMm / 2) / (STEP_SHARE * bitMm)) + 1
  const passes = passesOf(job.takeOffMm, SLED_PASS_MM)
  return {
    railsMm: lengthMm + bitMm + baseMm,
    spanMm,
    rows,
    passes,
    sagMm: carriageSagMm(spanMm, job),
    wayMm: rows * (widthMm + bitMm) * passes.count
  }
}

/** Sag of a carriage that spans `spanMm` with the router in its middle, mm. */
export function carriageSagMm(
  spanMm: number,
  {
    baseMm,
    routerG,
    beamThicknessMm: b,
    beamHeightMm: h
  }: Pick<SledJob, 'baseMm' | 'routerG' | 'beamThicknessMm' | 'beamHeightMm'>
): number {
  const stiffnessNmm2 = (BEAM_NMM2 * 2 * b * h ** 3) / 12
  const own = 2 * b * h * BEAM_KGM3 * 1e-9 * GRAVITY_M_PER_S2
  const foot = Math.min(baseMm, spanMm)
  const load = ((routerG / 1000) * GRAVITY_M_PER_S2 + HANDS_N) / foot
  const side = (spanMm - foot) / 2
  const stretch = (lengthMm: number, loadNPerMm: number): BeamStretch => ({
    lengthMm,
    stiffnessNmm2,
    loadNPerMm
  })
  const stretches = [stretch(side, own), stretch(foot, own + load), stretch(side, own)].filter(
    s => s.lengthMm > 0
  )
  return beamSag(stretches, [0, spanMm]).betweenMm
}
