import { describe, expect, it } from 'vitest'
import { union } from '../../src/shape/combine.ts'
import { area, ringArea } from '../../src/shape/measure.ts'
import type { Loft } from '../../src/stack/loft.ts'
import { crosses, loft, loftArea, loftAreaIntegral, loftRing } from '../../src/stack/loft.ts'
import { volumeBetween } from '../../src/stack/solid.ts'
import { stackOf } from './build.ts'
import { chance } from './random.ts'
import { seededPiece } from './seeded-piece.ts'
import type { Wave } from './seeded-shape.ts'
import { wavyOf } from './seeded-shape.ts'
import { bodyVolume } from './twin.ts'

const ring = (points: readonly (readonly [number, number])[]) => Float64Array.from(points.flat())

const lofts: { readonly name: string; readonly loft: Loft }[] = []
for (let seed = 0; seed < 60; seed++) {
  stackOf(seededPiece(seed)).geometry.timbers.forEach((t, i) => {
    for (const l of t.lofts ?? []) lofts.push({ name: `seed ${seed} timber ${i}`, loft: l })
  })
}

describe('the stitching of a slanted side', () => {
  it('uses every edge of both rings once, in order, and closes', () => {
    expect(lofts.length).toBeGreaterThan(30)
    for (const { name, loft: l } of lofts) {
      const [n, m] = [l.lower.length / 2, l.upper.length / 2]
      expect(l.i.length).toBe(n + m)
      const used = { lower: new Set<number>(), upper: new Set<number>() }
      for (let k = 0; k < n + m; k++) {
        const next = (k + 1) % (n + m)
        const [a, b] = [(l.i[next]! - l.i[k]! + n) % n, (l.j[next]! - l.j[k]! + m) % m]
        // One step on one of the two rings.
        expect(a + b, name).toBe(1)
        const edges = a === 1 ? used.lower : used.upper
        const edge = a === 1 ? l.i[k]! : l.j[k]!
        expect(edges.has(edge), name).toBe(false)
        edges.add(edge)
      }
      expect(used.lower.size).toBe(n)
      expect(used.upper.size).toBe(m)
    }
  })

  it('cuts level as one simple ring: what it encloses is its signed area', () => {
    for (const { name, loft: l } of lofts) {
      expect(crosses(l), name).toBe(false)
      for (const t of [0, 0.1, 0.3, 0.5, 0.7, 0.9, 1]) {
        const cut = loftRing(l, t)
        const signed = ringArea(cut)
        const outer = signed > 0 ? cut : Float64Array.from(cut).reverse()
        // A reversed flat list has x and y swapped: mirrored, turned, and so counter-clockwise again.
        const mirrored = signed > 0 ? outer : swapped(outer)
        const whole = area(union({ rings: [mirrored] }))
        expect(Math.abs(whole - Math.abs(signed)) / whole, `${name} at ${t}`).toBeLessThan(1e-4)
        expect(Math.abs(loftArea(l, t) - signed)).toBeLessThan(1e-9 * whole + 1e-6)
      }
    }
  })

  it('runs level cuts that move from one edge to the other without a jump', () => {
    for (const { name, loft: l } of lofts) {
      // No connecting edge is longer than the edges lie apart at their farthest, by a wide margin.
      let far = 0
      for (let k = 0; k < l.lower.length; k += 2) far = Math.max(far, nearestPoint(l, k))
      for (let k = 0; k < l.i.length; k++) {
        const [a, b] = [2 * l.i[k]!, 2 * l.j[k]!]
        const long = Math.hypot(l.lower[a]! - l.upper[b]!, l.lower[a + 1]! - l.upper[b + 1]!)
        expect(long, name).toBeLessThan(3 * far + longestEdge(l))
      }
    }
  })

  it('gives the volume of the stitched body as the boolean library measures it', () => {
    let worst = 0
    for (let seed = 0; seed < 40; seed++) {
      stackOf(seededPiece(seed)).geometry.timbers.forEach((t, i) => {
        const [ours, theirs] = [volumeBetween(t, t.base, t.high), bodyVolume(t)]
        const share = Math.abs(ours - theirs) / theirs
        worst = Math.max(worst, share)
        // The twin's crowns have 48 facets: they lose 1/(4·24²) of what the crown holds, a tenth of the body.
        expect(share, `seed ${seed} timber ${i}`).toBeLessThan(1e-4)
      })
    }
    expect(worst).toBeGreaterThan(0)
  })

  it('is exact for regular rings of one kind, and near it for wavy ones: the area is that of the ring scaled', () => {
    for (const [waves, most] of [
      [[], 1e-12],
      [[{ k: 3, size: 0.1, phase: 1 }], 5e-4]
    ] as [Wave[], number][]) {
      const big = ring(wavyOf([0, 0], 100, 100, 60, waves))
      const small = big.map(v => 0.9 * v)
      const l = loft(small, big)
      for (const t of [0, 0.25, 0.5, 1]) {
        const scale = 0.9 + 0.1 * t
        expect(Math.abs(loftArea(l, t) / (scale * scale) / ringArea(big) - 1)).toBeLessThan(most)
      }
      // ∫ (0.9 + 0.1 t)² dt from 0 to 1 = (1 − 0.9³)/0.3
      expect(Math.abs(loftAreaIntegral(l, 0, 1) / ringArea(big) - (1 - 0.729) / 0.3)).toBeLessThan(most)
    }
  })

  it('joins corner to corner where the lower edge is much smaller and lies to one side', () => {
    const box = (x0: number, x1: number) =>
      ring([
        [x1, -30],
        [x1, 30],
        [x0, 30],
        [x0, -30]
      ])
    // Level cuts are rectangles (20 + 120 t) × 60.
    const l = loft(box(50, 70), box(-70, 70))
    for (const t of [0, 0.3, 0.5, 1]) expect(loftArea(l, t)).toBeCloseTo((20 + 120 * t) * 60, 9)
  })

  it('says when edges wander so far apart that the side crosses itself', () => {
    // A trough that opens to the back over one that opens to the front.
    const back = ring(trough)
    const front = ring(trough.map(([x, y]): [number, number] => [100 - x, 100 - y]))
    expect(crosses(loft(back, front))).toBe(true)
    expect(crosses(loft(back, back))).toBe(false)
  })

  it('stays simple for edges that wave against each other', () => {
    const c = chance(5)
    for (let n = 0; n < 200; n++) {
      const waves = (): Wave[] =>
        [2, 3, 5, 9].map(k => ({ k, size: 0.03 * c.next(), phase: c.span(0, 6.28) }))
      const shrink = c.span(0.75, 1.25)
      const upper = ring(wavyOf([0, 0], 100, 60, c.whole(20, 200), waves()))
      const lower = ring(wavyOf([0, 0], 100 * shrink, 60 * shrink, c.whole(20, 200), waves()))
      expect(crosses(loft(lower, upper)), `case ${n}`).toBe(false)
    }
  })

  it('refuses a ring of two points', () => {
    expect(() => loft(Float64Array.of(0, 0, 1, 1), Float64Array.of(0, 0, 1, 0, 1, 1))).toThrow('three points')
  })
})

const trough: readonly [number, number][] = [
  [0, 0],
  [100, 0],
  [100, 100],
  [80, 100],
  [80, 20],
  [20, 20],
  [20, 100],
  [0, 100]
]

function swapped(flat: Float64Array): Float64Array {
  return flat.map((_, k) => flat[k % 2 === 0 ? k + 1 : k - 1]!)
}

function nearestPoint(l: Loft, k: number): number {
  let least = Number.POSITIVE_INFINITY
  for (let j = 0; j < l.upper.length; j += 2)
    least = Math.min(least, Math.hypot(l.lower[k]! - l.upper[j]!, l.lower[k + 1]! - l.upper[j + 1]!))
  return least
}

function longestEdge(l: Loft): number {
  let most = 0
  for (const r of [l.lower, l.upper])
    for (let k = 0, p = r.length - 2; k < r.length; p = k, k += 2)
      most = Math.max(most, Math.hypot(r[k]! - r[p]!, r[k + 1]! - r[p + 1]!))
  return most
}
