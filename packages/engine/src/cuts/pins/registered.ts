/**
 * How a piece really lies, from places that were touched: the turn and the shift that bring the drawing onto them.
 *
 *   marks    q = R(θ)·p + s                        p drawn, q touched
 *   edges    n·(R(θ)ᵀ·(q − s) − p) = r             p on the drawn edge, n out of the piece, r of the tip that touched
 *
 * Marks alone: θ = atan2(Σ p×q, Σ p·q) about the two middles, s = q̄ − R·p̄, and as a check the scale
 * √((Σ p·q)² + (Σ p×q)²)/Σ p². With edges: least squares over θ and s by Gauss-Newton from there.
 *
 * Source: Procrustes problem in the plane, orthogonal without mirror (Schönemann 1966; memory); worked in closed form.
 * Check: exact places give the turn and shift back to 1e-12; a slow search over turns finds no better one.
 *
 * Limits: rigid piece; two marks say nothing of an error in one of them: their distance alone does.
 */
export interface Mark {
  /** Where the drawing has it, and where it was touched, in the coordinates of the setting. */
  readonly drawn: readonly [x: number, y: number]
  readonly measured: readonly [x: number, y: number]
}

/** A place where an edge was touched. */
export interface EdgeTouch {
  /** A place on the drawn edge, and the direction out of the piece there, degrees. */
  readonly on: readonly [x: number, y: number]
  readonly outDeg: number
  readonly measured: readonly [x: number, y: number]
  /** Radius of the tip it was touched with; 0 for a point. */
  readonly radiusMm: number
}

/** How the piece lies. */
export interface Registered {
  readonly turnDeg: number
  readonly shiftX: number
  readonly shiftY: number
  /** What is left at each mark and then at each edge, mm. */
  readonly residualsMm: readonly number[]
  /** The largest of them, by index. */
  readonly worst: number
  readonly rootMeanSquareMm: number
  /** Distances touched over distances drawn; null with fewer than two marks. */
  readonly scale: number | null
  /** Places that alone are off: without them the others agree. */
  readonly outliers: readonly number[]
}

/** A place is named when without it what is left is this many times less, and it is off by more than this, mm. */
const OUTLIER = { times: 3, leastMm: 0.1 }
const MOST_STEPS = 20

/** @throws RangeError when the places do not settle the turn and both shifts */
export function registered(marks: readonly Mark[], edges: readonly EdgeTouch[] = []): Registered {
  const fit = fitted(marks, edges)
  const count = marks.length + edges.length
  const outliers: number[] = []
  // Of so few places that leaving one out leaves nothing to check by, none is named.
  if (2 * marks.length + edges.length >= 3 + 2 + 2)
    for (let k = 0; k < count; k++) {
      const without = leftOut(marks, edges, k)
      if (without === null) continue
      const off = placeOff(without, marks, edges, k)
      if (off > OUTLIER.leastMm && off > OUTLIER.times * Math.max(without.rootMeanSquareMm, 1e-9))
        outliers.push(k)
    }
  // An error in one place drags others with it: the one that explains most is named.
  if (outliers.length > 1) {
    const rest = outliers.map(k => leftOut(marks, edges, k)!.rootMeanSquareMm)
    const best = outliers[rest.indexOf(Math.min(...rest))]!
    return { ...fit, outliers: [best] }
  }
  return { ...fit, outliers }
}

function fitted(marks: readonly Mark[], edges: readonly EdgeTouch[]): Registered {
  if (2 * marks.length + edges.length < 3)
    throw new RangeError(
      `${marks.length} marks and ${edges.length} edges touched; allowed: two marks, or one and an edge, or edges at three places`
    )
  const start = procrustes(marks)
  let { turn, sx, sy } = start
  if (edges.length > 0)
    for (let k = 0; k < MOST_STEPS; k++) {
      const step = gaussNewton(marks, edges, turn, sx, sy)
      turn += step[0]
      sx += step[1]
      sy += step[2]
      if (Math.abs(step[0]) < 1e-13 && Math.hypot(step[1], step[2]) < 1e-11) break
    }
  else if (start.spread === 0)
    throw new RangeError('all marks lie on one place; allowed: marks that lie apart')
  const residualsMm = [
    ...marks.map(m => Math.hypot(...markOff(m, turn, sx, sy))),
    ...edges.map(e => Math.abs(edgeOff(e, turn, sx, sy)))
  ]
  const sum = residualsMm.reduce((s, r) => s + r * r, 0)
  return {
    turnDeg: (turn * 180) / Math.PI,
    shiftX: sx,
    shiftY: sy,
    residualsMm,
    worst: residualsMm.indexOf(Math.max(...residualsMm)),
    rootMeanSquareMm: Math.sqrt(sum / residualsMm.length),
    scale: start.spread > 0 ? start.scale : null,
    outliers: []
  }
}

