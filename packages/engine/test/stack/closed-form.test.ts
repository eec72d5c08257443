import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { coreAt } from '../../src/stack/core.ts'
import { freeSpace, levelFor } from '../../src/stack/free.ts'
import { volumeBetween } from '../../src/stack/solid.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { plainPiece, stackOf } from './build.ts'

type TimberDocument = NonNullable<PieceDocument['timbers']>[number]

const square = (side: number): TimberDocument['outline'] => ({ rectangle: [side, side] })
const timberOf = (more: Partial<TimberDocument>): TimberDocument => ({
  species: 'ash-white',
  outline: square(100),
  thickness: 12,
  ...more
})
/** Volume of a single timber's body, mm³. */
const bodyMm3 = (more: Partial<TimberDocument>, tolerance = 0.01): number => {
  const { geometry } = stackOf(plainPiece({ tolerance, timbers: [timberOf(more)] }))
  const body = geometry.timbers[0]!
  return volumeBetween(body, body.base, body.high)
}

describe('bodies of timber', () => {
  it('have the volume of a prism', () => {
    expect(bodyMm3({})).toBeCloseTo(100 * 100 * 12, 6)
  })

  it('have the volume of a frustum, h/3·(A + a + √(Aa)), and its part up to a height', () => {
    const { geometry } = stackOf(plainPiece({ timbers: [timberOf({ underside: square(60) })] }))
    const body = geometry.timbers[0]!
    expect(volumeBetween(body, 0, 12)).toBeCloseTo((12 / 3) * (100 ** 2 + 60 ** 2 + 100 * 60), 6)
    // Half way up the square is 80 wide.
    expect(volumeBetween(body, 0, 6)).toBeCloseTo((6 / 3) * (80 ** 2 + 60 ** 2 + 80 * 60), 6)
    expect(volumeBetween(body, 6, 12)).toBeCloseTo((6 / 3) * (100 ** 2 + 80 ** 2 + 100 * 80), 6)
  })

  it('come to a cone as the lower edge shrinks, π·h/3·(R² + Rr + r²)', () => {
    for (const d of [60, 8, 0.5]) {
      const [R, r] = [40, d / 2]
      const cone = ((Math.PI * 12) / 3) * (R * R + R * r + r * r)
      const ours = bodyMm3({ outline: { circle: 80 }, underside: { circle: d } })
      // Polygons of unequal numbers of corners are joined: their chords differ along the side.
      expect(Math.abs(ours - cone) / cone, `to ${d} mm`).toBeLessThan(3e-4)
    }
  })

  it('carry two thirds of width × rise under a crown, and lose it under a hollow', () => {
    expect(bodyMm3({ crown: { rise: 6 } })).toBeCloseTo(100 * 100 * (12 + (2 / 3) * 6), 6)
    expect(bodyMm3({ crown: { rise: -6 } })).toBeCloseTo(100 * 100 * (12 - (2 / 3) * 6), 6)
    expect(bodyMm3({ crown: { rise: 6, along: 90 } })).toBeCloseTo(100 * 100 * 16, 6)
  })

  it('carry under a diagonal crown what the integral over the square says', () => {
    // Ridge along the diagonal: u = (y − x)/√2 with |u| ≤ h = 100/√2; mean of u² over the square is 100²/12.
    const h = 100 / Math.SQRT2
    const mean = 1 - 100 ** 2 / 12 / (h * h)
    expect(bodyMm3({ crown: { rise: 6, along: 45 } })).toBeCloseTo(100 * 100 * (12 + 6 * mean), 6)
  })

  it('follow a measured grid by two triangles a cell', () => {
    // Over a triangle the mean is the mean of its corners.
    const rises = [
      [0, 3],
      [1, 2]
    ]
    const mean = ((0 + 3 + 2) / 3 + (0 + 2 + 1) / 3) / 2
    expect(bodyMm3({ measured: { from: [-50, -50], step: [100, 100], rises } })).toBeCloseTo(
      1e4 * (12 + mean),
      6
    )
  })

  it('go on level beyond the measured points', () => {
    // Points at ±25 in a square of ±50: corners hold a quarter of the square at the corner heights, the bands
    // beside the cell hold the means of two corners, the cell holds its own mean.
    const rises = [
      [0, 3],
      [1, 2]
    ]
    const cell = 2500 * (((0 + 3 + 2) / 3 + (0 + 2 + 1) / 3) / 2)
    const corners = 625 * (0 + 3 + 1 + 2)
    const bands = 25 * 50 * ((0 + 3) / 2 + (1 + 2) / 2 + (0 + 1) / 2 + (3 + 2) / 2)
    const ours = bodyMm3({ measured: { from: [-25, -25], step: [50, 50], rises } })
    expect(ours).toBeCloseTo(1e4 * 12 + cell + corners + bands, 6)
  })
})

