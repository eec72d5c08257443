import { describe, expect, it } from 'vitest'
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
      'The gel time asks for a resin more than 10 times faster than its class: it is left out.'
    ])
    const slow = labelFit(resin, { potLife: { minutes: 60 * 24 * 30, massG: 100, tempC: 25 } })
    expect(labelWords(slow)[0]).toContain('more than 10 times slower')
  })

  it('of more figures that agree leaves a narrower band', () => {
    const sound = labelOf(resin, 100)
    const one = labelFit(resin, { potLife: sound.potLife })
    const all = labelFit(resin, sound)
    expect(all.time!).toBeLessThan(one.time!)
  })
})
