// Sheets as PDF files: type embedded, text that can be selected, true size. Grouped by sheet; nothing computed here.

export { asMadePdf } from './as-made.ts'
export { buyListPdf } from './buy-list.ts'
export { carePdf } from './care.ts'
export { packed } from './package.ts'
export { quotePdf } from './quote.ts'
export { runSheetPdf } from './run-sheet.ts'
export { sheetsPdf } from './sheets.ts'
