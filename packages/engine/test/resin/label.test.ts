import { describe, expect, it } from 'vitest'
import { labelBand } from '../../src/cast/own-resin.ts'
import { isothermalTimeS } from '../../src/resin/conversion.ts'
import { cupHistory } from '../../src/resin/cup.ts'
import { greatestDepth } from '../../src/resin/depth.ts'
import { glassTransitionC } from '../../src/resin/glass.ts'
import { factorFor, type LabelFigures, scaled } from '../../src/resin/label.ts'
import { labelFit, labelWords } from '../../src/resin/label-fit.ts'
import type { ResinModel } from '../../src/resin/model.ts'
import { BOARD_18 } from '../../src/resin/slab.ts'
import { CLASSES } from './sets.ts'

/** A label as the forward models would print it: no part of the fit is used. */
function labelOf(resin: ResinModel, massG: number): Required<LabelFigures> {
  const ml = massG / 1.1
  const hardAt = Array.from({ length: 1000 }, (_, i) => i / 1000).find(
    a => glassTransitionC(resin.kinetics, a) >= 30
  )!
  const gelMin = cupHistory({
    resin,
    massG,
    vessel: { diameterMm: Math.cbrt((4 * ml * 1000) / Math.PI), capacityMl: ml * 1.5 },
    roomC: 25
  }).gelMin!
  return {
    potLife: { minutes: gelMin, massG, tempC: 25 },
    gelTime: { minutes: isothermalTimeS(resin.kinetics, 25, resin.kinetics.gelConversion) / 60, tempC: 25 },
    hardTime: { minutes: isothermalTimeS(resin.kinetics, 25, hardAt) / 60, tempC: 25 },
    greatestDepthMm: greatestDepth({ resin, bed: BOARD_18, roomC: 23 }, 60).depthMm,
    viscosityPaS: resin.flow.eta25PaS,
    densityKgM3: resin.bulk.liquidKgM3
  }
}

describe.each([
  ['deep', 1000],
  ['medium', 100],
  ['thin', 100]
] as const)('a label of the %s class', (name, massG) => {
  const resin = CLASSES[name]
  const label = labelOf(resin, massG)

  it('gives the class back, figure by figure', () => {
    for (const figure of ['potLife', 'gelTime', 'hardTime', 'greatestDepth'] as const) {
      const factor = factorFor(resin, label, figure)
      expect(factor, figure).toBeGreaterThan(0.97)
      expect(factor, figure).toBeLessThan(1.03)
    }
  })

  it.each([
    [2, 1],
    [0.6, 1],
    [1.5, 1.2],
    [1.2, 0.8]
  ])('of a resin %d times as fast with %d times the heat is met by both', (factor, heat) => {
    const other = scaled(resin, factor, heat)
    const fit = labelFit(resin, labelOf(other, massG))
    expect(fit.conflict).toBeNull()
    // The film fixes the speed; the heat is drawn to the class's by its prior.
    expect(Math.abs(Math.log(fit.factor / factor))).toBeLessThan(0.12)
    expect(Math.abs(Math.log(fit.heat / heat))).toBeLessThan(0.12)
    if (heat !== 1) expect(Math.sign(fit.heat - 1)).toBe(Math.sign(heat - 1))
  })
})

