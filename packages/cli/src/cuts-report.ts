import type { CutsPlan, Finding } from '@castwright/engine'
import { decimals, formatMinutes, measuredWords } from '@castwright/engine'
import { columns, lineWidth, paint, plain, wrap } from './paint.ts'

/** The programs of a piece as a terminal shows them: in order, with cutter, depth, minutes and what each meets. */
export function cutsReport(name: string, cuts: CutsPlan): string {
  const { set, findings } = cuts
  const lines = [paint.strong(plain(name)), '']
  const plugs = cuts.plugs.map(p => cutsReport(p.work.piece.name, p.cuts))
  for (const on of set.machining.settings) {
    const programs = set.programs.filter(p => p.made[0]!.operation.setting === on.index)
    if (programs.length === 0) continue
    const at = on.position === null ? '' : `, position ${on.position.number} of ${on.position.count}`
    lines.push(paint.strong(`${on.setting.up[0]!.toUpperCase()}${on.setting.up.slice(1)} up${at}`))
    lines.push(...programs[0]!.input.zero.flatMap(z => wrap(z, lineWidth(), '  ')))
    lines.push(...measuredWords(set.machining, on).flatMap(w => wrap(w, lineWidth(), '  ')))
    const rows = programs.map(p => [
      `  ${p.file}`,
      [...new Set(p.made.map(m => m.operation.cutter.id))].join(', '),
      `${decimals(Math.max(...p.made.map(m => m.operation.job.topMm - m.operation.job.floorMm)), 1, 1)} deep`,
      formatMinutes(Math.max(1, p.minutes)),
      meets(findings, p.file)
    ])
    lines.push(...columns(rows, [false, false, true, true]), '')
  }
  const total = set.programs.reduce((sum, p) => sum + p.minutes, 0)
  const rehearsals = set.programs.reduce((sum, p) => sum + (p.test?.minutes ?? 0) + (p.air?.minutes ?? 0), 0)
  lines.push(
    `${set.programs.length} programs, ${formatMinutes(total)} of cutting; test cuts and air cuts ${formatMinutes(rehearsals)}; cutter changes not counted`,
    '',
    ...plugs
  )
  return lines.join('\n')
}

function meets(findings: readonly Finding[], file: string): string {
  const own = findings.filter(f => f.says.startsWith(file))
  if (own.length === 0) return 'nothing met'
  return own.map(f => `${f.severity}: ${f.id}`).join(', ')
}

/** Findings one under the other. */
export function findingsReport(findings: readonly Finding[]): string {
  const width = lineWidth()
  return findings
    .flatMap(f => {
      const [first = '', ...rest] = wrap(f.says, width, ' '.repeat(9))
      return [`${paint[f.severity](f.severity.padEnd(8))} ${first.trimStart()}`, ...rest, '']
    })
    .join('\n')
}
