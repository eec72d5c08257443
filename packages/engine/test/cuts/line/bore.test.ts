import { describe, expect, it } from 'vitest'
import { borePath, pointMm } from '../../../src/cuts/line/bore.ts'
import { cutterOf, faultsOf, jobOf, leftAt, pathOf, tipPlaces } from './carved.ts'

const at = (diameterMm: number, through = false) => [{ x: 20, y: -10, diameterMm, through }]
// Places on circles about the middle of the hole.
const circles = (radii: readonly number[]) =>
  radii.flatMap(r =>
    Array.from({ length: 24 }, (_, k): [number, number] => [
      20 + r * Math.cos((k * Math.PI) / 12),
      -10 + r * Math.sin((k * Math.PI) / 12)
    ])
  )

describe('a bore', () => {
  // The exact shape: a cylinder with a flat floor.
  for (const [across, allowanceMm] of [
    [8, 0],
    [11, 0],
    [30, 0],
    [30, 0.3]
  ] as const)
    for (const arcs of [true, false])
      it(`of ${across} mm by a cutter of 6, allowance ${allowanceMm}, ${arcs ? 'arcs' : 'chords'}, is a cylinder`, () => {
        const cutter = cutterOf('flat', 6)
        const job = jobOf(cutter, -7, { allowanceMm }, { arcs })
        const path = pathOf(borePath(job, at(across)))
        expect(faultsOf(path, job)).toEqual([])
        const places = tipPlaces(path, 0.05)
        const inner = [0, 0.2, 0.4, 0.6, 0.8, 0.95].map(s => (s * across) / 2)
        for (const z of leftAt(places, cutter, circles([...inner, across / 2 - 0.02]))) expect(z).toBe(-7)
        for (const z of leftAt(places, cutter, circles([across / 2 + 0.01, across / 2 + 2])))
          expect(z).toBe(0)
      })

  it('goes down no steeper than the ramp allows and no deeper a turn than a pass', () => {
    const job = jobOf(cutterOf('flat', 6), -7, { rampDeg: 3, depthMm: 1.5 })
    let [x, y, z] = [0, 0, 0]
    let steepest = 0
    for (const m of pathOf(borePath(job, at(11))).moves) {
      if (m.kind === 'arc') {
        expect(m.x).toBe(x)
        expect(m.y).toBe(y)
        steepest = Math.max(steepest, (z - m.z) / (2 * Math.PI * Math.hypot(x - m.cx, y - m.cy)))
        expect(z - m.z).toBeLessThanOrEqual(1.5 + 1e-9)
        expect(m.clockwise).toBe(false)
      }
      if (m.kind !== 'dwell') [x, y, z] = [m.x, m.y, m.z]
    }
    expect((Math.atan(steepest) * 180) / Math.PI).toBeGreaterThan(2)
    expect((Math.atan(steepest) * 180) / Math.PI).toBeLessThanOrEqual(3 + 1e-9)
  })

  it('by a drill of its size is pecked, and goes its point past the floor when it is open there', () => {
    // Machining data: 118° 0.300·D, 90° 0.5·D.
    expect(pointMm(1, 118)).toBeCloseTo(0.3, 3)
    expect(pointMm(8, 90)).toBeCloseTo(4, 12)
    const job = jobOf(cutterOf('drill', 8), -20, { depthMm: 4 })
    const through = pathOf(borePath(job, at(8, true)))
    expect(faultsOf(through, job)).toEqual([])
    const low = Math.min(...through.moves.map(m => (m.kind === 'dwell' ? 0 : m.z)))
    expect(low).toBeCloseTo(-20 - 4 / Math.tan((59 * Math.PI) / 180), 9)
    let from = 0
    for (const m of through.moves)
      if (m.kind === 'line') {
        expect(from - m.z).toBeLessThanOrEqual(4 + 1e-9)
        from = m.z
      }
    const blind = pathOf(borePath(job, at(8)))
    expect(Math.min(...blind.moves.map(m => (m.kind === 'dwell' ? 0 : m.z)))).toBe(-20)
  })

  it('that cannot be made says which cutter would do', () => {
    expect(borePath(jobOf(cutterOf('flat', 10), -5), at(8))).toMatchObject({ largestMm: 8 })
    expect(borePath(jobOf(cutterOf('drill', 6), -5), at(8))).toMatchObject({ largestMm: 8 })
    expect(borePath(jobOf(cutterOf('ball', 6), -5), at(8))).toHaveProperty('says')
    const blunt = borePath(jobOf(cutterOf('flat', 7, { plunges: false }), -5), at(8))
    expect(blunt).toHaveProperty('says')
    const most = 'says' in blunt ? blunt.largestMm! : 0
    // The cutter named does.
    expect(borePath(jobOf(cutterOf('flat', most, { plunges: false }), -5), at(8))).toHaveProperty('moves')
    expect(borePath(jobOf(cutterOf('flat', 6, { reachMm: 20 }), -25), at(8))).toHaveProperty('says')
  })
})
