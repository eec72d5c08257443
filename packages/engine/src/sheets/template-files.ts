import { templatesOf } from '../cuts/hand/template.ts'
import type { Planned } from '../plan-answer.ts'
import { pdfDocument } from './pdf.ts'
import { svgDocument } from './svg.ts'
import { templateSheets } from './template-sheet.ts'
import type { Paper } from './tile.ts'

/**
 * The 1:1 sheets of a plan by file name: one PDF of all, and each as SVG. Empty where nothing is cut by hand that
 * wants one, and while a stop stands: a template is as hard to take back as a program.
 */
export function templateFiles(
  planned: Planned,
  paper: Paper = 'A4'
): ReadonlyMap<string, string | Uint8Array> {
  const { plan, work } = planned
  const files = new Map<string, string | Uint8Array>()
  if (plan.verdict === 'stop') return files
  const templates = templatesOf({ ...work, timbers: work.materials.timbers }, work.hand)
  const all = templates.map(t => ({ t, sheets: templateSheets(t, plan.name, paper) }))
  const sheets = all.flatMap(x => x.sheets)
  if (sheets.length === 0) return files
  files.set('templates.pdf', pdfDocument(sheets, `${plan.name}: templates`))
  for (const [k, { t, sheets: own }] of all.entries())
    for (const [n, sheet] of own.entries())
      files.set(
        `template-${k + 1}${own.length > 1 ? `-${n + 1}` : ''}.svg`,
        svgDocument(sheet, `${t.name}: ${n + 1} of ${own.length}`)
      )
  return files
}
