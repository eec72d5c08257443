import { basename } from 'node:path'
import type { AnyProgram, Finding, Planned } from '@castwright/engine'
import {
  complaintText,
  cutterBox,
  decimals,
  gapsOf,
  nearestWord,
  proveAny,
  provedFinding,
  surelyPlanned
} from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { findingsReport } from '../cuts-report.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { progressLine } from '../progress.ts'
import { MOST_PROGRAM_BYTES, readText } from '../text-file.ts'
import type { Command } from './command.ts'

/** Most of what the reader complains of that is printed. */
const MOST_COMPLAINTS = 20

/** `castwright prove`: sweep any program over the piece. */
export const proveCommand: Command = {
  name: 'prove',
  about: 'sweep any program over the piece, as it stands at a step, before it is run',
  help: `castwright prove PIECE PROGRAM --step N [--cutter ID] [--cutters "1 ID; 2 ID"] [--zero "x,y,z"] [--cell MM]
                 [--json] [--shop FILE] [--readings FILE] [--as-of MOMENT]

Reads a program (RS-274) and sweeps its cutters along every move over the piece as the steps before left it. Says with
line numbers what it runs into, what it leaves and what it takes too much against what the step is to leave.
Ends with 0 when no stop stands, 1 when one does, 2 when the input cannot be used.

  --step N          the step it is run at, by its number on the run sheet: says which face is up and what is wanted
  --cutter ID       the cutter that is in when it starts; left out: the program has to name it
  --cutters "..."   cutters by their number in the program; left out: in the order of the shop
  --zero "x,y,z"    where the zero was set, mm off the zero that the plan's own programs have; left out: there
  --free            do not hold what it leaves against what the step is to leave
  --cell MM         side of a cell of the sweep; left out: 0.2
  --json            as JSON
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
`,
  run: args => {
    const given = argumentsOf('prove', args, {
      flags: ['json', 'free'],
      texts: ['step', 'cutter', 'cutters', 'zero', 'cell', 'shop', 'readings', 'as-of'],
      words: [2, 2, 'a piece file and a program']
    })
    if (given.flags.has('help')) return { out: proveCommand.help, code: 0 }
    const asOf = momentOf(given.texts.get('as-of'))
    const path = given.words[1]!
    const { input, says } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const text = readText(path, MOST_PROGRAM_BYTES)
    // Swept, it would meet nothing: no good word for a file that was never written out.
    if (!/\S/.test(text)) throw new Failure(`${path}: found an empty file; allowed: a program in RS-274`)
    const planned = surelyPlanned(input, { asOf, effort: 'preview' })
    const program: AnyProgram = {
      text,
      step: stepOf(planned, given.texts.get('step')),
      cutters: cuttersOf(planned, given.texts.get('cutter'), given.texts.get('cutters')),
      zeroOff: zeroOf(given.texts.get('zero')),
      compared: !given.flags.has('free'),
      cellMm: cellOf(given.texts.get('cell'))
    }
    const line = progressLine('proving')
    const proof = proved(planned, program, line.on)
    line.end()
    const { reading } = proof
    const at = planned.work.steps[program.step]!.at
    const findings = proof.proof.reports.map(r => provedFinding(r, at, basename(path), n => `line ${n}`))
    const errors = reading.facts.errors
    const code = errors > 0 || findings.some(f => f.severity === 'stop') ? 1 : 0
    if (given.flags.has('json')) {
      const { leastLeft, removedMm3, deepestMm, cellMm, peak } = proof.proof
      const data = {
        castwright: 1,
        program: basename(path),
        step: planned.work.steps[program.step]!.number,
        facts: reading.facts,
        complaints: reading.complaints,
        notProved: gapsOf(reading.facts),
        findings,
        proof: { cellMm, removedMm3, deepestMm, leastLeft, peak }
      }
      return { out: `${JSON.stringify(data, null, 2)}\n`, err: joined(says), code }
    }
    return { out: report(planned, program, proof, findings, basename(path)), err: joined(says), code }
  }
}

type Proved = ReturnType<typeof proved>

function proved({ work }: Planned, program: AnyProgram, on: (share: number) => void) {
  try {
    const run = proveAny(work, program)
    for (;;) {
      const next = run.next()
      if (next.done) return next.value
      on(next.value)
    }
  } catch (e) {
    if (e instanceof RangeError) throw new Failure(`castwright prove: ${e.message}`)
    throw e
  }
}

