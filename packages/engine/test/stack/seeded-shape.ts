import type { Chance } from './random.ts'

export type Point = [number, number]

export interface Box {
  readonly minX: number
  readonly maxX: number
  readonly minY: number
  readonly maxY: number
}

/** To a hundredth of a millimetre, as a document would have it. */
export function mm(x: number): number {
  return Math.round(x * 100) / 100
}

export function boxOf(points: readonly Point[]): Box {
  const xs = points.map(p => p[0])
  const ys = points.map(p => p[1])
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) }
}

/** An ellipse whose radius waves by a share, star-shaped about its middle: it never crosses itself. */
export function wavy(c: Chance, at: Point, a: number, b: number, points: number, share: number): Point[] {
  const waves = [2, 3, 5, 8].map(k => ({ k, size: (share * c.next()) / 2, phase: c.span(0, 2 * Math.PI) }))
  return wavyOf(at, a, b, points, waves)
}

export interface Wave {
  readonly k: number
  readonly size: number
  readonly phase: number
}

export function wavyOf(at: Point, a: number, b: number, points: number, waves: readonly Wave[]): Point[] {
  return Array.from({ length: points }, (_, i): Point => {
    const t = (2 * Math.PI * i) / points
    const r = 1 + waves.reduce((sum, w) => sum + w.size * Math.sin(w.k * t + w.phase), 0)
    return [mm(at[0] + r * a * Math.cos(t)), mm(at[1] + r * b * Math.sin(t))]
  })
}

/** A closed curve of cubics through eight points (Catmull-Rom), as SVG path data; y runs down there. */
export function organic(c: Chance, a: number, b: number): { path: string; points: Point[] } {
  const points = wavy(c, [0, 0], a, b, 8, 0.3)
  const at = (i: number) => points[(i + 8) % 8]!
  const parts = points.map((p, i) => {
    const [before, next, after] = [at(i - 1), at(i + 1), at(i + 2)]
    const c1 = [p[0] + (next[0] - before[0]) / 6, p[1] + (next[1] - before[1]) / 6]
    const c2 = [next[0] - (after[0] - p[0]) / 6, next[1] - (after[1] - p[1]) / 6]
    return `C ${[...c1, ...c2, ...next].map(v => mm(v)).join(' ')}`
  })
  // The box is told as it stands upright.
  return { path: `M ${points[0]!.join(' ')} ${parts.join(' ')} Z`, points: points.map(([x, y]) => [x, -y]) }
}
