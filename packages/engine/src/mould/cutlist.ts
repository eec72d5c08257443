import { inRange, wholeInRange } from '../quantity/range.ts'

/**
 * What a box mould is made of: pieces of board, bearers, sealant, tape and release, from its inside.
 *
 * The inside is L × W (along x and y), the walls stand H over the upper face of the base. Two questions
 * settle every size: do the walls stand on the base or beside it, and which pair runs past the ends of the
 * other.
 *
 *   on the base       base (L + 2t) × (W + 2t), walls H high
 *   beside the base   base L × W, walls H + base thickness high (screwed through into its edge)
 *   walls along x run past: they are L + 2t long, those along y are W; and the other way round
 *
 * Source: geometry. Check: the boards together have the volume of the outer box less the inside, either way.
 *
 * Limits: net sizes; saw cuts and the sheet's layout are not in them. Joints butt. A mould that is not a
 * rectangle has its cut list from `shaped.ts`. The areas are of faces that resin reaches, with the walls wet to
 * the top. Sizes are not judged: a crack between two boards has a cut list as well.
 */
export interface Box {
  readonly innerLengthMm: number
  readonly innerWidthMm: number
  /** Walls over the upper face of the base, mm. */
  readonly wallHeightMm: number
  readonly baseThicknessMm: number
  readonly wallThicknessMm: number
  readonly walls: 'on the base' | 'beside the base'
  /** Which pair of walls covers the ends of the other. */
  readonly runPast: 'along x' | 'along y'
  /** Bearers under the base across its width; 0 or at least 2. */
  readonly bearers: number
  /** Where the joints are sealed. */
  readonly joints: 'inside and outside' | 'inside' | 'outside' | 'tape only'
}

/** A piece to cut, mm. A wall's length runs along the mould, its width stands up. */
export interface BoardPiece {
  readonly name: 'base' | 'wall along x' | 'wall along y' | 'wall' | 'ring or bent strip'
  readonly count: number
  readonly lengthMm: number
  readonly widthMm: number
  /** null: as thin as bends to the line, or as wide as a sawn ring is. */
  readonly thicknessMm: number | null
}

export interface CutList {
  /** What the walls follow: a box, a line of straight edges, or a curve (alone or beside straight edges). */
  readonly follows: 'box' | 'straight edges' | 'curve'
  /** How the walls stand and meet, and what the lengths are of: whole sentences. */
  readonly says: readonly string[]
  readonly boards: readonly BoardPiece[]
  readonly bearers: { readonly count: number; readonly lengthMm: number; readonly spacingMm: number } | null
  /** Net board, m², of the base and of the walls; strip is not board. */
  readonly baseAreaM2: number
  readonly wallAreaM2: number
  /** Bending strip, m. */
  readonly stripLengthM: number
  readonly sealantLengthM: number
  /** Inside faces to be taped, m², without overlaps. */
  readonly tapeAreaM2: number
  /** Every face that resin may reach and must let go of, m²: the inside and the upper edges of the walls. */
  readonly releaseAreaM2: number
}

/** The cut list of a box. Throws a RangeError that names the size out of its range. */
export function cutList(box: Box): CutList {
  const { innerLengthMm: length, innerWidthMm: width, wallHeightMm: height, wallThicknessMm: wall } = box
  inRange('inner length', length, 0.01, 100_000, 'mm')
  inRange('inner width', width, 0.01, 100_000, 'mm')
  refuseOdd(box)

  const onBase = box.walls === 'on the base'
  const outerLength = length + 2 * wall
  const outerWidth = width + 2 * wall
  const alongX = box.runPast === 'along x'
  const base: BoardPiece = {
    name: 'base',
    count: 1,
    lengthMm: onBase ? outerLength : length,
    widthMm: onBase ? outerWidth : width,
    thicknessMm: box.baseThicknessMm
  }
  const wallWidth = onBase ? height : height + box.baseThicknessMm
  const wallX: BoardPiece = {
    name: 'wall along x',
    count: 2,
    lengthMm: alongX ? outerLength : length,
    widthMm: wallWidth,
    thicknessMm: wall
  }
  const wallY: BoardPiece = {
    name: 'wall along y',
    count: 2,
    lengthMm: alongX ? width : outerWidth,
    widthMm: wallWidth,
    thicknessMm: wall
  }
  const insideM2 = (length * width + 2 * (length + width) * height) / 1e6
  const rimM2 = (outerLength * outerWidth - length * width) / 1e6
  return {
    follows: 'box',
    says: [`Walls stand ${box.walls}; those ${box.runPast} run past the others.`],
    boards: [base, wallX, wallY],
    bearers: bearersUnder(base, box.bearers),
    baseAreaM2: areaM2(base),
    wallAreaM2: areaM2(wallX) + areaM2(wallY),
    stripLengthM: 0,
    sealantLengthM: sealantLengthM(box, base, wallWidth),
    tapeAreaM2: insideM2,
    releaseAreaM2: insideM2 + rimM2
  }
}

/** What holds for any mould. @throws RangeError */
export function refuseOdd(
  mould: Pick<Box, 'wallHeightMm' | 'baseThicknessMm' | 'wallThicknessMm' | 'bearers'>
): void {
  inRange('height of the walls', mould.wallHeightMm, 1, 100_000, 'mm')
  inRange('thickness of the base', mould.baseThicknessMm, 1, 200, 'mm')
  inRange('thickness of the walls', mould.wallThicknessMm, 0.5, 200, 'mm')
  wholeInRange('number of bearers', mould.bearers, 0, 201)
  if (mould.bearers === 1)
    throw new RangeError('1 bearer carries no base; allowed 0 (on a flat bench) or 2 to 201')
}

/** Bearers across a base, the outer two under its ends; null for none. */
export function bearersUnder(base: BoardPiece, count: number): CutList['bearers'] {
  return count === 0 ? null : { count, lengthMm: base.widthMm, spacingMm: base.lengthMm / (count - 1) }
}

/** Net area of all pieces of a kind, m². */
export function areaM2(piece: BoardPiece): number {
  return (piece.count * piece.lengthMm * piece.widthMm) / 1e6
}

/**
 * Inside: round the foot and up four corners. Outside: round the base's joint and up the four butt joints.
 */
function sealantLengthM(box: Box, base: BoardPiece, wallWidthMm: number): number {
  const inside = 2 * (box.innerLengthMm + box.innerWidthMm) + 4 * box.wallHeightMm
  const outside = 2 * (base.lengthMm + base.widthMm) + 4 * wallWidthMm
  return sealedM(box.joints, inside, outside)
}

/** Metres of sealant from the millimetres of both sides. */
export function sealedM(joints: Box['joints'], insideMm: number, outsideMm: number): number {
  if (joints === 'tape only') return 0
  if (joints === 'inside') return insideMm / 1000
  if (joints === 'outside') return outsideMm / 1000
  return (insideMm + outsideMm) / 1000
}
