import { describe, expect, it } from 'vitest'
import { partingStrain } from '../../src/fits/joint.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Timber beside what does not move, fits cut too soon, and the board to start from.

describe('theme H: steps, fits and starting thickness', () => {
  // Given: scales just over 1/4 in, winter at 35 %, summer at 65 %. Assumed: 24 mm wide, so 12 to each edge, a timber of
  // 0.0025 per %, 20 °C, worked flush in winter.
  const scales = (
    flush: 'nothing' | 'metal',
    species = 'walnut-black',
    rings: 'flat' | 'quarter' = 'flat'
  ): Given => ({
    piece: {
      ...PLAIN,
      climate: { dry: { temperature: 20, humidity: 35 }, damp: { temperature: 20, humidity: 65 } },
      timbers: [-1, 1].map(side => ({
        id: side < 0 ? 'left scale' : 'right scale',
        species,
        outline: { rectangle: [110, 24] as [number, number], at: [0, side * 30] as [number, number] },
        thickness: 6.4,
        moisture: 7,
        rings,
        flush
      })),
      pours: [{ id: 'clear', resin: 'deep', depth: 8 }]
    }
  })

  it('C66 scales grow past the steel by half width × coefficient × change: 0.15 mm will be felt', () => {
    const found = asked(scales('metal'), 'step-felt')
    expect(found).toHaveLength(2)
    const season = worked(scales('metal')).seasons[0]!
    expect(season.dampPct - 7).toBeCloseTo(5, 0)
    expect(found[0]!.value).toBeCloseTo(12 * 0.00274 * (season.dampPct - 7), 3)
    expect(found[0]!.value).toBeGreaterThan(0.13)
    expect(found[0]!.value).toBeLessThan(0.18)
    expect(found[0]!.limit).toBe(0.05)
    expect(found[0]!.says).toMatch(/A finger feels 0\.05/)
    // Quartersawn maple moves less than flat-sawn walnut; nothing flush, nothing felt.
    const maple = asked(scales('metal', 'maple-red', 'quarter'), 'step-felt')[0]!
    expect(maple.value!).toBeLessThan(found[0]!.value! / 1.8)
    expect(asked(scales('nothing'), 'step-felt')).toEqual([])
    expect(asked(mended(scales('metal'), found[0]!.fix!), 'step-felt')).toHaveLength(1)
  })

  // Given: 0.13 to 0.25 mm left, a month of rest. Assumed: a plate of 80 mm across the grain of a 45 mm board that came
  // at 6 % into a shop at 50 %.
  const inlet = (moisture: number): Given => ({
    piece: {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 45, moisture })),
      pours: [{ id: 'clear', resin: 'deep', depth: 45 }],
      cuts: [
        {
          id: 'inlet',
          face: 'back',
          shape: { rectangle: [80, 60], corner: 0, at: [-95, 0] },
          finishedDepth: 6
        }
      ],
      hardware: [
        { id: 'plate', kind: 'keyhole-plate', in: 'inlet', width: 59.8, length: 79.8, clearance: 0.1 }
      ]
    }
  })

  it('C81 a close fit in timber that still settles: leave a skin of 0.2 mm, rest, then finish', () => {
    const found = theOne(inlet(6), 'timber-rest')
    expect(found.limit).toBe(0.2)
    expect(found.value).toBeCloseTo(
      80 * 0.00274 * (worked(inlet(6)).timberFacts[0]!.cupping.surfacePct - 6),
      2
    )
    expect(found.says).toMatch(/Leave a skin of 0\.2 mm, let it rest \d+ to \d+ days \(a month/)
    const [fast, , slow] = worked(inlet(6)).timberFacts[0]!.cupping.restDays
    expect(fast).toBeLessThan(30)
    expect(slow).toBeGreaterThan(30)
    expect(asked(inlet(8.5), 'timber-rest')).toEqual([])
  })

  it('C64 the board to start from is named part by part, and one too thin is said', () => {
    const given = (thickness: number): Given => ({
      piece: {
        ...PLAIN,
        flatten: { back: 2, front: 2 },
        timbers: PLAIN.timbers!.map(t => ({ ...t, rough: { thickness, cup: 1.5, bow: 1, twist: 2 } }))
      }
    })
    const rough = worked(given(25)).timberFacts[0]!.rough!
    // 16 finished, 2 + 2 flattened, 2 × 0.5 planed clean, 1.5 cup, 1 bow, half of 2 twist.
    expect(rough.startMm).toBeCloseTo(16 + 4 + 1 + 1.5 + 1 + 1, 6)
    const found = asked(given(23), 'timber-thin')
    expect(found.map(f => f.severity)).toEqual(['caution', 'caution'])
    expect(found[0]!.says).toMatch(/finished 16, flattened off below 2, .* half of the twist 1/)
    expect(asked(given(25), 'timber-thin')).toEqual([])
  })

  // White ash: 940 lbf/in² over 0.080 × 1.10 × 12.0 GPa is 0.61 %, ± a quarter.
  it('C63 the joint is told as a strain beside those at which timber and resin part', () => {
    const work = worked({ piece: PLAIN })
    const { strain, listed } = partingStrain(work.piece.timbers[0]!, work.materials.timbers[0]!)!
    expect(listed).toBe(true)
    expect((strain[0] + strain[1]) / 2).toBeCloseTo(0.0061, 3)
    const bar: Given = {
      piece: {
        ...PLAIN,
        timbers: [
          {
            id: 'bar',
            species: 'ash-white',
            outline: { rectangle: [200, 120], corner: 8 },
            thickness: 20,
            moisture: 8.5
          }
        ]
      }
    }
    expect(theOne(bar, 'timber-gap').says).toMatch(
      /That is \d\.\d %: held stiffly, timber parts across its grain at 0\.5 to 0\.8, resin at 3 to 6\./
    )
  })
})
