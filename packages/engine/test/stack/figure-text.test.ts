import { describe, expect, it } from 'vitest'
import { area, bounds, ringArea } from '../../src/shape/measure.ts'
import { FIGURE_CHARACTERS, textRegion } from '../../src/stack/figure-outline.ts'
import { textLines } from '../../src/stack/figure-text.ts'

const WANTED = `0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz+-.,/°%'"&`
const at = { x: 10, y: -5 }

describe('figures', () => {
  it('hold digits, letters and the marks of a scale', () => {
    for (const c of WANTED) {
      expect(FIGURE_CHARACTERS.has(c), c).toBe(true)
      expect(textLines(c, at, 10).length, c).toBeGreaterThan(0)
      expect(area(textRegion(c, at, 10, 0.01)), c).toBeGreaterThan(0.5)
    }
  })

  it('have as many holes as the letters have', () => {
    // What everyone knows of the shapes; a "g" of this type has two bowls or a bowl and a tail.
    const holes: Record<string, number> = {
      0: 1,
      1: 0,
      2: 0,
      4: 1,
      6: 1,
      8: 2,
      9: 1,
      A: 1,
      B: 2,
      C: 0,
      D: 1,
      O: 1,
      P: 1,
      e: 1,
      '°': 1,
      '%': 2,
      '+': 0
    }
    for (const [c, count] of Object.entries(holes)) {
      const { rings } = textRegion(c, at, 10, 0.01)
      expect(rings.filter(r => ringArea(r) < 0).length, c).toBe(count)
    }
    expect(textRegion('%', at, 10, 0.01).rings.filter(r => ringArea(r) > 0)).toHaveLength(3)
  })

  it('stand about their middle, numerals as high as asked', () => {
    for (const text of ['1', '12', '0', 'H', '360']) {
      const lines = bounds({ rings: textLines(text, at, 8) })
      expect((lines.minX + lines.maxX) / 2).toBeCloseTo(10, 9)
      expect(lines.maxY - lines.minY).toBeCloseTo(8, 9)
      expect((lines.minY + lines.maxY) / 2).toBeCloseTo(-5, 9)
      const outlines = bounds(textRegion(text, at, 8, 0.01))
      expect((outlines.minX + outlines.maxX) / 2).toBeCloseTo(10, 3)
      // Round ones overshoot, capitals stand a tenth higher.
      expect(Math.abs(outlines.maxY - outlines.minY - 8)).toBeLessThan(text === 'H' ? 0.8 : 0.25)
    }
  })

  it('grow with their height and run one after the other', () => {
    const wide = (text: string, height: number) => {
      const b = bounds({ rings: textLines(text, at, height) })
      return b.maxX - b.minX
    }
    expect(wide('12', 16)).toBeCloseTo(2 * wide('12', 8), 9)
    // Of the data: a "1" begins 20 units before what follows, 21 units are the height.
    expect(wide('11', 21) - wide('1', 21)).toBeCloseTo(20, 9)
    expect(area(textRegion('88', at, 8, 0.01))).toBeCloseTo(2 * area(textRegion('8', at, 8, 0.01)), 3)
  })

  it('leave out what they do not know', () => {
    expect(textLines('☃', at, 8)).toEqual([])
    expect(textLines('1☃2', at, 8)).toEqual(textLines('12', at, 8))
    expect(textRegion('☃', at, 8, 0.01).rings).toEqual([])
  })
})
