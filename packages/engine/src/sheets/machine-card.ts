import { find } from '../catalogue/find.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import type { Finding } from '../findings/finding.ts'
import type { ProgramFile, ProgramSet } from '../programs/program-set.ts'
import { measuredWords } from '../programs/setting-words.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import { words } from './run-sheet-md.ts'

/** What a finding is called, as on the run sheet. */
const KIND = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const

/**
 * The card that lies at the machine, as Markdown: for each setting how the piece lies, the zero and what to check of it,
 * the programs in the order they are run, each with its test cut and its air cut in front of it, what may be met, and
 * the safety lines.
 *
 * Of the checks: the height is set anew after every cutter (case C72); the shank is not pushed home (C73); a thickness
 * that is measured moves the height of the second side (machining.md B7). Common practice.
 */
export function machineCards(set: ProgramSet, name: string, findings: readonly Finding[]): string {
  const blocks = [`# At the machine: ${words(name)}`]
  let number = 0
  for (const on of set.machining.settings) {
    const programs = set.programs.filter(p => p.made[0]!.operation.setting === on.index)
    if (programs.length === 0) continue
    blocks.push(...card(set, on, programs, findings, number))
    number += programs.length
  }
  const hazard = find('hazard', 'machine-cutting')
  if (hazard !== null)
    blocks.push(
      hazard.lines
        .map(l => `> **Safety.** ${words(l)} *Gives way to ${words(hazard.defersTo.join('; '))}.*`)
        .join('\n>\n')
    )
  return `${blocks.join('\n\n')}\n`
}

function card(
  set: ProgramSet,
  on: MachineSetting,
  programs: readonly ProgramFile[],
  findings: readonly Finding[],
  before: number
): string[] {
  const { input } = programs[0]!
  const own = findings.filter(f => programs.some(p => f.says.startsWith(p.file)))
  return [
    `## ${on.setting.up === 'front' ? 'Front' : 'Back'} up${on.position === null ? '' : `, position ${on.position.number} of ${on.position.count}`}`,
    list([
      ...input.setting.map(words),
      ...input.zero.map(words),
      `Heights: ${words(zeroOfHeights(set, on))}`,
      ...input.holding.map(h => `Held ${words(h)}`),
      ...measuredWords(on).map(words)
    ]),
    '### Before the first cutter',
    list(checks(set, on, programs).map(c => `[ ] ${words(c)}`)),
    `Measured thickness \\_\\_\\_\\_\\_\\_ mm (plan ${mm(on.underMovedMm - on.frame.bedZ)})`,
    ...(own.length === 0
      ? []
      : ['### What stands', list(own.map(f => `**${KIND[f.severity]}.** ${words(f.says)}`))]),
    '### In this order',
    programs.map((p, k) => program(p, before + k + 1)).join('\n')
  ]
}

function zeroOfHeights(set: ProgramSet, on: MachineSetting): string {
  const bed = on.frame.bedZ
  return set.machining.bench.machine.program.zero === 'bed'
    ? `Z0 is the bed; the worked face ends at Z${mm(-bed)}.`
    : `Z0 is the face that is up, as it is after flattening; the bed lies at Z${mm(bed)}.`
}

function checks(set: ProgramSet, on: MachineSetting, programs: readonly ProgramFile[]): string[] {
  const { machine } = set.machining.bench
  const flattens = programs.some(p => p.made.some(m => m.operation.kind === 'flatten'))
  const deepest = Math.min(...programs.flatMap(p => p.made.map(m => m.operation.job.floorMm)))
  const into = on.frame.bedZ - deepest
  const pinned =
    on.position === null
      ? set.machining.pins.pins.length > 0 && on.setting.index > 0
      : on.position.stands.length > 0
  return [
    'No chip between the piece and what it lies on; it does not rock.',
    ...(pinned ? ['On its pins, pushed home, and the face that is up is the one named above.'] : []),
    ...(into > 0.01
      ? [
          `The board beneath is at least ${mm(into + 2)} thick: a cut goes ${mm(into)} into it${machine.spoilboard > 0 ? ` (${mm(machine.spoilboard)} in the shop)` : ''}.`
        ]
      : []),
    'Each shank in its collet by the whole grip but not pushed home: 3 mm back off the bottom, the collet clean.',
    `Height set anew after every cutter: the program stops with the tip 5 mm over the face, try a gauge of 5 mm.`,
    ...(flattens
      ? [
          'After flattening: measure the thickness at four corners, and set the heights of the other side by it.'
        ]
      : [])
  ]
}

function program(p: ProgramFile, number: number): string {
  const { input } = p
  const cutters = [...new Set(input.runs.map(r => `${r.number} ${r.words}, ${r.rpm} turns a minute`))].join(
    '; '
  )
  const from = Math.max(...p.made.map(m => m.operation.job.topMm))
  const to = Math.min(...p.made.map(m => m.operation.job.floorMm))
  const rehearsal = (what: string, r: ProgramFile['test']) =>
    r === null
      ? []
      : [`[ ] ${what} **${words(r.file)}**, ${formatMinutes(Math.max(1, r.minutes))}${boardWords(r.input)}`]
  return [
    `- **${number}  ${words(input.name)}**`,
    `  - Cutter ${words(cutters)}`,
    ...rehearsal('Test cut', p.test).map(l => `  - ${l}`),
    ...rehearsal('Air cut', p.air).map(l => `  - ${l}`),
    `  - [ ] **${words(p.file)}**, ${formatMinutes(Math.max(1, p.minutes))}, from ${mm(from)} to ${mm(to)}, ${p.written.passes.length} ${p.written.passes.length === 1 ? 'pass' : 'passes'}`
  ].join('\n')
}

// The board of a test cut.
function boardWords({ kind, stock }: ProgramFile['input']): string {
  if (kind !== 'test cut') return ''
  const thick = stock.maxZ - stock.minZ
  return `, cheap board ${decimals(stock.maxX - stock.minX, 0)} × ${decimals(stock.maxY - stock.minY, 0)} × ${decimals(thick, 0)}`
}

function list(items: readonly string[]): string {
  return items.map(i => `- ${i}`).join('\n')
}

function mm(value: number): string {
  return `${decimals(value, 1, 1)} mm`
}