describe('free volume', () => {
  it('of the bare mould is area times height, and its level comes back from it', () => {
    const { geometry: g } = stackOf(plainPiece())
    const space = freeSpace(g, [], null, 0)
    expect(space.volumeTo(20)).toBeCloseTo(300 * 200 * 20, 6)
    expect(levelFor(space, 300 * 200 * 7.5, 2000)).toBeCloseTo(7.5, 6)
    expect(levelFor(space, 0, 2000)).toBe(0)
    expect(levelFor(space, 300 * 200 * 2001, 2000)).toBe(Number.POSITIVE_INFINITY)
  })

  it('C35: a gallon covers 6.42, 3.21 and 1.60 square feet at 1/4, 1/2 and 1 inch', () => {
    // US gallon 231 cubic inches (exact): 231/(144·t) square feet at t inches.
    const gallonMl = (231 * 25.4 ** 3) / 1000
    for (const [depth, inches, published] of [
      ['1/4 in', 0.25, 6.42],
      ['1/2 in', 0.5, 3.21],
      ['1 in', 1, 1.6]
    ] as const) {
      const { pours } = stackOf(
        plainPiece({ outline: { rectangle: ['12 in', '12 in'] }, pours: [{ resin: 'medium', depth }] })
      )
      const squareFeet = gallonMl / pours[0]!.filledMl
      expect(squareFeet).toBeCloseTo(231 / (144 * inches), 9)
      expect(Math.abs(squareFeet - published)).toBeLessThan(0.006)
    }
  })

  it('C35: a litre is a square metre a millimetre deep', () => {
    const { pours } = stackOf(
      plainPiece({ outline: { rectangle: ['1 m', '1 m'] }, pours: [{ resin: 'medium', depth: 1 }] })
    )
    expect(pours[0]!.filledMl).toBeCloseTo(1000, 9)
  })

  it('C23: the gap under a slab that does not lie flat is filled too, once', () => {
    const timbers = [timberOf({ outline: { rectangle: [200, 150] }, thickness: 40 })]
    const pours = [
      { resin: 'medium', depth: 10 },
      { resin: 'medium', depth: 10 }
    ]
    const flat = stackOf(plainPiece({ timbers, pours }))
    const hollow = stackOf(plainPiece({ timbers: [{ ...timbers[0]!, level: 3 }], pours }))
    // 3 mm at the worst, half of it on average, over 200 × 150 mm: 45 ml.
    expect(hollow.pours[0]!.filledMl - flat.pours[0]!.filledMl).toBeCloseTo((200 * 150 * 1.5) / 1000, 6)
    expect(hollow.pours[1]!.filledMl).toBeCloseTo(flat.pours[1]!.filledMl, 6)
  })

  it('O18: a live edge undercut 20 mm along two 1.6 m edges takes 1.44 l more than drawn straight', () => {
    const slab = (side: 1 | -1, undercut: boolean): TimberDocument => {
      const edge = (inner: number): TimberDocument['outline'] => ({
        polygon: [
          [side * inner, -800],
          [side * 400, -800],
          [side * 400, 800],
          [side * inner, 800]
        ]
      })
      return {
        species: 'walnut-black',
        thickness: 45,
        outline: edge(100),
        ...(undercut ? { underside: edge(120) } : {})
      }
    }
    const litres = (undercut: boolean) =>
      stackOf(
        plainPiece({
          outline: { rectangle: [800, 1600] },
          timbers: [slab(1, undercut), slab(-1, undercut)],
          pours: [{ resin: 'deep', height: 45 }]
        })
      ).pours[0]!.filledMl / 1000
    expect(litres(false)).toBeCloseTo((200 * 45 * 1600) / 1e6, 9)
    expect(litres(true) - litres(false)).toBeCloseTo((2 * (20 * 45) * 1600) / 2 / 1e6, 9)
  })

  it('between a full plank and the resin over it begins at the plank', () => {
    const { pours } = stackOf(
      plainPiece({
        timbers: [timberOf({ outline: { rectangle: [300, 200] }, thickness: 18, crown: { rise: 3 } })],
        pours: [{ resin: 'medium', depth: 5 }]
      })
    )
    // Over its lowest place, the edges: the crown takes two thirds of 3 mm out of 5.
    expect(pours[0]!.floor).toBe(18)
    expect(pours[0]!.level).toBe(23)
    expect(pours[0]!.filledMl).toBeCloseTo((300 * 200 * (5 - 2)) / 1000, 6)
  })

  it('under a timber held off the floor is open', () => {
    const {
      pours,
      geometry: g,
      events
    } = stackOf(plainPiece({ timbers: [timberOf({ base: 4 })], pours: [{ resin: 'medium', depth: 10 }] }))
    expect(pours[0]!.filledMl).toBeCloseTo((300 * 200 * 10 - 100 * 100 * 6) / 1000, 6)
    expect(coreAt(g, events, 0, 0)).toEqual([
      { from: 0, to: 4, material: { kind: 'pour', index: 0 } },
      { from: 4, to: 16, material: { kind: 'timber', index: 0 } }
    ])
  })
})

