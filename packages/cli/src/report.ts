import type { Finding, Operation, Plan } from '@castwright/engine'
import {
  decimals,
  formatMass,
  formatMinutes,
  formatVolume,
  RUNAWAY_ABOVE_C,
  readable
} from '@castwright/engine'
import { columns, lineWidth, paint, plain, wrap } from './paint.ts'

/** What `check` answers. */
export type Checked = Pick<Plan, 'verdict' | 'says' | 'totals' | 'findings'>

const VERDICT = { stop: 'NOT READY TO POUR', caution: 'YOUR JUDGEMENT IS WANTED', ready: 'READY' } as const

/** The answer to `check` as a terminal shows it: the verdict first, then each finding with its basis and fix. */
export function checkReport(name: string, checked: Checked, despite: Plan['despite'] = []): string {
  const { verdict, totals, findings } = checked
  const width = lineWidth()
  const lines = [paint.strong(plain(name)), totalsLine(totals), '']
  const count = counted(totals)
  lines.push(`${paint[verdict](VERDICT[verdict])}${count === '' ? '' : `  ${count}`}`, '')
  for (const d of despite) lines.push(...wrap(`Gone on despite ${d.id}, because: ${d.because}`, width), '')
  for (const f of findings) lines.push(...findingLines(f, width), '')
  if (findings.length === 0) lines.push('Nothing stands against it.', '')
  return lines.join('\n')
}

function totalsLine(t: Plan['totals']): string {
  const [x, y, z] = t.sizeMm
  const parts = [
    `${decimals(x, 1)} × ${decimals(y, 1)} × ${decimals(z, 1, 1)} mm finished`,
    formatMass(t.massG),
    // Of a row the figures are those of one; what is mixed together stands on the run sheet.
    t.batches === 0 || t.blanks > 1
      ? `${formatMass(t.resinMixedG)} of resin mixed${t.blanks > 1 ? ' for each blank' : ''}`
      : `${formatMass(t.resinMixedG)} of resin mixed in ${t.batches} ${t.batches === 1 ? 'batch' : 'batches'}`,
    `${formatMinutes(t.waitDays * 1440)} of waiting`
  ]
  if (t.pieces > 1) parts.push(`${t.pieces} pieces from ${t.blanks} blanks`)
  return parts.join(', ')
}

function counted(t: Plan['totals']): string {
  const parts = [
    [t.stops, 'stop'],
    [t.cautions, 'caution'],
    [t.notes, 'note']
  ] as const
  return parts
    .filter(([n]) => n > 0)
    .map(([n, word]) => `${n} ${word}${n === 1 ? '' : 's'}`)
    .join(', ')
}

function findingLines(f: Finding, width: number): string[] {
  const indent = ' '.repeat(9)
  const [first = '', ...rest] = wrap(f.says, width, indent)
  const lines = [`${paint[f.severity](f.severity.padEnd(8))} ${first.trimStart()}`, ...rest]
  const detail = (label: string, text: string) =>
    lines.push(
      ...wrap(text, width, indent + ' '.repeat(11)).map((line, i) =>
        i === 0 ? `${indent}${paint.quiet(label.padEnd(11))}${line.trimStart()}` : line
      )
    )
  detail('at', f.at === '' ? `the piece (${f.id})` : `${readable(f.at)} (${f.id})`)
  const figures = figuresOf(f)
  if (figures !== null) detail('figures', figures)
  detail('basis', f.basis)
  if (f.settledBy !== null) detail('settled by', f.settledBy)
  if (f.fixSays !== null) detail('fix', f.fixSays)
  for (const op of f.fix ?? []) detail('', operationWords(op))
  return lines
}

/** One change of the document, as a person would make it. */
function operationWords(op: Operation): string {
  switch (op.op) {
    case 'remove':
      return `leave out ${readable(op.path)}`
    case 'move':
      return `move ${readable(op.from)} to ${readable(op.path)}`
    case 'copy':
      return `${readable(op.path)} as ${readable(op.from)}`
    default:
      return `${readable(op.path)} = ${JSON.stringify(op.value)}`
  }
}

function figuresOf(f: Finding): string | null {
  if (f.value === null) return null
  // A runaway is none the surer for a figure.
  if (f.unit === '°C' && f.value > RUNAWAY_ABOVE_C)
    return `over ${RUNAWAY_ABOVE_C} °C${f.limit === null ? '' : `, limit ${figure(f.limit)} °C`}`
  const unit = f.unit === null ? '' : ` ${f.unit}`
  const band = f.band === null ? '' : `, between ${figure(f.band[0])} and ${figure(f.band[1])}`
  const limit = f.limit === null ? '' : `, limit ${figure(f.limit)}${unit}`
  return `${figure(f.value)}${unit}${band}${limit}`
}

function figure(x: number): string {
  const size = Math.abs(x)
  return decimals(x, size >= 100 ? 0 : size >= 10 ? 1 : 2)
}

/** The steps, batches and what to buy, in short: what `plan` shows besides the check. */
export function planReport(plan: Plan): string {
  const lines: string[] = [paint.strong('Pours')]
  lines.push(
    ...columns(
      [
        ['', 'resin', 'level', 'poured', 'mixed', 'batches', 'peak'],
        ...plan.pours.map(p => [
          p.id,
          p.resin,
          `${decimals(p.stack.level, 1, 1)}`,
          formatVolume(p.stack.liquidMl),
          p.batches === null ? '-' : formatMass(p.batches.mixedG),
          p.batches === null || p.batches.mixed === null
            ? '-'
            : `${p.batches.mixed.count} × ${formatMass(p.batches.mixed.batchG)}`,
          p.cast === null
            ? 'not predicted'
            : `${decimals(p.cast.peakC, 0)} °C after ${formatMinutes(p.cast.peakMin)}`
        ])
      ],
      [false, false, true, true, true, true, false]
    ).map(line => `  ${plain(line) === '' ? '' : line}`)
  )
  lines.push(
    '',
    paint.strong(`Steps: ${plan.steps.length}, ${formatMinutes(plan.totals.waitDays * 1440)} of waiting`)
  )
  lines.push(
    ...columns(
      plan.steps.map(s => [
        `${s.number}`,
        plain(s.kind === 'wait' ? `${s.says} (${formatMinutes(s.waitMin)})` : s.says),
        s.safety.length > 0 ? 'with care: see the run sheet' : ''
      ]),
      [true]
    ).map(l => `  ${l}`)
  )
  const toBuy = plan.buy.filter(b => b.buy > 0).length
  const { materialCost, currency, unpriced } = plan.totals
  lines.push('', paint.strong(`To buy: ${toBuy} lines`))
  if (materialCost > 0)
    lines.push(
      `  material with a known price, at cost: ${decimals(materialCost, 2, 2)} ${currency}${unpriced > 0 ? `; ${unpriced} lines without a price` : ''}`
    )
  return `${lines.join('\n')}\n`
}
