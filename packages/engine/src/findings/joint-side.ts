import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Joints of the mould that are sealed on one side, or only taped. */
export const jointSide: Check = {
  id: 'joint-side',
  about: 'joints sealed on one side only, or only taped',
  cases: ['C23', 'C24'],
  run
}

function run(work: Work): Found[] {
  const { joints } = work.piece.mould
  const { base, liner } = work.materials
  // A mould in one piece, or a film in one piece, has no joint that resin reaches.
  if (!work.mould.needsMould) return []
  if (joints === 'inside and outside' || base.material === 'silicone' || liner.seals) return []
  return [
    {
      severity: 'caution',
      at: '/mould/joints',
      says:
        joints === 'tape only'
          ? 'the joints of the mould are only taped: resin creeps through and under tape. Run a bead of sealant inside and outside along every joint.'
          : `the joints of the mould are sealed ${joints} only: one nick and it leaks for hours. Run a bead inside and outside along every joint.`,
      basis: 'a bead inside and outside every joint: common practice, no source',
      settledBy: 'a water test',
      fix: setValue(work.document, '/mould/joints', 'inside and outside'),
      fixSays: 'Seal inside and outside'
    }
  ]
}
