import type { Ring } from '../../src/shape/region.ts'

/** A seeded source of numbers in [0, 1): mulberry32 (Tommy Ettinger, public domain). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

/** The nearest length of four decimals: what the clipper's grid keeps exactly. */
function onGrid(mm: number): number {
  return Math.round(mm * 10_000) / 10_000 + 0
}

/** A star-shaped ring about (cx, cy), counter-clockwise, on the grid. */
export function star(
  random: () => number,
  points: number,
  least: number,
  most: number,
  cx: number,
  cy: number
): Ring {
  const ring = new Float64Array(2 * points)
  for (let k = 0; k < points; k++) {
    const a = (2 * Math.PI * (k + 0.8 * random())) / points
    const r = least + (most - least) * random()
    ring[2 * k] = onGrid(cx + r * Math.cos(a))
    ring[2 * k + 1] = onGrid(cy + r * Math.sin(a))
  }
  return ring
}

/** A smooth outline with waves along it: r = radius + height·sin(waves·t). */
export function wavy(points: number, radius: number, height: number, waves: number): Ring {
  const ring = new Float64Array(2 * points)
  for (let k = 0; k < points; k++) {
    const a = (2 * Math.PI * k) / points
    const r = radius + height * Math.sin(waves * a)
    ring[2 * k] = r * Math.cos(a)
    ring[2 * k + 1] = r * Math.sin(a)
  }
  return ring
}

/** A ring from its corners. */
export function ringOf(...points: readonly (readonly [number, number])[]): Ring {
  return Float64Array.from(points.flat())
}
