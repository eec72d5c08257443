import { describe, expect, it } from 'vitest'
import { segmentDistance2 } from '../../src/shape/edge-tree.ts'
import { endpointArc } from '../../src/shape/endpoint-arc.ts'
import type { Arc } from '../../src/shape/flatten.ts'
import {
  cubicChords,
  divideArc,
  flattenArc,
  flattenCubic,
  flattenQuadratic,
  greaterHalfAxis
} from '../../src/shape/flatten.ts'
import { ringArea } from '../../src/shape/measure.ts'
import { randomFrom } from './random.ts'

type Curve = (t: number) => [number, number]

function chordsOf(
  start: [number, number],
  draw: (emit: (x: number, y: number) => void) => void
): Float64Array {
  const points = [...start]
  draw((x, y) => points.push(x, y))
  return Float64Array.from(points)
}

// Greatest distance from the chords to the curve: samples of the chords against 4000 fine segments of the curve,
// which themselves stray less than a hundredth of the tolerances used.
function strayFrom(line: Float64Array, curve: Curve): number {
  const samples = 4000
  const dense = Array.from({ length: samples + 1 }, (_, k) => curve(k / samples))
  let worst = 0
  let near = 0
  for (let k = 0; k + 3 < line.length; k += 2) {
    for (let t = 0; t <= 1; t += 1 / 4) {
      const x = line[k]! + t * (line[k + 2]! - line[k]!)
      const y = line[k + 1]! + t * (line[k + 3]! - line[k + 1]!)
      // Both run the same way: the nearest segment lies a little further on.
      let best = Number.POSITIVE_INFINITY
      const from = near
      for (let s = from; s < Math.min(samples, from + samples / 8); s++) {
        const [ax, ay] = dense[s]!
        const [bx, by] = dense[s + 1]!
        const d = segmentDistance2(ax, ay, bx, by, x, y)
        if (d < best) {
          best = d
          near = s
        }
      }
      worst = Math.max(worst, Math.sqrt(best))
    }
  }
  return worst
}

describe('division of an arc', () => {
  it('keeps both errors within the tolerance for every angle and tolerance', () => {
    for (let beta = 0.01; beta <= 2 * Math.PI + 1e-9; beta += 0.05) {
      for (const tol of [2, 0.9, 0.3, 0.1, 1e-2, 1e-4, 1e-8]) {
        const { count, rho } = divideArc(beta, tol)
        expect(rho - 1, `β ${beta}, tol ${tol}`).toBeLessThanOrEqual(tol)
        expect(rho).toBeGreaterThanOrEqual(1)
        expect(1 - Math.cos(beta / count / 2)).toBeLessThanOrEqual(tol * (1 + 1e-6))
      }
    }
  })

  it('has the closed form of two chords over a quarter turn', () => {
    expect(divideArc(Math.PI / 2, 2)).toEqual({
      count: 2,
      rho: expect.closeTo(Math.PI / (2 * Math.SQRT2), 14)
    })
  })
})

describe('an elliptical arc', () => {
  it('strays at most the tolerance and sweeps the area of its sector, under any affine map', () => {
    const random = randomFrom(11)
    for (let k = 0; k < 60; k++) {
      const arc: Arc = {
        cx: 10 * random(),
        cy: 10 * random(),
        ux: 60 * random() - 30,
        uy: 60 * random() - 30,
        vx: 60 * random() - 30,
        vy: 60 * random() - 30,
        t0: 7 * random() - 3,
        dt: (4 * random() - 2) * Math.PI
      }
      const at: Curve = s => {
        const t = arc.t0 + arc.dt * s
        return [
          arc.cx + arc.ux * Math.cos(t) + arc.vx * Math.sin(t),
          arc.cy + arc.uy * Math.cos(t) + arc.vy * Math.sin(t)
        ]
      }
      const tol = 10 ** (-1 - 2 * random())
      const line = chordsOf(at(0), emit => flattenArc(arc, tol, emit))
      expect(strayFrom(line, at), JSON.stringify({ k, tol, arc })).toBeLessThan(tol * 1.01)
      // Sector of the map of the unit circle: det/2 per radian (closed form).
      const sector = Float64Array.from([arc.cx, arc.cy, ...line])
      const exact = ((arc.ux * arc.vy - arc.uy * arc.vx) * arc.dt) / 2
      expect(Math.abs(ringArea(sector) - exact)).toBeLessThan(1e-9 * (1 + Math.abs(exact)))
    }
  })

  it('has as greater half-axis the largest stretch of the unit circle', () => {
    const random = randomFrom(5)
    for (let k = 0; k < 50; k++) {
      const [ux, uy, vx, vy] = [random(), random(), random(), random()] as const
      let most = 0
      for (let t = 0; t < Math.PI; t += 1e-3) {
        most = Math.max(
          most,
          Math.hypot(ux * Math.cos(t) + vx * Math.sin(t), uy * Math.cos(t) + vy * Math.sin(t))
        )
      }
      expect(greaterHalfAxis(ux, uy, vx, vy)).toBeCloseTo(most, 6)
    }
  })
})

