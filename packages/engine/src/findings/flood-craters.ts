import { CRATERS_BELOW_MM } from '../coat/flood.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { rounded, setQuantity } from './fix.ts'
import type { FloodPlace } from './flood-needs-dam.ts'
import { floodsOf } from './flood-needs-dam.ts'
import type { Work } from './work.ts'

/** A flood coat so thin that it may draw back from spots that it does not wet. */
export const floodCraters: Check = {
  id: 'flood-craters',
  about: 'a flood coat so thin that it may open in craters',
  cases: [],
  run: work => floodsOf(work).flatMap(f => one(work, f))
}

function one(work: Work, { flood, at, name }: FloodPlace): Found[] {
  const [, deep] = flood.depthMm
  if (flood.kept || !(deep > 0) || deep >= CRATERS_BELOW_MM - 1e-9) return []
  const pour = flood.pour === null ? null : work.piece.pours[flood.pour]!
  const [key, now] =
    pour === null
      ? (['film', work.faces.find(f => f.face === flood.face)!.filmMm[1]] as const)
      : (['depth', pour.depth] as const)
  // Wet and cured, one coat and all of them, go together.
  const wanted = now === undefined ? null : (now * CRATERS_BELOW_MM) / deep
  return [
    {
      severity: 'note',
      at,
      says: `${name} is ${decimals(deep, 2)} mm thick when poured: below about 1 mm it may draw back into craters from spots that it does not wet. Spread it, wipe the face with spirit first, look again after ten minutes.`,
      value: deep,
      unit: 'mm',
      limit: CRATERS_BELOW_MM,
      basis: 'below about 1 mm craters are possible: common practice, no source',
      settledBy: 'a drop of water on the wiped face: it lies flat where resin will',
      ...(wanted === null
        ? {}
        : {
            fix: setQuantity(work.document, `${at}/${key}`, 'length', wanted, 'up', 0.05),
            fixSays: `${decimals(rounded(wanted, 'up', 0.05), 2)} mm`
          })
    }
  ]
}
