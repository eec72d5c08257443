import { describe, expect, it } from 'vitest'
import type { Marking } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { edgeDistance, edgeTree } from '../../src/shape/edge-tree.ts'
import { area, bounds, inside } from '../../src/shape/measure.ts'
import { offset } from '../../src/shape/offset.ts'
import { coreAt } from '../../src/stack/core.ts'
import { coreGrid } from '../../src/stack/core-grid.ts'
import { figureLines, figureRegion } from '../../src/stack/figure-lines.ts'
import { levelCut } from '../../src/stack/level-cut.ts'
import { plainPiece, stackOf } from './build.ts'

const marked = (more: Record<string, unknown> = {}) =>
  plainPiece({
    markings: [
      {
        id: 'scale',
        lines: [
          [
            [-50, 0],
            [-40, 0]
          ]
        ],
        width: 1,
        numerals: [{ text: '7', at: [20, 30], height: 10 }],
        ...more
      } as never
    ]
  })
const marking = (more: Record<string, unknown> = {}): Marking =>
  checkPiece(marked(more), 'test').value.markings[0]!

describe('numerals of a marking', () => {
  it('are cut along with its lines: as deep, and filled with them', () => {
    const stack = stackOf(marked({ filled: [{ pigment: 'black-paste', percent: 3 }] }))
    // The stroke of a "7" along the top: at 35, on either side of the middle.
    const deep = 0.5 / Math.tan(Math.PI / 6)
    for (const [x, y] of [
      [20, 35],
      [-45, 0]
    ] as const) {
      const core = coreAt(stack.geometry, stack.events, x, y)
      expect(core.at(-1)!.material.kind).toBe('marking')
      expect(core.at(-1)!.to - core.at(-1)!.from).toBeCloseTo(deep, 6)
    }
    for (const [x, y] of [
      [20, 33.9],
      [20, 36.1],
      [16, 27]
    ] as const)
      expect(coreAt(stack.geometry, stack.events, x, y).at(-1)!.material.kind).toBe('pour')
  })

  it('read from the face they are on: mirrored on the plan of the back', () => {
    const front = figureLines(marking())
    const back = figureLines(marking({ face: 'back' }))
    expect(back).toEqual(front.map(l => l.map((v, k) => (k % 2 === 0 ? 40 - v : v))))
    // A "7" leans: its foot lies left of the middle from the front, so that it is no mirror image of itself.
    const foot = (lines: readonly Float64Array[]) => {
      const all = lines.flatMap(l =>
        Array.from({ length: l.length / 2 }, (_, k) => [l[2 * k]!, l[2 * k + 1]!])
      )
      return all.sort((a, b) => a[1]! - b[1]!)[0]![0]!
    }
    expect(foot(front)).toBeLessThan(20)
    expect(foot(back)).toBeGreaterThan(20)
  })

  it('as outlines are a region of the same place and height', () => {
    const m = marking({ figures: 'outline' })
    expect(figureLines(m)).toEqual([])
    expect(figureRegion(marking(), 0.01).rings).toEqual([])
    const b = bounds(figureRegion(m, 0.01))
    expect((b.minX + b.maxX) / 2).toBeCloseTo(20, 3)
    expect((b.minY + b.maxY) / 2).toBeCloseTo(30, 0)
    expect(b.maxY - b.minY).toBeCloseTo(10, 0)
    const back = figureRegion(marking({ figures: 'outline', face: 'back' }), 0.01)
    expect(area(back)).toBeCloseTo(area(figureRegion(m, 0.01)), 3)
  })

  it('as outlines are as deep in the stack as their distance from the edge says', () => {
    for (const face of ['front', 'back'] as const) {
      const document = marked({
        figures: 'outline',
        face,
        sandedAfter: 0.4,
        numerals: [{ text: '8', at: [20, 30], height: 16 }]
      })
      const stack = stackOf(document)
      const region = figureRegion(stack.piece.markings[0]!, 0.004)
      const tree = edgeTree(region.rings)
      const b = bounds(region)
      const at = (x: number, y: number) => coreAt(stack.geometry, stack.events, x, y)
      const box = { minX: b.minX - 1, minY: b.minY - 1, maxX: b.maxX + 1, maxY: b.maxY + 1 }
      const grid = coreGrid(stack.geometry, stack.events, box, 0.4, [stack.finishedLow, stack.finishedHigh])
      let cut = 0
      for (let p = 0; p < grid.at.length; p++) {
        const [x, y] = [
          box.minX + ((p % grid.nx) + 0.5) * 0.4,
          box.minY + (Math.floor(p / grid.nx) + 0.5) * 0.4
        ]
        const d = edgeDistance(tree, x, y)
        const depth = inside(region, x, y) ? d / Math.tan(Math.PI / 6) : 0
        const core = at(x, y)
        const left =
          face === 'front' ? stack.finishedHigh - core.at(-1)!.to : core[0]!.from - stack.finishedLow
        expect(left).toBeCloseTo(depth, 6)
        if (depth > 0.05) cut++
        // The grid tells heights apart in steps of 0.1.
        const kind = grid.cores[grid.at[p]!]!
        const seen =
          face === 'front' ? stack.finishedHigh - kind.at(-1)!.to : kind[0]!.from - stack.finishedLow
        expect(Math.abs(seen - depth)).toBeLessThan(0.11)
      }
      expect(cut).toBeGreaterThan(60)
      const z = face === 'front' ? stack.finishedHigh - 0.5 : stack.finishedLow + 0.5
      const taken =
        300 * 200 - levelCut(stack.geometry, stack.events, z).reduce((sum, q) => sum + area(q.region), 0)
      const inner = offset(region, -0.5 * Math.tan(Math.PI / 6), { join: 'round', tolMm: 0.005 })
      // The line of the scale is there as well: a capsule 10 long, as wide as half a millimetre under the face leaves.
      const half = 0.5 - 0.5 * Math.tan(Math.PI / 6)
      expect(taken).toBeCloseTo(area(inner) + 20 * half + Math.PI * half * half, 0)
    }
  })
})
