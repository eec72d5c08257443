import { GRAVITY_M_PER_S2 } from '../quantity/gravity.ts'
import { inRange, wholeInRange } from '../quantity/range.ts'

/**
 * How far the base of a mould sags between its bearers under resin.
 *
 *   w_max = k·q·L⁴/(E·I)       I = t³/12 per unit width
 *
 *   q  load, N/m²: resin, and the board's own weight if wanted     L  distance between bearers, m
 *   E  modulus of the board in bending, Pa                          t  its thickness, m
 *   k  5/384 for one span; for several equal spans from the three-moment equation
 *        M_(i−1) + 4·M_i + M_(i+1) = −q·L²/2,   M_0 = M_n = 0
 *      and the deflection of a span with end moments m = M/(q·L²):
 *        y = ξ(1 − 2ξ² + ξ³)/24 + m_a·(2ξ − 3ξ² + ξ³)/6 + m_b·(ξ − ξ³)/6
 *
 * Source: Euler-Bernoulli beam and Clapeyron's three-moment equation (textbook).
 * Check: 18 mm, E 2.5 GPa, 510 N/m²: 11.3 mm at 1.2 m and 0.14 mm at 0.4 m, as one simply supported span (a
 * board cut at each bearer, or resting on two). The same board run through over many bearers sags less than
 * that: 0.0054, 0.0069, 0.0065 instead of 0.0130 in its end spans for two, three, four spans.
 *
 * Limits: **a strip, not a plate.** Bearers run the whole way across, the board bends one way only, and its
 * width does not help: safe, because walls or a frame that stiffen the edges only make it better (a board
 * carried all round: {@link framedSagMm}). Bearers themselves do not bend; nothing overhangs; the board lies
 * loose, so it may lift. Shear adds about (E/G)·(t/L)² of the sag: 3 % at L = 20·t for particle board with E/G
 * 12 (memory). A board under load creeps: EN 1995-1-1 Table 3.2 has k_def 2.25 for particle board and MDF,
 * 0.80 for plywood under permanent load (memory), and days take part of that: `creepFactor` is there to be
 * set. Sag deepens the casting: that resin is bought and planed off.
 */

export interface BaseBoard {
  readonly thicknessMm: number
  /** Modulus in bending along the span, GPa. */
  readonly modulusGPa: number
  /** Load on it, N/m². */
  readonly loadNPerM2: number
  /** Creep while loaded, as a fraction of the elastic sag; 0 unless given. */
  readonly creepFactor?: number
}

/** Load of resin on the base, N/m², with the board's own weight when its thickness and density are given. */
export function baseLoadNPerM2(
  resinDepthMm: number,
  resinKgM3: number,
  board?: { readonly thicknessMm: number; readonly densityKgM3: number }
): number {
  inRange('depth of resin', resinDepthMm, 0, 100_000, 'mm')
  inRange('density of the resin', resinKgM3, 500, 3000, 'kg/m³')
  let kgPerM2 = (resinDepthMm / 1000) * resinKgM3
  if (board) {
    inRange('thickness of the board', board.thicknessMm, 1, 200, 'mm')
    inRange('density of the board', board.densityKgM3, 50, 9000, 'kg/m³')
    kgPerM2 += (board.thicknessMm / 1000) * board.densityKgM3
  }
  return kgPerM2 * GRAVITY_M_PER_S2
}

/**
 * k of the worst span of a board over `spans` equal spans (1..200), all of them loaded: 5/384 for one, less
 * for more.
 */
export function sagCoefficient(spans: number): number {
  wholeInRange('number of spans', spans, 1, 200)
  const moments = supportMoments(spans)
  let worst = 0
  for (let i = 0; i < spans; i++) worst = Math.max(worst, spanCoefficient(moments[i]!, moments[i + 1]!))
  return worst
}

/** Greatest sag between bearers `spacingMm` apart, mm, of a board that runs over `spans` of them. */
export function sagMm(board: BaseBoard, spacingMm: number, spans = 1): number {
  inRange('distance between bearers', spacingMm, 1, 10_000, 'mm')
  return sagCoefficient(spans) * compliance(board) * (spacingMm / 1000) ** 4 * 1000
}

/** Distance between bearers at which the sag is `limitMm`: the inverse of {@link sagMm}, closed form. */
export function bearerSpacingForSagMm(board: BaseBoard, limitMm: number, spans = 1): number {
  inRange('sag allowed', limitMm, 1e-3, 100, 'mm')
  const spacingM = (limitMm / 1000 / (sagCoefficient(spans) * compliance(board))) ** 0.25
  return spacingM * 1000
}

/**
 * Fewest bearers, one at each end and the rest evenly between, that keep a base of `lengthMm` within
 * `limitMm`. `continuous`: the board runs through; otherwise every span counts as simply supported (cut, or
 * not to be relied on).
 *
 * @throws RangeError when even 201 bearers do not
 */
