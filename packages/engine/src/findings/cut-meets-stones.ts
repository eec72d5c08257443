import { decimals } from '../quantity/format.ts'
import { deepen } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import { HARD_MOHS, SOFT_MOHS } from './stone-hardness.ts'
import type { Work } from './work.ts'

/** A cut that runs into stones. */
export const cutMeetsStones: Check = {
  id: 'cut-meets-stones',
  about: 'a cut that runs into a zone of stones or a placed stone',
  cases: ['O8', 'C83'],
  run
}

function run(work: Work): Found[] {
  return work.covers.flatMap(({ cut, stones }): Found[] => {
    const { id, at, value } = work.entries.cuts[cut]!
    const met = stones.filter(s => work.materials.stones[s.pour]![s.entry]!.mohs[1] > SOFT_MOHS)
    if (met.length === 0) return []
    // The hardest says what it does, the deepest how far the cut has to come up.
    const mohs = (s: (typeof met)[number]) => work.materials.stones[s.pour]![s.entry]!.mohs[1]
    const hardest = met.reduce((a, b) => (mohs(b) > mohs(a) ? b : a))
    const deepest = met.reduce((a, b) => (b.pastMm > a.pastMm ? b : a))
    const { name } = work.materials.stones[hardest.pour]![hardest.entry]!
    const stop = mohs(hardest) > HARD_MOHS
    const past = Number.isFinite(deepest.pastMm) ? deepest.pastMm : deepest.mm
    return [
      {
        severity: stop ? 'stop' : 'caution',
        at,
        says: `${id} runs ${decimals(past, 1)} mm into ${name} in ${work.entries.pours[hardest.pour]!.id}, near ${decimals(hardest.x, 0)}, ${decimals(hardest.y, 0)}, of hardness up to ${decimals(mohs(hardest), 1)}: ${stop ? 'they take the edge off a cutter, are torn out or throw it off its line; only diamond cuts them' : 'take light passes and expect a dull cutter'}.${value.through ? ' Move the cut or keep the stones clear of it.' : ''}`,
        value: past,
        unit: 'mm',
        limit: 0,
        basis:
          'stones where the document has them, single ones as a disc of their longest side; hardness: Mohs scale; up to 5 for a router: common practice, no source',
        settledBy: 'a photo of the stones before they are covered, with a rule beside them',
        ...deepen(work, cut, -deepest.pastMm, 'down')
      }
    ]
  })
}
