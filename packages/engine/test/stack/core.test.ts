import { describe, expect, it } from 'vitest'
import { bounds, inside, nearest } from '../../src/shape/measure.ts'
import { clipMemo } from '../../src/stack/clip-memo.ts'
import { coreAt } from '../../src/stack/core.ts'
import { materialKey, STROKE_TOL_MM } from '../../src/stack/event.ts'
import type { LevelCut } from '../../src/stack/level-cut.ts'
import { levelCut } from '../../src/stack/level-cut.ts'
import { stackOf } from './build.ts'
import { chance } from './random.ts'
import { seededPiece } from './seeded-piece.ts'
import { needles } from './twin.ts'

/** Two ways to the same edge may differ by this on the plan or in height, mm. */
const HAIR_MM = 1e-3

describe('a core and a level cut', () => {
  it('find the same material at 12,000 places of 40 seeded pieces', () => {
    let seen = 0
    let atEdges = 0
    const kinds = new Set<string>()
    for (let seed = 0; seed < 40; seed++) {
      const { geometry: g, events, finishedLow, finishedHigh } = stackOf(seededPiece(seed))
      const c = chance(1000 + seed)
      const memo = clipMemo()
      const b = bounds(g.mould)
      for (let k = 0; k < 15; k++) {
        const z = c.span(finishedLow - 0.5, finishedHigh + 0.5)
        const cut = levelCut(g, events, z, memo)
        for (let n = 0; n < 20; n++) {
          const x = c.span(b.minX, b.maxX)
          const y = c.span(b.minY, b.maxY)
          const core = coreAt(g, events, x, y)
          const part = core.find(p => z >= p.from && z < p.to)
          const fromCore = part === undefined ? 'air' : materialKey(part.material)
          const found = cut.filter(p => inside(p.region, x, y)).map(p => materialKey(p.material))
          seen++
          kinds.add(fromCore.split(' ')[0]!)
          if (found.length <= 1 && (found[0] ?? 'air') === fromCore) continue
          atEdges++
          const nearFace = core.some(p => Math.min(Math.abs(p.from - z), Math.abs(p.to - z)) < HAIR_MM)
          expect(
            nearFace || distanceToEdge(cut, x, y) < HAIR_MM + STROKE_TOL_MM,
            `seed ${seed} at (${x}, ${y}, ${z}): core ${fromCore}, level cut ${found.join(' and ') || 'air'}`
          ).toBe(true)
        }
      }
    }
    expect(seen).toBe(12_000)
    expect(atEdges).toBeLessThan(12)
    expect([...kinds].sort()).toEqual(['air', 'pour', 'timber'])
  })

  it('agree on and beside the lines of symmetry of round numbers, where points fall on edges', () => {
    const { geometry: g, events } = stackOf({
      castwright: 1,
      name: 'symmetric',
      outline: { rectangle: [200, 200] },
      mould: { margin: 0 },
      flatten: { back: 0, front: 0 },
      pours: [{ resin: 'medium', depth: 30 }],
      timbers: [
        {
          species: 'ash-white',
          thickness: 20,
          outline: {
            polygon: [
              [-40, -40],
              [40, -40],
              [40, 40],
              [-40, 40]
            ]
          },
          underside: {
            polygon: [
              [-20, -20],
              [20, -20],
              [20, 20],
              [-20, 20]
            ]
          }
        }
      ]
    })
    // The side rises 20 over 20: at |x| = d (20..40) it stands at d − 20.
    for (const [x, y] of [
      [30, 0],
      [0, 30],
      [30, 30],
      [-30, 10],
      [30, -20],
      [25, 25],
      [20, 20],
      [40, 0],
      [20, 0]
    ] as const) {
      const far = Math.max(Math.abs(x), Math.abs(y))
      const core = coreAt(g, events, x, y)
      const timber = core.filter(p => p.material.kind === 'timber')
      const from = Math.max(0, far - 20)
      if (from < 20) {
        expect(timber, `(${x}, ${y})`).toHaveLength(1)
        expect(timber[0]!.from).toBeCloseTo(from, 5)
        expect(timber[0]!.to).toBe(20)
      }
      const resin = core.filter(p => p.material.kind === 'pour').reduce((sum, p) => sum + p.to - p.from, 0)
      expect(resin, `(${x}, ${y})`).toBeCloseTo(30 - (20 - from), 5)
    }
  })

  it('stacks its parts without overlap, from low to high', () => {
    for (let seed = 40; seed < 60; seed++) {
      const { geometry: g, events } = stackOf(seededPiece(seed))
      const c = chance(seed)
      const b = bounds(g.mould)
      for (let n = 0; n < 50; n++) {
        const core = coreAt(g, events, c.span(b.minX, b.maxX), c.span(b.minY, b.maxY))
        core.forEach((p, k) => {
          expect(p.to).toBeGreaterThan(p.from)
          if (k > 0) expect(p.from).toBeGreaterThanOrEqual(core[k - 1]!.to)
        })
      }
    }
  })
})

describe('a core and the solids of the boolean library', () => {
  it('are pierced by a needle at the same heights', () => {
    let pierced = 0
    for (const seed of [3, 7, 12, 19, 65, 156]) {
      const stack = stackOf(seededPiece(seed))
      const c = chance(seed)
      const b = bounds(stack.geometry.outline)
      const points = Array.from({ length: 6 }, (): [number, number] => [
        c.span(b.minX, b.maxX),
        c.span(b.minY, b.maxY)
      ])
      needles(stack, points).forEach((hits, k) => {
        const [x, y] = points[k]!
        if (!inside(stack.geometry.outline, x, y)) return
        // Under a needle 0.002 mm thick a slant of ten in one rises by 0.02; chords of a crown stray less.
        const core = coreAt(stack.geometry, stack.events, x, y).filter(p => p.to - p.from > 0.05)
        for (const p of core) {
          const key = materialKey(p.material)
          const hit = hits.find(
            h => h.key === key && Math.abs(h.from - p.from) < 0.05 && Math.abs(h.to - p.to) < 0.05
          )
          pierced++
          expect(
            hit,
            `seed ${seed} (${x}, ${y}): ${key} ${p.from}..${p.to} in ${JSON.stringify(hits)}`
          ).toBeDefined()
        }
        expect(hits.filter(h => h.to - h.from > 0.1).length).toBeLessThanOrEqual(core.length)
      })
    }
    expect(pierced).toBeGreaterThan(50)
  })
})

function distanceToEdge(cut: LevelCut, x: number, y: number): number {
  return Math.min(...cut.map(p => Math.abs(nearest(p.region, x, y).distanceMm)))
}
