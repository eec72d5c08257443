import { simplify } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import type { Solid } from '../stack/solid.ts'
import { solidOf } from '../stack/solid.ts'

/** Most points of the edges of a body that is cut anew at every step; one drawn by hand has a few hundred. */
const MOST_POINTS = 1500
/** Strays tried to come below it, mm. */
const STRAYS_MM = [0.03, 0.06, 0.12, 0.24, 0.48, 0.96, 1.92] as const

/** A body to be drawn, and by how much its edges stray from those of the piece, mm. */
export interface Drawn {
  readonly solid: Solid
  readonly strayMm: number
}

/**
 * A body whose side leans or whose top is not flat, with as many points as can be cut level dozens of times within
 * a second or two; any other is cut once and stays as it is. So does one whose thinned edges would no longer follow
 * each other.
 */
export function drawnSolid(s: Solid): Drawn {
  const whole = { solid: s, strayMm: 0 }
  if (!leans(s) || pointsOf(s) <= MOST_POINTS) return whole
  let best: Drawn = whole
  for (const strayMm of STRAYS_MM) {
    const solid = thinned(s, strayMm)
    if (solid === null) return best
    best = { solid, strayMm }
    if (pointsOf(solid) <= MOST_POINTS) return best
  }
  return best
}

/** Whether level cuts of a body change with height. */
function leans(s: Solid): boolean {
  return s.lofts !== null || s.top.kind !== 'flat'
}

function pointsOf(s: Solid): number {
  return count(s.upper) + (s.lofts === null ? 0 : count(s.lower))
}

function count(region: Region): number {
  return region.rings.reduce((sum, ring) => sum + ring.length / 2, 0)
}

function thinned(s: Solid, strayMm: number): Solid | null {
  try {
    const lower = s.lofts === null ? null : simplify(s.lower, strayMm)
    return solidOf(simplify(s.upper, strayMm), lower, s.base, s.edge, s.top)
  } catch {
    // The two edges no longer pair: a hole or an outline was smaller than the stray.
    return null
  }
}
