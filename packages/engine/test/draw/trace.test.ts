import { describe, expect, it } from 'vitest'
import { kept } from '../../src/draw/line-corner.ts'
import type { Traced } from '../../src/draw/trace.ts'
import { grayOf, snapToEdge, traced } from '../../src/draw/trace.ts'
import { ringArea } from '../../src/shape/measure.ts'
import { chance } from '../stack/random.ts'

type P = [number, number]
const made = (stroke: P[], options = {}): Traced => {
  const got = traced(stroke, options)
  expect(got).not.toHaveProperty('problem')
  return got as Traced
}
/** Distance from a point to a line of points, the slow obvious way. */
const distance = ([x, y]: P, line: P[], closed: boolean): number => {
  let least = Number.POSITIVE_INFINITY
  for (let k = closed ? 0 : 1; k < line.length; k++) {
    const [a, b] = [line[(k + line.length - 1) % line.length]!, line[k]!]
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const t = Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)))
    least = Math.min(least, Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y))
  }
  return least
}
const between = (a: P, b: P, n: number): P[] =>
  Array.from({ length: n }, (_, k): P => [a[0] + ((b[0] - a[0]) * k) / n, a[1] + ((b[1] - a[1]) * k) / n])

describe('a stroke', () => {
  it('strays no more than it says, in either direction, on trembling strokes', () => {
    const c = chance(71)
    for (let run = 0; run < 60; run++) {
      const strayMm = c.pick([0.3, 0.5, 1, 2])
      let [x, y, a] = [0, 0, 0]
      const stroke: P[] = []
      for (let k = 0; k < 400; k++) {
        a += c.span(-0.15, 0.15) + (c.is(0.01) ? c.span(-1.5, 1.5) : 0)
        x += Math.cos(a) * c.span(0.2, 3)
        y += Math.sin(a) * c.span(0.2, 3)
        stroke.push([x + c.span(-0.2, 0.2), y + c.span(-0.2, 0.2)])
      }
      const got = made(stroke, { strayMm, closeMm: 0 })
      const worst = Math.max(...stroke.map(p => distance(p, got.points, false)))
      expect(worst).toBeLessThanOrEqual(strayMm)
      expect(got.strayMm).toBeGreaterThanOrEqual(worst - 1e-9)
      expect(got.strayMm).toBeLessThanOrEqual(strayMm)
      // And no bulge of the line away from the stroke.
      expect(Math.max(...got.points.map(p => distance(p, stroke, false)))).toBeLessThan(2 * strayMm)
      for (const at of got.points.flat()) expect(Math.abs(at * 10 - Math.round(at * 10))).toBeLessThan(1e-9)
    }
  })

  it('makes a circle of a trembling circle, closed, and smoother than it was', () => {
    const c = chance(72)
    const stroke = Array.from({ length: 300 }, (_, k): P => {
      const a = (2 * Math.PI * k) / 300
      return [80 * Math.cos(a) + c.span(-0.25, 0.25), 80 * Math.sin(a) + c.span(-0.25, 0.25)]
    })
    const { points, closed } = made(stroke)
    expect(closed).toBe(true)
    expect(points.length).toBeLessThan(150)
    const area = ringArea(Float64Array.from(points.flat()))
    expect(area / (Math.PI * 80 * 80)).toBeGreaterThan(0.995)
    expect(area / (Math.PI * 80 * 80)).toBeLessThan(1.005)
    // Smooth: no turn above 20 degrees, where the stroke itself turns by up to 40.
    const turns = points.map((p, k) => {
      const [a, b] = [points[(k + points.length - 1) % points.length]!, points[(k + 1) % points.length]!]
      const d = Math.atan2(b[1] - p[1], b[0] - p[0]) - Math.atan2(p[1] - a[1], p[0] - a[0])
      return Math.abs((((d * 180) / Math.PI + 540) % 360) - 180)
    })
    expect(Math.max(...turns)).toBeLessThan(20)
  })

  it('keeps corners sharper than the limit, and rounds those that are not', () => {
    const corner = (deg: number): P[] => {
      const a = (deg * Math.PI) / 180
      return [...between([-60, 0], [0, 0], 60), ...between([0, 0], [60 * Math.cos(a), 60 * Math.sin(a)], 61)]
    }
    for (const deg of [60, 75, 90, 120, 150]) {
      const { points } = made(corner(deg), { closeMm: 0 })
      expect(points, `${deg}`).toContainEqual([0, 0])
      expect(points.length).toBeLessThan(6)
    }
    // A square drawn from the middle of a side: four corners, whatever the seam.
    const square = [
      ...between([0, -40], [40, -40], 30),
      ...between([40, -40], [40, 40], 60),
      ...between([40, 40], [-40, 40], 60),
      ...between([-40, 40], [-40, -40], 60),
      ...between([-40, -40], [0, -40], 30)
    ]
    const got = made(square)
    expect(got.closed).toBe(true)
    for (const at of [
      [40, -40],
      [40, 40],
      [-40, 40],
      [-40, -40]
    ])
      expect(got.points).toContainEqual(at)
    expect(ringArea(Float64Array.from(got.points.flat()))).toBeCloseTo(6400, 6)
  })

  it('says why there is no line', () => {
    const why = (s: P[], o = {}) => (traced(s, o) as { problem: string }).problem
    expect(why([])).toMatch(/too short/)
    expect(
      why([
        [0, 0],
        [0, 0],
        [Number.NaN, 9]
      ])
    ).toMatch(/too short/)
    expect(why(Array.from({ length: 10_001 }, (_, k): P => [k, 0]))).toMatch(/10001 points/)
    expect(
      why(
        [
          [0, 0],
          [9, 9]
        ],
        { strayMm: 0 }
      )
    ).toBe('a stray of 0; allowed: 0.3 to 20')
    const eight = Array.from(
      { length: 200 },
      (_, k): P => [50 * Math.sin((Math.PI * k) / 100), 50 * Math.sin((Math.PI * k) / 50)]
    )
    expect(why(eight)).toMatch(/crosses itself near \(-?0\.\d, -?0\.\d\)/)
  })

  it('takes the longest scribble without hanging', () => {
    const c = chance(73)
    const wild = Array.from({ length: 10_000 }, (): P => [c.span(-500, 500), c.span(-500, 500)])
    const t = performance.now()
    traced(wild, { closeMm: 0 })
    traced(Array.from({ length: 10_000 }, (_, k): P => [k / 10, 30 * Math.sin(k / 300) + c.span(-0.2, 0.2)]))
    expect(performance.now() - t).toBeLessThan(5000)
  })
})

