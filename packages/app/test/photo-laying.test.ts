import { describe, expect, it } from 'vitest'
import type { Homography } from '../../engine/src/draw/perspective.ts'
import { pxToMm } from '../../engine/src/draw/perspective.ts'
import type { Laid } from '../src/photo/laying.ts'
import { errorAt, mapOf, middleAt, readLaid, sidesAsSeen, unlaid } from '../src/photo/laying.ts'
import { outlinePatch, placeInTrace, timberPatch, tracedRing } from '../src/photo/trace-ring.ts'
import {
  gridPaths,
  gridStep,
  pulled,
  sheetOf,
  toPad,
  toPlan,
  whole,
  zoomed
} from '../src/photo/trace-view.ts'
import type { Place } from './photo-picture.ts'
import { camera } from './photo-picture.ts'

const SIZE = [2400, 1800] as const
const LENS = camera([150, -260, 720], [170, 150], 2900, SIZE)
const SHEET: Place[] = [
  [0, 0],
  [210, 0],
  [210, 297],
  [0, 297]
]
const laidBySheet: Laid = { ...unlaid(SIZE), marks: SHEET.map(p => LENS.see(...p)), at: [0, 0] }
const twoPoints: Laid = {
  ...unlaid(SIZE),
  way: 'distance',
  marks: [
    [400, 900],
    [1400, 900]
  ],
  distanceMm: 250,
  at: [0, 0]
}

/** Seeded, two normals at a time: Box and Muller 1958 (memory) over Lehmer's generator (memory). */
function normals(seed: number): () => number {
  let state = seed
  const even = () => {
    state = (state * 48271) % 2147483647
    return state / 2147483647
  }
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even())
}

describe('how a photo lies', () => {
  it('undoes what the camera did, moved and turned on the plan', () => {
    const h = mapOf({ ...laidBySheet, at: [40, -25], turnDeg: 90 })
    if ('problem' in h) throw new Error(h.problem)
    for (const [x, y] of [
      [345, 150],
      [-80, 220],
      [210, 297]
    ] as const) {
      const got = pxToMm(h, ...LENS.see(x, y))!
      // A quarter turn against the clock sends (x, y) to (−y, x).
      expect(got[0]).toBeCloseTo(40 - y, 6)
      expect(got[1]).toBeCloseTo(-25 + x, 6)
    }
  })

  it('expects of two points the error that seeded trials show', () => {
    const normal = normals(12345)
    const [a, b] = twoPoints.marks as [Place, Place]
    const at = (s: Place, t: Place, p: Place): Place => {
      const scale = 250 / Math.hypot(t[0] - s[0], t[1] - s[1])
      return [scale * (p[0] - s[0]), -scale * (p[1] - s[1])]
    }
    const off = (p: Place): Place => [p[0] + normal(), p[1] + normal()]
    for (const place of [a, b, [900, 1500], [2300, 100]] as Place[]) {
      const true0 = at(a, b, place)
      let squares = 0
      const trials = 20_000
      for (let k = 0; k < trials; k++) {
        const [x, y] = at(off(a), off(b), off(place))
        squares += (x - true0[0]) ** 2 + (y - true0[1]) ** 2
      }
      // 20,000 trials know a standard deviation to about 0.5 %; four of those, and the second order.
      expect(Math.abs(errorAt(twoPoints, place) / Math.sqrt(squares / trials) - 1)).toBeLessThan(0.02)
    }
  })

  it('has no error to tell while marks are missing', () => {
    expect(errorAt({ ...twoPoints, marks: [[1, 1]] }, [5, 5])).toBe(Number.POSITIVE_INFINITY)
    expect(mapOf({ ...laidBySheet, marks: [] })).toHaveProperty('problem')
  })

  it('turns the sides of a sheet as it is seen to lie', () => {
    expect(sidesAsSeen(laidBySheet.marks, [297, 210])).toEqual([210, 297])
    expect(sidesAsSeen([...laidBySheet.marks.slice(1), laidBySheet.marks[0]!], [210, 297])).toEqual([
      297, 210
    ])
    expect(sidesAsSeen([], [210, 297])).toEqual([210, 297])
  })

  it('brings the middle of the photo to a place of the plan', () => {
    const laid = { ...laidBySheet, turnDeg: 30 }
    const h = mapOf({ ...laid, at: middleAt(laid, [500, -200]) })
    if ('problem' in h) throw new Error(h.problem)
    const [x, y] = pxToMm(h, 1200, 900)!
    expect(Math.abs(x - 500)).toBeLessThanOrEqual(0.5)
    expect(Math.abs(y + 200)).toBeLessThanOrEqual(0.5)
  })

  it('reads back what was kept, in px of the picture at hand, and refuses the rest', () => {
    const kept = { ...twoPoints, trace: [[10, 20]] }
    expect(readLaid(JSON.parse(JSON.stringify(kept)), SIZE)).toEqual(kept)
    expect(readLaid(kept, [1200, 900])).toMatchObject({ trace: [[5, 10]], sizePx: [1200, 900] })
    expect(readLaid({ ...kept, at: null }, SIZE)?.at).toBeNull()
    for (const bad of [
      null,
      7,
      'laid',
      [],
      {},
      { ...kept, way: 'guess' },
      { ...kept, marks: [[1, 2, 3]] },
      { ...kept, marks: new Array(9).fill([1, 2]) },
      { ...kept, trace: [[Number.NaN, 1]] },
      { ...kept, trace: new Array(5000).fill([1, 2]) },
      { ...kept, at: [1e9, 0] },
      { ...kept, distanceMm: -3 },
      { ...kept, sizePx: [0, 0] },
      { ...kept, turnDeg: '90' }
    ])
      expect(readLaid(bad, SIZE)).toBeNull()
  })
})

