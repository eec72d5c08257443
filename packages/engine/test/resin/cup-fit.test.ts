import { describe, expect, it } from 'vitest'
import { cholesky, leastSquares } from '../../src/quantity/least-squares.ts'
import { bodyHistory } from '../../src/resin/cup.ts'
import { courseAt, cupCourse, stepsOf } from '../../src/resin/fit/cup-course.ts'
import { fitCup } from '../../src/resin/fit/cup-fit.ts'
import { modelAt, PARAMETERS } from '../../src/resin/fit/cup-parameter.ts'
import { cupReport } from '../../src/resin/fit/cup-report.ts'
import type { CupTest } from '../../src/resin/fit/cup-test.ts'
import { cupWords } from '../../src/resin/fit/cup-words.ts'
import { NINETY, predictionBands } from '../../src/resin/fit/prediction.ts'
import { ball } from './cup-ball.ts'
import { rows } from './cup-fit.evidence.ts'
import { run, seeded, shown, type Truth } from './cup-world.ts'
import { integrate } from './odex.ts'
import { checkRows } from './rows.ts'
import { CLASSES } from './sets.ts'

const CLASS_BAND = { time: 0.3, depth: 0.25, peakK: 15 }

checkRows(rows)

describe('the course of a cup', () => {
  it.each([
    ['deep', 14, 700],
    ['medium', 8, 95],
    ['medium', 8, 140],
    ['thin', 7, 15]
  ] as const)('of %s, V/A %d mm, is that of an independent integrator after %d min', (name, va, minutes) => {
    const resin = CLASSES[name]
    const untilS = minutes * 60
    const course = cupCourse({
      resin,
      rateFactor: 1,
      volumePerAreaMm: va,
      hWm2K: 9,
      roomC: 22,
      startC: 24,
      untilS
    })
    const y = integrate(
      ball(resin, (3 * va) / 1000, 8, 9, 295.15),
      [...new Array(8).fill(297.15), ...new Array(8).fill(0)],
      untilS
    )
    const last = course.centreC.length - 1
    const centre = y[0]! + (y[0]! - y[1]!) / 8 - 273.15
    // Steps allow 0.3 K each; on a steep rise a second is half a kelvin.
    const rate = Math.abs(course.centreC[last]! - courseAt(course, course.centreC, untilS - 30)) / 30
    expect(Math.abs(course.centreC[last]! - centre)).toBeLessThan(0.4 + 0.004 * untilS * rate)
    expect(Math.abs(course.centreConversion[last]! - (y[8]! + (y[8]! - y[9]!) / 8))).toBeLessThan(0.01)
  })

  it('of eight shells is within 0.8 K of forty, and gels within 1 %', () => {
    for (const [name, va] of [
      ['deep', 14],
      ['medium', 8]
    ] as const) {
      const resin = CLASSES[name]
      const full = bodyHistory({ resin, volumePerAreaMm: va, roomC: 22, startC: 24, hWm2K: 9, untilH: 24 })
      const course = cupCourse({
        resin,
        rateFactor: 1,
        volumePerAreaMm: va,
        hWm2K: 9,
        roomC: 22,
        startC: 24,
        untilS: 86_400
      })
      expect(Math.abs(Math.max(...course.centreC) - full.peakC)).toBeLessThan(0.8)
      const i = course.centreConversion.findIndex(a => a >= resin.kinetics.gelConversion)
      expect(Math.abs(course.timeS[i]! / 60 / full.gelMin! - 1)).toBeLessThan(0.025)
    }
  })

  it('on the steps of another is smooth in what was changed', () => {
    const resin = CLASSES.medium
    const at = (rateFactor: number, steps?: readonly number[]) =>
      cupCourse(
        { resin, rateFactor, volumePerAreaMm: 8, hWm2K: 9, roomC: 22, startC: 22, untilS: 5400 },
        steps
      )
    const base = at(1)
    const end = (factor: number) => at(factor, stepsOf(base)).centreC.at(-1)!
    const slopes = [1e-3, 1e-4, 1e-5].map(d => (end(1 + d) - end(1 - d)) / (2 * d))
    expect(Math.abs(slopes[1]! / slopes[0]! - 1)).toBeLessThan(0.01)
    expect(Math.abs(slopes[2]! / slopes[1]! - 1)).toBeLessThan(0.01)
  })
})

