import { inRange } from '../quantity/range.ts'
import type { Grade } from './grain.ts'
import { GRADES, gradeOf, skippedBetween, stepRatio } from './grain.ts'
import type { Sanded } from './scratch.ts'
import { scratchUm } from './scratch.ts'

/**
 * A ladder of grades: from the marks that the last tool left to the last grade wanted, each step removing all
 * marks of the one before.
 *
 *   passes = ⌈marks/(r·d)⌉, two at least      marks  depth to take off, µm: the tool's, then the last scratches
 *   minutes = passes·area/(w·v)               r      part of a grain that one pass takes off: 0.20 timber, 0.11 resin
 *                                             d      grain, µm;  w  half the disc, m;  v  30 mm/s
 *
 * A step is allowed while the grain falls by no more than 1.7 times and no more than one grade is left out. A
 * grade may begin when it clears the marks in three passes; none coarser than P80 does. Of all ladders allowed the
 * one of the fewest minutes is taken, a change of disc at two minutes (a shortest path over the grades, exact).
 *
 * Source: step of 1.5 to 1.7, one grade left out, removal in proportion to the grain: common practice, no
 * published source. r is set so that a step of 1.7 is clear in two passes crosswise; speed, overlap and change
 * are judgement: a square metre takes some 15 minutes a grade with a disc of 150 mm.
 * Check: from P80 to P320 by 80-120-180-240-320 or one as quick; every step within the rule; a search through
 * all ladders (test).
 *
 * Limits: flat faces, an orbital sander kept moving, discs changed in time. By hand it takes three times as long.
 */

/** Largest fall of the grain in one step (practice 1.5 to 1.7). */
export const LARGEST_STEP = 1.7
/** Grades that one step may leave out (practice). */
const MOST_LEFT_OUT = 1
const LEAST_PASSES = 2
/** Passes in which a grade should clear what the tool left; else begin coarser. */
const START_PASSES = 3
const COARSEST_START = 80
const CHANGE_MIN = 2
const PER_PASS: Readonly<Record<Sanded, number>> = { timber: 0.2, resin: 0.11 }
const SPEED_MM_PER_S = 30
/** Minutes that a disc cuts well: resin clogs it sooner (practice). */
const DISC_MIN: Readonly<Record<Sanded, number>> = { timber: 15, resin: 10 }

/** What is sanded, and with what. */
export interface Sanding {
  /** What the face shows: of two the slower counts. */
  readonly sanded: readonly Sanded[]
  readonly areaM2: number
  readonly discMm: number
  /** Minutes that a disc cuts; left out: as practice has it. */
  readonly discMinutes?: number
}

export interface LadderStep {
  readonly grade: Grade
  /** Grain of the step before over this one's; null for the first. */
  readonly ratio: number | null
  /** Depth of marks that it takes off, µm. */
  readonly removeUm: number
  readonly passes: number
  readonly minutes: number
  /** Discs used up, not rounded. */
  readonly discs: number
}

export interface Ladder {
  readonly steps: readonly LadderStep[]
  /** All of it, changes of disc too. */
  readonly minutes: number
  /** Depth that comes off in all, mm. */
  readonly offMm: number
}

/** The quickest ladder allowed from marks of a depth to a last grade. @throws RangeError for a grade that is none */
export function ladderTo(sanding: Sanding, marksUm: number, lastGrit: number): Ladder {
  const marks = marksOf(marksUm)
  const last = gradeOf(lastGrit)
  const grades = GRADES.filter(g => g.grit <= last.grit && (g.grit >= COARSEST_START || g === last))
  const tool = () => marks
  const starts = grades.filter(g => passesFor(sanding, g, tool) <= START_PASSES)
  const first = starts.length > 0 ? starts : [grades[0]!]
  // Shortest way to each grade, coarse to fine.
  const best: { minutes: number; from: number | null }[] = []
  grades.forEach((g, i) => {
    let here: { minutes: number; from: number | null } = { minutes: Number.POSITIVE_INFINITY, from: null }
    if (first.includes(g)) here = { minutes: minutesOf(sanding, g, tool), from: null }
    for (let k = 0; k < i; k++) {
      if (!stepAllowed(grades[k]!, g)) continue
      const minutes = best[k]!.minutes + minutesOf(sanding, g, scratchesIn(grades[k]!))
      // Of two as quick the one that begins finer.
      if (minutes < here.minutes + 1e-9) here = { minutes, from: k }
    }
    best.push(here)
  })
  const way: Grade[] = []
  for (let at: number | null = grades.length - 1; at !== null; at = best[at]!.from) way.unshift(grades[at]!)
  return ladderBy(sanding, marks, way)
}

