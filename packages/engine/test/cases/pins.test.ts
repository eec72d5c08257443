import { describe, expect, it } from 'vitest'
import { turnRad } from '../../src/cuts/pins/two-pins.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { ids, mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Pieces cut from both sides: pins, and what is left between the cuts.

describe('C74: a lid cut from both sides', () => {
  // 19 mm stock, 8 × 5 in outside, 7.5 × 4.5 in and 12.7 mm inside, pins on the long centre line 230 mm apart.
  const oval = (long: number, wide: number) =>
    `M ${-long / 2} 0 A ${long / 2} ${wide / 2} 0 1 1 ${long / 2} 0 A ${long / 2} ${wide / 2} 0 1 1 ${-long / 2} 0 Z`
  const lid = (pins: PieceDocument['pins']): Given => ({
    shop: { castwright: 1, machine: { x: 400, y: 300, error: 0.02 } },
    piece: {
      ...PLAIN,
      outline: { path: oval(203.2, 127) },
      mould: { shape: { rectangle: [280, 150] }, bearers: 250 },
      timbers: [],
      pours: [{ id: 'clear', resin: 'deep', depth: 21.4 }],
      cuts: [
        { id: 'inside', face: 'back', shape: { path: oval(190.5, 114.3) }, finishedDepth: 12.7 },
        {
          id: 'rim',
          face: 'front',
          kind: 'groove',
          along: {
            points: [
              [-40, 0],
              [40, 0]
            ]
          },
          width: 4,
          depth: 1.5
        }
      ],
      ...(pins === undefined ? {} : { pins })
    }
  })
  const drawn = {
    at: [
      [-115, 0],
      [115, 0]
    ] as [number, number][],
    play: 0.1,
    depth: 12.7
  }

  it('C74 pins on the line of turning: under 0.1 mm of shift and 0.05 degrees of turn from their play', () => {
    const { pins, stack } = worked(lid(drawn))
    expect(pins.goesOn).toBe(true)
    expect(pins.misfit!.playMm).toBeLessThan(0.1)
    expect(pins.misfit!.turnDeg).toBeLessThan(0.05)
    // The turn by the formula of two pins.
    const turn = turnRad({ clearance1Mm: 0.1, clearance2Mm: 0.1, pitchMm: 230 })
    expect(pins.misfit!.turnDeg).toBeCloseTo((turn * 180) / Math.PI, 9)
    // Wall of a quarter of an inch at the crown, and all round on the axes.
    const left = stack.finishedHigh - stack.finishedLow - 12.7
    expect(left).toBeGreaterThan(6.35 - 0.5)
    expect((203.2 - 190.5) / 2).toBeCloseTo(6.35, 9)
    expect(asked(lid(drawn), 'pins-miss')).toEqual([])
  })

  it('C74 turning about the other line is told: upside-down left to right', () => {
    const alike = lid({ ...drawn, diameter: 6 })
    expect(theOne(alike, 'pins-half-turn').says).toMatch(/upside-down left to right and nothing shows it/)
    // Two diameters: it does not go on that way.
    const other = worked(lid({ ...drawn, diameter: [8, 6] })).pins.wrong[0]!
    expect(other).toMatchObject({ how: 'turned about the other line', fits: false })
    expect(other.shows).toMatch(/^upside-down left to right/)
  })
})

describe('C76: a spoon cut from both sides', () => {
  // A dish and a dome one over the other in 18 mm; 4 mm wanted between them, and half a millimetre less.
  const spoon = (dome: number, thickness?: number): Given => ({
    piece: {
      ...PLAIN,
      cuts: [
        { id: 'dish', face: 'front', shape: { circle: 50, at: [100, 0] }, depth: 7 },
        { id: 'dome', face: 'back', shape: { circle: 50, at: [100, 0] }, depth: dome }
      ]
    },
    readings:
      thickness === undefined
        ? []
        : [{ id: 'r-thickness', at: '2026-11-28T09:00Z', kind: 'thickness', thickness }]
  })

  it('C76 the least wall from both faces, on the planned thickness and on half a millimetre less', () => {
    const floorOf = (given: Given) => worked(given).covers[1]!.floor!.mm
    expect(floorOf(spoon(7))).toBeCloseTo(18 - 7 - 7, 6)
    expect(asked(spoon(7), 'wall-between')).toEqual([])
    const note = theOne(spoon(7.7), 'wall-between')
    expect(note.severity).toBe('note')
    expect(note.value).toBeCloseTo(18 - 7 - 7.7 - 0.5, 6)
    expect(note.says).toMatch(/dome and dish leave 3.3 mm between them; .* 0.5 mm thinner 2.8 is left/)
    // 2 mm as planned: said at once.
    expect(theOne(spoon(9), 'thin-floor').value).toBeCloseTo(2, 6)
  })

  it('C76 the thickness read decides', () => {
    expect(asked(spoon(7.7, 18), 'wall-between')).toEqual([])
    const thin = theOne(spoon(7.7, 17.4), 'wall-between')
    expect(thin.severity).toBe('caution')
    expect(thin.value).toBeCloseTo(17.4 - 14.7, 6)
    expect(ids(mended(spoon(7.7, 17.4), thin.fix!))).not.toContain('wall-between')
  })
})

describe('O4: pins of a round casting', () => {
  const round = (pins?: PieceDocument['pins']): Given => ({
    piece: {
      ...PLAIN,
      outline: { circle: 360 },
      mould: { shape: { circle: 384 }, bearers: 250 },
      timbers: [],
      cuts: [
        { id: 'dial', face: 'front', shape: { circle: 60 }, depth: 3 },
        { id: 'movement', face: 'back', shape: { rectangle: [56, 56], corner: 4, at: [90, 0] }, depth: 3 }
      ],
      ...(pins === undefined ? {} : { pins })
    }
  })
  const drawn = round({
    at: [
      [-206, 0],
      [206, 0]
    ],
    diameter: 6
  })

  it('O4 pins at 206 from the centre miss the casting by 14 mm: nothing is tied to them', () => {
    const found = asked(drawn, 'pins-miss')
    expect(found).toHaveLength(2)
    for (const f of found) {
      expect(f.severity).toBe('stop')
      expect(f.value).toBeCloseTo(206 - 192, 2)
      expect(f.says).toMatch(/14 mm outside the casting: nothing is tied to it/)
    }
    // The pins shape the mould: ears of waste.
    const after = mended(drawn, found[0]!.fix!)
    expect(found[0]!.fixSays).toMatch(/ears of waste/)
    expect(asked(after, 'pins-miss')).toEqual([])
    expect(after.piece.mould!.ears).toHaveLength(2)
  })

  it('O4 a symmetric pair lets a half turn fit; alike about the line, unlike across it does not', () => {
    const half = theOne(drawn, 'pins-half-turn')
    expect(half.value).toBe(0)
    const after = mended(drawn, half.fix!)
    expect(asked(after, 'pins-half-turn')).toEqual([])
    const { pins } = worked(after)
    expect(pins.goesOn).toBe(true)
    expect(pins.pins.map(p => p.diameterMm)).toEqual([6, 5])
  })
})
