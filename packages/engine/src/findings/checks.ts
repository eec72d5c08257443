import { barkLeft } from './bark-left.ts'
import { baseSags } from './base-sags.ts'
import { batchHeat } from './batch-heat.ts'
import { batchesDrag } from './batches-drag.ts'
import { bitShort } from './bit-short.ts'
import { blanksFew } from './blanks-few.ts'
import { blushBetween } from './blush-between.ts'
import { bowAfter } from './bow-after.ts'
import { bubblesStay } from './bubbles-stay.ts'
import { bushCorner } from './bush-corner.ts'
import { cardUnused } from './card-unused.ts'
import { charLoose } from './char-loose.ts'
import { coatOverDam } from './coat-over-dam.ts'
import { coatRuns } from './coat-runs.ts'
import { coldBrittle } from './cold-brittle.ts'
import { coldMix } from './cold-mix.ts'
import { coldRoom } from './cold-room.ts'
import { cornerCrack } from './corner-crack.ts'
import { cornerRound } from './corner-round.ts'
import { cupMarks } from './cup-marks.ts'
import { cureShort } from './cure-short.ts'
import { cutBreaksOut } from './cut-breaks-out.ts'
import { cutMeetsStones } from './cut-meets-stones.ts'
import { cutThroughLayer } from './cut-through-layer.ts'
import { dampNight } from './damp-night.ts'
import { depthChanges } from './depth-changes.ts'
import { dividerUnsealed } from './divider-unsealed.ts'
import { faceNotReached } from './face-not-reached.ts'
import { facesUnlike } from './faces-unlike.ts'
import { factorsTogether } from './factors-together.ts'
import { figuresCrowd } from './figures-crowd.ts'
import type { Check, Finding } from './finding.ts'
import { findingOf } from './finding.ts'
import { fitCloses } from './fit-closes.ts'
import { fitLoose } from './fit-loose.ts'
import { floodCraters } from './flood-craters.ts'
import { floodNeedsDam } from './flood-needs-dam.ts'
import { floodThin } from './flood-thin.ts'
import { glassNear } from './glass-near.ts'
import { glossNotReached } from './gloss-not-reached.ts'
import { glueTrapped } from './glue-trapped.ts'
import { gritNoGrade } from './grit-no-grade.ts'
import { gritStepSkipped } from './grit-step-skipped.ts'
import { gritTooFine } from './grit-too-fine.ts'
import { handReach } from './hand-reach.ts'
import { handWay } from './hand-way.ts'
import { hardenerShort } from './hardener-short.ts'
import { hardwareFace } from './hardware-face.ts'
import { hardwareHeat } from './hardware-heat.ts'
import { hardwarePocket } from './hardware-pocket.ts'
import { holeOutside } from './hole-outside.ts'
import { hotterShallow } from './hotter-shallow.ts'
import { insertEdge } from './insert-edge.ts'
import { islandOutside } from './island-outside.ts'
import { jointSide } from './joint-side.ts'
import { labelDepth } from './label-depth.ts'
import { labelFigures } from './label-figures.ts'
import { largerThanMachine } from './larger-than-machine.ts'
import { layersSeen } from './layers-seen.ts'
import { leastBatch } from './least-batch.ts'
import { leftoverCup } from './leftover-cup.ts'
import { levelDrop } from './level-drop.ts'
import { liftHeavy } from './lift-heavy.ts'
import { lineNarrows } from './line-narrows.ts'
import { loadTooSoon } from './load-too-soon.ts'
import { machineFound } from './machine-checks.ts'
import { machineTooSoon } from './machine-too-soon.ts'
import { mainsTrade } from './mains-trade.ts'
import { markingFaint } from './marking-faint.ts'
import { maskOrCutAfter } from './mask-or-cut-after.ts'
import { mouldGap } from './mould-gap.ts'
import { mouldSoftens } from './mould-softens.ts'
import { movementJoint } from './movement-joint.ts'
import { narrowRecess } from './narrow-recess.ts'
import { nearEdge } from './near-edge.ts'
import { noMachine } from './no-machine.ts'
import { noRelease } from './no-release.ts'
import { oneFaceFlattened } from './one-face-flattened.ts'
import { opaqueCover } from './opaque-cover.ts'
import { openPocket } from './open-pocket.ts'
import { orderImpossible } from './order-impossible.ts'
import { outOfLevel } from './out-of-level.ts'
import { peakUnattended } from './peak-unattended.ts'
import { pilotWrong } from './pilot-wrong.ts'
import { planedHollow } from './planed-hollow.ts'
import { pocketShallow } from './pocket-shallow.ts'
import { pointThrough } from './point-through.ts'
import { porousInclusion } from './porous-inclusion.ts'
import { pourBelow } from './pour-below.ts'
import { pourHeat } from './pour-heat.ts'
import { pouredMore } from './poured-more.ts'
import { poursUnsettled } from './pours-unsettled.ts'
import { pressInResin } from './press-in-resin.ts'
import { priceMissing } from './price-missing.ts'
import { ratioByMass } from './ratio-by-mass.ts'
import { ratioOff } from './ratio-off.ts'
import { readingHot } from './reading-hot.ts'
import { readingOdd } from './reading-odd.ts'
import { recoatWindow } from './recoat-window.ts'
import { resinFamily } from './resin-family.ts'
import { resinOver } from './resin-over.ts'
import { resinShort } from './resin-short.ts'
import { sagsInUse } from './sags-in-use.ts'
import { scratchShows } from './scratch-shows.ts'
import { screwThrough } from './screw-through.ts'
import { sealHard } from './seal-hard.ts'
import { sealScant } from './seal-scant.ts'
import { sealedIn } from './sealed-in.ts'
import { sharpInclusion } from './sharp-inclusion.ts'
import { sledWeak } from './sled-weak.ts'
import { slotsShort } from './slots-short.ts'
import { stepFelt } from './step-felt.ts'
import { stockExpired } from './stock-expired.ts'
import { stonesDamp } from './stones-damp.ts'
import { stonesLarge } from './stones-large.ts'
import { stonesProud } from './stones-proud.ts'
import { stonesSink } from './stones-sink.ts'
import { swirlApart } from './swirl-apart.ts'
import { thinFloor } from './thin-floor.ts'
import { threadShort } from './thread-short.ts'
import { timberAir } from './timber-air.ts'
import { timberFloats } from './timber-floats.ts'
import { timberGap } from './timber-gap.ts'
import { timberRest } from './timber-rest.ts'
import { timberThin } from './timber-thin.ts'
import { timberWet } from './timber-wet.ts'
import { tintFamily } from './tint-family.ts'
import { tintOverCap } from './tint-over-cap.ts'
import { tintStrength } from './tint-strength.ts'
import { tipsOver } from './tips-over.ts'
import { turnsMud } from './turns-mud.ts'
import { unmixed } from './unmixed.ts'
import { wallBeside } from './wall-beside.ts'
import { wallBetween } from './wall-between.ts'
import { wallLow } from './wall-low.ts'
import { warmParts } from './warm-parts.ts'
import { waterTest } from './water-test.ts'
import { windowAway } from './window-away.ts'
import type { Work } from './work.ts'

