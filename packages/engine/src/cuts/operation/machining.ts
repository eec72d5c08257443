import type { Reading } from '../../piece/reading-schema.ts'
import type { Stack } from '../../stack/stack.ts'
import { settingsOf } from '../../steps/setting.ts'
import type { CutJob } from '../cut-job.ts'
import { frameOf } from '../pins/frame.ts'
import { measuredFrame } from '../pins/measured-frame.ts'
import type { PinFacts, PinPlan } from '../pins/pin-plan.ts'
import { pinPlan } from '../pins/pin-plan.ts'
import { chooseCutter } from '../run/choose.ts'
import { COLD_C } from '../run/cold.ts'
import type { Cutter } from '../run/cutters.ts'
import { cuttersOf } from '../run/cutters.ts'
import { feedsFor } from '../run/feeds.ts'
import { machineOf } from '../run/machine.ts'
import type { Bench } from './bench.ts'
import { Place } from './bench.ts'
import type { MachineSetting, NotMade, Operation, Wanted } from './operation.ts'
import { frameAt, positionsOf } from './position.ts'
import { wantedOfCut } from './wanted-cut.ts'
import { wantedOfEdges } from './wanted-edge.ts'
import { wantedOfFlatten, wantedOfIndexHoles, wantedOfPins } from './wanted-face.ts'
import { wantedOfMarking } from './wanted-mark.ts'
import { workBox } from './work-box.ts'

/** What a piece asks of the machine: settings, and operations in the order they are run. */
export interface Machining {
  readonly bench: Bench
  readonly settings: readonly MachineSetting[]
  readonly operations: readonly Operation[]
  readonly notMade: readonly NotMade[]
  readonly pins: PinPlan
  /** What its files' names begin with: '' but for the plug of an inlay. */
  readonly prefix: string
}

/** The stages machining is made from. */
export type MachiningInput = Pick<Bench, 'stack' | 'materials' | 'shop'> &
  PinFacts & { readonly readings: readonly Reading[] }

/**
 * The operations of a piece, cutters chosen and feeds reckoned; paths are made when they are asked for. null where
 * the shop has no machine, or nothing is cut by it.
 *
 * A face is flattened by machine where there is one. What stands round the outline after the last cut is sawn or
 * routed off by hand, unless a cut of kind outline takes it.
 */
export function machiningOf(input: MachiningInput, prefix = ''): Machining | null {
  const { stack, materials, shop } = input
  if (shop.machine === undefined || !byMachine(stack)) return null
  const bench: Bench = {
    stack,
    materials,
    shop,
    machine: machineOf(shop),
    box: cuttersOf(shop),
    tolMm: Math.min(0.02, Math.max(0.005, stack.piece.tolerance))
  }
  const pins = pinPlan(stack, stack.piece, shop, input)
  const operations: Operation[] = []
  const notMade: NotMade[] = []
  const settings = settingsOf(stack.steps).flatMap((setting): Omit<MachineSetting, 'index'>[] => {
    const planned = frameOf(stack.piece, setting, stack, pins.datum)
    const { frame, place, names, thickness } = measuredFrame(planned, setting, stack, pins, input.readings)
    const underMovedMm = frame.bedZ - planned.bedZ
    const box = workBox(stack, setting, frame)
    const stock = { ...box, minZ: box.minZ + underMovedMm }
    const clearMm = Math.max(0, stock.maxZ) + bench.machine.program.lift
    const whole = { setting, frame, position: null, stock, clearMm, place, names, thickness, underMovedMm }
    if (pins.index === null) return [whole]
    return positionsOf(frame, pins.index, setting.index === 0).map(position => ({
      ...whole,
      frame: frameAt(frame, position),
      position
    }))
  })
  const machineSettings = settings.map((s, index): MachineSetting => ({ ...s, index }))
  for (const on of machineSettings) {
    const indexed = indexStep(stack, on)
    const edged = edgeStep(stack, on)
    const make = (place: Place, all: readonly (Wanted | NotMade)[]) => {
      const queue = [...all]
      while (queue.length > 0) {
        const wanted = queue.shift()!
        const made = 'reason' in wanted ? wanted : operationOf(place, wanted, operations.length + 1)
        if ('reason' in made) {
          // What is not made is told once, not in every position.
          if (!notMade.some(n => n.at === made.at && n.name === made.name)) notMade.push(made)
          continue
        }
        operations.push(made)
        if ('after' in wanted) queue.unshift(...(wanted.after?.(made.cutter) ?? []))
      }
    }
    for (let i = on.setting.from; i <= on.setting.to; i++) {
      const place = new Place(bench, on, i)
      if (i === indexed) make(place, wantedOfIndexHoles(place))
      // Edges while the waste still holds the piece.
      if (i === edged) make(place, wantedOfEdges(place))
      make(place, wantedAt(place, pins))
    }
    if (edged > on.setting.to) {
      const place = new Place(bench, on, edged, on.setting.to)
      make(place, wantedOfEdges(place))
    }
  }
  if (operations.length + notMade.length === 0) return null
  return { bench, settings: machineSettings, operations, notMade, pins, prefix }
}

