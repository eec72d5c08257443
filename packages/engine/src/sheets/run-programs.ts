import { zeroShiftMm } from '../cuts/write/header.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { ProgramFile, ProgramSet } from '../programs/program-set.ts'
import { heightsOf, machineUnit, machineUnitWords, zeroWords } from '../programs/setting-words.ts'
import { formatMinutes } from '../quantity/format.ts'
import type { RunDetail, RunFact, RunTable } from './run-part.ts'
import { fact, newLine } from './run-part.ts'

/** Programs with what proving met in each, by file. */
export interface ProvedSet extends ProgramSet {
  readonly met?: ReadonlyMap<string, string>
}

/** Every program in the order it is run, with its step, cutter, depth, minutes and what is run before it. */
export function programTable(set: ProvedSet): RunTable | null {
  const { machining, programs, met } = set
  if (programs.length === 0) return null
  const height = heightsOf(machining)
  const other = machineUnitWords(machining) !== null
  const { steps } = machining.bench.stack
  return {
    title: `Programs, in the order they are run${other ? `; Z in ${machineUnit(machining)}, as the machine reads it` : ''}`,
    head: [
      'Program',
      'Step',
      'Face up',
      'Cutter',
      'From, to Z',
      'Minutes',
      'Before it',
      ...(met === undefined ? [] : ['Proved'])
    ],
    rows: programs.map(p => {
      const of = p.made.map(m => m.operation)
      const [first] = of
      return [
        p.file,
        [...new Set(of.map(o => steps[o.step]!.number))].join(', '),
        machining.settings[first!.setting]!.setting.up,
        [...new Set(of.map(o => o.cutter.id))].join(', '),
        postedZ(set, p).map(height).join(', '),
        formatMinutes(Math.max(1, p.minutes)),
        before(p),
        ...(met === undefined ? [] : [met.get(p.file) ?? ''])
      ]
    })
  }
}

/** A step's detail with the programs that are run in it; the first of a setting says what they are counted from. */
export function withPrograms(set: ProgramSet | null, step: number, own: RunDetail): RunDetail {
  if (set === null) return own
  const here = set.programs.filter(p => p.made.some(m => m.operation.step === step))
  if (here.length === 0) return own
  const begins = set.programs.find(p => p.made[0]!.operation.setting === here[0]!.made[0]!.operation.setting)
  return {
    ...own,
    does: [...own.does, ...(begins === here[0] ? countedFrom(set, begins!) : [])],
    facts: [...own.facts, ...here.flatMap(programFacts)]
  }
}

function programFacts(p: ProgramFile): RunFact[] {
  return [
    newLine(fact('Program', p.file, formatMinutes(Math.max(1, p.minutes)))),
    ...(p.test === null ? [] : [fact('Test cut', p.test.file)]),
    ...(p.air === null ? [] : [fact('Air cut', p.air.file)])
  ]
}

function before(p: ProgramFile): string {
  const names = [p.test === null ? '' : 'test cut', p.air === null ? '' : 'air cut']
  return names.filter(n => n !== '').join(', ')
}

// What is counted from where; where the machine has other units than the shop, that first.
function countedFrom({ machining }: ProgramSet, begins: ProgramFile): string[] {
  const units = machineUnitWords(machining)
  if (units === null) return [...begins.input.zero]
  const on = machining.settings[begins.made[0]!.operation.setting]!
  return [units, ...zeroWords(machining, on, lengthsOf(machining.bench.shop))]
}

/** Where the tip is at most and at least while a program cuts, mm over the zero it is written for. */
export function postedZ({ machining }: ProgramSet, p: ProgramFile): readonly [from: number, to: number] {
  const shift = zeroShiftMm(p.input, machining.bench.machine.program)
  const jobs = p.made.map(m => m.operation.job)
  return [Math.max(...jobs.map(j => j.topMm)) + shift, Math.min(...jobs.map(j => j.floorMm)) + shift]
}
