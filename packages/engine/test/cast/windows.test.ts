import { describe, expect, it } from 'vitest'
import { bandedWindow, carriedOver, windowAt } from '../../src/cast/window.ts'
import { stonesEnds } from '../../src/cast/window-stones.ts'
import type { Windows } from '../../src/cast/windows.ts'
import { bandedWindows, MACHINE_LEAST_DAYS, windowsOf } from '../../src/cast/windows.ts'
import { RESINS } from '../../src/catalogue/resin.ts'
import type { ResinResult } from '../../src/resin/column-result.ts'
import { glassTransitionC } from '../../src/resin/glass.ts'
import { BOARD_18, runSlab } from '../../src/resin/slab.ts'
import { filmThickening, viscosityPaS } from '../../src/resin/thickening.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'

const medium = RESINS.find(r => r.id === 'medium')!
const { kinetics, flow } = medium.model!
const WEEK_S = 7 * 86_400
const words = { settledBy: 'a look', basis: 'made' }

/** A made history at 20 °C throughout: conversion rises along a line to its end, the same everywhere. */
function made(endConversion: number, endS = WEEK_S, n = 4001): ResinResult {
  const timeS = Float64Array.from({ length: n }, (_, i) => (endS * i) / (n - 1))
  const conversion = timeS.map(t => (endConversion * t) / endS)
  const twenty = timeS.map(() => 20)
  const tg = conversion.map(a => glassTransitionC(kinetics, a))
  return {
    firstGelS: (kinetics.gelConversion / endConversion) * endS,
    halfGelS: null,
    history: {
      timeS,
      meanC: twenty,
      maxC: twenty,
      innerC: twenty,
      outerC: twenty,
      meanConversion: conversion,
      leastConversion: conversion,
      outerConversion: conversion,
      meanViscosityPaS: conversion.map(a => Math.min(1e9, viscosityPaS(flow, kinetics.gelConversion, 20, a))),
      meanTgC: tg,
      outerTgC: tg
    }
  } as unknown as ResinResult
}

describe('the windows of a run', () => {
  it('are the crossings of its history: a conversion that rises along a line has them in closed form', () => {
    const run = made(0.95)
    const w = windowsOf(medium, run)
    const minAt = (a: number) => ((a / 0.95) * WEEK_S) / 60
    expect(w.tacky.open).toBeCloseTo(minAt(kinetics.gelConversion), 6)
    expect(w.tacky.close).toBeCloseTo(minAt(0.8), 6)
    expect(w.recoat.open).toBeCloseTo(minAt(kinetics.gelConversion), 6)
    // Glass transition 10 K over the room of 20 °C, by the inverse of DiBenedetto's equation, worked by hand:
    // y = (30 + 40)/118, α = y/(λ + (1 − λ)·y).
    const y = 70 / 118
    expect(w.demould.open).toBeCloseTo(minAt(y / (0.42 + 0.58 * y)), 0)
    expect(w.demould.close).toBeNull()
    expect(w.tgC.central).toBeCloseTo(glassTransitionC(kinetics, 0.95), 6)
  })

  it('marble from 3 to 10 Pa·s, a thin film as its quadrature over conversion says', () => {
    const pour = { resin: medium.model!, depthMm: 0.5, bed: { layers: [], hFloorWm2K: 1e6 }, roomC: 22 }
    const w = windowsOf(medium, runSlab(pour, WEEK_S).resin)
    const film = filmThickening(kinetics, flow, 22)
    expect(w.marbling!.open / film.syrupMin!).toBeCloseTo(1, 1)
    expect(w.marbling!.close! / film.honeyMin!).toBeCloseTo(1, 1)
    expect(w.working.close! / film.doubleMin!).toBeCloseTo(1, 1)
  })

  it('a level twice as high is reached later, half as high sooner', () => {
    const run = made(0.95)
    const at = (levels: number) => windowsOf(medium, run, { levels }).marbling!.open
    expect(at(2)).toBeGreaterThan(at(1))
    expect(at(0.5)).toBeLessThan(at(1))
  })

  it('what is not reached in seven days says so and ends with them', () => {
    const w = windowsOf(medium, made(0.3))
    expect(w.gelMin).toBeCloseTo((0.58 / 0.3) * 7 * 1440, 6)
    expect(w.demould).toMatchObject({ reached: false, open: 7 * 1440, openBand: [7 * 1440, null] })
    expect(w.recoat.reached).toBe(false)
  })

  it('every window names its basis and the reading that would sharpen it', () => {
    const w = windowsOf(medium, made(0.95)) as unknown as Record<
      string,
      { settledBy?: string; basis?: string }
    >
    for (const k of [
      'working',
      'marbling',
      'passes',
      'tacky',
      'recoat',
      'demould',
      'sand',
      'machine',
      'service'
    ])
      expect([k, w[k]!.settledBy!.length > 10, w[k]!.basis!.length > 10]).toEqual([k, true, true])
  })

  it('heat gun passes are moments of the first two hours, none after it is as thick as honey', () => {
    const { passes, marbling } = windowsOf(medium, made(0.95, 86_400))
    const honey = marbling!.close!
    expect(passes.moments.length).toBeGreaterThan(0)
    for (const m of passes.moments) expect(m).toBeLessThanOrEqual(Math.min(120, honey))
  })
})

