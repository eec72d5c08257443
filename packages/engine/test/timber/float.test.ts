import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type FloatingTimber,
  fixingsFor,
  holdDown,
  netLiftG,
  straightSided,
  timberVolumeMm3,
  volumeBelowMm3
} from '../../src/timber/float.ts'

const seeded = { seed: 20260104, numRuns: 200 }

/** One litre, 40 mm thick, lighter than resin. */
const board: FloatingTimber = {
  bottomMm: 0,
  topMm: 40,
  areasMm2: straightSided(1e6, 40),
  densityKgM3: 640,
  liquidKgM3: 1100
}

/** A rectangle l0 × w0 lofted straight to l1 × w1: the areas that go with it. */
interface Loft {
  readonly l0: number
  readonly w0: number
  readonly l1: number
  readonly w1: number
}
const loftAreas = ({ l0, w0, l1, w1 }: Loft): readonly [number, number, number] => [
  l0 * w0,
  ((l0 + l1) / 2) * ((w0 + w1) / 2),
  l1 * w1
]

/**
 * The slow obvious twin: add up pressure times horizontal area over thin slices of the sides, foot and top,
 * N.
 */
function liftByPressureG(loft: Loft, height: number, depth: number, wetted: number, liquid: number): number {
  const slices = 4000
  const at = (s: number): number => (loft.l0 + (loft.l1 - loft.l0) * s) * (loft.w0 + (loft.w1 - loft.w0) * s)
  let up = wetted * at(0) * depth
  for (let i = 0; i < slices; i++) {
    const below = i / slices
    const above = (i + 1) / slices
    const overhang = at(above) - at(below)
    up += overhang * Math.max(0, depth - ((below + above) / 2) * height)
  }
  up -= at(1) * Math.max(0, depth - height)
  return up * liquid * 1e-6
}

const lofts = fc.record({
  l0: fc.double({ min: 50, max: 500, noNaN: true }),
  w0: fc.double({ min: 20, max: 200, noNaN: true }),
  l1: fc.double({ min: 50, max: 500, noNaN: true }),
  w1: fc.double({ min: 20, max: 200, noNaN: true })
})

describe('lift of a timber', () => {
  // Archimedes.
  it('is the liquid displaced less its own weight, covered or half under', () => {
    expect(netLiftG(board, 40)).toBeCloseTo(1100 - 640, 9)
    expect(netLiftG(board, 80)).toBeCloseTo(1100 - 640, 9)
    expect(netLiftG(board, 20)).toBeCloseTo(550 - 640, 9)
    expect(netLiftG(board, -3)).toBeCloseTo(-640, 9)
  })

  it('turns positive at the depth of a raft: density over density of its thickness', () => {
    expect(netLiftG(board, (40 * 640) / 1100)).toBeCloseTo(0, 9)
  })

  it('does not come about when nothing creeps under straight sides, and presses down once covered', () => {
    const sealed = { ...board, wettedUnderside: 0 }
    expect(netLiftG(sealed, 20)).toBeCloseTo(-640, 9)
    expect(netLiftG(sealed, 40)).toBeCloseTo(-640, 9)
    // 10 mm of resin over a dry-footed board of 25 000 mm²: 275 g on top of its weight.
    expect(netLiftG(sealed, 50)).toBeCloseTo(-640 - 275, 9)
    expect(holdDown(sealed, 50).holdDownG).toBe(0)
  })

  it('comes by the overhang alone when the edges are undercut', () => {
    const undercut: FloatingTimber = {
      ...board,
      areasMm2: loftAreas({ l0: 200, w0: 100, l1: 200, w1: 160 }),
      wettedUnderside: 0
    }
    // Two wedges 30 wide and 40 high along 200: 0.24 l of overhang.
    expect(netLiftG(undercut, 40) + (timberVolumeMm3(undercut) * 640) / 1e6).toBeCloseTo(0.24 * 1100, 9)
  })

  it('equals the pressure added up over foot, sides and top of lofted timbers at any level', () => {
    fc.assert(
      fc.property(
        lofts,
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 0, max: 120, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (loft, height, depth, wetted) => {
          const timber: FloatingTimber = {
            bottomMm: 7,
            topMm: 7 + height,
            areasMm2: loftAreas(loft),
            densityKgM3: 600,
            liquidKgM3: 1080,
            wettedUnderside: wetted
          }
          const weight = (timberVolumeMm3(timber) * 600) / 1e6
          const ours = netLiftG(timber, 7 + depth) + weight
          const theirs = liftByPressureG(loft, height, depth, wetted, 1080)
          expect(Math.abs(ours - theirs)).toBeLessThan(1e-5 * (weight + Math.abs(theirs)) + 1e-3)
        }
      ),
      seeded
    )
  })

  it('has the volume of a prismatoid, and no volume below its foot', () => {
    fc.assert(
      fc.property(lofts, loft => {
        const timber = { ...board, areasMm2: loftAreas(loft) }
        expect(volumeBelowMm3(timber, 40)).toBeCloseTo(timberVolumeMm3(timber), 5)
        expect(volumeBelowMm3(timber, 0)).toBe(0)
        // The integral over the height of the product of two straight sides.
        const { l0, w0, l1, w1 } = loft
        const exact = 40 * (l0 * w0 + (l0 * (w1 - w0) + w0 * (l1 - l0)) / 2 + ((l1 - l0) * (w1 - w0)) / 3)
        expect(timberVolumeMm3(timber)).toBeCloseTo(exact, 4)
      }),
      seeded
    )
  })
})

