import { decimals } from '../quantity/format.ts'
import { otherFace } from '../steps/step.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity, setValue } from './fix.ts'
import type { Work } from './work.ts'

/** What air leaves tacky on a polyester casting and is machined off, mm (common practice). */
const TACKY_SKIN_MM = 1

/** A resin of a family that is recorded, not predicted, and what that family asks for. */
export const resinFamily: Check = {
  id: 'resin-family',
  about: 'a resin other than epoxy: not predicted, and with habits of its own',
  cases: ['C20', 'C21'],
  run: work => [...notPredicted(work), ...tackySkin(work), ...damp(work)]
}

// Once for each resin, at its first pour.
function notPredicted(work: Work): Found[] {
  const seen = new Set<string>()
  return work.entries.pours.flatMap(({ index, id, at }): Found[] => {
    const choice = work.materials.resins[index]!
    const { family } = choice.record
    if (family === 'epoxy' || seen.has(choice.id)) return []
    seen.add(choice.id)
    const own =
      family === 'polyester'
        ? ` The face that air touches stays tacky with this family: that is normal, leave ${TACKY_SKIN_MM} mm to machine off.`
        : family === 'polyurethane'
          ? ' It reacts with water: whatever goes into it must be dry.'
          : ''
    return [
      {
        severity: 'caution',
        at,
        says: `${id} is ${family === 'other' ? 'of another family than epoxy' : family}: amounts are planned, but heat, times and windows are not predicted. Go by its data sheet, and try a small casting first.${own}`,
        basis: `families other than epoxy are recorded, not modelled${own === '' ? '' : '; habits of the family: common practice, no source'}`
      }
    ]
  })
}

function tackySkin(work: Work): Found[] {
  const last = work.entries.pours.findLast(p => p.value.kind === 'cast')
  if (last === undefined || work.materials.resins[last.index]!.record.family !== 'polyester') return []
  const face = otherFace(work.piece.down)
  const allowance = work.piece.flatten[face]
  if (allowance >= TACKY_SKIN_MM) return []
  const at = `/flatten/${face}`
  return [
    {
      severity: 'caution',
      at,
      says: `the ${face} of ${last.id} cures against air and stays tacky; only ${decimals(allowance, 2)} mm are taken off it, leave ${TACKY_SKIN_MM} mm.`,
      value: allowance,
      unit: 'mm',
      limit: TACKY_SKIN_MM,
      basis: 'skin of polyester that air touches, 1 mm to machine off: common practice, no source',
      fix: setQuantity(work.document, at, 'length', TACKY_SKIN_MM, 'up'),
      fixSays: `Take ${TACKY_SKIN_MM} mm off the ${face}`
    }
  ]
}

// Water in an inclusion foams polyurethane: the loss cannot be excluded while it is not known to be dry.
function damp(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at, value }) => {
    if (work.materials.resins[index]!.record.family !== 'polyurethane') return []
    return value.stones.flatMap((stones, j): Found[] => {
      if (stones.dry === 'dry') return []
      const { name } = work.materials.stones[index]![j]!
      const place = `${at}/stones/${j}`
      return [
        {
          severity: 'stop',
          at: place,
          says: `${name} in ${id} ${stones.dry === 'fresh' ? 'are not dry' : 'may not be dry'}, and this resin reacts with water: it foams, stays gummy and weeps. Dry them at about 60 °C until they weigh the same twice, a day apart.`,
          basis:
            'polyurethane takes up water and gives off gas: chemistry of the family; drying to constant mass: common practice',
          settledBy: 'weight of the inclusions, twice a day apart',
          fix: setValue(work.document, `${place}/dry`, 'dry'),
          fixSays: `Dry the ${name} first`
        }
      ]
    })
  })
}
