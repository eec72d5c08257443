import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import type { CutJob, Feeds, NoPath } from '../../../src/cuts/cut-job.ts'
import type { Move, Toolpath } from '../../../src/cuts/toolpath.ts'

/** A cutter for tests: sizes mm, lengths ample. */
export function cutterOf(
  form: CutterShape['form'],
  diameterMm: number,
  more: Partial<CutterShape> = {}
): CutterShape {
  return {
    form,
    diameterMm,
    cornerMm: 0,
    angleDeg: form === 'drill' ? 118 : form === 'v' ? 60 : 180,
    tipMm: 0,
    fluteMm: 40,
    shankMm: diameterMm,
    reachMm: 45,
    holderMm: 30,
    headMm: 0,
    neckMm: 0,
    plunges: true,
    ...more
  }
}

const FEEDS: Feeds = {
  rpm: 16_000,
  feedMmMin: 1500,
  plungeMmMin: 400,
  rampMmMin: 700,
  rampDeg: 4,
  depthMm: 2,
  stepMm: 2.4,
  allowanceMm: 0,
  climb: true,
  why: []
}

/** A job from 0 down to `floorMm`. */
export function jobOf(
  cutter: CutterShape,
  floorMm: number,
  feeds: Partial<Feeds> = {},
  more: Partial<CutJob> = {}
): CutJob {
  return {
    cutter,
    feeds: { ...FEEDS, ...feeds },
    topMm: 0,
    floorMm,
    clearMm: 5,
    tolMm: 0.005,
    arcs: true,
    ...more
  }
}

export function pathOf(path: Toolpath | NoPath): Toolpath {
  if ('says' in path) throw new Error(`no path: ${path.says}`)
  return path
}

/** The places the tip of a cutter passes at feed, at most `stepMm` apart: x, y, z in a row. */
export function tipPlaces(path: Toolpath, stepMm: number): Float64Array {
  const out: number[] = []
  let [x, y, z] = [0, 0, 0]
  for (const move of path.moves) {
    if (move.kind === 'dwell') continue
    if (move.kind !== 'rapid') placesOf(move, x, y, z, stepMm, out)
    ;[x, y, z] = [move.x, move.y, move.z]
  }
  return Float64Array.from(out)
}

function placesOf(
  move: Exclude<Move, { kind: 'dwell' | 'rapid' }>,
  x: number,
  y: number,
  z: number,
  stepMm: number,
  out: number[]
): void {
  const at = (u: number, v: number, w: number) => out.push(u, v, w)
  if (move.kind === 'line') {
    const long = Math.hypot(move.x - x, move.y - y, move.z - z)
    const n = Math.max(1, Math.ceil(long / stepMm))
    for (let k = 0; k <= n; k++)
      at(x + ((move.x - x) * k) / n, y + ((move.y - y) * k) / n, z + ((move.z - z) * k) / n)
    return
  }
  const { cx, cy } = move
  const r = Math.hypot(x - cx, y - cy)
  const a0 = Math.atan2(y - cy, x - cx)
  let turn = Math.atan2(move.y - cy, move.x - cx) - a0
  if (move.clockwise && turn > -1e-9) turn -= 2 * Math.PI
  if (!move.clockwise && turn < 1e-9) turn += 2 * Math.PI
  const n = Math.max(8, Math.ceil((r * Math.abs(turn)) / stepMm))
  for (let k = 0; k <= n; k++) {
    const a = a0 + (turn * k) / n
    at(cx + r * Math.cos(a), cy + r * Math.sin(a), z + ((move.z - z) * k) / n)
  }
}

/** Height of the solid of a cutter above its lowest point at radius r; Infinity beside it. The obvious slow twin. */
function profileAt(c: CutterShape, r: number): number {
  const R = c.diameterMm / 2
  if (r > R + 1e-9) return Number.POSITIVE_INFINITY
  if (c.form === 'ball') return R - Math.sqrt(Math.max(0, R * R - r * r))
  if (c.form === 'v' || c.form === 'drill')
    return Math.max(0, r - c.tipMm / 2) / Math.tan((c.angleDeg * Math.PI) / 360)
  return 0
}

/** Height of what is left at places of the plan, at most 0: the face before the cut. */
export function leftAt(
  places: Float64Array,
  cutter: CutterShape,
  points: readonly (readonly [number, number])[]
): number[] {
  // In cells as wide as the cutter: only those about a point can reach it.
  const wide = cutter.diameterMm / 2
  const cells = new Map<string, number[]>()
  for (let k = 0; k < places.length; k += 3) {
    const key = `${Math.floor(places[k]! / wide)} ${Math.floor(places[k + 1]! / wide)}`
    const cell = cells.get(key)
    if (cell) cell.push(k)
    else cells.set(key, [k])
  }
  return points.map(([px, py]) => {
    let low = 0
    const [i, j] = [Math.floor(px / wide), Math.floor(py / wide)]
    for (let a = i - 1; a <= i + 1; a++)
      for (let b = j - 1; b <= j + 1; b++)
        for (const k of cells.get(`${a} ${b}`) ?? []) {
          // What lies deeper than it stands cannot be cut by a tip as high as that.
          if (places[k + 2]! >= low) continue
          const z = places[k + 2]! + profileAt(cutter, Math.hypot(places[k]! - px, places[k + 1]! - py))
          if (z < low) low = z
        }
    return low
  })
}

/** What holds of every path: begins and ends high, crosses only there, feeds above 0, each pass begun from above. */
export function faultsOf(path: Toolpath, job: CutJob): string[] {
  const out: string[] = []
  let [x, y, z] = [Number.NaN, Number.NaN, job.clearMm]
  path.moves.forEach((move, i) => {
    if (move.kind === 'dwell') return
    if (![move.x, move.y, move.z].every(Number.isFinite)) out.push(`${i}: not a number`)
    if (move.kind === 'rapid') {
      const across = move.x !== x || move.y !== y
      if (across && (z < job.clearMm - 1e-9 || move.z < job.clearMm - 1e-9)) out.push(`${i}: crosses low`)
    } else if (!(move.feedMmMin > 0)) out.push(`${i}: no feed`)
    ;[x, y, z] = [move.x, move.y, move.z]
  })
  if (z < job.clearMm) out.push('ends low')
  for (const pass of path.passes) {
    const before = path.moves
      .slice(0, pass.from)
      .findLast((m): m is Exclude<Move, { kind: 'dwell' }> => m.kind !== 'dwell')
    if (before !== undefined && before.z < job.clearMm - 1e-9) out.push(`${pass.name}: begins low`)
  }
  return out
}

/** Length of all moves at feed and of the ways between, mm. */
export function waysOf(path: Toolpath): { readonly feedMm: number; readonly rapidMm: number } {
  let [feedMm, rapidMm, x, y] = [0, 0, Number.NaN, Number.NaN]
  for (const m of path.moves) {
    if (m.kind === 'dwell') continue
    if (!Number.isNaN(x)) {
      const d = Math.hypot(m.x - x, m.y - y)
      if (m.kind === 'rapid') rapidMm += d
      else feedMm += d
    }
    ;[x, y] = [m.x, m.y]
  }
  return { feedMm, rapidMm }
}
