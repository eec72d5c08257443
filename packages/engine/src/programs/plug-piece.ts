import type { Entry } from '../piece/entry.ts'
import type { Cut, PieceDocument } from '../piece/piece-schema.ts'
import type { ShapeDocument } from '../piece/shape-field.ts'
import { bounds, ringArea } from '../shape/measure.ts'
import { offset } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'
import { mirrorX, translate } from '../shape/transform.ts'
import type { Stack } from '../stack/stack.ts'

/** Board round the plug, for tape or clamps, mm (practice). */
const BOARD_MM = 20
/** A cutter goes into a kerf just as wide as it is, mm. */
const PLAY_MM = 0.02
/** How far the outline of a plug may stray, mm. */
const TOL_MM = 0.004
/** What a plug is cut from where nothing is said of it: among the harder of the usual woods, so fed with care. */
const UNSAID = 'maple-sugar'

/**
 * The plug of an inlay as a piece of its own: a board of its thickness, laid with the side that will be seen up and held
 * by tape, from which it is cut free with a cutter that its hollow corners take. null: the cut is no inlay by machine.
 *
 *   outline = pocket ⊖ gap, as it is seen from the face of the pocket; its own zero is the middle of its box
 *
 * The board may be larger; what lies more than 20 mm from the plug is not looked at.
 * Check: area of a rounded rectangle less the gap, by closed form; the program proves clean (test).
 */
export function plugPiece(stack: Stack, cut: Entry<Cut>): PieceDocument | null {
  const { plug, face, way } = cut.value
  const pocket = stack.geometry.cutRegions[cut.index] ?? null
  if (plug === undefined || way !== 'machine' || pocket === null) return null
  const shape = { join: 'round', tolMm: TOL_MM } as const
  const drawn = plug.gap === 0 ? pocket : offset(pocket, -plug.gap, shape)
  if (drawn.rings.length === 0) return null
  const seen = face === 'front' ? drawn : mirrorX(drawn)
  const b = bounds(seen)
  const outline = translate(seen, -(b.minX + b.maxX) / 2, -(b.minY + b.maxY) / 2)
  const kerfMm = 2 * plug.corner + PLAY_MM
  const [wide, high] = [b.maxX - b.minX, b.maxY - b.minY].map(
    v => Math.ceil(v + 2 * kerfMm) + 2 * BOARD_MM
  ) as [number, number]
  return {
    castwright: 1,
    name: `Plug of ${cut.id}, from a board of ${plug.thickness} mm${plug.species === undefined ? '' : `, ${plug.species}`}`.slice(
      0,
      120
    ),
    outline: documentOf(outline),
    mould: { shape: { rectangle: [wide, high] } },
    flatten: { back: 0, front: 0 },
    tolerance: 0.005,
    timbers: [
      {
        id: 'board',
        species: plug.species ?? stack.piece.timbers[0]?.species ?? UNSAID,
        outline: { rectangle: [wide, high] },
        thickness: plug.thickness,
        moisture: 8
      }
    ],
    // A piece has a pour; the board leaves it no room.
    pours: [{ id: 'none', resin: 'medium', fill: 'timber' }],
    cuts: [
      {
        id: 'plug',
        kind: 'outline',
        face: 'front',
        shape: { difference: [documentOf(offset(outline, kerfMm, shape)), documentOf(outline)] },
        through: true,
        tabs: false
      }
    ],
    holding: { by: 'tape' }
  }
}

// A region as a document gives it: each outside ring with the holes that lie in it.
function documentOf({ rings }: Region): ShapeDocument {
  const points = (ring: Float64Array) =>
    Array.from({ length: ring.length / 2 }, (_, k): [number, number] => [ring[2 * k]!, ring[2 * k + 1]!])
  const outside = rings.filter(r => ringArea(r) > 0).map(r => ({ polygon: points(r) }))
  const holes = rings.filter(r => ringArea(r) < 0).map(r => ({ polygon: points(r) }))
  const solid: ShapeDocument = outside.length === 1 ? outside[0]! : { union: outside }
  return holes.length === 0 ? solid : { difference: [solid, ...holes] }
}