describe('pours', () => {
  it('are poured deeper by what they fall: 20 mm stand of 20/(1 − fall)', () => {
    const { pours } = stackOf(plainPiece(), { levelFall: 0.04, densityGMl: 1.1 })
    expect(pours[0]!.depth).toBe(20)
    expect(pours[0]!.liquidLevel).toBeCloseTo(20 / 0.96, 6)
    expect(pours[0]!.massG).toBeCloseTo((1200 / 0.96) * 1.1, 6)
  })

  it('to the timber stand level with its lowest top when poured, and lower after cure', () => {
    const { pours } = stackOf(
      plainPiece({
        timbers: [
          timberOf({ outline: { rectangle: [100, 200], at: [-100, 0] }, thickness: 24 }),
          timberOf({ outline: { rectangle: [100, 200], at: [100, 0] }, thickness: 30, crown: { rise: -4 } })
        ],
        pours: [{ resin: 'medium', fill: 'timber' }]
      }),
      { levelFall: 0.05 }
    )
    expect(pours[0]!.liquidLevel).toBe(24)
    expect(pours[0]!.liquidMl).toBeCloseTo((100 * 200 * 24) / 1000, 6)
    expect(pours[0]!.level).toBeCloseTo(24 * 0.95, 6)
  })

  it('behind a dam stay there, and the next goes over both sides', () => {
    const { pours } = stackOf(
      plainPiece({
        pours: [
          { resin: 'medium', depth: 8, region: { rectangle: [100, 200], at: [-100, 0] } },
          { resin: 'medium', depth: 12, region: { rectangle: [200, 200], at: [50, 0] } },
          { resin: 'medium', height: 15 }
        ]
      })
    )
    expect(pours.map(p => p.floor)).toEqual([0, 0, 8])
    expect(pours[0]!.filledMl).toBeCloseTo((100 * 200 * 8) / 1000, 6)
    expect(pours[1]!.filledMl).toBeCloseTo((200 * 200 * 12) / 1000, 6)
    expect(pours[2]!.filledMl).toBeCloseTo((100 * 200 * 7 + 200 * 200 * 3) / 1000, 6)
  })

  it('round a former leave it out, above and below it too', () => {
    const {
      pours,
      geometry: g,
      events
    } = stackOf(
      plainPiece({
        mould: { margin: 0, formers: [{ shape: { rectangle: [40, 50] }, from: 3, to: 9 }] },
        pours: [{ resin: 'medium', depth: 12 }]
      })
    )
    expect(pours[0]!.filledMl).toBeCloseTo((300 * 200 * 12 - 40 * 50 * 6) / 1000, 6)
    expect(coreAt(g, events, 0, 0).map(p => [p.from, p.to])).toEqual([
      [0, 3],
      [9, 12]
    ])
  })

  it('with stones need the less by the stones: all, a zone between heights, single ones', () => {
    const liquid = (stones: NonNullable<PieceDocument['pours'][number]['stones']>) =>
      stackOf(plainPiece({ pours: [{ resin: 'medium', depth: 20, stones }] }), {
        levelFall: 0.02,
        stonesFill: [0.4]
      }).pours[0]!
    const kind = 'river-gravel'
    expect(liquid([{ kind, all: true }]).liquidMl).toBeCloseTo((1200 * 0.6) / 0.98, 6)
    expect(liquid([{ kind, zone: { rectangle: [100, 50] }, from: 2, to: 10 }]).stonesMl).toBeCloseTo(
      (100 * 50 * 8 * 0.4) / 1000,
      6
    )
    // An ellipsoid of 22 × 20 × 6 mm, π/6 of its box; one whose middle stands at the level is half in.
    const whole = ((Math.PI / 6) * 22 * 20 * 6) / 1000
    expect(liquid([{ kind, placed: [{ at: [0, 0], size: [22, 20, 6] }] }]).stonesMl).toBeCloseTo(whole, 9)
    expect(liquid([{ kind, placed: [{ at: [0, 0], size: [22, 20, 6], height: 17 }] }]).stonesMl).toBeCloseTo(
      whole / 2,
      9
    )
  })
})

