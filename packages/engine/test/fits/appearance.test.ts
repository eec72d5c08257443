import { describe, expect, it } from 'vitest'
import { linearOf } from '../../src/catalogue/pigment-optics.ts'
import { encodedOf, hexOf } from '../../src/colour/srgb.ts'
import { colourKernel } from '../../src/fits/colour-kernel.ts'
import { seenBetween, seenOf } from '../../src/fits/core-colour.ts'
import type { Looks, MixLook } from '../../src/fits/looks.ts'
import { insideOf } from '../../src/fits/looks.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { bounds, inside } from '../../src/shape/measure.ts'
import type { CoreInterval } from '../../src/stack/core.ts'
import { coreAt } from '../../src/stack/core.ts'
import { workOf } from '../../src/work.ts'
import { PLAIN } from '../findings/harness.ts'
import { BOARDS, PANEL, TABLE } from '../sheets/pieces.ts'
import { chance } from '../stack/random.ts'

const worked = (piece: PieceDocument) =>
  workOf({
    piece: checkPiece(piece, 'piece'),
    shop: checkShop({ castwright: 1 }, 'shop').value,
    effort: 'preview'
  })

const part = (kind: 'timber' | 'pour', index: number, from: number, to: number): CoreInterval => ({
  from,
  to,
  material: { kind, index }
})
const mix = (s: number, k: number, doubt = 2): MixLook => ({
  scatterPerMm: [s, s, s],
  absorbPerMm: [k, k, k],
  doubt
})
const looks: Looks = {
  timbers: [
    { wood: insideOf([219, 196, 155]), char: null, lowMm: 0, highMm: 10 },
    { wood: insideOf([219, 196, 155]), char: insideOf([30, 28, 27]), lowMm: 0, highMm: 10 }
  ],
  pours: [mix(2, 0.4), mix(0, 0, 1)],
  markings: [],
  inCuts: [],
  inFormers: [],
  wall: linearOf([190, 190, 188]),
  hollow: linearOf([52, 52, 52]),
  faces: [0, 20],
  frontUp: true
}
const hex = (core: readonly CoreInterval[], face: 'front' | 'back' = 'front') =>
  hexOf(seenOf(looks, core, face)!)

describe('how a core looks', () => {
  it('is the timber where it lies bare or under clear, from either face', () => {
    expect(hex([part('timber', 0, 0, 20)])).toBe('#dbc49b')
    expect(hex([part('timber', 0, 0, 10), part('pour', 1, 10, 20)])).toBe('#dbc49b')
    expect(hex([part('pour', 1, 0, 10), part('timber', 0, 10, 20)], 'back')).toBe('#dbc49b')
  })

  it('is the wall through clear resin, and the hollow over a cut', () => {
    expect(hex([part('pour', 1, 0, 20)])).toBe('#bebebc')
    expect(hex([part('pour', 1, 5, 20)])).toBe('#343434')
    // From the back a cut is looked into: the floor of it is clear over the wall.
    expect(hex([part('pour', 1, 5, 20)], 'back')).toBe('#bebebc')
  })

  it('shows the char of a side that ends under resin, and wood at a flattened face', () => {
    expect(hex([part('timber', 1, 0, 6), part('pour', 1, 6, 20)])).toBe('#1e1c1b')
    expect(hex([part('timber', 1, 0, 20)])).toBe('#dbc49b')
    expect(hex([part('timber', 1, 0, 10), part('pour', 1, 10, 20)])).toBe('#dbc49b')
  })
})

describe('what shows', () => {
  const deep = [part('pour', 0, 0, 20)]
  const cut = (left: number) => [part('pour', 0, 20 - left, 20)]

  it('is less the more is left, and nothing where nothing is missing', () => {
    let last = Number.POSITIVE_INFINITY
    for (const left of [0.2, 0.5, 1, 2, 4, 8]) {
      const { difference, band } = seenBetween(looks, cut(left), deep, 'front')
      expect(difference).toBeLessThan(last)
      expect(band[0]).toBeLessThanOrEqual(difference)
      expect(band[1]).toBeGreaterThanOrEqual(difference)
      last = difference
    }
    expect(seenBetween(looks, deep, deep, 'front')).toEqual({ difference: 0, band: [0, 0], shows: 'no' })
  })

  it('is nothing under timber, and all under clear', () => {
    const board = [part('timber', 0, 0, 20)]
    expect(seenBetween(looks, [part('timber', 0, 8, 20)], board, 'front').shows).toBe('no')
    const clear = seenBetween(looks, [part('pour', 1, 8, 20)], [part('pour', 1, 0, 20)], 'front')
    expect(clear.shows).toBe('yes')
    // No pigment, no doubt.
    expect(clear.band[0]).toBeCloseTo(clear.band[1], 9)
  })

  it('counts what sits in the void where it shows more than the hollow', () => {
    const bright = linearOf([240, 240, 235])
    const thin = cut(0.8)
    const bare = seenBetween(looks, thin, deep, 'front').difference
    expect(seenBetween(looks, thin, deep, 'front', bright).difference).toBeGreaterThan(bare)
    expect(seenBetween(looks, thin, deep, 'front', looks.hollow).difference).toBeCloseTo(bare, 9)
  })

  it('is a matter of what lies behind: a body of the layer’s own colour does not show', () => {
    const own: Looks = { ...looks, timbers: [{ ...looks.timbers[0]!, wood: [0.535, 0.535, 0.535] }] }
    // R of an endless layer, K/S 0.2: 1.2 − √0.44.
    const endless = 1.2 - Math.sqrt(0.44)
    const same: Looks = { ...own, timbers: [{ ...own.timbers[0]!, wood: [endless, endless, endless] }] }
    const core = [part('timber', 0, 0, 19), part('pour', 0, 19, 20)]
    expect(seenBetween(same, core, [part('pour', 0, 0, 20)], 'front').shows).toBe('no')
  })
})