describe('least squares with a prior', () => {
  it('gives the closed form of a straight line: (XᵀX + I)⁻¹Xᵀy', () => {
    const x = [0, 1, 2, 3, 5]
    const y = [1, 2.2, 2.8, 4.1, 6.3]
    const at = (t: Float64Array) => Float64Array.from(x, (v, i) => t[0]! + t[1]! * v - y[i]!)
    const fit = leastSquares({ size: 2, bound: 100, at, near: at }, new Float64Array(2))
    // [[6, 11], [11, 40]]·θ = [16.4, 51.6]
    const det = 6 * 40 - 121
    expect(fit.theta[0]).toBeCloseTo((40 * 16.4 - 11 * 51.6) / det, 5)
    expect(fit.theta[1]).toBeCloseTo((6 * 51.6 - 11 * 16.4) / det, 5)
    expect(fit.covariance[0]![0]).toBeCloseTo(40 / det, 8)
    expect(fit.covariance[0]![1]).toBeCloseTo(-11 / det, 8)
    expect(fit.covariance[1]![1]).toBeCloseTo(6 / det, 8)
  })

  it('finds the bottom of a bent valley', () => {
    const at = (t: Float64Array) => Float64Array.of(100 * (t[1]! - t[0]! ** 2), 10 * (1 - t[0]!))
    const { theta } = leastSquares({ size: 2, bound: 10, at, near: at }, Float64Array.of(-1.2, 1))
    expect(theta[0]).toBeCloseTo(0.98, 1)
    expect(theta[1]).toBeCloseTo(0.96, 1)
  })

  it('refuses a matrix that is none of a covariance', () => {
    expect(() => cholesky([Float64Array.of(1, 2), Float64Array.of(2, 1)])).toThrow('not positive definite')
  })
})

/** A cup of the world: what a class with other numbers does, read every five minutes. */
function cupOf(change: Partial<Truth>, every = 5, untilMin = 240, sigmaK = 0.3): CupTest & { truth: Truth } {
  const { kinetics: c, flow } = CLASSES.medium
  const truth: Truth = {
    k2: c.k2At25PerS,
    k1: c.k2At25PerS * c.k1OverK2At25,
    e1: c.e1JPerMol,
    e2: c.e2JPerMol,
    m: 1,
    n: 1.9,
    heat: c.heatJPerKg,
    gel: c.gelConversion,
    tg: [c.tg0C, c.tgInfC, c.lambda],
    eta25: flow.eta25PaS,
    etaE: flow.etaEJPerMol,
    c1: flow.c1,
    c2: flow.c2,
    strings: 3,
    hCup: 9,
    ...change
  }
  const massG = 120
  const diameterMm = 55
  const ml = massG / 1.1
  const high = (ml * 1000) / ((Math.PI * diameterMm ** 2) / 4)
  const va = (ml * 1000) / ((Math.PI * diameterMm ** 2) / 2 + Math.PI * diameterMm * high) / 1000
  const told = run(truth, {
    j: 1,
    sizeM: 2 * va,
    hOuter: truth.hCup,
    hInner: 0,
    roomC: 22,
    startC: 23,
    untilS: 60 * untilMin + 60
  })
  const times = Array.from({ length: Math.floor(untilMin / every) + 1 }, (_, i) => i * every)
  const readings = shown(told, times, 30, { sigmaK, hangs: 0.4 }, seeded(11))
  const moment = (min: number): number | null => (min <= untilMin ? Math.round(min) : null)
  return {
    truth,
    massG,
    diameterMm,
    roomC: 22,
    startC: null,
    readings,
    stringsMin: moment(told.stringsMin),
    gelledMin: moment(told.middleGelMin)
  }
}

