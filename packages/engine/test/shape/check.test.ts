import { describe, expect, it } from 'vitest'
import { circle } from '../../src/shape/build.ts'
import { holesOutside, outlineFault, repeatedPoint } from '../../src/shape/check.ts'
import type { Ring } from '../../src/shape/region.ts'
import { selfCrossing } from '../../src/shape/self-crossing.ts'
import { randomFrom, ringOf, star, wavy } from './random.ts'

/**
 * Whether a ring of whole-number corners crosses or overlaps itself, the slow and obvious way: every pair of
 * edges; where they only touch, a small circle about the place is walked and the four directions compared.
 */
function crossesTwin(ring: Ring): boolean {
  const p: [number, number][] = []
  for (let k = 0; k < ring.length; k += 2) {
    const last = p.at(-1)
    if (!last || last[0] !== ring[k] || last[1] !== ring[k + 1]) p.push([ring[k]!, ring[k + 1]!])
  }
  while (p.length > 1 && p[0]![0] === p.at(-1)![0] && p[0]![1] === p.at(-1)![1]) p.pop()
  const n = p.length
  if (n < 2) return false
  const at = (k: number) => p[((k % n) + n) % n]!
  const side = (a: number[], b: number[], c: number[]) =>
    Math.sign((b[0]! - a[0]!) * (c[1]! - a[1]!) - (b[1]! - a[1]!) * (c[0]! - a[0]!))
  const on = (a: number[], b: number[], c: number[]) =>
    side(a, b, c) === 0 && (c[0]! - a[0]!) * (c[0]! - b[0]!) + (c[1]! - a[1]!) * (c[1]! - b[1]!) <= 0
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < i; j++) {
      const [a, b, c, d] = [at(i), at(i + 1), at(j), at(j + 1)]
      if (side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0) return true
      // Collinear with a common stretch: two different ends that lie on both.
      if (side(a, b, c) === 0 && side(a, b, d) === 0) {
        const common = [a, b, c, d].filter(e => on(a, b, e) && on(c, d, e))
        if (common.some(e => e[0] !== common[0]![0] || e[1] !== common[0]![1])) return true
      }
    }
  }
  // Touching: all passes of the ring through each corner, by direction angles; two that alternate cross.
  for (let v = 0; v < n; v++) {
    const passes: [number, number][] = []
    for (let i = 0; i < n; i++) {
      const [a, b] = [at(i), at(i + 1)]
      const here = at(v)
      const angle = (q: number[]) => Math.atan2(q[1]! - here[1]!, q[0]! - here[0]!)
      if (b[0] === here[0] && b[1] === here[1]) passes.push([angle(a), angle(at(i + 2))])
      else if (!(a[0] === here[0] && a[1] === here[1]) && on(a, b, here)) passes.push([angle(a), angle(b)])
    }
    for (const [a, b] of passes) {
      for (const [c, d] of passes) {
        const within = (x: number) => x > Math.min(a, b) && x < Math.max(a, b)
        if (c !== a && c !== b && d !== a && d !== b && within(c) !== within(d)) return true
      }
    }
  }
  return false
}

describe('self-crossing', () => {
  it('agrees with every-pair comparison on 4000 lattice polygons full of touching and overlap', () => {
    let crossing = 0
    let simple = 0
    for (let seed = 1; seed <= 4000; seed++) {
      const random = randomFrom(seed)
      const ring = Float64Array.from({ length: 2 * (3 + Math.floor(6 * random())) }, () =>
        Math.floor(5 * random())
      )
      const expected = crossesTwin(ring)
      if (expected) crossing++
      else simple++
      expect(selfCrossing(ring) !== null, `seed ${seed}: ${ring}`).toBe(expected)
    }
    expect(crossing).toBeGreaterThan(500)
    expect(simple).toBeGreaterThan(300)
  })

  it('is found wherever it hides in a long ring, and nowhere in a sound one', () => {
    for (const n of [100, 1000, 20_000]) {
      // Bent one way everywhere, so that two neighbours exchanged must cross.
      const ring = wavy(n, 50, 0.3, 3)
      expect(selfCrossing(ring)).toBeNull()
      const random = randomFrom(n)
      for (let k = 0; k < 5; k++) {
        const spoilt = ring.slice()
        const i = Math.floor(random() * (n - 5)) + 1
        for (const c of [0, 1]) {
          spoilt[2 * i + c] = ring[2 * i + 2 + c]!
          spoilt[2 * i + 2 + c] = ring[2 * i + c]!
        }
        const found = selfCrossing(spoilt)
        expect(found, `n ${n}, point ${i}`).not.toBeNull()
        expect(Math.hypot(found!.x - ring[2 * i]!, found!.y - ring[2 * i + 1]!)).toBeLessThan(
          (4 * 314) / n + 1e-9
        )
      }
    }
  })

  it('tells the place', () => {
    expect(selfCrossing(ringOf([0, 0], [10, 10], [10, 0], [0, 10]))).toEqual({ x: 5, y: 5 })
  })

  it('knows the special cases', () => {
    // Two loops that touch at a corner without passing through each other.
    expect(selfCrossing(ringOf([0, 0], [2, 2], [4, 0], [4, 4], [2, 2], [0, 4]))).toBeNull()
    // The same point, passed through.
    expect(selfCrossing(ringOf([0, 0], [2, 2], [4, 4], [4, 0], [2, 2], [0, 4]))).toEqual({ x: 2, y: 2 })
    // A corner that touches an edge from within.
    expect(selfCrossing(ringOf([0, 0], [6, 0], [6, 6], [3, 0], [0, 6]))).toBeNull()
    // A spike, and a slit run twice.
    expect(selfCrossing(ringOf([0, 0], [6, 0], [9, 0], [6, 0], [6, 6], [0, 6]))).not.toBeNull()
    expect(
      selfCrossing(ringOf([0, 0], [9, 0], [9, 9], [0, 9], [0, 5], [4, 5], [4, 4], [5, 5], [4, 5], [0, 5]))
    ).not.toBeNull()
    // Points repeated in a row do not matter; fewer than three are nothing or a line there and back.
    expect(selfCrossing(ringOf([0, 0], [0, 0], [6, 0], [6, 0], [6, 6], [0, 6], [0, 0]))).toBeNull()
    expect(selfCrossing(new Float64Array(0))).toBeNull()
    expect(selfCrossing(ringOf([1, 1]))).toBeNull()
    expect(selfCrossing(ringOf([0, 0], [1, 1]))).not.toBeNull()
    expect(selfCrossing(ringOf([0, 0], [2, 2], [4, 4]))).not.toBeNull()
  })

  it('does not depend on the start, the sense or a mirror image', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed)
      const n = 4 + Math.floor(5 * random())
      const ring = Float64Array.from({ length: 2 * n }, () => Math.floor(4 * random()))
      const was = selfCrossing(ring) !== null
      const points = Array.from({ length: n }, (_, k) => [ring[2 * k]!, ring[2 * k + 1]!] as const)
      for (let shift = 1; shift < n; shift++) {
        const turned = ringOf(...points.slice(shift), ...points.slice(0, shift))
        expect(selfCrossing(turned) !== null, `seed ${seed}, shift ${shift}`).toBe(was)
      }
      expect(selfCrossing(ringOf(...[...points].reverse())) !== null).toBe(was)
      expect(selfCrossing(ringOf(...points.map(([x, y]) => [y, x] as const))) !== null).toBe(was)
    }
  })
})

