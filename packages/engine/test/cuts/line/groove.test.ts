import { describe, expect, it } from 'vitest'
import { groovePath } from '../../../src/cuts/line/groove.ts'
import { markingPath } from '../../../src/cuts/line/marking.ts'
import { lineDistance, riseAt, vDepthMm } from '../../../src/stack/groove.ts'
import { cutterOf, faultsOf, jobOf, leftAt, pathOf, tipPlaces, waysOf } from './carved.ts'

const bent = Float64Array.of(0, 0, 30, 0, 30, 20, 45, 26)
const closed = Float64Array.of(0, 0, 40, 0, 40, 30, 0, 30, 0, 0)
const points: (readonly [number, number])[] = []
for (let x = -8; x <= 54; x += 1.7) for (let y = -9; y <= 38; y += 1.3) points.push([x, y])

// The profile of the stack about the middle line is what must be left: an independent expression of the same shape.
const expected = (line: Float64Array, profile: Parameters<typeof riseAt>[0], floor: number) =>
  points.map(([x, y]) => {
    const rise = riseAt(profile, lineDistance([line], x, y))
    return rise === null ? 0 : Math.min(0, floor + rise)
  })

// Grows by what the places near an edge may differ: chords and steps stray a few hundredths.
function compare(
  line: Float64Array,
  profile: Parameters<typeof riseAt>[0],
  floor: number,
  left: readonly number[],
  tol: number
) {
  const want = expected(line, profile, floor)
  let seen = 0
  points.forEach(([x, y], i) => {
    const d = lineDistance([line], x, y)
    if (profile.kind !== 'v' && Math.abs(d - profile.widthMm / 2) < 0.06) return
    if (want[i]! < 0) seen++
    expect(Math.abs(left[i]! - want[i]!), `${x} ${y}`).toBeLessThan(tol)
  })
  expect(seen).toBeGreaterThan(20)
}

describe('a groove', () => {
  for (const [name, line] of [
    ['bent', bent],
    ['closed', closed]
  ] as const) {
    it(`${name}, flat, as wide as the cutter or wider`, () => {
      for (const across of [6, 4, 2.5])
        for (const allowanceMm of [0, 0.3]) {
          const cutter = cutterOf('flat', across)
          const job = jobOf(cutter, -5, { allowanceMm, stepMm: across * 0.4 })
          const profile = { kind: 'flat', widthMm: 6, angleDeg: 60 } as const
          const path = pathOf(groovePath(job, [line], profile))
          expect(faultsOf(path, job)).toEqual([])
          compare(line, profile, -5, leftAt(tipPlaces(path, 0.1), cutter, points), 1e-9)
        }
    })

    it(`${name}, round, as wide as the ball or wider`, () => {
      for (const across of [8, 5]) {
        const cutter = cutterOf('ball', across)
        const job = jobOf(cutter, -5)
        const profile = { kind: 'round', widthMm: 8, angleDeg: 60 } as const
        const path = pathOf(groovePath(job, [line], profile))
        expect(faultsOf(path, job)).toEqual([])
        // Ridges of the wider one: 0.02 mm along the normal, more up a steep side.
        compare(line, profile, -5, leftAt(tipPlaces(path, 0.1), cutter, points), across === 8 ? 0.02 : 0.1)
      }
    })

    it(`${name}, V, sharp and blunt`, () => {
      for (const tipMm of [0, 0.3]) {
        const cutter = cutterOf('v', 12, { tipMm })
        const floor = -vDepthMm(4, 60)
        const job = jobOf(cutter, floor)
        const profile = { kind: 'v', widthMm: 4, angleDeg: 60 } as const
        const path = pathOf(groovePath(job, [line], profile))
        const left = leftAt(tipPlaces(path, 0.1), cutter, points)
        // A blunt tip leaves its flat: higher by tip/2/tan 30° at the very middle, the width at the face the same.
        compare(line, profile, floor, left, tipMm === 0 ? 0.01 : tipMm / 2 / Math.tan(Math.PI / 6) + 0.01)
      }
    })
  }

  it('enters no steeper than its ramp and no deeper a pass than allowed', () => {
    const job = jobOf(cutterOf('flat', 6), -5, { rampDeg: 3, depthMm: 2 })
    const profile = { kind: 'flat', widthMm: 6, angleDeg: 60 } as const
    for (const line of [bent, Float64Array.of(0, 0, 1.5, 0)]) {
      const path = pathOf(groovePath(job, [line], profile))
      expect(path.passes.map(p => p.name)).toEqual([
        'groove, pass 1 of 3, 1.7 deep',
        'groove, pass 2 of 3, 3.3 deep',
        'groove, pass 3 of 3, 5 deep'
      ])
      let [x, y, z] = [0, 0, 0]
      for (const m of path.moves) {
        if (m.kind === 'dwell') continue
        const way = Math.hypot(m.x - x, m.y - y)
        if (m.kind === 'line' && way > 0 && m.z < z)
          expect(((z - m.z) / way) * (1 - 1e-9)).toBeLessThanOrEqual(Math.tan((3 * Math.PI) / 180))
        ;[x, y, z] = [m.x, m.y, m.z]
      }
    }
  })

  it('that cannot be made says why', () => {
    const flat = { kind: 'flat', widthMm: 6, angleDeg: 60 } as const
    const v = { kind: 'v', widthMm: 0, angleDeg: 60 } as const
    expect(groovePath(jobOf(cutterOf('flat', 8), -3), [bent], flat)).toMatchObject({ largestMm: 6 })
    expect(groovePath(jobOf(cutterOf('ball', 6), -3), [bent], flat)).toHaveProperty('says')
    expect(groovePath(jobOf(cutterOf('v', 6, { angleDeg: 90 }), -3), [bent], v)).toHaveProperty('says')
    // 3 deep at 60° is 3.46 wide.
    expect(groovePath(jobOf(cutterOf('v', 3.4), -3), [bent], v)).toHaveProperty('says')
    expect(groovePath(jobOf(cutterOf('v', 3.5), -3), [bent], v)).toHaveProperty('moves')
  })
})

