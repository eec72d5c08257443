import { decimals } from '../quantity/format.ts'
import type { Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Off ratio by more: a caution, and a stop (bands of practice, see resin/stoichiometry). */
export const CAUTION_ERROR = 0.05
export const STOP_ERROR = 0.1

/** How a pour is measured against its label. */
export interface Measured {
  /** Hardener over resin by mass as measured, over the same of the label, less one. */
  readonly error: number
  /** The label's ratio by volume is taken by mass. */
  readonly volumesWeighed: boolean
}

/** How a pour is measured; null where the document leaves it to the plan or the family has no such ratio. */
export function measuredOf(work: Work, index: number): Measured | null {
  const { measured } = work.piece.pours[index]!
  const { mix, label, record } = work.materials.resins[index]!
  // A polyester is started by a catalyst: it has a dose, not a ratio.
  if (measured === undefined || (record.family !== 'epoxy' && record.family !== 'polyurethane')) return null
  const { a, b, by } = measured
  const byMass = by === 'mass' ? b / a : (b * mix.densityBGMl) / (a * mix.densityAGMl)
  const said = label?.ratio
  const same = said !== undefined && Math.abs((b / a) * (said.a / said.b) - 1) < SAME
  return {
    error: byMass / (mix.massB / mix.massA) - 1,
    volumesWeighed: by === 'mass' && said?.by === 'volume' && same
  }
}

/** Two ratios within this are the same, typed with other roundings. */
const SAME = 0.005

/** The ratio by mass, A as 100. */
export function massRatioWords(work: Work, index: number): string {
  return `100 : ${decimals(partsOfB(work, index), 1)} by mass`
}

function partsOfB(work: Work, index: number): number {
  const { massA, massB } = work.materials.resins[index]!.mix
  return Number(((100 * massB) / massA).toFixed(1))
}

/** The fix that measures a pour by mass in its label's ratio. */
export function measureByMass(work: Work, index: number): Pick<Found, 'fix' | 'fixSays'> {
  const { at, id } = work.entries.pours[index]!
  const value = { a: 100, b: partsOfB(work, index), by: 'mass' }
  return {
    fix: setValue(work.document, `${at}/measured`, value),
    fixSays: `${id} ${massRatioWords(work, index)}`
  }
}
