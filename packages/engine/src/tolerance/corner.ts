import { inRange } from '../quantity/range.ts'

/**
 * A square part in a pocket whose corners a round cutter left.
 *
 * The pocket's side stands `d` off the part's side; its corner is an arc of radius `R` that touches both sides, the
 * part's corner one of radius `p`. Along the diagonal the corner of the part is free by
 *
 *   g = √2·d − (√2 − 1)·(R − p)        while R > p + d; else d itself or more
 *
 * so it goes in while R ≤ p + d·√2/(√2 − 1) = p + 3.414·d, and the least side gap for a cutter of radius R is
 * d = (R − p)·(√2 − 1)/√2 = 0.293·(R − p).
 *
 * Symbols: d, R, p, g in mm. Source: plane geometry (derived): centre of the arc lies R inside both sides of the
 * pocket, that of the part's corner p inside its own; g is R − p less the distance of the two centres.
 * Check: d 1.0, R 3, p 0: g = 1.414 − 1.243 = 0.172; R 3.414: g = 0.
 *
 * Limits: a part in the middle of its pocket, sides square to each other; a corner that is rough or tapered, as a
 * worn cutter leaves it, needs more.
 */
const SHARE = (Math.SQRT2 - 1) / Math.SQRT2

/** Gap at the corner, mm; negative: the corner of the part stands in the material. @throws RangeError */
export function cornerGapMm(sideGapMm: number, cutterRadiusMm: number, partRadiusMm: number): number {
  check(cutterRadiusMm, partRadiusMm)
  inRange('gap at the side', sideGapMm, -1000, 1000, 'mm')
  if (cutterRadiusMm - partRadiusMm <= sideGapMm) return sideGapMm
  return Math.min(sideGapMm, Math.SQRT2 * sideGapMm - (Math.SQRT2 - 1) * (cutterRadiusMm - partRadiusMm))
}

/** Gap at the sides from which the corner goes in, mm. @throws RangeError */
export function sideGapForCornerMm(cutterRadiusMm: number, partRadiusMm: number): number {
  check(cutterRadiusMm, partRadiusMm)
  return Math.max(0, SHARE * (cutterRadiusMm - partRadiusMm))
}

function check(cutterRadiusMm: number, partRadiusMm: number): void {
  inRange('radius of the cutter', cutterRadiusMm, 0, 500, 'mm')
  inRange('radius of the part’s corner', partRadiusMm, 0, 500, 'mm')
}
