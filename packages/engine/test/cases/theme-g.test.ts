import { describe, expect, it } from 'vitest'
import { meeting, swirlsOf } from '../../src/cast/swirl.ts'
import { RESINS } from '../../src/catalogue/resin.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Colour and swirl timing.

describe('theme G: the moment to draw the colours', () => {
  // Given: two cups of 3 oz (85 g), air of 29-30 °C; one colour locked while the other still poured. The resin was
  // a polyester, which is not predicted: taken here as a fast epoxy. Assumed: the white sets a third faster.
  const thin = RESINS.find(r => r.id === 'thin')!
  const colours = (laterMin: number) => [
    { massG: 85, laterMin: 0, pace: 1 },
    { massG: 85, laterMin, pace: 1.3 }
  ]
  const cups = (roomC: number, laterMin = 0) =>
    swirlsOf(thin, colours(laterMin), { roomC, startC: roomC, rateFactor: 1 })

  it('C56 each colour has its own window of minutes; in the heat they do not overlap', () => {
    const swirls = cups(29.5)
    const width = (k: number) => swirls[k]!.closeMin! - swirls[k]!.openMin!
    // Told: 3 to 5 min at 30 °C for a polyester. The cup of a fast epoxy heats itself and is shorter still.
    for (const k of [0, 1]) {
      expect(width(k)).toBeGreaterThan(0.5)
      expect(width(k)).toBeLessThan(5)
    }
    expect(meeting(swirls)).toBeNull()
  })

  it('C56 ten kelvin cooler they are at least twice as wide, and meet', () => {
    const width = (roomC: number) => cups(roomC)[0]!.closeMin! - cups(roomC)[0]!.openMin!
    expect(width(19.5) / width(29.5)).toBeGreaterThan(2)
    expect(meeting(cups(19.5))).not.toBeNull()
  })

  it('C56 mixing the white two to three minutes later brings them together', () => {
    const apart = cups(29.5)
    const delay = apart[0]!.openMin! - apart[1]!.openMin!
    expect(delay).toBeGreaterThan(2)
    expect(delay).toBeLessThan(3)
    expect(meeting(cups(29.5, delay))).not.toBeNull()
  })

  const blank = (pace: number): Given => ({
    piece: {
      ...PLAIN,
      outline: { rectangle: [120, 60] },
      timbers: [],
      pours: [
        {
          id: 'swirl',
          resin: 'thin',
          mass: 170,
          marbling: [
            { share: 50, tint: [{ pigment: 'black-paste', percent: 1 }] },
            { share: 50, tint: [{ pigment: 'white-paste', percent: 2 }], pace }
          ]
        }
      ]
    },
    shop: { castwright: 1, climate: { night: 29, day: 30 } }
  })

  it('C56 the plan says so: windows do not overlap, delay mixing the white', () => {
    const found = theOne(blank(1.3), 'swirl-apart')
    expect(found.says).toMatch(/The windows do not overlap: delay mixing colour 2 by 2\.\d min/)
    const after = mended(blank(1.3), found.fix!)
    expect(asked(after, 'swirl-apart')).toEqual([])
    expect(worked(after).casts[0]!.swirls![1]!.openMin).toBeGreaterThan(
      worked(blank(1.3)).casts[0]!.swirls![1]!.openMin!
    )
    expect(asked(blank(1), 'swirl-apart')).toEqual([])
  })
})
