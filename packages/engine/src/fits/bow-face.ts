import type { Piece } from '../piece/piece-schema.ts'
import { bowMm } from '../plate/bow.ts'
import type { Bounds } from '../shape/region.ts'
import type { Side } from '../stack/event.ts'
import { CELLS } from './bow-cells.ts'

/** A face against a straightedge. */
export interface FaceBow {
  readonly mm: number
  readonly bandMm: readonly [low: number, high: number]
  /** Which way the straightedge lies, and how long the piece is that way, mm. */
  readonly along: 'x' | 'y'
  readonly overMm: number
  readonly hollow: boolean
  /** What is let pass over that length, mm. */
  readonly limitMm: number
}

/** Straightedge that flatness is told by, mm. */
const STRAIGHTEDGE_MM = 300

/**
 * How flat a piece is wanted, mm over 300 mm, where it does not say: common practice, no source. A dial's hands run
 * close over its face; nobody lays a straightedge on a lamp foot.
 */
const FLATNESS_MM = {
  panel: 0.5,
  tray: 0.5,
  tabletop: 0.5,
  dial: 0.3,
  boards: 0.5,
  lamp: 1,
  other: 0.5
} as const

/** Share of the elastic bow that is left when creep has done its most, and the middle (common practice, no source). */
const LEAST_LEFT = 0.3
const USUAL_LEFT = (1 + LEAST_LEFT) / 2

/** Curvatures of the columns or rows at one moment: as reckoned, and at the upper end. */
export type Bent = readonly [central: readonly number[], upper: readonly number[]]

/** A direction in which a straightedge is laid. */
export interface BowWay {
  readonly along: 'x' | 'y'
  readonly overMm: number
  readonly limitMm: number
}

/** How flat a piece is wanted, mm over 300 mm. */
export function wantedMm(piece: Piece): number {
  return piece.flatness ?? FLATNESS_MM[piece.kind ?? 'other']
}

/** Both directions; over more than a straightedge so much more is let pass. */
export function waysOf(piece: Piece, box: Bounds): readonly BowWay[] {
  return (['x', 'y'] as const).map(along => {
    const overMm = along === 'x' ? box.maxX - box.minX : box.maxY - box.minY
    return { along, overMm, limitMm: wantedMm(piece) * Math.max(1, overMm / STRAIGHTEDGE_MM) }
  })
}

/** The face that lay on a side of the mould, the way a straightedge finds it worst. */
export function faceBow(ways: readonly BowWay[], bent: readonly Bent[], side: Side): FaceBow {
  return ways
    .map((way, w): FaceBow => {
      const lengths = new Array<number>(CELLS).fill(way.overMm / CELLS)
      const [central, upper] = bent[w]!.map(k => bowMm(k, lengths)) as [number, number]
      const ends = [LEAST_LEFT * central, USUAL_LEFT * central, upper].map(Math.abs)
      return {
        mm: Math.abs(USUAL_LEFT * central),
        bandMm: [Math.sign(upper) === -Math.sign(central) ? 0 : Math.min(...ends), Math.max(...ends)],
        along: way.along,
        overMm: way.overMm,
        hollow: central > 0 === (side === 'low'),
        limitMm: way.limitMm
      }
    })
    .reduce((a, b) => (b.mm / b.limitMm > a.mm / a.limitMm ? b : a))
}

/** Curvatures less those that a face was flattened at. */
export function less(bent: readonly number[], flat: readonly number[]): number[] {
  return bent.map((k, i) => k - flat[i]!)
}
