import type { Top } from './top.ts'

/** A height at which level cuts are taken, and what it weighs in an integral over the height, mm. */
export interface Sample {
  readonly at: number
  readonly weight: number
}

/** What of a body decides how its level cuts change with height. */
export interface Changing {
  readonly base: number
  readonly edge: number
  readonly low: number
  readonly high: number
  readonly clear: number
  readonly lofts: unknown
  readonly top: Top
}

/** Gauss-Legendre nodes on [-1, 1] and weights (Abramowitz & Stegun, table 25.4; n points are exact to degree 2n − 1). */
const GAUSS = {
  2: [
    [-0.5773502691896257, 1],
    [0.5773502691896257, 1]
  ],
  3: [
    [-0.7745966692414834, 5 / 9],
    [0, 8 / 9],
    [0.7745966692414834, 5 / 9]
  ],
  5: [
    [-0.906179845938664, 0.23692688505618908],
    [-0.5384693101056831, 0.47862867049936647],
    [0, 0.5688888888888889],
    [0.5384693101056831, 0.47862867049936647],
    [0.906179845938664, 0.23692688505618908]
  ]
} as const

/**
 * Heights and weights that integrate level cuts from z0 to z1, no break lying between them: the middle alone
 * where all are alike. `curved`: something besides the bodies changes (a groove).
 *
 * - Slanted sides: level cuts are quadratic in z; one panel of five is exact.
 * - Crowns and grooves open like a root at an end, and meet outlines at an angle: two panels, smoothed.
 * - Measured tops: between two measured heights level cuts are quadratic, at them they bend. The stretch is
 *   parted there; with more than {@link MOST_BENDS} of them the bends are slight, and every so manieth will do.
 */
export function levelSamples(bodies: readonly Changing[], z0: number, z1: number, curved: boolean): Sample[] {
  const mid = (z0 + z1) / 2
  const bends: number[] = []
  let panels = curved ? 2 : 0
  for (const t of bodies) {
    if (!(mid > t.base && mid < t.high)) continue
    if (mid > t.clear && t.top.kind === 'crown') panels = 2
    else if (mid > t.clear || (t.lofts !== null && mid < t.edge)) panels = Math.max(1, panels)
    if (mid > t.clear && t.top.kind === 'grid') bends.push(...measuredHeights(t.top, z0, z1))
  }
  if (panels === 0) return [{ at: mid, weight: z1 - z0 }]
  if (bends.length === 0) return smoothed(z0, z1, panels)
  const stops = [z0, ...thinned(bends), z1]
  const parts = stops.length - 1
  return stops.slice(1).flatMap((z, k) => {
    const from = stops[k]!
    // Few parts want many samples each: there a crown or a groove may change as well.
    return parts <= 3 ? smoothed(from, z, 1) : plain(from, z, parts <= 8 ? 3 : 2)
  })
}

/** Most measured heights at which a stretch is parted. */
const MOST_BENDS = 24
/** Measured heights closer than this share of their range count as one. */
const SAME_SHARE = 1e-3

function measuredHeights(top: Extract<Top, { kind: 'grid' }>, z0: number, z1: number): number[] {
  const out: number[] = []
  for (const rise of top.rises) {
    const z = top.edge + rise
    if (z > z0 && z < z1) out.push(z)
  }
  return out
}

function thinned(heights: readonly number[]): number[] {
  const sorted = [...heights].sort((a, b) => a - b)
  const least = SAME_SHARE * (sorted[sorted.length - 1]! - sorted[0]!)
  const apart = sorted.filter((z, k) => k === 0 || z - sorted[k - 1]! > least)
  if (apart.length <= MOST_BENDS) return apart
  return Array.from(
    { length: MOST_BENDS },
    (_, k) => apart[Math.floor(((k + 0.5) * apart.length) / MOST_BENDS)]!
  )
}

/**
 * Panels of five Gauss points in x, with z = a + (b − a)·(3x² − 2x³): what opens like a root at either end is
 * smooth in x, and what is quadratic in z is still integrated exactly (degree 3·2 + 2 = 8).
 */
function smoothed(a: number, b: number, panels: number): Sample[] {
  const out: Sample[] = []
  for (let p = 0; p < panels; p++) {
    for (const [node, weight] of GAUSS[5]) {
      const x = (p + (1 + node) / 2) / panels
      out.push({
        at: a + (b - a) * x * x * (3 - 2 * x),
        weight: ((b - a) * weight * 3 * x * (1 - x)) / panels
      })
    }
  }
  return out
}

function plain(a: number, b: number, points: 2 | 3): Sample[] {
  return GAUSS[points].map(([node, weight]) => ({
    at: (a + b) / 2 + ((b - a) / 2) * node,
    weight: ((b - a) / 2) * weight
  }))
}
