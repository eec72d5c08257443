import type { CutsPlan, Plan, Planned } from '@castwright/engine'
import {
  cutsData,
  cutsPlan,
  despiteNotes,
  fittedTests,
  notMadeOnce,
  programFilesOf,
  restarted,
  surelyPlanned,
  templateFiles
} from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { cutsReport, findingsReport } from '../cuts-report.ts'
import { knownOnly } from '../despite.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { writeFolder } from '../out-folder.ts'
import { templatePdf } from '../pdf-files.ts'
import { progressLine } from '../progress.ts'
import { scrapOf, shortWords } from '../scrap.ts'
import type { Command, PaperModule } from './command.ts'

/** `castwright cuts`: the programs of a piece, proved. */
export const cutsCommand: Command = {
  name: 'cuts',
  about: 'programs for the machine, each proved over the piece; test cuts, air cuts, pins',
  help: `castwright cuts PIECE [--out DIR] [--json] [--despite ID --because "..."] [--shop FILE] [--readings FILE]
                [--as-of MOMENT] [--scrap "200 x 120 x 12"]
castwright cuts PIECE --restart FILE --from PASS [--out DIR]

Chooses cutters and feeds, makes a program of every cut by machine (RS-274, in the dialect of the shop), reads it
back and sweeps it over the piece as it stands at that step. With --out the programs are written, each with its test
cut and its air cut, the card that lies at the machine, cuts.json and the templates of what is cut by hand; not while
a stop stands. Ends with 0 when no stop stands, 1 when one does, 2 when the input cannot be used.

With --restart one program is written that begins at a later pass of another, after a broken cutter or a power cut.

  --restart FILE    the program that stopped, by the name of its file
  --from PASS       the pass to begin at, by its number or its name
  --out DIR         the folder, made if need be
  --scrap "..."     fit the test cuts to a piece of cheap board: length x width x thickness, mm or each with its unit
  --json            cuts, pins, times and findings as JSON
  --despite ID      go on in spite of that finding, for the reason after --because; printed in every program
  --because "..."
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop, which has no machine
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
`,
  prints: true,
  run: (args, pdf) => {
    const given = argumentsOf('cuts', args, {
      flags: ['json'],
      texts: ['out', 'despite', 'because', 'shop', 'readings', 'as-of', 'restart', 'from', 'scrap'],
      words: [1, 1, 'one piece file']
    })
    if (given.flags.has('help')) return { out: cutsCommand.help, code: 0 }
    knownOnly('cuts', given.despite)
    const asOf = momentOf(given.texts.get('as-of'))
    const scrap = scrapOf(given.texts.get('scrap'))
    const { input, says } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const err = [...says]
    const before = surelyPlanned(input, { asOf, effort: 'preview', despite: given.despite })
    const line = progressLine('proving the programs')
    const proved = cutsPlan(before.work, line.on)
    line.end()
    if (proved === null) {
      err.push(nothing(before.work.shop.machine === undefined))
      // What is cut by hand alone has its templates.
      const templates = new Map<string, string | Uint8Array>([
        ...templateFiles(before),
        ...templatePdf(before, 'A4', pdf)
      ])
      const into = given.texts.get('out')
      if (into !== undefined && templates.size > 0)
        err.push(`written to ${into}: ${writeFolder(into, templates).join(', ')}`)
      return { out: given.flags.has('json') ? '{ "programs": [] }\n' : '', err: joined(err), code: 0 }
    }
    const fitted = scrap === null ? null : fittedTests(proved.set, scrap)
    const cuts: CutsPlan = fitted === null ? proved : { ...proved, set: fitted.set }
    err.push(...(fitted?.short ?? []).map(shortWords))
    const told = notMadeOnce(before.plan.findings, cuts.findings)
    const standing = told.filter(f => f.severity === 'stop' && !given.despite.some(d => d.id === f.id))
    const folder = given.texts.get('out')
    const again = againOf(given.texts, cuts, before.plan)
    if (again !== null && standing.length === 0) {
      if (folder === undefined) return { out: again.written.text, err: joined(err), code: 0 }
      writeFolder(folder, new Map([[again.file, again.written.text]]), true)
      err.push(`written to ${folder}: ${again.file}`)
      return { out: '', err: joined(err), code: 0 }
    }
    const data = `${JSON.stringify(cutsData(cuts, before.plan), null, 2)}\n`
    if (folder !== undefined && standing.length === 0) {
      const names = writeFolder(folder, filesOf(cuts, before, data, pdf))
      err.push(`written to ${folder}: ${names.join(', ')}`)
    } else if (folder !== undefined)
      err.push(
        `no program is written while a stop stands: ${[...new Set(standing.map(f => f.id))].join(', ')}; "castwright check" says what mends them`
      )
    const said = told.filter(f => f.severity === 'stop' || !before.plan.findings.includes(f))
    const out = given.flags.has('json')
      ? data
      : `${cutsReport(before.plan.name, cuts)}\n${findingsReport(said)}`
    return { out, err: joined(err), code: standing.length > 0 ? 1 : 0 }
  }
}

// The program that begins anew at a pass, if one is asked for.
function againOf(texts: ReadonlyMap<string, string>, cuts: CutsPlan, plan: Plan) {
  const file = texts.get('restart')
  const from = texts.get('from')
  if (file === undefined && from === undefined) return null
  if (file === undefined || from === undefined)
    throw new Failure('castwright cuts: found one of --restart and --from; allowed: both, or none')
  try {
    return restarted(cuts.set, file, from, despiteNotes(plan.despite))
  } catch (e) {
    if (e instanceof RangeError) throw new Failure(`castwright cuts: ${e.message}`)
    throw e
  }
}

function filesOf(
  cuts: CutsPlan,
  planned: Planned,
  data: string,
  pdf: PaperModule | undefined
): Map<string, string | Uint8Array> {
  return new Map<string, string | Uint8Array>([
    ...templateFiles(planned),
    ...templatePdf(planned, 'A4', pdf),
    ...programFilesOf(cuts, planned.plan),
    ['cuts.json', data]
  ])
}

function nothing(noMachine: boolean): string {
  return noMachine
    ? 'nothing is cut by machine: the shop has none. "castwright plan" gives the work by hand; --shop names a shop with a machine'
    : 'nothing of this piece is cut by machine'
}

function joined(lines: readonly string[]): string {
  return lines.map(s => `${s}\n`).join('')
}
