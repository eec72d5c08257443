import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'

/** Height of a cutter's lower end at a distance from its axis, written from its definition; NaN beside it. */
function heightAt(c: CutterShape, r: number): number {
  const R = c.diameterMm / 2
  if (r > R) return Number.NaN
  switch (c.form) {
    case 'ball':
      return R - Math.sqrt(R * R - r * r)
    case 'bull':
      return r <= R - c.cornerMm
        ? 0
        : c.cornerMm - Math.sqrt(Math.max(0, c.cornerMm ** 2 - (r - R + c.cornerMm) ** 2))
    case 'v':
      return Math.max(0, (r - c.tipMm / 2) / Math.tan((c.angleDeg * Math.PI) / 360))
    case 'drill':
      return r / Math.tan((c.angleDeg * Math.PI) / 360)
    default:
      return 0
  }
}

/**
 * The slow twin: the whole footprint of the cutter set down at every `stepMm` of the way. `at` places the cells.
 * A stamp may stand half a step off the lowest place, so that it leaves more, never less.
 */
export function stamp(
  top: Float64Array,
  nx: number,
  xOf: (i: number) => number,
  yOf: (j: number) => number,
  c: CutterShape,
  way: readonly (readonly [number, number, number])[],
  stepMm: number
): void {
  for (let k = 0; k + 1 < way.length; k++) {
    const [a, b] = [way[k]!, way[k + 1]!]
    const n = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1], b[2] - a[2]) / stepMm))
    for (let s = 0; s <= n; s++) {
      const [x, y, z] = [0, 1, 2].map(d => a[d]! + (s / n) * (b[d]! - a[d]!)) as [number, number, number]
      for (let p = 0; p < top.length; p++) {
        const [dx, dy] = [xOf(p % nx) - x, yOf((p - (p % nx)) / nx) - y]
        if (dx > c.diameterMm || dx < -c.diameterMm || dy > c.diameterMm || dy < -c.diameterMm) continue
        const h = z + heightAt(c, Math.sqrt(dx * dx + dy * dy))
        if (h < top[p]!) top[p] = h
      }
    }
  }
}