describe('a fit', () => {
  it.each([
    ['a resin half as fast again', { k2: 2.1e-4, k1: 3.15e-5 }],
    ['a slower one', { k2: 0.9e-4, k1: 1.35e-5 }],
    ['a hotter one', { heat: 400_000 }],
    ['other exponents', { m: 0.85, n: 1.7 }]
  ] as const)('of %s holds what it truly is', (_, change) => {
    const test = cupOf(change, 5, 420)
    const fit = fitCup(test, CLASSES.medium)
    const report = cupReport(fit, { band: CLASS_BAND })
    const heat = report.parameters.find(p => p.name === 'heat')!
    expect(test.truth.heat / 1000).toBeGreaterThan(heat.low - 5)
    expect(test.truth.heat / 1000).toBeLessThan(heat.high + 5)
    expect(report.speedLearned && report.heatLearned).toBe(true)
    // A quarter of the class's range of speeds, 0.42 to 2.36, at most.
    expect(report.faster.high / report.faster.low).toBeLessThan(1.8)
    expect(report.band.time).toBeLessThan(CLASS_BAND.time)
    expect(fit.noise.sigmaK).toBeLessThan(0.7)
    expect(fit.peakSeen).toBe(true)
    for (const r of fit.residuals) expect(Math.abs(r.offK)).toBeLessThan(3 + 0.03 * r.measuredC)
  })

  it('of a test that ended before the peak works, with wider bands, and says so', () => {
    const whole = cupOf({})
    const end = whole.readings.findIndex(r => r.tempC > 45)
    const test = { ...whole, readings: whole.readings.slice(0, end), stringsMin: null, gelledMin: null }
    const [a, b] = [whole, test].map(t => cupReport(fitCup(t, CLASSES.medium), { band: CLASS_BAND }))
    expect(b!.heatJG.high / b!.heatJG.low).toBeGreaterThan(1.5 * (a!.heatJG.high / a!.heatJG.low - 1) + 1)
    expect(b!.heatLearned).toBe(false)
    const fit = fitCup(test, CLASSES.medium)
    const says = cupWords(test, fit, b!).join(' ')
    expect(says).toMatch(/heat is not determined: the test ended before the peak/)
    expect(says).toMatch(/No time for "strings" was given/)
  })

  it('of a late start, and of a gap, holds the heat', () => {
    const whole = cupOf({})
    for (const keep of [(t: number) => t >= 45, (t: number) => t < 50 || t > 85]) {
      const test = { ...whole, readings: whole.readings.filter(r => keep(r.timeMin)) }
      const { heatJG } = cupReport(fitCup(test, CLASSES.medium), { band: CLASS_BAND })
      expect(heatJG.low).toBeLessThan(325)
      expect(heatJG.high).toBeGreaterThan(315)
    }
  })

  it('of more noise has wider bands', () => {
    const widths = [0.2, 3].map(sigmaK => {
      const { heatJG } = cupReport(fitCup(cupOf({}, 5, 240, sigmaK), CLASSES.medium), { band: CLASS_BAND })
      return heatJG.high / heatJG.low
    })
    expect(widths[1]!).toBeGreaterThan(widths[0]! + 0.02)
  })

  it('of three readings says that little was learned', () => {
    const whole = cupOf({})
    const test = { ...whole, readings: whole.readings.slice(0, 3), stringsMin: null, gelledMin: null }
    const report = cupReport(fitCup(test, CLASSES.medium), { band: CLASS_BAND })
    expect(report.heatLearned).toBe(false)
    expect(report.parameters.every(p => p.low <= p.value && p.value <= p.high)).toBe(true)
  })

  it('gives the same bytes for the same readings, and no NaN for any', () => {
    const once = fitCup(cupOf({}), CLASSES.medium)
    expect(JSON.stringify(fitCup(cupOf({}), CLASSES.medium))).toBe(JSON.stringify(once))
    const random = seeded(99)
    for (let k = 0; k < 6; k++) {
      const count = 3 + Math.floor(random() * 12)
      let t = random() * 10
      const readings = Array.from({ length: count }, () => {
        t += 0.01 + random() ** 4 * 4000
        return { timeMin: t, tempC: -10 + random() ** 2 * 360 }
      })
      const test: CupTest = {
        massG: 5 + random() ** 3 * 49_000,
        diameterMm: 20 + random() * 900,
        roomC: random() * 45,
        startC: random() < 0.5 ? null : 5 + random() * 50,
        readings,
        stringsMin: random() < 0.5 ? null : 1 + random() * 300,
        gelledMin: random() < 0.5 ? null : 301 + random() * 3000
      }
      const fit = fitCup(test, CLASSES[(['deep', 'medium', 'thin'] as const)[k % 3]!])
      const text = JSON.stringify([fit, cupReport(fit, { band: CLASS_BAND })])
      // JSON writes null for NaN and infinities.
      expect(text).not.toMatch(/null/)
    }
  })

  it('refuses what is out of range', () => {
    const test = cupOf({})
    expect(() => fitCup({ ...test, massG: -5 }, CLASSES.medium)).toThrow('mass of the cup test in g is -5')
    expect(() => fitCup({ ...test, readings: test.readings.slice(0, 2) }, CLASSES.medium)).toThrow(
      '2 readings'
    )
    expect(() => fitCup({ ...test, readings: [...test.readings].reverse() }, CLASSES.medium)).toThrow(
      'does not come after'
    )
  })
})

describe('bands of a prediction', () => {
  const size = PARAMETERS.length
  const identity = Array.from({ length: size }, (_, i) =>
    Array.from({ length: size }, (_, j) => (i === j ? 1 : 0))
  )
  const fit = { base: CLASSES.medium, theta: new Array<number>(size).fill(0), covariance: identity }

  it('of something linear in θ are ±1.645 standard deviations', () => {
    // ln H is linear: its width is the prior's.
    const [band] = predictionBands(fit, ({ model }) => [Math.log(model.kinetics.heatJPerKg)])
    expect(band!.high - band!.central).toBeCloseTo(NINETY * 0.22, 9)
    expect(band!.central - band!.low).toBeCloseTo(NINETY * 0.22, 9)
  })

  it('of a bent one that rises throughout have their ends where it is at ±1.645', () => {
    const bent = (h: number): number => 1 / (1 + Math.exp(-20 * Math.log(h / 330_000)))
    const [band] = predictionBands(fit, ({ model }) => [bent(model.kinetics.heatJPerKg)])
    expect(band!.high).toBeCloseTo(bent(320_000 * Math.exp(NINETY * 0.22)), 6)
    expect(band!.low).toBeCloseTo(bent(320_000 * Math.exp(-NINETY * 0.22)), 6)
  })

  it('refuse what is not finite', () => {
    expect(() => predictionBands(fit, () => [Number.NaN])).toThrow('NaN')
  })

  it('the class at θ = 0 is the class but for n', () => {
    const { kinetics, flow } = modelAt(CLASSES.medium, fit.theta)
    expect({ ...kinetics, n: 2 }).toEqual(CLASSES.medium.kinetics)
    expect(flow).toEqual(CLASSES.medium.flow)
  })
})
