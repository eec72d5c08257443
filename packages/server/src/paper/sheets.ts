import type { Sheet } from '@castwright/engine'
import { drawSheet } from './marks.ts'
import type { PrintedOptions } from './printed.ts'
import { addPage, bytesOf, printed } from './printed.ts'

/**
 * Drawn sheets as one PDF file, a page each, in true size. The file asks the reader's program not to scale it.
 * @throws Error for a mark that is not at finite numbers
 */
export function sheetsPdf(sheets: readonly Sheet[], options: PrintedOptions): Uint8Array {
  const doc = printed(options)
  for (const sheet of sheets) {
    addPage(doc, sheet.widthMm, sheet.heightMm)
    drawSheet(doc, sheet, 0, 0)
  }
  return bytesOf(doc)
}
