import { clipLines, thinned } from './clip-line.ts'
import { seeded } from './seeded.ts'

/**
 * The figure of a board as lines, for a drawing: year rings met by the face.
 *
 * Rings are cylinders about a pith that lies below the board and rises a little along it. A flat-sawn face at
 * distance D(u) over the pith cuts ring r where v² = r² − D(u)²: the cathedrals of a flat-sawn board, closing
 * where D passes r. Quartered boards show the rings nearly straight, rift ones slanted. Distances are of the
 * sheet, so that a large board is drawn as calmly as a small one; a seed makes boards differ and prints agree.
 */
export function grainLines(
  rings: readonly Float64Array[],
  angleDeg: number,
  sawn: 'flat' | 'rift' | 'quarter',
  seed: number
): Float64Array[] {
  const random = seeded(97 * seed + 5)
  const a = (angleDeg * Math.PI) / 180
  const [c, s] = [Math.cos(a), Math.sin(a)]
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const ring of rings) {
    for (let k = 0; k < ring.length; k += 2) {
      const u = ring[k]! * c + ring[k + 1]! * s
      const v = ring[k + 1]! * c - ring[k]! * s
      minU = Math.min(minU, u)
      maxU = Math.max(maxU, u)
      minV = Math.min(minV, v)
      maxV = Math.max(maxV, v)
    }
  }
  if (!(maxU > minU)) return []
  const put = (u: number, v: number): [number, number] => [u * c - v * s, u * s + v * c]
  const wobble = waver(random)
  const lines =
    sawn === 'flat'
      ? cathedrals(minU, maxU, minV, maxV, wobble, random)
      : straight(minU, maxU, minV, maxV, wobble, sawn === 'rift' ? 0.03 : 0.008, random)
  return clipLines(
    rings,
    lines.map(l => {
      const out = new Float64Array(l.length)
      for (let k = 0; k < l.length; k += 2) {
        const [x, y] = put(l[k]!, l[k + 1]!)
        out[k] = x
        out[k + 1] = y
      }
      return thinned(out, 0.03)
    })
  )
}

/** Distance of rings on the sheet, mm, and step along them. */
const RING_MM = 1.15
const STEP_MM = 1.6

// A slow sway that all lines share.
function waver(random: () => number): (u: number) => number {
  const [p1, p2, p3] = [random() * 6.3, random() * 6.3, random() * 6.3]
  return u => 0.9 * Math.sin(u / 19 + p1) + 0.42 * Math.sin(u / 7.7 + p2) + 0.14 * Math.sin(u / 2.9 + p3)
}

function cathedrals(
  minU: number,
  maxU: number,
  minV: number,
  maxV: number,
  wobble: (u: number) => number,
  random: () => number
): Float64Array[] {
  const long = maxU - minU
  const wide = maxV - minV
  const middle = minV + wide * (0.36 + 0.28 * random())
  const rising = random() < 0.5 ? 1 : -1
  const phase = random() * 6.3
  // How far over the pith the face runs: about twice its width on the way from one end to the other.
  const depth = (u: number) => {
    const t = (u - minU) / long
    return (
      (rising > 0 ? t : 1 - t) * Math.max(14, 0.9 * wide) +
      2.4 * Math.sin(u / 15 + phase) +
      0.9 * Math.sin(u / 5.1 + 2 * phase)
    )
  }
  const most = Math.hypot(Math.max(14, 0.9 * wide) + 4, wide)
  const out: Float64Array[] = []
  for (let k = 1; k * RING_MM < most; k++) {
    const r = k * RING_MM * (1 + 0.002 * k) + 0.35 * (random() - 0.5)
    const inside = (u: number) => Math.abs(depth(u)) < r
    // Stretches along the board on which the face cuts this ring, closed at both ends by their apex.
    let start: number | null = inside(minU - 1) ? minU - 1 : null
    for (let u = minU - 1 + STEP_MM; u < maxU + 1 + STEP_MM; u += STEP_MM) {
      const now = inside(u)
      if (now && start === null) start = edge(inside, u - STEP_MM, u)
      else if (!now && start !== null) {
        out.push(...loop(start, edge(inside, u, u - STEP_MM), r, depth, middle, wobble, minU, maxU))
        start = null
      }
    }
    if (start !== null) out.push(...loop(start, maxU + 1, r, depth, middle, wobble, minU, maxU))
  }
  return out
}

// Where "inside" begins between a place outside and one inside.
function edge(inside: (u: number) => boolean, outside: number, within: number): number {
  let [a, b] = [outside, within]
  for (let k = 0; k < 20; k++) {
    const m = (a + b) / 2
    if (inside(m)) b = m
    else a = m
  }
  return b
}

// Both halves of a ring from u0 to u1, joined where it closes on the board; finer near an apex.
function loop(
  u0: number,
  u1: number,
  r: number,
  depth: (u: number) => number,
  middle: number,
  wobble: (u: number) => number,
  minU: number,
  maxU: number
): Float64Array[] {
  const places: number[] = []
  const n = Math.max(2, Math.ceil((u1 - u0) / STEP_MM))
  const [fineStart, fineEnd] = [u0 > minU - 1, u1 < maxU + 1]
  for (let k = 0; k <= n; k++) {
    const t = k / n
    places.push(u0 + (u1 - u0) * t)
    if ((k === 0 && fineStart) || (k === n - 1 && fineEnd))
      for (const f of [0.03, 0.12, 0.3, 0.6])
        places.push(u0 + ((u1 - u0) * (k + (k === 0 && fineStart ? f : 1 - f))) / n)
  }
  places.sort((a, b) => a - b)
  const count = places.length
  const above = new Float64Array(2 * count)
  const below = new Float64Array(2 * count)
  for (let k = 0; k < count; k++) {
    const u = places[k]!
    const d = depth(u)
    const half = Math.sqrt(Math.max(0, r * r - d * d))
    const line = middle + wobble(u)
    above[2 * k] = u
    above[2 * k + 1] = line + half
    below[2 * k] = u
    below[2 * k + 1] = line - half
  }
  if (fineStart) return [joined(reversed(above), below)]
  if (fineEnd) return [joined(above, reversed(below))]
  return [above, below]
}

function joined(first: Float64Array, second: Float64Array): Float64Array {
  const out = new Float64Array(first.length + second.length)
  out.set(first)
  out.set(second, first.length)
  return out
}

function reversed(points: Float64Array): Float64Array {
  const out = new Float64Array(points.length)
  for (let k = 0, b = points.length - 2; k < points.length; k += 2, b -= 2) {
    out[k] = points[b]!
    out[k + 1] = points[b + 1]!
  }
  return out
}

function straight(
  minU: number,
  maxU: number,
  minV: number,
  maxV: number,
  wobble: (u: number) => number,
  slope: number,
  random: () => number
): Float64Array[] {
  const lean = (random() < 0.5 ? 1 : -1) * slope
  const out: Float64Array[] = []
  const drift = Math.abs(lean) * (maxU - minU) + 2
  for (let v = minV - drift; v < maxV + drift; v += RING_MM * (0.65 + 0.7 * random())) {
    const run: number[] = []
    for (let u = minU - 1; u <= maxU + 1; u += 2 * STEP_MM)
      run.push(u, v + lean * (u - minU) + 0.6 * wobble(u))
    out.push(Float64Array.from(run))
  }
  return out
}
