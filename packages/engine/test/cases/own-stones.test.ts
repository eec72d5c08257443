import { describe, expect, it } from 'vitest'
import { settlingMmS, sinksMm } from '../../src/resin/settling.ts'
import type { Given } from '../findings/harness.ts'
import { mended } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Drawn pieces that would not survive: stones kept in place by timing.

describe('own cases: stones', () => {
  // Given: stones kept off the floor by timing in a 9 mm layer. Assumed: gravel of 8 mm, from 3 mm up.
  const layer = (depth: number, size: number, set: string): Given => ({
    piece: {
      castwright: 1,
      name: 'a layer of stones',
      outline: { rectangle: [200, 150] },
      mould: { margin: 0, bearers: 250 },
      pours: [
        { id: 'bottom', resin: 'deep', depth: 6 },
        {
          id: 'layer',
          resin: 'deep',
          height: 6 + depth,
          stones: [
            {
              kind: 'river-gravel',
              placed: [{ at: [0, 0], size: [size, size, size], height: 9 }],
              set: set as 'into the pour'
            }
          ]
        }
      ]
    }
  })

  it('O8 in 9 mm of resin timing is moot: stones on the tacky layer', () => {
    const found = theOne(layer(9, 6, 'into the pour'), 'stones-sink')
    expect(found.severity).toBe('caution')
    expect(found.says).toMatch(/touch the floor or stand out whenever they go in/)
    expect(found.says).toMatch(/Set them on the tacky layer below/)
    expect(asked(layer(9, 6, 'on the tacky layer'), 'stones-sink')).toEqual([])
    expect(asked(mended(layer(9, 6, 'into the pour'), found.fix!), 'stones-sink')).toEqual([])
    // The arithmetic: at its fresh viscosity a ball of 6 mm is through 9 mm within seconds.
    const cast = worked(layer(9, 6, 'into the pour')).casts[1]!
    const grain = { diameterMm: 6, densityKgM3: 2650, liquidKgM3: 1100 }
    expect(9 / settlingMmS(grain, cast.curve.viscosityPaS[0]!)).toBeLessThan(1)
    expect(sinksMm(grain, cast.curve)).toBeGreaterThan(1000)
  })

  it('O8 in a deep layer there is a time for them, and where single ones lie is not known', () => {
    const [found] = asked(layer(30, 6, 'into the pour'), 'stones-sink')
    expect(found!.severity).toBe('note')
    expect(found!.says).toMatch(/from about .* to .* after pouring they stay where they are wanted/)
    expect(found!.says).toMatch(/not known beforehand/)
  })
})
