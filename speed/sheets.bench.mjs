// All sheets of a piece on paper: run sheet by its calendar, with its drawings, labels, templates, drawing, care, money, record; and its solids.
import { example } from './example.mjs'

const engine = await import('../packages/engine/dist/src/index.js')
const paper = await import('../packages/server/dist/src/paper/index.js')

function sheets(name) {
  const input = example(name).read()
  const asOf = '2026-12-01T09:00+01:00'
  const planned = engine.plan(input, { asOf, effort: 'preview' })
  const from = performance.now()
  const drawn = engine.drawnOf(planned)
  // Its steps stand in the days of the calendar, which is made too.
  const run = engine.runSheet(planned, { days: engine.daysOf(input, { asOf }) })
  const about = { title: name, asOf }
  const files = [
    paper.runSheetPdf(run, drawn, 'A4'),
    paper.sheetsPdf(engine.cupLabels(run, 'A4'), about),
    paper.sheetsPdf(
      engine.paperTemplates(planned).flatMap(t => t.sheets),
      about
    ),
    paper.sheetsPdf([engine.sectionDrawing(planned)], about),
    paper.carePdf(engine.careOf(planned), drawn, 'A4'),
    paper.quotePdf(name, 'private', engine.privateQuote(engine.quoteOf(planned, { asOf })), null, 'A4', asOf),
    paper.asMadePdf(engine.asMadeOf(input, asOf), drawn, 'A4'),
    paper.packed(engine.solidFiles(planned.work).threeMf)
  ]
  const ms = performance.now() - from
  return {
    ms,
    note: `${files.length} files, ${Math.round(files.reduce((n, f) => n + f.length, 0) / 1000)} kB`
  }
}

export const variants = ['saltmarsh-panel', 'heron-table', 'meadow-boards'].map(name => ({
  name: `sheets ${name}`,
  about: `all sheets of ${name}, first in their process`,
  bar: 'under 3000',
  run: () => sheets(name)
}))
