import type { ResinRecord } from '../catalogue/resin.ts'
import { inRange } from '../quantity/range.ts'
import { QUICK, runColumn } from './column.ts'
import { type ResinResult, resinOf } from './column-result.ts'
import { type Effort, peakHorizonS, type SlabPour, slabColumn } from './slab.ts'
import { thickeningOf } from './thickening.ts'

/** A prediction with its band; null where it is not reached within the run. */
export interface Band<T = number> {
  readonly central: T
  readonly low: T
  readonly high: T
}

/** What the band of a pour arises from. */
export type Driver = 'rate' | 'room' | 'convection'

/**
 * A pour's prediction with its band, from the uncertainty of a resin class.
 *
 * Central: the class as recorded, the room as given, no mixing of the liquid. Band: the hull of the eight
 * corners of
 *   rate         all times × (1 ± band.time), so the rate over that
 *   room         ± roomBandK, and the mix with it when it stands at room temperature
 *   convection   liquid multiplier 1 to 3
 * Corners rather than random trials: the answers rise or fall throughout with each of the three, so the
 * extremes lie at corners, and the same input gives the same bytes.
 *
 * The effect of one input is the mean change of the peak along its four edges of the cube; the largest is
 * what a reading would settle first (a cup test the rate, a thermometer the room).
 *
 * Limits: an interval, not a percentile: all inputs unfavourable at once. Central lies at the hot end of
 * convection, on purpose.
 */
export interface PourBand {
  readonly peakC: Band
  readonly firstGelMin: Band<number | null>
  /** Until twice the starting viscosity, of the mean of the layer. */
  readonly workingMin: Band<number | null>
  /** Mean effect of each input on the peak from one end to the other, K. */
  readonly effectK: Readonly<Record<Driver, number>>
  readonly mostFrom: Driver
  /** The runs themselves, for whatever else follows from a pour's history. */
  readonly runs: {
    readonly central: ResinResult
    readonly corners: readonly CornerRun[]
    /** Whether they were made in a room with day and night; else it is even. */
    readonly daily: boolean
  }
}

/** A run at a corner of the band. */
export interface CornerRun {
  /** Whether its rate is at the fast end. */
  readonly faster: boolean
  /** Whether its room is at the warm end. */
  readonly warmer: boolean
  readonly run: ResinResult
}

export interface BandInput {
  readonly pour: SlabPour
  readonly band: ResinRecord['band']
  /** K; 2 if not given. */
  readonly roomBandK?: number
  /** 1 to 3 if not given. */
  readonly liquidMultiplier?: readonly [number, number]
  /** `quick` if not given. */
  readonly effort?: Effort
  /** All eight corners if not given; `ends`: the coldest and the hottest, and the hottest with one input turned. */
  readonly corners?: 'all' | 'ends'
}

/** All corners by their bits, or those that hold the ends and tell what moves them. */
const CORNERS = { all: [0, 1, 2, 3, 4, 5, 6, 7], ends: [0, 3, 5, 6, 7] } as const

/** Nine runs: the centre and eight corners; six for `ends`. */
export function pourBand(input: BandInput): PourBand {
  const { pour, band } = input
  const effort = input.effort ?? 'quick'
  const roomBandK = input.roomBandK ?? 2
  const [least, most] = input.liquidMultiplier ?? [1, 3]
  inRange('band of time', band.time, 0, 0.9)
  inRange('band of room temperature in K', roomBandK, 0, 20)
  const run = (p: SlabPour): ResinResult => followed(p, effort)
  return bandFrom(
    pour.resin,
    run(pour),
    CORNERS[input.corners ?? 'all'].map(bits => ({
      bits,
      run: run(corner(pour, band.time, roomBandK, [least, most], bits))
    }))
  )
}

/**
 * The band from runs made elsewhere: the centre, and corners by their bits (1 faster, 2 warmer, 4 unmixed) that hold
 * both ends of at least one edge of each. `daily`: they were made in a room with day and night.
 */
