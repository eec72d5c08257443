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
import type { Step } from '../steps/step.ts'
import { abrasiveNeeds } from './abrasives.ts'
import type { BuyLine } from './buy-line.ts'
import { lineOf } from './line-of.ts'
import type { BuyGroup, BuyUnit, Need } from './need.ts'
import { amountOf } from './need.ts'
import type { MixDays } from './needs.ts'
import { add, pigmentNeeds, resinNeeds } from './needs.ts'
import type { Use } from './shelf.ts'
import type { DayOf } from './use-days.ts'

/** Everything to have at hand for all blanks started, before shelf and packs are looked at. */
export function needsOf(input: {
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
  /** When a step comes. */
  readonly day: DayOf
}): Need[] {
  const { stack, materials, batches, mould, faces, shop, blanks, moulds, boardsMm, day } = input
  const { piece } = stack
  const out: Need[] = []
  const put = (
    group: BuyGroup,
    [item, name]: readonly [id: string, name: string],
    unit: BuyUnit,
    uses: number | readonly Use[],
    note: string,
    spare = shop.spare,
    resin: ResinChoice | null = null
  ): void => {
    const dated =
      typeof uses === 'number' ? [{ amount: uses, day: day(s => USED_AT[group].includes(s.kind)) }] : uses
    if (amountOf({ uses: dated }) > 0) out.push({ group, item, name, unit, uses: dated, spare, note, resin })
  }
  const fills = piece.markings.flatMap((m, k) =>
    m.filled === undefined ? [] : [fillOfMarking(stack, materials, shop, k)]
  )
  const resins = [...materials.resins, ...fills.map(f => f.resin)]
  const days: MixDays = {
    pour: i => day(s => s.kind === 'pour' && s.pour!.index === i),
    fill: day(s => s.kind === 'fill')
  }
  for (const [id, uses] of resinNeeds(piece, batches, fills, blanks, days)) {
    const resin = resins.find(r => r.id === id)!
    put('resin', [id, resin.name], 'g', uses, '', shop.spare, resin)
  }
  for (const [pigment, uses] of pigmentNeeds(stack, materials, batches, fills, blanks, days))
    put('colour', [pigment.id, pigment.name], 'g', uses, 'weighed into the mix, inside its total')
  const stones = new Map<Materials['stones'][number][number], number>()
  piece.pours.forEach((pour, i) => {
    const total = stack.pours[i]!.stonesMl
    pour.stones.forEach((_, j) => {
      const record = materials.stones[i]![j]!
      add(stones, record, ((total / pour.stones.length) * blanks * record.densityKgM3) / 1000)
    })
  })
  for (const [stone, g] of stones) put('stones', [stone.id, stone.name], 'g', g, 'washed, dry')
  stack.geometry.timbers.forEach((t, i) => {
    const b = bounds(t.upper)
    const name = `${materials.timbers[i]!.name}: ${stack.entries.timbers[i]!.id}`
    put(
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
    const baseWords = `base ${boardWords(cuts.boards.slice(0, 1))}`
    const wallWords = `walls ${boardWords(boards)}`
    const [baseM2, wallM2] = [cuts.baseAreaM2 * moulds, cuts.wallAreaM2 * moulds]
    // Of the same board base and walls come out of the same sheets.
    if (walls.id === base.id)
      put('mould', [base.id, base.name], 'm²', baseM2 + wallM2, `${baseWords}; ${wallWords}`)
    else {
      put('mould', [base.id, base.name], 'm²', baseM2, baseWords)
      put('mould', [walls.id, walls.name], 'm²', wallM2, wallWords)
    }
    put(
      'mould',
      ['bending-strip', 'bending strip of thin plastic, or a ring sawn from board'],
      'm',
      cuts.stripLengthM * moulds,
      `on the line of the mould: ${boardWords(strips)} high; blocks to hold it`
    )
    if (liner.id !== 'none')
      put(
        'mould',
        [liner.id, liner.name],
        'm²',
        cuts.tapeAreaM2 * moulds,
        'inside of the mould, without overlaps'
      )
    put(
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
    put('finish', [coat.id, coat.name], 'ml', need * blanks, coatNote(laid))
  }
  const abrasives = abrasiveNeeds(faces, blanks)
  const disc = `disc of ${decimals(shop.sander.disc, 0)} mm`
  for (const [grade, discs] of abrasives.discs)
    put('finish', [grade.id, `P${grade.grit} ${disc}`], 'piece', discs, 'by minutes of sanding, both faces')
  for (const [paste, ml] of abrasives.pastes)
    put('finish', [paste.id, paste.name], 'ml', ml, 'on resin, after the last paper')
  stack.entries.hardware.forEach((h, i) => {
    const name = `${materials.hardware[i]!.name}: ${h.id}`
    put('hardware', [name, name], 'piece', h.value.count * blanks, 'measure yours before the cut is made', 0)
  })
  return out
}

/** The buy list: of each need the shelf first, then whole packs at least cost. */
export function buyList(needs: readonly Need[], shop: Shop): BuyLine[] {
  return needs.map(n => lineOf(n, shop))
}

/** By the last of these steps what is bought for a group is used up. */
const USED_AT: Readonly<Record<BuyGroup, readonly Step['kind'][]>> = {
  resin: ['pour', 'fill'],
  colour: ['pour', 'fill'],
  stones: ['pour'],
  timber: ['prepare timber'],
  mould: ['make mould'],
  finish: ['coat', 'sand'],
  hardware: ['fit']
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

function roughWords(thicknessMm: number | null): string {
  return thicknessMm === null
    ? 'saw and plane allowance on top'
    : `from a board at least ${Math.ceil(thicknessMm)} mm thick, longer and wider by what the saw takes`
}