/** The step before which index holes are made: the one after the flattening, so that they go through less. */
function indexStep({ steps }: Pick<Stack, 'steps'>, { setting, position }: MachineSetting): number {
  if (position === null || position.makes.length === 0) return -1
  for (let i = setting.to; i >= setting.from; i--)
    if (steps[i]!.kind === 'flatten') return Math.min(setting.to, i + 1)
  return setting.from
}

/** The step before which the edges are worked: that which cuts the piece out, else after the last of the setting. */
function edgeStep({ steps }: Pick<Stack, 'steps'>, { setting }: MachineSetting): number {
  for (let i = setting.from; i <= setting.to; i++) if (steps[i]!.cut?.value.kind === 'outline') return i
  return setting.to + 1
}

/** Whether anything of the piece is cut by machine at all. */
function byMachine({ piece }: Pick<Stack, 'piece'>): boolean {
  const cuts = [...piece.cuts, ...piece.markings]
  return cuts.length === 0 || [...cuts, ...piece.edges].some(c => c.way === 'machine')
}

function wantedAt(place: Place, pins: PinPlan): Wanted[] {
  const step = place.bench.stack.steps[place.step]!
  switch (step.kind) {
    case 'drill pins':
      return wantedOfPins(place, pins)
    case 'flatten':
      return wantedOfFlatten(place)
    case 'cut':
      return step.cut!.value.way === 'machine' ? wantedOfCut(place, step.cut!) : []
    case 'mark':
      return step.marking!.value.way === 'machine' ? wantedOfMarking(place, step.marking!) : []
    default:
      return []
  }
}

function operationOf(place: Place, wanted: Wanted, number: number): Operation | NotMade {
  const { bench, on, step } = place
  const { stack, box, machine, shop, tolMm } = bench
  const listed = place.listed ?? step
  const at = wanted.at ?? stack.steps[listed]!.at
  const of = { setting: on.index, step: listed, at, name: wanted.name }
  const chosen = cutterFor(wanted, box.cutters)
  if ('reason' in chosen) return { ...of, ...chosen }
  const { cutter, why, limits } = chosen
  const run = feedsFor({
    cutter,
    met: wanted.met,
    operation: wanted.operation,
    machine,
    depthMm: wanted.topMm - wanted.floorMm,
    tolMm: TOLERANCE_MM,
    light: shop.climate.day < COLD_C || wanted.thin === true
  })
  const feeds = { ...run, ...wanted.feeds }
  const job: CutJob = {
    cutter: cutter.shape,
    feeds,
    topMm: wanted.topMm,
    floorMm: wanted.floorMm,
    clearMm: on.clearMm,
    tolMm,
    arcs: true
  }
  return {
    ...of,
    number,
    before: place.before,
    kind: wanted.kind,
    cutter,
    cutterWhy: why,
    limits,
    feeds,
    met: wanted.met,
    job,
    path: () => wanted.path(job, cutter)
  }
}

/** How far a wall may be off, mm: what a cutter may bend is reckoned from it. */
const TOLERANCE_MM = 0.1

function cutterFor(
  wanted: Wanted,
  cutters: readonly Cutter[]
):
  | { cutter: Cutter; why: string; limits: readonly string[] }
  | Pick<NotMade, 'says' | 'largestMm' | 'reason'> {
  if (wanted.cutterId !== undefined) {
    const cutter = cutters.find(c => c.id === wanted.cutterId)
    if (cutter !== undefined) return { cutter, why: 'named in the piece', limits: [] }
    return {
      says: `the shop has no cutter "${wanted.cutterId}" for the machine`,
      largestMm: null,
      reason: 'unknown'
    }
  }
  const choice = chooseCutter(wanted.need, cutters)
  return 'none' in choice ? choice.none : choice
}
