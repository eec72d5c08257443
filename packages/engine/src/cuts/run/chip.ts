import type { CutMaterial } from '../../catalogue/chip-load.ts'
import { CHIP_LOAD_MM } from '../../catalogue/chip-load.ts'
import { inRange } from '../../quantity/range.ts'

/**
 * The chip a tooth takes.
 *
 *   h    thickest chip                         mm
 *   fz   way of the work per tooth             mm
 *   ae   width of cut, D diameter              mm
 *   κ    angle between edge and feed           degrees, 90 for a square end
 *
 *   ae < D/2:  h = 2·fz·√((ae/D)(1 − ae/D))     else h = fz
 *   h = fz·sin κ
 *   ball, depth ap < D/2:  D_eff = 2·√(ap(D − ap))
 *   V of angle θ with a tip t, depth ap:  D_eff = t + 2·ap·tan(θ/2)
 *
 * Source: textbook geometry of milling (memory); table of chips: catalogue/chip-load.ts.
 * Check: ae = D/2 gives h = fz from both sides; a ball cutting to its equator is as wide as it is; evidence rows.
 */

/**
 * Range of the chip per tooth, mm, for a diameter: between the rows of the table by its logarithm against that of
 * the diameter. Below 1 mm in proportion to the diameter; above 12 as at 12.
 *
 * @param diameterMm 0.1 to 100
 */
export function chipRangeMm(material: CutMaterial, diameterMm: number): readonly [low: number, high: number] {
  inRange('diameter', diameterMm, 0.1, 100, 'mm')
  const [low, high] = between(diameterMm, row => row[material === 'dense' ? 'hardwood' : material])
  return material === 'dense' ? [low, (low + high) / 2] : [low, high]
}

/** Range of the turns a minute for a diameter, by the same table. */
export function rpmRange(diameterMm: number): readonly [low: number, high: number] {
  return between(Math.max(diameterMm, CHIP_LOAD_MM[0]!.diameterMm), row => row.rpm)
}

function between(
  diameterMm: number,
  of: (row: (typeof CHIP_LOAD_MM)[number]) => readonly [number, number]
): readonly [number, number] {
  const rows = CHIP_LOAD_MM
  const first = rows[0]!
  if (diameterMm <= first.diameterMm) {
    const share = diameterMm / first.diameterMm
    return [of(first)[0] * share, of(first)[1] * share]
  }
  const next = rows.findIndex(r => r.diameterMm >= diameterMm)
  if (next < 0) return of(rows[rows.length - 1]!)
  const a = rows[next - 1]!
  const b = rows[next]!
  const t = Math.log(diameterMm / a.diameterMm) / Math.log(b.diameterMm / a.diameterMm)
  const mix = (p: number, q: number) => p * (q / p) ** t
  return [mix(of(a)[0], of(b)[0]), mix(of(a)[1], of(b)[1])]
}

/** Thickest chip as a share of the way per tooth, 0..1, for a width of cut. 1 from half the diameter on. */
export function radialThinning(widthMm: number, diameterMm: number): number {
  const share = inRange('width of cut', widthMm, 0, diameterMm, 'mm') / diameterMm
  return share >= 0.5 ? 1 : 2 * Math.sqrt(share * (1 - share))
}

/** Thickest chip as a share of the way per tooth for an edge that stands at this angle to the feed. */
export function axialThinning(edgeAngleDeg: number): number {
  return Math.sin((inRange('angle of the edge', edgeAngleDeg, 0, 90, 'degrees') * Math.PI) / 180)
}

/** Diameter at which a ball cuts at a depth, mm. */
export function ballDiameterMm(diameterMm: number, depthMm: number): number {
  inRange('depth', depthMm, 0, 1000, 'mm')
  return depthMm >= diameterMm / 2 ? diameterMm : 2 * Math.sqrt(depthMm * (diameterMm - depthMm))
}

/** Width of a V at a depth, mm. @param angleDeg included angle, 1 to 179 */
export function vWidthMm(angleDeg: number, depthMm: number, tipMm = 0): number {
  inRange('included angle', angleDeg, 1, 179, 'degrees')
  return tipMm + 2 * depthMm * Math.tan((angleDeg * Math.PI) / 360)
}

/** Depth at which a V is so wide, mm: (w − tip)/(2 tan(θ/2)). */
export function vDepthMm(angleDeg: number, widthMm: number, tipMm = 0): number {
  inRange('included angle', angleDeg, 1, 179, 'degrees')
  return Math.max(0, widthMm - tipMm) / (2 * Math.tan((angleDeg * Math.PI) / 360))
}