describe('a marking', () => {
  // A scale of 60 lines about a ring.
  const ticks = Array.from({ length: 60 }, (_, k) => {
    const a = (((k * 37) % 60) * Math.PI) / 30
    return Float64Array.of(100 * Math.cos(a), 100 * Math.sin(a), 92 * Math.cos(a), 92 * Math.sin(a))
  })
  const job = jobOf(cutterOf('v', 6, { tipMm: 0.2 }), -vDepthMm(1.4, 60))

  it('is as wide at the face as it was asked to be, though the tip is blunt', () => {
    const line = Float64Array.of(0, 0, 30, 0)
    const places = tipPlaces(pathOf(markingPath(job, [line], 60)), 0.05)
    const side = (y: number) => leftAt(places, job.cutter, [[15.025, y]])[0]!
    expect(side(0.69)).toBeLessThan(0)
    expect(side(-0.69)).toBeLessThan(0)
    expect(side(0.71)).toBe(0)
    expect(side(-0.71)).toBe(0)
  })

  it('takes every line once, down at plunge feed, by a short way', () => {
    const path = pathOf(markingPath(job, ticks, 60))
    expect(faultsOf(path, job)).toEqual([])
    expect(path.passes).toHaveLength(60)
    const downs = path.moves.filter(m => m.kind === 'line' && m.feedMmMin === 400)
    expect(downs).toHaveLength(60)
    const { feedMm, rapidMm } = waysOf(path)
    expect(feedMm).toBeCloseTo(60 * 8, 6)
    // Round the ring once, at its inner or outer end: 59 steps of 2·100·sin 3°, and no way back.
    expect(rapidMm).toBeLessThan(59 * 200 * Math.sin(Math.PI / 60))
    expect(rapidMm).toBeGreaterThan(59 * 184 * Math.sin(Math.PI / 60) - 1e-6)
  })

  it('of a deep line comes back the same way, pass by pass', () => {
    const deep = jobOf(cutterOf('v', 12), -5, { depthMm: 2 })
    const path = pathOf(markingPath(deep, [Float64Array.of(0, 0, 10, 0)], 60))
    expect(path.moves.map(m => (m.kind === 'dwell' ? '' : `${m.kind} ${m.x} ${m.z.toFixed(2)}`))).toEqual([
      'rapid 0 5.00',
      'rapid 0 1.00',
      'line 0 -1.67',
      'line 10 -1.67',
      'line 10 -3.33',
      'line 0 -3.33',
      'line 0 -5.00',
      'line 10 -5.00',
      'rapid 10 5.00'
    ])
  })

  it('narrower than the blunt tip cannot be made', () => {
    const fine = jobOf(cutterOf('v', 6, { tipMm: 0.5 }), -vDepthMm(0.4, 60))
    expect(markingPath(fine, ticks, 60)).toHaveProperty('says')
  })
})
