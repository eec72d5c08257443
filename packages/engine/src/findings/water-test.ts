import { formatMass } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setValue } from './fix.ts'
import type { Work } from './work.ts'

/** A mould that was never filled with water. */
export const waterTest: Check = {
  id: 'water-test',
  about: 'a mould that is not tried with water before the pour',
  cases: ['C23'],
  run
}

function run(work: Work): Found[] {
  const tested = work.piece.mould.waterTest || work.readings.some(r => r.kind === 'water test')
  if (tested || !work.piece.pours.some(p => p.kind === 'cast')) return []
  return [
    {
      severity: 'caution',
      at: '/mould',
      says: `no water test of the mould: do not mix yet. Fill it to the level with ${formatMass(work.mould.waterG)} of water before the timber goes in, wait an hour, look under every joint; then dry it through.`,
      basis: 'water finds what resin would find later: common practice, no source; mass: area by level',
      settledBy: 'a water test',
      fix: setValue(work.document, '/mould/waterTest', true),
      fixSays: 'Test it with water first'
    }
  ]
}
