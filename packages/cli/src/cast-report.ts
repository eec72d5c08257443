import type { Plan } from '@castwright/engine'
import { decimals, formatMinutes } from '@castwright/engine'
import { paint, plain } from './paint.ts'

type Window = NonNullable<Plan['pours'][number]['cast']>['windows']['working']

/** How each pour cures and heats, for a terminal. */
export function castReport(plan: Plan): string {
  const lines = [paint.strong(plain(plan.name)), '']
  for (const p of plan.pours) {
    lines.push(
      `${paint.strong(plain(p.id))}  ${plain(p.resin)}, ${decimals(p.stack.liquidDepth, 1, 1)} mm deep when poured`
    )
    if (p.cast === null) {
      lines.push('  not predicted: this family of resin is recorded only; its data sheet goes first', '')
      continue
    }
    const { cast } = p
    const row = (label: string, text: string) => lines.push(`  ${label.padEnd(26)}${text}`)
    row('mixed at', `${decimals(cast.startC, 0)} °C, ${formatMinutes(cast.startMin)} after the first pour`)
    row(
      'hottest',
      `${decimals(cast.peakC, 0)} °C (${decimals(cast.peakBandC[0], 0)} to ${decimals(cast.peakBandC[1], 0)}) after ${formatMinutes(cast.peakMin)}, ${decimals(cast.peakAtMm, 0)} mm over its floor${cast.runaway ? ': it runs away' : ''}`
    )
    if (cast.runaway) {
      lines.push('  it runs away: no spans of time are given for what follows', '')
      continue
    }
    row('can be worked until', until(cast.windows.working))
    if (cast.windows.marbling !== null) row('colours can be drawn', span(cast.windows.marbling))
    row(
      'gels',
      cast.windows.gelMin === null
        ? 'not within seven days'
        : `from ${formatMinutes(cast.windows.gelMin)}${cast.windows.halfGelMin === null ? '' : `, half of it by ${formatMinutes(cast.windows.halfGelMin)}`}`
    )
    row('the next pour bonds', span(cast.windows.recoat))
    row('out of the mould', `from ${formatMinutes(cast.windows.demould.open)}`)
    row('for the cutter', `from ${formatMinutes(cast.windows.machine.open)} (common practice)`)
    if (cast.mostFrom !== null) row('most of the doubt from', plain(String(cast.mostFrom)))
    lines.push('')
  }
  return lines.join('\n')
}

function until(w: Window): string {
  return w.close === null
    ? 'it does not thicken within seven days'
    : `${formatMinutes(w.close)} after mixing (by ${formatMinutes(w.close - ((w.band[1] ?? w.close) - w.close))} to be sure)`
}

function span(w: Window): string {
  return `from ${formatMinutes(w.open)} ${w.close === null ? 'on' : `to ${formatMinutes(w.close)}`}`
}

/** The curves of all pours: minutes since each was poured, hottest place, viscosity, conversion. RFC 4180. */
export function castCsv(plan: Plan): string {
  const rows = ['pour,minutes,hottest_C,viscosity_Pa_s,conversion']
  for (const p of plan.pours) {
    if (p.cast === null) continue
    const { min, hottestC, viscosityPaS, conversion } = p.cast.curve
    min.forEach((m, i) => {
      rows.push(`"${p.id.replaceAll('"', '""')}",${m},${hottestC[i]},${viscosityPaS[i]},${conversion[i]}`)
    })
  }
  return `${rows.join('\r\n')}\r\n`
}
