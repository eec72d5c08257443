import { cutterPushes, cutterRubs, spindleFast } from './cutter-limits.ts'
import { cutterMissing } from './cutter-missing.ts'
import { cutterUnknown } from './cutter-unknown.ts'
import type { Check, Finding } from './finding.ts'
import { findingOf } from './finding.ts'
import { liesUnsure } from './lies-unsure.ts'
import { lineOverCutter } from './line-over-cutter.ts'
import { partLoose } from './part-loose.ts'
import { pinsAcrossGrain } from './pins-across-grain.ts'
import { pinsHalfTurn } from './pins-half-turn.ts'
import { pinsLoose } from './pins-loose.ts'
import { pinsMiss } from './pins-miss.ts'
import { pinsNearCut } from './pins-near-cut.ts'
import { pinsNone } from './pins-none.ts'
import { pinsUnlike } from './pins-unlike.ts'
import { pocketClosed } from './pocket-closed.ts'
import { tabThin } from './tab-thin.ts'
import type { Work } from './work.ts'

/**
 * Checks of what a machine cuts and of the pins that tie its faces: silent where the shop has no machine and the piece
 * names no pins.
 */
export const MACHINE_CHECKS: readonly Check[] = [
  lineOverCutter,
  pocketClosed,
  partLoose,
  tabThin,
  cutterMissing,
  cutterUnknown,
  spindleFast,
  cutterRubs,
  cutterPushes,
  pinsMiss,
  pinsUnlike,
  pinsNearCut,
  pinsHalfTurn,
  pinsNone,
  pinsAcrossGrain,
  pinsLoose,
  liesUnsure
]

/** What they find. */
export function machineFound(work: Work): Finding[] {
  if (work.shop.machine === undefined && work.piece.pins === undefined) return []
  return MACHINE_CHECKS.flatMap(check => check.run(work).map(found => findingOf(check, found)))
}
