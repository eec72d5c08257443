import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import type { Work } from './work.ts'

/** Marks, edges or pins touched on the machine that disagree, or do not settle how the piece lies. */
export const liesUnsure: Check = {
  id: 'lies-unsure',
  about: 'places touched on the machine that do not agree, or leave the piece free to turn or shift',
  cases: [],
  run
}

const BASIS = 'least squares of the places touched against the drawing; the tolerance of the pins'

function run(work: Work): Found[] {
  const { settings, toleranceMm } = work.pins
  return settings.flatMap(({ up, place, names, unused }): Found[] => [
    ...unused.map(
      (why): Found => ({
        severity: 'caution',
        at: '',
        says: `what was touched with the ${up} up is not used: ${why}. The programs take the piece to lie as planned${place === null ? '' : ' or as the other places say'}.`,
        basis: BASIS,
        settledBy: 'the edges touched again: two places of one, far apart, and one of another'
      })
    ),
    ...(place === null || place.residualsMm[place.worst]! <= toleranceMm
      ? []
      : [
          {
            severity: 'caution' as const,
            at: '',
            says: `places touched with the ${up} up do not agree: at best ${names[place.worst]} is ${decimals(place.residualsMm[place.worst]!, 2)} mm off, ${decimals(toleranceMm, 2)} is borne. ${place.outliers.length > 0 ? `Without ${names[place.outliers[0]!]} the others agree: touch it again.` : 'Touch them again, each on a clean edge, and look that the zero has not moved.'}`,
            value: place.residualsMm[place.worst]!,
            unit: 'mm' as const,
            limit: toleranceMm,
            basis: BASIS,
            settledBy: 'the places touched again'
          }
        ])
  ])
}
