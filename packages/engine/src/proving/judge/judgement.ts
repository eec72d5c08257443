import type { CutterShape } from '../../catalogue/cutter-shape.ts'
import type { Block } from '../sweep/block.ts'
import type { Tally } from '../sweep/tally.ts'
import type { Guards } from './guards.ts'
import { type Report, type ReportKind, reportOf } from './report.ts'
import type { Rubbed } from './rub.ts'

/** Material passed by less is rounding, mm. */
export const TOUCH_MM = 0.05
/** A cutter that does not cut in its middle may go straight into so much, mm. */
export const PLUNGE_MM = 0.2
/** What is watched up to the very edge of what is wanted: a path may stray over the middle of a cell there. */
const AT_EDGES: ReadonlySet<ReportKind> = new Set<ReportKind>(['far face', 'void', 'closed layer'])
/** Less of it than this is such a cell or two, mm². */
const EDGE_MM2 = 0.25

/**
 * What was counted while sweeping, as reports: what the moves did, what the block watched for, what rubbed. One mistake
 * is one report: of a pin or clamp that the cutter itself runs into, what shank or holder do to it is not said again,
 * nor (block.ts) is its stuff counted as depth of a cut.
 */
export function judgement(
  block: Block,
  tallies: ReadonlyMap<ReportKind, Tally>,
  rubbed: readonly Rubbed[],
  guards: Guards,
  cutterIn: (line: number) => CutterShape | undefined
): Report[] {
  const out: Report[] = []
  const add = (kind: ReportKind, name: string, t: Tally) => {
    if (t.count > 0) out.push(reportOf(kind, name, t, limitOf(kind, cutterIn(t.worstLine), guards)))
  }
  for (const [kind, t] of tallies) add(kind, '', t)
  block.watches.forEach((w, k) => {
    const t = block.tallies[k]!
    const grazed = AT_EDGES.has(w.kind) && t.places * block.cellMm ** 2 < EDGE_MM2
    if (!grazed) add(w.kind, w.name, t)
  })
  for (const { part, on, tally } of rubbed)
    if (on < 0) add(part, '', tally)
    else if (block.tallies[on]!.count === 0) add(part, block.watches[on]!.name, tally)
  return out
}

function limitOf(kind: ReportKind, cutter: CutterShape | undefined, guards: Guards): number {
  switch (kind) {
    case 'deeper than its edges':
    case 'shank rubs':
      return cutter?.fluteMm ?? 0
    case 'holder rubs':
      return cutter?.reachMm ?? 0
    case 'rapid through material':
      return TOUCH_MM
    case 'plunge':
      return PLUNGE_MM
    case 'bed':
      return guards.bedDeepMm
    case 'too much at once':
      return guards.mostMm3Min ?? 0
    default:
      return 0
  }
}
