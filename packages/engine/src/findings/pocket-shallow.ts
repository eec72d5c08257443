import { decimals } from '../quantity/format.ts'
import { deepen, roomUnder } from './cut-fix.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A pocket less deep than what goes in. */
export const pocketShallow: Check = {
  id: 'pocket-shallow',
  about: 'a pocket less deep than the part that goes in',
  cases: ['C91'],
  run
}

function run(work: Work): Found[] {
  return work.fits.flatMap((fit): Found[] => {
    const { at, id, value } = work.entries.hardware[fit.hardware]!
    if (fit.part === null || fit.holeDepthMm === null || fit.record.pocket === null) return []
    const { depthMm } = fit.part
    // With the coats on its face and its floor, where it has any.
    const holeMm = fit.chain?.depthMm?.[1] ?? fit.holeDepthMm
    const proud = depthMm - holeMm
    if (proud <= 0.02) return []
    const cut = work.entries.cuts.find(c => c.id === value.in || c.value.for === id)!
    return [
      {
        severity: 'caution',
        at,
        says: `${id} is ${decimals(depthMm, 1)} mm deep, ${cut.id} ${decimals(holeMm, 1)} in the finished piece: it stands ${decimals(proud, 1)} mm out of the ${cut.value.face}.`,
        value: holeMm,
        unit: 'mm',
        limit: depthMm,
        basis: 'depth of the part as the piece gives it, else the catalogue: common practice, measure yours',
        settledBy: 'the part in the hand, measured',
        ...(deeperIsSafe(work, cut.index, proud) ? deepen(work, cut.index, proud, 'up') : {})
      }
    ]
  })
}

// Deeper, it neither breaks out nor shows: what it takes is there under it, and of every layer that hides.
function deeperIsSafe(work: Work, cut: number, byMm: number): boolean {
  const by = byMm + 0.1
  const layers = work.covers.find(c => c.cut === cut)?.layers ?? []
  return (
    roomUnder(work, cut, 0) > by &&
    layers.every(l => {
      const { meant, depth } = work.hiding[l.pour]!
      return !meant || depth === null || l.mm <= 0 || l.mm - by >= depth.centralMm
    })
  )
}
