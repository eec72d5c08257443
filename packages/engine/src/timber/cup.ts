import { inRange } from '../quantity/range.ts'

/**
 * Cupping: how far a board goes hollow across its width, and why.
 *
 *   gradient    κ = C·ΔM/t           wetter on one face than on the other, linear through the thickness
 *   flat-sawn   f = d·Δ·θ·tan θ      even change of moisture; Δ = |C_T − C_R|·|ΔM|, θ = atan(w/(2d))
 *               f ≈ Δ·w²/(4d)        the same for narrow boards
 *   two layers  κ = 6·ε·(1 + m)²/( h·[ 3(1 + m)² + (1 + m·n)·(m² + 1/(m·n)) ] )
 *   depth       f = κ·w²/8                       of the hollow over the width w (arc as parabola)
 *
 *   C  movement per % moisture across the face    ΔM  change of moisture, %    t  thickness, mm
 *   d  distance from the pith to the face, mm     m = t1/t2, n = E1/E2, h = t1 + t2, ε mismatch of strain
 *
 * Source: gradient: strain over thickness (derived). Flat-sawn: the displacement u_r = ε_r·r, u_θ = (ε_θ −
 * ε_r)·r·θ is strain-compatible in a body cut off from the pith, so the flat face y = d bows by d·Δ·θ·tan θ
 * to first order (derived). Two layers: Timoshenko, J. Opt. Soc. Am. 11 (1925) 233 (memory; textbook).
 * Check: walnut 150 × 20 mm with 3 % between its faces: 1.16 mm; flat-sawn 150 mm, 60 mm from the pith, 4 %:
 * 0.226 mm (0.315 by the narrow formula, which overstates wide boards).
 *
 * Limits: free boards, elastic, no creep; held or bonded ones build up stress instead (see
 * {@link restrainedStressMPa}). The parabola is within 1 % of the arc while f is under a twelfth of w.
 */

/**
 * Depth of the hollow, mm, from a curvature (1/mm) over a width (mm): f = κ·w²/8. Signed as the curvature.
 */
export function hollowMm(curvaturePerMm: number, widthMm: number): number {
  inRange('curvature', curvaturePerMm, -0.1, 0.1, '1/mm')
  inRange('width', widthMm, 0, 10_000, 'mm')
  return (curvaturePerMm * widthMm ** 2) / 8
}

/**
 * Hollow from a difference of moisture between the faces, mm. Positive `moistureDifferencePct`, positive
 * hollow; the drier face turns concave.
 */
export function gradientCupMm(input: {
  readonly coefficientPerPct: number
  readonly moistureDifferencePct: number
  readonly widthMm: number
  readonly thicknessMm: number
}): number {
  checkCoefficient(input.coefficientPerPct)
  inRange('difference of moisture', input.moistureDifferencePct, -60, 60, '%')
  inRange('thickness', input.thicknessMm, 0.5, 1000, 'mm')
  return hollowMm((input.coefficientPerPct * input.moistureDifferencePct) / input.thicknessMm, input.widthMm)
}

export interface FlatSawn {
  readonly radialPerPct: number
  readonly tangentialPerPct: number
  /** Change of moisture, %; negative: drying. */
  readonly moistureChangePct: number
  readonly widthMm: number
  /** From the pith to the face, mm; the pith lies under the middle of the board. */
  readonly pithDistanceMm: number
}

/**
 * Hollow of a flat-sawn board after an even change of moisture, mm. Positive: the bark side is concave, which
 * is what drying does when C_T exceeds C_R.
 */
export function flatSawnCupMm(board: FlatSawn): number {
  const delta = mismatch(board)
  const theta = Math.atan(board.widthMm / (2 * board.pithDistanceMm))
  return board.pithDistanceMm * delta * theta * Math.tan(theta)
}

/** The same by the narrow-board formula; for checks and for reading off how it scales. */
export function narrowFlatSawnCupMm(board: FlatSawn): number {
  return (mismatch(board) * board.widthMm ** 2) / (4 * board.pithDistanceMm)
}

/** Two bonded layers across the width: thickness in mm, modulus in MPa (any one unit). */
export interface TwoLayers {
  readonly thickness1Mm: number
  readonly modulus1MPa: number
  readonly thickness2Mm: number
  readonly modulus2MPa: number
  /** Free strain of layer 2 less that of layer 1; |ε| up to 0.2. */
  readonly strainMismatch: number
}

/**
 * Curvature of two bonded layers, 1/mm; positive: layer 1 (the one that grew less) lies on the hollow side.
 */
export function twoLayerCurvaturePerMm(layers: TwoLayers): number {
  const { thickness1Mm, modulus1MPa, thickness2Mm, modulus2MPa, strainMismatch } = layers
  inRange('thickness of layer 1', thickness1Mm, 1e-3, 1000, 'mm')
  inRange('thickness of layer 2', thickness2Mm, 1e-3, 1000, 'mm')
  inRange('modulus of layer 1', modulus1MPa, 1e-3, 1e6, 'MPa')
  inRange('modulus of layer 2', modulus2MPa, 1e-3, 1e6, 'MPa')
  inRange('mismatch of strain', strainMismatch, -0.2, 0.2, '')
  const m = thickness1Mm / thickness2Mm
  const n = modulus1MPa / modulus2MPa
  const sum = (1 + m) ** 2
  return (
    (6 * strainMismatch * sum) /
    ((thickness1Mm + thickness2Mm) * (3 * sum + (1 + m * n) * (m * m + 1 / (m * n))))
  )
}

/** Hollow of two bonded layers over a width, mm; signed as {@link twoLayerCurvaturePerMm}. */
export function twoLayerCupMm(layers: TwoLayers, widthMm: number): number {
  return hollowMm(twoLayerCurvaturePerMm(layers), widthMm)
}

/**
 * Upper bound of the stress when a board is held from moving, MPa: E·C·|ΔM|. Creep relieves a large part
 * within months. A bound for comparison, no claim of strength.
 */
export function restrainedStressMPa(
  modulusMPa: number,
  coefficientPerPct: number,
  moistureChangePct: number
): number {
  inRange('modulus', modulusMPa, 1, 1e6, 'MPa')
  checkCoefficient(coefficientPerPct)
  inRange('change of moisture', moistureChangePct, -60, 60, '%')
  return modulusMPa * coefficientPerPct * Math.abs(moistureChangePct)
}

function mismatch(board: FlatSawn): number {
  checkCoefficient(board.radialPerPct)
  checkCoefficient(board.tangentialPerPct)
  inRange('change of moisture', board.moistureChangePct, -60, 60, '%')
  inRange('width', board.widthMm, 0, 10_000, 'mm')
  inRange('distance from the pith', board.pithDistanceMm, 1, 10_000, 'mm')
  return (board.tangentialPerPct - board.radialPerPct) * -board.moistureChangePct
}

function checkCoefficient(coefficientPerPct: number): void {
  inRange('coefficient of movement', coefficientPerPct, 0, 0.01, 'per %')
}
