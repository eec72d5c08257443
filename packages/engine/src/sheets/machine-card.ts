import { find } from '../catalogue/find.ts'
import type { MachineSetting } from '../cuts/operation/operation.ts'
import { CHECK_MM } from '../cuts/write/header.ts'
import type { Finding } from '../findings/finding.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { ProgramFile, ProgramSet } from '../programs/program-set.ts'
import {
  heightsOf,
  liesWords,
  machineUnit,
  machineUnitWords,
  measuredWords,
  zeroWords
} from '../programs/setting-words.ts'
import { formatMinutes } from '../quantity/format.ts'
import { postedZ } from './run-programs.ts'
import { words } from './run-sheet-md.ts'

/** What a finding is called, as on the run sheet. */
const KIND = { stop: 'Stop', caution: 'Caution', note: 'Note' } as const

/**
 * The card that lies at the machine, as Markdown: for each setting how the piece lies, the zero and what to check of it,
 * the programs in the order they are run, each with its test cut and its air cut in front of it, what may be met, and
 * the safety lines. Written in the units of the shop; what the machine shows, X, Y and Z, in the machine's own.
 *
 * Of the checks: the height is set anew after every cutter (case C72); the shank is not pushed home (C73); a thickness
 * that is measured moves the height of the second side (machining.md B7). Common practice.
 */
export function machineCards(set: ProgramSet, name: string, findings: readonly Finding[]): string {
  const L = lengthsOf(set.machining.bench.shop)
  const units = machineUnitWords(set.machining)
  const blocks = [`# At the machine: ${words(name)}`, ...(units === null ? [] : [words(units)])]
  let number = 0
  for (const on of set.machining.settings) {
    const programs = set.programs.filter(p => p.made[0]!.operation.setting === on.index)
    if (programs.length === 0) continue
    blocks.push(...card(set, on, programs, findings, number, L))
    number += programs.length
  }
  const hazard = find('hazard', 'machine-cutting')
  if (hazard !== null)
    blocks.push(
      hazard.lines
        .map(l => `> **Safety.** ${words(L.beside(l))} *Gives way to ${words(hazard.defersTo.join('; '))}.*`)
        .join('\n>\n')
    )
  return `${blocks.join('\n\n')}\n`
}

function card(
  set: ProgramSet,
  on: MachineSetting,
  programs: readonly ProgramFile[],
  findings: readonly Finding[],
  before: number,
  L: Lengths
): string[] {
  const { input } = programs[0]!
  const { machining } = set
  const own = machineUnitWords(machining) === null ? null : L
  const stands = findings.filter(f => programs.some(p => f.says.startsWith(p.file)))
  return [
    `## ${on.setting.up === 'front' ? 'Front' : 'Back'} up${on.position === null ? '' : `, position ${on.position.number} of ${on.position.count}`}`,
    list([
      ...liesWords(machining, on, own).map(words),
      ...zeroWords(machining, on, own).map(words),
      `Heights: ${words(zeroOfHeights(set, on))}`,
      ...input.holding.map(h => `Held ${words(h)}`),
      ...measuredWords(machining, on, own).map(words)
    ]),
    '### Before the first cutter',
    list(checks(set, on, programs, L).map(c => `[ ] ${words(c)}`)),
    `Measured thickness \\_\\_\\_\\_\\_\\_ ${L.unit}, plan ${long(on.underMovedMm - on.frame.bedZ, L)}`,
    ...(stands.length === 0
      ? []
      : ['### What stands', list(stands.map(f => `**${KIND[f.severity]}.** ${words(L.beside(f.says))}`))]),
    '### In this order',
    programs.map((p, k) => program(set, p, before + k + 1, L)).join('\n')
  ]
}

