import { inRange } from '../quantity/range.ts'

/**
 * How far a beam on two supports goes down, its ends hanging over, when stiffness and load change along it.
 *
 *   V' = −q,   M' = V,   w'' = M/(E·I)       w upward; M > 0 sags; w = 0 on both supports, nothing held at the ends
 *   R_b = Σ F·(x − a)/(b − a),   R_a = Σ F − R_b
 *
 *   q  load per length, N/mm       E·I  bending stiffness of the whole width, N·mm²
 *   a, b  places of the supports, mm from the start
 *
 * In each stretch w is a polynomial of the fourth degree, carried on exactly from stretch to stretch.
 *
 * Source: Euler-Bernoulli beam (textbook). Check: 5·q·L⁴/(384·E·I) between supports at its ends; the free end of an
 * overhang c beyond a span L, evenly loaded: q·c·(4·c²·L + 3·c³ − L³)/(24·E·I); at 0.2232 of the length from either
 * end the middle and the ends sag alike (all test).
 *
 * Limits: small slopes, no shear, no creep (the caller multiplies); supports carry up and down, as if fastened.
 * Elastic sag only, no claim of strength.
 */
export interface BeamStretch {
  readonly lengthMm: number
  /** E·I, N·mm². */
  readonly stiffnessNmm2: number
  /** Load, N/mm, downward. */
  readonly loadNPerMm: number
}

/** How far it goes down, mm; negative: it comes up. */
export interface BeamSag {
  readonly betweenMm: number
  readonly startMm: number
  readonly endMm: number
}

/** Places in a stretch at which its height is looked at. */
const LOOKS = 6

/** @throws RangeError for supports outside the beam or less than a hundredth of it apart */
export function beamSag(
  stretches: readonly BeamStretch[],
  supportsMm: readonly [a: number, b: number]
): BeamSag {
  const length = stretches.reduce(
    (sum, s) => sum + inRange('length of a stretch', s.lengthMm, 0, 1e5, 'mm'),
    0
  )
  const a = inRange('first support', supportsMm[0], 0, length, 'mm')
  // A support at the very end may miss it by the last digit of a sum.
  const last = supportsMm[1] - length < 1e-9 * length ? Math.min(supportsMm[1], length) : supportsMm[1]
  const b = inRange('second support', last, a + length / 100, length, 'mm')
  let [whole, moment, at] = [0, 0, 0]
  for (const s of stretches) {
    inRange('bending stiffness', s.stiffnessNmm2, 1e-3, 1e18, 'N·mm²')
    inRange('load', s.loadNPerMm, 0, 1e6, 'N/mm')
    const f = s.loadNPerMm * s.lengthMm
    whole += f
    moment += f * (at + s.lengthMm / 2 - a)
    at += s.lengthMm
  }
  const right = moment / (b - a)
  const left = whole - right

  // Places looked at and heights there, one after the other: this is asked for hundreds of times in a search.
  const places = [0]
  const heights = [0]
  let [x, w, slope, v, m] = [0, 0, 0, 0, 0]
  let wa: number | null = null
  let wb: number | null = null
  const meet = () => {
    // A support is met once: where a stretch, or a part of one, begins or ends.
    if (x === a && wa === null) {
      v += left
      wa = w
    }
    if (x === b && wb === null) {
      v += right
      wb = w
    }
  }
  for (const stretch of parted(stretches, a, b)) {
    meet()
    const { lengthMm: l, stiffnessNmm2: ei, loadNPerMm: q } = stretch
    for (let k = 1; k <= LOOKS; k++) {
      const s = (k * l) / LOOKS
      places.push(k === LOOKS ? stretch.endMm : x + s)
      heights.push(w + slope * s + ((m * s * s) / 2 + (v * s * s * s) / 6 - (q * s * s * s * s) / 24) / ei)
    }
    slope += (m * l + (v * l * l) / 2 - (q * l * l * l) / 6) / ei
    m += v * l - (q * l * l) / 2
    v -= q * l
    w = heights[heights.length - 1]!
    x = stretch.endMm
  }
  meet()
  const [low, high] = [wa!, wb!]
  const down = (k: number) => low + ((high - low) * (places[k]! - a)) / (b - a) - heights[k]!
  let between = 0
  for (let k = 0; k < places.length; k++)
    if (places[k]! >= a && places[k]! <= b) between = Math.max(between, down(k))
  return { betweenMm: between, startMm: down(0), endMm: down(places.length - 1) }
}

// Stretches parted at the supports, each with the place at which it ends.
function parted(
  stretches: readonly BeamStretch[],
  a: number,
  b: number
): (BeamStretch & { readonly endMm: number })[] {
  const out: (BeamStretch & { endMm: number })[] = []
  let x = 0
  for (const s of stretches) {
    const end = x + s.lengthMm
    for (const stop of [a, b, end]) {
      if (stop <= x || stop > end) continue
      out.push({
        lengthMm: stop - x,
        stiffnessNmm2: s.stiffnessNmm2,
        loadNPerMm: s.loadNPerMm,
        endMm: stop
      })
      x = stop
    }
  }
  return out
}
