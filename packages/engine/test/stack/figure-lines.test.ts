import { describe, expect, it } from 'vitest'
import type { Marking } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { area, bounds } from '../../src/shape/measure.ts'
import { coreAt } from '../../src/stack/core.ts'
import { figureLines, figureRegion } from '../../src/stack/figure-lines.ts'
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
})
