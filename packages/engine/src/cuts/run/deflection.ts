import { inRange } from '../../quantity/range.ts'

/** Young's modulus, MPa: carbide 550 to 620 GPa, high-speed steel 210 GPa (memory). */
const CARBIDE_MPA = 585_000

/** Diameter of a round bar as stiff as a fluted cutter, as a share of the cutter's (practice). */
const FLUTED = 0.8

/**
 * How far the tip of a cutter bends aside under a push at its end, mm: a cantilever.
 *
 *   y = F·L³/(3·E·I)     I = π(k·D)⁴/64
 *
 * Where a shank of another diameter carries a shorter fluted end, the bending of both parts adds up (unit load:
 * ∫ x²·F/(E·I) dx over each stretch, x from the tip): y = F/(3E)·(l³/I₁ + (L³ − l³)/I₂).
 *
 * Source: textbook beam. Check: 3 mm carbide, L 15, 20 N, k 0.8: 0.023 mm; shank as the flutes gives the plain beam.
 * Limits: holder and spindle do not give here; a small machine's frame often gives more than the cutter.
 *
 * @param forceN push at the tip
 * @param fluteMm length with flutes, from the tip
 * @param reachMm length out of the holder, at least `fluteMm` counts
 */
export function deflectionMm(
  forceN: number,
  diameterMm: number,
  fluteMm: number,
  shankMm: number,
  reachMm: number,
  modulusMPa = CARBIDE_MPA
): number {
  inRange('diameter', diameterMm, 0.1, 100, 'mm')
  inRange('shank', shankMm, 0.1, 100, 'mm')
  const flute = Math.min(fluteMm, reachMm)
  const inertia = (d: number) => (Math.PI * d ** 4) / 64
  return (
    (forceN / (3 * modulusMPa)) *
    (flute ** 3 / inertia(FLUTED * diameterMm) + (reachMm ** 3 - flute ** 3) / inertia(shankMm))
  )
}
