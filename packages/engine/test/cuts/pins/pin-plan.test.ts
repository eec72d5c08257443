import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import { bounds, inside, nearest } from '../../../src/shape/measure.ts'
import { worked } from '../../cases/asked.ts'
import { PLAIN } from '../../findings/harness.ts'
import { soundPiece } from '../../findings/sound-piece.ts'

/** Pins tie what a machine cuts. */
const MACHINE = { castwright: 1 as const, machine: { x: 800, y: 600 } }

const BOTH: NonNullable<PieceDocument['cuts']> = [
  { id: 'front pocket', face: 'front', shape: { rectangle: [40, 30], at: [100, 40] }, depth: 4 },
  { id: 'back pocket', face: 'back', shape: { rectangle: [40, 30], at: [-100, 40] }, depth: 4 }
]
const EARS = {
  margin: 6,
  bearers: 250,
  ears: [
    { rectangle: [50, 60], at: [-175, 0] },
    { rectangle: [50, 60], at: [175, 0] }
  ]
} satisfies PieceDocument['mould']
const piece = (more: Partial<PieceDocument> = {}): PieceDocument => ({
  ...PLAIN,
  mould: EARS,
  cuts: BOTH,
  ...more
})

describe('pins of a piece', () => {
  it('are two of two diameters in the ears, on the middle line, clear of all by the stated amounts', () => {
    const { pins } = worked({ shop: MACHINE, piece: piece() })
    expect(pins).toMatchObject({
      needed: true,
      given: false,
      goesOn: true,
      datum: { x0: 0, y0: 0, about: 'x' }
    })
    expect(pins.pins.map(p => [p.y, p.diameterMm, p.inEar, p.fault])).toEqual([
      [0, 8, true, null],
      [0, 6, true, null]
    ])
    // Ears end at 200: 1.5 diameters from the ends, as far apart as that allows.
    expect(pins.pins.map(p => p.x)).toEqual([-188, 191])
    expect(pins.wrong[0]).toMatchObject({ how: 'turned about the other line', fits: false })
  })

  it('are not asked for by cuts on one face, nor by hand', () => {
    expect(worked({ shop: MACHINE, piece: piece({ cuts: [BOTH[0]!] }) }).pins).toMatchObject({
      needed: false,
      pins: []
    })
    const byHand = BOTH.map(c => ({ ...c, way: 'router' as const }))
    expect(worked({ shop: MACHINE, piece: piece({ cuts: byHand }) }).pins).toMatchObject({
      needed: false,
      pins: []
    })
  })

  it('move to a line beside the middle where a former stands in it', () => {
    const { pins } = worked({
      shop: MACHINE,
      piece: piece({
        mould: { ...EARS, formers: [{ id: 'plug', shape: { rectangle: [40, 6], at: [-175, 0] } }] }
      })
    })
    expect(pins.pins).toHaveLength(2)
    expect(Math.abs(pins.datum.y0)).toBeGreaterThan(0)
    expect(pins.pins.every(p => p.y === pins.datum.y0)).toBe(true)
    expect(pins.goesOn).toBe(true)
  })

  it('turn over about the other line where only that one offers places', () => {
    const { pins } = worked({
      shop: MACHINE,
      piece: piece({
        mould: {
          ...EARS,
          ears: [
            { rectangle: [60, 50], at: [0, -125] },
            { rectangle: [60, 50], at: [0, 125] }
          ]
        }
      })
    })
    expect(pins.datum.about).toBe('y')
    expect(pins.pins.map(p => p.x)).toEqual([0, 0])
  })

  it('ask for ears where the waste is too narrow, and those ears take them', () => {
    let asked = 0
    for (let seed = 1; seed <= 30; seed++) {
      const sound = soundPiece(seed)
      const { pins } = worked({ shop: MACHINE, piece: sound })
      if (!pins.needed) continue
      asked++
      expect(pins.ears, `seed ${seed}`).not.toBeNull()
      const ears = pins.ears!.map(e => ({
        rectangle: [...e.rectangle] as [number, number],
        at: [...e.at] as [number, number]
      }))
      const after = worked({ shop: MACHINE, piece: { ...sound, mould: { ...sound.mould, ears } } }).pins
      expect(after.pins, `seed ${seed}`).toHaveLength(2)
      expect(after.pins.every(p => p.fault === null)).toBe(true)
      // Chosen as far out as the ear allows: no nearer than the place it was made for.
      const span = Math.hypot(after.pins[0]!.x - after.pins[1]!.x, after.pins[0]!.y - after.pins[1]!.y)
      const meant = Math.abs(pins.ears![0]!.pin[0] - pins.ears![1]!.pin[0])
      expect(span).toBeGreaterThanOrEqual(meant - 1e-6)
    }
    expect(asked).toBeGreaterThan(3)
  })

  it('say of given places what is against them', () => {
    const at = (...places: [number, number][]) =>
      worked({ shop: MACHINE, piece: piece({ pins: { at: places } }) }).pins.pins.map(
        p => p.fault?.kind ?? null
      )
    expect(at([-188, 0], [191, 0])).toEqual([null, null])
    // Past the end of the ear at 200, too near to it, and in the piece.
    expect(at([-214, 0], [195, 0])).toEqual(['misses', 'wall'])
    expect(at([-140, 0], [154, 0])).toEqual(['inside', 'path'])
    const missed = worked({
      shop: MACHINE,
      piece: piece({
        pins: {
          at: [
            [-214, 0],
            [191, 0]
          ]
        }
      })
    }).pins.pins[0]!
    expect(missed.fault!.mm).toBeCloseTo(14, 9)
  })

  it('fit the hole to the pin at its largest, and the pin to the holes (ISO 8734 m6; ISO 286: 8 m6 +15 µm)', () => {
    const { pins, stack } = worked({ shop: MACHINE, piece: piece({ pins: { play: 0.1, depth: 12 } }) })
    const [first] = pins.pins
    expect(first!.holeMm).toBeCloseTo(8 + 0.015 + 0.1, 9)
    expect(first!.depthMm).toBe(12)
    // 12 less the 1 mm flattened off the drilled face, 12 in the bed, 1 mm over: 22 of the series.
    expect(first!.pin).toEqual({ name: 'hardened parallel pin, ISO 8734, m6', lengthMm: 22 })
    const deep = worked({ shop: MACHINE, piece: piece({ pins: { depth: 30 } }) }).pins.pins[0]!
    expect(deep.depthMm).toBeNull()
    expect(deep.pin!.lengthMm).toBeLessThan(stack.finishedHigh - stack.finishedLow + 30)
  })

  it('across the grain take a slot where the pitch moves more than the play takes', () => {
    // One board, its grain across the line of the pins, put in at 16 %.
    const wet = piece({
      timbers: [
        {
          id: 'board',
          species: 'beech-european',
          outline: { rectangle: [300, 200] },
          thickness: 20,
          moisture: 16,
          grain: 90,
          rings: 'flat'
        }
      ],
      pins: { about: 'x' }
    })
    const { pins } = worked({ shop: MACHINE, piece: wet })
    expect(Math.abs(pins.misfit!.pitchMm[1])).toBeGreaterThan(pins.misfit!.pitchTakenMm)
    expect(pins.pins.map(p => p.slotMm > 0)).toEqual([false, true])
    expect(pins.goesOn).toBe(true)
    const dry = worked({
      shop: MACHINE,
      piece: { ...wet, timbers: wet.timbers!.map(t => ({ ...t, moisture: 9, grain: 0 })) }
    }).pins
    expect(dry.pins.map(p => p.slotMm)).toEqual([0, 0])
    expect(dry.misfit!.mm[1]).toBeLessThan(pins.misfit!.mm[1])
  })

  it('lie in the casting, outside the outline, in every place they are chosen: 30 seeded outlines', () => {
    for (let seed = 1; seed <= 30; seed++) {
      const width = 200 + 10 * seed
      const given = piece({
        outline: seed % 2 === 0 ? { circle: width } : { rectangle: [width, 180], corner: seed },
        mould: { margin: 20 + (seed % 5) * 4, bearers: 250 },
        timbers: [],
        cuts: BOTH.map(c => ({ ...c, shape: { circle: 30 } }))
      })
      const { pins, stack } = worked({ shop: MACHINE, piece: given })
      const { outline, mould } = stack.geometry
      const box = bounds(mould)
      for (const p of pins.pins) {
        expect(p.fault).toBeNull()
        expect(inside(outline, p.x, p.y)).toBe(false)
        expect(nearest(outline, p.x, p.y).distanceMm).toBeGreaterThanOrEqual(p.diameterMm / 2 + 3)
        const wall = Math.min(p.x - box.minX, box.maxX - p.x, p.y - box.minY, box.maxY - p.y)
        expect(wall).toBeGreaterThanOrEqual(1.5 * p.diameterMm - 1e-9)
      }
      if (seed % 5 > 1) expect(pins.pins, `seed ${seed}`).toHaveLength(2)
    }
  })
})