describe('colours of very many cores', () => {
  it('are those of the cores, each within two steps of 255, from both faces', () => {
    for (const piece of [PANEL, TABLE, BOARDS, { ...PANEL, down: 'front' as const }]) {
      const { stack, appearance } = worked(piece)
      const b = bounds(stack.geometry.outline)
      const { span } = chance(5)
      for (const face of ['front', 'back'] as const) {
        const kernel = colourKernel(appearance.looks, face)
        for (let i = 0; i < 300; i++) {
          const [x, y] = [span(b.minX, b.maxX), span(b.minY, b.maxY)]
          if (!inside(stack.geometry.outline, x, y)) continue
          const core = coreAt(stack.geometry, stack.events, x, y)
          const seen = seenOf(appearance.looks, core, face)
          const colour = kernel.colour(core)
          if (seen === null) {
            expect(colour).toBe(-1)
            continue
          }
          const off = seen.map((c, k) => Math.abs(encodedOf(c) - ((colour >> (16 - 8 * k)) & 255)))
          expect(Math.max(...off), `${piece.name} ${face} ${x} ${y}`).toBeLessThan(2)
          // Asked again it is looked up.
          const before = kernel.reckoned
          expect(kernel.colour(core)).toBe(colour)
          expect(kernel.reckoned).toBe(before)
        }
      }
    }
  })

  it('are those of as many layers as a document can hold', () => {
    const core = Array.from({ length: 300 }, (_, i) => part('pour', i % 2, i / 10, (i + 1) / 10))
    const colour = colourKernel(looks, 'front').colour(core)
    seenOf(looks, core, 'front')!.forEach((c, k) => {
      expect(Math.abs(encodedOf(c) - ((colour >> (16 - 8 * k)) & 255))).toBeLessThan(2)
    })
  })

  it('goes on when its table is full, and gives the same', () => {
    const kernel = colourKernel(looks, 'front')
    const core = (i: number) => [part('pour', 0, 0, 5 + i * 0.01), part('pour', 1, 5 + i * 0.01, 400)]
    const first = kernel.colour(core(7))
    for (let i = 0; i < 40_000; i++) kernel.colour(core(i))
    expect(kernel.colour(core(7))).toBe(first)
  })

  // Half a microsecond a core is asked for; the test allows ten times that, and of three tries the quickest counts.
  it('are quick where few stacks are met over and over', () => {
    const kernel = colourKernel(looks, 'front')
    const cores = [deepOf(1), deepOf(4), [part('timber', 0, 0, 10), part('pour', 1, 10, 20)]]
    for (let i = 0; i < 100_000; i++) kernel.colour(cores[i % 3]!)
    const tries = [0, 1, 2].map(() => {
      const from = performance.now()
      for (let i = 0; i < 200_000; i++) kernel.colour(cores[i % 3]!)
      return (performance.now() - from) / 200
    })
    expect(Math.min(...tries)).toBeLessThan(5)
    expect(kernel.reckoned).toBe(3)
  })
})

function deepOf(left: number): CoreInterval[] {
  return [part('pour', 0, 20 - left, 20 - left / 2), part('pour', 1, 20 - left / 2, 20)]
}

describe('covers of cuts', () => {
  const channel = (depth: number, percent = 2): PieceDocument => ({
    ...PLAIN,
    timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 22 })),
    pours: [
      { id: 'green', resin: 'deep', depth: 13, tint: [{ pigment: 'green-paste', percent }] },
      { id: 'clear', resin: 'deep', height: 22 }
    ],
    cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [60, 12] }, depth }]
  })

  it('say what is left, how it shows, and what would have to be left', () => {
    const [seen] = worked(channel(11.5)).appearance.cuts
    expect(seen!.leftMm).toBeCloseTo(13 - 1 - 11.5, 9)
    const { low, central, high } = seen!.needMm!
    // Strength within a factor of three either way: what must be left scales inversely, to the light of the air behind.
    expect(high! / central!).toBeGreaterThan(2)
    expect(central! / low).toBeGreaterThan(2)
    const enough = worked(channel(12 - high! - 0.01)).appearance.cuts[0]!
    expect(enough.seen.band[1]).toBeLessThan(1)
    const just = worked(channel(12 - central!)).appearance.cuts[0]!
    expect(just.seen.difference).toBeCloseTo(1, 2)
  })

  it('have nothing to say of timber, of cuts from the front, and of what is filled', () => {
    const pocket = {
      id: 'pocket',
      shape: { rectangle: [40, 40] as [number, number], at: [100, 0] as [number, number] },
      depth: 8
    }
    expect(worked({ ...PLAIN, cuts: [{ ...pocket, face: 'back' }] }).appearance.cuts).toEqual([])
    expect(worked({ ...channel(5), cuts: [{ ...pocket, face: 'front' }] }).appearance.cuts).toEqual([])
  })

  it('tell layers apart that are seen from the edge', () => {
    const { pours } = worked(channel(5)).appearance
    expect(pours[0]!.besideNext).toBeGreaterThan(10)
    expect(pours[1]!.besideNext).toBeNull()
  })
})
