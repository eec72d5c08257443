import { bounds } from '../../shape/measure.ts'
import type { About } from './frame.ts'
import type { Ground } from './offer.ts'
import { CLEAR_MM, EDGE_DIAMETERS, faultAt } from './offer.ts'

/** Two places on one line, the first on the lesser side. */
export type Pair = readonly [readonly [x: number, y: number], readonly [x: number, y: number]]

/** Steps in which places are tried along the line and lines across it, mm. */
const STEP_MM = 1
const LINE_STEP_MM = 5
/** Lines tried to either side of the middle. */
const MOST_LINES = 12

/**
 * The places for two pins that lie farthest apart on one line: the middle line first, then lines beside it. null:
 * the casting offers none.
 */
export function chosenPair(
  ground: Ground,
  about: About,
  diametersMm: readonly [number, number]
): Pair | null {
  const b = bounds(ground.outline)
  const middle = about === 'x' ? (b.minY + b.maxY) / 2 : (b.minX + b.maxX) / 2
  const across = about === 'x' ? b.maxY - b.minY : b.maxX - b.minX
  for (let k = 0; k <= MOST_LINES; k++) {
    const off = k * LINE_STEP_MM
    if (off > across / 2) break
    for (const line of off === 0 ? [middle] : [middle + off, middle - off]) {
      const pair = onLine(ground, about, line, diametersMm)
      if (pair !== null) return pair
    }
  }
  return null
}

function onLine(
  ground: Ground,
  about: About,
  line: number,
  [first, second]: readonly [number, number]
): Pair | null {
  const cast = bounds(ground.casting)
  const part = bounds(ground.outline)
  const [low, high, from, to] =
    about === 'x'
      ? [cast.minX, cast.maxX, part.minX, part.maxX]
      : [cast.minY, cast.maxY, part.minY, part.maxY]
  const at = (u: number): [number, number] => (about === 'x' ? [u, line] : [line, u])
  const middle = (from + to) / 2
  // From the outermost place inward; a round outline leaves room inside its own box.
  const search = (start: number, step: number, diameter: number): number | null => {
    for (let u = start; step > 0 ? u < middle : u > middle; u += step) {
      const fault = faultAt(ground, ...at(u), diameter)
      if (fault === null) return u
      // The piece begins: what lies beyond it is the other side.
      if (fault.kind === 'inside') return null
    }
    return null
  }
  const reach = ground.travelMm / 2
  const least = Math.ceil(Math.max(low + EDGE_DIAMETERS * first, middle - reach))
  const most = Math.floor(Math.min(high - EDGE_DIAMETERS * second, middle + reach))
  const a = search(least, STEP_MM, first)
  if (a === null) return null
  const z = search(most, -STEP_MM, second)
  return z === null ? null : [at(a), at(z)]
}

/** An ear of waste: a rectangle to be added to the mould, and the place of its pin. */
export interface Ear {
  readonly rectangle: readonly [number, number]
  readonly at: readonly [number, number]
  readonly pin: readonly [number, number]
}

/** How wide an ear stands along the outline, in diameters of its pin (practice). */
const EAR_DIAMETERS = 6
/** Cutter that frees the part, when none is drawn, mm. */
const CUTTER_MM = 6

/**
 * Two ears that would take the pins, on the middle line, at either end. A pin stands beyond the cutter's path, with its
 * edge distance to the end of the ear.
 */
export function earsFor(
  ground: Ground,
  about: About,
  diametersMm: readonly [number, number]
): readonly [Ear, Ear] {
  const b = bounds(ground.outline)
  const cast = bounds(ground.casting)
  const off = ground.off.filter(o => o.kind === 'path')
  const line = about === 'x' ? (b.minY + b.maxY) / 2 : (b.minX + b.maxX) / 2
  const ear = (side: -1 | 1, diameter: number): Ear => {
    const edge = about === 'x' ? (side < 0 ? b.minX : b.maxX) : side < 0 ? b.minY : b.maxY
    // Beyond whatever is cut past the outline there.
    const cut = off.reduce((most, o) => {
      const reach =
        about === 'x'
          ? side < 0
            ? edge - o.box.minX
            : o.box.maxX - edge
          : side < 0
            ? edge - o.box.minY
            : o.box.maxY - edge
      return Math.max(most, reach)
    }, CUTTER_MM)
    const pinAt = Math.ceil(cut + CLEAR_MM + diameter / 2 + 0.5)
    const end = Math.ceil(pinAt + EDGE_DIAMETERS * diameter + 1)
    // It roots in the casting, a little inside its edge.
    const casting = about === 'x' ? (side < 0 ? cast.minX : cast.maxX) : side < 0 ? cast.minY : cast.maxY
    const root = Math.max(0, Math.min(side * (casting - edge), end - 1) - 1)
    const long = Math.max(end - root, 2)
    const wide = Math.ceil(EAR_DIAMETERS * diameter)
    const middle = edge + side * (root + long / 2)
    const pin = Math.round(edge + side * pinAt)
    return about === 'x'
      ? { rectangle: [round(long), wide], at: [round(middle), round(line)], pin: [pin, round(line)] }
      : { rectangle: [wide, round(long)], at: [round(line), round(middle)], pin: [round(line), pin] }
  }
  return [ear(-1, diametersMm[0]), ear(1, diametersMm[1])]
}

function round(x: number): number {
  return Number(x.toFixed(2))
}
