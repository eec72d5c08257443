import type { Plan } from '@castwright/engine'
import { decimals, formatMinutes, RUNAWAY_ABOVE_C } from '@castwright/engine'
import { paint, plain } from './paint.ts'

type Cast = NonNullable<Plan['pours'][number]['cast']>
type Window = Cast['windows']['working']

/** How each pour cures and heats, for a terminal: every window with its band and the reading that sharpens it. */
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
    lines.push(...castLines(p.cast, p.edge), '')
  }
  if (plan.whole !== null) lines.push(...roomLines(plan, plan.whole.room), '')
  return lines.join('\n')
}

/** Between which rooms the pours stay within their limits and harden. */
function roomLines(plan: Plan, room: NonNullable<Plan['whole']>['room']): string[] {
  const name = (pour: number | null) => (pour === null ? '' : ` (${plain(plan.pours[pour]!.id)})`)
  const low = room.lowC === null ? 'the cold' : `${decimals(room.lowC, 1)} °C${name(room.lowPour)}`
  const high =
    room.highC === null ? 'no warm end found' : `${decimals(room.highC, 1)} °C${name(room.highPour)}`
  if (room.tooHotPour !== null)
    return [
      paint.strong('the room'),
      `  no room down to 15 °C cooler keeps ${plain(plan.pours[room.tooHotPour]!.id)} within its limit: its depth or its resin has to change`
    ]
  return [
    paint.strong('the room'),
    room.lowC !== null && room.highC !== null && room.highC < room.lowC
      ? `  no room does for all pours: below ${low} one stays soft, above ${high} one may pass its limit`
      : `  holds from ${low} to ${high}, mean of day and night: cooler stays soft, warmer may pass a limit`
  ]
}

function castLines(cast: Cast, edge: Plan['pours'][number]['edge']): string[] {
  const lines: string[] = []
  const row = (label: string, text: string) => lines.push(`  ${label.padEnd(26)}${text}`)
  row('mixed at', `${decimals(cast.startC, 0)} °C, ${formatMinutes(cast.startMin)} after the first pour`)
  row(
    'hottest',
    `${degrees(cast.peakC)} (${degrees(cast.peakBandC[0])} to ${degrees(cast.peakBandC[1])}) after ${formatMinutes(cast.peakMin)} (${formatMinutes(cast.peakMinBand[0])} to ${formatMinutes(cast.peakMinBand[1])}), ${decimals(cast.peakAtMm, 0)} mm over its floor${cast.runaway ? ': it runs away' : ''}`
  )
  if (edge !== null) {
    row(
      `top of the band at ${decimals(edge.limitC, 0)} °C`,
      [
        edge.depthMm === null
          ? 'at no depth up to three times this'
          : edge.depthMm === 0
            ? 'at every depth over half a millimetre'
            : `at ${decimals(edge.depthMm, 1, 1)} mm`,
        edge.roomK === null
          ? edge.over
            ? 'and in no room down to 15 °C cooler'
            : 'at no room up to 15 °C warmer'
          : `in a room ${decimals(Math.abs(edge.roomK), 1, 1)} °C ${edge.roomK < 0 ? 'cooler' : 'warmer'}`
      ].join(', ')
    )
    row(
      'what a little more does',
      `a millimetre ${signed(edge.perMm)} °C, a degree of room ${signed(edge.perK)} °C, a mix 10 °C warmer ${signed(edge.warmer.peakK)} °C${edge.warmer.workingMin === null ? '' : ` and ${formatMinutes(Math.abs(edge.warmer.workingMin))} ${edge.warmer.workingMin < 0 ? 'less' : 'more'} to work in`}`
    )
  }
  if (cast.learned !== null) {
    row('learned from readings', plain(cast.learned.says))
    if (cast.learned.disagree !== null) row('', plain(cast.learned.disagree))
    for (const said of cast.learned.unused) row('', plain(said))
  }
  if (cast.runaway) return [...lines, '  it runs away: no spans of time are given for what follows']
  const { windows: w } = cast
  const window = (label: string, text: string, at: Window) => {
    row(label, text)
    row('', paint.quiet(`sharper by: ${plain(at.settledBy)}`))
  }
  window('can be worked until', until(w.working), w.working)
  window('heat gun over the face', `${w.passes.moments.join(', ')} min after the pour`, w.passes)
  if (w.marbling !== null) window('colours can be drawn', span(w.marbling), w.marbling)
  for (const s of cast.swirls ?? [])
    row(
      `  colour ${s.index + 1} in its cup`,
      s.openMin === null
        ? 'not within two days'
        : `from ${formatMinutes(s.openMin)} to ${s.closeMin === null ? 'later' : formatMinutes(s.closeMin)} after the first is mixed`
    )
  row(
    'gels',
    w.gelMin === null
      ? 'not within seven days'
      : `from ${formatMinutes(w.gelMin)}${between(w.gel.band)}${w.halfGelMin === null ? '' : `, half of it by ${formatMinutes(w.halfGelMin)}`}`
  )
  if (w.stones !== null)
    window(
      'stones dropped in stay',
      w.stones.reached
        ? span(w.stones)
        : 'at no moment where all of them are wanted: set them on the tacky layer',
      w.stones
    )
  window('stones set on it stick', span(w.tacky), w.tacky)
  window('the next pour bonds', span(w.recoat), w.recoat)
  window('out of the mould', span(w.demould), w.demould)
  window('for abrasive paper', span(w.sand), w.sand)
  window('for the cutter', `${span(w.machine)}, common practice`, w.machine)
  window('into use', span(w.service), w.service)
  if (w.tgC.central !== null)
    row(
      'softens in use from',
      `${decimals(w.tgC.central, 0)} °C on the seventh day${w.tgC.band[0] === null ? '' : `, ${decimals(w.tgC.band[0], 0)} at the least`}`
    )
  row('most doubt of its heat', plain(cast.mostFrom))
  return lines
}

/** A runaway is none the surer for a figure. */
const degrees = (c: number): string =>
  c > RUNAWAY_ABOVE_C ? `over ${RUNAWAY_ABOVE_C} °C` : `${decimals(c, 0)} °C`

const signed = (x: number): string => `${x < 0 ? '−' : '+'}${decimals(Math.abs(x), 1, 1)}`

function until(w: Window): string {
  if (w.close === null) return 'it does not thicken within seven days'
  const [sure] = w.closeBand
  return `${formatMinutes(w.close)} after the pour${sure === null ? '' : ` (by ${formatMinutes(sure)} to be sure)`}`
}

function span(w: Window): string {
  if (!w.reached)
    return `not within ${formatMinutes(w.open)}${w.openBand[0] < w.open ? `; at the earliest ${formatMinutes(w.openBand[0])}` : ''}`
  const open = `from ${formatMinutes(w.open)}${between(w.openBand)}`
  return w.close === null ? `${open} on` : `${open} to ${formatMinutes(w.close)}${between(w.closeBand)}`
}

function between([low, high]: readonly [number | null, number | null]): string {
  if (low === null) return ''
  return high === null
    ? ` (${formatMinutes(low)} or later)`
    : high - low < 1
      ? ''
      : ` (${formatMinutes(low)} to ${formatMinutes(high)})`
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
