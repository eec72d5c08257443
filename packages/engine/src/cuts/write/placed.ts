import type { Move, Toolpath } from '../toolpath.ts'

/** How a piece lies beside where it was meant to lie, as measured pins, marks or edges tell. */
export interface Placement {
  /** Counter-clockwise seen from above, about the zero of the setting, before the shift. */
  readonly turnDeg: number
  readonly shiftX: number
  readonly shiftY: number
}

/**
 * A path turned and shifted to where the piece really lies, mm. Heights stay. Quarter turns are exact.
 *
 *   x' = x·cos φ − y·sin φ + a,   y' = x·sin φ + y·cos φ + b
 */
export function placed(path: Toolpath, placement: Placement): Toolpath {
  const { turnDeg, shiftX, shiftY } = placement
  for (const [name, v] of Object.entries(placement))
    if (!Number.isFinite(v)) throw new RangeError(`${name} is ${v}: a number is wanted`)
  if (turnDeg === 0 && shiftX === 0 && shiftY === 0) return path
  const quarter = turnDeg % 90 === 0
  const angle = (turnDeg * Math.PI) / 180
  const cos = quarter ? Math.round(Math.cos(angle)) : Math.cos(angle)
  const sin = quarter ? Math.round(Math.sin(angle)) : Math.sin(angle)
  const px = (x: number, y: number) => x * cos - y * sin + shiftX
  const py = (x: number, y: number) => x * sin + y * cos + shiftY
  return moved(path, move => {
    const to = { x: px(move.x, move.y), y: py(move.x, move.y) }
    return move.kind === 'arc'
      ? { ...move, ...to, cx: px(move.cx, move.cy), cy: py(move.cx, move.cy) }
      : { ...move, ...to }
  })
}

export type Way = Exclude<Move, { kind: 'dwell' }>

/** A path with each move that goes anywhere changed; passes stay where they are. */
export function moved(path: Toolpath, change: (move: Way, index: number) => Way): Toolpath {
  return { passes: path.passes, moves: path.moves.map((m, i) => (m.kind === 'dwell' ? m : change(m, i))) }
}
