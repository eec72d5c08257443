/** A sheet that is made of a piece when it is asked for: its type, and whether a stop keeps it back. */
export interface SheetKind {
  readonly type: string
  /** Not written while a stop stands that nobody overrode. */
  readonly keptBack: boolean
}

const kind = (type: string, keptBack: boolean): SheetKind => ({ type, keptBack })

/** Every sheet by its name in an address. */
export const SHEETS = {
  'plan.json': kind('application/json', false),
  'page.html': kind('text/html; charset=utf-8', false),
  'run-sheet.html': kind('text/html; charset=utf-8', true),
  'run-sheet.md': kind('text/markdown; charset=utf-8', true),
  'run-sheet.pdf': kind('application/pdf', true),
  'cup-labels.pdf': kind('application/pdf', true),
  'templates.pdf': kind('application/pdf', true),
  'drawing.pdf': kind('application/pdf', false),
  'care.pdf': kind('application/pdf', true),
  'quote.pdf': kind('application/pdf', true),
  'quote-private.pdf': kind('application/pdf', false),
  'as-made.pdf': kind('application/pdf', false),
  'buy-list.pdf': kind('application/pdf', false),
  'buy.csv': kind('text/csv; charset=utf-8', false),
  'solid.3mf': kind('model/3mf', false)
} as const satisfies Record<string, SheetKind>

/** A sheet that this piece or shop has not the facts for, in words. */
export class SheetRefusal extends Error {}

export type SheetName = keyof typeof SHEETS