describe('a label', () => {
  const resin = CLASSES.medium

  it('of one figure is met exactly, at the heat of the class', () => {
    for (const minutes of [30, 60, 120, 300]) {
      const { model, heat, factor } = labelFit(resin, { potLife: { minutes, massG: 100, tempC: 25 } })
      expect(heat).toBe(1)
      const ml = 100 / 1.1
      const vessel = { diameterMm: Math.cbrt((4 * ml * 1000) / Math.PI), capacityMl: 150 }
      const { gelMin } = cupHistory({ resin: model, massG: 100, vessel, roomC: 25 })
      expect(Math.abs(Math.log(gelMin! / minutes)), `${minutes} min, factor ${factor}`).toBeLessThan(0.02)
    }
  })

  it('of nothing leaves the class', () => {
    const fit = labelFit(resin, {})
    expect(fit.model).toEqual(resin)
    expect(fit.time).toBeNull()
  })

  it('fixes density and fresh viscosity by themselves', () => {
    const { model } = labelFit(resin, { viscosityPaS: 0.55, densityKgM3: 1080 })
    expect(model.flow.eta25PaS).toBe(0.55)
    expect(model.bulk.liquidKgM3).toBe(1080)
    expect(model.bulk.curedKgM3 / 1080).toBeCloseTo(resin.bulk.curedKgM3 / resin.bulk.liquidKgM3, 12)
    expect(model.kinetics).toEqual(resin.kinetics)
  })

  it('says which figures go against each other and by how much', () => {
    const sound = labelOf(resin, 100)
    // Half the pot life of the class, and three times its depth: faster and slower at once.
    const fit = labelFit(resin, {
      potLife: { ...sound.potLife, minutes: sound.potLife.minutes / 2 },
      greatestDepthMm: sound.greatestDepthMm * 3
    })
    expect(fit.conflict).not.toBeNull()
    expect([fit.conflict!.fast.figure, fit.conflict!.slow.figure]).toEqual(['potLife', 'greatestDepth'])
    const [fast, slow] = [fit.conflict!.fast.factor as number, fit.conflict!.slow.factor as number]
    expect(fit.conflict!.times).toBeCloseTo(fast / slow, 9)
    expect(fit.factor).toBeGreaterThan(slow)
    expect(fit.factor).toBeLessThan(fast)
    // More depth is less heat too.
    expect(fit.heat).toBeLessThan(1)
    expect(labelWords(fit)[0]).toMatch(
      /^Pot life says \d\.\d times faster than the class, greatest depth says \d+(\.\d)? times slower than the class: they differ by a factor \d+(\.\d)?\. Taken: /
    )
  })

  it('beyond ten times either way is left out and told', () => {
    const fast = labelFit(resin, { gelTime: { minutes: 10, tempC: 25 } })
    expect(fast.factor).toBe(1)
    expect(fast.time).toBeNull()
    expect(labelWords(fast)).toEqual([
      expect.stringMatching(
        /^The gel time asks for a resin \d+ times faster than its class: it is left out\.$/
      )
    ])
    // By how much: a film's gel time goes as one over the speed.
    const asks = isothermalTimeS(resin.kinetics, 25, resin.kinetics.gelConversion) / 600
    expect(fast.figures[0]!.beyond).toBeCloseTo(asks, 6)
    const slow = labelFit(resin, { potLife: { minutes: 60 * 24 * 30, massG: 100, tempC: 25 } })
    expect(labelWords(slow)[0]).toMatch(/asks for a resin (\d\d+|more than 1000) times slower/)
  })

  it('that contradicts itself is taken wide enough for every figure of it, and invents no heat', () => {
    const labels: readonly LabelFigures[] = [
      { potLife: { minutes: 20, massG: 100, tempC: 25 }, gelTime: { minutes: 1200, tempC: 25 } },
      { potLife: { minutes: 240, massG: 100, tempC: 25 }, gelTime: { minutes: 60, tempC: 25 } },
      { gelTime: { minutes: 240, tempC: 25 }, hardTime: { minutes: 200, tempC: 25 } }
    ]
    for (const label of labels) {
      const fit = labelFit(resin, label)
      expect(fit.heat).toBeGreaterThanOrEqual(0.8 - 1e-12)
      expect(fit.heat).toBeLessThanOrEqual(1.2 + 1e-12)
      for (const { factor } of fit.figures) {
        const ratio = fit.factor / (factor as number)
        expect(fit.spread!).toBeGreaterThanOrEqual(Math.min(0.6, Math.abs(ratio - 1)) - 1e-9)
      }
      expect(labelBand({ time: 0.3, depth: 0.1, peakK: 10 }, fit).time).toBeGreaterThanOrEqual(0.3)
    }
    // A factor of ten between them: as wide as it goes.
    expect(labelFit(resin, labels[0]!).spread).toBe(0.6)
    expect(labelWords(labelFit(resin, labels[2]!))[0]).toBe(
      'Hard after 3 h 20 and gelled after 4 h is impossible: nothing is hard before it gels.'
    )
  })

  it('of more figures that agree leaves a narrower band', () => {
    const sound = labelOf(resin, 100)
    const one = labelFit(resin, { potLife: sound.potLife })
    const all = labelFit(resin, sound)
    expect(all.time!).toBeLessThan(one.time!)
  })
})
