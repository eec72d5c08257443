import type { Work } from '../findings/work.ts'
import type { BoardPiece } from '../mould/cutlist.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import type { BuyRow } from './buy-rows.ts'
import { buyRows, moneyFigure } from './buy-rows.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'
import { capital } from './model.ts'
import { findingBlock } from './page-finding.ts'
import type { Placed } from './page-place.ts'
import { fixedAtEnds, isWall, sizesOf } from './run-mould.ts'

/** What to have at hand: need with its spare, what is there, whole packs to buy, and what they cost. */
export function buyPart(plan: Plan, L: Lengths): Markup {
  const { totals } = plan
  const some = plan.buy.length - totals.unpriced > 0
  return html`<section class="paper buy" aria-labelledby="buy-head">
<div class="r"><h2 id="buy-head">Buy <span>${plan.quantity.blanks === 1 ? 'for one piece' : `for ${plan.quantity.blanks} blanks`}, spare included</span></h2>
<p class="f">${some ? html`Materials <b>${moneyFigure(totals.materialCost)}</b> ${totals.currency}${totals.unpriced > 0 ? `, and ${totals.unpriced} line${totals.unpriced === 1 ? '' : 's'} without a price` : ''}` : 'No prices in the shop yet'}</p></div>
<div class="scroll" tabindex="0" role="group" aria-label="Buy list"><table class="list">
<thead><tr><th scope="col">Item</th><th scope="col">Need</th><th scope="col">In stock</th><th scope="col">Buy</th><th scope="col">${totals.currency}</th></tr></thead>
${buyRows(plan.buy, L).map(
  g =>
    html`<tbody><tr class="g"><th colspan="5" scope="colgroup">${g.title}</th></tr>${g.rows.map(row)}</tbody>`
)}</table></div></section>`
}

function row(r: BuyRow): Markup {
  return html`<tr><th scope="row">${r.name}${r.note === '' ? null : html`<span class="note">${r.note}${r.days === null || r.days === 0 ? '' : `; ${r.days} days to arrive`}</span>`}</th>
<td>${split(r.need)}</td><td>${r.stock === null ? '–' : split(r.stock)}</td><td class="b">${split(r.buy)}</td><td>${r.cost ?? html`<span class="q">no price</span>`}</td></tr>`
}

function split(words: string): Markup {
  const cut = words.lastIndexOf(' ')
  return cut < 0 || !/^\S+$/.test(words.slice(cut + 1)) || words === 'nothing'
    ? html`${words}`
    : html`${words.slice(0, cut)}<u>${words.slice(cut + 1)}</u>`
}

/** The mould as a made thing: what it is cut from, how high, how carried, what it weighs full of water; nothing without one. */
export function mouldPart(plan: Plan, work: Work, at: Placed): Markup | null {
  const L = lengthsOf(work.shop)
  const m = plan.mould
  if (!m.needsMould) return null
  const { boards, bearers, sealantLengthM, tapeAreaM2 } = m.cutList
  const facts: [string, string, string][] = [
    ['Inside', `${L.of(m.innerLength, 0)} × ${L.of(m.innerWidth, 0)}`, L.unit],
    ['Walls', L.of(m.wall, 0), L.unit],
    ['Resin stands', L.of(m.liquidLevel, 1), L.unit],
    ['Freeboard', L.of(m.freeboard, 1), L.unit],
    ['Bearers every', m.bearers > 0 ? L.of(m.bearers, 0) : 'lies flat', m.bearers > 0 ? L.unit : ''],
    ['Base sags', m.sag === null ? '–' : L.of(m.sag, 2), m.sag === null ? '' : L.unit],
    ...fixing(m, L),
    ['Water for the test', decimals(m.waterG / 1000, 1), 'kg']
  ]
  return html`<section class="paper mould" aria-labelledby="mould-head">
<div class="r"><h2 id="mould-head">Mould <span>${work.materials.base.name}</span></h2><p class="f">sealant ${L.run(sealantLengthM)}, tape ${L.area(tapeAreaM2, 2)}</p></div>
<dl class="grid">${facts.map(([k, v, u]) => html`<div><dt>${k}</dt><dd>${v}${u === '' ? null : html`<u>${u}</u>`}</dd></div>`)}</dl>
<table class="list boards"><thead><tr><th scope="col">Cut</th><th scope="col">Number</th><th scope="col">Length</th><th scope="col">Width</th><th scope="col">Thickness</th></tr></thead><tbody>
${boards.map(b => boardRow(b, L))}
${bearers === null ? null : html`<tr><th scope="row">Bearer</th><td>${bearers.count}</td><td>${L.of(bearers.lengthMm, 0)}</td><td>–</td><td>–</td></tr>`}
</tbody></table>
<p>${L.beside(m.cutList.says.join(' '))}</p>
${at.mould.map(n => findingBlock(n, L))}</section>`
}

function boardRow(b: BoardPiece, L: Lengths): Markup {
  const [length, width, thickness] = sizesOf(b, L)
  return html`<tr><th scope="row">${capital(b.name)}</th><td>${b.count}</td><td>${length}</td><td>${width}</td><td>${thickness}${b.thicknessMm === null ? null : html`<u>${L.unit}</u>`}</td></tr>`
}

// A strip has no walls of board to fix.
function fixing(m: Plan['mould'], L: Lengths): [string, string, string][] {
  if (!m.cutList.boards.some(isWall)) return []
  return fixedAtEnds(m)
    ? [['Walls fixed', 'at the ends', '']]
    : [['Walls fixed every', L.of(m.wallFixings, 0), L.unit]]
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