describe('a window with a band', () => {
  const at = (open: number | null, close: number | null) => windowAt(open, close, 1000, words)

  it('is the hull of every end, by hand', () => {
    const w = bandedWindow(at(10, 50), [at(8, 60), at(12, 45)])
    expect(w).toMatchObject({ open: 10, close: 50, band: [8, 60], openBand: [8, 12], closeBand: [45, 60] })
  })

  it('stays open to the late side when one run never opens or never closes', () => {
    const w = bandedWindow(at(10, 50), [at(8, null), at(null, null), null])
    expect(w.band).toEqual([8, null])
    expect(w.openBand).toEqual([8, null])
    expect(w.closeBand).toEqual([50, null])
  })

  it('found on another bed is carried over in proportion, by hand', () => {
    // The corner opens at 8 for 10 of its own centre, and closes at 60 for 40: 0.8 and 1.5 times.
    expect(carriedOver(at(20, 100), at(10, 40), at(8, 60))).toEqual({ reached: true, open: 16, close: 150 })
    // What has no centre to go by stands as it was found.
    expect(carriedOver(at(20, null), at(10, null), at(8, 60))).toMatchObject({ close: 60 })
    expect(carriedOver(at(20, 100), at(10, 40), null)).toBeNull()
    expect(carriedOver(at(20, 100), at(10, 40), at(null, null))).toMatchObject({
      reached: false,
      close: null
    })
  })

  it('in a plan holds the time of the peak too', () => {
    const { peakMin, peakMinBand } = worked({ piece: PLAIN }).casts[0]!
    expect(peakMinBand[0]).toBeLessThan(peakMin)
    expect(peakMinBand[1]).toBeGreaterThan(peakMin)
  })

  it('without other runs is itself', () => {
    expect(bandedWindow(at(10, 50), [])).toEqual(at(10, 50))
  })

  it('of a pour holds every corner, for any list of runs', () => {
    const slab = (rateFactor: number, roomC: number) =>
      windowsOf(
        medium,
        runSlab({ resin: medium.model!, depthMm: 6, bed: BOARD_18, roomC, rateFactor }, WEEK_S, 'quick').resin
      )
    const central = slab(1, 22)
    const others: Windows[] = [slab(0.8, 20), slab(1.4, 24), slab(1, 24)]
    const w = bandedWindows(central, others)
    for (const k of ['working', 'tacky', 'recoat', 'demould', 'sand'] as const)
      for (const o of [central, ...others]) {
        expect(o[k].open).toBeGreaterThanOrEqual(w[k].openBand[0] - 1e-9)
        expect(o[k].open).toBeLessThanOrEqual((w[k].openBand[1] ?? Infinity) + 1e-9)
        if (o[k].close !== null) {
          expect(o[k].close!).toBeGreaterThanOrEqual(w[k].closeBand[0]! - 1e-9)
          expect(o[k].close!).toBeLessThanOrEqual((w[k].closeBand[1] ?? Infinity) + 1e-9)
        }
      }
    expect(w.machine.band[0]).toBe(MACHINE_LEAST_DAYS * 1440)
  })

  it('in a plan is computed, not a flat share of its time', () => {
    const { recoat, demould } = worked({
      piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 40 }] }
    }).casts[0]!.windows
    for (const w of [recoat, demould]) {
      expect(w.openBand[0]).toBeLessThan(w.open)
      expect(w.openBand[1]).toBeGreaterThan(w.open)
    }
    const shares = (w: typeof recoat) => [1 - w.openBand[0] / w.open, w.openBand[1]! / w.open - 1]
    const [early, late] = shares(demould)
    expect(Math.abs(late! / early! - 1)).toBeGreaterThan(0.05)
    expect(Math.abs(late! - 0.3)).toBeGreaterThan(0.03)
    expect(Math.abs(shares(recoat)[1]! / late! - 1)).toBeGreaterThan(0.05)
  })
})

describe('the window of stones', () => {
  // η constant until it is solid: s = 2/9·Δρ·g·r²·(t_gel − t)/η.
  const solidS = 6000
  const timeS = Float64Array.of(0, solidS, solidS + 1e-3)
  const history = { timeS, meanViscosityPaS: Float64Array.of(5, 5, 1e9) }
  const speedMmS = (mm: number) => ((2 / 9) * 1550 * 9.80665 * (mm / 2000) ** 2 * 1000) / 5

  it('of a constant viscosity is the closed form of Stokes', () => {
    const [open, close] = stonesEnds(history, {
      sizeMm: [1, 1],
      densityKgM3: 2650,
      liquidKgM3: 1100,
      mostMm: 200,
      leastMm: 10
    })!
    // Schiller and Naumann's drag is 0.1 % over Stokes here; the search ends within 0.01 min.
    expect(Math.abs(open! * 60 - (solidS - 200 / speedMmS(1)))).toBeLessThan(3)
    expect(Math.abs(close! * 60 - (solidS - 11 / speedMmS(1)))).toBeLessThan(1)
  })

  it('opens at once where the floor is as good, never for what floats', () => {
    const sink = {
      sizeMm: [4, 16],
      densityKgM3: 2650,
      liquidKgM3: 1100,
      mostMm: Number.POSITIVE_INFINITY,
      leastMm: 0
    } as const
    expect(stonesEnds(history, sink)![0]).toBe(0)
    expect(stonesEnds(history, { ...sink, densityKgM3: 800 })).toBeNull()
  })
})