describe('SVG arcs (implementation notes F.6)', () => {
  it('come back from their ends: centre form to ends and flags, and to centre form again', () => {
    const random = randomFrom(3)
    for (let k = 0; k < 500; k++) {
      const [cx, cy, rx, ry] = [
        20 * random() - 10,
        20 * random() - 10,
        1 + 9 * random(),
        1 + 9 * random()
      ] as const
      const phi = 720 * random() - 360
      const t0 = 7 * random() - 3.5
      const dt = (random() < 0.5 ? -1 : 1) * (0.05 + 6.1 * random())
      const c = Math.cos((phi * Math.PI) / 180)
      const s = Math.sin((phi * Math.PI) / 180)
      const at = (t: number): [number, number] => [
        cx + rx * Math.cos(t) * c - ry * Math.sin(t) * s,
        cy + rx * Math.cos(t) * s + ry * Math.sin(t) * c
      ]
      const [x1, y1] = at(t0)
      const [x2, y2] = at(t0 + dt)
      // Near half a turn the large-arc flag hangs on rounding.
      if (Math.abs(Math.abs(dt) - Math.PI) < 1e-3) continue
      const arc = endpointArc(x1, y1, rx, ry, phi, Math.abs(dt) > Math.PI, dt > 0, x2, y2)!
      const note = JSON.stringify({ k, cx, cy, rx, ry, phi, t0, dt })
      expect(arc.cx, note).toBeCloseTo(cx, 8)
      expect(arc.cy, note).toBeCloseTo(cy, 8)
      expect(arc.dt, note).toBeCloseTo(dt, 8)
      const mid = arc.t0 + arc.dt / 2
      expect(arc.cx + arc.ux * Math.cos(mid) + arc.vx * Math.sin(mid), note).toBeCloseTo(
        at(t0 + dt / 2)[0],
        8
      )
      expect(arc.cy + arc.uy * Math.cos(mid) + arc.vy * Math.sin(mid), note).toBeCloseTo(
        at(t0 + dt / 2)[1],
        8
      )
    }
  })

  it('scale radii that are too small until the ellipse just reaches (F.6.6)', () => {
    const arc = endpointArc(0, 0, 1, 2, 0, false, true, 10, 0)!
    expect(arc.cx).toBeCloseTo(5, 12)
    expect(arc.cy).toBeCloseTo(0, 12)
    expect(arc.ux).toBeCloseTo(5, 12)
    expect(arc.vy).toBeCloseTo(10, 12)
    expect(Math.abs(arc.dt)).toBeCloseTo(Math.PI, 12)
  })

  it('are straight for a radius of 0, nothing for equal ends, and take radii without sign', () => {
    expect(endpointArc(0, 0, 0, 5, 0, true, true, 1, 1)).toBeNull()
    expect(endpointArc(0, 0, 5, 0, 0, true, true, 1, 1)).toBeNull()
    expect(endpointArc(1, 1, 5, 5, 0, true, true, 1, 1)).toBeNull()
    expect(endpointArc(0, 0, -5, 5, 0, true, true, 1, 1)).toEqual(
      endpointArc(0, 0, 5, 5, 0, true, true, 1, 1)
    )
  })
})

describe('Bézier curves', () => {
  const cubicAt =
    (p: readonly number[]): Curve =>
    t => {
      // De Casteljau: the slow, obvious way.
      const q = [...p]
      for (let level = 3; level > 0; level--) {
        for (let k = 0; k < 2 * level; k++) q[k] = (1 - t) * q[k]! + t * q[k + 2]!
      }
      return [q[0]!, q[1]!]
    }

  it('stray at most the tolerance', () => {
    const random = randomFrom(21)
    for (let k = 0; k < 60; k++) {
      const p = Array.from({ length: 8 }, () => 100 * random())
      const tol = 10 ** (-0.5 - 2 * random())
      const line = chordsOf([p[0]!, p[1]!], emit => flattenCubic(p, tol, emit))
      expect(strayFrom(line, cubicAt(p)), JSON.stringify({ k, tol, p })).toBeLessThan(tol * 1.01)
      expect(line.length / 2).toBe(cubicChords(p, tol) + 1)
    }
  })

  it('as a quadratic give the area 2/3 of the triangle of their points (Archimedes), at second order', () => {
    const p = [0, 0, 50, 80, 100, 0]
    const exact = -(2 / 3) * 4000
    const off = [0.1, 0.025, 0.00625].map(
      tol => ringArea(chordsOf([0, 0], emit => flattenQuadratic(p, tol, emit))) - exact
    )
    // A quarter of the tolerance is half the step: the area closes in four times.
    expect(off[0]! / off[1]!).toBeGreaterThan(3.5)
    expect(off[0]! / off[1]!).toBeLessThan(4.5)
    expect(off[1]! / off[2]!).toBeGreaterThan(3.5)
    expect(off[1]! / off[2]!).toBeLessThan(4.5)
    expect(Math.abs(off[2]!)).toBeLessThan(100 * 0.00625)
  })

  it('as a circle of four cubics stray from it by 2.7e-4 of the radius', () => {
    // k = 4/3·tan(π/8), the usual choice: greatest radial error 2.73e-4 (computed from the closed form).
    const k = (4 / 3) * Math.tan(Math.PI / 8)
    const line = chordsOf([1, 0], emit => flattenCubic([1, 0, 1, k, k, 1, 0, 1], 1e-9, emit))
    let most = 0
    for (let i = 0; i < line.length; i += 2)
      most = Math.max(most, Math.abs(Math.hypot(line[i]!, line[i + 1]!) - 1))
    expect(most).toBeCloseTo(2.725e-4, 6)
  })

  it('draw one chord where all points coincide or lie evenly on a line', () => {
    expect(cubicChords([1, 1, 1, 1, 1, 1, 1, 1], 0.01)).toBe(1)
    expect(cubicChords([0, 0, 1, 0, 2, 0, 3, 0], 0.01)).toBe(1)
  })
})
