import { commonMassG, HAIR_G } from './common-mass.ts'
import { cheapestPacks } from './packs.ts'
import type { Packs } from './paid.ts'
import type { Pack } from './price-row.ts'

/** A pack of resin: both parts in their ratio, or a bottle of one alone. g. */
export interface ResinPack extends Pack {
  readonly part: 'both' | 'A' | 'B'
}

/** Whole packs bought of a resin. */
export interface KitsBought {
  readonly packs: readonly Packs[]
  /** What no pack holds, g: there is none of that part, nor a kit. */
  readonly lackA: number
  readonly lackB: number
}

/** Steps of mass of one table at the most. */
const MOST_STEPS = 20_000

/**
 * Whole packs that hold at least so much of A and so much of B at the least price, without prices with the least mass:
 * kits hold both in the ratio of the resin, bottles one part alone. So A and B never come out unmatched.
 *
 *   least over kits of mass m:   kits(m) + A(needA − m·a) + B(needB − m·b)     a + b = 1
 *
 * Check: a general integer solver and every choice of counts on seeded needs (tests).
 * Limits: exact where the packs of a part share a measure of needs/20,000 or more (grams to 20 kg); beyond that a pack
 * counts as up to a step less than it holds.
 */
export function cheapestKits(
  needA: number,
  needB: number,
  shareA: number,
  packs: readonly ResinPack[]
): KitsBought {
  const of = (part: ResinPack['part']) => packs.filter(p => p.part === part)
  const [kits, onlyA, onlyB] = [of('both'), of('A'), of('B')]
  const shareB = 1 - shareA
  const all = Math.max(needA / shareA, needB / shareB)
  if (!(all > 0)) return { packs: [], lackA: 0, lackB: 0 }
  if (onlyA.length + onlyB.length === 0)
    return kits.length === 0
      ? { packs: [], lackA: Math.max(0, needA), lackB: Math.max(0, needB) }
      : { packs: cheapestPacks(all, kits), lackA: 0, lackB: 0 }
  // A part that nothing holds is missing; what is left to choose holds the other.
  if (kits.length === 0 && (onlyA.length === 0 || onlyB.length === 0)) {
    const a = onlyA.length === 0 ? 0 : needA
    const b = onlyB.length === 0 ? 0 : needB
    return {
      packs: [...parts(a, onlyA, 'A'), ...parts(b, onlyB, 'B')],
      lackA: Math.max(0, needA - a),
      lackB: Math.max(0, needB - b)
    }
  }
  const priced = packs.every(p => p.price !== null)
  const weigh = (p: ResinPack) => (priced ? p.price! : p.size)
  const a = leastTo(needA, onlyA, weigh)
  const b = leastTo(needB, onlyB, weigh)
  let best = { cost: Number.POSITIVE_INFINITY, mass: 0, counts: kits.map(() => 0) }
  for (const { mass, cost, counts } of kitMasses(all, kits, weigh)) {
    const sum = cost + a(needA - mass * shareA) + b(needB - mass * shareB)
    if (sum < best.cost - 1e-9) best = { cost: sum, mass, counts: counts() }
  }
  return {
    packs: [
      ...kits.flatMap((p, k) =>
        best.counts[k]! > 0 ? [{ size: p.size, count: best.counts[k]!, price: p.price }] : []
      ),
      ...parts(needA - best.mass * shareA, onlyA, 'A'),
      ...parts(needB - best.mass * shareB, onlyB, 'B')
    ],
    lackA: 0,
    lackB: 0
  }
}

function parts(need: number, packs: readonly ResinPack[], part: 'A' | 'B'): Packs[] {
  return need <= HAIR_G ? [] : cheapestPacks(need, packs).map(p => ({ ...p, part }))
}

/** What it takes at the least to hold so much or more. */
function leastTo(
  most: number,
  packs: readonly ResinPack[],
  weigh: (p: ResinPack) => number
): (need: number) => number {
  if (packs.length === 0) return need => (need <= HAIR_G ? 0 : Number.POSITIVE_INFINITY)
  const step = stepOf(most, packs)
  const table = new Float64Array(Math.max(0, Math.ceil(most / step)) + 1)
  for (let t = 1; t < table.length; t++) {
    table[t] = Number.POSITIVE_INFINITY
    for (const p of packs)
      table[t] = Math.min(table[t]!, table[Math.max(0, t - Math.floor(p.size / step + 1e-6))]! + weigh(p))
  }
  return need => table[Math.max(0, Math.min(table.length - 1, Math.ceil((need - HAIR_G) / step)))]!
}

interface KitMass {
  readonly mass: number
  readonly cost: number
  readonly counts: () => number[]
}

// Every mass that kits can make up, each at its least cost, up to the first that holds all.
function kitMasses(
  all: number,
  kits: readonly ResinPack[],
  weigh: (p: ResinPack) => number
): readonly KitMass[] {
  const none: KitMass = { mass: 0, cost: 0, counts: () => kits.map(() => 0) }
  if (kits.length === 0) return [none]
  const step = stepOf(all, kits)
  const steps = kits.map(p => Math.max(1, Math.floor(p.size / step + 1e-6)))
  const length = Math.ceil(all / step - 1e-6) + Math.max(...steps)
  const cost = new Float64Array(length + 1).fill(Number.POSITIVE_INFINITY)
  const from = new Int32Array(length + 1).fill(-1)
  cost[0] = 0
  const out: KitMass[] = [none]
  for (let t = 1; t <= length; t++) {
    kits.forEach((p, k) => {
      const before = t - steps[k]!
      // What holds all already takes no more.
      if (before < 0 || before * step >= all) return
      const c = cost[before]! + weigh(p)
      if (c < cost[t]!) {
        cost[t] = c
        from[t] = k
      }
    })
    if (from[t]! >= 0)
      out.push({
        mass: t * step,
        cost: cost[t]!,
        counts: () => {
          const counts = kits.map(() => 0)
          for (let at = t; at > 0; at -= steps[from[at]!]!) counts[from[at]!]!++
          return counts
        }
      })
  }
  return out
}

// The common measure of the packs, or what MOST_STEPS allow.
function stepOf(need: number, packs: readonly ResinPack[]): number {
  const least = Math.min(...packs.map(p => p.size))
  const fine = packs.map(p => p.size).reduce(commonMassG)
  return Math.min(least, Math.max(fine, need / MOST_STEPS))
}
