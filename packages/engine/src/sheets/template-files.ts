import { templatesOf } from '../cuts/hand/template.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Planned } from '../plan-answer.ts'
import type { Sheet } from './mark.ts'
import { pinTemplate } from './pin-template.ts'
import { svgDocument } from './svg.ts'
import { templateSheets } from './template-sheet.ts'
import type { Paper } from './tile.ts'

/** A template on paper: as many sheets as it takes. */
export interface PaperTemplate {
  readonly name: string
  readonly sheets: readonly Sheet[]
}

/**
 * The 1:1 sheets of a plan: templates of what is cut by hand, and where the bed is drilled for pins. Empty where nothing
 * wants one, and while a stop stands: a template is
 * as hard to take back as a program.
 */
export function paperTemplates(planned: Planned, paper: Paper = 'A4'): PaperTemplate[] {
  const { plan, work } = planned
  if (plan.verdict === 'stop') return []
  const pins = pinTemplate(work)
  const templates = [
    ...templatesOf({ ...work, timbers: work.materials.timbers }, work.hand),
    ...(pins === null ? [] : [pins])
  ]
  return templates.map(t => ({
    name: t.name,
    sheets: templateSheets(t, plan.name, paper, lengthsOf(work.shop))
  }))
}

/** Each sheet of the templates as SVG, by file name. */
export function templateFiles(planned: Planned, paper: Paper = 'A4'): ReadonlyMap<string, string> {
  const files = new Map<string, string>()
  for (const [k, { name, sheets }] of paperTemplates(planned, paper).entries())
    for (const [n, sheet] of sheets.entries())
      files.set(
        `template-${k + 1}${sheets.length > 1 ? `-${n + 1}` : ''}.svg`,
        svgDocument(sheet, `${name}: ${n + 1} of ${sheets.length}`)
      )
  return files
}
