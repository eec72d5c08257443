import { cutExtentOf, pathsOf } from './extent.ts'
import type { ProgramFile } from './files.ts'

/** What is run, in order, as a sheet or a screen shows it. */
export interface ProgramLine {
  readonly number: number
  readonly file: string
  readonly name: string
  /** How the piece lies, and the zero, in words. */
  readonly setting: readonly string[]
  readonly zero: readonly string[]
  readonly cutters: readonly string[]
  readonly holding: readonly string[]
  /** Deepest tip of the cutter, z of the setting, mm; null where nothing is cut. */
  readonly deepestMm: number | null
  /** null where one of its cutters was not reckoned. */
  readonly minutes: number | null
  readonly lines: number
  /** Files of its test cut and its air cut; null where none was written. */
  readonly test: string | null
  readonly air: string | null
  readonly passes: readonly string[]
}

/** The list of programs: cuts in order, each with the test cut and the air cut that go before it. */
export function programList(files: readonly ProgramFile[]): ProgramLine[] {
  const beside = (name: string, kind: 'test cut' | 'air cut') =>
    files.find(f => f.program.kind === kind && f.program.name === `${name} ${kind}`)?.file ?? null
  const cuts = files.filter(f => f.program.kind === 'cut' || f.program.kind === 'restart')
  return cuts.map(({ file, program, lines, passes }, k) => {
    const deepest = cutExtentOf(pathsOf(program.runs)).minZ
    const minutes = program.runs.map(r => r.minutes)
    return {
      number: k + 1,
      file,
      name: program.name,
      setting: program.setting,
      zero: program.zero,
      cutters: program.runs.map(r => `${r.number} ${r.words}`),
      holding: program.holding,
      deepestMm: Number.isFinite(deepest) ? deepest : null,
      minutes: minutes.some(m => m === null) ? null : minutes.reduce<number>((a, m) => a + (m ?? 0), 0),
      lines,
      test: beside(program.name, 'test cut'),
      air: beside(program.name, 'air cut'),
      passes: passes.map(p => p.name)
    }
  })
}
