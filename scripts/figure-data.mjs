// Makes the two catalogue files of figures from fonts with open licences; run once, kept for who wants more characters.
//
//   node scripts/figure-data.mjs HersheySans1.svg alegreya-sans-latin-500-normal.woff opentype.mjs
//
// The first two are in the packages hersheytext 2.0.0 and @fontsource/alegreya-sans 5.3.0, the third reads the second.
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { pathToFileURL } from 'node:url'

const CHARACTERS = ` 0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz+-.,/°%'"&:()×½¼¾`
const [strokesFile, outlinesFile, reader] = process.argv.slice(2)
if (reader === undefined) {
  console.error('needs three files: an SVG font of strokes, a font of outlines, the module that reads it')
  process.exit(2)
}
const folder = new URL('../packages/engine/src/catalogue/', import.meta.url)

const svg = readFileSync(strokesFile, 'utf8')
const entity = {
  '&#x22;': '"',
  '&amp;': '&',
  '&apos;': "'",
  '&#xb0;': '°',
  '&#xbd;': '½',
  '&#xbc;': '¼',
  '&#xbe;': '¾'
}
const strokes = []
for (const [, name, advance, , d] of svg.matchAll(
  /<glyph unicode="([^"]+)"[^>]*horiz-adv-x="([\d.]+)"( d="([^"]*)")?/g
)) {
  const character = entity[name] ?? name
  if (!CHARACTERS.includes(character) || character.length !== 1) continue
  // The font was drawn on a grid of 31.5 units, rounded since: a capital is 21 high.
  const grid = v => Math.round(Number(v) / 31.5)
  const lines = (d ?? '')
    .split('M')
    .filter(s => s.trim() !== '')
    .map(s => s.replaceAll('L', ' ').trim().split(/\s+/).map(grid))
  strokes.push([character, grid(advance), lines])
}

const { parse } = await import(pathToFileURL(resolve(reader)).href)
const file = readFileSync(outlinesFile)
const font = parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength))
const lining = new Map()
for (const feature of font.tables.gsub?.features ?? []) {
  if (feature.tag !== 'lnum') continue
  for (const at of feature.feature.lookupListIndexes)
    for (const sub of font.tables.gsub.lookups[at].subtables) {
      const covered =
        sub.coverage.glyphs ??
        sub.coverage.ranges.flatMap(r => Array.from({ length: r.end - r.start + 1 }, (_, k) => r.start + k))
      for (const [k, from] of covered.entries())
        lining.set(from, sub.substitute === undefined ? from + sub.deltaGlyphId : sub.substitute[k])
    }
}
const outlines = []
for (const character of CHARACTERS) {
  const plain = font.charToGlyphIndex(character)
  if (plain === 0) continue
  const glyph = font.glyphs.get(lining.get(plain) ?? plain)
  const path = glyph.getPath(0, 0, font.unitsPerEm)
  outlines.push([character, glyph.advanceWidth, path.toPathData({ decimalPlaces: 0, flipY: false })])
}

const quoted = text => (text.includes("'") ? JSON.stringify(text) : `'${text}'`)
writeFileSync(
  new URL('figure-strokes.ts', folder),
  `/**
 * Figures of single lines: for each character how far the next one begins, and its lines, "x0 y0 x1 y1 ..."
 * each, in units, y up from the foot; a capital is 21 units high.
 *
 * Source: the Hershey Fonts, "sans 1-stroke", by way of hersheytext 2.0.0 (made by scripts/figure-data.mjs). The
 * licence asks that this goes with them: "The Hershey Fonts were originally created by Dr. A. V. Hershey while working
 * at the U. S. National Bureau of Standards. The format of the Font data in this distribution was originally created by
 * James Hurt, Cognition, Inc., 900 Technology Park Drive, Billerica, MA 01821." Free for any purpose, in any format
 * but that of the U.S. NTIS; prepared as an SVG font by Windell H. Oskay.
 */
export const FIGURE_STROKES: readonly (readonly [character: string, advance: number, lines: string])[] = [
${strokes.map(([c, a, l]) => `[${quoted(c)}, ${a}, '${l.map(line => line.join(' ')).join(', ')}']`).join(',\n')}
]
`
)
writeFileSync(
  new URL('figure-outlines.ts', folder),
  `/**
 * Figures as outlines: for each character how far the next one begins, and its outline as path data in units of
 * 1/${font.unitsPerEm} of the size of the type, y down from the line it stands on; what is filled by the non-zero rule. Numerals are
 * those of even height.
 *
 * Source: Alegreya Sans Medium, copyright 2013 The Alegreya Sans Project Authors, SIL Open Font License 1.1 (the
 * licence lies in packages/page/fonts/OFL.txt), by way of @fontsource/alegreya-sans 5.3.0 (made by
 * scripts/figure-data.mjs). Coordinates are whole units; nothing else is changed.
 */
export const FIGURE_OUTLINES: readonly (readonly [character: string, advance: number, path: string])[] = [
${outlines.map(([c, a, d]) => `[${quoted(c)}, ${a}, '${d}']`).join(',\n')}
]
`
)
console.log(
  `${strokes.length} figures of strokes, ${outlines.length} of outlines, ${lining.size} of even height`
)
