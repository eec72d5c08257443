import type { Dialect } from '../../piece/dialect-field.ts'
import { formatMinutes } from '../../quantity/format.ts'
import { commentLines } from './ascii.ts'
import { cutExtentOf, extentOf, pathsOf } from './extent.ts'
import type { Numbers } from './number.ts'
import { decimalsOf } from './number.ts'
import type { Box, ProgramInput } from './program.ts'

const LOUD = {
  cut: null,
  'test cut': 'TEST CUT: shallow, in cheap board. Not for the piece.',
  'air cut': 'AIR CUT: above the work, the spindle off. It cuts nothing.',
  restart: 'RESTART: begins at a later pass. See what was done before.'
} as const

/** What stands in every program, whoever made it: the maker decides, the manual of the machine goes first. */
const ALWAYS =
  'Safety: read this header, run the path above the work, and stay with a hand near the stop. All of it gives way to the manual of the machine and to the rules for workshops where you live.'

/** Shift of heights from the worked face to the zero that the dialect asks for, mm. */
export function zeroShiftMm(program: ProgramInput, dialect: Dialect): number {
  return dialect.zero === 'bed' ? -program.bedMm : 0
}

/**
 * The head of a program, in words and numbers: what it is for, how the piece lies, the zero and how it is set, the
 * cutters, the holding, how deep and how far it goes, how long it takes, the dialect, the safety lines. Same program,
 * same words: no clock, no name of a file.
 */
export function headerOf(program: ProgramInput, dialect: Dialect, numbers: Numbers): string[] {
  const shift = zeroShiftMm(program, dialect)
  const z = (mm: number) => numbers.mm(mm + shift)
  const { unit } = numbers
  const paths = pathsOf(program.runs)
  const cut = cutExtentOf(paths)
  const whole = extentOf(paths)
  const loud = LOUD[program.kind]
  const into = program.bedMm - cut.minZ
  return [
    `Program: ${program.name}`,
    `Piece: ${program.piece}`,
    ...(loud === null ? [] : [loud]),
    ...program.notes.map(n => `Note: ${n}`),
    ...program.setting.map(s => `Lies: ${s}`),
    ...program.zero.map(s => `Zero: ${s}`),
    `Zero of heights: ${zeroWords(program, dialect, z, unit)}`,
    `Height check: before each cutter turns the program stops over X${numbers.mm(program.checkAt.x)} Y${numbers.mm(program.checkAt.y)}, ${numbers.mm(CHECK_MM)} ${unit} over the face as it stands there. If the gap is not that, stop and set the height anew.`,
    ...program.runs.flatMap(r => [
      `Cutter ${r.number}: ${r.words}, ${numbers.mm(r.shape.diameterMm)} ${unit} across, ${program.spindle ? `${r.rpm.toFixed(0)} turns a minute` : 'not turning'}`,
      ...r.parts.map(p => `  cuts ${p.name}`),
      ...r.why.map(w => `  why: ${w}`)
    ]),
    ...program.holding.map(s => `Held: ${s}`),
    `Lies on the bed: ${boxWords(program.stock, numbers, shift)}`,
    `The tip goes: ${boxWords(whole, numbers, shift)}`,
    Number.isFinite(cut.minZ)
      ? `Deepest: Z${z(cut.minZ)} ${unit}${into > 0.0005 ? `, ${numbers.mm(into)} into the bed` : `, ${numbers.mm(-into)} above the bed`}`
      : 'Deepest: nothing is cut',
    `Crosses the work at Z${z(program.clearMm)} ${unit}`,
    ...minutesWords(program),
    `Machine: ${program.machine}`,
    `Dialect: RS-274, ${unit}, ${decimalsOf(dialect)} decimals, absolute, feeds a minute, ${dialect.arcs ? 'arcs G2 and G3 with I and J from the start of the arc' : 'arcs as short lines'}, ${dialect.cycles ? 'holes by G81, G82 and G83' : 'no canned cycles'}, ${dialect.changes}, work zero G54`,
    ...program.safety.map(s => `Safety: ${s}`),
    ALWAYS
  ].flatMap(commentLines)
}

function zeroWords(program: ProgramInput, dialect: Dialect, z: (mm: number) => string, unit: string): string {
  const test = program.kind === 'test cut'
  if (dialect.zero === 'bed')
    return `the bed. ${test ? 'The top of the board lies' : 'The face to be worked ends'} at Z${z(0)} ${unit}.`
  return `${test ? 'the top of the board' : 'the worked face as it is after flattening in this setting'}. The bed lies at Z${z(program.bedMm)} ${unit}.`
}

/** How high over the face the tip stands at the height check, mm. */
export const CHECK_MM = 5

function boxWords(b: Box, numbers: Numbers, shift: number): string {
  const axis = (name: string, from: number, to: number) =>
    `${name}${numbers.mm(from)} to ${name}${numbers.mm(to)}`
  return `${axis('X', b.minX, b.maxX)}, ${axis('Y', b.minY, b.maxY)}, ${axis('Z', b.minZ + shift, b.maxZ + shift)} ${numbers.unit}`
}

function minutesWords({ runs }: ProgramInput): string[] {
  const known = runs.flatMap(r => (r.minutes === null ? [] : [r.minutes]))
  if (known.length < runs.length) return []
  return [
    `Takes about ${formatMinutes(
      Math.max(
        1,
        known.reduce((a, b) => a + b, 0)
      )
    )}, cutter changes not counted`
  ]
}