export function bearersForSag(
  board: BaseBoard,
  lengthMm: number,
  limitMm: number,
  continuous = false
): { readonly bearers: number; readonly spacingMm: number; readonly sagMm: number } {
  inRange('length of the base', lengthMm, 10, 10_000, 'mm')
  inRange('sag allowed', limitMm, 1e-3, 100, 'mm')
  for (let spans = 1; spans <= 200; spans++) {
    const spacingMm = lengthMm / spans
    const sag = sagMm(board, spacingMm, continuous ? spans : 1)
    if (sag <= limitMm) return { bearers: spans + 1, spacingMm, sagMm: sag }
  }
  throw new RangeError(
    `a board of ${board.thicknessMm} mm sags more than ${limitMm} mm even on 201 bearers over ${lengthMm} mm`
  )
}

/**
 * Sag in the middle of a base carried along all four edges and nowhere between (a frame), mm: thin plate,
 * simply supported, Navier's double series.
 *
 *   w = 16·q/(π⁶·D)·ΣΣ sin(mπ/2)·sin(nπ/2)/( m·n·(m²/a² + n²/b²)² ),  m, n odd;  D = E·t³/(12·(1 − ν²))
 *
 * Source: Timoshenko & Woinowsky-Krieger, Theory of Plates and Shells, table of α in α·q·a⁴/D (memory).
 * Check: α = 0.00406 square, 0.01013 for 1:2, 0.01302 for a long strip.
 */
export function framedSagMm(board: BaseBoard, lengthMm: number, widthMm: number, poisson = 0.3): number {
  inRange('length of the base', lengthMm, 10, 10_000, 'mm')
  inRange('width of the base', widthMm, 10, 10_000, 'mm')
  inRange("Poisson's ratio", poisson, 0, 0.499, '')
  const short = Math.min(lengthMm, widthMm) / 1000
  const ratio = (short / (Math.max(lengthMm, widthMm) / 1000)) ** 2
  let sum = 0
  // Terms fall as m⁻¹(m² + n²·ratio)⁻²; the long way needs more of them the longer the plate.
  for (let m = 1; m < 40; m += 2) {
    for (let n = 1; n < 1001; n += 2) {
      const sign = (m + n) % 4 === 2 ? 1 : -1
      sum += sign / (m * n * (m * m + n * n * ratio) ** 2)
    }
  }
  // compliance = q/(E·I) with I = t³/12, so q/D = compliance·(1 − ν²)
  return (16 / Math.PI ** 6) * sum * compliance(board) * (1 - poisson ** 2) * short ** 4 * 1000
}

/** q·(1 + creep)/(E·I) per unit width, 1/m³. */
function compliance(board: BaseBoard): number {
  inRange('thickness of the board', board.thicknessMm, 1, 200, 'mm')
  inRange('modulus of the board', board.modulusGPa, 0.01, 250, 'GPa')
  inRange('load', board.loadNPerM2, 0, 1e7, 'N/m²')
  const creep = inRange('creep factor', board.creepFactor ?? 0, 0, 10, '')
  const inertia = (board.thicknessMm / 1000) ** 3 / 12
  return (board.loadNPerM2 * (1 + creep)) / (board.modulusGPa * 1e9 * inertia)
}

/** Moments over the supports in q·L², hogging negative: Thomas' solution of the three-moment equations. */
function supportMoments(spans: number): Float64Array {
  const moments = new Float64Array(spans + 1)
  const upper = new Float64Array(spans + 1)
  for (let i = 1; i < spans; i++) {
    const pivot = 4 - upper[i - 1]!
    upper[i] = 1 / pivot
    moments[i] = (-0.5 - moments[i - 1]!) / pivot
  }
  for (let i = spans - 1; i >= 1; i--) moments[i] = moments[i]! - upper[i]! * moments[i + 1]!
  return moments
}

/** Largest downward deflection of one span in q·L⁴/(E·I), from its end moments. */
function spanCoefficient(left: number, right: number): number {
  const y = (x: number): number =>
    (x * (1 - 2 * x * x + x ** 3)) / 24 +
    (left * (2 * x - 3 * x * x + x ** 3)) / 6 +
    (right * (x - x ** 3)) / 6
  // Near its peak the curve has one top: the best of 64 points brackets it, ternary search closes in.
  let best = 0
  for (let i = 1; i < 64; i++) if (y(i / 64) > y(best / 64)) best = i
  let low = Math.max(0, best - 1) / 64
  let high = Math.min(64, best + 1) / 64
  for (let i = 0; i < 80; i++) {
    const a = low + (high - low) / 3
    const b = high - (high - low) / 3
    if (y(a) < y(b)) low = a
    else high = b
  }
  return Math.max(0, y((low + high) / 2))
}
