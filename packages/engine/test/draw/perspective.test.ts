import { describe, expect, it } from 'vitest'
import type { Homography, Point } from '../../src/draw/perspective.ts'
import {
  cornersInOrder,
  errorMm,
  fromDistance,
  fromRectangle,
  laidAt,
  mmPerPx,
  mmToPx,
  pxToMm,
  unwarpSize
} from '../../src/draw/perspective.ts'
import { inverse } from '../../src/draw/plane-map.ts'
import { chance } from '../stack/random.ts'

const rectangle = (w: number, h: number): Point[] => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h]
]
const solved = (h: unknown): Homography => {
  expect(h).not.toHaveProperty('problem')
  return h as Homography
}

/**
 * A pinhole camera looking at the plane z = 0 (textbook: depth along its axis divides; focal length in px): makes
 * pictures point by point, without a homography.
 */
function camera(c: ReturnType<typeof chance>): (x: number, y: number) => Point {
  type V = [number, number, number]
  const dot = (a: V, b: V) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
  const cross = (a: V, b: V): V => [
    a[1] * b[2] - a[2] * b[1],
    a[2] * b[0] - a[0] * b[2],
    a[0] * b[1] - a[1] * b[0]
  ]
  const unit = (a: V): V => a.map(x => x / Math.sqrt(dot(a, a))) as V
  const eye: V = [c.span(-300, 800), c.span(-800, 300), c.span(700, 1600)]
  const look: V = [c.span(150, 350), c.span(50, 200), 0]
  const focal = c.span(2000, 5000)
  const roll = c.span(-0.3, 0.3)
  const ahead = unit([look[0] - eye[0], look[1] - eye[1], look[2] - eye[2]])
  const right = unit(cross(ahead, [Math.sin(roll), Math.cos(roll), 0]))
  const up = cross(right, ahead)
  return (x, y) => {
    const ray: V = [x - eye[0], y - eye[1], -eye[2]]
    const depth = dot(ray, ahead)
    return [2000 + (focal * dot(ray, right)) / depth, 1500 - (focal * dot(ray, up)) / depth]
  }
}

/** Twin: the map by projective bases (each frame's fourth point as a combination of three), no linear system. */
function byBases(from: readonly Point[], to: readonly Point[]): Homography {
  const basis = (p: readonly Point[]): Homography => {
    const m: Homography = [p[0]![0], p[1]![0], p[2]![0], p[0]![1], p[1]![1], p[2]![1], 1, 1, 1]
    const inv = inverse(m)!
    const k = [0, 3, 6].map(r => inv[r]! * p[3]![0] + inv[r + 1]! * p[3]![1] + inv[r + 2]!)
    return m.map((v, n) => v * k[n % 3]!) as unknown as Homography
  }
  const a = basis(to)
  const b = inverse(basis(from))!
  return [0, 1, 2, 3, 4, 5, 6, 7, 8].map(n => {
    const [r, c] = [3 * Math.floor(n / 3), n % 3]
    return a[r]! * b[c]! + a[r + 1]! * b[c + 3]! + a[r + 2]! * b[c + 6]!
  }) as unknown as Homography
}

