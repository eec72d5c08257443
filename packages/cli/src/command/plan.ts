import { deflateSync } from 'node:zlib'
import type { CutsPlan, Days, Paper, PlanInput, Planned } from '@castwright/engine'
import {
  buyCsv,
  cutsData,
  cutsPlan,
  daysData,
  daysIcs,
  daysOf,
  facePictures,
  foundInDays,
  fullPlan,
  page,
  pngAddress,
  programFilesOf,
  provedSet,
  readyMoment,
  runSheetHtml,
  runSheetMarkdown,
  templateFiles,
  withFindings
} from '@castwright/engine'
import { argumentsOf } from '../arguments.ts'
import { knownOnly } from '../despite.ts'
import { Failure } from '../failure.ts'
import { load } from '../load.ts'
import { momentOf } from '../moment.ts'
import { writeFolder } from '../out-folder.ts'
import { pageAssets } from '../page-assets.ts'
import { pdfFiles, solids, templatePdf } from '../pdf-files.ts'
import { photoFolder, photosShown } from '../photo-folder.ts'
import { progressLine } from '../progress.ts'
import { readingsPath } from '../readings-file.ts'
import { checkReport, planReport } from '../report.ts'
import type { Command, PaperModule } from './command.ts'

/** `castwright plan`: everything, written to a folder. */
export const planCommand: Command = {
  name: 'plan',
  about: 'the whole plan into a folder: run sheet, page, buy list, plan.json',
  help: `castwright plan PIECE --out DIR [--json] [--despite ID --because "..."] [--shop FILE] [--readings FILE]
                [--as-of MOMENT] [--paper A4|letter]

Writes piece.html, buy-list.csv, plan.json, days.json, calendar.ics, the colour of both faces as front.png and back.png, the run sheet as
run-sheet.pdf, run-sheet.html and run-sheet.md; cup labels, drawing, care sheet and what it costs as PDF, and, once
something was recorded, what was made as as-made.pdf; the finished piece as solid.3mf, and as solid-NAME.stl for each
material; where the shop has a machine, the programs of its cuts, proved, with cuts.json; where something is cut by
hand, its templates in true size as templates.pdf, and each sheet as template-N.svg. All or nothing: files of an
earlier plan are replaced, others are not touched. While a stop stands run sheet, programs and templates are not
written; steps already begun are, with what makes them safe, as begun.pdf, begun.html and begun.md. Ends with 0 when
no stop stands, 1 when one does, 2 when the input cannot be used.

  --out DIR         the folder, made if need be
  --despite ID      go on in spite of that finding, for the reason after --because; printed on every sheet
  --because "..."
  --json            the findings as JSON instead of the report
  --shop FILE       your own facts; left out: shop.json beside the piece, else the built-in shop
  --readings FILE   what was measured; left out: NAME.readings.jsonl beside NAME.piece.json, if there
  --as-of MOMENT    what counts as now
  --paper A4|letter of the PDF files and templates; left out: A4
`,
  prints: true,
  run: (args, pdf) => {
    const given = argumentsOf('plan', args, {
      flags: ['json'],
      texts: ['out', 'despite', 'because', 'shop', 'readings', 'as-of', 'paper'],
      words: [1, 1, 'one piece file']
    })
    if (given.flags.has('help')) return { out: planCommand.help, code: 0 }
    const folder = given.texts.get('out')
    if (folder === undefined) throw new Failure('castwright plan: found no --out; allowed: --out DIR')
    knownOnly('plan', given.despite)
    const asOf = momentOf(given.texts.get('as-of'))
    const paper = paperOf(given.texts.get('paper'))
    const { input, says } = load({
      piece: given.words[0]!,
      shop: given.texts.get('shop'),
      readings: given.texts.get('readings')
    })
    const line = progressLine('casting the whole mould')
    const options = { asOf, effort: 'full', despite: given.despite } as const
    const cast = fullPlan(input, options, line.on)
    line.end()
    const proving = progressLine('proving the programs')
    const cuts = cutsPlan(cast.work, proving.on)
    proving.end()
    const days = daysOf(input, { asOf })
    const ready = readyMoment(days)
    const more = [...(cuts?.findings ?? []), ...foundInDays(days, input)]
    const planned = withFindings(cast, more, { ...options, ready })
    const idle = given.despite.filter(d => !planned.plan.despite.some(x => x.id === d.id))
    const err = [...says, ...idle.map(d => `--despite ${d.id}: no such finding stands; left out`)]
    const kept = photoFolder(readingsPath(given.words[0]!, given.texts.get('readings')))
    const { photos, says: missing } = photosShown(kept, planned.work.readings)
    if (pdf !== undefined) err.push(...missing)
    const names = writeFolder(folder, filesOf(input, planned, cuts, days, paper, pdf, photos))
    const { verdict, totals, findings } = planned.plan
    err.push(`written to ${folder}: ${names.join(', ')}`)
    if (verdict === 'stop')
      err.push(
        `the run sheet ${cuts === null ? 'is' : 'and the programs are'} not written while a stop stands`
      )
    const out = given.flags.has('json')
      ? `${JSON.stringify({ verdict, totals, findings }, null, 2)}\n`
      : `${checkReport(planned.plan.name, planned.plan, planned.plan.despite)}${planReport(planned.plan)}`
    return { out, err: err.map(s => `${s}\n`).join(''), code: verdict === 'stop' ? 1 : 0 }
  }
}

