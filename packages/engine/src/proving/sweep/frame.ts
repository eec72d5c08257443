import type { Face, Piece } from '../../piece/piece-schema.ts'
import type { Bounds } from '../../shape/region.ts'
import { sideOf } from '../../stack/stack.ts'

/** What the coordinates of a program are counted from. mm; x0, y0 on the plan, the zero as a height as cast. */
export interface Datum {
  readonly x0: number
  readonly y0: number
  readonly zeroMm: number
  /** The line of the plan, through the datum, about which the piece is turned to lie back up. */
  readonly about: 'x' | 'y'
}

/**
 * How a plan (x right, y up, seen from the front; heights z as cast) and the coordinates of a program (z up out of the
 * face that is up) lie to each other:
 *
 *   x = x0 + sx·X     y = y0 + sy·Y     z = zero + sz·Z        each sign is its own inverse
 *
 * Front up: sx = sy = 1. Back up: sy = −1 turned about the x-parallel line, sx = −1 about the y-parallel one. sz = 1
 * when the face that is up lay high in the mould, else −1.
 */
export interface Frame extends Datum {
  readonly sx: 1 | -1
  readonly sy: 1 | -1
  readonly sz: 1 | -1
}

export function frameOf(piece: Pick<Piece, 'down'>, up: Face, datum: Datum): Frame {
  const turned = up === 'back'
  return {
    ...datum,
    sx: turned && datum.about === 'y' ? -1 : 1,
    sy: turned && datum.about === 'x' ? -1 : 1,
    sz: sideOf(piece, up) === 'high' ? 1 : -1
  }
}

/** A box of the plan in program coordinates. */
export function boxInProgram(f: Frame, b: Bounds): Bounds {
  const xs = [f.sx * (b.minX - f.x0), f.sx * (b.maxX - f.x0)]
  const ys = [f.sy * (b.minY - f.y0), f.sy * (b.maxY - f.y0)]
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) }
}

/** A height as cast in program coordinates. */
export function zInProgram(f: Frame, z: number): number {
  return f.sz * (z - f.zeroMm)
}
