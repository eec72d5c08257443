import type { Sheet } from './mark.ts'
import type { Markup } from './markup.ts'
import { html, raw } from './markup.ts'
import { hundredths, svgBody } from './svg.ts'

/**
 * A sheet as an element of a page: its size follows the reader's type (a quarter rem a millimetre, so that
 * lettering of 3.5 mm is 14 px), never wider than its place. With words it is a picture that says them, without
 * it is decoration.
 */
export function drawing(sheet: Sheet, name: string, words: string | null): Markup {
  const w = hundredths(sheet.widthMm)
  const h = hundredths(sheet.heightMm)
  const aria = words === null ? html`aria-hidden="true"` : html`role="img" aria-label="${words}"`
  return html`<svg class="draw ${name}" viewBox="0 0 ${w} ${h}" width="${rem(sheet.widthMm)}" height="${rem(sheet.heightMm)}" ${aria}>${raw(svgBody(sheet))}</svg>`
}

function rem(mm: number): string {
  return `${Number((mm / 4).toFixed(3))}rem`
}