function filesOf(
  input: PlanInput,
  planned: Planned,
  cuts: CutsPlan | null,
  days: Days,
  paper: Paper,
  pdf: PaperModule | undefined,
  photos: ReadonlyMap<string, Uint8Array>
): Map<string, string | Uint8Array> {
  const { plan: p } = planned
  const assets = pageAssets()
  const programs = cuts === null ? null : provedSet(cuts)
  const pictures = facePictures(planned, deflateSync)
  const files = new Map<string, string | Uint8Array>([
    ['piece.html', page(planned, { ...assets, programs, days }, image => pngAddress(image, deflateSync))],
    ['front.png', pictures.front],
    ['back.png', pictures.back],
    ['buy-list.csv', buyCsv(p)],
    ['plan.json', `${JSON.stringify(p, null, 2)}\n`]
  ])
  files.set('days.json', `${JSON.stringify(daysData(days), null, 2)}\n`)
  if (days.clash === null && p.verdict !== 'stop') files.set('calendar.ics', daysIcs(days))
  // While a stop stands the sheet holds what is begun and what makes that safe, and nothing else.
  const name = p.verdict !== 'stop' ? 'run-sheet' : anyBegun(planned) ? 'begun' : null
  if (name !== null) {
    files.set(`${name}.html`, runSheetHtml(planned, { fonts: assets.fonts, programs, days }))
    files.set(`${name}.md`, runSheetMarkdown(planned, { programs, days }))
  }
  if (cuts !== null) {
    files.set('cuts.json', `${JSON.stringify(cutsData(cuts, p), null, 2)}\n`)
    if (p.verdict !== 'stop') for (const [file, text] of programFilesOf(cuts, p)) files.set(file, text)
  }
  for (const [sheet, content] of templateFiles(planned, paper)) files.set(sheet, content)
  for (const [file, bytes] of solids(planned, pdf)) files.set(file, bytes)
  if (name === null) for (const [file, bytes] of templatePdf(planned, paper, pdf)) files.set(file, bytes)
  else
    for (const [file, bytes] of pdfFiles(input, planned, cuts, days, paper, pdf, photos))
      files.set(file, bytes)
  return files
}

function paperOf(word: string | undefined): Paper {
  if (word === undefined || word === 'A4') return 'A4'
  if (word === 'letter') return 'letter'
  throw new Failure(`castwright plan: found --paper ${word}; allowed: A4, letter`)
}

function anyBegun({ work }: Planned): boolean {
  return work.readings.some(r => r.kind === 'mixed' || r.kind === 'poured')
}
