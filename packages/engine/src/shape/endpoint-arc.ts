import type { Arc } from './flatten.ts'

/**
 * An SVG arc, given by its ends, as centre and half-diameters; null where SVG draws a straight line (a radius
 * of 0) or nothing (ends that coincide).
 *
 * SVG 1.1, appendix F.6 (SVG 2, B.2) "Elliptical arc implementation notes" (memory), with φ the rotation of the
 * x half-axis:
 *
 *   (x1', y1') = R(−φ)·(P1 − P2)/2                                                            F.6.5.1
 *   Λ = x1'²/rx² + y1'²/ry²;  if Λ > 1: rx, ry ← √Λ·rx, √Λ·ry                                 F.6.6.2, 3
 *   (cx', cy') = ±√((rx²ry² − rx²y1'² − ry²x1'²)/(rx²y1'² + ry²x1'²))·(rx·y1'/ry, −ry·x1'/rx)  F.6.5.2
 *                 + when large-arc ≠ sweep
 *   C = R(φ)·(cx', cy') + (P1 + P2)/2                                                          F.6.5.3
 *
 * and the angles from the ends seen from the centre; dt has the sign of the sweep flag (positive turns from +x
 * to +y). The root's argument is 1/Λ − 1 over the lengths divided by the radii, which is how it is computed.
 *
 * @param xRotDeg φ in degrees; radii may be negative (their size counts)
 */
export function endpointArc(
  x1: number,
  y1: number,
  rxGiven: number,
  ryGiven: number,
  xRotDeg: number,
  large: boolean,
  sweep: boolean,
  x2: number,
  y2: number
): Arc | null {
  let rx = Math.abs(rxGiven)
  let ry = Math.abs(ryGiven)
  if (rx === 0 || ry === 0 || (x1 === x2 && y1 === y2)) return null
  const phi = ((xRotDeg % 360) * Math.PI) / 180
  const cos = Math.cos(phi)
  const sin = Math.sin(phi)
  const hx = (x1 - x2) / 2
  const hy = (y1 - y2) / 2
  // On the circle of radius 1: ends at ±p, centre q at right angles to p.
  let px = (cos * hx + sin * hy) / rx
  let py = (-sin * hx + cos * hy) / ry
  const lambda = Math.hypot(px, py)
  if (lambda > 1) {
    rx *= lambda
    ry *= lambda
    px /= lambda
    py /= lambda
  }
  const square = px * px + py * py
  if (!(square > 0)) return null
  const root = Math.sqrt(Math.max(0, 1 / square - 1)) * (large !== sweep ? 1 : -1)
  const qx = root * py
  const qy = -root * px
  const t0 = Math.atan2(py - qy, px - qx)
  let dt = Math.atan2(-py - qy, -px - qx) - t0
  if (sweep && dt <= 0) dt += 2 * Math.PI
  else if (!sweep && dt >= 0) dt -= 2 * Math.PI
  return {
    cx: (x1 + x2) / 2 + cos * rx * qx - sin * ry * qy,
    cy: (y1 + y2) / 2 + sin * rx * qx + cos * ry * qy,
    ux: cos * rx,
    uy: sin * rx,
    vx: -sin * ry,
    vy: cos * ry,
    t0,
    dt
  }
}
