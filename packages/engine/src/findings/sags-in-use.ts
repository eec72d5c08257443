import type { Sag } from '../fits/in-use.ts'
import { decimals, formatMass } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { liesWell, movedSupports } from './on-supports.ts'
import type { Work } from './work.ts'

/** A top that sags between its supports, or whose overhang droops, more than is let pass (fits/in-use.ts). */
export const sagsInUse: Check = {
  id: 'sags-in-use',
  about: 'a top that sags on its legs or rails',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const use = work.inUse
  if (use === null) return []
  const { sag, overhang } = use
  const past = (s: Sag | null) => s !== null && s.mm > s.limitMm
  const found = past(sag) ? sag! : past(overhang) ? overhang! : null
  if (found === null) return []
  const what =
    found === sag
      ? `between supports ${decimals(found.overMm, 0)} mm apart it`
      : `its ${overhang!.side} side hangs over by ${decimals(found.overMm, 0)} mm and`
  const fix = movedSupports(work, u => liesWell(u, work.piece.supports!.leaning))
  const load = use.loadG > 0 ? ` with ${formatMass(use.loadG)} on it` : ' of its own mass'
  return [
    {
      severity: 'caution',
      at: '/supports',
      says: `${what} sags by about ${mm(found.mm)} over the years${load}; ${mm(found.limitMm)} is where it begins to be seen. ${fix === null ? 'Make it thicker, let the grain run from support to support, or put a rail between.' : 'Other places for its supports do.'}`,
      value: found.mm,
      unit: 'mm',
      band: found.bandMm,
      limit: found.limitMm,
      basis: `beam theory with the stiffness of timber and resin (Wood Handbook; memory); creep to twice the first sag and a ${found === sag ? 'three-hundredth of the span' : 'hundred-and-fiftieth of the overhang'}: common practice, no source. No claim of strength`,
      settledBy: 'its sag under a weight on trestles that far apart, a day long',
      ...(fix === null ? {} : { fix, fixSays: 'Move its supports' })
    }
  ]
}

function mm(value: number): string {
  return `${decimals(value, 1, 1)} mm`
}
