import type { BeamSag, BeamStretch } from '../plate/beam.ts'
import { beamSag } from '../plate/beam.ts'
import type { Place } from '../plate/tip.ts'
import { tippingMass } from '../plate/tip.ts'
import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { CELLS } from './bow-cells.ts'
import type { Loaded, LoadedWay } from './loaded-piece.ts'
import type { Supports } from './supports.ts'
import { linesOf, placesOf, screwsOf } from './supports.ts'

/**
 * A finished piece on its legs or rails: how far it sags, when it tips, how far it moves at its screws.
 *
 *   sag     the piece as a beam from line to line of its supports (plate/beam), its stiffness column by column from
 *           the plies that lie in it; on legs both ways, each taken to carry all of the load, and added
 *   creep   times {@link CREEP}: two times the elastic sag within years, one to three (common practice, no source;
 *           EN 1995-1-1 table 3.2 adds 0.6 to 0.8 to timber indoors: memory)
 *   limits  a three-hundredth between supports, a hundred-and-fiftieth of an overhang: common practice, and within
 *           what EN 1995-1-1 table 7.2 lets pass (l/150 to l/300; memory)
 *   tips    moments about the edges of the hull of the supports (plate/tip), the piece alone
 *   moves   strains of the columns between the place held fast and the screw, from its moisture now to the driest
 *           and dampest air; a slot lets a screw go that far either way
 *
 * Check: one board on two rails as 5·q·L⁴/(384·E·I) times two (test); a board's screws move as the board does (test).
 *
 * Limits: **no claim of strength**: nothing here says what breaks. Resin warmer than its glass transition sags without
 * end. Legs that stand abreast within 6 % of the piece count as one line, rails as if they did not bend; with more
 * than two lines each bay is taken as cut at its supports (safe). Dents, joints between piece and frame and people are
 * not in it. The band of the sag is that of creep; boards of one species differ by a fifth besides.
 */
export interface InUse {
  readonly massG: number
  readonly loadG: number
  /** Between supports; null where nothing spans. */
  readonly sag: Sag | null
  /** Of the overhang that goes farthest past its limit; null where none hangs over. */
  readonly overhang: (Sag & { readonly side: 'left' | 'right' | 'near' | 'far' }) | null
  /** Least mass on an edge that tips it, g; 0: it tips by itself; null: none does. */
  readonly tipsAtG: number | null
  readonly screws: readonly ScrewMove[]
}

export interface Sag {
  readonly mm: number
  readonly bandMm: readonly [low: number, high: number]
  readonly overMm: number
  readonly limitMm: number
}

export interface ScrewMove {
  readonly at: Place
  readonly along: 'x' | 'y'
  /** How far the piece goes over the screw on its way to the driest and the dampest air, mm. */
  readonly toDryMm: number
  readonly toDampMm: number
  /** Length over which the screw must be free, in all, and at the upper end, mm. */
  readonly needMm: readonly [central: number, upper: number]
}

/** Final over elastic sag: least, usual, most. */
const CREEP = [1, 2, 3] as const
const BETWEEN = 300
const OVERHANG = 150
const GRAVITY_N_PER_G = GRAVITY_M_PER_S2 / 1000
/** An overhang shorter than this is an edge, mm. */
const LEAST_OVER_MM = 20

