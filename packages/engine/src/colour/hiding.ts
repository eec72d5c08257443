import { inRange } from '../quantity/range.ts'

/**
 * Hiding: how deep a tinted layer must be before what lies behind no longer shows.
 *
 *   R(X)  = [1 − R_g·(a − b·coth bSX)]/[a − R_g + b·coth bSX]     a = 1 + K/S, b = √(a² − 1)
 *   R_∞   = a − b                                                  K = 0: R over black = SX/(1 + SX)
 *   S = 0 : R = R_g·exp(−2KX)                                      (clear, only absorbing)
 *
 *   R_g  reflectance of what lies behind, 0..1      X  depth of the layer, mm
 *   K, S  absorption and scattering of diffuse light, 1/mm
 *   S = S*·c    S* in m²/g, c pigment in kg per m³ of mix: m²/g × kg/m³ = 1/mm, with no other factor
 *
 * Hidden, for pale and middling colours: contrast ratio R over black / R over white(0.80) at least 0.98 (ISO
 * 6504-1; scope and figure read). Near black a ratio of two nothings says little (ISO 6504-3 asks for Y above 25 %;
 * read): what the eye tells apart stands in cover-depth.ts.
 *
 * Source: Kubelka & Munk 1931, closed forms after Kubelka, J. Opt. Soc. Am. 38 (1948) 448 (memory; textbook).
 * Check: optical depth SX at 0.98 for K/S 0, 0.001, 0.005, 0.02, 0.1, 1: 11.7, 11.0, 9.3, 6.9, 4.1, 1.5. 1 %
 * of titanium dioxide (S* 0.5 m²/g) in 1100 kg/m³ scatters 5.5 /mm and hides at 2.1 mm.
 *
 * Limits: one band of wavelengths, diffuse light inside the layer, no reflection at its surface (Saunderson's
 * correction makes dark layers hide sooner). Pigment strength is known within a factor of two without a test
 * card, and crowded pigment scatters less than in proportion. Pearls that lie flat hide more than those on
 * edge. Hidden means unseen through the whole depth: a pour with swirls is thinner in places.
 */

/**
 * Contrast ratio that counts as hidden (ISO 6504-1: 98 %; read), and the reflectance of the white it is taken
 * against (0.80, customary in hiding by Kubelka-Munk; memory).
 */
const CONTRAST_RATIO_HIDDEN = 0.98
const WHITE_BEHIND = 0.8

/** Factor by which the strength of an untested pigment may be off, either way (memory and estimate). */
const STRENGTH_FACTOR = 2

/** A layer's coefficients for diffuse light, both 1/mm, 0..10 000. */
export interface Layer {
  readonly scatterPerMm: number
  readonly absorbPerMm: number
}

/** One pigment in a mix: mass fraction of the mix, and its scattering and absorption per mass, m²/g. */
export interface PigmentShare {
  readonly massFraction: number
  readonly scatterM2PerG: number
  readonly absorbM2PerG: number
}

/**
 * Coefficients of a mix from its pigments: sums of S*·c and K*·c with c = mass fraction × density of the mix.
 */
export function layerOfTint(pigments: readonly PigmentShare[], mixKgM3: number): Layer {
  inRange('density of the mix', mixKgM3, 500, 3000, 'kg/m³')
  let scatterPerMm = 0
  let absorbPerMm = 0
  for (const pigment of pigments) {
    const c = inRange('mass fraction of a pigment', pigment.massFraction, 0, 0.5, '') * mixKgM3
    scatterPerMm += c * inRange('scattering per mass', pigment.scatterM2PerG, 0, 10, 'm²/g')
    absorbPerMm += c * inRange('absorption per mass', pigment.absorbM2PerG, 0, 100, 'm²/g')
  }
  return { scatterPerMm, absorbPerMm }
}

