import type { Machining } from '../../src/cuts/operation/machining.ts'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import type { Work } from '../../src/findings/work.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { Reading } from '../../src/piece/reading-schema.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { ProgramSet } from '../../src/programs/program-set.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { workOf } from '../../src/work.ts'
import { SHOP } from './machine-piece.ts'

/** The stages of a piece in a shop with a machine. */
export function workIn(
  piece: PieceDocument,
  shop: ShopDocument = SHOP,
  files: Readonly<Record<string, string>> = {},
  readings: readonly Reading[] = []
): Work {
  return workOf({
    piece: checkPiece(piece, 'piece'),
    shop: checkShop(shop, 'shop').value,
    files,
    readings,
    effort: 'preview'
  })
}

/** Its operations; throws where nothing is cut by machine. */
function machiningIn(
  piece: PieceDocument,
  shop: ShopDocument = SHOP,
  readings: readonly Reading[] = []
): Machining {
  return machiningOf(workIn(piece, shop, {}, readings))!
}

/** Its programs. */
export function setIn(
  piece: PieceDocument,
  shop: ShopDocument = SHOP,
  readings: readonly Reading[] = []
): ProgramSet {
  return programSet(machiningIn(piece, shop, readings))
}
