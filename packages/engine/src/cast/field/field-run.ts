import {
  cellsOf,
  type FieldCells,
  type FieldFaces,
  facesOf,
  filmConductance,
  placeMaterial
} from './field-cells.ts'
import type { FieldKernel, FieldLayout, FieldStep } from './field-kernel.ts'
import { type Liquid, liquidsOf, mixLiquid } from './field-liquid.ts'
import { ProbeRecord } from './field-probe.ts'
import { type FieldProblem, FULL_FIELD, type ResinMaterial } from './field-problem.ts'
import { checkRanges } from './field-range.ts'
import { pastPeak, recordsOf, resinNumbers, writeSample } from './field-record.ts'
import { type FieldResult, fieldResult } from './field-result.ts'
import { plainKernel } from './plain-kernel.ts'

/** A run that goes on as far as it is told. */
export interface FieldRun {
  /** Takes up to so many steps; true when the run has come to its end. */
  readonly advance: (steps: number) => boolean
  /** Share of the run's time that lies behind, 0..1. */
  readonly progress: () => number
  /** What has come of it so far. */
  readonly result: () => FieldResult
  /** Whether a pour has gelled and is past its peak by so many K: what is asked of its heat is then known. */
  readonly pastPeak: (pour: number, byK: number) => boolean
}

/** Makes the kernel that runs a layout. */
export type KernelMaker = (layout: FieldLayout) => FieldKernel

const FIRST_STEP_S = 4
const SHORTEST_STEP_S = 1e-3
const MOST_STEPS = 200_000
/** Steps after a pour that are taken backwards (theta 1), which damps what a hot pour on a cold board sets off. */
const DAMPED = 4
/** A step whose error is so many times what is aimed at is taken again. */
const REFUSED = 4
/** Conductances are made anew when conversion has changed by so much anywhere: k is then within 0.2 %. */
const REFRESH = 0.01

/** Sets a run up. Throws on values out of range. Same problem and kernel: same bytes. */
export function fieldRun(problem: FieldProblem, make: KernelMaker = plainKernel): FieldRun {
  checkRanges(problem)
  const cells = cellsOf(problem)
  const kernel = make({ shape: cells.shape, dxM: problem.dxM, dyM: problem.dyM, dzM: cells.dzM })
  const state = new RunState(problem, cells, kernel)
  return {
    advance: steps => state.advance(steps),
    progress: () => Math.min(1, state.timeS / problem.untilS),
    pastPeak: (pour, byK) => {
      const record = state.records.find(r => r.pour === pour)
      return record !== undefined && pastPeak(record, byK)
    },
    result: () =>
      fieldResult({
        problem,
        cells,
        kernel,
        records: state.records,
        probes: state.probes.result(),
        lostJ: state.lostJ,
        sourceJ: state.sourceJ,
        timeS: state.timeS,
        steps: state.steps,
        refused: state.refused,
        ended: state.timeS >= problem.untilS
      })
  }
}

/** Runs to the end at once. */
export function runField(problem: FieldProblem, make?: KernelMaker): FieldResult {
  const run = fieldRun(problem, make)
  while (!run.advance(1000));
  return run.result()
}

class RunState {
  timeS = 0
  steps = 0
  refused = 0
  lostJ = 0
  sourceJ = 0
  readonly records
  readonly probes: ProbeRecord
  private readonly events: number[]
  private readonly problem: FieldProblem
  private readonly cells: FieldCells
  private readonly kernel: FieldKernel
  private readonly numbers: number[]
  private readonly resins: readonly ResinMaterial[]
  private readonly liquids: readonly Liquid[]
  private faces: FieldFaces | null = null
  private layers = 0
  private dt = FIRST_STEP_S
  private dtOld = 0
  private since = 0
  private turned = Number.POSITIVE_INFINITY
  private ahead = 0
  private readonly changing: boolean

  constructor(problem: FieldProblem, cells: FieldCells, kernel: FieldKernel) {
    this.problem = problem
    this.cells = cells
    this.kernel = kernel
    this.numbers = resinNumbers(problem)
    this.resins = problem.materials.filter((m): m is ResinMaterial => m.kind === 'resin')
    this.liquids = liquidsOf(this.resins)
    this.changing = this.liquids.length > 0 || this.resins.some(m => m.resin.bulk.kSlopeWmK !== 0)
    kernel.setResins(this.resins)
    this.records = recordsOf(problem, cells)
    this.probes = new ProbeRecord(problem, cells)
    this.events = [...new Set(this.resins.map(m => m.atS))].filter(s => s > 0).sort((a, b) => a - b)
    this.place(m => m.kind === 'inert' || m.atS <= 0)
    this.probes.write(kernel, 0)
  }

  advance(steps: number): boolean {
    const { untilS } = this.problem
    for (let k = 0; k < steps && this.timeS < untilS; k++) {
      if (this.steps + this.refused > MOST_STEPS)
        throw new Error(`the cast took more than ${MOST_STEPS} steps`)
      this.step()
    }
    return this.timeS >= untilS
  }