/** Reflectance of a layer `depthMm` deep over something of reflectance `behind` (0..1). */
export function reflectance(layer: Layer, depthMm: number, behind: number): number {
  checkLayer(layer)
  inRange('depth', depthMm, 0, 1e6, 'mm')
  inRange('reflectance behind', behind, 0, 1, '')
  const { scatterPerMm: s, absorbPerMm: k } = layer
  if (depthMm === 0) return behind
  if (s === 0) return behind * Math.exp(-2 * k * depthMm)
  const ratio = k / s
  const a = 1 + ratio
  const b = Math.sqrt(ratio * (2 + ratio))
  const sx = s * depthMm
  // b·coth(bSX) = b + 2b/(e^(2bSX) − 1), and a − b = 1/(a + b): no small difference of large numbers.
  const tail = b === 0 ? 1 / sx : (2 * b) / Math.expm1(2 * b * sx)
  return (1 - behind * (1 / (a + b) - tail)) / (a - behind + b + tail)
}

/** Reflectance of a layer without end, R_∞ = a − b; 0 when nothing scatters. */
export function deepReflectance(layer: Layer): number {
  checkLayer(layer)
  if (layer.scatterPerMm === 0) return 0
  const ratio = layer.absorbPerMm / layer.scatterPerMm
  return 1 / (1 + ratio + Math.sqrt(ratio * (2 + ratio)))
}

/**
 * Contrast ratio: reflectance over black divided by that over white; 0 for no depth, towards 1 as it hides.
 */
export function contrastRatio(layer: Layer, depthMm: number, white: number = WHITE_BEHIND): number {
  inRange('reflectance of the white', white, 0.01, 1, '')
  const over = reflectance(layer, depthMm, white)
  return over === 0 ? 0 : reflectance(layer, depthMm, 0) / over
}

/**
 * A depth with its band, mm. Without a test card the band is wide enough that a verdict inside it is a
 * caution.
 */
export interface HidingDepth {
  readonly centralMm: number
  readonly lowMm: number
  readonly highMm: number
}

/** Optical depth S·X at which a layer of this K/S (0..1000) reaches the contrast ratio. */
export function hidingOpticalDepth(
  ratio: number,
  contrast: number = CONTRAST_RATIO_HIDDEN,
  white: number = WHITE_BEHIND
): number {
  inRange('K/S', ratio, 0, 1000, '')
  inRange('contrast ratio', contrast, 0.01, 0.9999, '')
  return leastDepthMm(x => contrastRatio({ scatterPerMm: 1, absorbPerMm: ratio }, x, white) >= contrast)
}

/**
 * Least depth that hides by contrast ratio, with the band of pigment strength: both coefficients stronger or
 * weaker by `strengthFactor` at fixed K/S, so that the depth scales inversely. A tested pigment has a factor
 * near 1.
 *
 * @throws RangeError when the layer scatters so little (K/S above 1000) that the ratio is meaningless: cover-depth.ts
 *   asks the eye instead
 */
export function hidingDepth(layer: Layer, strengthFactor: number = STRENGTH_FACTOR): HidingDepth {
  checkLayer(layer)
  if (layer.scatterPerMm === 0) {
    throw new RangeError(
      'the layer does not scatter: over black it stays black, and no contrast ratio is reached'
    )
  }
  const depth = hidingOpticalDepth(layer.absorbPerMm / layer.scatterPerMm) / layer.scatterPerMm
  return band(depth, strengthFactor)
}

function band(centralMm: number, strengthFactor: number): HidingDepth {
  inRange('strength factor', strengthFactor, 1, 100, '')
  return { centralMm, lowMm: centralMm / strengthFactor, highMm: centralMm * strengthFactor }
}

/**
 * Smallest depth at which `hidden` turns true. It stays true from there on, so halve on a logarithmic scale.
 */
function leastDepthMm(hidden: (depthMm: number) => boolean): number {
  let low = 1e-6
  let high = 1e6
  if (!hidden(high)) {
    throw new RangeError(`even ${high} mm of this layer do not hide what lies behind`)
  }
  // 12 decades halved 100 times: to the last bit.
  for (let i = 0; i < 100; i++) {
    const middle = Math.sqrt(low * high)
    if (hidden(middle)) high = middle
    else low = middle
  }
  return high
}

function checkLayer(layer: Layer): void {
  inRange('scattering', layer.scatterPerMm, 0, 10_000, '1/mm')
  inRange('absorption', layer.absorbPerMm, 0, 10_000, '1/mm')
}
