import type { BuyLine } from '../cost/buy.ts'
import type { Work } from '../findings/work.ts'
import type { BoardPiece } from '../mould/cutlist.ts'
import type { Plan } from '../plan.ts'
import { decimals, formatMass } from '../quantity/format.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'
import { capital } from './model.ts'
import { findingBlock } from './page-finding.ts'
import type { Placed } from './page-place.ts'
import { fixedAtEnds, isWall, sizesOf } from './run-mould.ts'

const GROUPS: readonly (readonly [BuyLine['group'], string])[] = [
  ['resin', 'Resin'],
  ['colour', 'Colour'],
  ['stones', 'Stones'],
  ['timber', 'Timber'],
  ['mould', 'Mould'],
  ['finish', 'Finish'],
  ['hardware', 'Hardware']
]

/** What to have at hand: need with its spare, what is there, whole packs to buy, and what they cost. */
export function buyPart(plan: Plan): Markup {
  const { totals } = plan
  const some = plan.buy.length - totals.unpriced > 0
  return html`<section class="paper buy" aria-labelledby="buy-head">
<div class="r"><h2 id="buy-head">Buy <span>${plan.quantity.blanks === 1 ? 'for one piece' : `for ${plan.quantity.blanks} blanks`}, spare included</span></h2>
<p class="f">${some ? html`Materials <b>${money(totals.materialCost)}</b> ${totals.currency}${totals.unpriced > 0 ? `, and ${totals.unpriced} line${totals.unpriced === 1 ? '' : 's'} without a price` : ''}` : 'No prices in the shop yet'}</p></div>
<div class="scroll" tabindex="0" role="group" aria-label="Buy list"><table class="list">
<thead><tr><th scope="col">Item</th><th scope="col">Need</th><th scope="col">In stock</th><th scope="col">Buy</th><th scope="col">${totals.currency}</th></tr></thead>
${GROUPS.map(([group, title]) => {
  const lines = plan.buy.filter(l => l.group === group)
  return lines.length === 0
    ? null
    : html`<tbody><tr class="g"><th colspan="5" scope="colgroup">${title}</th></tr>${lines.map(row)}</tbody>`
})}</table></div></section>`
}

function row(l: BuyLine): Markup {
  const packs = l.packs.map(p => `${p.count} × ${quantity(p.size, l.unit)}`).join(', ')
  const buy = l.buy <= 0 ? 'nothing' : packs !== '' ? packs : wanted(l.buy, l.unit)
  return html`<tr><th scope="row">${capital(l.name)}${l.note === '' ? null : html`<span class="note">${l.note}${l.days === null || l.days === 0 ? '' : `; ${l.days} days to arrive`}</span>`}</th>
<td>${split(wanted(l.withSpare, l.unit))}</td><td>${l.stock > 0 ? split(quantity(l.stock, l.unit)) : '–'}</td><td class="b">${split(buy)}</td><td>${l.cost === null ? html`<span class="q">no price</span>` : money(l.cost)}</td></tr>`
}

// Kilograms go up to the next tenth: what is needed must not look less than it is.
function wanted(x: number, unit: BuyLine['unit']): string {
  return quantity(unit === 'g' && x >= 10_000 ? Math.ceil(x / 100 - 1e-9) * 100 : x, unit)
}

function quantity(x: number, unit: BuyLine['unit']): string {
  if (unit === 'g') return formatMass(x)
  if (unit === 'piece') return decimals(x, 0)
  return `${decimals(x, unit === 'ml' ? 0 : 2)} ${unit}`
}

function split(words: string): Markup {
  const cut = words.lastIndexOf(' ')
  return cut < 0 || !/^\S+$/.test(words.slice(cut + 1)) || words === 'nothing'
    ? html`${words}`
    : html`${words.slice(0, cut)}<u>${words.slice(cut + 1)}</u>`
}

function money(x: number): string {
  return decimals(x, x % 1 === 0 ? 0 : 2, x % 1 === 0 ? 0 : 2)
}

