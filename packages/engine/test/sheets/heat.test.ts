import { describe, expect, it } from 'vitest'
import type { PeakMap } from '../../src/cast/whole/whole-cast.ts'
import { METRIC } from '../../src/quantity/shown-units.ts'
import { heatDrawn, layerAt } from '../../src/sheets/heat.ts'
import type { Mark } from '../../src/sheets/mark.ts'
import type { PageView } from '../../src/sheets/page-data.ts'

/** A made map: each layer by a law of its own, 1 mm cells of 100 × 60 mm about the middle of the plan. */
function made(laws: readonly ((x: number, y: number) => number)[]): PeakMap {
  const [nx, ny] = [100, 60]
  const peakC = new Float32Array(nx * ny * laws.length)
  laws.forEach((law, iz) => {
    for (let iy = 0; iy < ny; iy++)
      for (let ix = 0; ix < nx; ix++) peakC[(iz * ny + iy) * nx + ix] = law(ix + 0.5 - 50, iy + 0.5 - 30)
  })
  const facesMm = Array.from({ length: laws.length + 1 }, (_, k) => 5 * k)
  return { nx, ny, dxMm: 1, dyMm: 1, x0: -50, y0: -30, facesMm, peakC }
}

const VIEW: PageView = {
  id: 'wide',
  face: 'front',
  scale: 0.5,
  originX: 40,
  originY: 30,
  widthMm: 80,
  heightMm: 60
}
const WITHIN = { minX: -50, maxX: 50, minY: -30, maxY: 30 }
const lines = (marks: readonly Mark[], ink: string) =>
  marks.flatMap(m => (m.kind === 'path' && m.ink === ink ? [m.lines] : []))

describe('the highest temperatures over the plan', () => {
  // A ramp along x: its contours are straight lines across, known in closed form.
  const ramp = made([(x: number) => 30 + 0.1 * x, (x: number) => 60 + 0.2 * x])

  it('draws the contours of a ramp as straight lines where the ramp has that temperature', () => {
    const { levels, marks, rangeC } = heatDrawn(ramp, 2, { view: VIEW, shown: METRIC, within: WITHIN })
    expect(rangeC[0]).toBeCloseTo(25.05, 4)
    expect(rangeC[1]).toBeCloseTo(34.95, 4)
    expect(levels.map(l => l.words)).toEqual(['26', '28', '30', '32', '34'])
    const contours = lines(marks, 'outline')
    contours.forEach((segments, k) => {
      const x = 40 + 0.5 * ((levels[k]!.tempC - 30) / 0.1)
      expect(segments).toHaveLength(59)
      for (const s of segments) for (const at of [s[0]!, s[2]!]) expect(at).toBeCloseTo(x, 3)
    })
  })

  it('lays the pencil where it is warmer than the level, and nowhere else', () => {
    const { levels, marks } = heatDrawn(ramp, 2, { view: VIEW, shown: METRIC, within: WITHIN })
    lines(marks, 'hatch').forEach((strokes, k) => {
      const x = 40 + 0.5 * ((levels[k]!.tempC - 30) / 0.1)
      const all = strokes.flatMap(s => [s[0]!, s[2]!])
      expect(all.length).toBeGreaterThan(10)
      expect(Math.min(...all)).toBeGreaterThan(x - 1e-6)
      expect(Math.min(...all)).toBeLessThan(x + 2)
    })
  })

  it('mirrors left and right for the back, and takes the layer that holds the height', () => {
    const back = heatDrawn(ramp, 2, { view: { ...VIEW, face: 'back' }, shown: METRIC, within: WITHIN })
    const warm = back.levels.findIndex(l => l.words === '34')
    expect(lines(back.marks, 'outline')[warm]![0]![0]).toBeCloseTo(40 - 0.5 * 40, 3)
    expect([-3, 0, 4.9, 5, 9.9, 40].map(z => layerAt(ramp, z))).toEqual([0, 0, 0, 1, 1, 1])
  })

  it('shows the limit for clear work in its own ink, in either unit', () => {
    const high = heatDrawn(ramp, 7, { view: VIEW, shown: METRIC, within: WITHIN })
    expect(high.levels.map(l => l.words)).toContain('60')
    expect(lines(high.marks, 'limit')[0]![0]![0]).toBeCloseTo(40, 3)
    // 50 to 70 °C are 122 to 158 °F: 140 °F is the limit.
    const inches = heatDrawn(ramp, 7, {
      view: VIEW,
      shown: { ...METRIC, temperature: '°F' },
      within: WITHIN
    })
    expect(inches.levels.map(l => l.words)).toEqual(['130', '140', '150'])
    expect(lines(inches.marks, 'limit')).toHaveLength(1)
  })

  it('leaves out what is not cast, and draws nothing on an even layer', () => {
    const half = made([x => (x < 0 ? Number.NaN : 30 + 0.1 * x)])
    const { marks } = heatDrawn(half, 1, { view: VIEW, shown: METRIC, within: WITHIN })
    for (const s of [...lines(marks, 'hatch'), ...lines(marks, 'outline')].flat())
      expect(s[0]).toBeGreaterThan(39.9)
    const even = heatDrawn(made([() => 22]), 1, { view: VIEW, shown: METRIC, within: WITHIN })
    expect([even.levels, even.marks.filter(m => m.kind === 'path')]).toEqual([[], []])
  })
})
