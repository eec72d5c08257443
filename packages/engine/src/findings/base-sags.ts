import { SAG_LIMIT_MM } from '../cast/mould.ts'
import { decimals } from '../quantity/format.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** A base that hangs between its bearers under the resin. */
export const baseSags: Check = {
  id: 'base-sags',
  about: 'a mould base that sags between its bearers',
  cases: ['O16'],
  run
}

function run(work: Work): Found[] {
  const { base } = work.materials
  const { needsMould, sag, bearers, widestBearers } = work.mould
  if (!needsMould || work.piece.mould.bearers === undefined) return []
  if (!base.spans) return [mustLie(work)]
  if (sag === null || widestBearers === null || sag <= SAG_LIMIT_MM * (1 + 1e-9)) return []
  const { down, flatten } = work.piece
  const allowance = flatten[down]
  const stop = sag > allowance
  const spacing = Math.floor(widestBearers)
  return [
    {
      severity: stop ? 'stop' : 'caution',
      at: '/mould/bearers',
      says: `the base, ${base.name}, sags ${decimals(sag, sag < 1 ? 2 : 1)} mm between bearers ${decimals(bearers, 0)} mm apart under what is cast on it: the ${down} comes out that much round${stop ? `, more than the ${decimals(allowance, 1)} mm flattening takes off it` : ''}, and takes that much more resin. ${spacing} mm apart it stays within ${SAG_LIMIT_MM} mm.`,
      value: sag,
      unit: 'mm',
      limit: stop ? allowance : SAG_LIMIT_MM,
      basis: `one span, simply supported (Euler-Bernoulli), modulus of the board ${base.modulusPa / 1e9} GPa (${base.confidence}), resin and board as load; under days of load it creeps to ${decimals(1 + base.creepFactor, 1)} times that at most; 0.2 mm: common practice`,
      settledBy: 'a straightedge on the loaded base',
      fix: setQuantity(work.document, '/mould/bearers', 'length', spacing, 'down', 1),
      fixSays: `Bearers ${spacing} mm apart`
    }
  ]
}

function mustLie(work: Work): Found {
  const { base } = work.materials
  return {
    severity: 'caution',
    at: '/mould/bearers',
    says: `${base.name} does not carry a load between bearers: lay it flat on a board.`,
    basis: `${base.name}: ${base.note ?? 'no board that spans'} (catalogue, ${base.confidence})`,
    fix: [{ op: 'remove', path: '/mould/bearers' }],
    fixSays: 'Lay it on a flat board'
  }
}
