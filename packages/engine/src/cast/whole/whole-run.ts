import { bandFrom } from '../../resin/bands.ts'
import type { ResinResult } from '../../resin/column-result.ts'
import type { Stack } from '../../stack/stack.ts'
import type { RoomAir } from '../bed.ts'
import type { PourCast } from '../cast.ts'
import { FOLLOWED_MIN, pourCast } from '../cast.ts'
import { fastestKernel } from '../field/fastest.ts'
import type { FieldPour, FieldResult } from '../field/field-result.ts'
import type { KernelMaker } from '../field/field-run.ts'
import { fieldRun } from '../field/field-run.ts'
import { airFor, givenWaits } from '../starts.ts'
import { gelLater, uncovered } from './covered.ts'
import { edgesOf, MOST_EDGES } from './edges.ts'
import { castPours, FULL_FINENESS, levelsOf, QUICK_FINENESS } from './levels.ts'
import type { Raster } from './raster.ts'
import { rasterOf } from './raster.ts'
import { tryDepth } from './try-depth.ts'
import type { Probe, WholeCast } from './whole-cast.ts'
import { cellAt, peakMapOf } from './whole-cast.ts'
import type { Span, Variant, WholeInput } from './whole-problem.ts'
import { AS_PLANNED, isCast, wholeProblem } from './whole-problem.ts'

/** A cast of the whole mould that goes on as far as it is told: first a preview, then its band, then the full answer. */
export interface WholeRun {
  /** Takes about so many steps; true when all is done. */
  readonly advance: (steps: number) => boolean
  /** Share of the work that lies behind, 0..1. */
  readonly progress: () => number
  /** The best answer so far; null before the preview is there. */
  readonly best: () => WholeCast | null
}

export interface WholeOptions {
  /** `preview` ends with the coarse grid and its band. */
  readonly effort: 'preview' | 'full'
  /** The kernel; the fastest there is if not given. */
  readonly kernel?: KernelMaker
  /** Whether to search how far the limits are; yes if not given. */
  readonly edges?: boolean
  /** Places whose temperature is written down: mm on the plan and as cast. */
  readonly probes?: readonly (readonly [x: number, y: number, z: number])[]
  /** Rounds of pours and windows at most; four if not given. */
  readonly rounds?: number
}

/** Corners of the band, by bits: 1 faster, 2 warmer, 4 unmixed; the coldest, the hottest and the hottest with one turned. */
const CORNERS = [0, 3, 5, 6, 7] as const
/** The liquid's own mixing at its strongest, as a factor on conductivity (resin/bands.ts). */
const MOST_MIXED = 3
/** Rounds of pours and windows at most; then a finding says that they do not settle. */
const MOST_ROUNDS = 4
/** A try of a search ends when its pour has cooled by so much from its peak, K. */
const PAST_PEAK_K = 2
/** Starts within this share of the wait, or these minutes, are the same. */
const SAME_SHARE = 0.02
const SAME_MIN = 5

/**
 * Sets up the cast of a whole mould from what the column found of its pours: their starts, and what readings taught.
 * null where nothing is cast, a resin is not predicted, or a pour lies on one that is not.
 *
 * `input` has the resins as their readings left them. The same input and kernel give the same bytes.
 */
export function wholeRun(
  input: WholeInput,
  casts: readonly (PourCast | null)[],
  options: WholeOptions
): WholeRun | null {
  const pours = castPours(input.stack)
  if (pours.length === 0 || pours.some(p => casts[p.index] == null)) return null
  const work = new WholeWork(input, casts, options)
  const chain = work.go()
  let done = false
  return {
    advance: steps => {
      work.budget = steps
      while (!done && work.budget > 0) done = chain.next().done === true
      return done
    },
    progress: () => (done ? 1 : work.progress()),
    best: () => work.best
  }
}

class WholeWork {
  best: WholeCast | null = null
  budget = 0
  private done = 0
  private readonly all: number
  private readonly input: WholeInput
  private readonly air: RoomAir
  private readonly options: WholeOptions
  private readonly make: KernelMaker
  /** By pour: how long it waits for the one before, where the document says. */
  private readonly waits: ReadonlyMap<number, number>
  private readonly pours: readonly number[]
  /** As they are planned now, and as the column gave them. */
  private casts: readonly (PourCast | null)[]
  private readonly columns: readonly (PourCast | null)[]
  private part = 0
  private weight = 0

  constructor(input: WholeInput, casts: readonly (PourCast | null)[], options: WholeOptions) {
    this.input = input
    this.casts = casts
    this.columns = casts
    this.options = options
    this.make = options.kernel ?? fastestKernel
    // in the order in which they are poured
    this.pours = input.stack.steps.flatMap(s =>
      s.kind === 'pour' && s.pour!.value.kind === 'cast' && casts[s.pour!.index] ? [s.pour!.index] : []
    )
    const given = givenWaits(input.stack.steps)
    const castings = input.stack.steps.filter(s => s.kind === 'pour' && s.pour!.value.kind === 'cast')
    this.waits = new Map(
      castings.flatMap((s, k) => (given[k] == null ? [] : [[s.pour!.index, given[k]!] as const]))
    )
    this.air = airFor(input.stack, input.shop, this.pours[0]!)
    // A full run is so much dearer than a quick one that it counts as twenty.
    const edges = options.edges === false ? 0 : 16 * Math.min(MOST_EDGES, this.pours.length)
    this.all = 1 + CORNERS.length + edges + (options.effort === 'full' ? 20 : 0)
  }

