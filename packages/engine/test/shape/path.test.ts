import { SVGPathData } from 'svg-pathdata'
import { describe, expect, it } from 'vitest'
import { DrawingError } from '../../src/shape/drawing-error.ts'
import { area, bounds, nearest } from '../../src/shape/measure.ts'
import { drawPath, parsePath, pathRegion } from '../../src/shape/path.ts'
import { Pen, PointBudget } from '../../src/shape/pen.ts'
import { randomFrom } from './random.ts'

const ring = (d: string) => [...parsePath(d, 0.01).rings[0]!]
const open = (d: string) => parsePath(d, 0.01).open.map(line => [...line])

describe('path data', () => {
  it('reads the grammar’s corners: no separators, implicit lines, relative commands, exponents', () => {
    expect(ring('M10-5L.5.5-1-1z')).toEqual([10, -5, 0.5, 0.5, -1, -1])
    expect(ring('m 1 1 2 0 0 2 z')).toEqual([1, 1, 3, 1, 3, 3])
    expect(ring('M0,0H8V5h-8Z')).toEqual([0, 0, 8, 0, 8, 5, 0, 5])
    expect(ring('M1e1 0 L 2E+1,0 20 1e-1Z')).toEqual([10, 0, 20, 0, 20, 0.1])
    expect(ring('\tM\n0\r0 , 4 0,4 4\fz'.replace('\f', ' '))).toEqual([0, 0, 4, 0, 4, 4])
    expect(open('M+5. 0 L 5 5')).toEqual([[5, 0, 5, 5]])
  })

  it('goes on from the start of the subpath after Z', () => {
    const { rings } = parsePath('M 5 5 h 2 v 2 z l -3 0 l 0 -3 z m 10 0 h 1 v 1 z', 0.01)
    expect(rings.map(r => [...r])).toEqual([
      [5, 5, 7, 5, 7, 7],
      [5, 5, 2, 5, 2, 2],
      [15, 5, 16, 5, 16, 6]
    ])
  })

  it('reflects control points only after a curve of the same kind', () => {
    // The smooth command written out must give the same points.
    const pairs = [
      ['M0 0 C 1 2 3 4 5 0 S 9 9 10 0', 'M0 0 C 1 2 3 4 5 0 C 7 -4 9 9 10 0'],
      ['M0 0 L 5 0 S 9 9 10 0', 'M0 0 L 5 0 C 5 0 9 9 10 0'],
      ['M0 0 Q 2 4 5 0 T 10 0 T 15 0', 'M0 0 Q 2 4 5 0 Q 8 -4 10 0 Q 12 4 15 0'],
      ['M0 0 L 5 0 T 10 0', 'M0 0 L 5 0 Q 5 0 10 0'],
      ['M0 0 Q 2 4 5 0 S 9 9 10 0', 'M0 0 Q 2 4 5 0 C 5 0 9 9 10 0'],
      ['M0 0 c 1 2 3 4 5 0 s 4 9 5 0', 'M0 0 C 1 2 3 4 5 0 C 7 -4 9 9 10 0'],
      ['M1 1 q 2 4 5 0 t 5 0', 'M1 1 Q 3 5 6 1 Q 9 -3 11 1']
    ] as const
    for (const [smooth, written] of pairs) expect(open(smooth), smooth).toEqual(open(written))
  })

  it('reads arc flags joined to what follows, splits full circles, drops arcs without length', () => {
    const circle = pathRegion('M10 0A10 10 0 1110-.00001 10 10 0 0110 0z', 0.001)
    expect(area(circle)).toBeCloseTo(100 * Math.PI, 2)
    expect(open('M0 0A5 5 0 1110 0')).toEqual(open('M0 0 A 5 5 0 1 1 10 0'))
    expect(open('M0 0A0 5 0 1 1 10 0')).toEqual([[0, 0, 10, 0]])
    expect(open('M0 0A5 5 0 1 1 0 0 L 3 0')).toEqual([[0, 0, 3, 0]])
  })

  it('draws the arc on the side the flags say (y down: sweep is clockwise on a screen)', () => {
    const side = (large: 0 | 1, sweep: 0 | 1) => {
      const { minY, maxY } = bounds(pathRegion(`M0 0 A 5 5 0 ${large} ${sweep} 6 0 Z`, 0.001))
      return { above: -minY, below: maxY }
    }
    // Chord 6 of a circle of 5: heights 1 and 9.
    expect(side(0, 1).above).toBeCloseTo(1, 2)
    expect(side(1, 1).above).toBeCloseTo(9, 2)
    expect(side(0, 0).below).toBeCloseTo(1, 2)
    expect(side(1, 0).below).toBeCloseTo(9, 2)
    expect(side(1, 0).above).toBeCloseTo(0, 9)
  })

  it('keeps arcs on their ellipse within the tolerance, where cubics would stray 2.7e-4 of the radius', () => {
    const { rings } = parsePath('M500 0A500 500 0 0 1 -500 0A500 500 0 0 1 500 0Z', 0.001)
    for (let k = 0; k < rings[0]!.length; k += 2) {
      expect(Math.abs(Math.hypot(rings[0]![k]!, rings[0]![k + 1]!) - 500)).toBeLessThan(0.001)
    }
  })

  it('closes what Z closes or what meets its start; all else is open', () => {
    expect(parsePath('M0 0H5V5H0V0', 0.01).rings.length).toBe(1)
    expect(parsePath('M.1.1l.1.2.3-.1-.4-.1', 0.01).rings.length).toBe(1)
    expect(open('M0 0H5V5H0')).toEqual([[0, 0, 5, 0, 5, 5, 0, 5]])
    // There and back: a line, not an area. A point alone: nothing.
    expect(parsePath('M0 0 L 5 0 Z', 0.01)).toEqual({ rings: [], open: [Float64Array.of(0, 0, 5, 0, 0, 0)] })
    expect(parsePath('M0 0 Z M 4 4 M 5 5 L 5 5', 0.01)).toEqual({ rings: [], open: [] })
    expect(parsePath('', 0.01)).toEqual({ rings: [], open: [] })
    expect(parsePath(' \n', 0.01)).toEqual({ rings: [], open: [] })
  })

  it('fills by either rule', () => {
    const d = 'M0 0H9V9H0Z M2 2H4V4H2Z'
    expect(area(pathRegion(d, 0.01))).toBe(81)
    expect(area(pathRegion(d, 0.01, 'evenodd'))).toBe(77)
  })

  it('agrees with the library’s own absolute form on seeded random paths', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed)
      const n = () => ` ${(20 * random() - 10).toFixed(3)}`
      const flag = () => (random() < 0.5 ? ' 0' : ' 1')
      const some = 'LlHhVvCcSsQqTtAaMmZz'
      let d = `M${n()}${n()}`
      for (let k = 0; k < 12; k++) {
        const c = some[Math.floor(random() * some.length)]!
        const lower = c.toLowerCase()
        const counts: Record<string, number> = { m: 2, l: 2, h: 1, v: 1, c: 6, s: 4, q: 4, t: 2, z: 0 }
        d += c
        if (lower === 'a') d += ` ${9 * random()} ${9 * random()}${n()}${flag()}${flag()}${n()}${n()}`
        else for (let i = 0; i < counts[lower]!; i++) d += n()
      }
      const absolute = new SVGPathData(d).toAbs().normalizeHVZ(false).normalizeST().encode()
      const [ours, theirs] = [parsePath(d, 0.01), parsePath(absolute, 0.01)]
      const flat = (p: typeof ours) => [...p.rings, ...p.open].map(line => [...line])
      const [a, b] = [flat(ours), flat(theirs)]
      expect(
        a.map(l => l.length),
        `seed ${seed}: ${d}`
      ).toEqual(b.map(l => l.length))
      const [allOurs, allTheirs] = [a.flat(), b.flat()]
      const off = allOurs.reduce((worst, v, k) => Math.max(worst, Math.abs(v - allTheirs[k]!)), 0)
      expect(off, `seed ${seed}: ${d}`).toBeLessThan(1e-6)
    }
  })

  it('is flattened within the tolerance: dense and coarse readings of the same curve', () => {
    const d = 'M0 0 C 90 10 -40 80 60 70 Q 80 40 50 20 A 30 12 25 0 0 20 -10 Z'
    const fine = pathRegion(d, 1e-5)
    for (const tol of [0.1, 0.01, 0.001]) {
      for (const r of parsePath(d, tol).rings) {
        for (let k = 0; k < r.length; k += 2) {
          expect(Math.abs(nearest(fine, r[k]!, r[k + 1]!).distanceMm)).toBeLessThanOrEqual(tol + 2e-4)
        }
      }
    }
    expect(area(fine)).toBeGreaterThan(1000)
  })
})