describe('a rectangle in a photo', () => {
  it('undoes the projection of a camera', () => {
    const c = chance(41)
    for (let k = 0; k < 300; k++) {
      const see = camera(c)
      const h = solved(
        fromRectangle(
          rectangle(500, 250).map(p => see(...p)),
          500,
          250
        )
      )
      for (let j = 0; j < 10; j++) {
        const [x, y] = [c.span(-200, 700), c.span(-150, 400)]
        const [u, v] = see(x, y)
        const got = pxToMm(h, u, v)!
        expect(Math.hypot(got[0] - x, got[1] - y)).toBeLessThan(1e-6)
        const back = mmToPx(h, x, y)!
        expect(Math.hypot(back[0] - u, back[1] - v)).toBeLessThan(1e-6)
      }
    }
  })

  it('agrees with its twin by projective bases', () => {
    const c = chance(42)
    for (let k = 0; k < 300; k++) {
      const see = camera(c)
      const marks = rectangle(300, 210).map((p): Point => {
        const [u, v] = see(...p)
        return [u + c.span(-3, 3), v + c.span(-3, 3)]
      })
      const h = solved(fromRectangle(marks, 300, 210))
      const twin = byBases(marks, rectangle(300, 210))
      // One factor between the two.
      const f = h[8]! / twin[8]!
      h.forEach((x, n) => {
        expect(Math.abs(x - f * twin[n]!)).toBeLessThan(1e-9 * (1 + Math.abs(x)))
      })
    }
  })

  it('is the upright scale for an upright picture, and affine for a sheared one', () => {
    const upright: Point[] = [
      [100, 700],
      [900, 700],
      [900, 300],
      [100, 300]
    ]
    const h = solved(fromRectangle(upright, 400, 200))
    ;[0.5, 0, -50, 0, -0.5, 350, 0, 0, 1].forEach((x, n) => {
      expect(h[n]).toBeCloseTo(x, 10)
    })
    const sheared = upright.map(([u, v]): Point => [u + 0.3 * v, v - 0.1 * u])
    const s = solved(fromRectangle(sheared, 400, 200))
    expect(s[6]).toBeCloseTo(0, 12)
    expect(s[7]).toBeCloseTo(0, 12)
    // Of an affine map the error per px is the same everywhere.
    expect(mmPerPx(s, 0, 0)).toBeCloseTo(mmPerPx(s, 5000, 4000), 9)
    expect(mmPerPx(h, 123, 456)).toBeCloseTo(0.5, 10)
  })

  it('gives nothing beyond the horizon', () => {
    // Near edge 800 px long at v = 1000, far edge 400 px at v = 600: the sides meet at v = 200.
    const marks: Point[] = [
      [100, 1000],
      [900, 1000],
      [700, 600],
      [300, 600]
    ]
    const h = solved(fromRectangle(marks, 500, 500))
    expect(pxToMm(h, 500, 201)).not.toBeNull()
    expect(pxToMm(h, 500, 200)).toBeNull()
    expect(pxToMm(h, 500, 100)).toBeNull()
    expect(mmPerPx(h, 500, 100)).toBe(Number.POSITIVE_INFINITY)
    // A place behind the camera is in no picture.
    expect(mmToPx(h, 250, -2000)).toBeNull()
    expect(unwarpSize(h, 1000, 1200, { unitsPerMm: 1, originX: 0, originY: 0 }).boxMm).toBeNull()
  })
})

describe('the error of a place', () => {
  it('per px is what steps of a hundredth px show, in the worst of 360 directions', () => {
    const c = chance(43)
    for (let k = 0; k < 50; k++) {
      const see = camera(c)
      const h = solved(
        fromRectangle(
          rectangle(500, 250).map(p => see(...p)),
          500,
          250
        )
      )
      const [u, v] = see(c.span(0, 500), c.span(0, 250))
      let worst = 0
      for (let d = 0; d < 360; d++) {
        const [du, dv] = [0.005 * Math.cos((d * Math.PI) / 180), 0.005 * Math.sin((d * Math.PI) / 180)]
        const [p, q] = [pxToMm(h, u + du, v + dv)!, pxToMm(h, u - du, v - dv)!]
        worst = Math.max(worst, Math.hypot(p[0] - q[0], p[1] - q[1]) / 0.01)
      }
      expect(mmPerPx(h, u, v) / worst).toBeCloseTo(1, 3)
    }
  })

  it('is what clicks spoiled by chance show', () => {
    const c = chance(44)
    const gauss = () => Math.sqrt(-2 * Math.log(1 - c.next())) * Math.cos(2 * Math.PI * c.next())
    const marks = rectangle(500, 250).map((p): Point => camera(chance(7))(...p))
    const h = solved(fromRectangle(marks, 500, 250))
    for (const place of [
      [250, 125],
      [480, 20],
      [700, 300]
    ] as const) {
      const [u, v] = mmToPx(h, place[0], place[1])!
      let squares = 0
      const n = 4000
      for (let k = 0; k < n; k++) {
        const spoiled = marks.map((m): Point => [m[0] + gauss(), m[1] + gauss()])
        const p = pxToMm(solved(fromRectangle(spoiled, 500, 250)), u + gauss(), v + gauss())!
        squares += (p[0] - place[0]) ** 2 + (p[1] - place[1]) ** 2
      }
      const seen = Math.sqrt(squares / n)
      // 4000 draws of a sum of squares: about 1.5 % of chance.
      expect(errorMm(marks, 500, 250, [u, v]) / seen).toBeGreaterThan(0.95)
      expect(errorMm(marks, 500, 250, [u, v]) / seen).toBeLessThan(1.05)
    }
  })
})

