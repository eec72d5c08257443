import { describe, expect, it } from 'vitest'
import { roomRange } from '../../src/cast/room-range.ts'
import type { Edge } from '../../src/cast/whole/whole-cast.ts'
import { checkShop } from '../../src/piece/read.ts'
import { chooseResin, type ResinChoice } from '../../src/piece/resin-choice.ts'
import { finalCure } from '../../src/resin/final-cure.ts'

const shopOf = (more: object) =>
  checkShop({ castwright: 1, climate: { night: 18, day: 22 }, ...more }, 'shop').value
const shop = shopOf({})
const resin = (id: string, of = shop) => chooseResin(id, of, '') as ResinChoice
const edge = (roomK: number | null): Edge => ({
  limitC: 60,
  over: false,
  depthMm: null,
  roomK,
  perMm: 1,
  perK: 1,
  warmer: { peakK: 1, workingMin: null }
})

describe('the rooms in which a plan holds', () => {
  it('end at the pour that bears least warmth', () => {
    const range = roomRange([resin('deep'), resin('deep')], [edge(6), edge(2.5)], shop)
    expect(range.highC).toBeCloseTo(22.5, 9)
    expect(range.highPour).toBe(1)
  })

  it('begin where the resin is just hard after a week: 35 °C, from the cure itself', () => {
    const free = shopOf({ resins: [{ id: 'own', like: 'deep', leastTemperature: -5 }] })
    const { lowC, lowPour } = roomRange([resin('own', free)], [edge(null)], free)
    expect(lowPour).toBe(0)
    const { kinetics } = resin('deep').record.model!
    const tg = (mean: number) => finalCure(kinetics, { nightC: mean - 2, dayC: mean + 2 }, 7).tgC
    expect(tg(lowC!)).toBeGreaterThanOrEqual(35)
    expect(tg(lowC! - 0.2)).toBeLessThan(35)
  })

  it('begin no cooler than the label lets the night be', () => {
    const own = shopOf({ resins: [{ id: 'own', like: 'medium', leastTemperature: 21 }] })
    expect(roomRange([resin('own', own)], [edge(null)], own).lowC).toBeGreaterThanOrEqual(23)
  })

  it('begin at 15 °C of the night where no label says (common practice)', () => {
    expect(roomRange([resin('deep')], [edge(null)], shop).lowC).toBeCloseTo(17, 9)
  })

  it('are none where a pour is past its limit in every room searched', () => {
    const hot = { ...edge(null), over: true }
    expect(roomRange([resin('deep')], [hot], shop).tooHotPour).toBe(0)
  })

  it('are open where nothing is cast', () => {
    expect(roomRange([resin('deep')], [null], shop)).toEqual({
      lowC: null,
      lowPour: null,
      highC: null,
      highPour: null,
      tooHotPour: null
    })
  })
})
