import type { PourBatches } from '../cast/batches.ts'
import type { Materials } from '../cast/facts.ts'
import { fillOfMarking } from '../cast/fill.ts'
import type { MouldPlan } from '../cast/mould.ts'
import type { CoatRecord } from '../catalogue/coat.ts'
import type { FaceFinish } from '../finish/faces.ts'
import type { BoardPiece } from '../mould/cutlist.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Shop } from '../piece/shop-schema.ts'
import { decimals } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import type { Stack } from '../stack/stack.ts'
import { abrasiveNeeds } from './abrasives.ts'
import { add, pigmentNeeds, resinNeeds } from './needs.ts'
import type { Packs } from './packs.ts'
import { cheapestPacks } from './packs.ts'
import { pricedIn } from './price-row.ts'

/**
 * One line of the buy list. Amounts in the line's own unit, rounded up to what is bought or weighed: whole g,
 * ml and pieces, hundredths of m and m².
 */
export interface BuyLine {
  readonly group: 'resin' | 'colour' | 'stones' | 'timber' | 'mould' | 'finish' | 'hardware'
  /** Id of the catalogue or the shop, by which the shop's prices are found. */
  readonly item: string
  /** What it is called. */
  readonly name: string
  readonly unit: 'g' | 'ml' | 'm' | 'm²' | 'piece'
  /** What the plan uses, wastage of the vessels included. */
  readonly need: number
  /** Need with the shop's spare share. */
  readonly withSpare: number
  readonly stock: number
  /** What to buy: whole packs where the shop knows packs, else the amount. */
  readonly buy: number
  readonly packs: readonly Packs[]
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
  /** Thickness of the board each timber is cut from, mm; null where none is reckoned. */
  readonly boardsMm: readonly (number | null)[]
}): BuyLine[] {
  const { stack, materials, batches, mould, faces, shop, blanks, moulds, boardsMm } = input
  const { piece } = stack
  const out: BuyLine[] = []
  const line = (
    group: BuyLine['group'],
    [item, name]: readonly [id: string, name: string],
    unit: BuyLine['unit'],
    need: number,
    note: string,
    spare = shop.spare
  ): void => {
    if (!(need > 0)) return
    const { row, leftAside } = pricedIn(shop, item, unit)
    const known = row ?? undefined
    const withSpare = need * (1 + spare / 100)
    const stock = known?.stock ?? 0
    const short = Math.max(0, withSpare - stock)
    const count = known === undefined ? 0 : Math.ceil(short / known.pack - 1e-9)
    out.push({
      group,
      item,
      name,
      unit,
      need: up(need, unit),
      withSpare: up(withSpare, unit),
      stock,
      buy: known === undefined ? up(short, unit) : count * known.pack,
      packs: known === undefined || count === 0 ? [] : [{ size: known.pack, count, price: known.price }],
      cost: known === undefined ? null : count * known.price,
      days: known?.days ?? null,
      note: leftAside === '' ? note : `${note}; ${leftAside}`
    })
  }
  const fills = piece.markings.flatMap((m, k) =>
    m.filled === undefined ? [] : [fillOfMarking(stack, materials, shop, k)]
  )
  const resins = [...materials.resins, ...fills.map(f => f.resin)]
  for (const [id, g] of resinNeeds(piece, batches, fills, blanks))
    if (g > 0) out.push(resinLine(resins.find(r => r.id === id)!, g, shop))
  for (const [pigment, g] of pigmentNeeds(stack, materials, batches, fills, blanks))
    line('colour', [pigment.id, pigment.name], 'g', g, 'weighed into the mix, inside its total')
  const stones = new Map<Materials['stones'][number][number], number>()
  piece.pours.forEach((pour, i) => {
    const total = stack.pours[i]!.stonesMl
    pour.stones.forEach((_, j) => {
      const record = materials.stones[i]![j]!
      add(stones, record, ((total / pour.stones.length) * blanks * record.densityKgM3) / 1000)
    })
  })
  for (const [stone, g] of stones) line('stones', [stone.id, stone.name], 'g', g, 'washed, dry')
  stack.geometry.timbers.forEach((t, i) => {
    const b = bounds(t.upper)
    const name = `${materials.timbers[i]!.name}: ${stack.entries.timbers[i]!.id}`
    line(
      'timber',
      [name, name],
      'piece',
      blanks,
      `${Math.ceil(b.maxX - b.minX)} × ${Math.ceil(b.maxY - b.minY)} × ${Math.ceil(t.high - t.base)} mm ${mould.needsMould ? 'as set in the mould' : 'before it is worked'}; ${roughWords(boardsMm[i] ?? null)}`,
      0
    )
  })
  const cuts = mould.cutList
  if (mould.needsMould) {
    const { base, walls, liner } = materials
    const [, ...standing] = cuts.boards
    const strips = standing.filter(b => b.name === 'ring or bent strip')
    const boards = standing.filter(b => b.name !== 'ring or bent strip')
    const own = walls.id === base.id ? ' (walls)' : ''
    line(
      'mould',
      [base.id, base.name],
      'm²',
      cuts.baseAreaM2 * moulds,
      `base ${boardWords(cuts.boards.slice(0, 1))}`
    )
    line(
      'mould',
      [`${walls.id}${own}`, `${walls.name}${own}`],
      'm²',
      cuts.wallAreaM2 * moulds,
      `walls ${boardWords(boards)}`
    )
    line(
      'mould',
      ['bending-strip', 'bending strip of thin plastic, or a ring sawn from board'],
      'm',
      cuts.stripLengthM * moulds,
      `on the line of the mould: ${boardWords(strips)} high; blocks to hold it`
    )
    if (liner.id !== 'none')
      line(
        'mould',
        [liner.id, liner.name],
        'm²',
        cuts.tapeAreaM2 * moulds,
        'inside of the mould, without overlaps'
      )
    line(
      'mould',
      ['silicone-sealant', 'silicone sealant'],
      'm',
      cuts.sealantLengthM * moulds,
      `a bead along every joint, ${piece.mould.joints}`
    )
  }
  // A coat alike on both faces is bought once.
  for (const [coat, laid] of byCoat(faces)) {
    const need = laid.reduce((sum, f) => sum + f.needMl, 0)
    line('finish', [coat.id, coat.name], 'ml', need * blanks, coatNote(laid))
  }
  const abrasives = abrasiveNeeds(faces, blanks)
  const disc = `disc of ${decimals(shop.sander.disc, 0)} mm`
  for (const [grade, discs] of abrasives.discs)
    line('finish', [grade.id, `P${grade.grit} ${disc}`], 'piece', discs, 'by minutes of sanding, both faces')
  for (const [paste, ml] of abrasives.pastes)
    line('finish', [paste.id, paste.name], 'ml', ml, 'on resin, after the last paper')
  stack.entries.hardware.forEach((h, i) => {
    const name = `${materials.hardware[i]!.name}: ${h.id}`
    line('hardware', [name, name], 'piece', h.value.count * blanks, 'measure yours before the cut is made', 0)
  })
  return out
}

