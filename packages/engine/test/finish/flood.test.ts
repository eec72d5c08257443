import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { worked } from '../cases/asked.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'

// PLAIN is 300 × 200 mm.
const flooded = (more: object, piece: Partial<PieceDocument> = {}): Given => ({
  piece: {
    ...PLAIN,
    pours: [
      ...PLAIN.pours,
      { id: 'gloss', kind: 'flood', face: 'front', resin: 'thin', depth: 2, ...more } as never
    ],
    ...piece
  }
})
const gloss = (given: Given) => worked(given).faces[0].floods[0]!

describe('a flood', () => {
  it('stands over the face by its depth, wet a little more, and its volume is area times that', () => {
    const flood = gloss(flooded({ depth: 2.5 }))
    // Falls as it cures: the wet depth is the cured one over 1 less the fall.
    const { stack, materials } = worked(flooded({ depth: 2.5 }))
    expect(materials.resins[1]!.shrinkagePct).toBeGreaterThan(0)
    expect(flood.depthMm[1]).toBeCloseTo(stack.pours[1]!.liquidDepth, 6)
    expect(flood.depthMm[1]).toBeGreaterThan(2.5)
    expect(flood.volumeMl).toBeCloseTo((300 * 200 * flood.depthMm[1]) / 1000, 3)
  })

  it('stands by itself up to 2.7 mm; beyond that it wants a dam 2 mm over it', () => {
    expect(gloss(flooded({ depth: 2.5 })).wantsDamMm).toBeNull()
    expect(gloss(flooded({ depth: 5 })).wantsDamMm).toBe(8)
    expect(gloss(flooded({ depth: 5, dam: 8 })).damMm).toBe(8)
    // Dams of a region keep it in.
    expect(gloss(flooded({ depth: 5, region: { rectangle: [80, 80] } })).wantsDamMm).toBeNull()
  })

  it('levels a hand’s breadth before it sets, and half as thick later', () => {
    const [thick, thin] = [gloss(flooded({ depth: 2.4 })), gloss(flooded({ depth: 1.2 }))]
    expect(thick.levelMin).toBeGreaterThan(0)
    // Eight times the fluidity; the resin thickens meanwhile, so at least eight times as long.
    expect(thin.levelMin! / thick.levelMin!).toBeGreaterThan(7)
    expect(thick.longestMm).toBeGreaterThan(100)
    // A skim of a tenth of a millimetre does not.
    expect(gloss(flooded({ depth: 0.1 })).levelMin).toBeNull()
  })

  it('a bench out of level by its corners makes a wedge; within a tenth of the depth is asked for', () => {
    const level = flooded({ depth: 2.5 }, { mould: { margin: 6, bearers: 250, corners: [0, 0.6, 0.6, 0] } })
    // 0.6 mm over 300 is 2 mm/m: 0.6 deeper at one end.
    expect(gloss(level).wedgeMm).toBeCloseTo(0.6, 6)
    expect(gloss(flooded({ depth: 2.5 })).wedgeMm).toBeNull()
    expect(gloss(level).withinMmPerM).toBeCloseTo(gloss(level).depthMm[1] / 10 / 0.3, 6)
  })

  it('a coat of the finish: as deep as the film asks, over solids', () => {
    const coat = (finish: object) =>
      worked({ piece: { ...PLAIN, finish: { both: { coat: 'flood-coat', ...finish } as never } } }).faces[0]
        .floods[0]!
    expect(coat({}).depthMm).toEqual([2, 2.6, 3.2])
    expect(coat({ film: 4.8, coats: 1 }).depthMm[1]).toBeCloseTo(4.8 / 0.975, 6)
    expect(coat({ film: 4.8, coats: 2 }).depthMm[1]).toBeCloseTo(2.4 / 0.975, 6)
    expect(coat({ film: 4.8, coats: 1, dam: 6 })).toMatchObject({ damMm: 6, pour: null, step: null })
  })
})
