import { laidOn, layerPasses } from '../../src/colour/stacked.ts'

/** What a layer, or a stack, does to light: the same let through from either side. */
export interface Passage {
  readonly reflects: number
  /** Turned back when the light comes from the other side. */
  readonly reflectsBehind: number
  readonly passes: number
}

/** One free layer in one band, by the product: laid on nothing, and let through. */
export function passage(s: number, k: number, x: number): Passage {
  const reflects = laidOn(s, k, x, 0)
  return { reflects, reflectsBehind: reflects, passes: layerPasses(s, k, x) }
}

/**
 * `front` laid on `behind` by what each turns back and lets through, which the product has no need of:
 * R₁₂ = R₁ + T₁²·R₂/(1 − R₁R₂), T₁₂ = T₁T₂/(1 − R₁R₂). Kubelka, J. Opt. Soc. Am. 44 (1954) 330 (memory).
 */
export function together(front: Passage, behind: Passage): Passage {
  const between = 1 - front.reflectsBehind * behind.reflects
  // Two layers that turn everything back lock no light between them.
  if (between <= 0) return { ...front, reflectsBehind: behind.reflectsBehind, passes: 0 }
  return {
    reflects: front.reflects + (front.passes * front.passes * behind.reflects) / between,
    reflectsBehind: behind.reflectsBehind + (behind.passes * behind.passes * front.reflectsBehind) / between,
    passes: (front.passes * behind.passes) / between
  }
}
