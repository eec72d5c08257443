import { reversed } from './build.ts'
import type { Region, Ring } from './region.ts'

function map(
  region: Region,
  flips: boolean,
  at: (x: number, y: number) => readonly [number, number]
): Region {
  return {
    rings: region.rings.map((ring): Ring => {
      const out = new Float64Array(ring.length)
      for (let k = 0; k < ring.length; k += 2) {
        const [x, y] = at(ring[k]!, ring[k + 1]!)
        out[k] = x
        out[k + 1] = y
      }
      return flips ? reversed(out) : out
    })
  }
}

/** Moved by (dx, dy), mm. */
export function translate(region: Region, dx: number, dy: number): Region {
  return map(region, false, (x, y) => [x + dx, y + dy])
}

/** Turned counter-clockwise about a point, degrees. Quarter turns are exact. */
export function rotate(region: Region, degrees: number, cx = 0, cy = 0): Region {
  const quarter = (((degrees / 90) % 4) + 4) % 4
  const a = (degrees * Math.PI) / 180
  const cos = Number.isInteger(quarter) ? [1, 0, -1, 0][quarter]! : Math.cos(a)
  const sin = Number.isInteger(quarter) ? [0, 1, 0, -1][quarter]! : Math.sin(a)
  return map(region, false, (x, y) => [
    cx + cos * (x - cx) - sin * (y - cy),
    cy + sin * (x - cx) + cos * (y - cy)
  ])
}

/** Scaled about a point by a factor above zero. */
export function scale(region: Region, factor: number, cx = 0, cy = 0): Region {
  if (!(factor > 0)) throw new Error(`a factor of ${factor}; allowed: above 0`)
  return map(region, false, (x, y) => [cx + factor * (x - cx), cy + factor * (y - cy)])
}

/** Mirrored left to right: x becomes −x. */
export function mirrorX(region: Region): Region {
  return map(region, true, (x, y) => [-x, y])
}

/** Mirrored top to bottom: y becomes −y. */
export function mirrorY(region: Region): Region {
  return map(region, true, (x, y) => [x, -y])
}
