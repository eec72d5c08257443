import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import PDFDocument from 'pdfkit'

/** Alegreya Sans (SIL Open Font License 1.1), whole files, so that any name can be written. */
const FILES = { plain: '400', slanted: '400-italic', strong: '700' } as const
export type Face = keyof typeof FILES
const FACES = Object.keys(FILES) as Face[]

/** Lining figures of one width: columns of numbers stand under each other. */
const FIGURES = ['lnum', 'tnum']

/** Words whose letters are kept laid out, for each face: those of some hundred sheets. */
const MOST_WORDS = 20_000

/** A font file as the library has opened it; `features` are names of OpenType features. */
interface Opened {
  layout(text: string, features?: readonly string[]): unknown
}

/** The font of a document: the opened file, and the words laid out so far. */
interface InUse {
  readonly font: Opened
  layoutCache: Record<string, unknown>
}

const inUse = (doc: PDFKit.PDFDocument) => (doc as unknown as { readonly _font: InUse })._font

let kept: Readonly<Record<Face, Opened>> | null = null
let words: Record<Face, Record<string, unknown>> = fresh()

function fresh(): typeof words {
  const none = () => Object.create(null) as Record<string, unknown>
  return { plain: none(), slanted: none(), strong: none() }
}

/**
 * The type of printed sheets, opened once: reading its tables takes longer than a sheet. Its figures are lining ones of
 * one width by themselves: asked for with each text, the library would keep no word that it has laid out.
 * @throws Error when the package is not whole
 */
function typeOf(): Readonly<Record<Face, Opened>> {
  if (kept !== null) return kept
  const home = dirname(createRequire(import.meta.url).resolve('@castwright/server/package.json'))
  const open = (face: Face): Opened => {
    const bytes = readFileSync(join(home, 'fonts', `alegreya-sans-${FILES[face]}.ttf`))
    const { font } = inUse(new PDFDocument({ autoFirstPage: false, font: asSource(bytes) }))
    const layout = font.layout.bind(font)
    font.layout = (text, features) => layout(text, features ?? FIGURES)
    return font
  }
  kept = { plain: open('plain'), slanted: open('slanted'), strong: open('strong') }
  return kept
}

// The types of pdfkit know names of fonts only; it takes the bytes of one, or one that is opened, as well.
function asSource(font: Opened | Buffer): string {
  return font as unknown as string
}

/** The font that a document begins with. */
export function firstFont(): string {
  return asSource(typeOf().plain)
}

/** Puts all faces into a document by their names, with the words that were laid out for others before. */
export function setType(doc: PDFKit.PDFDocument): void {
  const type = typeOf()
  const count = (face: Face) => Object.keys(words[face]).length
  if (FACES.some(face => count(face) > MOST_WORDS)) words = fresh()
  for (const face of FACES) {
    doc.registerFont(face, asSource(type[face]))
    doc.font(face)
    inUse(doc).layoutCache = words[face]
  }
}
