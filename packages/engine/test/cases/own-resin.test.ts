import { describe, expect, it } from 'vitest'
import { sagMm } from '../../src/mould/sag.ts'
import { ratioErrorFromScale } from '../../src/resin/stoichiometry.ts'
import type { Given } from '../findings/harness.ts'
import { ids, mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Drawn pieces that would not survive: planning errors found while walking through drafts.

describe('own cases: resin, mould, order, number', () => {
  const order = (cure: string, rest: string): Given => ({
    piece: {
      ...PLAIN,
      cuts: [{ id: 'hole', face: 'front', kind: 'bore', shape: { circle: 10 }, depth: 4 }],
      hardware: [{ id: 'magnet', kind: 'magnet-disc', in: 'hole', face: 'front', fitting: 'press' }],
      steps: [
        { do: 'make mould' },
        { do: 'set timber' },
        { do: 'pour', what: 'clear' },
        { do: 'wait', for: '24 h' },
        { do: 'demould' },
        { do: 'wait', for: cure },
        { do: 'turn over' },
        { do: 'flatten', face: 'front' },
        { do: 'cut', what: 'hole' },
        { do: 'coat', face: 'both' },
        { do: 'wait', for: rest },
        { do: 'fit', what: 'magnet' },
        { do: 'deliver' }
      ]
    }
  })

  it('O1 machined 48 h after the pour, delivered 17 h after the coat: hard neither for cutter nor load', () => {
    const given = order('24 h', '17 h')
    const machine = theOne(given, 'machine-too-soon')
    expect(machine).toMatchObject({ severity: 'stop', value: 2, limit: 3, at: '/steps/7' })
    const load = asked(given, 'load-too-soon')
    expect(load.map(f => [f.at, f.severity])).toEqual([
      ['/steps/11', 'stop'],
      ['/steps/12', 'stop']
    ])
    expect(load[0]!.value! * 24).toBeCloseTo(17, 3)
    // Mended one after the other, nothing is too soon any more.
    const after = mended(mended(given, machine.fix!), load[0]!.fix!)
    expect(asked(after, 'machine-too-soon')).toEqual([])
    expect(asked(after, 'load-too-soon')).toEqual([])
  })

  it('O1 the usual order waits long enough by itself', () => {
    const { steps, ...piece } = order('24 h', '17 h').piece
    expect(steps).toBeDefined()
    expect(ids({ piece })).not.toEqual(expect.arrayContaining([expect.stringMatching(/too-soon/)]))
  })

  it('O5 a band across 60 °C is a caution with the reading that would settle it', () => {
    const pour = (depth: number): Given => ({
      piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth }] }
    })
    const found = theOne(pour(36), 'pour-heat')
    expect(found.severity).toBe('caution')
    expect(found.band![0]).toBeLessThan(60)
    expect(found.band![1]).toBeGreaterThan(60)
    expect(found.value).toBeLessThan(60)
    expect(found.settledBy).toMatch(/cup test|thermometer/)
    expect(asked(mended(pour(36), found.fix!), 'pour-heat')).toEqual([])
  })

  it('O15 twelve boards at 5 % loss: 54, 86, 97 % from 12, 13, 14 blanks', () => {
    const boards = (blanks: number): Given => ({
      piece: { ...PLAIN, quantity: { pieces: 12, blanks, loss: 5, certainty: 95 } }
    })
    for (const [blanks, published] of [
      [12, 54],
      [13, 86],
      [14, 97]
    ] as const)
      expect(Math.round(worked(boards(blanks)).quantity.chance * 100)).toBe(published)
    for (const blanks of [12, 13]) {
      const found = theOne(boards(blanks), 'blanks-few')
      expect(found.severity).toBe('caution')
      expect(found.fix).toEqual([{ op: 'replace', path: '/quantity/blanks', value: 14 }])
    }
    expect(asked(boards(14), 'blanks-few')).toEqual([])
  })

  it('O16 a base of 18 mm under a top of 45 mm: bearer spacing is reckoned', () => {
    const top = (bearers: string): Given => ({
      piece: {
        castwright: 1,
        name: 'a top',
        outline: { rectangle: [2400, 800] },
        mould: { base: 'melamine-particleboard-18', bearers },
        pours: [{ id: 'first', resin: 'deep', depth: 45 }]
      }
    })
    // As stated: about 510 N/m² of resin, E 2.5 GPa.
    const board = { thicknessMm: 18, modulusGPa: 2.5, loadNPerM2: 510 }
    expect(sagMm(board, 1200)).toBeCloseTo(11.3, 1)
    expect(sagMm(board, 400)).toBeCloseTo(0.14, 2)
    // In the plan the liquid stands higher than the cured top, and the board's own weight counts: a quarter more.
    const wide = theOne(top('1.2 m'), 'base-sags')
    expect(wide.severity).toBe('stop')
    expect(wide.value! / 11.3).toBeGreaterThan(1)
    expect(wide.value! / 11.3).toBeLessThan(1.3)
    expect(asked(top('0.4 m'), 'base-sags')).toEqual([])
    expect(asked(mended(top('1.2 m'), wide.fix!), 'base-sags')).toEqual([])
  })

  it('O17 8 g at 2.2 : 1 on a scale of 1 g steps: 20 % off ratio', () => {
    // An inlay of next to nothing: 8 g are mixed.
    const inlay = (mixed: string, resolution = 1): Given => ({
      piece: {
        castwright: 1,
        name: 'a fill',
        outline: { rectangle: [60, 60] },
        mould: { margin: 0 },
        pours: [{ id: 'fill', resin: 'own', depth: 1, mixed }]
      },
      shop: {
        castwright: 1,
        scale: { resolution },
        resins: [{ id: 'own', like: 'medium', ratio: { a: 2.2, b: 1, by: 'mass' } }]
      }
    })
    const found = theOne(inlay('8 g'), 'least-batch')
    expect(found.severity).toBe('stop')
    expect(8 / 3.2).toBeCloseTo(2.5, 9)
    expect(found.value).toBeCloseTo(ratioErrorFromScale(2.5, 1) * 100, 6)
    expect(found.value).toBeCloseTo(20, 9)
    // 5 % of part B is half a step at 10 g of it, 32 g in all.
    expect(found.fix).toEqual([{ op: 'replace', path: '/pours/0/mixed', value: '32 g' }])
    expect(theOne(inlay('20 g'), 'least-batch').severity).toBe('caution')
    expect(asked(inlay('32 g'), 'least-batch')).toEqual([])
    expect(asked(inlay('8 g', 0.1), 'least-batch')).toEqual([])
  })
})