/** The mould as a made thing: what it is cut from, how high, how carried, what it weighs full of water; nothing without one. */
export function mouldPart(plan: Plan, work: Work, at: Placed): Markup | null {
  const m = plan.mould
  if (!m.needsMould) return null
  const { boards, bearers, sealantLengthM, tapeAreaM2 } = m.cutList
  const facts: [string, string, string][] = [
    ['Inside', `${decimals(m.innerLength, 0)} × ${decimals(m.innerWidth, 0)}`, 'mm'],
    ['Walls', decimals(m.wall, 0), 'mm'],
    ['Resin stands', decimals(m.liquidLevel, 1), 'mm'],
    ['Freeboard', decimals(m.freeboard, 1), 'mm'],
    ['Bearers every', m.bearers > 0 ? decimals(m.bearers, 0) : 'lies flat', m.bearers > 0 ? 'mm' : ''],
    ['Base sags', m.sag === null ? '–' : decimals(m.sag, 2), m.sag === null ? '' : 'mm'],
    ...fixing(m),
    ['Water for the test', decimals(m.waterG / 1000, 1), 'kg']
  ]
  return html`<section class="paper mould" aria-labelledby="mould-head">
<div class="r"><h2 id="mould-head">Mould <span>${work.materials.base.name}</span></h2><p class="f">sealant ${decimals(sealantLengthM, 1)} m, tape ${decimals(tapeAreaM2, 2)} m²</p></div>
<dl class="grid">${facts.map(([k, v, u]) => html`<div><dt>${k}</dt><dd>${v}${u === '' ? null : html`<u>${u}</u>`}</dd></div>`)}</dl>
<table class="list boards"><thead><tr><th scope="col">Cut</th><th scope="col">Number</th><th scope="col">Length</th><th scope="col">Width</th><th scope="col">Thickness</th></tr></thead><tbody>
${boards.map(boardRow)}
${bearers === null ? null : html`<tr><th scope="row">Bearer</th><td>${bearers.count}</td><td>${decimals(bearers.lengthMm, 0)}</td><td>–</td><td>–</td></tr>`}
</tbody></table>
<p>${m.cutList.says.join(' ')}</p>
${at.mould.map(n => findingBlock(n))}</section>`
}

function boardRow(b: BoardPiece): Markup {
  const [length, width, thickness] = sizesOf(b)
  return html`<tr><th scope="row">${capital(b.name)}</th><td>${b.count}</td><td>${length}</td><td>${width}</td><td>${thickness}${b.thicknessMm === null ? null : html`<u>mm</u>`}</td></tr>`
}

// A strip has no walls of board to fix.
function fixing(m: Plan['mould']): [string, string, string][] {
  if (!m.cutList.boards.some(isWall)) return []
  return fixedAtEnds(m)
    ? [['Walls fixed', 'at the ends', '']]
    : [['Walls fixed every', decimals(m.wallFixings, 0), 'mm']]
}

/** A batch: how many are started and what that promises; nothing for a single piece. */
export function quantityPart(plan: Plan): Markup | null {
  const q = plan.quantity
  if (q.pieces === 1 && q.blanks === 1) return null
  return html`<section class="paper batchline" aria-labelledby="batch-head"><div class="r"><h2 id="batch-head">Batch</h2></div>
<p>Start <b>${q.blanks}</b> blanks for <b>${q.pieces}</b> good pieces: with ${decimals(q.lossPct, 0)} % lost on the way that is enough with a chance of <b>${decimals(100 * q.chance, 0)} %</b>. ${mouldsWords(plan)}</p></section>`
}

function mouldsWords({ quantity: q, mould }: Plan): string {
  if (!mould.needsMould) return ''
  return q.moulds === 1
    ? 'One mould filled once.'
    : `The mould is filled ${q.moulds} times${q.gang > 1 ? `, ${q.gang} side by side` : ''}.`
}

/** Mass in the title block. */
export function massWords(g: number): Markup {
  return g >= 1000 ? html`${decimals(g / 1000, 1)}<u>kg</u>` : html`${decimals(g, 0)}<u>g</u>`
}
