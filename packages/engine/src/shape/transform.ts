import type { Region, Ring } from './region.ts'

/** Moved by (dx, dy), mm. */
export function translate(region: Region, dx: number, dy: number): Region {
  return moved(
    region,
    x => x + dx,
    (_, y) => y + dy
  )
}

/** Turned counter-clockwise about (cx, cy); quarter turns are exact. */
export function rotate(region: Region, degrees: number, cx = 0, cy = 0): Region {
  const [c, s] = turn(degrees)
  return moved(
    region,
    (x, y) => cx + c * (x - cx) - s * (y - cy),
    (x, y) => cy + s * (x - cx) + c * (y - cy)
  )
}

/** Scaled about the origin. @throws Error for a factor that is not positive and finite */
export function scale(region: Region, factor: number): Region {
  if (!(factor > 0 && Number.isFinite(factor))) throw new Error(`a factor of ${factor}; it must be above 0`)
  return moved(
    region,
    x => factor * x,
    (_, y) => factor * y
  )
}

/** Left and right exchanged about the upright line at `axis`, mm. */
export function mirrorX(region: Region, axis = 0): Region {
  return reversed(
    moved(
      region,
      x => 2 * axis - x,
      (_, y) => y
    )
  )
}

/** Near and far exchanged about the level line at `axis`, mm: turns SVG's y down into y up. */
export function mirrorY(region: Region, axis = 0): Region {
  return reversed(
    moved(
      region,
      x => x,
      (_, y) => 2 * axis - y
    )
  )
}

function turn(degrees: number): [number, number] {
  if (!Number.isFinite(degrees)) throw new Error(`an angle of ${degrees} degrees; it must be a finite number`)
  const quarters = degrees / 90
  if (Number.isInteger(quarters)) {
    const q = ((quarters % 4) + 4) % 4
    return [[1, 0, -1, 0][q]!, [0, 1, 0, -1][q]!]
  }
  const a = ((degrees % 360) * Math.PI) / 180
  return [Math.cos(a), Math.sin(a)]
}

type Coordinate = (x: number, y: number) => number

function moved(region: Region, newX: Coordinate, newY: Coordinate): Region {
  return {
    rings: region.rings.map(ring => {
      const out = new Float64Array(ring.length)
      for (let k = 0; k < ring.length; k += 2) {
        // + 0 turns −0 into 0.
        out[k] = newX(ring[k]!, ring[k + 1]!) + 0
        out[k + 1] = newY(ring[k]!, ring[k + 1]!) + 0
      }
      return out
    })
  }
}

// A mirror image turns the other way round; the points are put in reverse order to keep the invariant.
function reversed(region: Region): Region {
  return {
    rings: region.rings.map((ring): Ring => {
      const n = ring.length
      const out = new Float64Array(n)
      for (let k = 0; k < n; k += 2) {
        out[k] = ring[n - 2 - k]!
        out[k + 1] = ring[n - 1 - k]!
      }
      return out
    })
  }
}
