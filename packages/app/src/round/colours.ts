import type { Bands } from '../../../engine/src/catalogue/pigment-optics.ts'
import { linearOf, srgbOf } from '../../../engine/src/catalogue/pigment-optics.ts'

/**
 * Colours of the sheet the piece lies on, "#rrggbb"; `shade` is how dark the shadow under it is, 0..1.
 *
 * Paper, and the ink by light, are those of `page.css`; a test holds them together. They are not read from the page:
 * whoever changes the light tells the painter and the page in no certain order. Plate and dim ink are the painter's
 * own: a body is seen in its computed colours, on a light plate and with dark lines, whatever the page is.
 */
export interface Colours {
  readonly paper: string
  /** What resin is seen against. */
  readonly plate: string
  readonly ink: string
  readonly shade: number
}

const LIGHT: Colours = { paper: '#fbf8f1', plate: '#f4efe4', ink: '#292724', shade: 0.42 }
const DIM: Colours = { paper: '#23201c', plate: '#e9e3d6', ink: '#1a1714', shade: 0.75 }

export function coloursOf(dim: boolean): Colours {
  return dim ? DIM : LIGHT
}

/** Light of the bands of "#rrggbb", linear. */
export function linear(hex: string): Bands {
  return linearOf(srgbOf(hex))
}
