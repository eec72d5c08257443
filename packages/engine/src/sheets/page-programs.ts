import { machineUnitWords } from '../programs/setting-words.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { Markup } from './markup.ts'
import { html } from './markup.ts'
import type { ProvedSet } from './run-programs.ts'

/** Programs in the order they are run: cutter, minutes, and what proving met; nothing where no machine cuts. */
export function programsPart(set: ProvedSet | null, written: boolean): Markup | null {
  if (set === null || set.programs.length === 0) return null
  const units = machineUnitWords(set.machining)
  const minutes = set.programs.reduce((sum, p) => sum + p.minutes, 0)
  return html`<section class="paper buy" aria-labelledby="programs-head">
<div class="r"><h2 id="programs-head">Programs <span>in the order they are run${written ? '' : '; not written while a stop stands'}</span></h2>
<p class="f">Cutting <b>${formatMinutes(Math.max(1, minutes))}</b></p></div>
${units === null ? null : html`<p class="f">${units}</p>`}<div class="scroll" tabindex="0" role="group" aria-label="Programs"><table class="list">
<thead><tr><th scope="col">Program</th><th scope="col">Cutter</th><th scope="col">Time</th><th scope="col">Proved</th></tr></thead>
<tbody>${set.programs.map(
    p => html`<tr><th scope="row">${p.file}</th>
<td>${[...new Set(p.made.map(m => m.operation.cutter.id))].join(', ')}</td><td>${formatMinutes(Math.max(1, p.minutes))}</td><td>${set.met?.get(p.file) ?? ''}</td></tr>`
  )}</tbody></table></div></section>`
}
