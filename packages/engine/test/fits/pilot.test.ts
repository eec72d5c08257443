import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'
import { EUROCODE, screwIn } from './screw.ts'

const pilotAt = (kind: string, at: [number, number], species = 'ash-white', more: object = {}) => {
  const piece: PieceDocument = {
    ...PLAIN,
    timbers: PLAIN.timbers!.map(t => ({ ...t, species })),
    cuts: [{ id: 'hole', kind: 'bore', face: 'back', shape: { circle: 5, at }, depth: 10 }],
    hardware: [{ id: 'part', kind, in: 'hole', ...more }]
  }
  return worked({ piece }).fits[0]!.pilot!
}

describe('pilot holes', () => {
  // EN 1995-1-1 10.4.5 (memory): 0.7 of the diameter; it lies between what softwood and hardwood want.
  it.each(EUROCODE)('a wood screw of %d: 0.7 of it lies between spruce and beech', (d, published) => {
    expect(screwIn('spruce-european', d)).toBeLessThanOrEqual(published)
    expect(screwIn('beech-european', d)).toBeGreaterThanOrEqual(published)
  })
  it('grow with the density of the timber', () => {
    const by = ['spruce-european', 'walnut-black', 'beech-european'].map(s => screwIn(s, 4))
    expect([...by].sort((a, b) => a - b)).toEqual(by)
  })
  // 10 % more near the end of a board: the boards of the panel run along y to ±100.
  it('are a tenth larger near the end of the timber', () => {
    const [middle, end] = [pilotAt('wood-screw-4', [100, 0]), pilotAt('wood-screw-4', [100, 85])]
    expect([middle.nearEnd, end.nearEnd]).toEqual([false, true])
    expect((end.lowMm + end.highMm) / (middle.lowMm + middle.highMm)).toBeCloseTo(1.1, 9)
  })
  it('in resin are the outer diameter and 0.1 to 0.2 for an insert, the tap drill and 0.1 for a thread', () => {
    expect(pilotAt('threaded-insert-m4', [0, 0])).toMatchObject({ into: 'resin', lowMm: 8.1, highMm: 8.2 })
    const own = pilotAt('threaded-insert-m4', [0, 0], 'ash-white', { diameter: 7 })
    expect([own.lowMm, own.highMm]).toEqual([7.1, 7.2])
    const tapped = pilotAt('machine-screw-m4', [0, 0])
    expect([tapped.lowMm, tapped.highMm]).toEqual([3.3, expect.closeTo(3.4, 9)])
    expect(pilotAt('wood-screw-4', [0, 0]).never).toMatch(/bursts resin/)
  })
})
