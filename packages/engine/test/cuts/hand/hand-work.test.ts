import { describe, expect, it } from 'vitest'
import { routerPasses } from '../../../src/cuts/hand/pass-depth.ts'
import { sledPlan } from '../../../src/cuts/hand/sled.ts'
import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import type { ShopDocument } from '../../../src/piece/shop-schema.ts'
import { worked } from '../../cases/asked.ts'
import { PLAIN } from '../../findings/harness.ts'

type Cut = NonNullable<PieceDocument['cuts']>[number]
const pocket: Cut = {
  id: 'pocket',
  face: 'back',
  shape: { rectangle: [60, 36], corner: 4, at: [100, 0] },
  depth: 8,
  way: 'router'
}
const hand = (cut: Cut, shop: ShopDocument = { castwright: 1 }) =>
  worked({ piece: { ...PLAIN, cuts: [cut] }, shop }).hand.find(h => h.of === 'cut')!

describe('a cut by hand', () => {
  it('a pocket by router: bit 8 for corners of 4, the bush it goes through, and the passes', () => {
    const h = hand(pocket)
    expect(h.doing!.bitMm).toBe(8)
    expect(h.doing!.bushMm).toBe(17)
    expect(h.doing!.offsetMm).toBe(4.5)
    expect(h.doing!.leastRadiusMm).toBe(4)
    expect(h.doing!.openingCornerMm).toBe(8.5)
    expect(h.doing!.corners).toEqual([])
    // Ash tears: 2.4 at most a pass.
    expect(h.doing!.passes).toEqual({ count: 4, eachMm: 2 })
    expect(h.doing!.reach).toEqual({ needMm: 17, hasMm: 30 })
  })

  it('bush 14 and bit 8, as in the drawing of the trade: 3.0', () => {
    const h = hand(pocket, { castwright: 1, hand: { bushes: [14, 24], bits: [{ diameter: 8, length: 20 }] } })
    expect([h.doing!.bushMm, h.doing!.offsetMm]).toEqual([14, 3])
  })

  it('corners of 2 stay uncut with the smallest bit of 6: four corners, each (√2 − 1)·(3 − 2)', () => {
    const h = hand({ ...pocket, shape: { rectangle: [60, 36], corner: 2, at: [100, 0] } })
    expect(h.doing!.bitMm).toBe(6)
    expect(h.doing!.corners).toHaveLength(4)
    for (const c of h.doing!.corners) expect(c.leftMm).toBeCloseTo(Math.SQRT2 - 1, 1)
  })

  it('a groove as wide as a bit takes that bit', () => {
    const h = hand({
      id: 'channel',
      kind: 'groove',
      face: 'back',
      along: {
        points: [
          [100, -40],
          [100, 40]
        ]
      },
      width: 12,
      depth: 6,
      way: 'router'
    })
    expect(h.doing!.bitMm).toBe(12)
    expect(h.doing!.corners).toEqual([])
  })

  it('says why the other ways will not do', () => {
    const why = Object.fromEntries(hand(pocket).ways.map(w => [w.way, w.why]))
    expect(why).toMatchObject({
      machine: 'none in this shop',
      router: 'bush 17, bit 8',
      drill: 'no: not round',
      saw: 'no: closed pocket',
      sled: 'no: closed pocket'
    })
  })

  it('a bore by drill; one that no bit makes says the largest there is', () => {
    const bore: Cut = {
      id: 'hole',
      kind: 'bore',
      face: 'front',
      shape: { circle: 8, at: [100, 0] },
      through: true,
      way: 'drill'
    }
    expect(hand(bore).doing).toMatchObject({ tool: 'drill 8', bitMm: 8 })
    expect(hand(bore).doing!.holes[0]).toMatchObject({ x: 100, y: 0, diameterMm: 8 })
    const large = hand({ ...bore, shape: { circle: 79.4, at: [100, 0] } })
    expect(large.doing).toBeNull()
    expect(large.cannot).toBe('no bit of 79.4; the largest is 60')
    expect(large.ways.find(w => w.way === 'router')!.possible).toBe(true)
  })

  it('an outline by saw: sides across the grain first', () => {
    const trim = worked({ piece: PLAIN }).hand.find(h => h.of === 'trim')!
    expect(trim.way).toBe('saw')
    expect(trim.doing!.does.join(' ')).toContain('Leave 0.5 mm outside the line')
    expect(trim.doing!.does.join(' ')).toContain('First the 2 sides across the grain')
  })

  it('no pins where nothing is cut by machine; pins where one cut is', () => {
    const machine = { x: 600, y: 400 }
    const kinds = (cut: Cut, shop: ShopDocument = { castwright: 1, machine }) =>
      worked({ piece: { ...PLAIN, cuts: [cut] }, shop }).steps.map(s => s.kind)
    expect(kinds(pocket)).not.toContain('drill pins')
    expect(kinds({ ...pocket, way: 'sent out' })).not.toContain('drill pins')
    expect(kinds({ ...pocket, way: 'machine' })).toContain('drill pins')
    // In a shop without a machine it is cut by hand, whatever is written.
    expect(kinds({ ...pocket, way: 'machine' }, { castwright: 1 })).not.toContain('drill pins')
  })

  it('without a machine both faces are flattened on the sled; with one they are not', () => {
    expect(
      worked({ piece: PLAIN })
        .hand.filter(h => h.of === 'flatten')
        .map(h => h.face)
    ).toEqual(['back', 'front'])
    const machine = { x: 600, y: 400 }
    expect(
      worked({ piece: PLAIN, shop: { castwright: 1, machine } }).hand.some(h => h.of === 'flatten')
    ).toBe(false)
  })
})

describe('sled', () => {
  const job = {
    lengthMm: 800,
    widthMm: 400,
    bitMm: 32,
    baseMm: 160,
    takeOffMm: 1.4,
    routerG: 4000,
    beamThicknessMm: 18,
    beamHeightMm: 60
  }

  it('rails as long as the work, the cutter and the foot; 2 passes of 0.7', () => {
    const plan = sledPlan(job)
    expect(plan.railsMm).toBe(800 + 32 + 160)
    expect(plan.spanMm).toBe(400 + 32 + 40)
    expect(plan.passes).toEqual({ count: 2, eachMm: 0.7 })
  })

  it('its rows leave no strip uncut: painted row by row', () => {
    for (const lengthMm of [50, 333, 800, 1234]) {
      const { rows } = sledPlan({ ...job, lengthMm })
      let reached = 0
      for (let k = 0; k < rows; k++) {
        const middle = k * 0.6 * 32
        expect(middle - 16).toBeLessThanOrEqual(reached)
        reached = middle + 16
      }
      expect(reached).toBeGreaterThanOrEqual(lengthMm)
    }
  })

  it('sags eight times as much over twice the span, its own weight left aside', () => {
    const sag = (widthMm: number) => sledPlan({ ...job, widthMm, baseMm: 1 }).sagMm
    expect(sag(928) / sag(428)).toBeGreaterThan(7.9)
    expect(sag(928) / sag(428)).toBeLessThan(9)
  })
})

describe('passes', () => {
  it('C87 9.5 mm are three passes of 3.2, four where it tears', () => {
    expect(routerPasses(9.5, 12, false).count).toBe(3)
    expect(routerPasses(9.5, 12, true).count).toBe(4)
  })

  it('a thin bit goes half its diameter', () => {
    expect(routerPasses(6, 4, false)).toEqual({ count: 3, eachMm: 2 })
  })
})
