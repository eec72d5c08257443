import { inRange } from '../quantity/range.ts'

/**
 * What has to stand on the edge of a plate that lies loose on supports before it tips.
 *
 *   m = G·d/r        about each edge of the hull of the supports
 *
 *   G  mass of the plate    d  from the edge of the hull in to its middle of mass
 *   r  from the edge of the hull out to the farthest place of the plate beyond it
 *
 * Source: moments about the line on which it turns (textbook). Check: a plate of 10 kg, 1 m long, on two rails 0.6 m
 * apart in its middle tips at 10·0.3/0.2 = 15 kg on its end (test).
 *
 * Limits: standing still; a knock, a climber, a leg that slides are not in it. What it stands on is taken to stay.
 */
export type Place = readonly [x: number, y: number]

/**
 * The least mass on an edge that tips it, in the unit of `mass`; 0 or less: it tips by itself. Infinity: no edge hangs
 * over.
 * @throws RangeError for supports on one line
 */
export function tippingMass(
  mass: number,
  middle: Place,
  supports: readonly Place[],
  edge: readonly Place[]
): number {
  inRange('mass', mass, 0, 1e12)
  const hull = hullOf(supports)
  if (hull.length < 3)
    throw new RangeError('the supports stand on one line; at least three places beside it are asked for')
  let least = Number.POSITIVE_INFINITY
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length]!
    const long = Math.hypot(q[0] - p[0], q[1] - p[1])
    // Counter-clockwise: outward lies to the right.
    const out = ([x, y]: Place) => ((q[1] - p[1]) * (x - p[0]) - (q[0] - p[0]) * (y - p[1])) / long
    const reach = Math.max(...edge.map(out))
    const inside = -out(middle)
    if (inside <= 0) least = Math.min(least, 0)
    else if (reach > 1e-6) least = Math.min(least, (mass * inside) / reach)
  })
  return least
}

/** Corners of the hull, counter-clockwise (Andrew's monotone chain; textbook). */
function hullOf(places: readonly Place[]): Place[] {
  const sorted = [...places].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly Place[]): Place[] => {
    const out: Place[] = []
    for (const p of list) {
      while (out.length > 1) {
        const [a, b] = [out[out.length - 2]!, out[out.length - 1]!]
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 1e-9) break
        out.pop()
      }
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.reverse())]
}
