import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** Inclusions that are not known to be dry, in a resin that does not react with water. */
export const stonesDamp: Check = {
  id: 'stones-damp',
  about: 'stones or plant matter cast in damp',
  cases: ['C06', 'C21', 'C46'],
  run
}

function run(work: Work): Found[] {
  return work.entries.pours.flatMap(({ index, id, at, value }) => {
    // Polyurethane foams with water: that is a finding of the family.
    if (work.materials.resins[index]!.record.family === 'polyurethane') return []
    return value.stones.flatMap((stones, j): Found[] => {
      if (stones.dry === 'dry') return []
      const record = work.materials.stones[index]![j]!
      const organic = record.kind === 'organic'
      const place = `${at}/stones/${j}`
      return [
        {
          // Fresh plant matter rots for certain, however well it looks on the day.
          severity: organic && stones.dry === 'fresh' ? 'stop' : 'caution',
          at: place,
          says: `${record.name} in ${id} ${stones.dry === 'fresh' ? 'are not dry' : 'may not be dry'}: ${organic ? 'fresh plant matter shrinks away from the resin, rots in it, and steams when it warms' : 'water on them leaves cloudy resin, bubbles and a film that does not hold'}. Dry them until they weigh the same twice, a day apart${organic ? ': pressed about 5 to 10 days, in a drying agent 2 to 5, in air 7 to 14; then seal them' : ''}.`,
          basis: `drying to constant mass before casting: common practice, no source${organic ? '; days of drying: a weak source' : ''}`,
          settledBy: 'weight of the inclusions, twice a day apart',
          fix: setValue(work.document, `${place}/dry`, 'dry'),
          fixSays: `Dry the ${record.name} first`
        }
      ]
    })
  })
}
