import type { Toolpath } from '../cuts/toolpath.ts'

/** A turn of an arc is drawn in steps of this, radians. */
const STEP = Math.PI / 24
/** Most points of one drawing of a path: beyond it only every so manyth is kept. */
const MOST_POINTS = 20_000

/** The ways of the tip in the work, below `topMm`, as lines x0,y0,x1,y1,... in the coordinates of the setting. */
export function pathLines(path: Toolpath, topMm: number): Float64Array[] {
  const lines: Float64Array[] = []
  let run: number[] = []
  let x = Number.NaN
  let y = Number.NaN
  let count = 0
  const end = () => {
    if (run.length >= 4) lines.push(Float64Array.from(run))
    run = []
  }
  for (const move of path.moves) {
    if (move.kind === 'dwell') continue
    const cutting = move.kind !== 'rapid' && move.z < topMm + 1e-6
    if (!cutting) end()
    else if (count < MOST_POINTS) {
      if (run.length === 0) run.push(x, y)
      if (move.kind === 'arc') {
        const from = Math.atan2(y - move.cy, x - move.cx)
        let sweep = Math.atan2(move.y - move.cy, move.x - move.cx) - from
        if (move.clockwise && sweep >= -1e-9) sweep -= 2 * Math.PI
        if (!move.clockwise && sweep <= 1e-9) sweep += 2 * Math.PI
        const r = Math.hypot(x - move.cx, y - move.cy)
        const n = Math.max(1, Math.ceil(Math.abs(sweep) / STEP))
        for (let k = 1; k < n; k++) {
          const a = from + (sweep * k) / n
          run.push(move.cx + r * Math.cos(a), move.cy + r * Math.sin(a))
        }
        count += n
      }
      run.push(move.x, move.y)
      count++
    }
    x = move.x
    y = move.y
  }
  end()
  return lines
}
