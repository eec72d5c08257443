import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import type { Face } from '../../piece/piece-schema.ts'
import type { Region } from '../../shape/region.ts'
import type { Stack } from '../../stack/stack.ts'
import type { Motions } from '../motion.ts'
import { BLOCK_STEP_MM, Block } from '../sweep/block.ts'
import { boxInProgram, type Datum, frameOf } from '../sweep/frame.ts'
import { Hollows } from '../sweep/hollow.ts'
import { Tally } from '../sweep/tally.ts'
import { type Comparison, compare } from './compare.ts'
import type { Guards } from './guards.ts'
import { Judge } from './judge.ts'
import { type LeastLeft, leastLeft } from './least-left.ts'
import { cutFree } from './part-free.ts'
import { Reach } from './reach.ts'
import { type Report, reportOf } from './report.ts'
import type { SmallMap } from './small-map.ts'
import { wantedBoxes } from './wanted-boxes.ts'

/** A program, the piece it runs over, and what it is held against. */
export interface ProveAsk {
  readonly stack: Stack
  /** The face that is up. */
  readonly up: Face
  readonly datum: Datum
  /** How many events of the stack have happened before the program. */
  readonly events: number
  /** How many have when it is done; null: what is wanted is not said, and nothing is compared. */
  readonly wantedEvents: number | null
  /** Where on the plan what is wanted counts; null: everywhere. An outline cut: the outline. */
  readonly mask: Region | null
  readonly cutterByTool: ReadonlyMap<number, CutterShape>
  readonly motions: Motions
  readonly cellMm: number
  readonly guards: Guards
}

/** What proving found. Places in program coordinates, mm. */
export interface Proof {
  readonly reports: readonly Report[]
  readonly removedMm3: number
  /** Lowest place of the tip in material; null when nothing was cut. */
  readonly deepestMm: number | null
  readonly leastLeft: readonly LeastLeft[]
  /** null when what is wanted was not said. */
  readonly comparison: Comparison | null
  /** Depth taken off, for a picture; its corner and the side of a pixel. */
  readonly depth: SmallMap
  /** What is left over the next layer or hollow under what was cut, at its least; its own pixels, the same corner. */
  readonly cover: SmallMap
  readonly minX: number
  readonly minY: number
  readonly pixelMm: number
  /** Most material taken: mm³ a minute, mm² of cross-section, and the line of the first. */
  readonly peak: { readonly mm3Min: number; readonly mm2: number; readonly line: number }
  readonly cells: number
  readonly cellMm: number
}

/** Moves, and millimetres of way, between two answers of how far it has come. */
const SLICE = 2000

/**
 * Sweeps a program over the piece as it stands and says what is wrong with it. A generator, so that whoever runs it may
 * stop: it yields the share done, 0..1, and returns the proof.
 * @throws RangeError for more cells than a block takes
 */
export function* proveProgram(ask: ProveAsk): Generator<number, Proof> {
  const { stack, motions, guards, cellMm } = ask
  const block = new Block({
    stack,
    frame: frameOf(stack.piece, ask.up, ask.datum),
    events: ask.events,
    wantedEvents: ask.wantedEvents,
    mask: ask.mask,
    cellMm,
    bedDeepMm: guards.bedDeepMm,
    guards: guards.things,
    closed: guards.closed,
    ...(guards.bedMm === undefined ? {} : { bedMm: guards.bedMm })
  })
  const judge = new Judge(block, new Hollows(), motions, ask.cutterByTool, guards)
  let work = 0
  for (let n = 0; n < motions.count; n++) {
    judge.step(n)
    // Few long moves are as much work as many short ones.
    work +=
      1 +
      (n === 0
        ? 0
        : Math.abs(motions.x[n]! - motions.x[n - 1]!) + Math.abs(motions.y[n]! - motions.y[n - 1]!) || 0)
    if (work < SLICE) continue
    work = 0
    yield (0.8 * n) / motions.count
  }
  judge.end()
  yield 0.8
  const reports = judge.reports()
  if (guards.held === 'waste') {
    for (const f of cutFree(block, stack.geometry.outline)) {
      const t = new Tally()
      t.add(motions.line[f.move]!, f.areaMm2, f.x, f.y, motions.z[f.move]!)
      reports.push(reportOf('part free', '', t, 0))
    }
  }
  yield 0.85
  let comparison: Comparison | null = null
  if (ask.wantedEvents !== null) {
    ensureWanted(block, ask)
    const comparing = compare(block, new Reach(block, cuttersIn(ask)), guards.tolMm, BLOCK_STEP_MM)
    for (;;) {
      const step = comparing.next()
      if (step.done) {
        comparison = step.value
        break
      }
      yield 0.85 + 0.15 * step.value
    }
    for (const [kind, d] of [
      ['left standing', comparison.left],
      ['cut away', comparison.cutAway]
    ] as const) {
      if (d.mostMm === 0) continue
      const t = new Tally()
      t.add(0, d.mostMm, d.x, d.y, 0)
      reports.push(reportOf(kind, '', t, comparison.detectsUpMm))
    }
  }
  const { least, depth, cover } = leastLeft(block)
  return {
    reports,
    removedMm3: judge.removedMm3,
    deepestMm: Number.isFinite(judge.deepestMm) ? judge.deepestMm : null,
    leastLeft: least,
    comparison,
    depth,
    cover,
    minX: block.minX,
    minY: block.minY,
    pixelMm: depth.every * cellMm,
    peak: judge.peak,
    cells: block.nx * block.ny,
    cellMm
  }
}

// Beside the tiles that the moves touched, those where something is to be cut; where nothing changes none are filled in.
function ensureWanted(block: Block, { stack, events, wantedEvents }: ProveAsk): void {
  const boxes = wantedBoxes(stack.events.slice(events, wantedEvents!), stack.castHeight)
  if (boxes === null) block.ensure(0, 0, block.nx - 1, block.ny - 1)
  for (const plan of boxes ?? []) {
    const b = boxInProgram(block.frame, plan)
    const cell = (v: number, from: number) => Math.floor((v - from) / block.cellMm)
    block.ensure(
      cell(b.minX, block.minX),
      cell(b.minY, block.minY),
      cell(b.maxX, block.minX),
      cell(b.maxY, block.minY)
    )
  }
}

function cuttersIn({ motions, cutterByTool }: ProveAsk): CutterShape[] {
  const used = new Set(motions.tool.subarray(0, motions.count))
  return [...cutterByTool].filter(([n]) => used.has(n)).map(([, c]) => c)
}