describe('hold-down', () => {
  it('is asked for at the level of the top, or at the final level if that is lower, with twice the lift', () => {
    expect(holdDown(board, 60)).toMatchObject({ worstLevelMm: 40 })
    expect(holdDown(board, 60).holdDownG).toBeCloseTo(920, 9)
    expect(holdDown(board, 30).worstLevelMm).toBe(30)
    expect(holdDown(board, 30).netLiftG).toBeCloseTo(825 - 640, 9)
  })

  it('finds the worst level by trying them all, whatever the shape and the wetted share', () => {
    fc.assert(
      fc.property(
        lofts,
        fc.double({ min: 5, max: 60, noNaN: true }),
        fc.double({ min: 1, max: 90, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (loft, height, end, wetted) => {
          const timber: FloatingTimber = {
            bottomMm: 0,
            topMm: height,
            areasMm2: loftAreas(loft),
            densityKgM3: 500,
            liquidKgM3: 1100,
            wettedUnderside: wetted
          }
          let most = Number.NEGATIVE_INFINITY
          for (let i = 0; i <= 500; i++) most = Math.max(most, netLiftG(timber, (end * i) / 500))
          const found = holdDown(timber, end)
          expect(found.netLiftG).toBeGreaterThanOrEqual(most - 1e-9)
          expect(netLiftG(timber, found.worstLevelMm)).toBeCloseTo(found.netLiftG, 9)
          expect(found.worstLevelMm).toBeLessThanOrEqual(end)
        }
      ),
      seeded
    )
  })

  it('grows with the liquid and shrinks with the timber', () => {
    const at = (timber: Partial<FloatingTimber>): number => holdDown({ ...board, ...timber }, 60).holdDownG
    expect(at({ liquidKgM3: 1200 })).toBeGreaterThan(at({}))
    expect(at({ densityKgM3: 700 })).toBeLessThan(at({}))
    expect(at({ wettedUnderside: 0.8 })).toBeLessThan(at({}))
  })

  it('does not trust a timber that only just sinks: the lighter board of its species decides', () => {
    const heavy = holdDown({ ...board, densityKgM3: 1120 }, 60)
    expect(heavy.netLiftG).toBeLessThan(0)
    expect(heavy.netLiftHighG).toBeGreaterThan(0)
    expect(heavy.holdDownG).toBeCloseTo(heavy.netLiftHighG, 9)
    expect(holdDown({ ...board, densityKgM3: 1250 }, 60).holdDownG).toBe(0)
  })

  it('counts the fixings upwards', () => {
    expect(fixingsFor(920, 300)).toBe(4)
    expect(fixingsFor(900, 300)).toBe(3)
    expect(fixingsFor(0, 300)).toBe(0)
  })
})

describe('at the door', () => {
  it('refuses shapes and densities that cannot be', () => {
    expect(() => netLiftG({ ...board, topMm: 0 }, 10)).toThrow(/height of the top is 0 mm/)
    expect(() => netLiftG({ ...board, densityKgM3: 0.64 }, 10)).toThrow(/density of the timber is 0\.64 kg/)
    expect(() => netLiftG({ ...board, areasMm2: [1000, 1, 0] }, 10)).toThrow(/negative area/)
    expect(() => holdDown(board, Number.NaN)).toThrow(/NaN/)
    expect(() => straightSided(0, 40)).toThrow(/volume/)
  })
})
