import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A dam that is not sealed to the base. */
export const dividerUnsealed: Check = {
  id: 'divider-unsealed',
  about: 'a dam between two pours that is not sealed to the base',
  cases: ['C24'],
  run
}

function run(work: Work): Found[] {
  if (!work.mould.needsMould) return []
  return work.piece.mould.dams.flatMap((dam, j): Found[] => {
    if (dam.sealed) return []
    const at = `/mould/dams/${j}`
    return [
      {
        severity: 'stop',
        at,
        says: `dam ${j + 1} is not sealed to the base: resin runs out under it and colours will join. Run sealant along its foot and up its ends, and fix it down so that it cannot float.`,
        basis: 'a liquid passes under what only stands on the base: common practice, no source',
        settledBy: 'water on one side of the dam',
        fix: setValue(work.document, `${at}/sealed`, true),
        fixSays: `Seal dam ${j + 1} to the base`
      }
    ]
  })
}