/** Every check, in the order in which makers lose most. */
export const BENCH_CHECKS: readonly Check[] = [
  // Heat and batches.
  readingHot,
  pourHeat,
  nearEdge,
  poursUnsettled,
  factorsTogether,
  peakUnattended,
  labelDepth,
  labelFigures,
  batchHeat,
  batchesDrag,
  warmParts,
  leftoverCup,
  resinFamily,
  sharpInclusion,
  coldRoom,
  cureShort,
  dampNight,
  recoatWindow,
  blushBetween,
  windowAway,
  swirlApart,
  readingOdd,
  hotterShallow,
  layersSeen,
  // Ratio, mixing and amounts.
  leastBatch,
  ratioByMass,
  ratioOff,
  cupMarks,
  unmixed,
  coldMix,
  resinShort,
  hardenerShort,
  resinOver,
  stockExpired,
  pouredMore,
  // Bubbles and voids.
  bubblesStay,
  timberAir,
  porousInclusion,
  narrowRecess,
  floodThin,
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
  // Timber.
  timberFloats,
  barkLeft,
  timberWet,
  movementJoint,
  sealHard,
  sealScant,
  charLoose,
  timberGap,
  cornerCrack,
  oneFaceFlattened,
  bowAfter,
  planedHollow,
  timberRest,
  timberThin,
  stepFelt,
  // Colour.
  tintFamily,
  tintOverCap,
  tintStrength,
  cardUnused,
  turnsMud,
  markingFaint,
  // Cover and cuts.
  opaqueCover,
  cutThroughLayer,
  cutBreaksOut,
  thinFloor,
  cutMeetsStones,
  stonesProud,
  stonesDamp,
  stonesLarge,
  stonesSink,
  holeOutside,
  depthChanges,
  lineNarrows,
  figuresCrowd,
  glueTrapped,
  // Cuts by hand.
  handWay,
  bitShort,
  pointThrough,
  bushCorner,
  sledWeak,
  noMachine,
  coldBrittle,
  wallBetween,
  wallBeside,
  islandOutside,
  // Hardware.
  hardwarePocket,
  hardwareFace,
  pocketShallow,
  cornerRound,
  fitCloses,
  maskOrCutAfter,
  fitLoose,
  pressInResin,
  pilotWrong,
  insertEdge,
  threadShort,
  screwThrough,
  glassNear,
  handReach,
  hardwareHeat,
  sealedIn,
  mainsTrade,
  // The finish.
  facesUnlike,
  gritTooFine,
  gritStepSkipped,
  gritNoGrade,
  scratchShows,
  glossNotReached,
  coatOverDam,
  floodNeedsDam,
  floodCraters,
  coatRuns,
  faceNotReached,
  levelDrop,
  // In use.
  sagsInUse,
  tipsOver,
  slotsShort,
  // Order and quantity.
  orderImpossible,
  openPocket,
  pourBelow,
  largerThanMachine,
  machineTooSoon,
  loadTooSoon,
  liftHeavy,
  blanksFew,
  priceMissing
]

const RANK = { stop: 0, caution: 1, note: 2 } as const

/** All findings of a piece: stops first, then in the order of the checks. */
export function findingsOf(work: Work): Finding[] {
  const found = BENCH_CHECKS.flatMap(check => check.run(work).map(f => findingOf(check, f)))
  return byRank([...found, ...machineFound(work)])
}

/** Stops first, then cautions, then notes; as they stood among each other. */
export function byRank(findings: readonly Finding[]): Finding[] {
  return [...findings].sort((a, b) => RANK[a.severity] - RANK[b.severity])
}
