import { decimals } from '../quantity/format.ts'
import { moveIn, wallOf, wellInside } from './edge-wall.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** A threaded insert so near an edge that it breaks out as it is screwed in. */
export const insertEdge: Check = {
  id: 'insert-edge',
  about: 'a threaded insert nearer to the edge than its own diameter',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const { outline, cutRegions } = work.stack.geometry
  return work.fits.flatMap((fit): Found[] => {
    const { chain, part, record } = fit
    if (record.kind !== 'threaded insert' || part === null || chain?.of !== 'cut') return []
    const cut = work.entries.cuts[chain.index]!
    const region = cutRegions[chain.index] ?? null
    const least = part.widthMm
    if (region === null || wellInside(region, outline, least)) return []
    const wall = wallOf(region, outline, least)
    // Past the edge, or next to nothing left: that is said of the hole itself.
    if (wall.mm >= least - 1e-6 || wall.mm <= 1e-6) return []
    const { id } = work.entries.hardware[fit.hardware]!
    return [
      {
        severity: 'caution',
        at: cut.at,
        says: `${cut.id} for ${id} leaves a wall of ${decimals(wall.mm, 1)} mm to the edge, near ${decimals(wall.x, 0)}, ${decimals(wall.y, 0)}: an insert ${decimals(least, 1)} mm across breaks out there as it is screwed in. Leave as much as it is across.`,
        value: wall.mm,
        unit: 'mm',
        limit: least,
        basis: 'wall round a screw-in insert at least its outer diameter: common practice, no source',
        settledBy: 'one screwed into an offcut at that distance',
        ...moveIn(work, cut, region, wall, least)
      }
    ]
  })
}