describe('marks that will not do', () => {
  const good: Point[] = [
    [100, 500],
    [500, 520],
    [480, 90],
    [120, 100]
  ]
  it.each([
    ['three', good.slice(0, 3), /^3 marks/],
    ['crossed', [good[0]!, good[2]!, good[1]!, good[3]!], /cross each other/],
    ['the wrong way round', [...good].reverse(), /wrong way round/],
    [
      'two in one place',
      [good[0]!, good[0]!, good[2]!, good[3]!],
      /near left and near right lie 0.0 px apart/
    ],
    [
      'on one line',
      [
        [0, 0],
        [100, 0],
        [200, 0.5],
        [300, 0]
      ] as Point[],
      /lies on the line/
    ],
    [
      'three on a line',
      [
        [100, 500],
        [300, 500],
        [500, 500],
        [300, 100]
      ] as Point[],
      /near right lies on the line/
    ],
    ['not a number', [[Number.NaN, 0], ...good.slice(1)] as Point[], /outside any picture/]
  ])('%s', (_, marks, why) => {
    expect((fromRectangle(marks, 300, 200) as { problem: string }).problem).toMatch(why)
  })

  it('sides out of range', () => {
    expect(fromRectangle(good, 0, 200)).toEqual({ problem: 'a width of 0 mm; allowed: 1 to 10000 mm' })
    expect(fromRectangle(good, 200, Number.NaN)).toHaveProperty('problem')
    expect(fromDistance([0, 0], [5, 0], 100)).toHaveProperty('problem')
    expect(fromDistance([0, 0], [500, 0], -1)).toHaveProperty('problem')
  })

  it('puts clicks made in any order right', () => {
    const c = chance(45)
    for (let k = 0; k < 100; k++) {
      const mixed = [...good].sort(() => c.next() - 0.5)
      expect(cornersInOrder(mixed)).toEqual(good)
    }
  })
})

describe('two points of known distance', () => {
  it('scales and stands upright', () => {
    const h = solved(fromDistance([100, 200], [400, 600], 250))
    expect(pxToMm(h, 100, 200)).toEqual([0, 0])
    const [x, y] = pxToMm(h, 400, 600)!
    expect([x, y].map(n => n.toFixed(9))).toEqual(['150.000000000', '-200.000000000'])
    const laid = laidAt(h, [10, 20], 90)
    const [p, q] = pxToMm(laid, 400, 600)!
    expect(p).toBeCloseTo(210, 9)
    expect(q).toBeCloseTo(170, 9)
  })
})

describe('a picture under the plan', () => {
  it('is sent by matrix3d where the marks lie on the sheet', () => {
    const c = chance(46)
    for (let k = 0; k < 50; k++) {
      const see = camera(c)
      const h = solved(
        fromRectangle(
          rectangle(500, 250).map(p => see(...p)),
          500,
          250
        )
      )
      const { matrix3d } = unwarpSize(h, 4000, 3000, { unitsPerMm: 1.5, originX: 400, originY: 300 })
      const [x, y] = [c.span(0, 500), c.span(0, 250)]
      const [u, v] = see(x, y)
      // CSS Transforms Level 2 (memory): matrix3d lists columns; (u, v, 0, 1) is mapped, then divided by w.
      const row = (r: number) => matrix3d[r]! * u + matrix3d[4 + r]! * v + matrix3d[12 + r]!
      const p = { x: row(0), y: row(1), w: row(3) }
      expect(p.w).toBeGreaterThan(0)
      expect(p.x / p.w).toBeCloseTo(400 + 1.5 * x, 6)
      expect(p.y / p.w).toBeCloseTo(300 - 1.5 * y, 6)
    }
  })

  it('has the box of its corners', () => {
    const h = solved(fromDistance([0, 100], [200, 100], 100))
    expect(unwarpSize(h, 200, 100, { unitsPerMm: 1, originX: 0, originY: 0 }).boxMm).toEqual({
      minX: 0,
      minY: 0,
      maxX: 100,
      maxY: 50
    })
  })
})
