import { area, bounds } from '../shape/measure.ts'
import type { Region, Ring } from '../shape/region.ts'
import type { BoardPiece, Box, CutList } from './cutlist.ts'
import { areaM2, bearersUnder, cutList, refuseOdd, sealedM } from './cutlist.ts'
import type { WallLine } from './wall-line.ts'
import { wallLine } from './wall-line.ts'

/** A mould of any shape: walls of one thickness on its base, along the edge of its inside. mm. */
export type ShapedMould = Omit<Box, 'innerLengthMm' | 'innerWidthMm' | 'walls'>

/**
 * What a mould is cut from, walls standing on the base along the edge of `inside`.
 *
 *   a rectangle along x and y    the box of `cutlist.ts`
 *   straight edges               one wall an edge, as long as the edge is inside
 *   a curve                      one ring or bent strip, as long as its line (the perimeter)
 *
 * An inside of several rings (holes, parts apart) has walls or a strip for each. The base is the box round the
 * outer faces of the walls; round a curve a wall's thickness is kept for a ring sawn from board, or blocks.
 *
 *   board of the walls    (P + t·Σ tan(turn/2))·H     P perimeter, t thickness, turn of each corner
 *
 * The sum is what mitred corners take: 4·t for any mould of square corners, as for the box.
 * Source: geometry. Check: circle of 300 mm, a strip of 942.5 mm on a base of 336 × 336 at t = 18.
 *
 * @param tolMm how far a curve of `inside` may stray from its chords: tells curves from edges
 * Limits: net sizes. Lengths are of the inside, which is what has to come out right; how much a wall is cut
 * longer or shorter by its joint is said in words. Whether a strip bends so far is not judged.
 */
export function shapedCutList(inside: Region, mould: ShapedMould, tolMm: number): CutList {
  const b = bounds(inside)
  if (boxed(inside))
    return cutList({
      ...mould,
      walls: 'on the base',
      innerLengthMm: b.maxX - b.minX,
      innerWidthMm: b.maxY - b.minY
    })
  refuseOdd(mould)
  const { wallHeightMm: height, wallThicknessMm: thickness } = mould
  const lines = inside.rings.map(ring => wallLine(ring, thickness, tolMm))
  const base = baseUnder(lines, mould)
  const straight = lines.filter(l => l.edgesMm !== null)
  const curved = lines.filter(l => l.edgesMm === null)
  const sum = (of: readonly WallLine[], what: (l: WallLine) => number) => of.reduce((s, l) => s + what(l), 0)
  const innerMm = sum(lines, l => l.lengthMm)
  const outerMm = sum(lines, l => l.outerLengthMm)
  const joints = sum(lines, l => (l.edgesMm === null ? 1 : l.edgesMm.length))
  const boardMm = sum(straight, l => (l.lengthMm + l.outerLengthMm) / 2)
  const insideM2 = (area(inside) + innerMm * height) / 1e6
  return {
    follows: curved.length > 0 ? 'curve' : 'straight edges',
    says: [
      'Walls stand on the base, their inner faces on the line of the mould.',
      ...(straight.length > 0 ? [straightWords(thickness)] : []),
      ...(curved.length > 0 ? [CURVE_WORDS] : [])
    ],
    boards: [
      base,
      ...wallPieces(straight, height, thickness),
      ...curved.map(
        (l): BoardPiece => ({
          name: 'ring or bent strip',
          count: 1,
          lengthMm: l.lengthMm,
          widthMm: height,
          thicknessMm: null
        })
      )
    ],
    bearers: bearersUnder(base, mould.bearers),
    baseAreaM2: areaM2(base),
    wallAreaM2: (boardMm * height) / 1e6,
    stripLengthM: sum(curved, l => l.lengthMm) / 1000,
    sealantLengthM: sealedM(mould.joints, innerMm + joints * height, outerMm + joints * height),
    tapeAreaM2: insideM2,
    // The rims: as wide as a wall of board all along.
    releaseAreaM2: insideM2 + ((innerMm + outerMm) / 2 / 1e6) * thickness
  }
}

const CURVE_WORDS =
  'A ring or bent strip follows the curve: thin plastic bent round, or a ring sawn from board (in layers if the wall is higher than the board is thick). Draw the line on the base, fix the strip with blocks outside it until it keeps to the line, and let its ends meet without a step.'

function straightWords(thickness: number): string {
  const t = Number(thickness.toFixed(1))
  return `Lengths of straight walls are those of the inside, where they butt at the corners: at a square corner that points outward cut one of the two ${t} mm longer, so that it covers the end of the other; at one that points inward cut one ${t} mm shorter. Saw the ends of other corners to half the angle.`
}

// A rectangle along x and y.
function boxed(region: Region): boolean {
  const [ring, more] = region.rings
  if (ring === undefined || more !== undefined || ring.length !== 8) return false
  for (let k = 0; k < 8; k += 2) {
    const dx = Math.abs(ring[(k + 2) % 8]! - ring[k]!)
    const dy = Math.abs(ring[(k + 3) % 8]! - ring[k + 1]!)
    if (Math.min(dx, dy) > 1e-3) return false
  }
  return true
}

// The box round the outer faces of all walls, length along x.
function baseUnder(lines: readonly WallLine[], mould: ShapedMould): BoardPiece {
  const b = bounds({ rings: lines.map((l): Ring => l.outer) })
  return {
    name: 'base',
    count: 1,
    lengthMm: b.maxX - b.minX,
    widthMm: b.maxY - b.minY,
    thicknessMm: mould.baseThicknessMm
  }
}

// Walls alike to a twentieth of a millimetre are one line with their number; the mean keeps the sum.
function wallPieces(lines: readonly WallLine[], height: number, thickness: number): BoardPiece[] {
  const lengths = lines.flatMap(l => [...l.edgesMm!]).sort((a, b) => b - a)
  const groups: number[][] = []
  for (const length of lengths) {
    const last = groups.at(-1)
    if (last !== undefined && last[0]! - length <= ALIKE_MM) last.push(length)
    else groups.push([length])
  }
  return groups.map(
    (group): BoardPiece => ({
      name: 'wall',
      count: group.length,
      lengthMm: group.reduce((s, x) => s + x, 0) / group.length,
      widthMm: height,
      thicknessMm: thickness
    })
  )
}

const ALIKE_MM = 0.05
