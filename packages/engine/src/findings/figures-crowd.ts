import { decimals } from '../quantity/format.ts'
import { ringArea } from '../shape/measure.ts'
import { textLines } from '../stack/figure-text.ts'
import { strokeAll } from '../stack/groove-region.ts'
import type { Check, Found } from './finding.ts'
import { setQuantity } from './fix.ts'
import type { Work } from './work.ts'

/** What stands between two lines breaks out when it is thinner, mm (practice). */
const LEAST_BETWEEN_MM = 0.2
/** Figures are drawn this wide, of their height, to see what they are like: far thinner than they are cut. */
const THIN = 0.02

/** Single-line figures so small that their strokes run into each other. */
export const figuresCrowd: Check = {
  id: 'figures-crowd',
  about: 'figures so small for the width of their lines that strokes run into each other',
  cases: [],
  run
}

function run(work: Work): Found[] {
  return work.entries.markings.flatMap(({ at, id, value }): Found[] => {
    if (value.figures !== 'single line') return []
    const wide = value.width + LEAST_BETWEEN_MM
    return value.numerals.flatMap(({ text, height }, k): Found[] => {
      if (!closes(text, wide / height)) return []
      // The same figure larger: the width of the line is the less of it.
      let least = height
      while (closes(text, wide / least) && least < 100 * height) least *= 1.05
      return [
        {
          severity: 'caution',
          at,
          says: `“${text}” of ${id} is ${decimals(height, 1)} mm high and cut ${decimals(value.width, 1)} mm wide: between its strokes less than ${decimals(LEAST_BETWEEN_MM, 1)} mm stand, which break out, and it reads as a blot. From ${decimals(least, 1)} mm on it stays open.`,
          value: height,
          unit: 'mm',
          limit: least,
          basis: `strokes drawn at their width; less than ${decimals(LEAST_BETWEEN_MM, 1)} mm between two lines breaks out: common practice, no source`,
          settledBy: 'the figure cut in a scrap of the same timber',
          fix: setQuantity(work.document, `${at}/numerals/${k}/height`, 'length', least, 'up'),
          fixSays: `"${text}" ${decimals(Math.ceil(least * 10 - 1e-7) / 10, 1)} mm high`
        }
      ]
    })
  })
}

// Outer edges and holes of a text drawn so wide, of its height: the same few texts are asked again at every edit.
const shapes = new Map<string, string>()
const MOST_KEPT = 2000

function shapeOf(text: string, share: number): string {
  const key = `${share.toFixed(4)} ${text}`
  let shape = shapes.get(key)
  if (shape === undefined) {
    const { rings } = strokeAll(textLines(text, { x: 0, y: 0 }, 100), 100 * share, 0.5)
    const holes = rings.filter(r => ringArea(r) < 0).length
    shape = `${rings.length - holes} ${holes}`
    if (shapes.size >= MOST_KEPT) shapes.clear()
    shapes.set(key, shape)
  }
  return shape
}

// Whether a gap of the figures closes: they have other parts or other holes than drawn thin.
function closes(text: string, share: number): boolean {
  return textLines(text, { x: 0, y: 0 }, 1).length > 0 && shapeOf(text, share) !== shapeOf(text, THIN)
}
