import { describe, expect, it } from 'vitest'
import { chain, dimension } from '../../src/sheets/dimension.ts'
import type { ArrowMark, LineMark, Mark, TextMark } from '../../src/sheets/mark.ts'
import { FIGURE_MM, textWidthMm } from '../../src/sheets/mark.ts'

const arrows = (marks: readonly Mark[]) => marks.filter((m): m is ArrowMark => m.kind === 'arrow')
const texts = (marks: readonly Mark[]) => marks.filter((m): m is TextMark => m.kind === 'text')
const lines = (marks: readonly Mark[]) => marks.filter((m): m is LineMark => m.kind === 'line')

describe('a dimension', () => {
  it('has its arrowheads on the ends of what it measures, pointing outward where there is room', () => {
    const marks = dimension({ from: [10, 40], to: [70, 40], off: 6, words: '240' })
    expect(arrows(marks).map(a => [a.at, a.directionDeg])).toEqual([
      [[10, 46], 180],
      [[70, 46], 0]
    ])
    expect(texts(marks)[0]).toMatchObject({ text: '240', anchor: 'middle' })
    expect(texts(marks)[0]!.at[0]).toBe(40)
    expect(texts(marks)[0]!.at[1]).toBeGreaterThan(46)
  })

  it('measures alike in either direction and on either side', () => {
    for (const off of [6, -6]) {
      const forth = arrows(dimension({ from: [5, 0], to: [5, 30], off, words: '30' })).map(a => a.at)
      const back = arrows(dimension({ from: [5, 30], to: [5, 0], off, words: '30' })).map(a => a.at)
      expect(forth).toEqual(back)
      expect(forth).toEqual([
        [5 + off, 0],
        [5 + off, 30]
      ])
    }
  })

  it('starts its extension lines beside the edge and ends them past the dimension line', () => {
    const extension = lines(dimension({ from: [0, 10], to: [20, 10], off: -5, words: '20' })).slice(0, 2)
    for (const l of extension) {
      expect(l.from[1]).toBeLessThan(10)
      expect(l.from[1]).toBeGreaterThan(9)
      expect(l.to[1]).toBeLessThan(5)
    }
  })

  it('puts arrowheads outside a short span, and the figure beside it', () => {
    const marks = dimension({ from: [10, 0], to: [12, 0], off: 5, words: '8.4' })
    expect(arrows(marks).map(a => a.directionDeg)).toEqual([0, 180])
    expect(texts(marks)[0]!.at[0] - textWidthMm('8.4', FIGURE_MM) / 2).toBeGreaterThan(12)
    const upright = dimension({ from: [0, 0], to: [0, 2], off: -5, words: '8.4' })
    expect(texts(upright)[0]!.turnDeg).toBeUndefined()
  })

  it('refuses a slanted span', () => {
    expect(() => dimension({ from: [0, 0], to: [10, 1], off: 5, words: '10' })).toThrow(/slanted/)
  })

  it('leaves out in a chain only the figures that have no room', () => {
    const marks = chain([0, 40, 41, 90], 0, -6, ['160', '4', '196'])
    expect(texts(marks).map(t => t.text)).toEqual(['160', '196'])
    expect(arrows(marks)).toHaveLength(6)
  })
})