function zeroOfHeights(set: ProgramSet, on: MachineSetting): string {
  const bed = on.frame.bedZ
  const z = heights(set)
  return set.machining.bench.machine.program.zero === 'bed'
    ? `Z0 is the bed; the worked face ends at Z${z(-bed)}.`
    : `Z0 is the face that is up, as it is after flattening; the bed lies at Z${z(bed)}.`
}

function checks(set: ProgramSet, on: MachineSetting, programs: readonly ProgramFile[], L: Lengths): string[] {
  const { machine } = set.machining.bench
  const flattens = programs.some(p => p.made.some(m => m.operation.kind === 'flatten'))
  const deepest = Math.min(...programs.flatMap(p => p.made.map(m => m.operation.job.floorMm)))
  const into = on.frame.bedZ - deepest
  const gauge = L.beside(`${CHECK_MM} mm`)
  const pinned =
    on.position === null
      ? set.machining.pins.pins.length > 0 && on.setting.index > 0
      : on.position.stands.length > 0
  return [
    'No chip between the piece and what it lies on; it does not rock.',
    ...(pinned ? ['On its pins, pushed home, and the face that is up is the one named above.'] : []),
    ...(into > 0.01
      ? [
          `The board beneath is at least ${long(into + 2, L)} thick: a cut goes ${long(into, L)} into it${machine.spoilboard > 0 ? ` (${long(machine.spoilboard, L)} in the shop)` : ''}.`
        ]
      : []),
    L.beside(
      'Each shank in its collet by the whole grip but not pushed home: 3 mm back off the bottom, the collet clean.'
    ),
    `Height set anew after every cutter: the program stops with the tip ${gauge} over the face, try a gauge of ${gauge}.`,
    ...(flattens
      ? [
          'After flattening: measure the thickness at four corners, and set the heights of the other side by it.'
        ]
      : [])
  ]
}

function program(set: ProgramSet, p: ProgramFile, number: number, L: Lengths): string {
  const { input } = p
  const cutters = [...new Set(input.runs.map(r => `${r.number} ${r.words}, ${r.rpm} turns a minute`))].join(
    '; '
  )
  const [from, to] = postedZ(set, p)
  const z = heights(set)
  const fromTo =
    machineUnitWords(set.machining) === null ? `${z(from)} to ${z(to)}` : `Z${z(from)} to Z${z(to)}`
  const rehearsal = (what: string, r: ProgramFile['test']) =>
    r === null
      ? []
      : [
          `[ ] ${what} **${words(r.file)}**, ${formatMinutes(Math.max(1, r.minutes))}${boardWords(r.input, L)}`
        ]
  return [
    `- **${number}  ${words(input.name)}**`,
    `  - Cutter ${words(cutters)}`,
    ...rehearsal('Test cut', p.test).map(l => `  - ${l}`),
    ...rehearsal('Air cut', p.air).map(l => `  - ${l}`),
    `  - [ ] **${words(p.file)}**, ${formatMinutes(Math.max(1, p.minutes))}, from ${fromTo}, ${p.written.passes.length} ${p.written.passes.length === 1 ? 'pass' : 'passes'}`
  ].join('\n')
}

// The board of a test cut.
function boardWords({ kind, stock }: ProgramFile['input'], L: Lengths): string {
  if (kind !== 'test cut') return ''
  const sizes = [stock.maxX - stock.minX, stock.maxY - stock.minY, stock.maxZ - stock.minZ]
  const unit = L.unit === 'mm' ? '' : ` ${L.unit}`
  return `, cheap board ${sizes.map(mm => L.of(mm, 0)).join(' × ')}${unit}`
}

function list(items: readonly string[]): string {
  return items.map(i => `- ${i}`).join('\n')
}

function long(mm: number, L: Lengths): string {
  return `${L.of(mm, 1, 1)} ${L.unit}`
}

// Heights as the machine shows them, with its unit.
function heights({ machining }: ProgramSet): (mm: number) => string {
  const of = heightsOf(machining)
  return mm => `${of(mm)} ${machineUnit(machining)}`
}
