/**
 * The edge nearest to a click in a picture, found to a fraction of a px.
 *
 * The picture's slope at any place p, px or between, is its convolution with the slope of a Gaussian,
 *
 *   ∇I(p) = Σ I(q)·(q − p)/σ²·G(q − p)      G = exp(−|q − p|²/2σ²) / Σ exp(...)
 *
 * which needs no interpolation. Across a straight step the size of the slope is itself a Gaussian, so a parabola
 * through the logarithms of three of its values has its top on the edge exactly; px are squares, which widens
 * it a little and moves nothing. On an edge of radius r the top lies about σ²/2r to the inner side (0.02 px for
 * r = 30).
 *
 * Coordinates: the middle of the first px is (½, ½), as a click on the screen counts.
 */
export interface PictureEdge {
  readonly x: number
  readonly y: number
  /** Steepness there, levels of grey a px. */
  readonly slope: number
  /** Direction across the edge towards the lighter side, degrees clockwise from x as seen (y runs down). */
  readonly acrossDeg: number
}

/** Width of the Gaussian, px: wide enough for the grain of a photo, narrow enough for thin bark (practice). */
const SIGMA = 1.2
const REACH = 4
/** Weaker slopes are grain of the picture, not an edge: levels of grey a px of 255 (practice). */
const LEAST_SLOPE = 3
const MOST_RADIUS_PX = 64

/**
 * The strongest edge within `radiusPx` of (x, y); one at the rim counts half of one at the click. null where there
 * is none, outside the picture, or when the sizes do not fit the array.
 *
 * `imageGray`: width × height levels 0 to 255, row by row from the top. Radius 1 to 64 px.
 */
export function snapToEdge(
  imageGray: Uint8ClampedArray,
  width: number,
  height: number,
  x: number,
  y: number,
  radiusPx: number
): PictureEdge | null {
  if (!(width >= 3 && height >= 3 && width * height === imageGray.length)) return null
  if (!(x >= 0 && y >= 0 && x <= width && y <= height && radiusPx >= 1)) return null
  const r = Math.min(MOST_RADIUS_PX, radiusPx)
  const s = new Float64Array(2)
  let best = 0
  let bx = 0
  let by = 0
  for (let j = Math.max(0, Math.floor(y - r)); j < Math.min(height, y + r); j++) {
    for (let i = Math.max(0, Math.floor(x - r)); i < Math.min(width, x + r); i++) {
      const d2 = ((i + 0.5 - x) ** 2 + (j + 0.5 - y) ** 2) / (r * r)
      if (d2 > 1) continue
      slopeAt(s, imageGray, width, height, i + 0.5, j + 0.5)
      const weight = Math.hypot(s[0]!, s[1]!) * (1 - d2 / 2)
      if (weight > best) {
        best = weight
        bx = i + 0.5
        by = j + 0.5
      }
    }
  }
  if (best < LEAST_SLOPE / 2) return null
  slopeAt(s, imageGray, width, height, bx, by)
  // Towards the top of the slope, along its own direction; each step at most a px, three in all.
  for (let step = 0; step < 3; step++) {
    const size = Math.hypot(s[0]!, s[1]!)
    const nx = s[0]! / size
    const ny = s[1]! / size
    const along = (t: number): number => {
      slopeAt(s, imageGray, width, height, bx + t * nx, by + t * ny)
      return Math.log(Math.max(1e-9, s[0]! * nx + s[1]! * ny))
    }
    const [before, here, behind] = [along(-1), along(0), along(1)]
    const bend = before - 2 * here + behind
    const t = bend < 0 ? Math.max(-1, Math.min(1, (before - behind) / (2 * bend))) : 0
    bx += t * nx
    by += t * ny
    slopeAt(s, imageGray, width, height, bx, by)
    if (Math.abs(t) < 1e-3) break
  }
  const slope = Math.hypot(s[0]!, s[1]!)
  if (!(slope >= LEAST_SLOPE && Math.hypot(bx - x, by - y) <= r + 1)) return null
  return { x: bx, y: by, slope, acrossDeg: (Math.atan2(s[1]!, s[0]!) * 180) / Math.PI }
}

// The slope at (x, y) into `out`. Past the rim of the picture its last px go on.
function slopeAt(
  out: Float64Array,
  gray: Uint8ClampedArray,
  width: number,
  height: number,
  x: number,
  y: number
): void {
  const i0 = Math.floor(x) - REACH
  const j0 = Math.floor(y) - REACH
  let gx = 0
  let gy = 0
  let sum = 0
  for (let j = j0; j <= j0 + 2 * REACH; j++) {
    const row = width * Math.min(height - 1, Math.max(0, j))
    const dy = j + 0.5 - y
    for (let i = i0; i <= i0 + 2 * REACH; i++) {
      const dx = i + 0.5 - x
      const g = Math.exp(-(dx * dx + dy * dy) / (2 * SIGMA * SIGMA))
      const level = gray[row + Math.min(width - 1, Math.max(0, i))]!
      gx += level * dx * g
      gy += level * dy * g
      sum += g
    }
  }
  out[0] = gx / (sum * SIGMA * SIGMA)
  out[1] = gy / (sum * SIGMA * SIGMA)
}

/** Levels of grey of a picture of four bytes a px: luma of ITU-R BT.709 (0.2126, 0.7152, 0.0722; memory). */
export function grayOf(rgba: Uint8ClampedArray): Uint8ClampedArray {
  const out = new Uint8ClampedArray(Math.floor(rgba.length / 4))
  for (let k = 0; k < out.length; k++)
    out[k] = 0.2126 * rgba[4 * k]! + 0.7152 * rgba[4 * k + 1]! + 0.0722 * rgba[4 * k + 2]!
  return out
}
