import { inside } from '../shape/measure.ts'
import type { Bounds, Region } from '../shape/region.ts'
import { seeded } from './seeded.ts'

/** Outline of a stone as it is drawn: a closed line, and lines on it (the ribs of a shell). Piece mm. */
export interface StoneDrawing {
  readonly outline: Float64Array
  readonly ribs: readonly Float64Array[]
}

/** A stone of about this size at a place: a shell as a fan, others as a rounded lump; the same on every run. */
export function stoneAt(
  x: number,
  y: number,
  lengthMm: number,
  widthMm: number,
  shell: boolean,
  seed: number
): StoneDrawing {
  const random = seeded(seed * 31 + 7)
  return shell ? fan(x, y, lengthMm, widthMm, random) : lump(x, y, lengthMm, widthMm, random)
}

function lump(x: number, y: number, long: number, wide: number, random: () => number): StoneDrawing {
  const turn = random() * Math.PI
  const [p2, p3] = [random() * 6.3, random() * 6.3]
  const n = 18
  const outline = new Float64Array(2 * n)
  for (let k = 0; k < n; k++) {
    const t = (2 * Math.PI * k) / n
    const r = 1 + 0.1 * Math.sin(2 * t + p2) + 0.06 * Math.sin(3 * t + p3)
    const u = (long / 2) * r * Math.cos(t)
    const v = (wide / 2) * r * Math.sin(t)
    outline[2 * k] = x + u * Math.cos(turn) - v * Math.sin(turn)
    outline[2 * k + 1] = y + u * Math.sin(turn) + v * Math.cos(turn)
  }
  return { outline, ribs: [] }
}

// A scallop: ribs run from the hinge, the rim is scalloped between them.
function fan(x: number, y: number, long: number, wide: number, random: () => number): StoneDrawing {
  const turn = (random() - 0.5) * 1.6
  const put = (u: number, v: number): [number, number] => [
    x + u * Math.cos(turn) - v * Math.sin(turn),
    y + u * Math.sin(turn) + v * Math.cos(turn)
  ]
  const hinge = -long / 2
  const ribs = 7
  const spread = Math.PI * 0.78
  const rim = (t: number): [number, number] => {
    const a = -spread / 2 + spread * t
    const bulge = 1 + 0.05 * Math.abs(Math.sin(Math.PI * ribs * t))
    return put(hinge + long * 0.97 * Math.cos(a * 0.62) * bulge, wide * 0.56 * Math.sin(a) * bulge)
  }
  const points: number[] = [...put(hinge, -wide * 0.14), ...put(hinge + long * 0.12, -wide * 0.2)]
  const n = 4 * ribs
  for (let k = 0; k <= n; k++) points.push(...rim(k / n))
  points.push(...put(hinge + long * 0.12, wide * 0.2), ...put(hinge, wide * 0.14))
  const lines = Array.from({ length: ribs - 1 }, (_, k) =>
    Float64Array.from([...put(hinge + long * 0.16, 0), ...rim((k + 1) / ribs)])
  )
  return { outline: Float64Array.from(points), ribs: lines }
}

/** Most stones drawn of one zone: enough to read as a bed of them. */
const MOST_STONES = 160

/** A bed of stones in a zone: places by trial, none nearer to another than about its size. */
export function bedOf(zone: Region, box: Bounds, sizeMm: number, seed: number): StoneDrawing[] {
  const random = seeded(seed * 53 + 3)
  const places: [number, number][] = []
  for (let trial = 0; trial < 12 * MOST_STONES && places.length < MOST_STONES; trial++) {
    const x = box.minX + random() * (box.maxX - box.minX)
    const y = box.minY + random() * (box.maxY - box.minY)
    if (!inside(zone, x, y)) continue
    if (places.some(([px, py]) => Math.hypot(px - x, py - y) < 1.02 * sizeMm)) continue
    places.push([x, y])
  }
  return places.map(([x, y], i) => {
    const long = sizeMm * (0.8 + 0.35 * random())
    return stoneAt(x, y, long, long * (0.62 + 0.3 * random()), false, seed * 1000 + i)
  })
}