export function bandFrom(
  resin: SlabPour['resin'],
  centre: ResinResult,
  runs: readonly { readonly bits: number; readonly run: ResinResult }[],
  daily = false
): PourBand {
  const central = timesOf(resin, centre)
  const corners = runs.map(r => timesOf(resin, r.run))
  const which = runs.map(r => r.bits)
  // Over the edges of the cube of which both ends were run.
  const effect = (bit: number): number => {
    const edges = which.flatMap((bits, k) => {
      const other = which.indexOf(bits | bit)
      return bits & bit || other < 0 ? [] : [corners[other]!.peakC - corners[k]!.peakC]
    })
    return edges.reduce((sum, k) => sum + k, 0) / edges.length
  }
  const effectK = { rate: effect(1), room: effect(2), convection: effect(4) }
  const drivers: readonly Driver[] = ['rate', 'room', 'convection']
  return {
    peakC: hull(
      central.peakC,
      corners.map(c => c.peakC)
    ),
    firstGelMin: hullOrNull(
      central.firstGelMin,
      corners.map(c => c.firstGelMin)
    ),
    workingMin: hullOrNull(
      central.workingMin,
      corners.map(c => c.workingMin)
    ),
    effectK,
    mostFrom: drivers.reduce((a, b) => (Math.abs(effectK[b]) > Math.abs(effectK[a]) ? b : a)),
    runs: {
      central: centre,
      corners: runs.map(r => ({ faster: (r.bits & 1) > 0, warmer: (r.bits & 2) > 0, run: r.run })),
      daily
    }
  }
}

/** The corner of the band at which a pour runs hottest: faster, warmer, unmixed. */
export function hottestCorner(input: BandInput): SlabPour {
  return corner(input.pour, input.band.time, input.roomBandK ?? 2, input.liquidMultiplier ?? [1, 3], 7)
}

// A bit that is set is the hot end.
function corner(
  pour: SlabPour,
  time: number,
  roomBandK: number,
  [least, most]: readonly [number, number],
  bits: number
): SlabPour {
  return {
    ...pour,
    rateFactor: (pour.rateFactor ?? 1) / (bits & 1 ? 1 - time : 1 + time),
    roomC: pour.roomC + (bits & 2 ? roomBandK : -roomBandK),
    kLiquidMultiplier: bits & 4 ? least : most
  }
}

/** Runs go on at least this long, s: seven days, so that what hardens late lies in them too. */
const LEAST_FOLLOWED_S = 7 * 86_400
/** Longest step of a quick run in an even room, s: once the pour has cooled, little changes. */
const LONGEST_STEP_S = 4 * 3600

function followed(pour: SlabPour, effort: Effort): ResinResult {
  const column = slabColumn(pour, Math.max(LEAST_FOLLOWED_S, peakHorizonS(pour)), effort)
  const control = effort === 'quick' ? { ...QUICK, longestS: LONGEST_STEP_S } : column.control!
  return resinOf(runColumn({ ...column, control }))
}

interface Times {
  readonly peakC: number
  readonly firstGelMin: number | null
  readonly workingMin: number | null
}

function timesOf({ kinetics, flow }: SlabPour['resin'], run: ResinResult): Times {
  const { history, peakC, firstGelS } = run
  const mean = { timeS: history.timeS, tempC: history.meanC }
  const { doubleMin } = thickeningOf(kinetics, flow, mean, history.meanConversion)
  return { peakC, firstGelMin: firstGelS === null ? null : firstGelS / 60, workingMin: doubleMin }
}

function hull(central: number, corners: readonly number[]): Band {
  return { central, low: Math.min(central, ...corners), high: Math.max(central, ...corners) }
}

/** Times: a null is later than any number, so it can only be the high end. */
function hullOrNull(central: number | null, corners: readonly (number | null)[]): Band<number | null> {
  const all = [central, ...corners].map(t => t ?? Number.POSITIVE_INFINITY)
  const known = (t: number): number | null => (Number.isFinite(t) ? t : null)
  return { central, low: known(Math.min(...all)), high: known(Math.max(...all)) }
}