describe('what was traced', () => {
  const mm: Homography = [1, 0, 0, 0, -1, 0, 0, 0, 1]

  it('is a ring in tenths of a millimetre without repeats', () => {
    const ring = tracedRing(
      [
        [0, 0],
        [0.04, 0.01],
        [100.06, 0],
        [100, 49.96],
        [0.02, 0]
      ],
      mm
    )
    expect(ring).toEqual([
      [0, 0],
      [100.1, 0],
      [100, -50]
    ])
  })

  it('is refused where it cannot be a part', () => {
    const bow: Place[] = [
      [0, 0],
      [40, 40],
      [40, 0],
      [0, 40]
    ]
    expect(tracedRing(bow, mm)).toHaveProperty('problem', expect.stringContaining('(20.0, -20.0)'))
    expect(tracedRing(bow.slice(0, 2), mm)).toHaveProperty('problem', '2 points; allowed: at least 3')
    expect(
      tracedRing(
        [
          [0, 0],
          [2, 0],
          [0, 2]
        ],
        mm
      )
    ).toHaveProperty('problem', expect.stringContaining('2.0 mm²'))
    // Behind the horizon v = 1000 of this map nothing lies flat.
    expect(
      tracedRing(
        [
          [0, 0],
          [9, 1500],
          [50, 5]
        ],
        [1, 0, 0, 0, 1, 0, 0, -0.001, 1]
      )
    ).toHaveProperty('problem')
  })

  it('takes a press between its neighbours on the line, elsewhere at the end', () => {
    const line: Place[] = [
      [0, 0],
      [100, 0],
      [100, 100]
    ]
    expect(placeInTrace(line, [50, 3], 5)).toBe(1)
    expect(placeInTrace(line, [97, 50], 5)).toBe(2)
    expect(placeInTrace(line, [50, 20], 5)).toBe(3)
    // Ahead of the end, however near: presses follow one another closely.
    expect(placeInTrace(line, [100, 101], 5)).toBe(3)
    expect(placeInTrace(line, [98, 103], 5)).toBe(3)
    // The stretch that would close it is open.
    expect(placeInTrace(line, [50, 50], 5)).toBe(3)
    expect(placeInTrace([], [1, 1], 5)).toBe(0)
  })

  it('becomes a timber like those of the piece, under a name of its own', () => {
    const polygon: Place[] = [
      [0, 0],
      [9, 0],
      [0, 9]
    ]
    const like = { id: 'traced', species: 'walnut-black', thickness: '1 in', moisture: 9 }
    expect(timberPatch({ timbers: [like] }, polygon, 'traced')).toEqual([
      { op: 'add', path: '/timbers/-', value: { ...like, id: 'traced 2', outline: { polygon } } }
    ])
    expect(timberPatch({}, polygon, 'traced')[0]).toMatchObject({ op: 'add', path: '/timbers' })
    expect(outlinePatch({}, polygon)[0]).toMatchObject({ op: 'add', path: '/outline' })
  })
})

describe('the view of the pad', () => {
  const size = [800, 600] as const

  it('keeps the place under the pointer while it grows', () => {
    const v = { middle: [30, -40] as const, scale: 2 }
    for (const about of [
      [0, 0],
      [123, 456],
      [800, 600]
    ] as const) {
      const before = toPlan(sheetOf(v, size), about)
      const after = toPlan(sheetOf(zoomed(v, size, about, 1.7), size), about)
      expect(after[0]).toBeCloseTo(before[0], 9)
      expect(after[1]).toBeCloseTo(before[1], 9)
    }
  })

  it('shows a box whole, up above, and follows a pull', () => {
    const v = whole({ minX: 0, minY: 0, maxX: 400, maxY: 100 }, size)
    const s = sheetOf(v, size)
    const [left, bottom] = toPad(s, [0, 0])
    const [right, top] = toPad(s, [400, 100])
    expect(left).toBeGreaterThan(0)
    expect(right).toBeLessThan(800)
    expect(right - left).toBeGreaterThan(600)
    expect(top).toBeLessThan(bottom)
    const moved = toPad(sheetOf(pulled(v, 12, -7), size), [0, 0])
    expect(moved[0]).toBeCloseTo(left + 12, 9)
    expect(moved[1]).toBeCloseTo(bottom - 7, 9)
  })

  it('draws as many lines as fit, the tenth ones apart', () => {
    const view = { middle: [0, 0], scale: 1 } as const
    const { fine, coarse } = gridPaths(view, size)
    expect(gridStep(view)).toBe(10)
    // 81 upright lines from −400 to 400 mm and 61 level ones from −300 to 300; every tenth: 9 and 7.
    expect(coarse.match(/M/g)).toHaveLength(9 + 7)
    expect(fine.match(/M/g)).toHaveLength(81 - 9 + 61 - 7)
    expect(gridStep({ middle: [0, 0], scale: 60 })).toBe(1)
  })
})
