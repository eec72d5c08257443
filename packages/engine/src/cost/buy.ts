import type { PourBatches } from '../cast/batches.ts'
import type { Materials } from '../cast/facts.ts'
import type { MouldPlan } from '../cast/mould.ts'
import type { FaceFinish } from '../finish/faces.ts'
import type { Piece } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { bounds } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'

/** One line of the buy list. Amounts in the line's own unit. */
export interface BuyLine {
  readonly group: 'resin' | 'colour' | 'stones' | 'timber' | 'mould' | 'finish' | 'hardware'
  readonly item: string
  readonly unit: 'g' | 'ml' | 'm' | 'm²' | 'piece'
  /** What the plan uses, wastage of the vessels included. */
  readonly need: number
  /** Need with the shop's spare share. */
  readonly withSpare: number
  readonly stock: number
  /** What to buy: whole packs where the shop knows packs, else the amount. */
  readonly buy: number
  readonly packs: readonly { readonly size: number; readonly count: number; readonly price: number | null }[]
  readonly cost: number | null
  readonly days: number | null
  readonly note: string
}

/** Everything to have at hand for all blanks started. */
export function buyList(input: {
  readonly stack: Stack
  readonly materials: Materials
  readonly batches: readonly (PourBatches | null)[]
  readonly mould: MouldPlan
  readonly faces: readonly FaceFinish[]
  readonly shop: Shop
  readonly blanks: number
  readonly moulds: number
}): BuyLine[] {
  const { stack, materials, batches, mould, faces, shop, blanks, moulds } = input
  const { piece } = stack
  const out: BuyLine[] = []
  const line = (
    group: BuyLine['group'],
    item: string,
    unit: BuyLine['unit'],
    need: number,
    note: string,
    spare = shop.spare
  ): void => {
    const known = shop.prices.find(p => p.item === item)
    const withSpare = need * (1 + spare / 100)
    const stock = known?.stock ?? 0
    const short = Math.max(0, withSpare - stock)
    const count = known === undefined ? 0 : Math.ceil(short / known.pack - 1e-9)
    out.push({
      group,
      item,
      unit,
      need,
      withSpare,
      stock,
      buy: known === undefined ? short : count * known.pack,
      packs: known === undefined || count === 0 ? [] : [{ size: known.pack, count, price: known.price }],
      cost: known === undefined ? null : count * known.price,
      days: known?.days ?? null,
      note
    })
  }
  for (const [id, g] of sums(piece, batches, blanks)) out.push(resinLine(id, g, stack, materials, shop))
  const pigments = new Map<string, number>()
  piece.pours.forEach((_, i) => {
    for (const t of materials.tints[i]!)
      add(pigments, t.pigment.id, (batches[i]?.mixedG ?? 0) * t.share * blanks)
  })
  for (const [id, g] of pigments) line('colour', id, 'g', g, 'weighed into the mix, inside its total')
  const stones = new Map<string, number>()
  piece.pours.forEach((pour, i) => {
    const total = stack.pours[i]!.stonesMl
    pour.stones.forEach((_, j) => {
      const record = materials.stones[i]![j]!
      add(stones, record.id, ((total / pour.stones.length) * blanks * record.densityKgM3) / 1000)
    })
  })
  for (const [id, g] of stones) line('stones', id, 'g', g, 'washed, dry')
  stack.geometry.timbers.forEach((t, i) => {
    const b = bounds(t.upper)
    const entry = stack.entries.timbers[i]!
    line(
      'timber',
      `${materials.timbers[i]!.name}: ${entry.id}`,
      'piece',
      blanks,
      `${Math.ceil(b.maxX - b.minX)} × ${Math.ceil(b.maxY - b.minY)} × ${Math.ceil(t.high - t.base)} mm as set in the mould; saw and plane allowance on top`,
      0
    )
  })
  const cuts = mould.cutList
  line('mould', materials.base.id, 'm²', cuts.baseAreaM2 * moulds, `base ${boardWords(cuts, 'base')}`)
  line(
    'mould',
    materials.walls.id === materials.base.id ? `${materials.walls.id} (walls)` : materials.walls.id,
    'm²',
    cuts.wallAreaM2 * moulds,
    `walls ${boardWords(cuts, 'wall along x')}; ${boardWords(cuts, 'wall along y')}`
  )
  if (materials.liner.id !== 'none')
    line('mould', materials.liner.id, 'm²', cuts.tapeAreaM2 * moulds, 'inside of the mould, without overlaps')
  line(
    'mould',
    'silicone-sealant',
    'm',
    cuts.sealantLengthM * moulds,
    `a bead along every joint, ${piece.mould.joints}`
  )
  for (const f of faces)
    if (f.coat !== null && f.needMl > 0)
      line(
        'finish',
        f.coat.id,
        'ml',
        f.needMl * blanks,
        `${f.face}, ${f.coats} coats on ${f.areaM2.toFixed(2)} m²`
      )
  stack.entries.hardware.forEach((h, i) => {
    line(
      'hardware',
      `${materials.hardware[i]!.name}: ${h.id}`,
      'piece',
      h.value.count * blanks,
      'measure yours before the cut is made',
      0
    )
  })
  return out
}