  /** Puts the materials of now in, and starts small steps again. */
  private place(which: (m: FieldProblem['materials'][number]) => boolean): void {
    const { problem, cells, kernel } = this
    problem.materials.forEach((m, i) => {
      if (!which(m)) return
      const reach = placeMaterial(problem, cells, kernel, i, this.numbers[i]!)
      this.layers = Math.max(this.layers, 4 * Math.ceil(reach / 4))
    })
    // faces that are covered now lose no heat any more
    kernel.film.fill(0)
    this.faces = facesOf(problem, cells, kernel)
    this.dt = FIRST_STEP_S
    this.since = 0
    this.turned = Number.POSITIVE_INFINITY
    for (const r of this.records)
      if (r.atS === this.timeS || (r.atS <= 0 && this.timeS === 0)) writeSample(r, kernel, this.timeS)
  }

  private step(): void {
    const { problem, kernel } = this
    const control = problem.control ?? FULL_FIELD
    const rest = (this.events[0] ?? problem.untilS) - this.timeS
    let dt = Math.min(this.dt, control.longestS)
    // land on the pour, and leave no sliver before it
    if (dt >= rest) dt = rest
    else if (dt > rest / 2) dt = rest / 2
    const ratio = this.since === 0 ? 0 : dt / this.dtOld
    this.refresh(0.5 * ratio)
    const middleS = this.timeS + dt / 2
    const step: FieldStep = {
      dtS: dt,
      theta: this.since < DAMPED ? 1 : 0.5,
      ratio,
      ambientC: problem.ambientC(middleS),
      timeS: this.timeS,
      layers: this.layers,
      sourced: problem.source !== undefined
    }
    const outsideW = this.source(middleS)
    const change = kernel.stepZ(step)
    // The films stand in the sweep along z: what it leaves is the increment they took heat from.
    const lostJ = this.loss(step)
    kernel.sweepX(step)
    const error = 0.5 * kernel.sweepY(step)
    if (!Number.isFinite(error)) throw new Error(`the cast lost its footing at ${this.timeS} s`)
    if (this.since > 0 && error > REFUSED * control.errorK && dt > SHORTEST_STEP_S) {
      this.refused++
      // the buffer now holds the refused try, not the conversion before: nothing to look ahead with
      this.ahead = 0
      this.dt = dt * Math.max(0.2, 0.9 * Math.sqrt(control.errorK / error))
      return
    }
    this.lostJ += lostJ
    this.sourceJ += outsideW * dt
    kernel.finish(step)
    this.ahead = 1
    if (this.changing) this.turned += change
    this.timeS = dt === rest ? (this.events[0] ?? problem.untilS) : this.timeS + dt
    this.steps++
    this.dtOld = dt
    const bySize = 0.9 * Math.sqrt(control.errorK / Math.max(error, 1e-12))
    const byCure = (0.9 * control.change) / Math.max(change, 1e-12)
    // the first step after a pour knows nothing of its error
    this.dt = this.since === 0 ? dt : dt * Math.min(1.41, Math.max(0.2, Math.min(bySize, byCure)))
    this.since++
    for (const r of this.records) if (r.atS < this.timeS) writeSample(r, kernel, this.timeS)
    this.probes.write(kernel, this.timeS)
    if (this.events.length > 0 && this.timeS >= this.events[0]!) {
      const now = this.events.shift()!
      this.place(m => m.kind === 'resin' && m.atS === now)
    }
  }

  private refresh(ahead: number): void {
    if (this.turned <= REFRESH) return
    this.turned = 0
    for (const liquid of this.liquids) mixLiquid(liquid, this.kernel)
    this.kernel.conduct(this.layers, this.ahead * ahead)
    filmConductance(this.faces!, this.kernel)
  }

  /** Heat that leaves in the step through the outer faces, J; exact for the splitting. */
  private loss(step: FieldStep): number {
    if (this.kernel.lossW) return this.kernel.lossW(step) * step.dtS
    const { tempC, film } = this.kernel
    const tried = this.kernel.tried()
    const { cells } = this.faces!
    let lossW = 0
    for (let i = 0; i < cells.length; i++) {
      const c = cells[i]!
      lossW += film[c]! * (tempC[c]! + step.theta * tried[c]! - step.ambientC)
    }
    return lossW * step.dtS
  }

  private source(timeS: number): number {
    const { problem, kernel, cells } = this
    if (problem.source === undefined) return 0
    if (kernel.source === null) throw new Error('this kernel takes no heat from outside; the plain one does')
    problem.source(timeS, kernel.source)
    const { first, nx, ny, nz } = cells.shape
    let sum = 0
    for (let c = first; c < first + nx * ny * nz; c++) {
      if (!(kernel.kBase[c]! > 0)) kernel.source[c] = 0
      kernel.source[c]! *= cells.volumeM3[(c - first) % nz]!
      sum += kernel.source[c]!
    }
    return sum
  }
}
