import type { Finding } from '../findings/finding.ts'
import type { Lengths } from '../piece/lengths.ts'
import type { Despite, Plan } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import { trueMinus } from '../quantity/rough.ts'
import { fromFixedUnit } from '../quantity/unit.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'

/** A finding with its number in the walk through all of them, from 1. */
export interface Numbered {
  readonly number: number
  readonly finding: Finding
  readonly despite: Despite | null
  /** Number of the one after it in the walk, which comes round to the first; null where it stands alone. */
  readonly next: number | null
}

/** Findings of a plan in the order of the walk: stops, cautions, notes; overridden ones where they stand. */
export function numbered(plan: Plan): Numbered[] {
  return plan.findings.map((finding, i) => ({
    number: i + 1,
    finding,
    despite: plan.despite.find(d => d.id === finding.id) ?? null,
    next: plan.findings.length < 2 ? null : ((i + 1) % plan.findings.length) + 1
  }))
}

const KIND = { stop: 'Stop.', caution: 'Caution.', note: 'Note.' } as const

/** One finding as it stands at its entry: value, limit, where the limit comes from, the smallest change. */
export function findingBlock(
  { number, finding: f, despite, next }: Numbered,
  L: Lengths,
  where: string | null = null
): Markup {
  const tone = despite === null ? f.severity : 'despite'
  return html`<div class="find ${tone}" id="finding-${number}" tabindex="-1">
<p class="says" id="says-${number}"><b class="k">${KIND[f.severity]}</b> ${where === null || f.says.toLowerCase().startsWith(where.toLowerCase()) ? null : html`<b>${where}:</b> `}${L.beside(sentence(f.says))}</p>
${figures(f, L)}${f.fixSays === null ? null : html`<p class="fix"><span class="q">Smallest change</span> <b>${L.beside(f.fixSays)}</b></p>`}
<p class="basis">Basis: ${L.beside(stopped(f.basis))}${f.settledBy === null ? null : html` Settled by ${L.beside(stopped(f.settledBy))}`}</p>
${despite === null ? null : html`<p class="because"><b>Gone on despite it</b>, because: ${despite.because}</p>`}${next === null ? null : html`<p class="on"><a href="#finding-${next}" aria-describedby="says-${number}">Next to look at</a></p>`}</div>`
}

/** Checks whose band is the value's own, by the side of the limit on which it harms. */
const HARMS_ABOVE = new Set(['pour-heat', 'mould-softens', 'hardware-heat', 'timber-floats', 'timber-gap'])
const HARMS_BELOW = new Set(['cold-room', 'damp-night'])

/** The end of the band that crosses the limit where the value itself does not: what the finding is about. */
export function crossing({ id, value, band, limit }: Finding): number | null {
  if (value === null || band === null || limit === null) return null
  if (HARMS_ABOVE.has(id) && value <= limit && band[1] > limit) return band[1]
  if (HARMS_BELOW.has(id) && value >= limit && band[0] < limit) return band[0]
  return null
}

/** A figure of a finding with what it is called and its unit; '' for none. */
export type FindingFigure = readonly [label: string, words: string, unit: string]

/** What a finding found, its limit and its doubt, in the units of a sheet or a screen; none where it has no value. */
export function findingFigures(f: Finding, L: Lengths): FindingFigure[] {
  const { value, limit, band } = f
  if (value === null) return []
  const [figure, unit] = figuresIn(f.unit ?? '', L)
  const worst = crossing(f)
  const out: FindingFigure[] = [
    worst === null ? ['Value', figure(value), unit] : ['May reach', figure(worst), unit]
  ]
  if (limit !== null) out.push(['Limit', figure(limit), unit])
  if (worst !== null) out.push(['Likeliest', figure(value), unit])
  else if (band !== null) out.push(['Between', `${figure(band[0])} and ${figure(band[1])}`, unit])
  return out
}

// The unit stands once with the value and once with the limit.
function figures(f: Finding, L: Lengths): Markup | null {
  const all = findingFigures(f, L)
  if (all.length === 0) return null
  return html`<p class="figures">${all.map(
    ([label, words, unit], i) =>
      html`<span><span class="q">${label}</span> ${words}${i === 0 || label === 'Limit' ? html`<u>${unit}</u>` : null}</span>`
  )}</p>`
}

/** Places of a figure: three of them tell, below one two after the point. */
const placesOf = (x: number) => (Math.abs(x) >= 100 ? 0 : Math.abs(x) >= 1 ? 1 : 2)

// A temperature past the runaway is not quoted, in no unit: it is none the surer for a figure.
function figuresIn(unit: string, L: Lengths): readonly [figure: (x: number) => string, unit: string] {
  const plain = (x: number) => trueMinus(decimals(x, placesOf(x)))
  if (unit === 'mm') return [x => L.signed(x, placesOf(x)), L.unit]
  if (unit === 'g') return [x => plain(fromFixedUnit(x, L.shown.mass)), L.shown.mass]
  if (unit !== '°C') return [plain, unit]
  const degrees = (c: number) => plain(fromFixedUnit(c, L.degree))
  return [c => (c > RUNAWAY_ABOVE_C ? `over ${degrees(RUNAWAY_ABOVE_C)}` : degrees(c)), L.degree]
}

/** Words as sentences: a large letter after every full stop, a full stop last. */
export function sentence(words: string): string {
  return stopped(words).replace(
    /(^|[.!?] )(\p{Ll})/gu,
    (_, before: string, letter: string) => before + letter.toUpperCase()
  )
}

export function stopped(words: string): string {
  const trimmed = words.trim()
  return /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`
}

/** "1 stop", "2 cautions": what stands, and what was overridden. */
export function counts(all: readonly Numbered[]): Markup {
  const count = (severity: Finding['severity']) =>
    all.filter(n => n.despite === null && n.finding.severity === severity).length
  const parts: Markup[] = []
  const put = (n: number, word: string, tone: string) => {
    if (n > 0) parts.push(html`<span class="${tone}">${n} ${word}${n === 1 ? '' : 's'}</span>`)
  }
  put(count('stop'), 'stop', 'st')
  put(count('caution'), 'caution', 'ca')
  put(count('note'), 'note', 'no')
  const over = all.filter(n => n.despite !== null).length
  if (over > 0) parts.push(html`<span class="no">${over} overridden</span>`)
  if (parts.length === 0) parts.push(html`<span class="ok">Ready</span>`)
  return html`${parts.map((p, i) => (i === 0 ? p : html`<i aria-hidden="true">·</i>${p}`))}`
}
