import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

/** The type of printed sheets: Alegreya Sans (SIL Open Font License 1.1), whole files, so that any name can be written. */
export interface SheetType {
  readonly plain: Buffer
  readonly slanted: Buffer
  readonly strong: Buffer
}

/** Lining figures of one width: columns of numbers stand under each other. */
const FIGURES = ['lnum', 'tnum']

/** Lays out letters; `features` are names of OpenType features. */
interface Lettered {
  layout(text: string, features?: readonly string[]): unknown
}

/**
 * Makes such figures the usual ones of the font in use. Features given with each text would do the same, but what is
 * written with features is never kept by the library: a sheet would take ten times as long.
 */
export function withFigures(doc: object): void {
  const { font } = (doc as { _font: { font: Lettered } })._font
  const layout = font.layout.bind(font)
  font.layout = (text, features) => layout(text, features ?? FIGURES)
}

let kept: SheetType | null = null

/** Reads the type once. @throws Error when the package is not whole */
export function sheetType(): SheetType {
  if (kept === null) {
    const home = dirname(createRequire(import.meta.url).resolve('@castwright/server/package.json'))
    const read = (name: string) => readFileSync(join(home, 'fonts', `alegreya-sans-${name}.ttf`))
    kept = { plain: read('400'), slanted: read('400-italic'), strong: read('700') }
  }
  return kept
}