describe('finished volumes', () => {
  it('of overlapping cuts from both faces count what they share once', () => {
    const pocket = (face: 'front' | 'back', x: number, depth: number) => ({
      face,
      shape: { rectangle: [60, 40] as [number, number], at: [x, 0] as [number, number] },
      depth
    })
    // Side by side they overlap on 20 × 40; together 26 deep in 20 they meet there.
    const volume = finishedVolumes(
      stackOf(plainPiece({ cuts: [pocket('front', 0, 12), pocket('back', 40, 14)] }))
    ).get('pour 0')!
    expect(volume * 1000).toBeCloseTo(300 * 200 * 20 - 60 * 40 * 12 - 60 * 40 * 14 + 20 * 40 * 6, 4)
  })

  it('of grooves: a V of L·w·d/2 and a cone, a ball of its segment, a flat one with round ends', () => {
    const taken = (cut: object) =>
      300 * 200 * 20 -
      finishedVolumes(
        stackOf(
          plainPiece({
            cuts: [
              {
                face: 'front',
                along: {
                  points: [
                    [-50, 0],
                    [50, 0]
                  ]
                },
                ...cut
              }
            ]
          })
        )
      ).get('pour 0')! *
        1000
    const half = 4 * Math.tan(Math.PI / 6)
    const v = 100 * half * 4 + (Math.PI * half * half * 4) / 3
    expect(Math.abs(taken({ profile: 'v', angle: 60, depth: 4 }) - v) / v).toBeLessThan(2e-4)
    // A ball of radius 5, 3 deep: segment r²·acos((r−h)/r) − (r−h)·√(2rh − h²), cap π·h²·(3r − h)/3.
    const segment = 25 * Math.acos(2 / 5) - 2 * Math.sqrt(2 * 5 * 3 - 9)
    const ball = 100 * segment + (Math.PI * 9 * (15 - 3)) / 3
    expect(Math.abs(taken({ profile: 'round', width: 10, depth: 3 }) - ball) / ball).toBeLessThan(2e-4)
    // Deeper than its radius it goes on straight.
    const deep = 100 * ((Math.PI * 25) / 2 + 10 * 4) + (2 / 3) * Math.PI * 125 + Math.PI * 25 * 4
    expect(Math.abs(taken({ profile: 'round', width: 10, depth: 9 }) - deep) / deep).toBeLessThan(2e-4)
    const flat = (100 * 6 + Math.PI * 9) * 7
    expect(Math.abs(taken({ profile: 'flat', width: 6, depth: 7 }) - flat) / flat).toBeLessThan(1e-6)
  })

  it('add up to outline times thickness where nothing is cut away', () => {
    const stack = stackOf(
      plainPiece({
        mould: { margin: 8 },
        flatten: { back: 1, front: 2 },
        timbers: [timberOf({ underside: square(80), crown: { rise: 2 }, thickness: 15 })],
        pours: [
          { resin: 'medium', depth: 9 },
          { resin: 'medium', depth: 14 }
        ]
      })
    )
    const total = [...finishedVolumes(stack).values()].reduce((a, b) => a + b, 0)
    expect(total).toBeCloseTo((300 * 200 * 20) / 1000, 4)
  })
})
