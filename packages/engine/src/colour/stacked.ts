import {
  type Bands,
  INTERNAL_REFLECTION,
  insideReflectance,
  SURFACE_REFLECTION
} from '../catalogue/pigment-optics.ts'
import { inRange } from '../quantity/range.ts'

/**
 * Light through layers: what each turns back and lets through, and what a stack of them shows.
 *
 *   α = K + S,  β = √(K·(K + 2S)),  e = exp(−2βX)
 *   R₀ = S·(1 − e)/[α(1 − e) + β(1 + e)]       T₀ = 2β·exp(−βX)/[α(1 − e) + β(1 + e)]
 *   K = 0: R₀ = SX/(1 + SX), T₀ = 1/(1 + SX)     S = 0: R₀ = 0, T₀ = exp(−KX)  (Beer-Lambert)
 *   over something of R_g:  R = R₀ + T₀²·R_g/(1 − R₀·R_g), one layer after the other from the back
 *   R_seen = (1 − k1)·(1 − k2)·R/(1 − k2·R)
 *
 *   K, S  absorption and scattering, 1/mm     X  thickness, mm     R₀, T₀  turned back, let through, 0..1
 *   R_g  reflectance of what lies behind       k1, k2  reflection at the front face, from outside and inside
 *
 * Source: Kubelka, J. Opt. Soc. Am. 38 (1948) 448 and 44 (1954) 330 (memory; textbook); Saunderson 1942, see
 * pigment-optics.ts. Check: R₀ + T₀ ≤ 1, = 1 without absorption; a layer halved and put together again is the layer; stacks
 * put together from what each turns back and lets through; two fluxes integrated step by step.
 *
 * Behind air (a void, a wall at the back) the far face turns diffuse light back as the near one does:
 *   R_g = D·[k2 + (1 − k1)(1 − k2)·r/(1 − k1·r)] + (1 − D)·inside(r),  D = 1 − exp(−2·ΣSX)
 *   r  reflectance of the body, seen in air     D  share of the light that is diffuse by then: 0 behind clear resin
 * D is an estimate (no source); both its ends are Saunderson's.
 *
 * Limits: diffuse light in three broad bands, plane faces. Resin on resin reflects nothing between them (indices
 * alike). Light that spreads sideways in a layer blurs an edge behind it; here every place stands for itself.
 */
export interface Optics {
  /** Scattering in the three bands, 1/mm, 0..10 000. */
  readonly scatterPerMm: Bands
  /** Absorption in the three bands, 1/mm, 0..10 000. */
  readonly absorbPerMm: Bands
}

/** T₀ of a layer: no checks, for inner loops. */
export function layerPasses(s: number, k: number, x: number): number {
  const beta = Math.sqrt(k * (k + 2 * s))
  if (beta === 0) return 1 / (1 + s * x)
  const gone = -Math.expm1(-2 * beta * x)
  return (2 * beta * Math.exp(-beta * x)) / ((k + s) * gone + beta * (2 - gone))
}

/** Reflectance of one layer over something of reflectance `behind`: no checks, for inner loops. */
export function laidOn(s: number, k: number, x: number, behind: number): number {
  const beta = Math.sqrt(k * (k + 2 * s))
  if (beta === 0) {
    // K = 0: nothing is lost, (1 − R)/T of the layer's own face stays.
    const back = (1 - behind) * s * x
    return (behind + back) / (1 + back)
  }
  const gone = -Math.expm1(-2 * beta * x)
  const rest = 2 - gone
  return (s * gone + behind * (beta * rest - (k + s) * gone)) / ((k + s - behind * s) * gone + beta * rest)
}

/**
 * Reflectance inside of a body behind air, `r` seen in air (0..1), where the layers before it scatter by ΣSX = `turned`
 * (0 or more).
 */
export function behindAir(r: number, turned: number): number {
  const diffuse = -Math.expm1(-2 * turned)
  const faced =
    INTERNAL_REFLECTION +
    ((1 - SURFACE_REFLECTION) * (1 - INTERNAL_REFLECTION) * r) / (1 - SURFACE_REFLECTION * r)
  return diffuse * faced + (1 - diffuse) * insideReflectance(r)
}

/** What is seen outside of a reflectance inside, gloss left out (0..1). */
export function seenOutside(inside: number): number {
  return ((1 - SURFACE_REFLECTION) * (1 - INTERNAL_REFLECTION) * inside) / (1 - INTERNAL_REFLECTION * inside)
}

/** The three bands as they are seen outside. */
export function outsideBands(inside: Bands): Bands {
  return [seenOutside(inside[0]), seenOutside(inside[1]), seenOutside(inside[2])]
}

/**
 * A mix from its pigments: sums of S*·c and K*·c (see hiding.ts), c = mass fraction × density of the mix.
 * `massFraction` is of pigment itself, 0..0.5; coefficients m² per g in the three bands.
 */
export function mixOptics(
  pigments: readonly {
    readonly massFraction: number
    readonly scatterM2PerG: Bands
    readonly absorbM2PerG: Bands
  }[],
  mixKgM3: number
): Optics {
  inRange('density of the mix', mixKgM3, 500, 3000, 'kg/m³')
  const s: [number, number, number] = [0, 0, 0]
  const k: [number, number, number] = [0, 0, 0]
  for (const p of pigments) {
    const c = inRange('mass fraction of a pigment', p.massFraction, 0, 0.5) * mixKgM3
    for (let b = 0; b < 3; b++) {
      s[b]! += c * p.scatterM2PerG[b]!
      k[b]! += c * p.absorbM2PerG[b]!
    }
  }
  return { scatterPerMm: s, absorbPerMm: k }
}

/** The same mix with pigments `factor` times as strong. */
export function stronger(optics: Optics, factor: number): Optics {
  const times = (bands: Bands): Bands => [bands[0] * factor, bands[1] * factor, bands[2] * factor]
  return { scatterPerMm: times(optics.scatterPerMm), absorbPerMm: times(optics.absorbPerMm) }
}