/** The piece on supports. */
export function inUseOf(piece: Loaded, supports: Supports): InUse {
  const { ways, box, massG } = piece
  const sags = ways.map(way => sagOf(way, linesOf(supports, way.along, box), supports.load))
  const tips = tippingMass(massG, piece.middle, placesOf(supports), piece.edge)
  const fixed: Place = supports.fixed ?? [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  return {
    massG,
    loadG: supports.load,
    sag: added(sags.flatMap(s => s.between ?? [])),
    overhang: sags
      .flatMap(s => s.over)
      .reduce<InUse['overhang']>(
        (a, b) => (a !== null && a.mm / a.limitMm >= b.mm / b.limitMm ? a : b),
        null
      ),
    tipsAtG: Number.isFinite(tips) ? Math.max(0, tips) : null,
    screws: supports.held === 'loose' ? [] : screwsOf(supports).map(at => movesAt(at, fixed, piece))
  }
}

function sagOf(
  way: LoadedWay,
  lines: readonly number[],
  loadG: number
): {
  readonly between: Sag | null
  readonly over: NonNullable<InUse['overhang']>[]
} {
  const { along, lengthMm } = way
  const dx = lengthMm / CELLS
  const stretches = way.stiffnessNmm2.map((stiffnessNmm2, i) => ({
    lengthMm: dx,
    stiffnessNmm2,
    loadNPerMm: (GRAVITY_N_PER_G * (way.massG[i]! + loadG * way.share[i]!)) / dx
  }))
  if (lines.length < 2 || lines.at(-1)! - lines[0]! < lengthMm / 50) return { between: null, over: [] }
  const bays = lines.slice(1).map((b, i) => {
    const a = lines[i]!
    const from = i === 0 ? 0 : a
    const to = i === lines.length - 2 ? lengthMm : b
    return { overMm: b - a, sag: beamSag(cut(stretches, from, to), [a - from, b - from]) }
  })
  const worst = bays.reduce((p, q) => (q.sag.betweenMm / q.overMm > p.sag.betweenMm / p.overMm ? q : p))
  const side = (which: 'startMm' | 'endMm', bay: { readonly sag: BeamSag }, overMm: number) =>
    overMm < LEAST_OVER_MM
      ? []
      : [
          {
            ...grown(Math.max(0, bay.sag[which]), overMm, OVERHANG),
            side: (along === 'x' ? { startMm: 'left', endMm: 'right' } : { startMm: 'near', endMm: 'far' })[
              which
            ] as 'left' | 'right' | 'near' | 'far'
          }
        ]
  return {
    between: grown(Math.max(0, worst.sag.betweenMm), worst.overMm, BETWEEN),
    over: [...side('startMm', bays[0]!, lines[0]!), ...side('endMm', bays.at(-1)!, lengthMm - lines.at(-1)!)]
  }
}

function grown(elasticMm: number, overMm: number, part: number): Sag {
  const [least, usual, most] = CREEP
  return {
    mm: usual * elasticMm,
    bandMm: [least * elasticMm, most * elasticMm],
    overMm,
    limitMm: overMm / part
  }
}

// Both ways together, over the longer of the two.
function added(sags: readonly Sag[]): Sag | null {
  if (sags.length === 0) return null
  const sum = (pick: (s: Sag) => number) => sags.reduce((total, s) => total + pick(s), 0)
  const overMm = Math.max(...sags.map(s => s.overMm))
  return {
    mm: sum(s => s.mm),
    bandMm: [sum(s => s.bandMm[0]), sum(s => s.bandMm[1])],
    overMm,
    limitMm: overMm / BETWEEN
  }
}

function cut(stretches: readonly BeamStretch[], from: number, to: number): BeamStretch[] {
  let x = 0
  return stretches.flatMap(s => {
    const [a, b] = [Math.max(from, x), Math.min(to, x + s.lengthMm)]
    x += s.lengthMm
    return b - a > 1e-9 ? [{ ...s, lengthMm: b - a }] : []
  })
}

// How far the piece moves over a screw: strains of its cross-sections, summed from the place held fast.
function movesAt(at: Place, fixed: Place, { ways, box }: Loaded): ScrewMove {
  const start: Place = [box.minX, box.minY]
  const moved = ways.map((way, axis) => {
    const [from, to] = [fixed[axis]! - start[axis]!, at[axis]! - start[axis]!]
    const dx = way.lengthMm / CELLS
    const over = (k: 0 | 1 | 2 | 3) =>
      Math.sign(to - from) *
      way.strains.reduce((sum, strain, i) => {
        const part = Math.min(Math.max(from, to), (i + 1) * dx) - Math.max(Math.min(from, to), i * dx)
        return part > 0 ? sum + part * strain[k] : sum
      }, 0)
    const [dry, damp] = [over(0), over(1)]
    return {
      along: way.along,
      dry,
      damp,
      most: Math.max(Math.abs(dry), Math.abs(damp)),
      upper: Math.max(Math.abs(over(2)), Math.abs(over(3)))
    }
  })
  const worst = moved[0]!.most >= moved[1]!.most ? moved[0]! : moved[1]!
  return {
    at,
    along: worst.along,
    toDryMm: worst.dry,
    toDampMm: worst.damp,
    needMm: [2 * worst.most, 2 * worst.upper]
  }
}