describe('holes', () => {
  const outer = ringOf([0, 0], [100, 0], [100, 100], [0, 100])
  const box = (x: number, y: number, s: number) => ringOf([x, y], [x + s, y], [x + s, y + s], [x, y + s])
  const turned = (ring: Ring) => {
    const points = Array.from(
      { length: ring.length / 2 },
      (_, k) => [ring[2 * k]!, ring[2 * k + 1]!] as const
    )
    return ringOf(...points.reverse())
  }

  it('are told by the index of the first that leaves the outline', () => {
    expect(holesOutside(outer, [])).toBeNull()
    expect(holesOutside(outer, [box(10, 10, 20), box(40, 40, 20)])).toBeNull()
    expect(holesOutside(outer, [box(10, 10, 20), box(90, 40, 20)])).toBe(1)
    expect(holesOutside(outer, [box(200, 10, 20), box(40, 40, 20)])).toBe(0)
    expect(holesOutside(outer, [box(-10, -10, 200)])).toBe(0)
    expect(holesOutside(turned(outer), [turned(box(90, 40, 20))])).toBe(0)
  })

  it('are told by the index of the second of two that overlap, whichever way they turn', () => {
    const list = [box(10, 10, 20), box(40, 40, 20), box(55, 55, 20)]
    expect(holesOutside(outer, list)).toBe(2)
    expect(holesOutside(outer, [list[0]!, turned(list[1]!), list[2]!])).toBe(2)
    expect(holesOutside(outer, [list[1]!, turned(list[1]!)])).toBe(1)
    expect(holesOutside(outer, [box(10, 10, 40), box(20, 20, 5)])).toBe(1)
  })

  it('may touch the outline and each other', () => {
    expect(holesOutside(outer, [box(10, 10, 20), box(30, 10, 20), box(0, 50, 20)])).toBeNull()
    expect(holesOutside(circle(100, 0.01).rings[0]!, [circle(50, 0.01, 25, 0).rings[0]!])).toBeNull()
  })

  it('of many are compared at once', () => {
    const grid = Array.from({ length: 400 }, (_, k) => box((k % 20) * 5, Math.floor(k / 20) * 5, 4))
    expect(holesOutside(outer, grid)).toBeNull()
    expect(holesOutside(outer, [...grid, box(2, 2, 1)])).toBe(400)
  })
})

describe('the fault of an outline', () => {
  it('is said in words with its place', () => {
    expect(outlineFault(ringOf([0, 0], [10, 0], [10, 10], [0, 10]))).toBeNull()
    expect(outlineFault(ringOf([0, 0], [10, 10], [10, 0], [0, 10]))).toBe('outline crosses itself at (5, 5)')
    expect(outlineFault(ringOf([0, 0], [10, 0]))).toMatch(/2 points; at least three/)
    expect(outlineFault(ringOf([0, 0], [10, 0], [10, 0], [0, 10]))).toBe(
      'two points in the same place at (10, 0)'
    )
    expect(outlineFault(ringOf([0, 0], [10, 0], [5, 1e-6]))).toMatch(/encloses nothing/)
    expect(outlineFault(ringOf([0, 0], [Number.NaN, 0], [5, 1]))).toMatch(/point 2 is not a number/)
    expect(outlineFault(star(randomFrom(1), 50, 5, 20, 0, 0))).toBeNull()
  })

  it('finds a point twice in a row, the last before the first too', () => {
    expect(repeatedPoint(ringOf([0, 0], [1, 0], [1, 1]))).toBeNull()
    expect(repeatedPoint(ringOf([0, 0], [1, 0], [1, 0], [1, 1]))).toBe(2)
    expect(repeatedPoint(ringOf([0, 0], [1, 0], [1, 1], [0, 0]))).toBe(0)
    expect(repeatedPoint(ringOf([0, 0]))).toBeNull()
  })
})
