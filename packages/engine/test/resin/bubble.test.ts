import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { find } from '../../src/catalogue/find.ts'
import { MIXING, mixingOf } from '../../src/catalogue/mixing.ts'
import {
  bubbleAtPressureMm,
  clearAfterMin,
  holdsBubbleBelowMm,
  laplacePa,
  STANDARD_PA,
  smallestThatLeavesMm,
  stokesRiseMmS
} from '../../src/resin/bubble.ts'
import { conversionPath } from '../../src/resin/conversion.ts'
import { type FlowHistory, fluidity, fluidityReachedMin, STUCK_PAS } from '../../src/resin/fluidity.ts'
import { airGivenOff, bubblesOf } from '../../src/resin/outgassing.ts'
import { airThatStays, clingsToWall, hidesView, stirringHeatK } from '../../src/resin/stir.ts'
import { freshAsThickC, freshViscosityPaS, viscosityPaS } from '../../src/resin/thickening.ts'
import { warmBath } from '../../src/resin/warm-bath.ts'
import { rows } from './bubble.evidence.ts'
import { checkRows } from './rows.ts'

const deep = find('resin', 'deep')!.model!
const medium = find('resin', 'medium')!.model!

// η0·e^(t/τ) at irregular samples, up to beyond stuck.
function exponential(eta0: number, tauMin: number, untilMin: number, samples: number): FlowHistory {
  const min = Array.from({ length: samples + 1 }, (_, k) => untilMin * (k / samples) ** 1.3)
  return { min, viscosityPaS: min.map(t => eta0 * Math.exp(t / tauMin)) }
}

/** A thin film at one temperature: the thickening of a class, to its gel. */
function film(model: typeof deep, tempC: number): FlowHistory {
  const path = conversionPath(model.kinetics, { timeS: [0, 72 * 3600], tempC: [tempC, tempC] })
  return {
    min: path.timeS.map(s => s / 60),
    viscosityPaS: path.conversion.map(a =>
      Math.min(1e9, viscosityPaS(model.flow, model.kinetics.gelConversion, tempC, a))
    )
  }
}

