import type { HardwareFit } from '../fits/hardware.ts'
import { decimals } from '../quantity/format.ts'
import { nearest } from '../shape/measure.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** Hands of two movements that pass nearer than this touch when one is bent or loose, mm (judgement). */
const APART_MM = 3

/** Hands too long for their movement, for the dial, or for a neighbour's. */
export const handReach: Check = {
  id: 'hand-reach',
  about: 'hands longer than their movement turns, than the dial, or that meet a neighbour’s',
  cases: [],
  run: work => work.fits.flatMap(fit => ofHand(work, fit))
}

function ofHand(work: Work, fit: HardwareFit): Found[] {
  const { at, id, value } = work.entries.hardware[fit.hardware]!
  const { hand } = value
  if (hand === undefined) return []
  const limits = [torque(fit), ...neighbours(work, fit), dial(work, fit)].filter(l => l !== null)
  const least = limits.reduce<Limit | null>((a, b) => (a === null || b.mm < a.mm ? b : a), null)
  if (least === null || hand <= least.mm + 1e-6) return []
  return [
    {
      severity: 'caution',
      at,
      says: `The longest hand of ${id} reaches ${decimals(hand, 0)} mm; ${least.words}.`,
      value: hand,
      unit: 'mm',
      limit: least.mm,
      basis: least.basis,
      settledBy: 'the hand and the sheet of the movement, measured and read',
      ...(least.mm < 1
        ? {}
        : {
            fix: setQuantity(work.document, `${at}/hand`, 'length', least.mm, 'down', 0.5),
            fixSays: `A hand of at most ${decimals(Math.floor(least.mm * 2) / 2, 1)} mm`
          })
    }
  ]
}

interface Limit {
  readonly mm: number
  readonly words: string
  readonly basis: string
}

function torque({ record }: HardwareFit): Limit | null {
  if (record.shaft === null) return null
  const [, most] = record.shaft.handReachMm
  return {
    mm: most,
    words: `a ${record.name} turns hands of up to about ${decimals(most, 0)}: longer ones stop it or run slow upwards`,
    basis: 'reach of hands by kind of movement: common practice, no source'
  }
}

// On a dial the hand stays inside the edge; a hand may be meant to pass it, so it is said as a caution.
function dial(work: Work, fit: HardwareFit): Limit | null {
  const inside = -nearest(work.stack.geometry.outline, fit.x, fit.y).distanceMm
  return inside <= 0
    ? null
    : {
        mm: inside,
        words: `the edge of the piece is ${decimals(inside, 0)} off: it stands out over it and catches`,
        basis: 'distance on the plan to the finished outline'
      }
}

function neighbours(work: Work, fit: HardwareFit): Limit[] {
  return work.fits.flatMap((other): Limit[] => {
    const { id, value } = work.entries.hardware[other.hardware]!
    if (other === fit || other.record.shaft === null) return []
    const apart = Math.hypot(other.x - fit.x, other.y - fit.y)
    const mm = apart - (value.hand ?? 0) - APART_MM
    return [
      {
        mm,
        words: `${id} is ${decimals(apart, 0)} off${value.hand === undefined ? '' : ` with a hand of ${decimals(value.hand, 0)}`}: they meet`,
        basis: 'distance of the middles on the plan; 3 mm between hands: judgement'
      }
    ]
  })
}
