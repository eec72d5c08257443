import { describe, expect, it } from 'vitest'
import { pourBand } from '../../src/resin/bands.ts'
import { runColumn } from '../../src/resin/column.ts'
import { resinOf } from '../../src/resin/column-result.ts'
import { greatestDepth } from '../../src/resin/depth.ts'
import { BOARD_18, peakHorizonS, runSlab, type SlabPour, slabColumn } from '../../src/resin/slab.ts'
import { CLASSES } from './sets.ts'

const pour: SlabPour = { resin: CLASSES.deep, depthMm: 40, bed: BOARD_18, roomC: 22 }
const band = { time: 0.3, depth: 0.25, peakK: 15 }

describe('the greatest depth of a pour', () => {
  it('lies at the edge: its own peak is below the limit, half a millimetre more is above', () => {
    for (const [resin, limit] of [
      [CLASSES.deep, 60],
      [CLASSES.medium, 60],
      [CLASSES.thin, 100]
    ] as const) {
      const { depthMm, peakC, unbounded } = greatestDepth({ ...pour, resin }, limit)
      const peakAt = (mm: number): number => {
        const at = { ...pour, resin, depthMm: mm }
        return runSlab(at, peakHorizonS(at), 'quick').resin.peakC
      }
      expect(unbounded).toBe(false)
      expect(peakC).toBeCloseTo(peakAt(depthMm), 6)
      expect(peakC).toBeLessThanOrEqual(limit)
      expect(peakAt(depthMm * 1.012 + 0.02)).toBeGreaterThan(limit)
    }
  })

  it('shrinks in a warmer room, grows with the limit and with a mixing liquid', () => {
    const at = (change: Partial<SlabPour>, limit = 60): number =>
      greatestDepth({ ...pour, ...change }, limit).depthMm
    const base = at({})
    expect(at({ roomC: 25 })).toBeLessThan(base)
    expect(at({}, 100)).toBeGreaterThan(base)
    expect(at({ kLiquidMultiplier: 3 })).toBeGreaterThan(base)
    expect(at({ rateFactor: 1.5 })).toBeLessThan(base)
  })

  it('is nothing in a room past the limit, and says when no edge was found', () => {
    expect(greatestDepth({ ...pour, roomC: 30 }, 25)).toMatchObject({ depthMm: 0, unbounded: false })
    expect(greatestDepth(pour, 200, { mostMm: 20 })).toMatchObject({ depthMm: 20, unbounded: true })
  })

  it('uses a run long enough to hold the peak', () => {
    for (const resin of Object.values(CLASSES))
      for (const depthMm of [2, 10, 40]) {
        const at = { ...pour, resin, depthMm, roomC: 15 }
        expect(runSlab(at, peakHorizonS(at)).resin.peakAtS).toBeLessThan(0.5 * peakHorizonS(at))
      }
  })
})

describe('the band of a pour', () => {
  it('holds the centre and every run whose inputs lie within', () => {
    const b = pourBand({ pour, band })
    for (const key of ['peakC', 'firstGelMin', 'workingMin'] as const) {
      expect(b[key].low!).toBeLessThanOrEqual(b[key].central!)
      expect(b[key].high!).toBeGreaterThanOrEqual(b[key].central!)
    }
    // a lattice of times, rooms and multipliers inside the band
    for (const times of [0.75, 1, 1.2])
      for (const roomC of [20.5, 22, 23.5])
        for (const kLiquidMultiplier of [1, 1.7, 3]) {
          const at = { ...pour, rateFactor: 1 / times, roomC, kLiquidMultiplier }
          const { peakC, firstGelS } = runSlab(at, peakHorizonS(at), 'quick').resin
          expect(peakC).toBeGreaterThanOrEqual(b.peakC.low)
          expect(peakC).toBeLessThanOrEqual(b.peakC.high)
          expect(firstGelS! / 60).toBeGreaterThanOrEqual(b.firstGelMin.low!)
          expect(firstGelS! / 60).toBeLessThanOrEqual(b.firstGelMin.high!)
        }
  })

  it('closes to the centre when nothing is uncertain', () => {
    const sure = { pour, band: { ...band, time: 0 }, roomBandK: 0, liquidMultiplier: [1, 1] } as const
    const b = pourBand(sure)
    expect(b.peakC.low).toBe(b.peakC.central)
    expect(b.peakC.high).toBe(b.peakC.central)
    expect(b.effectK).toEqual({ rate: 0, room: 0, convection: 0 })
  })

  it('names the input that matters most', () => {
    expect(pourBand({ pour, band }).mostFrom).toBe('rate')
    expect(pourBand({ pour, band: { ...band, time: 0.02 }, roomBandK: 5 }).mostFrom).toBe('room')
    const still = { pour: { ...pour, depthMm: 50 }, band: { ...band, time: 0.01 }, roomBandK: 0.05 }
    expect(pourBand(still).mostFrom).toBe('convection')
  })

  it('is wide where the pour is bistable and narrow where it is shallow', () => {
    const shallow = pourBand({ pour: { ...pour, depthMm: 15 }, band })
    const deep = pourBand({ pour: { ...pour, resin: CLASSES.medium, depthMm: 13 }, band })
    expect(shallow.peakC.high - shallow.peakC.low).toBeLessThan(10)
    expect(deep.peakC.high - deep.peakC.low).toBeGreaterThan(60)
  })

  it('comes out the same every time', () => {
    expect(pourBand({ pour, band })).toEqual(pourBand({ pour, band }))
  })
})

describe('the ends of a band', () => {
  it('lie at the coldest and the hottest corner: six runs give the hull of nine', () => {
    for (const resin of [CLASSES.deep, CLASSES.medium, CLASSES.thin])
      for (const depthMm of [3, 12, 30]) {
        const all = pourBand({ pour: { ...pour, resin, depthMm }, band })
        const ends = pourBand({ pour: { ...pour, resin, depthMm }, band, corners: 'ends' })
        expect(ends.peakC).toEqual(all.peakC)
      }
  })

  it('a film needs few cells: its peak with 6 is that with 40 within a tenth of a kelvin', () => {
    for (const resin of [CLASSES.deep, CLASSES.medium, CLASSES.thin])
      for (const depthMm of [0.3, 1, 2]) {
        const at = { ...pour, resin, depthMm }
        const column = slabColumn(at, peakHorizonS(at))
        const fine = { ...column, layers: column.layers.map(l => ({ ...l, cells: 40 })) }
        expect(Math.abs(resinOf(runColumn(column)).peakC - resinOf(runColumn(fine)).peakC)).toBeLessThan(0.1)
      }
  })
})