describe('bubbles', () => {
  checkRows(rows)

  it('fluidity: constant viscosity and exponential thickening have their closed forms', () => {
    expect(fluidity({ min: [0, 3, 60], viscosityPaS: [2, 2, 2] })).toBeCloseTo(1800, 9)
    // (τ/η0)(1 − η0/stuck), by hand.
    const history = exponential(0.5, 40, 600, 37)
    const exact = ((40 * 60) / 0.5) * (1 - 0.5 / STUCK_PAS)
    expect(fluidity(history) / exact).toBeCloseTo(1, 2)
    // Until a moment before it is stuck there is nothing left out at all.
    const until = history.min[20]!
    expect(fluidity(history, 0, until)).toBeCloseTo(((40 * 60) / 0.5) * (1 - Math.exp(-until / 40)), 6)
  })

  it('fluidity: a sum over parts is the whole, and its inverse is its inverse', () => {
    const history = exponential(0.5, 40, 600, 37)
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 200, noNaN: true }),
        fc.double({ min: 0, max: 100, noNaN: true }),
        (t, from) => {
          const m = fluidity(history, from, from + t)
          expect(
            fluidity(history, from, from + t / 2) + fluidity(history, from + t / 2, from + t)
          ).toBeCloseTo(m, 6)
          expect(fluidityReachedMin(history, m, from)! - from - t).toBeCloseTo(0, 4)
        }
      ),
      { seed: 4, numRuns: 60 }
    )
  })

  it('the smallest bubble that leaves is the one whose way ends at the depth', () => {
    // The slow obvious way: small steps of Stokes.
    const history = film(medium, 22)
    const d = smallestThatLeavesMm(history, 12, 1100)
    let way = 0
    for (let t = 0, i = 1; t < 900; t += 0.05) {
      while (i < history.min.length - 1 && history.min[i]! < t) i++
      const [t0, t1] = [history.min[i - 1]!, history.min[i]!]
      const eta =
        history.viscosityPaS[i - 1]! *
        (history.viscosityPaS[i]! / history.viscosityPaS[i - 1]!) ** ((t - t0) / (t1 - t0))
      if (eta > STUCK_PAS) break
      way += stokesRiseMmS(d, eta, 1100) * 3
    }
    expect(way).toBeCloseTo(12, 1)
    // Closed form for constant viscosity: d = √(18·L·η/(ρ·g·t)).
    const still = { min: [0, 100], viscosityPaS: [0.7, 0.7] }
    expect(smallestThatLeavesMm(still, 25, 1100)).toBeCloseTo(
      1000 * Math.sqrt((18 * 0.025 * 0.7) / (1100 * 9.80665 * 6000)),
      9
    )
    expect(clearAfterMin(still, 25, smallestThatLeavesMm(still, 25, 1100) * 0.999, 1100)).toBeNull()
    expect(clearAfterMin(still, 25, 1, 1100)!).toBeCloseTo(25 / stokesRiseMmS(1, 0.7, 1100) / 60, 9)
  })

  it('a slower resin, a shallower layer and an earlier start let smaller ones leave', () => {
    const slow = film(deep, 22)
    const fast = film(find('resin', 'thin')!.model!, 22)
    expect(smallestThatLeavesMm(slow, 10, 1100)).toBeLessThan(smallestThatLeavesMm(fast, 10, 1100))
    expect(smallestThatLeavesMm(fast, 5, 1100)).toBeLessThan(smallestThatLeavesMm(fast, 10, 1100))
    expect(smallestThatLeavesMm(fast, 5, 1100)).toBeLessThan(smallestThatLeavesMm(fast, 5, 1100, 20))
    expect(smallestThatLeavesMm(fast, 5, 1100, 1e4)).toBe(Number.POSITIVE_INFINITY)
  })

  it('pressure changes the size by Boyle where surface tension is small, and less where it is not', () => {
    // 1 mm: Laplace 168 Pa, Boyle alone ∛(1/4) = 0.630.
    expect(bubbleAtPressureMm(1, 4 * STANDARD_PA)).toBeCloseTo(Math.cbrt(0.25), 2)
    expect(bubbleAtPressureMm(1, STANDARD_PA)).toBeCloseTo(1, 9)
    expect(bubbleAtPressureMm(1, STANDARD_PA / 10)).toBeCloseTo(Math.cbrt(10), 1)
    // The law itself, at 10 µm, where tension counts.
    const d = bubbleAtPressureMm(0.01, 1e4)
    expect((1e4 + laplacePa(d)) * d ** 3).toBeCloseTo((STANDARD_PA + laplacePa(0.01)) * 1e-6, 9)
    expect(d / 0.01).toBeLessThan(Math.cbrt(STANDARD_PA / 1e4))
  })

  it('dots of two to three millimetres hold a bubble, wide ones do not', () => {
    expect(holdsBubbleBelowMm(1100)).toBeGreaterThan(3)
    expect(holdsBubbleBelowMm(1100)).toBeLessThan(4)
  })

  it('air: none when it cools, in proportion to what is covered, and little through a seal', () => {
    const body = { volumeMl: 400, airFraction: 0.6, fromC: 20, toC: 45 }
    expect(airGivenOff({ ...body, toC: 12 })).toBe(0)
    expect(airGivenOff({ ...body, coveredShare: 0.5 })).toBeCloseTo(airGivenOff(body) / 2, 12)
    expect(airGivenOff({ ...body, seal: 'sealed' })).toBeLessThan(airGivenOff(body) / 10)
    expect(bubblesOf(1, 1)).toBeCloseTo(1910, 0)
    expect(() => airGivenOff({ ...body, airFraction: 1.2 })).toThrow(/air fraction is 1.2; allowed 0 to 1/)
  })

  it('a paddle leaves more air than a stick, and less of it the smaller the bubbles that leave', () => {
    const paddle = mixingOf('paddle')
    expect(airThatStays(paddle, 0.2)[1]).toBeGreaterThan(airThatStays(mixingOf('two cups'), 0.2)[1])
    expect(airThatStays(paddle, 0.05)).toEqual([0, 0])
    expect(airThatStays(paddle, 5)).toEqual(paddle.airShare)
    // By hand in steps: shares of equal ratio of diameters, each covering 1.5·share·depth/diameter.
    let covered = 0
    for (let k = 0; k < 1000; k++) {
      const d = 0.05 * (0.2 / 0.05) ** ((k + 0.5) / 1000)
      covered += (1.5 * airThatStays(paddle, 0.2)[0] * 10) / d / 1000
    }
    expect(hidesView(paddle, 0.2, 10)[0]).toBeCloseTo(covered, 4)
    expect(hidesView(mixingOf('two cups'), 0.09, 20)).toEqual([0, 0])
    for (const way of MIXING) {
      expect(way.confidence).toBe('practice')
      // Stirring itself warms a cup by next to nothing.
      expect(stirringHeatK(way, 0.7, 200, 1800)).toBeLessThan(0.5)
    }
  })

  it('a third of a millimetre on the wall of a cup is a few parts in a hundred', () => {
    // 500 ml in 100 mm: floor 7854, wall 20000 mm²: 27854·0.3/500000.
    expect(clingsToWall(500, 100)).toBeCloseTo(0.0167, 3)
    expect(clingsToWall(50, 50)).toBeGreaterThan(clingsToWall(500, 100))
  })

  it('the temperature at which a mix is as thick as asked is the inverse of its viscosity', () => {
    for (const { flow } of [deep, medium])
      for (const paS of [0.2, 1, 3])
        expect(freshViscosityPaS(flow, freshAsThickC(flow, paS))).toBeCloseTo(paS, 9)
    // By hand: 0.7 Pa·s at 25 °C, 55 kJ/mol: 3 Pa·s at 1/(1/298.15 + R/55000·ln(3/0.7)) = 279.8 K.
    expect(freshAsThickC(medium.flow, 3)).toBeCloseTo(6.6, 1)
  })

  it('a warm bath thins and hurries; at room temperature it does nothing', () => {
    const bath = (bathC: number, more: object = {}) =>
      warmBath({
        resin: medium,
        massG: 400,
        vessel: { capacityMl: 600, diameterMm: 90 },
        roomC: 20,
        bathC,
        neededMin: 8,
        ...more
      })
    const none = bath(20)
    expect(none.viscosityRatio).toBe(1)
    expect(none.minutesOut).toBe(none.minutesOutAtRoom)
    expect(none.refused).toBeNull()
    const baths = [20, 25, 30, 35, 40, 45].map(c => bath(c))
    for (let i = 1; i < baths.length; i++) {
      expect(baths[i]!.viscosityRatio).toBeLessThan(baths[i - 1]!.viscosityRatio)
      expect(baths[i]!.minutesOut!).toBeLessThan(baths[i - 1]!.minutesOut!)
    }
    // 55 kJ/mol from 20 to 35 °C: e^(−55000/R·(1/293.15 − 1/308.15)) = 0.334.
    expect(bath(35).viscosityRatio).toBeCloseTo(0.334, 2)
    expect(bath(30, { neededMin: 1e4 }).refused).toBe('runaway')
    expect(bath(60).refused).toBe('runaway')
    // A slow resin that stays cool but thickens: only the time is short.
    expect(
      warmBath({
        resin: deep,
        massG: 100,
        vessel: { capacityMl: 250, diameterMm: 80 },
        roomC: 20,
        bathC: 40,
        neededMin: 600
      }).refused
    ).toBe('short')
  })
})
