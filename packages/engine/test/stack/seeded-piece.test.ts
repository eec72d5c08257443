import { describe, expect, it } from 'vitest'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { stackOf } from './build.ts'
import { seededPiece } from './seeded-piece.ts'

const pieces = Array.from({ length: 200 }, (_, seed) => seededPiece(seed))
const timbers = pieces.flatMap(p => p.timbers ?? [])
const cuts = pieces.flatMap(p => p.cuts ?? [])
const pours = pieces.flatMap(p => p.pours)

describe('seeded pieces', () => {
  it('are the same for the same seed and differ for others', () => {
    expect(seededPiece(17)).toEqual(seededPiece(17))
    expect(new Set(pieces.map(p => JSON.stringify({ ...p, name: '' }))).size).toBe(pieces.length)
  })

  it('are sound: all beyond the 200 that are held against solids build too', () => {
    for (let seed = 200; seed < 230; seed++) {
      const stack = stackOf(seededPiece(seed))
      const total = [...finishedVolumes(stack).values()].reduce((a, b) => a + b, 0)
      expect(total, `seed ${seed}`).toBeGreaterThan(10)
      expect(total).toBeLessThan(100_000)
    }
  })

  it('hold everything that the volumes must get right, many times over', () => {
    const often = (what: string, list: readonly unknown[], least: number) =>
      expect(list.length, what).toBeGreaterThanOrEqual(least)
    often(
      'crowned tops',
      timbers.filter(t => t.crown),
      60
    )
    often(
      'measured tops',
      timbers.filter(t => t.measured),
      60
    )
    often(
      'slanted sides',
      timbers.filter(t => t.underside),
      100
    )
    often(
      'timbers with a hole',
      timbers.filter(t => t.outline.holes),
      30
    )
    often(
      'islands',
      timbers.filter(t => t.id?.endsWith('island')),
      10
    )
    often(
      'timbers off the floor',
      timbers.filter(t => t.base),
      30
    )
    often(
      'pours behind a dam',
      pours.filter(p => p.region),
      40
    )
    often(
      'pours by mass',
      pours.filter(p => p.mass),
      40
    )
    often(
      'pours to the timber',
      pours.filter(p => p.fill === 'timber'),
      20
    )
    often(
      'pours with stones',
      pours.filter(p => p.stones?.length),
      40
    )
    often(
      'floods',
      pours.filter(p => p.kind === 'flood'),
      25
    )
    often(
      'inlays',
      pours.filter(p => p.kind === 'inlay'),
      40
    )
    often(
      'V grooves',
      cuts.filter(c => c.profile === 'v'),
      30
    )
    often(
      'round grooves',
      cuts.filter(c => c.profile === 'round'),
      30
    )
    often(
      'cuts right through',
      cuts.filter(c => c.through),
      60
    )
    often(
      'cuts from the finished face',
      cuts.filter(c => c.finishedDepth),
      50
    )
    often(
      'cuts from the back',
      cuts.filter(c => c.face === 'back'),
      150
    )
    often(
      'cuts from the front',
      cuts.filter(c => c.face === 'front'),
      150
    )
    often(
      'formers',
      pieces.flatMap(p => p.mould?.formers ?? []),
      30
    )
    often(
      'scales',
      pieces.flatMap(p => p.markings ?? []),
      60
    )
  })
})