/** Rounded up to what a person buys or weighs. */
function up(x: number, unit: BuyLine['unit']): number {
  const steps = unit === 'm' || unit === 'm²' ? 100 : 1
  return Math.ceil(x * steps - 1e-6) / steps
}

function byCoat(faces: readonly FaceFinish[]): Map<CoatRecord, FaceFinish[]> {
  const out = new Map<CoatRecord, FaceFinish[]>()
  for (const f of faces) if (f.coat !== null) out.set(f.coat, [...(out.get(f.coat) ?? []), f])
  return out
}

function coatNote(laid: readonly FaceFinish[]): string {
  const said = (name: string, coats: number, areaM2: number) =>
    `${name}, ${coats} coat${coats === 1 ? '' : 's'} on ${areaM2.toFixed(2)} m²`
  const [a, b] = laid
  if (b !== undefined && a!.coats === b.coats) return said('both faces', b.coats, a!.areaM2 + b.areaM2)
  return laid.map(f => said(f.face, f.coats, f.areaM2)).join('; ')
}

function boardWords(boards: readonly BoardPiece[]): string {
  return boards
    .map(b => `${b.count} of ${Math.ceil(b.lengthMm - 1e-6)} × ${Math.ceil(b.widthMm - 1e-6)} mm`)
    .join('; ')
}

/** Resin: both parts together, in whole packs at least cost when the shop knows its packs. */
function resinLine(choice: ResinChoice, need: number, shop: Shop): BuyLine {
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
    item: choice.id,
    name: choice.name,
    unit: 'g',
    need: up(need, 'g'),
    withSpare: up(withSpare, 'g'),
    stock,
    buy: packs.length > 0 ? bought : up(short, 'g'),
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

function roughWords(thicknessMm: number | null): string {
  return thicknessMm === null
    ? 'saw and plane allowance on top'
    : `from a board at least ${Math.ceil(thicknessMm)} mm thick, longer and wider by what the saw takes`
}
