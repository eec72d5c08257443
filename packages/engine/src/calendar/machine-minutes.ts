import { machineOf } from '../cuts/run/machine.ts'
import type { TimedProgram } from '../programs/program-set.ts'
import { area, bounds, perimeter } from '../shape/measure.ts'
import { PRACTICE_MIN } from './practice-minutes.ts'
import type { MachineMinutes, TaskWork } from './task-work.ts'

/** Minutes by the programs themselves: each change of cutter, each test cut, each air cut, each run. */
export function minutesOfPrograms(programs: readonly TimedProgram[]): MachineMinutes[] {
  const out = new Map<number, { changes: number; testMin: number; airMin: number; runMin: number }>()
  let cutter: string | null = null
  for (const program of programs) {
    const first = program.made[0]!.operation.step
    const at = (step: number) => {
      const row = out.get(step) ?? { changes: 0, testMin: 0, airMin: 0, runMin: 0 }
      out.set(step, row)
      return row
    }
    at(first).testMin += program.test?.minutes ?? 0
    at(first).airMin += program.air?.minutes ?? 0
    for (const { operation, time } of program.made) {
      const row = at(operation.step)
      row.runMin += time.minutes
      if (operation.cutter.id !== cutter) row.changes++
      cutter = operation.cutter.id
    }
  }
  return [...out].map(([step, row]) => ({ step, ...row, by: 'programs' }))
}

/** Beside its neighbour a cutter goes over so much of its width, and turning and lifting take so much more (practice). */
const STEP_OVER = 0.45
const TURNING = 1.3
/** No pass is reckoned shallower than this, mm (practice). */
const LEAST_PASS_MM = 0.1

/**
 * Minutes before programs are made: way over feed.
 *
 *   way = area / (0.45·D) of what is cleared, or the line, times the passes of its depth       mm
 *   minutes = 1.3 · way / feed; an air cut as long; a test cut of five minutes
 *
 * Source: derived; step over and turning are practice.
 * Limits: good to a factor of two; the programs themselves say it properly.
 */
export function minutesByFeeds(work: TaskWork): MachineMinutes[] {
  const { machineCuts, stack, entries } = work
  const { geometry } = stack
  let cutter: string | null = null
  return machineCuts.cuts.flatMap((cut): MachineMinutes[] => {
    if (cut.run === null || !('cutter' in cut.choice)) return []
    const widthMm = cut.choice.cutter.shape.diameterMm
    const changes = cut.choice.cutter.id === cutter ? 0 : 1
    cutter = cut.choice.cutter.id
    const index = [...entries.cuts, ...entries.markings].find(e => e.at === cut.at)?.index ?? -1
    const region =
      cut.of === 'flatten' ? geometry.mould : cut.of === 'cut' ? (geometry.cutRegions[index] ?? null) : null
    const lines =
      cut.of === 'cut' ? geometry.cutLines[index] : cut.of === 'marking' ? geometry.markingLines[index] : null
    const along = (lines ?? []).reduce((sum, line) => sum + lineMm(line), 0)
    const around = work.piece.cuts[index]?.kind === 'outline' && cut.of === 'cut'
    const wayMm =
      region === null ? along : around ? perimeter(region) / 2 : area(region) / (STEP_OVER * widthMm)
    const depthMm = 'depthMm' in cut.need ? cut.need.depthMm : 0
    const passes = Math.max(1, Math.ceil(depthMm / Math.max(LEAST_PASS_MM, cut.run.depthMm)))
    const runMin = (TURNING * wayMm * passes) / cut.run.feedMmMin
    // One row stands for both faces: each is flattened by itself.
    const steps =
      cut.of === 'flatten' ? work.steps.flatMap((s, i) => (s.kind === 'flatten' ? [i] : [])) : [cut.step]
    return steps.map(step => ({
      step,
      changes,
      testMin: PRACTICE_MIN.testCut.each,
      airMin: runMin,
      runMin,
      by: 'feeds'
    }))
  })
}

// Points of a line lie flat, x and y in turn.
function lineMm(points: Float64Array): number {
  let sum = 0
  for (let i = 2; i < points.length; i += 2)
    sum += Math.hypot(points[i]! - points[i - 2]!, points[i + 1]! - points[i - 1]!)
  return sum
}

/** Minutes of a change of cutter on this machine; 0 without one. */
export function changeMin(work: Pick<TaskWork, 'shop'>): number {
  return work.shop.machine === undefined ? 0 : machineOf(work.shop).change
}

/** Area of the finished face, m². */
export function faceM2(work: Pick<TaskWork, 'stack'>): number {
  return area(work.stack.geometry.outline) / 1e6
}

/** Whether a piece is larger than its outline: its mould, m². */
export function mouldM2(work: Pick<TaskWork, 'stack'>): number {
  const b = bounds(work.stack.geometry.mould)
  return ((b.maxX - b.minX) * (b.maxY - b.minY)) / 1e6
}
