import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { area } from '../../src/shape/measure.ts'
import { modelData, modelFrom } from '../../src/sheets/page-data.ts'
import { coreAt } from '../../src/stack/core.ts'
import { coreGrid } from '../../src/stack/core-grid.ts'
import { levelCut } from '../../src/stack/level-cut.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { plainPiece, stackOf } from './build.ts'

const keyhole: NonNullable<PieceDocument['cuts']>[number] = {
  kind: 'keyhole',
  face: 'back',
  along: {
    points: [
      [10, 0],
      [10, 14]
    ]
  },
  width: 5,
  head: 11,
  lip: 4,
  depth: 10
}
const withCut = (cut: NonNullable<PieceDocument['cuts']>[number], more: Partial<PieceDocument> = {}) =>
  stackOf(plainPiece({ cuts: [cut], ...more }))

const spans = (stack: ReturnType<typeof stackOf>, x: number, y: number) =>
  coreAt(stack.geometry, stack.events, x, y).map(p => [p.from, p.to])

// What it takes, by closed form: a strip with round ends as wide as the head under the lips; over them the strip of the
// neck and the circle of the head, less what both share: the circle cut by two chords, and the round end of the neck
// lies within it.
const capsule = (long: number, wide: number) => long * wide + (Math.PI * wide * wide) / 4
function plan(long: number, neck: number, head: number) {
  const [r, h] = [head / 2, neck / 2]
  // Beyond the circle: the strip from where it leaves the circle, rounded there by the circle's own arc.
  const leaves = Math.sqrt(r * r - h * h)
  const arc = r * r * Math.asin(h / r) - h * leaves
  return Math.PI * r * r + (long - leaves) * neck - arc + (Math.PI * h * h) / 2
}

describe('a keyhole slot', () => {
  for (const face of ['back', 'front'] as const)
    it(`in the ${face} is open under its lips, from floor to roof`, () => {
      const stack = withCut({ ...keyhole, face })
      const z = (d: number) => (face === 'back' ? d : 20 - d)
      const pair = (a: number, b: number) => [Math.min(z(a), z(b)), Math.max(z(a), z(b))]
      // In the entry and in the neck: open to the face. Under a lip: the lip stands, then the head.
      for (const [x, y] of [
        [10, 0],
        [14.9, 0],
        [10, 14],
        [11, 8]
      ] as const)
        expect(spans(stack, x, y)).toEqual([pair(10, 20)])
      for (const [x, y] of [
        [14, 10],
        [6, 14],
        [10, 18]
      ] as const)
        expect(spans(stack, x, y)).toEqual([pair(0, 4), pair(10, 20)].sort((a, b) => a[0]! - b[0]!))
      expect(spans(stack, 10, 19.6)).toEqual([[0, 20]])
    })

  it('takes what its parts take: by level cuts and by volume', () => {
    const stack = withCut(keyhole)
    const whole = 300 * 200
    const taken = (z: number) =>
      whole - levelCut(stack.geometry, stack.events, z).reduce((sum, p) => sum + area(p.region), 0)
    expect(taken(2)).toBeCloseTo(plan(14, 5, 11), 0)
    expect(taken(7)).toBeCloseTo(capsule(14, 11), 0)
    expect(taken(11)).toBeCloseTo(0, 6)
    const all = [...finishedVolumes(stack).values()].reduce((sum, v) => sum + v, 0)
    const lost = plan(14, 5, 11) * 4 + capsule(14, 11) * 6
    const unit = all > 10_000 ? 1 : 1000
    expect(whole * 20 - all * unit).toBeGreaterThan(lost * 0.998)
    expect(whole * 20 - all * unit).toBeLessThan(lost * 1.002)
  })

  it('is the same in every grid of cores, and on the page', () => {
    const stack = withCut(keyhole)
    const box = { minX: 0, minY: -10, maxX: 20, maxY: 24 }
    const grid = coreGrid(stack.geometry, stack.events, box, 0.5, [0, 20])
    for (let p = 0; p < grid.at.length; p++) {
      const [x, y] = [
        box.minX + ((p % grid.nx) + 0.5) * 0.5,
        box.minY + (Math.floor(p / grid.nx) + 0.5) * 0.5
      ]
      expect(grid.cores[grid.at[p]!]!.map(c => [c.from, c.to])).toEqual(spans(stack, x, y))
    }
    const model = { geometry: stack.geometry, events: stack.events } as unknown as Parameters<
      typeof modelData
    >[0]
    const again = modelFrom(JSON.parse(JSON.stringify(modelData(model))))
    for (const [x, y] of [
      [14, 10],
      [10, 14],
      [10, 0],
      [30, 30]
    ] as const)
      expect(coreAt(again.geometry, again.events, x, y)).toEqual(coreAt(stack.geometry, stack.events, x, y))
  })

  it('reckons its roof from the same face as its depth', () => {
    const stack = withCut({ ...keyhole, depth: undefined, finishedDepth: 10 } as typeof keyhole, {
      flatten: { back: 1.5, front: 0 }
    })
    // Finished face at 1.5: lips to 5.5, floor at 11.5.
    expect(spans(stack, 14, 10)).toEqual([
      [1.5, 5.5],
      [11.5, 20]
    ])
  })

  it('that cannot be meant is refused', () => {
    const refused = (more: Record<string, unknown>, words: string) =>
      expect(() => withCut({ ...keyhole, ...more } as typeof keyhole)).toThrow(words)
    refused({ head: 5 }, 'wider than its neck')
    refused({ lip: 10 }, 'less than the depth')
    refused({ width: undefined }, 'width of the neck')
    refused({ head: undefined }, 'across the head')
    refused({ depth: undefined, through: true }, 'a depth')
    refused(
      {
        along: {
          points: [
            [0, 0],
            [1, 1],
            [2, 0]
          ]
        }
      },
      'two points'
    )
    refused(
      {
        along: {
          points: [
            [0, 0],
            [0, 0]
          ]
        }
      },
      'two places apart'
    )
    refused({ kind: 'groove' }, 'kind "keyhole"')
  })
})

describe('a counterbore', () => {
  const bore = {
    id: 'hole',
    kind: 'bore',
    face: 'front',
    shape: { circle: 6, at: [40, 20] },
    through: true
  } as const
  const wide = {
    kind: 'counterbore',
    face: 'front',
    around: 'hole',
    shape: { circle: 12 },
    depth: 5
  } as const
  it('lies about the middle of its bore', () => {
    const stack = stackOf(plainPiece({ cuts: [bore as never, wide as never] }))
    expect(spans(stack, 40, 20)).toEqual([])
    expect(spans(stack, 45, 20)).toEqual([[0, 15]])
    expect(spans(stack, 40, 25.9)).toEqual([[0, 15]])
    expect(spans(stack, 40, 26.1)).toEqual([[0, 20]])
  })
  it('that cannot be meant is refused', () => {
    const refused = (more: Record<string, unknown>, words: string) =>
      expect(() => stackOf(plainPiece({ cuts: [bore as never, { ...wide, ...more } as never] }))).toThrow(
        words
      )
    refused({ shape: { circle: 6 } }, 'wider than its bore')
    refused({ around: 'hull' }, 'a round bore: hole')
    refused({ shape: { circle: 12, at: [1, 1] } }, 'without a place')
    refused({ depth: undefined, through: true }, 'a depth')
    refused({ shape: { rectangle: [20, 20] } }, 'the circle')
  })
})
