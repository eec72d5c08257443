/** Colours of the sheet the piece lies on, "#rrggbb"; `shade` is how dark the shadow under it is, 0..1. */
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

/** Light of the bands of "#rrggbb", linear (IEC 61966-2-1). */
export function linear(hex: string): [number, number, number] {
  return [1, 3, 5].map(k => {
    const c = Number.parseInt(hex.slice(k, k + 2), 16) / 255
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
  }) as [number, number, number]
}
