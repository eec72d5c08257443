import type { Condition } from '../condition.ts'
import { bowOver } from './bow-over.ts'
import { bubble } from './bubble.ts'
import { cutterBroken } from './cutter-broken.ts'
import { fitLoose } from './fit-loose.ts'
import { fitTight } from './fit-tight.ts'
import { heightOver } from './height-over.ts'
import { heightShort } from './height-short.ts'
import { holeMisplaced } from './hole-misplaced.ts'
import { hotBatch } from './hot-batch.ts'
import { leak } from './leak.ts'
import { missedMarbling } from './missed-marbling.ts'
import { missedRecoat } from './missed-recoat.ts'
import { pinsOff } from './pins-off.ts'
import { softCure } from './soft-cure.ts'
import { stonesProud } from './stones-proud.ts'
import { stonesSunk } from './stones-sunk.ts'
import { thicknessUnder } from './thickness-under.ts'
import { timberParted } from './timber-parted.ts'

/** Everything that goes differently and has ways on: one a file. What harms a person comes first. */
export const CONDITIONS: readonly Condition[] = [
  hotBatch,
  leak,
  heightShort,
  heightOver,
  missedMarbling,
  missedRecoat,
  softCure,
  stonesProud,
  stonesSunk,
  bubble,
  timberParted,
  bowOver,
  thicknessUnder,
  holeMisplaced,
  fitTight,
  fitLoose,
  cutterBroken,
  pinsOff
]