describe('points kept of a line', () => {
  it('leave none farther off than the tolerance, by the slow way', () => {
    const c = chance(74)
    for (let run = 0; run < 50; run++) {
      const line = Array.from({ length: 120 }, (_, k): P => [k, 10 * Math.sin(k / 9) + c.span(-1, 1)])
      const rest = kept(Float64Array.from(line.flat()), 1.5).map(k => line[k]!)
      expect(rest.length).toBeLessThan(90)
      for (const p of line) expect(distance(p, rest, false)).toBeLessThanOrEqual(1.5 + 1e-9)
    }
  })
})

describe('the edge in a picture', () => {
  /** A picture of a scene given as darkness at a place, each px the mean of 8 × 8 places: an exact camera. */
  const picture = (w: number, h: number, light: (x: number, y: number) => boolean, noise = 0, seed = 1) => {
    const c = chance(seed)
    const out = new Uint8ClampedArray(w * h)
    for (let j = 0; j < h; j++)
      for (let i = 0; i < w; i++) {
        let sum = 0
        for (let a = 0; a < 8; a++)
          for (let b = 0; b < 8; b++) if (light(i + (a + 0.5) / 8, j + (b + 0.5) / 8)) sum++
        out[j * w + i] = 60 + (130 * sum) / 64 + c.span(-noise, noise)
      }
    return out
  }

  it('of straight lines at all slopes lies within 0.05 px', () => {
    const c = chance(75)
    for (let k = 0; k < 60; k++) {
      const a = c.span(0, 2 * Math.PI)
      const [nx, ny] = [Math.cos(a), Math.sin(a)]
      const d = 30 * (nx + ny) + c.span(-1, 1)
      const image = picture(60, 60, (x, y) => x * nx + y * ny > d)
      const got = snapToEdge(image, 60, 60, 30 + c.span(-4, 4), 30 + c.span(-4, 4), 10)!
      expect(Math.abs(got.x * nx + got.y * ny - d)).toBeLessThan(0.05)
      const turn = ((((got.acrossDeg - (a * 180) / Math.PI) % 360) + 540) % 360) - 180
      expect(Math.abs(turn)).toBeLessThan(2)
    }
  })

  it('of round and noisy outlines lies within 0.3 px', () => {
    const c = chance(76)
    for (let k = 0; k < 80; k++) {
      const r = c.span(12, 40)
      const [cx, cy] = [50 + c.span(-1, 1), 50 + c.span(-1, 1)]
      const image = picture(100, 100, (x, y) => Math.hypot(x - cx, y - cy) < r, 8, k)
      const a = c.span(0, 2 * Math.PI)
      const off = r + c.span(-5, 5)
      const got = snapToEdge(image, 100, 100, cx + off * Math.cos(a), cy + off * Math.sin(a), 9)!
      expect(Math.abs(Math.hypot(got.x - cx, got.y - cy) - r), `${k}`).toBeLessThan(0.3)
    }
  })

  it('is none on plain ground, outside, or of a picture that is none', () => {
    const plain = picture(40, 40, () => true, 2)
    expect(snapToEdge(plain, 40, 40, 20, 20, 8)).toBeNull()
    expect(snapToEdge(plain, 40, 40, -5, 20, 8)).toBeNull()
    expect(snapToEdge(plain, 41, 40, 20, 20, 8)).toBeNull()
    expect(snapToEdge(plain, 40, 40, 20, 20, Number.NaN)).toBeNull()
    expect(snapToEdge(plain, 40, 40, 20, 20, 1e9)).toBeNull()
  })

  it('takes greys by the weights of the standard', () => {
    expect([
      ...grayOf(Uint8ClampedArray.from([255, 0, 0, 9, 0, 255, 0, 9, 0, 0, 255, 9, 255, 255, 255, 9]))
    ]).toEqual([54, 182, 18, 255])
  })
})
