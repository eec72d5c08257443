import type { CutBy } from './findings/edge-worn.ts'
import { wornFindings } from './findings/edge-worn.ts'
import type { Finding, Severity } from './findings/finding.ts'
import { metWords } from './findings/met-words.ts'
import { notMadeFinding, provedFinding, unreadFinding } from './findings/proved.ts'
import { partOfLine } from './programs/joined.ts'
import type { MadePath } from './programs/program-input.ts'
import type { ProgramSet } from './programs/program-set.ts'
import type { StepProof } from './programs/prove-set.ts'
import type { ProvedSet } from './sheets/run-programs.ts'

/** What stands against a program, and where that is: so that it can be shown on the drawing of its setting. */
export interface CutFound {
  readonly finding: Finding
  /** null: no program is to blame (none was made, or all of a cutter's are). */
  readonly place: FoundPlace | null
}

/** Where a program does what it should not. */
export interface FoundPlace {
  /** The programs it happens in; lines are those of the first. */
  readonly files: readonly string[]
  readonly setting: number
  /** In few words, for a table. */
  readonly met: string
  /** In the coordinates of the setting, mm; null: it happens nowhere. */
  readonly x: number | null
  readonly y: number | null
  /** The line of the first file where it is worst, at that place; null: no line is to blame. */
  readonly line: number | null
  /** Ranges of lines in the first file, the first ones; empty: no line is to blame. */
  readonly lines: readonly (readonly [from: number, to: number])[]
}

/** What stands against the programs of a set, in the order of the steps. */
export function foundInCuts(set: ProgramSet, proofs: readonly StepProof[]): CutFound[] {
  const out: CutFound[] = [
    ...set.notMade.map(n => notMadeFinding(n.at, n.name, n.says, n.largestMm)),
    ...wornFindings(set.programs.flatMap(p => p.made).map(cutBy))
  ].map(finding => ({ finding, place: null }))
  for (const { at, setting, programs, proof } of proofs) {
    for (const p of programs) {
      const first = p.complaints.find(c => c.severity === 'error')
      if (first === undefined) continue
      const lines = [[first.line, first.line]] as const
      out.push({
        finding: unreadFinding(first, p.facts.errors, at, p.file),
        place: {
          files: [p.file],
          setting,
          met: 'words it does not know',
          x: null,
          y: null,
          line: first.line,
          lines
        }
      })
    }
    const all = programs.map(p => p.file)
    for (const report of proof.reports) {
      const { line, x, y } = report
      const [part] = partOfLine(programs, line)
      const files = line > 0 ? [programs[part]!.file] : all
      const known = Number.isFinite(x) && Number.isFinite(y)
      const lines =
        line > 0
          ? report.lines.flatMap(([from, to]): [number, number][] => {
              const [a, start] = partOfLine(programs, from)
              const [b, end] = partOfLine(programs, to)
              return a === part ? [[start, b === part ? end : start]] : []
            })
          : []
      out.push({
        finding: provedFinding(report, at, files.join(' and '), n => `line ${partOfLine(programs, n)[1]}`),
        place: {
          files,
          setting,
          met: metWords(report),
          x: known ? x : null,
          y: known ? y : null,
          line: line > 0 ? partOfLine(programs, line)[1] : null,
          lines
        }
      })
    }
  }
  return out
}

function cutBy({ operation, time }: MadePath): CutBy {
  const { at, cutter, met } = operation
  return { at, cutter: cutter.name, id: cutter.id, met, cutMm: time.cutMm }
}

const WORDS: Readonly<Record<Severity, string>> = { stop: 'Stop', caution: 'Caution', note: 'Note' }

/** Programs with what proving met in each, the gravest first: for lists of them. */
export function provedSet({
  set,
  found
}: {
  readonly set: ProgramSet
  readonly found: readonly CutFound[]
}): ProvedSet {
  const words = (file: string) => {
    const own = found.filter(f => f.place?.files.includes(file))
    const met = (['stop', 'caution', 'note'] as const).flatMap(severity =>
      own.filter(f => f.finding.severity === severity).map(f => `${WORDS[severity]}: ${f.place!.met}`)
    )
    return met.length === 0 ? 'nothing met' : met.join('; ')
  }
  return { ...set, met: new Map(set.programs.map(p => [p.file, words(p.file)])) }
}
