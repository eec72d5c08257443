import { regionOfRings } from './combine.ts'
import type { Region, Ring } from './region.ts'

/** Most points of one flattened curve: bounds what a hostile size and tolerance can ask for. */
export const MOST_POINTS = 50_000

/**
 * Points round a full circle so that no chord strays more than `tolMm` from it, mm.
 *
 * Points lie on the circle: a chord then strays inward by e = r·(1 − cos(π/n)), so n = π / acos(1 − e/r).
 * Source: elementary geometry (machining handbooks give it as chord error).
 */
export function circlePoints(radiusMm: number, tolMm: number): number {
  if (tolMm >= radiusMm) return 8
  return Math.min(MOST_POINTS, Math.max(8, Math.ceil(Math.PI / Math.acos(1 - tolMm / radiusMm))))
}

/** A circle about (cx, cy). Inscribed: its area is below π·r² by at most 2·π·r·tol. */
export function circle(diameterMm: number, tolMm: number, cx = 0, cy = 0): Region {
  positive('diameter', diameterMm)
  positive('tolerance', tolMm)
  const r = diameterMm / 2
  // A multiple of four keeps the widest points on the axes.
  const n = Math.ceil(circlePoints(r, tolMm) / 4) * 4
  const ring = new Float64Array(2 * n)
  for (let k = 0; k < n; k++) {
    const a = (2 * Math.PI * k) / n
    ring[2 * k] = cx + r * Math.cos(a)
    ring[2 * k + 1] = cy + r * Math.sin(a)
  }
  return { rings: [ring] }
}

/** An upright rectangle about (cx, cy), its corners rounded. Throws when a corner is larger than half a side. */
export function rectangle(
  widthMm: number,
  heightMm: number,
  cornerMm: number,
  tolMm: number,
  cx = 0,
  cy = 0
): Region {
  positive('width', widthMm)
  positive('height', heightMm)
  positive('tolerance', tolMm)
  const most = Math.min(widthMm, heightMm) / 2
  if (!(cornerMm >= 0 && cornerMm <= most))
    throw new Error(`a corner of ${cornerMm} mm; allowed 0 to ${most} mm`)
  const x = widthMm / 2 - cornerMm
  const y = heightMm / 2 - cornerMm
  const steps = cornerMm === 0 ? 0 : Math.ceil(circlePoints(cornerMm, tolMm) / 4)
  const points: number[] = []
  for (const [sx, sy, start] of [
    [1, 1, 0],
    [-1, 1, 1],
    [-1, -1, 2],
    [1, -1, 3]
  ] as const) {
    for (let k = 0; k <= steps; k++) {
      const a = ((start + (steps === 0 ? 0.5 : k / steps)) * Math.PI) / 2
      points.push(cx + sx * x + cornerMm * Math.cos(a), cy + sy * y + cornerMm * Math.sin(a))
    }
  }
  return { rings: [dedupe(Float64Array.from(points))] }
}

/** A polygon with holes, given in any sense. */
export function polygon(outer: Ring, holes: readonly Ring[] = []): Region {
  return regionOfRings([turned(outer, true), ...holes.map(h => turned(h, false))])
}

function turned(ring: Ring, counterClockwise: boolean): Ring {
  let twice = 0
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2)
    twice += ring[p]! * ring[k + 1]! - ring[k]! * ring[p + 1]!
  return twice > 0 === counterClockwise ? ring : reversed(ring)
}

/** The ring run the other way. */
export function reversed(ring: Ring): Ring {
  const out = new Float64Array(ring.length)
  for (let k = 0; k < ring.length; k += 2) {
    out[k] = ring[ring.length - 2 - k]!
    out[k + 1] = ring[ring.length - 1 - k]!
  }
  return out
}

/** The ring without points that repeat the one before. */
export function dedupe(ring: Float64Array): Ring {
  const out: number[] = []
  for (let k = 0; k < ring.length; k += 2) {
    const n = out.length
    if (n === 0 || ring[k] !== out[n - 2] || ring[k + 1] !== out[n - 1]) out.push(ring[k]!, ring[k + 1]!)
  }
  while (out.length > 2 && out[0] === out[out.length - 2] && out[1] === out[out.length - 1]) out.length -= 2
  return Float64Array.from(out)
}

function positive(what: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) throw new Error(`${what} ${value} mm; allowed: above 0`)
}