  progress(): number {
    return Math.min(0.99, (this.done + this.part * this.weight) / this.all)
  }

  *go(): Generator<undefined, void> {
    const { input } = this
    const quick = this.raster(true)
    if (quick === null) return
    let { result, rounds, settled } = yield* this.settle(quick)
    const centre = result
    const runs: { bits: number; result: FieldResult }[] = []
    this.best = this.assemble(quick, result, centre, runs, 'preview', rounds, settled)
    for (const bits of CORNERS) {
      const result = yield* this.run(quick, variantOf(input, bits), true, 1)
      runs.push({ bits, result })
    }
    this.best = this.assemble(quick, result, centre, runs, 'preview', rounds, settled)
    if (this.options.effort === 'full') {
      const fine = this.raster(false)
      if (fine !== null) {
        result = yield* this.run(fine, AS_PLANNED, false, 20)
        this.best = this.assemble(fine, result, centre, runs, 'full', rounds, settled)
      }
    }
    if (this.options.edges === false) return
    const edges = yield* edgesOf(input, this.casts, this.best, {
      run: (index, times, variant, startK, span) =>
        this.tried(tryDepth(input.stack, index, times), variant, startK, span, index)
    })
    this.best = { ...this.best, edges }
  }

  private raster(quick: boolean, stack = this.input.stack): Raster | null {
    const fineness = quick ? QUICK_FINENESS : FULL_FINENESS
    // A pour stands higher before it shrinks.
    const stretch = this.input.stack.pours.map(p => (p.depth > 0 ? p.liquidDepth / p.depth : 1))
    return rasterOf(stack, fineness, levelsOf(stack, fineness, stretch))
  }

  private *run(
    raster: Raster,
    variant: Variant,
    quick: boolean,
    weight: number,
    casts = this.casts,
    span: Span = {},
    until: number | null = null
  ): Generator<undefined, FieldResult> {
    const probes = variant === AS_PLANNED && span.untilS === undefined ? this.probeCells(raster) : []
    const problem = { ...wholeProblem(this.input, casts, raster, this.air, variant, quick, span), probes }
    const run = fieldRun(problem, this.make)
    this.weight = weight
    for (;;) {
      const chunk = Math.max(1, Math.min(this.budget, until !== null ? 10 : quick ? 200 : 10))
      const ended = run.advance(chunk)
      // a step of the fine grid is worth ten of the coarse one
      this.budget -= quick ? chunk / 10 : chunk
      this.part = run.progress()
      if (ended || (until !== null && run.pastPeak(until, PAST_PEAK_K))) break
      yield
    }
    this.done += weight
    this.part = 0
    return run.result()
  }

  private probeCells(raster: Raster): number[] {
    const layers = raster.levels.dzM.length
    return (this.options.probes ?? []).flatMap(([x, y, z]) => {
      const cell = cellAt({ ...raster, facesMm: raster.levels.facesMm }, x, y, z)
      return cell === null ? [] : [(cell[1] * raster.nx + cell[0]) * layers + cell[2]]
    })
  }

  private probesOf(raster: Raster, result: FieldResult): Probe[] {
    const min = Array.from(result.probes.timeS, s => s / 60)
    const met = (this.options.probes ?? []).filter(
      ([x, y, z]) => cellAt({ ...raster, facesMm: raster.levels.facesMm }, x, y, z) !== null
    )
    return met.map(([x, y, z], k) => ({
      x,
      y,
      z,
      min,
      tempC: Array.from(result.probes.tempC[k]!, t => (Number.isNaN(t) ? null : t))
    }))
  }

  /** A coarse run of another stack, in another room or with other mixes, for a search. */
  private *tried(
    stack: Stack,
    variant: Variant,
    startK: number,
    span: Span,
    index: number
  ): Generator<undefined, FieldResult> {
    const raster = this.raster(true, stack)!
    const casts = this.casts.map(c => (c === null ? null : { ...c, startC: c.startC + startK }))
    return yield* this.run(raster, variant, true, 1, casts, span, index)
  }

  /** The coarse run at the planned moments; where a pour waits for the window of the one below, again until it holds. */
  private *settle(
    raster: Raster
  ): Generator<undefined, { result: FieldResult; rounds: number; settled: boolean }> {
    for (let rounds = 1; ; rounds++) {
      const result = yield* this.run(raster, AS_PLANNED, true, 1 / MOST_ROUNDS)
      const moved = this.moved(result)
      if (moved === null) return { result, rounds, settled: true }
      if (rounds >= (this.options.rounds ?? MOST_ROUNDS)) return { result, rounds, settled: false }
      this.casts = moved
    }
  }