function boardWords(cuts: MouldPlan['cutList'], name: string): string {
  const b = cuts.boards.find(x => x.name === name)
  return b === undefined ? '' : `${b.count} of ${Math.ceil(b.lengthMm)} × ${Math.ceil(b.widthMm)} mm`
}

function sums(piece: Piece, batches: readonly (PourBatches | null)[], blanks: number): Map<string, number> {
  const out = new Map<string, number>()
  piece.pours.forEach((pour, i) => {
    const share = pour.tint.reduce((sum, t) => sum + t.percent / 100, 0)
    add(out, pour.resin, (batches[i]?.mixedG ?? 0) * (1 - share) * blanks)
  })
  return out
}

function add(map: Map<string, number>, key: string, value: number): void {
  map.set(key, (map.get(key) ?? 0) + value)
}

/** Resin: both parts together, in whole packs at least cost when the shop knows its packs. */
function resinLine(id: string, need: number, stack: Stack, materials: Materials, shop: Shop): BuyLine {
  const index = stack.piece.pours.findIndex(p => p.resin === id)
  const choice = materials.resins[index]!
  const withSpare = need * (1 + shop.spare / 100)
  const stock = choice.label?.stock ?? 0
  const short = Math.max(0, withSpare - stock)
  const packs = cheapestPacks(
    short,
    (choice.label?.packs ?? []).map(p => ({ size: p.mass, price: p.price ?? null }))
  )
  const bought = packs.reduce((sum, p) => sum + p.size * p.count, 0)
  const priced = packs.every(p => p.price !== null)
  const { massA, massB } = choice.mix
  const a = (need * massA) / (massA + massB)
  return {
    group: 'resin',
    item: id,
    unit: 'g',
    need,
    withSpare,
    stock,
    buy: packs.length > 0 ? bought : short,
    packs,
    cost:
      short === 0
        ? 0
        : packs.length > 0 && priced
          ? packs.reduce((sum, p) => sum + p.count * (p.price ?? 0), 0)
          : null,
    days: null,
    note: `A ${Math.ceil(a)} g and B ${Math.ceil(need - a)} g are used`
  }
}

/** Most packs of one size that are looked at. */
const MOST_PACKS = 400

/**
 * Whole packs that hold at least `needG` at the least price; without prices, with the least left over. Never
 * rounded down. Exact: the cheapest way to hold each amount in steps of the packs' common gram (dynamic
 * programme over grams / step).
 */
function cheapestPacks(
  needG: number,
  packs: readonly { readonly size: number; readonly price: number | null }[]
): BuyLine['packs'] {
  if (needG <= 0 || packs.length === 0) return []
  const priced = packs.every(p => p.price !== null)
  const step = Math.max(1, Math.min(...packs.map(p => p.size)) / 100)
  const target = Math.ceil(needG / step - 1e-9)
  if (target > 200_000) {
    const best = packs.reduce((a, b) => (rate(b, priced) < rate(a, priced) ? b : a))
    return [{ size: best.size, count: Math.ceil(needG / best.size - 1e-9), price: best.price }]
  }
  const cost = new Float64Array(target + 1).fill(Number.POSITIVE_INFINITY)
  const from = new Int32Array(target + 1).fill(-1)
  cost[0] = 0
  for (let t = 1; t <= target; t++) {
    packs.forEach((p, k) => {
      const before = Math.max(0, t - Math.floor(p.size / step + 1e-9))
      // A hair per pack, so that of two ways alike the one with fewer packs is taken.
      const c = cost[before]! + (priced ? p.price! : p.size) + 1e-9
      if (c < cost[t]!) {
        cost[t] = c
        from[t] = k
      }
    })
  }
  const counts = new Array<number>(packs.length).fill(0)
  for (let t = target, guard = 0; t > 0 && guard < MOST_PACKS * packs.length; guard++) {
    const k = from[t]!
    counts[k] = counts[k]! + 1
    t = Math.max(0, t - Math.floor(packs[k]!.size / step + 1e-9))
  }
  return packs.flatMap((p, k) =>
    counts[k]! > 0 ? [{ size: p.size, count: counts[k]!, price: p.price }] : []
  )
}

function rate(p: { size: number; price: number | null }, priced: boolean): number {
  return priced ? p.price! / p.size : 1 / p.size
}
