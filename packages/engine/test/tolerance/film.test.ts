import { describe, expect, it } from 'vitest'
import { cornerGapMm, sideGapForCornerMm } from '../../src/tolerance/corner.ts'
import { acrossAfterFilmMm, depthAfterFilmMm } from '../../src/tolerance/film.ts'

describe('films', () => {
  // Worked: 3 coats of 25 µm are 0.075 on each wall.
  it('take two films from a hole and give two to a peg', () => {
    expect(acrossAfterFilmMm(10, 0.075, 'hole')).toBeCloseTo(9.85, 12)
    expect(acrossAfterFilmMm(10, 0.075, 'peg')).toBeCloseTo(10.15, 12)
  })
  it('take one from a depth, and none when its face is coated alike', () => {
    expect(depthAfterFilmMm(10, 0.075, 0)).toBeCloseTo(9.925, 12)
    expect(depthAfterFilmMm(10, 0.075, 0.075)).toBe(10)
    expect(depthAfterFilmMm(10, 0, 2.5)).toBe(12.5)
  })
  it('refuse what is no film', () => {
    expect(() => acrossAfterFilmMm(10, -0.1, 'hole')).toThrow(/film is -0.1 mm/)
    expect(() => depthAfterFilmMm(-1, 0, 0)).toThrow(/depth is -1 mm/)
  })
})

/** The slow twin: the least distance from a dense outline of the part's corner to that of the pocket. */
function twin(side: number, cutter: number, part: number): number {
  const arc = (radius: number, off: number): [number, number][] =>
    Array.from({ length: 2001 }, (_, k) => {
      const a = Math.PI + ((Math.PI / 2) * k) / 2000
      return [off + radius + radius * Math.cos(a), off + radius + radius * Math.sin(a)]
    })
  let least = side
  const wall = arc(cutter, 0)
  for (const [x, y] of part === 0 ? [[side, side] as const] : arc(part, side)) {
    // Beyond the arc of the pocket its straight sides are `side` away.
    if (x >= cutter || y >= cutter) continue
    const out = Math.hypot(x - cutter, y - cutter) > cutter
    const near = Math.min(...wall.map(([u, v]) => Math.hypot(x - u, y - v)))
    least = Math.min(least, out ? -near : near)
  }
  return least
}

describe('a square part in a round corner', () => {
  it.each([
    [1, 3, 0],
    [0.5, 3, 0],
    [0.5, 3, 2],
    [1, 1.5, 0],
    [2, 6, 1],
    [0.2, 0.1, 0]
  ])('side gap %d, cutter radius %d, part radius %d', (d, r, p) => {
    expect(cornerGapMm(d, r, p)).toBeCloseTo(twin(d, r, p), 2)
  })
  it('goes in from 0.293 of the radius', () => {
    expect(sideGapForCornerMm(3, 0)).toBeCloseTo(3 * (1 - Math.SQRT1_2), 12)
    expect(cornerGapMm(sideGapForCornerMm(3, 0), 3, 0)).toBeCloseTo(0, 12)
    expect(sideGapForCornerMm(2, 3)).toBe(0)
  })
})
