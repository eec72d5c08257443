/** Words of Print (English). */
export const printWords = {
  region: 'Print',
  says: 'Made from the newest revision when it is opened. PDF files are in true size: print them at 100 %, then lay a rule on the check bars.',
  away: 'Sheets are made by the server: there is no network now. What was opened before can be printed again.',
  unsent: 'The last edit has not reached the server: the sheets would be of the revision before it.',
  paper: 'Paper',
  papers: [
    ['A4', 'A4'],
    ['letter', 'US Letter']
  ],
  open: 'Open',
  not: 'not written while a stop stands',
  groups: { build: 'For the bench', draw: 'Drawings and solids', give: 'To hand over and to keep' },
  sheets: {
    'run-sheet.pdf': ['Run sheet', 'every step with a box to tick, amounts, windows, safety lines'],
    'run-sheet.html': ['Run sheet as a page', 'to read on a screen, or to print from the browser'],
    'cup-labels.pdf': ['Labels for cups', 'one for each batch: what is weighed into it, when it must be out'],
    'templates.pdf': ['Templates 1 : 1', 'tiled, with check bars on both axes'],
    'buy-list.pdf': ['Buy list', 'to take along: a box to tick, whole packs, by when to order'],
    'buy.csv': ['Buy list as a table', 'for a spreadsheet'],
    'drawing.pdf': ['Drawing', 'plan and section A–A to a scale, with a title block'],
    'solid.3mf': ['Solid', 'a body for each material, 3MF'],
    'page.html': ['The piece as a page', 'sheet and job card in one file'],
    'quote.pdf': ['Quote', 'for the client: the piece, the price, the deposit, when; no costs'],
    'quote-private.pdf': [
      'Cost and price',
      'for you alone: every line, prices by rule, what an hour is left with'
    ],
    'as-made.pdf': ['As made', 'as planned beside as built: to repair it, or to make it again'],
    'care.pdf': ['Care sheet', 'for whoever lives with the piece']
  }
} as const
