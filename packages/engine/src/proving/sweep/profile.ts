import type { CutterShape } from '../../catalogue/cutter-shape.ts'

/** The lower end of a cutter as the sweep works with it: which formula, and its figures in mm. */
export interface Profile {
  readonly form: 'flat' | 'cone' | 'ball' | 'bull' | 'keyhole'
  readonly radius: number
  /** Radius of what is flat at the end: of a blunt tip, of a bull-nose within its corners; a flat cutter all of it. */
  readonly flat: number
  /** Rise over run of a cone. */
  readonly slope: number
  readonly corner: number
  /** Of a keyhole cutter: height of its head, radius of its neck. */
  readonly head: number
  readonly neck: number
}

export function profileOf(c: CutterShape): Profile {
  const radius = c.diameterMm / 2
  const plain = { radius, flat: radius, slope: 0, corner: 0, head: 0, neck: radius }
  const slope = 1 / Math.tan((c.angleDeg * Math.PI) / 360)
  switch (c.form) {
    case 'flat':
    case 'surfacing':
      return { form: 'flat', ...plain }
    case 'ball':
      return { form: 'ball', ...plain, flat: 0, corner: radius }
    case 'bull': {
      const corner = Math.min(radius, Math.max(0, c.cornerMm))
      return corner === 0
        ? { form: 'flat', ...plain }
        : { form: 'bull', ...plain, flat: radius - corner, corner }
    }
    case 'v':
      return { form: 'cone', ...plain, flat: Math.min(radius, c.tipMm / 2), slope }
    case 'drill':
      return c.angleDeg >= 180 ? { form: 'flat', ...plain } : { form: 'cone', ...plain, flat: 0, slope }
    case 'keyhole':
      return { form: 'keyhole', ...plain, head: c.headMm, neck: c.neckMm / 2 }
  }
}

/** Height of the profile at a squared distance from the axis, within the radius. mm. */
export function riseAt2(p: Profile, r2: number): number {
  switch (p.form) {
    case 'cone': {
      const r = Math.sqrt(r2)
      return r > p.flat ? (r - p.flat) * p.slope : 0
    }
    case 'ball':
      return p.radius - Math.sqrt(Math.max(0, p.radius * p.radius - r2))
    case 'bull': {
      const over = Math.sqrt(r2) - p.flat
      return over > 0 ? p.corner - Math.sqrt(Math.max(0, p.corner * p.corner - over * over)) : 0
    }
    default:
      return 0
  }
}

/**
 * How far behind a place, against the direction of a move, the axis stands when the cutter comes lowest over it. The
 * axis then is at s − v for a place s along the line and w beside it:
 *
 *   v minimises  −m·v + f(√(v² + w²))  over  |v| ≤ ρ = √(R² − w²)        m: rise of the line over its run
 *
 *   flat  v = ±ρ, behind (m > 0) or before
 *   cone  v = |w|·m/√(k² − m²), no less than the blunt tip reaches; ±ρ where m is the steeper
 *   ball  v = ρ·m/√(1 + m²)
 *   bull  the root of f′(r)·v/r = m, by halving
 *
 * The function is convex, so that the best place on a stretch is this one moved onto it. Check: stamping in fine steps.
 */
export function behind(p: Profile, m: number, w2: number): number {
  if (m === 0) return 0
  const rho = Math.sqrt(Math.max(0, p.radius * p.radius - w2))
  const sign = m > 0 ? 1 : -1
  switch (p.form) {
    case 'cone': {
      const k = p.slope
      if (m * sign >= k) return sign * rho
      const tip = w2 < p.flat * p.flat ? Math.sqrt(p.flat * p.flat - w2) : 0
      return sign * Math.min(rho, Math.max(tip, (Math.sqrt(w2) * m * sign) / Math.sqrt(k * k - m * m)))
    }
    case 'ball':
      return (rho * m) / Math.sqrt(1 + m * m)
    case 'bull': {
      // The derivative grows from 0 at the edge of the flat to infinity at the radius.
      let low = w2 < p.flat * p.flat ? Math.sqrt(p.flat * p.flat - w2) : 0
      let high = rho
      for (let n = 0; n < 40 && high - low > 1e-10; n++) {
        const v = (low + high) / 2
        const r = Math.sqrt(v * v + w2)
        const over = r - p.flat
        const fall = ((over / Math.sqrt(Math.max(1e-300, p.corner * p.corner - over * over))) * v) / r
        if (fall < m * sign) low = v
        else high = v
      }
      return (sign * (low + high)) / 2
    }
    default:
      return sign * rho
  }
}

/** The most {@link behind} comes to over all w, with its sign, mm. */
export function mostBehind(p: Profile, m: number): number {
  if (m === 0) return 0
  const sign = m > 0 ? 1 : -1
  const steep = m * sign
  if (p.form === 'cone')
    return sign * (steep >= p.slope ? p.radius : Math.max(p.flat, (p.radius * steep) / p.slope))
  if (p.form === 'ball') return (p.radius * m) / Math.sqrt(1 + m * m)
  return sign * p.radius
}

/** A cutter slimmer by so much, mm, by half its radius at most. */
export function slimmer(p: Profile, byMm: number): Profile {
  const radius = Math.max(0.5 * p.radius, p.radius - byMm)
  const less = p.radius - radius
  return {
    ...p,
    radius,
    flat: Math.max(0, p.flat - less),
    corner: p.form === 'ball' ? radius : p.corner,
    neck: Math.max(0, p.neck - less)
  }
}