function report(
  planned: Planned,
  program: AnyProgram,
  { reading, proof }: Proved,
  findings: readonly Finding[],
  name: string
): string {
  const step = planned.work.steps[program.step]!
  const { complaints, facts } = reading
  const lines = [
    `${name} at step ${step.number}, ${step.says.toLowerCase()}: ${facts.lines} lines, ${decimals(proof.removedMm3 / 1000, 1)} cm³ taken off${proof.deepestMm === null ? '' : `, deepest Z${decimals(proof.deepestMm, 2)}`}; cells of ${decimals(proof.cellMm, 2)} mm`,
    ''
  ]
  for (const c of complaints.slice(0, MOST_COMPLAINTS)) lines.push(complaintText(c))
  const more = facts.errors + facts.warnings + facts.notes - Math.min(complaints.length, MOST_COMPLAINTS)
  if (more > 0) lines.push(`and ${more} more`)
  if (complaints.length > 0) lines.push('')
  const gaps = gapsOf(facts)
  if (findings.length > 0) lines.push(findingsReport(findings))
  // A sweep that met nothing is no good word for what it did not see.
  else
    lines.push(
      `${gaps.length === 0 ? 'Nothing met' : 'In what was swept nothing is met'} but what is to be cut.\n`
    )
  if (gaps.length > 0) lines.push('Not proved:', ...gaps.map(g => `- ${g}`), '')
  const { comparison } = proof
  if (comparison !== null && findings.length === 0 && gaps.length === 0)
    lines.push(
      `It leaves what the step is to leave: an error of more than ${decimals(comparison.detectsUpMm, 2)} mm up or ${decimals(comparison.detectsAcrossMm, 2)} mm across would be seen.\n`
    )
  return lines.join('\n')
}

function stepOf({ work }: Planned, text: string | undefined): number {
  const allowed = `the number of a step of the run sheet, 1 to ${work.steps.length}`
  if (text === undefined) throw new Failure(`castwright prove: found no --step; allowed: ${allowed}`)
  const index = /^[0-9]{1,5}$/.test(text) ? work.steps.findIndex(s => s.number === Number(text)) : -1
  if (index < 0) throw new Failure(`castwright prove: found --step ${text}; allowed: ${allowed}`)
  return index
}

function cuttersOf(
  { work }: Planned,
  first: string | undefined,
  all: string | undefined
): AnyProgram['cutters'] {
  const box = cutterBox(work)
  const named = (id: string) => {
    const found = box.find(c => c.id === id)
    if (found !== undefined) return found.shape
    const ids = box.map(c => c.id)
    const near = nearestWord(id, ids)
    throw new Failure(
      `castwright prove: found the cutter "${id}"; allowed: one of ${ids.slice(0, 12).join(', ')}${ids.length > 12 ? ', ...' : ''}${near === null ? '' : `; the nearest is ${near}`}`
    )
  }
  const out = new Map(box.map((c, i) => [i + 1, c.shape] as const))
  for (const part of (all ?? '').split(';').map(s => s.trim())) {
    if (part === '') continue
    const match = /^([0-9]{1,3})\s+(.+)$/.exec(part)
    if (match === null)
      throw new Failure(`castwright prove: found "${part}" in --cutters; allowed: "1 straight 6; 2 point 60"`)
    out.set(Number(match[1]), named(match[2]!))
  }
  if (first !== undefined) out.set(0, named(first))
  return out
}

function zeroOf(text: string | undefined): AnyProgram['zeroOff'] {
  if (text === undefined) return [0, 0, 0]
  const parts = text.split(',').map(Number)
  if (parts.length !== 3 || parts.some(v => !Number.isFinite(v) || Math.abs(v) > 20_000))
    throw new Failure(`castwright prove: found --zero ${text}; allowed: three lengths in mm, as "0,0,0.5"`)
  return parts as unknown as AnyProgram['zeroOff']
}

function cellOf(text: string | undefined): number {
  if (text === undefined) return 0.2
  const cell = Number(text)
  if (!(cell >= 0.05 && cell <= 2))
    throw new Failure(`castwright prove: found --cell ${text}; allowed: 0.05 to 2 mm`)
  return cell
}

function joined(lines: readonly string[]): string {
  return lines.map(s => `${s}\n`).join('')
}