  /** The pours at the moments that the windows of a run ask for; null where they stand there already. */
  private moved(result: FieldResult): readonly (PourCast | null)[] | null {
    const { input, pours, casts } = this
    const waits = pours.slice(1).map((index, k) => {
      const below = pours[k]!
      return this.waits.get(index) ?? this.columns[below]!.windows.recoat.open * this.later(result, below)
    })
    const same = waits.every((wait, k) => {
      const planned = casts[pours[k + 1]!]!.startMin - casts[pours[k]!]!.startMin
      return Math.abs(wait - planned) <= Math.max(SAME_MIN, SAME_SHARE * planned)
    })
    if (same) return null
    const out = [...casts]
    let startMin = casts[pours[0]!]!.startMin
    waits.forEach((wait, k) => {
      startMin += wait
      const index = pours[k + 1]!
      const startC = input.stack.piece.pours[index]!.startTemperature ?? this.air(startMin * 60)
      out[index] = { ...out[index]!, startMin, startC }
    })
    return out
  }

  /** When the next pour lands on one, s since it was poured; null: none does. */
  private coveredS(index: number): number | null {
    const next = this.pours[this.pours.indexOf(index) + 1]
    return next === undefined ? null : (this.casts[next]!.startMin - this.casts[index]!.startMin) * 60
  }

  /** How much later the face of a pour gels than in its column, as a factor. */
  private later(result: FieldResult, index: number): number {
    const { kinetics } = this.input.choices[index]!.record.model!
    const coveredS = this.coveredS(index) ?? Number.POSITIVE_INFINITY
    return gelLater(this.columns[index]!, pourOf(result, index), kinetics.gelConversion, coveredS)
  }

  private assemble(
    raster: Raster,
    result: FieldResult,
    centre: FieldResult,
    corners: readonly { readonly bits: number; readonly result: FieldResult }[],
    effort: 'preview' | 'full',
    rounds: number,
    settled: boolean
  ): WholeCast {
    const { input } = this
    const casts = this.casts.map((c, i) => {
      if (c === null || !isCast(input, i) || !result.pours.some(p => p.pour === i)) return null
      const model = input.choices[i]!.record.model!
      const band = bandFrom(
        model,
        pourOf(centre, i),
        corners.map(k => ({ bits: k.bits, run: pourOf(k.result, i) })),
        true
      )
      const { index, startMin, startC, learned } = c
      const whole = pourCast(input, { index, startMin, startC, learned }, pourOf(result, i), band)
      const own =
        this.coveredS(i) === null ? whole : uncovered(whole, this.columns[i]!, this.later(result, i))
      // Before its own band is there, that of the column stands about the new middle.
      return corners.length > 0 ? own : { ...own, ...carriedBand(c, own) }
    })
    return {
      casts,
      effort,
      edges: input.stack.piece.pours.map(() => null),
      map: peakMapOf(raster, result),
      hottest: casts.map((c, i) => (c === null ? null : placeOf(raster, result, i))),
      energy: result.energy,
      probes: this.probesOf(raster, result),
      steps: result.steps,
      rounds,
      settled
    }
  }
}

function carriedBand(column: PourCast, own: PourCast): Partial<PourCast> {
  const [low, high] = column.peakBandC
  const off = own.peakC - column.peakC
  return {
    peakBandC: [Math.min(own.peakC, low + off), Math.max(own.peakC, high + off)],
    mostFrom: column.mostFrom
  }
}

/** One pour of a run, followed for seven days from when it was poured. */
function pourOf(result: FieldResult, index: number): ResinResult {
  const pour = result.pours.find(p => p.pour === index)
  if (pour === undefined) throw new Error(`pour ${index} is not in the run`)
  return within(pour, FOLLOWED_MIN * 60)
}

const cut = new WeakMap<FieldPour, FieldPour>()

function within(pour: FieldPour, untilS: number): FieldPour {
  const known = cut.get(pour)
  if (known !== undefined) return known
  const { timeS } = pour.history
  let count = timeS.length
  while (count > 2 && timeS[count - 2]! > untilS) count--
  const history = Object.fromEntries(
    Object.entries(pour.history).map(([key, values]) => [key, (values as Float64Array).slice(0, count)])
  ) as unknown as FieldPour['history']
  const short = { ...pour, history }
  cut.set(pour, short)
  return short
}

function placeOf(raster: Raster, result: FieldResult, index: number): readonly [number, number, number] {
  const [ix, iy, iz] = result.pours.find(p => p.pour === index)!.peakCell
  const { facesMm } = raster.levels
  return [
    raster.x0 + (ix + 0.5) * raster.dxMm,
    raster.y0 + (iy + 0.5) * raster.dyMm,
    (facesMm[iz]! + facesMm[iz + 1]!) / 2
  ]
}

function variantOf(input: WholeInput, bits: number): Variant {
  const { doubt } = input.shop.climate
  return {
    rate: bits & 1 ? 'fast' : 'slow',
    roomK: bits & 2 ? doubt : -doubt,
    liquid: bits & 4 ? 1 : MOST_MIXED
  }
}
