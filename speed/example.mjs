// An example with its drawings, for the benches: as the command loads it.
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileNamesOf, readPiece, usualShop } from '../packages/engine/dist/src/index.js'

const folder = join(import.meta.dirname, '..', 'examples')

export const EXAMPLES = ['saltmarsh-panel', 'heron-table', 'meadow-boards']

/** Text of an example and what it takes to read it. */
export function example(name) {
  const text = readFileSync(join(folder, `${name}.piece.json`), 'utf8')
  const files = {}
  for (const f of fileNamesOf(readPiece(text, name).value))
    if (existsSync(join(folder, f.name))) files[f.name] = readFileSync(join(folder, f.name), 'utf8')
  return {
    text,
    files,
    read: () => ({ piece: readPiece(text, name), shop: usualShop(), files, source: name })
  }
}
