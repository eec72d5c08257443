import type { ProgramInput } from './cuts/write/program.ts'
import { writeProgram } from './cuts/write/write-program.ts'
import type { FoundPlace } from './cuts-found.ts'
import type { CutsPlan } from './cuts-plan.ts'
import type { Finding } from './findings/finding.ts'
import type { Despite, Plan } from './plan-answer.ts'
import type { Unreached } from './programs/unreached.ts'
import { unreachedOf } from './programs/unreached.ts'
import { machineCards } from './sheets/machine-card.ts'

/** A program as data: mm, minutes, in the coordinates of its setting. */
export interface ProgramData {
  readonly file: string
  readonly face: 'front' | 'back'
  /** Pointers to the entries it cuts, and the numbers of the steps. */
  readonly at: readonly string[]
  readonly steps: readonly number[]
  readonly name: string
  readonly cutters: readonly {
    readonly id: string
    readonly name: string
    readonly diameterMm: number
    readonly rpm: number
    readonly feedMmMin: number
    readonly plungeMmMin: number
    readonly depthMm: number
    readonly why: readonly string[]
  }[]
  readonly fromMm: number
  readonly toMm: number
  readonly minutes: number
  readonly test: { readonly file: string; readonly minutes: number } | null
  readonly air: { readonly file: string; readonly minutes: number } | null
  readonly passes: readonly string[]
}

/** All of a piece's cuts by machine as plain data. */
export interface CutsData {
  readonly castwright: 1
  readonly name: string
  readonly settings: readonly {
    readonly face: 'front' | 'back'
    /** Of a piece that is moved along on index pins: which position; null: it lies on the machine whole. */
    readonly position: CutsPlan['set']['machining']['settings'][number]['position']
    readonly zero: readonly string[]
    readonly lies: readonly string[]
    readonly bedMm: number
    /** How it was found to lie, which the programs have in them, and how thick; null: as planned. */
    readonly place: CutsPlan['set']['machining']['settings'][number]['place']
    readonly thickness: CutsPlan['set']['machining']['settings'][number]['thickness']
  }[]
  readonly pins: CutsPlan['set']['machining']['pins']
  readonly programs: readonly ProgramData[]
  readonly notMade: CutsPlan['set']['notMade']
  readonly proofs: readonly {
    readonly files: readonly string[]
    readonly cellMm: number
    readonly removedMm3: number
    readonly deepestMm: number | null
    readonly leastLeft: CutsPlan['proofs'][number]['proof']['leastLeft']
    readonly leftMm: number | null
    readonly cutAwayMm: number | null
    /** What no cutter of the programs comes to; null: nothing is held against what is wanted. */
    readonly unreached: Unreached | null
    /** What is told apart, mm. */
    readonly detectsMm: readonly [up: number, across: number] | null
  }[]
  readonly findings: readonly Finding[]
  /** Where its own programs do what stands in the first findings, in their order; null: in no program. */
  readonly places: readonly (FoundPlace | null)[]
  /** Plugs of inlays, each cut from a board of its own. */
  readonly plugs: readonly { readonly at: string; readonly id: string; readonly cuts: CutsData }[]
}

/** The cuts of a piece as data; findings of the piece itself stand in its plan. */
export function cutsData(
  { set, proofs, findings, found, plugs }: CutsPlan,
  plan: Pick<Plan, 'name'>
): CutsData {
  const { settings, pins, bench } = set.machining
  return {
    castwright: 1,
    name: plan.name,
    settings: settings.map(s => {
      const program = set.programs.find(p => p.made[0]!.operation.setting === s.index)
      return {
        face: s.setting.up,
        position: s.position,
        zero: program?.input.zero ?? [],
        lies: program?.input.setting ?? [],
        bedMm: s.frame.bedZ,
        place: s.place,
        thickness: s.thickness
      }
    }),
    pins,
    programs: set.programs.map((p): ProgramData => {
      const operations = p.made.map(m => m.operation)
      const file = (r: typeof p.test) => (r === null ? null : { file: r.file, minutes: r.minutes })
      return {
        file: p.file,
        face: settings[operations[0]!.setting]!.setting.up,
        at: [...new Set(operations.map(o => o.at))],
        steps: [...new Set(operations.map(o => bench.stack.steps[o.step]!.number))],
        name: p.input.name,
        cutters: operations.map(({ cutter, feeds, cutterWhy }) => ({
          id: cutter.id,
          name: cutter.name,
          diameterMm: cutter.shape.diameterMm,
          rpm: feeds.rpm,
          feedMmMin: feeds.feedMmMin,
          plungeMmMin: feeds.plungeMmMin,
          depthMm: feeds.depthMm,
          why: [cutterWhy, ...feeds.why]
        })),
        fromMm: Math.max(...operations.map(o => o.job.topMm)),
        toMm: Math.min(...operations.map(o => o.job.floorMm)),
        minutes: p.minutes,
        test: file(p.test),
        air: file(p.air),
        passes: p.written.passes.map(x => x.name)
      }
    }),
    notMade: set.notMade,
    proofs: proofs.map(({ programs, proof }) => ({
      files: programs.map(p => p.file),
      cellMm: proof.cellMm,
      removedMm3: proof.removedMm3,
      deepestMm: proof.deepestMm,
      leastLeft: proof.leastLeft,
      leftMm: proof.comparison?.left.mostMm ?? null,
      cutAwayMm: proof.comparison?.cutAway.mostMm ?? null,
      unreached: unreachedOf(set, programs, proof),
      detectsMm:
        proof.comparison === null ? null : [proof.comparison.detectsUpMm, proof.comparison.detectsAcrossMm]
    })),
    findings,
    places: found.map(f => f.place),
    plugs: plugs.map(p => ({ at: p.at, id: p.id, cuts: cutsData(p.cuts, { name: p.work.piece.name }) }))
  }
}

/** What is gone on despite, as a program says it in its header. */
export function despiteNotes(despite: readonly Despite[]): string[] {
  return despite.map(d => `Gone on despite ${d.id}, because: ${d.because}`)
}

/**
 * The files of all programs by name, each with its test cut and its air cut, and the card that lies at the machine;
 * what is gone on despite stands in all programs.
 */
export function programFilesOf(cuts: CutsPlan, plan: Pick<Plan, 'name' | 'despite'>): Map<string, string> {
  const { set, findings, plugs } = cuts
  const { program: dialect } = set.machining.bench.machine
  const notes = despiteNotes(plan.despite)
  const text = (input: ProgramInput, written: { readonly text: string }): string =>
    notes.length === 0
      ? written.text
      : writeProgram({ ...input, notes: [...notes, ...input.notes] }, dialect).text
  const files = new Map<string, string>()
  for (const p of set.programs) {
    for (const r of [p.test, p.air]) if (r !== null) files.set(r.file, text(r.input, r.written))
    files.set(p.file, text(p.input, p.written))
  }
  const own = findings.filter(f => !plugs.some(p => p.at === f.at))
  files.set('at-the-machine.md', machineCards(set, plan.name, own))
  for (const plug of plugs) {
    const { name } = plug.work.piece
    for (const [file, content] of programFilesOf(plug.cuts, { ...plan, name }))
      files.set(file === 'at-the-machine.md' ? `${plug.cuts.set.machining.prefix}${file}` : file, content)
  }
  return files
}
