import { entriesOf } from '../../src/piece/entry.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import type { Files } from '../../src/piece/region.ts'
import { geometryOf } from '../../src/stack/geometry.ts'
import type { PourFacts, Stack } from '../../src/stack/stack.ts'
import { walk } from '../../src/stack/walk.ts'
import { orderOf } from '../../src/steps/order.ts'

/** Density, g/ml, and fall on cure of the resins in these tests: round numbers, another fall for each pour. */
const DENSITY_G_ML = 1.1
const falls = [0.02, 0.015, 0.03, 0.01]

/** Stands for the catalogue: what the stack needs of each pour. */
export function plainFacts(
  pours: readonly { readonly stones: readonly { readonly fill?: number | undefined }[] }[]
): PourFacts[] {
  return pours.map((p, i) => ({
    densityGMl: DENSITY_G_ML,
    levelFall: falls[i % falls.length]!,
    stonesFill: p.stones.map(s => s.fill ?? 0.5)
  }))
}

/** The stack of a document, all defaults as read. `facts` replaces parts of {@link plainFacts}. */
export function stackOf(document: PieceDocument, facts: Partial<PourFacts> = {}, files: Files = {}): Stack {
  const piece = checkPiece(document, 'test').value
  const entries = entriesOf(piece, 'test')
  const geometry = geometryOf(piece, entries, files, 'test')
  const each = plainFacts(piece.pours).map(f => ({ ...f, ...facts }))
  return walk(piece, entries, geometry, orderOf(piece, entries), each)
}

/** The least piece: 300 × 200 mm, cast 20 mm high in a mould without margin, nothing flattened. */
export function plainPiece(more: Partial<PieceDocument> = {}): PieceDocument {
  return {
    castwright: 1,
    name: 'plain',
    outline: { rectangle: [300, 200] },
    mould: { margin: 0 },
    flatten: { back: 0, front: 0 },
    pours: [{ resin: 'medium', depth: 20 }],
    ...more
  }
}