function leftOut(marks: readonly Mark[], edges: readonly EdgeTouch[], k: number): Registered | null {
  try {
    return fitted(
      marks.filter((_, i) => i !== k),
      edges.filter((_, i) => i + marks.length !== k)
    )
  } catch (e) {
    if (e instanceof RangeError) return null
    throw e
  }
}

function placeOff(fit: Registered, marks: readonly Mark[], edges: readonly EdgeTouch[], k: number): number {
  const turn = (fit.turnDeg * Math.PI) / 180
  const mark = marks[k]
  return mark === undefined
    ? Math.abs(edgeOff(edges[k - marks.length]!, turn, fit.shiftX, fit.shiftY))
    : Math.hypot(...markOff(mark, turn, fit.shiftX, fit.shiftY))
}

function procrustes(marks: readonly Mark[]) {
  const n = Math.max(1, marks.length)
  const mean = (of: (m: Mark) => number) => marks.reduce((s, m) => s + of(m), 0) / n
  const [px, py] = [mean(m => m.drawn[0]), mean(m => m.drawn[1])]
  const [qx, qy] = [mean(m => m.measured[0]), mean(m => m.measured[1])]
  let [dot, cross, spread] = [0, 0, 0]
  for (const { drawn, measured } of marks) {
    const [ax, ay] = [drawn[0] - px, drawn[1] - py]
    const [bx, by] = [measured[0] - qx, measured[1] - qy]
    dot += ax * bx + ay * by
    cross += ax * by - ay * bx
    spread += ax * ax + ay * ay
  }
  const turn = spread > 0 ? Math.atan2(cross, dot) : 0
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return {
    turn,
    sx: qx - c * px + s * py,
    sy: qy - s * px - c * py,
    spread,
    scale: spread > 0 ? Math.hypot(dot, cross) / spread : 1
  }
}

// What is left at a mark, along x and y.
function markOff({ drawn, measured }: Mark, turn: number, sx: number, sy: number): [number, number] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  return [measured[0] - (c * drawn[0] - s * drawn[1] + sx), measured[1] - (s * drawn[0] + c * drawn[1] + sy)]
}

// What is left at an edge, out of the piece.
function edgeOff(
  { on, outDeg, measured, radiusMm }: EdgeTouch,
  turn: number,
  sx: number,
  sy: number
): number {
  const a = (outDeg * Math.PI) / 180
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const [dx, dy] = [measured[0] - sx, measured[1] - sy]
  return (c * dx + s * dy - on[0]) * Math.cos(a) + (-s * dx + c * dy - on[1]) * Math.sin(a) - radiusMm
}

// One step: the normal equations of the residuals in (turn, sx, sy), their slopes by the formulas above.
function gaussNewton(
  marks: readonly Mark[],
  edges: readonly EdgeTouch[],
  turn: number,
  sx: number,
  sy: number
): [number, number, number] {
  const [c, s] = [Math.cos(turn), Math.sin(turn)]
  const rows: (readonly [number, number, number, number])[] = []
  for (const m of marks) {
    const [rx, ry] = markOff(m, turn, sx, sy)
    rows.push([s * m.drawn[0] + c * m.drawn[1], -1, 0, rx])
    rows.push([-c * m.drawn[0] + s * m.drawn[1], 0, -1, ry])
  }
  for (const e of edges) {
    const a = (e.outDeg * Math.PI) / 180
    const [nx, ny] = [Math.cos(a), Math.sin(a)]
    const [dx, dy] = [e.measured[0] - sx, e.measured[1] - sy]
    rows.push([
      (-s * dx + c * dy) * nx + (-c * dx - s * dy) * ny,
      -c * nx + s * ny,
      -s * nx - c * ny,
      edgeOff(e, turn, sx, sy)
    ])
  }
  const m = [0, 1, 2].map(i => [
    ...[0, 1, 2].map(j => rows.reduce((sum, r) => sum + r[i]! * r[j]!, 0)),
    -rows.reduce((sum, r) => sum + r[i]! * r[3], 0)
  ])
  return solved(m)
}

function solved(m: number[][]): [number, number, number] {
  for (let k = 0; k < 3; k++) {
    const pivot = [0, 1, 2]
      .filter(i => i >= k)
      .reduce((a, b) => (Math.abs(m[b]![k]!) > Math.abs(m[a]![k]!) ? b : a))
    ;[m[k], m[pivot]] = [m[pivot]!, m[k]!]
    if (Math.abs(m[k]![k]!) < 1e-9)
      throw new RangeError(
        'the places touched leave the piece free to shift or turn; allowed: marks that lie apart, or two places of one edge and one of another'
      )
    for (let i = 0; i < 3; i++) {
      if (i === k) continue
      const f = m[i]![k]! / m[k]![k]!
      for (let j = k; j < 4; j++) m[i]![j]! -= f * m[k]![j]!
    }
  }
  return [m[0]![3]! / m[0]![0]!, m[1]![3]! / m[1]![1]!, m[2]![3]! / m[2]![2]!]
}
