import { decimals, formatMass } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** What a scale or a rounded depth makes no difference of, share of the mass. */
const SLACK = 0.02

/** A seal coat with less resin than the pores of its timbers are known to take. */
export const sealScant: Check = {
  id: 'seal-scant',
  about: 'too little resin in a seal coat for the pores of its timbers',
  cases: [],
  run
}

function run(work: Work): Found[] {
  const seals = work.timberFacts.flatMap(f => (f.seal === null ? [] : [{ ...f.seal, timber: f.timber }]))
  if (seals.length === 0) return []
  const wanted = seals.reduce((sum, s) => sum + s.massG[0], 0)
  const pours = work.entries.pours.filter(p => p.value.kind === 'seal')
  const mixed = (index: number) => work.batches[index]?.mixedG ?? Number.POSITIVE_INFINITY
  const have = pours.reduce((sum, p) => sum + mixed(p.index), 0)
  if (pours.length === 0 || have >= wanted * (1 - SLACK)) return []
  const { id, at, value, index } = pours[0]!
  const times = wanted / have
  const typed = value.depth !== undefined ? 'depth' : value.mass !== undefined ? 'mass' : null
  const goal = typed === null ? 0 : times * value[typed]!
  const areaM2 = seals.reduce((sum, s) => sum + s.areaM2, 0)
  return [
    {
      severity: 'note',
      at: `${at}${typed === null ? '' : `/${typed}`}`,
      says: `${id} is ${formatMass(have)} over ${decimals(areaM2, 2)} m² of timber, ${decimals(have / areaM2, 0)} g a m²; ${[...new Set(seals.map(s => s.because))].join(' and ')} take ${decimals(Math.min(...seals.map(s => s.gPerM2[0])), 0)} to ${decimals(Math.max(...seals.map(s => s.gPerM2[1])), 0)}, so dry spots stay that give off air. Mix ${formatMass(wanted)} at least.`,
      value: have,
      unit: 'g',
      limit: wanted,
      basis: 'brushed seal coats, g a m² by pores and char: common practice, no source',
      settledBy: 'a weighed pot brushed out on an offcut of known size',
      ...(typed === null || index < 0
        ? {}
        : {
            fix: setQuantity(
              work.document,
              `${at}/${typed}`,
              typed === 'depth' ? 'length' : 'mass',
              goal,
              'up',
              typed === 'depth' ? 0.01 : 1
            ),
            fixSays: `Mix ${formatMass(wanted)} of ${id}`
          })
    }
  ]
}
