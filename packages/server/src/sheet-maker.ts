import { deflateSync } from 'node:zlib'
import type { Days, PageAssets, Paper, PlanInput, Planned, Sheet } from '@castwright/engine'
import {
  asMadeOf,
  buyCsv,
  buySheet,
  careOf,
  clientQuote,
  cupLabels,
  drawnOf,
  page,
  paperTemplates,
  pngAddress,
  privateQuoteSoFar,
  quoteOf,
  readyMoment,
  runSheet,
  runSheetHtml,
  runSheetMarkdown,
  sectionDrawing,
  solidFiles
} from '@castwright/engine'
import type { SheetName } from './sheet-kind.ts'
import { SheetRefusal } from './sheet-kind.ts'

/** What a sheet is made with, beside the plan. */
export interface SheetWith {
  readonly assets: PageAssets | null
  readonly paper: Paper
  /** What the plan was made from: a record of the build compares it with and without its readings. */
  readonly input: PlanInput
  /** Its days, found when a sheet asks for them. */
  readonly days: () => Days
  /** Photos taken at the bench, by name. */
  readonly photos?: Readonly<Record<string, Uint8Array>>
}

/** What writes PDF files is loaded when one is asked for. */
const writer = () => import('./paper/index.ts')

/** Makes one sheet of a plan; null: the page is not built, or the piece has nothing to print there. */
export async function madeSheet(
  name: SheetName,
  planned: Planned,
  { assets, paper, input, days, photos = {} }: SheetWith
): Promise<string | Uint8Array | null> {
  const { plan } = planned
  const drawn = () => drawnOf(planned)
  const about = (words: string) => ({ title: `${plan.name}: ${words}`, asOf: plan.asOf })
  switch (name) {
    case 'plan.json':
      return `${JSON.stringify(plan, null, 2)}\n`
    case 'page.html':
      return assets === null
        ? null
        : page(planned, { ...assets, days: days() }, image => pngAddress(image, deflateSync))
    case 'run-sheet.html':
      return runSheetHtml(planned, { fonts: assets?.fonts ?? [], days: days() })
    case 'run-sheet.md':
      return runSheetMarkdown(planned, { days: days() })
    case 'run-sheet.pdf':
      return (await writer()).runSheetPdf(runSheet(planned, { days: days() }), drawn(), paper)
    case 'cup-labels.pdf':
      return ofSheets(cupLabels(runSheet(planned), paper))
    case 'templates.pdf':
      return ofSheets(paperTemplates(planned, paper).flatMap(t => t.sheets))
    case 'drawing.pdf':
      return (await writer()).sheetsPdf([sectionDrawing(planned, paper)], about('drawing'))
    case 'care.pdf':
      return (await writer()).carePdf(careOf(planned), drawn(), paper)
    case 'quote.pdf': {
      const quote = quoteOf(planned, { asOf: plan.asOf })
      if (!quote.whole)
        throw new SheetRefusal(
          `no client is quoted while a price or a rate is missing: ${quote.cost.unpriced.join(', ')}`
        )
      const parts = clientQuote(quote, {
        sizeMm: plan.totals.sizeMm,
        units: planned.work.shop.units,
        madeOf: careOf(planned).madeOf,
        ready: readyMoment(days())
      })
      return (await writer()).quotePdf(plan.name, 'quote', parts, drawn(), paper, plan.asOf)
    }
    case 'quote-private.pdf': {
      const parts = privateQuoteSoFar(planned, plan.asOf)
      return (await writer()).quotePdf(plan.name, 'cost and price, private', parts, null, paper, plan.asOf)
    }
    case 'as-made.pdf':
      return (await writer()).asMadePdf(
        asMadeOf(input, plan.asOf),
        drawn(),
        paper,
        new Map(Object.entries(photos))
      )
    case 'buy-list.pdf':
      return (await writer()).buyListPdf(buySheet(planned, days()), paper)
    case 'buy.csv':
      return buyCsv(plan)
    case 'solid.3mf':
      return (await writer()).packed(solidFiles(planned.work).threeMf)
  }

  async function ofSheets(sheets: readonly Sheet[]): Promise<Uint8Array | null> {
    return sheets.length === 0
      ? null
      : (await writer()).sheetsPdf(sheets, about(name.replace('.pdf', '').replace('-', ' ')))
  }
}