describe('bad path data', () => {
  const refused = (d: string): string => {
    try {
      parsePath(d, 0.01)
    } catch (e) {
      if (!(e instanceof DrawingError)) throw e
      return e.message
    }
    return 'accepted'
  }

  it('is refused with the index', () => {
    expect(refused('L 5 5')).toBe('path data: "L" before the first M at index 0')
    expect(refused('5 5 M 0 0')).toBe('path data: a number before the first M at index 0')
    expect(refused('M 0 0 Z 5 5')).toBe('path data: a number after Z, which takes none, at index 8')
    expect(refused('M 0 0 L 1 X 5')).toBe('path data: unexpected "X" at index 10')
    expect(refused('M 0 0 L 007 5')).toMatch(/zeros in front, "007", at index 8/)
    expect(refused('M 0 0 A05 5 0 0 0 5 5')).toMatch(/zeros in front, "05", at index 7/)
    expect(refused('M 0 0 L 5')).toBe('path data: unterminated command at the path end (index 9)')
    expect(refused('M 0 0 L 5 5,')).toMatch(/unterminated.*index 12/)
    expect(refused('M0 0 A 5 5 0 0 2 1 1')).toMatch(/expected a flag, got "2" at index "16"/)
    expect(refused('M0 0 A -5 5 0 0 1 1 1')).toMatch(/expected positive number/)
    expect(refused('M0 0 L - 5')).toMatch(/no number at index 7/)
    expect(refused('none')).toMatch(/unexpected "n" at index 0/)
  })

  it('of numbers that are huge or not finite is refused, not drawn', () => {
    expect(refused('M 0 0 L 1e400 0')).toMatch(/"1e400" at index 8; allowed are −10000000 to 10000000/)
    expect(refused('M 0 0 L 10000001 0')).toMatch(/allowed/)
    expect(refused(`M 0 0 L ${'9'.repeat(400)} 0`)).toMatch(/allowed/)
    expect(refused('M 0 0 L 2000000 0')).toMatch(
      /a point at \(2000000, 0\) mm; allowed are −1000000 to 1000000 mm/
    )
    expect(refused(`M 0 0 ${'l 9e6 0'.repeat(1000)}`)).toMatch(/a point at/)
    expect(refused('M NaN 0 L 1 1')).toMatch(/unexpected "N"/)
    expect(refused('M Infinity 0 L 1 1')).toMatch(/unexpected "I"/)
    expect(refused('M 1e-400 0 L 1 1')).toBe('accepted')
  })

  it('of too many points is refused before they are made', () => {
    expect(() => parsePath('M 0 0 A 900000 900000 0 0 1 900000 900000', 1e-9)).toThrow(
      /more than 1000000 points/
    )
    // Commands that draw nothing count, too.
    const pen = new Pen(0.01, new PointBudget(1000))
    expect(() => drawPath(`M0 0${'z'.repeat(1001)}`, pen)).toThrow(/more than 1000 points/)
    expect(() => parsePath('M0 0 C 9e5 0 0 9e5 9e5 9e5', 1e-7)).toThrow(/more than 1000000 points/)
    expect(() => parsePath('M0 0L1 1', 0)).toThrow(/tolerance/)
    expect(() => parsePath('M0 0L1 1', Number.NaN)).toThrow(/tolerance/)
  })

  it('never gives anything but finite numbers or a DrawingError: 2000 seeded scrambles', () => {
    const base = 'M10-5L.5.5-1-1zm3 3C1 2 3 4 5 0S9 9 10 0Q2 4 5 0T10 0A5 3 20 1 0 4 4a1 1 0 0110 10H5v-2z'
    const letters = 'MmZzLlHhVvCcSsQqTtAa0123456789.-+eE, \n9'
    for (let seed = 1; seed <= 2000; seed++) {
      const random = randomFrom(seed)
      let d = base
      for (let k = 0; k < 1 + 4 * random(); k++) {
        const at = Math.floor(random() * d.length)
        const c = letters[Math.floor(random() * letters.length)]!
        d = random() < 0.5 ? d.slice(0, at) + c + d.slice(at + 1) : d.slice(0, at) + c + d.slice(at)
      }
      try {
        const { rings, open: lines } = parsePath(d, 0.05)
        for (const line of [...rings, ...lines])
          expect(line.every(Number.isFinite), `seed ${seed}: ${d}`).toBe(true)
      } catch (e) {
        expect(e, `seed ${seed}: ${d}`).toBeInstanceOf(DrawingError)
      }
    }
  })
})
