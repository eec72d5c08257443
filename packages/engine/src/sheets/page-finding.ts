import type { Finding } from '../findings/finding.ts'
import type { Despite, Plan } from '../plan.ts'
import { decimals } from '../quantity/format.ts'
import { trueMinus } from '../quantity/rough.ts'
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
  where: string | null = null
): Markup {
  const tone = despite === null ? f.severity : 'despite'
  return html`<div class="find ${tone}" id="finding-${number}" tabindex="-1">
<p class="says" id="says-${number}"><b class="k">${KIND[f.severity]}</b> ${where === null || f.says.toLowerCase().startsWith(where.toLowerCase()) ? null : html`<b>${where}:</b> `}${sentence(f.says)}</p>
${figures(f)}${f.fixSays === null ? null : html`<p class="fix"><span class="q">Smallest change</span> <b>${f.fixSays}</b></p>`}
<p class="basis">Basis: ${stopped(f.basis)}${f.settledBy === null ? null : html` Settled by ${stopped(f.settledBy)}`}</p>
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

function figures(f: Finding): Markup | null {
  if (f.value === null) return null
  const unit = f.unit ?? ''
  const worst = crossing(f)
  if (worst !== null && f.limit !== null)
    return html`<p class="figures"><span><span class="q">May reach</span> ${figure(worst, unit)}<u>${unit}</u></span><span><span class="q">Limit</span> ${figure(f.limit)}<u>${unit}</u></span><span><span class="q">Likeliest</span> ${figure(f.value, unit)}</span></p>`
  return html`<p class="figures"><span><span class="q">Value</span> ${figure(f.value, unit)}<u>${unit}</u></span>${
    f.limit === null ? null : html`<span><span class="q">Limit</span> ${figure(f.limit)}<u>${unit}</u></span>`
  }${
    f.band === null
      ? null
      : html`<span><span class="q">Between</span> ${figure(f.band[0], unit)} and ${figure(f.band[1], unit)}</span>`
  }</p>`
}

/** A figure of a finding. A temperature past the runaway is not quoted: it is none the surer for a figure. */
export function figure(x: number, unit = ''): string {
  if (unit === '°C' && x > RUNAWAY_ABOVE_C) return `over ${RUNAWAY_ABOVE_C}`
  const a = Math.abs(x)
  return trueMinus(decimals(x, a >= 100 ? 0 : a >= 1 ? 1 : 2))
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
