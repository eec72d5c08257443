import { baseSags } from './base-sags.ts'
import { batchHeat } from './batch-heat.ts'
import { blanksFew } from './blanks-few.ts'
import { coldRoom } from './cold-room.ts'
import { cupMarks } from './cup-marks.ts'
import { dampNight } from './damp-night.ts'
import { dividerUnsealed } from './divider-unsealed.ts'
import type { Check, Finding } from './finding.ts'
import { findingOf } from './finding.ts'
import { jointSide } from './joint-side.ts'
import { labelDepth } from './label-depth.ts'
import { leastBatch } from './least-batch.ts'
import { leftoverCup } from './leftover-cup.ts'
import { loadTooSoon } from './load-too-soon.ts'
import { machineTooSoon } from './machine-too-soon.ts'
import { mouldGap } from './mould-gap.ts'
import { mouldSoftens } from './mould-softens.ts'
import { noRelease } from './no-release.ts'
import { opaqueCover } from './opaque-cover.ts'
import { outOfLevel } from './out-of-level.ts'
import { pourHeat } from './pour-heat.ts'
import { pouredMore } from './poured-more.ts'
import { ratioByMass } from './ratio-by-mass.ts'
import { ratioOff } from './ratio-off.ts'
import { recoatWindow } from './recoat-window.ts'
import { resinFamily } from './resin-family.ts'
import { resinOver } from './resin-over.ts'
import { resinShort } from './resin-short.ts'
import { sharpInclusion } from './sharp-inclusion.ts'
import { wallLow } from './wall-low.ts'
import { waterTest } from './water-test.ts'
import type { Work } from './work.ts'

/** Every check, in the order in which makers lose most. */
export const CHECKS: readonly Check[] = [
  // Heat and batches.
  pourHeat,
  labelDepth,
  batchHeat,
  leftoverCup,
  resinFamily,
  sharpInclusion,
  coldRoom,
  dampNight,
  recoatWindow,
  // Ratio, mixing and amounts.
  leastBatch,
  ratioByMass,
  ratioOff,
  cupMarks,
  resinShort,
  resinOver,
  pouredMore,
  // The mould.
  wallLow,
  baseSags,
  outOfLevel,
  mouldGap,
  waterTest,
  jointSide,
  dividerUnsealed,
  noRelease,
  mouldSoftens,
  // Cover and cuts.
  opaqueCover,
  // Order and quantity.
  machineTooSoon,
  loadTooSoon,
  blanksFew
]

const RANK = { stop: 0, caution: 1, note: 2 } as const

/** All findings of a piece: stops first, then in the order of the checks. */
export function findingsOf(work: Work): Finding[] {
  return CHECKS.flatMap(check => check.run(work).map(found => findingOf(check, found))).sort(
    (a, b) => RANK[a.severity] - RANK[b.severity]
  )
}
