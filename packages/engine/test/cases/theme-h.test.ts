import { describe, expect, it } from 'vitest'
import { cookieProgress, rimOpeningMm } from '../../src/timber/cookie.ts'
import { dryingByRule } from '../../src/timber/drying.ts'
import { moistureChangeForMovementPct, movementByCoefficientMm } from '../../src/timber/movement.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Moisture and movement of timber: cupping, splitting, parting from resin.

describe('theme H: timber that moves', () => {
  // Given: elm planed to 50 mm, voids filled, steel base without slots, metered only before planing.
  // Assumed: 900 mm wide, flat-sawn, 1.8 m long, core 4 % wetter than the middle of a heated room.
  const elm = (moisture: number): Given => ({
    piece: {
      castwright: 1,
      name: 'a table',
      outline: { rectangle: [1800, 900] },
      timbers: [
        {
          id: 'slab',
          species: 'elm-american',
          outline: { difference: [{ rectangle: [1800, 900] }, { circle: 40 }] },
          thickness: 50,
          moisture
        }
      ],
      pours: [{ id: 'void', resin: 'deep', depth: 50 }],
      finish: { both: { coat: 'hardwax-oil' } }
    }
  })
  const middle = () => {
    const { dryPct, dampPct } = worked(elm(9)).seasons[0]!
    return (dryPct + dampPct) / 2
  }

  it('C58 a core 4 % too wet: 12 mm of shrinkage, slots of ± 6 mm, re-meter after flattening', () => {
    expect(movementByCoefficientMm(900, 0.00338, 4, 0)).toBeCloseTo(-12.2, 1)
    const found = theOne(elm(middle() + 4), 'timber-wet')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/shrink 12 mm over its 900 mm across the grain/)
    expect(found.says).toMatch(/round holes .* splits, slots of ± 6 mm/)
    expect(found.settledBy).toMatch(/at the core, after flattening/)
    expect(asked(elm(middle()), 'timber-wet')).toEqual([])
  })

  // Given: 64 mm, dried one year, loose on blocks, a hot flat; the owner wants to fill the cracks now.
  // Assumed: 25 °C and 30 % the year round; two planks, 14 % inside.
  const air = { temperature: 25, humidity: 30 }
  const flat = (moisture: number): Given => ({
    piece: {
      ...PLAIN,
      climate: { dry: air, damp: air },
      timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 63.5, moisture })),
      pours: [{ id: 'crack', resin: 'deep', depth: 63.5 }]
    }
  })

  it('C60 a year of drying is not enough for 2.5 in: not ready to be filled', () => {
    const rule = dryingByRule(63.5, 365)
    expect(rule.neededYears).toBeCloseTo(2.5, 6)
    expect(rule.ready).toBe('no')
    const found = asked(flat(14), 'timber-wet')
    expect(found.map(f => f.severity)).toEqual(['stop', 'stop'])
    expect(found[0]!.says).toMatch(/at 6\.\d to 6\.\d %|at 6 to 6 %|at 6\.\d/)
    expect(found[0]!.says).toMatch(/Not ready: .* 2\.5 years/)
    expect(asked(flat(6.5), 'timber-wet')).toEqual([])
  })

  // Given: 76 mm thick, corners cut at 45° and joined with epoxy. Assumed: a frame of two planks 800 mm wide
  // seen from above, coefficients of a hardwood of the catalogue.
  const mitre = (grain: number): Given => ({
    piece: {
      castwright: 1,
      name: 'a corner',
      outline: {
        polygon: [
          [0, 0],
          [1500, 0],
          [1500, 800],
          [800, 800],
          [800, 1500],
          [0, 1500]
        ]
      },
      timbers: [
        {
          id: 'top',
          species: 'maple-sugar',
          outline: {
            polygon: [
              [0, 0],
              [1500, 0],
              [1500, 800],
              [800, 800]
            ]
          },
          thickness: 76,
          moisture: 8.5
        },
        {
          id: 'end',
          species: 'maple-sugar',
          outline: {
            polygon: [
              [0, 0],
              [800, 800],
              [800, 1500],
              [0, 1500]
            ]
          },
          thickness: 76,
          moisture: 8.5,
          grain
        }
      ],
      pours: [{ id: 'fill', resin: 'deep', depth: 20 }]
    }
  })

  it('C61 long grain fixed to cross grain over 300 mm breaks; 1.6 mm is 0.4 % of moisture', () => {
    expect(moistureChangeForMovementPct(1220, 1.6, 0.003)).toBeCloseTo(0.44, 2)
    const found = asked(mitre(90), 'movement-joint')
    expect(found.map(f => [f.severity, f.at])).toEqual([
      ['stop', '/timbers/0'],
      ['stop', '/timbers/1']
    ])
    expect(found[0]).toMatchObject({ limit: 300 })
    expect(found[0]!.value).toBeCloseTo(800, 0)
    expect(found[0]!.says).toMatch(/long grain to cross grain wider than 300 mm break/)
    // With the grain of both alike they move together.
    expect(asked(mitre(0), 'movement-joint')).toEqual([])
  })

  // Given: white oak, 610 mm across, 76 mm thick, a meter off the scale in the middle, a crack of 38 mm.
  // Assumed: 30 % at the core, a casting round it of 700 mm, a heated room.
  const cookie = (moisture: number): Given => ({
    piece: {
      castwright: 1,
      name: 'a cookie table',
      outline: { circle: 700 },
      timbers: [{ id: 'cookie', species: 'oak-white', outline: { circle: 610 }, thickness: 76, moisture }],
      pours: [{ id: 'ring', resin: 'deep', depth: 76 }]
    }
  })

  it('C63 a cookie that is wet inside has not finished moving: do not pour', () => {
    const oak = { radiusMm: 305, radialShrinkagePct: 5.6, tangentialShrinkagePct: 10.5 }
    expect(rimOpeningMm(oak, 0)).toBeCloseTo(94, 0)
    expect(Math.abs(rimOpeningMm(oak, 8) - 69)).toBeLessThan(1)
    expect(cookieProgress(oak, 38, 8).stillToComeLowMm).toBeGreaterThan(10)
    const found = theOne(cookie(30), 'timber-wet')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/Not ready/)
    // Shut in by resin it parts or splits even when it is dry.
    expect(theOne(cookie(8.5), 'timber-gap').says).toMatch(/may open .* or the timber check/)
  })

  it('C64 no allowance for the underside is said, with how much thicker to start', () => {
    const top = (back: number): Given => ({ piece: { ...PLAIN, flatten: { back, front: 3 } } })
    const found = theOne(top(0), 'one-face-flattened')
    expect(found.at).toBe('/flatten/back')
    expect(found.says).toMatch(/nothing off the back/)
    expect(found.says).toMatch(/5 to 8 mm over the finished thickness/)
    expect(asked(mended(top(0), found.fix!), 'one-face-flattened')).toEqual([])
  })
})
