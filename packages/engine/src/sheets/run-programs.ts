import type { ProgramFile, ProgramSet } from '../programs/program-set.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import type { RunDetail, RunFact, RunTable } from './run-part.ts'
import { fact, newLine } from './run-part.ts'

/** Programs with what proving met in each, by file. */
export interface ProvedSet extends ProgramSet {
  readonly met?: ReadonlyMap<string, string>
}

/** Every program in the order it is run, with its step, cutter, depth, minutes and what is run before it. */
export function programTable({ machining, programs, met }: ProvedSet): RunTable | null {
  if (programs.length === 0) return null
  const { steps } = machining.bench.stack
  return {
    title: 'Programs, in the order they are run',
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
        `${height(Math.max(...of.map(o => o.job.topMm)))}, ${height(Math.min(...of.map(o => o.job.floorMm)))}`,
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
    does: [...own.does, ...(begins === here[0] ? begins!.input.zero : [])],
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

function height(z: number): string {
  return decimals(z, 1, 1)
}
