import type { Motions } from '../proving/motion.ts'
import { MOTION } from '../proving/motion.ts'

/** How the piece lies against the drawing as the program was written for it: first turned, then shifted. */
export interface Lies {
  readonly turnDeg: number
  readonly shiftX: number
  readonly shiftY: number
}

/**
 * The moves of a program as the piece meets them: turned and shifted back by how the piece lies, so that they can be
 * swept over the piece as drawn. The inverse of what the writer bakes in, made anew from the formula:
 *
 *   p = R(−φ)·(q − s)
 *
 * Limits: an arc in a plane that stands stays in that plane: turned by little, its middle is right to the second order
 * of the turn. None of our own programs has one.
 */
export function unplaced(motions: Motions, { turnDeg, shiftX, shiftY }: Lies): Motions {
  if (turnDeg === 0 && shiftX === 0 && shiftY === 0) return motions
  const c = Math.cos((turnDeg * Math.PI) / 180)
  const s = Math.sin((turnDeg * Math.PI) / 180)
  const { count } = motions
  const x = new Float64Array(count)
  const y = new Float64Array(count)
  const a = motions.a.slice(0, count)
  const b = motions.b.slice(0, count)
  for (let i = 0; i < count; i++) {
    const [qx, qy] = [motions.x[i]! - shiftX, motions.y[i]! - shiftY]
    x[i] = c * qx + s * qy
    y[i] = -s * qx + c * qy
    const kind = motions.kind[i]!
    if (kind !== MOTION.arcClockwise && kind !== MOTION.arcCounter) continue
    const plane = motions.plane[i]!
    const standsX = plane === 18 ? b[i]! : (motions.x[i - 1] ?? Number.NaN)
    const standsY = plane === 19 ? a[i]! : (motions.y[i - 1] ?? Number.NaN)
    const px = (plane === 17 ? a[i]! : standsX) - shiftX
    const py = (plane === 17 ? b[i]! : standsY) - shiftY
    if (plane === 18) b[i] = c * px + s * py
    else if (plane === 19) a[i] = -s * px + c * py
    else {
      a[i] = c * px + s * py
      b[i] = -s * px + c * py
    }
  }
  return { ...motions, x, y, a, b }
}
