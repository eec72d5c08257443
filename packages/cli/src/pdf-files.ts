import type { CutsPlan, Days, Paper, PlanInput, Planned } from '@castwright/engine'
import {
  asMadeOf,
  buySheet,
  careOf,
  cupLabels,
  drawnOf,
  paperTemplates,
  privateQuoteSoFar,
  provedSet,
  runSheet,
  sectionDrawing,
  solidFiles
} from '@castwright/engine'
import type { PaperModule } from './command/command.ts'

/** What is printed of a plan, by file name; nothing when PDF files are not written here. */
export function pdfFiles(
  input: PlanInput,
  planned: Planned,
  cuts: CutsPlan | null,
  days: Days,
  paper: Paper,
  pdf: PaperModule | undefined,
  photos: ReadonlyMap<string, Uint8Array>
): ReadonlyMap<string, Uint8Array> {
  const files = new Map<string, Uint8Array>()
  if (pdf === undefined) return files
  const drawn = drawnOf(planned)
  const name = planned.plan.verdict === 'stop' ? 'begun.pdf' : 'run-sheet.pdf'
  const sheet = runSheet(planned, { programs: cuts === null ? null : provedSet(cuts), days })
  files.set(name, pdf.runSheetPdf(sheet, drawn, paper))
  const { asOf } = planned.plan
  files.set(
    'quote-private.pdf',
    pdf.quotePdf(sheet.name, 'cost and price, private', privateQuoteSoFar(planned, asOf), null, paper, asOf)
  )
  files.set('buy-list.pdf', pdf.buyListPdf(buySheet(planned, days), paper))
  if (planned.work.readings.length > 0)
    files.set('as-made.pdf', pdf.asMadePdf(asMadeOf(input, asOf), drawn, paper, photos))
  if (sheet.written) files.set('care.pdf', pdf.carePdf(careOf(planned), drawn, paper))
  const labels = cupLabels(sheet, paper)
  if (labels.length > 0)
    files.set('cup-labels.pdf', pdf.sheetsPdf(labels, { title: `${sheet.name}: cup labels`, asOf }))
  files.set(
    'drawing.pdf',
    pdf.sheetsPdf([sectionDrawing(planned, paper)], { title: `${sheet.name}: drawing`, asOf })
  )
  for (const [file, bytes] of templatePdf(planned, paper, pdf)) files.set(file, bytes)
  return files
}

/** The templates as one file; nothing where nothing wants one. */
export function templatePdf(
  planned: Planned,
  paper: Paper,
  pdf: PaperModule | undefined
): ReadonlyMap<string, Uint8Array> {
  const sheets = paperTemplates(planned, paper).flatMap(t => t.sheets)
  if (pdf === undefined || sheets.length === 0) return new Map()
  const { name, asOf } = planned.plan
  return new Map([['templates.pdf', pdf.sheetsPdf(sheets, { title: `${name}: templates`, asOf })]])
}

/** The finished piece as solids: one package of all, and a file for each material. */
export function solids(planned: Planned, pdf: PaperModule | undefined): ReadonlyMap<string, Uint8Array> {
  if (pdf === undefined) return new Map()
  const { threeMf, stl } = solidFiles(planned.work)
  return new Map([['solid.3mf', pdf.packed(threeMf)], ...stl])
}
