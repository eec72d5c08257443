import { describe, expect, it } from 'vitest'
import type { EdgeTouch, Mark } from '../../../src/cuts/pins/registered.ts'
import { registered } from '../../../src/cuts/pins/registered.ts'
import { chance } from '../../stack/random.ts'

type Place = readonly [number, number]

function moved([x, y]: Place, deg: number, sx: number, sy: number): [number, number] {
  const a = (deg * Math.PI) / 180
  return [Math.cos(a) * x - Math.sin(a) * y + sx, Math.sin(a) * x + Math.cos(a) * y + sy]
}

// Slow twin: turns are tried in ever finer steps; for each the best shift is the difference of the middles.
function twin(marks: readonly Mark[]): { deg: number; sum: number } {
  const n = marks.length
  const sumAt = (deg: number) => {
    const lies = marks.map(m => moved(m.drawn, deg, 0, 0))
    const sx = marks.reduce((s, m, i) => s + m.measured[0] - lies[i]![0], 0) / n
    const sy = marks.reduce((s, m, i) => s + m.measured[1] - lies[i]![1], 0) / n
    return marks.reduce(
      (s, m, i) => s + (m.measured[0] - lies[i]![0] - sx) ** 2 + (m.measured[1] - lies[i]![1] - sy) ** 2,
      0
    )
  }
  let [best, step] = [0, 4]
  for (let k = 0; k < 12; k++, step /= 8) {
    const from = best
    for (let i = -12; i <= 12; i++) if (sumAt(from + i * step) < sumAt(best)) best = from + i * step
  }
  return { deg: best, sum: sumAt(best) }
}

describe('a piece found by its marks', () => {
  it('gives exact turns and shifts back', () => {
    for (let seed = 1; seed <= 50; seed++) {
      const { span, whole } = chance(seed)
      const [deg, sx, sy] = [span(-170, 170), span(-20, 20), span(-20, 20)]
      const marks = Array.from({ length: whole(2, 6) }, (): Mark => {
        const drawn: Place = [span(-300, 300), span(-200, 200)]
        return { drawn, measured: moved(drawn, deg, sx, sy) }
      })
      const found = registered(marks)
      expect(found.turnDeg).toBeCloseTo(deg, 9)
      expect(found.shiftX).toBeCloseTo(sx, 9)
      expect(found.shiftY).toBeCloseTo(sy, 9)
      expect(found.scale).toBeCloseTo(1, 9)
      expect(found.rootMeanSquareMm).toBeLessThan(1e-9)
      expect(found.outliers).toEqual([])
    }
  })

  it('finds the best turn of noisy places: a slow search finds none better', () => {
    for (let seed = 1; seed <= 20; seed++) {
      const { span } = chance(100 + seed)
      const marks = Array.from({ length: 5 }, (): Mark => {
        const drawn: Place = [span(-300, 300), span(-200, 200)]
        const [x, y] = moved(drawn, 1.5, 3, -2)
        return { drawn, measured: [x + span(-0.2, 0.2), y + span(-0.2, 0.2)] }
      })
      const found = registered(marks)
      const slow = twin(marks)
      expect(found.turnDeg).toBeCloseTo(slow.deg, 6)
      expect(5 * found.rootMeanSquareMm ** 2).toBeLessThanOrEqual(slow.sum * (1 + 1e-9))
    }
  })

  it('shows what is left, the scale of two marks, and names the one place that is off', () => {
    const two = registered([
      { drawn: [-100, 0], measured: [-100.1, 0] },
      { drawn: [100, 0], measured: [100.1, 0] }
    ])
    expect(two.scale).toBeCloseTo(1.001, 12)
    expect(two.residualsMm.map(r => Number(r.toFixed(6)))).toEqual([0.1, 0.1])
    const drawn: Place[] = [
      [-200, -80],
      [200, -80],
      [200, 80],
      [-200, 80],
      [0, 90]
    ]
    const marks = drawn.map((d, i): Mark => {
      const [x, y] = moved(d, 0.3, 1, 2)
      return { drawn: d, measured: i === 3 ? [x + 1.2, y] : [x, y] }
    })
    const found = registered(marks)
    expect(found.worst).toBe(3)
    expect(found.outliers).toEqual([3])
    expect(registered(marks.filter((_, i) => i !== 3)).turnDeg).toBeCloseTo(0.3, 9)
  })

  // The edges of a rectangle 300 × 200, touched with a tip of radius 3 from outside: the tip's middle is drawn, moved.
  it('takes edges touched with a tip, as lines', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const { span } = chance(seed)
      const [deg, sx, sy] = [span(-4, 4), span(-5, 5), span(-5, 5)]
      const touch = (on: Place, outDeg: number, along: number): EdgeTouch => {
        const a = (outDeg * Math.PI) / 180
        const tip: Place = [
          on[0] + 3 * Math.cos(a) - along * Math.sin(a),
          on[1] + 3 * Math.sin(a) + along * Math.cos(a)
        ]
        return { on, outDeg, measured: moved(tip, deg, sx, sy), radiusMm: 3 }
      }
      // It is not known where along the edge it was touched.
      const edges = [
        touch([150, 0], 0, span(-80, 0)),
        touch([150, 0], 0, span(20, 80)),
        touch([0, 100], 90, span(-100, 100))
      ]
      const found = registered([], edges)
      expect(found.turnDeg).toBeCloseTo(deg, 8)
      expect(found.shiftX).toBeCloseTo(sx, 7)
      expect(found.shiftY).toBeCloseTo(sy, 7)
      // With a mark as well, all three agree.
      const mark: Mark = { drawn: [-60, 20], measured: moved([-60, 20], deg, sx, sy) }
      expect(registered([mark], edges).rootMeanSquareMm).toBeLessThan(1e-8)
    }
  })

  it('says when the places do not settle it', () => {
    const mark: Mark = { drawn: [5, 5], measured: [6, 5] }
    const edge: EdgeTouch = { on: [150, 0], outDeg: 0, measured: [153, 10], radiusMm: 3 }
    expect(() => registered([mark])).toThrow(/1 marks and 0 edges touched; allowed/)
    expect(() => registered([mark, mark])).toThrow(/one place/)
    expect(() => registered([], [edge, edge, { ...edge, measured: [153, 40] }])).toThrow(
      /free to shift or turn/
    )
  })
})
