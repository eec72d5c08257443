import { readFileSync } from 'node:fs'
import { join } from 'node:path'

/** A fixture as text. */
export function fixture(name: string): string {
  return readFileSync(join(import.meta.dirname, 'fixtures', name), 'utf8')
}

/** Cells of a CSV text after RFC 4180: quotes, doubled quotes, commas inside. */
export function csvRows(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let cell = ''
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const c = text[i]!
    if (quoted) {
      if (c !== '"') cell += c
      else if (text[i + 1] === '"') {
        cell += '"'
        i++
      } else quoted = false
    } else if (c === '"') quoted = true
    else if (c === ',') {
      row.push(cell)
      cell = ''
    } else if (c === '\n') {
      row.push(cell.replace(/\r$/, ''))
      rows.push(row)
      row = []
      cell = ''
    } else cell += c
  }
  if (cell !== '' || row.length > 0) rows.push([...row, cell])
  return rows
}

/** Species whose coefficients do not follow from their own shrinkage, with the reason the source gives. */
export const LINK_EXCEPTIONS: Readonly<Record<string, string>> = {
  'maple-black': 'listed with the coefficients of sugar maple',
  'oak-white': 'coefficients of the commercial white-oak group',
  'oak-bur': 'coefficients of the commercial white-oak group',
  'oak-northern-red': 'coefficients of the commercial red-oak group',
  'oak-southern-red': 'coefficients of the commercial red-oak group',
  'ash-green': 'listed with the coefficients of white ash',
  'birch-sweet': 'listed with the coefficients of yellow birch',
  'hickory-shagbark': 'coefficients of the true-hickory group',
  teak: 'coefficients from an older set of shrinkage, 2.2/4.0',
  'mahogany-true': 'coefficients from an older set of shrinkage, 3.7/5.1'
}