/** A ladder by grades that are given, whether the steps are allowed or not. */
export function ladderBy(sanding: Sanding, marksUm: number, grades: readonly Grade[]): Ladder {
  const marks = marksOf(marksUm)
  const life = (kind: Sanded) => sanding.discMinutes ?? DISC_MIN[kind]
  const least = Math.min(...sanding.sanded.map(life))
  const steps = grades.map((grade, i): LadderStep => {
    const before = grades[i - 1]
    const marksIn = before === undefined ? () => marks : scratchesIn(before)
    const minutes = minutesOf(sanding, grade, marksIn)
    return {
      grade,
      ratio: before === undefined ? null : stepRatio(before, grade),
      removeUm: Math.max(0, ...sanding.sanded.map(marksIn)),
      passes: passesFor(sanding, grade, marksIn),
      minutes,
      discs: (minutes - CHANGE_MIN) / least
    }
  })
  return {
    steps,
    minutes: steps.reduce((sum, s) => sum + s.minutes, 0),
    offMm: steps.reduce((sum, s) => sum + s.removeUm, 0) / 1000
  }
}

/** Whether one grade may follow another. */
export function stepAllowed(coarse: Grade, fine: Grade): boolean {
  return (
    stepRatio(coarse, fine) <= LARGEST_STEP + 1e-9 && skippedBetween(coarse, fine).length <= MOST_LEFT_OUT
  )
}

/** The fewest grades that, put between two, bring every step within the largest. */
export function gradesBetween(coarse: Grade, fine: Grade): readonly Grade[] {
  const out: Grade[] = []
  let at = coarse
  while (stepRatio(at, fine) > LARGEST_STEP + 1e-9) {
    // As far as a step goes; the next grade where even that is too far.
    const reach = skippedBetween(at, fine).filter(g => stepRatio(at, g) <= LARGEST_STEP + 1e-9)
    const next = reach[reach.length - 1] ?? skippedBetween(at, fine)[0]
    if (next === undefined) break
    out.push(next)
    at = next
  }
  return out
}

// The middle of the band: that to which the passes of a step are set.
function scratchesIn(grade: Grade): (kind: Sanded) => number {
  return kind => scratchUm(grade.grainUm, kind)[1]
}

// Marks and removal are the material's own; a face of two is done when the slower one is.
function passesFor({ sanded }: Sanding, grade: Grade, marksIn: (kind: Sanded) => number): number {
  const each = sanded.map(kind => Math.ceil(marksIn(kind) / (PER_PASS[kind] * grade.grainUm) - 1e-9))
  return Math.max(LEAST_PASSES, ...each)
}

function minutesOf(sanding: Sanding, grade: Grade, marksIn: (kind: Sanded) => number): number {
  const mm2PerMin = (discMmOf(sanding) / 2) * SPEED_MM_PER_S * 60
  const area = 1e6 * inRange('area', sanding.areaM2, 0, 1000, 'm²')
  return CHANGE_MIN + (passesFor(sanding, grade, marksIn) * area) / mm2PerMin
}

function discMmOf({ discMm }: Sanding): number {
  return inRange('disc', discMm, 20, 500, 'mm')
}

function marksOf(um: number): number {
  return inRange('marks to take off', um, 0, 100_000, 'µm')
}
