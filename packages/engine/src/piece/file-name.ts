import type { Piece } from './piece-schema.ts'

/** A file that a piece names, and the JSON Pointer of the place that names it. */
export interface FileName {
  readonly name: string
  readonly at: string
}

/** Every drawing a piece names in its shapes, in the order of the document: for whoever reads the files. */
export function fileNamesOf(piece: Piece): FileName[] {
  const out: FileName[] = []
  collect(piece, '', out)
  return out
}

// Only shapes have a key `file`; the depth of a document was bounded when it was read.
function collect(value: unknown, at: string, out: FileName[]): void {
  if (value === null || typeof value !== 'object') return
  for (const [key, inner] of Object.entries(value)) {
    const path = `${at}/${key}`
    if (key === 'file' && typeof inner === 'string') out.push({ name: inner, at: path })
    else collect(inner, path, out)
  }
}
