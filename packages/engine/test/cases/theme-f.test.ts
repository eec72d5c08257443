import { describe, expect, it } from 'vitest'
import { poursNeeded } from '../../src/resin/pours.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Layers, recoat window, blush: coats that went on too late, or through a damp night.

describe('theme F: layers and coats', () => {
  // Given: an open carport, fairly humid; coat 2 went on 18 h after coat 1. Assumed: 24 °C by day, 18 by night.
  const coats = (after: string, humidity: number): Given => ({
    piece: {
      ...PLAIN,
      pours: [
        { id: 'coat 1', resin: 'medium', depth: 3 },
        { id: 'coat 2', resin: 'medium', height: 6, after }
      ]
    },
    shop: { castwright: 1, climate: { night: 18, day: 24, humidity } }
  })

  it('C48 18 h and a damp night: wash, abrade, then coat', () => {
    const blush = theOne(coats('18 h', 80), 'blush-between')
    expect(blush.severity).toBe('caution')
    expect(blush.says).toMatch(/wash .* with plain water, dry, abrade, then coat/)
    // 24 °C at 80 %: dew point 20.3 °C by any table; the night of 18 °C lies below.
    expect(blush.limit).toBeCloseTo(20.3, 1)
    expect(theOne(coats('18 h', 80), 'recoat-window').says).toMatch(/wash with water, sand it dull/)
  })

  it('C48 the damp triggers it and not the hours alone: in the window, but through the night, it stands', () => {
    const inWindow = worked(coats('10 h', 80)).casts[0]!.windows.recoat
    const hours = 12
    expect(inWindow.close! / 60).toBeGreaterThan(hours)
    expect(asked(coats(`${hours} h`, 80), 'recoat-window')).toEqual([])
    expect(asked(coats(`${hours} h`, 80), 'blush-between').length).toBe(1)
    // Dry air, same hours: nothing to wash. Dry air, 18 h: late, but no blush.
    expect(asked(coats(`${hours} h`, 45), 'blush-between')).toEqual([])
    expect(asked(coats('18 h', 45), 'blush-between')).toEqual([])
    expect(asked(coats('18 h', 45), 'recoat-window').length).toBe(1)
    // The next coat the same day: no night between.
    expect(asked(coats('9 h', 80), 'blush-between')).toEqual([])
  })

  it('C48 with moments, the night itself is looked for', () => {
    const at = (first: string, second: string): Given => {
      const { piece, shop } = coats('1 h', 80)
      const [a, b] = piece.pours
      const { after: _, ...next } = b!
      return {
        piece: {
          ...piece,
          pours: [
            { ...a!, start: first },
            { ...next, start: second }
          ]
        },
        shop: shop!
      }
    }
    expect(asked(at('2026-06-01T08:00+02:00', '2026-06-01T16:00+02:00'), 'blush-between')).toEqual([])
    expect(asked(at('2026-06-01T20:00+02:00', '2026-06-02T04:00+02:00'), 'blush-between').length).toBe(1)
  })

  it('C48 the same for flood coats in an order of the maker’s own; sanded between, nothing is said', () => {
    const flooded = (...between: object[]): Given => ({
      piece: {
        ...PLAIN,
        pours: [
          ...PLAIN.pours,
          { id: 'coat 1', kind: 'flood', resin: 'thin', depth: 1.5, face: 'front' },
          { id: 'coat 2', kind: 'flood', resin: 'thin', depth: 1.5, face: 'front' }
        ],
        steps: [
          { do: 'make mould' },
          { do: 'set timber' },
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '7 d' },
          { do: 'demould' },
          { do: 'turn over' },
          { do: 'flatten', face: 'front' },
          { do: 'pour', what: 'coat 1' },
          { do: 'wait', for: '18 h' },
          ...between,
          { do: 'pour', what: 'coat 2' },
          { do: 'wait', for: '7 d' },
          { do: 'deliver' }
        ]
      } as Given['piece'],
      shop: { castwright: 1, climate: { night: 18, day: 24, humidity: 80 } }
    })
    expect(theOne(flooded(), 'blush-between').says).toMatch(/^coat 2 goes on 18 h after coat 1/)
    expect(theOne(flooded(), 'recoat-window').says).toMatch(/bonds by itself until about/)
    const sanded = flooded({ do: 'sand', face: 'front' })
    expect(asked(sanded, 'recoat-window')).toEqual([])
    expect(asked(sanded, 'blush-between')).toEqual([])
  })

  // Given: 38 mm in 36 h with a fast resin that takes the next coat at 3 to 4 h; a single deep pour takes 80 h.
  const layers = 10
  const buildUp: Given = {
    piece: {
      ...PLAIN,
      pours: [
        { id: 'layer 1', resin: 'thin', depth: 3.8 },
        ...Array.from({ length: layers - 1 }, (_, k) => ({
          id: `layer ${k + 2}`,
          resin: 'thin',
          height: 3.8 * (k + 2),
          after: '3.5 h'
        }))
      ]
    }
  }

  it('C51 38 mm in 36 h are about 10 layers of 3.7 mm every 3.5 h, nights among them, beside the single pour', () => {
    // By hand: 36 h / 3.5 h = 10.3; 38 mm / 3.7 mm = 10.3.
    expect(Math.floor(36 / 3.5)).toBe(layers)
    expect(poursNeeded(38, 3.8)).toBe(layers)
    const found = theOne(buildUp, 'layers-seen')
    expect(found.severity).toBe('note')
    expect(found.value).toBe(layers)
    expect(found.says).toMatch(/10 layers of 3\.8 mm, one every 3 h 30: the last 31 h 30 after the first/)
    // Poured from nine in the morning every 3.5 h: 23:00, 02:30 and 06:00 lie in the night.
    expect(found.says).toMatch(/3 of them at night/)
    expect(found.says).toMatch(
      /In one pour a slow deep resin comes to \d+ °C and leaves the mould after about \d+/
    )
    expect(found.says).toMatch(/seen from the edge/)
  })

  it('C51 layers of one tint are told apart by their faces only, layers of several by their colours as well', () => {
    const tinted = (percents: readonly number[]) =>
      theOne(
        {
          ...buildUp,
          piece: {
            ...buildUp.piece,
            pours: buildUp.piece.pours.map((p, i) => ({
              ...p,
              tint: [{ pigment: 'blue-tint', percent: percents[i % percents.length]! }]
            }))
          }
        },
        'layers-seen'
      ).says
    expect(tinted([0.02])).not.toMatch(/tints differ/)
    expect(tinted([0.02, 0.03])).toMatch(
      /tints differ from the side by up to \d+\.\d, where 1 is just noticed/
    )
  })

  it('C51 a clear thickness in one pour has no layers to see, and two opaque ones hide them', () => {
    expect(asked({ piece: PLAIN }, 'layers-seen')).toEqual([])
    const opaque = buildUp.piece.pours.map(p => ({ ...p, opaque: true }))
    expect(asked({ piece: { ...buildUp.piece, pours: opaque } }, 'layers-seen')).toEqual([])
  })
})
