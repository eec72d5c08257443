import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Drawn pieces that would not survive: what cuts leave, and what a later step makes of a depth.

const boards = (thickness: number): NonNullable<PieceDocument['timbers']> =>
  PLAIN.timbers!.map(t => ({ ...t, thickness }))

describe('own cases: cover and cuts', () => {
  // 31 mm as cast, 1 mm off each face: 29; a flood of 2 mm: 31 finished.
  const flooded = (depth: object, floodFirst: boolean): Given => {
    const flood = [
      { do: 'pour', what: 'coat' },
      { do: 'wait', for: '7 d' }
    ] as const
    const cut = [{ do: 'cut', what: 'pocket' }] as const
    return {
      piece: {
        ...PLAIN,
        timbers: boards(31),
        pours: [
          { id: 'clear', resin: 'deep', depth: 31 },
          { id: 'coat', kind: 'flood', resin: 'thin', depth: 2 }
        ],
        cuts: [{ id: 'pocket', face: 'front', shape: { rectangle: [40, 40], at: [100, 0] }, ...depth }],
        steps: [
          { do: 'prepare timber' },
          { do: 'make mould' },
          { do: 'set timber' },
          { do: 'pour', what: 'clear' },
          { do: 'wait', for: '7 d' },
          { do: 'demould' },
          { do: 'turn over' },
          { do: 'flatten', face: 'back' },
          { do: 'turn over' },
          { do: 'flatten', face: 'front' },
          ...(floodFirst ? [...flood, ...cut] : [...cut, { do: 'wait', for: '2 d' } as const, ...flood]),
          { do: 'coat', face: 'both' },
          { do: 'wait', for: '14 d' },
          { do: 'deliver' }
        ]
      }
    }
  }

  it('O2 pockets cut before a flood: it runs into them, and the floor lands 2 mm lower than drawn', () => {
    const given = flooded({ depth: 19.6 }, false)
    const { stack } = worked(given)
    // The face of the day, over the finished back, and the finished face.
    expect(stack.cuts[0]!.faceZ - stack.finishedLow).toBeCloseTo(29, 9)
    expect(stack.finishedHigh - stack.finishedLow).toBeCloseTo(31, 9)
    const open = theOne(given, 'open-pocket')
    expect(open.severity).toBe('stop')
    expect(open.says).toMatch(/pocket is open.*Flood first and cut after it, or plug or dam/)
    const depth = theOne(given, 'depth-changes')
    expect(depth.severity).toBe('caution')
    expect(depth.value).toBeCloseTo(2, 9)
    expect(depth.says).toMatch(/19\.6 mm deep.*21\.6 mm deep/)
    // Coat first: the floor is where it was drawn.
    const after = mended(given, open.fix!)
    expect(asked(after, 'open-pocket')).toEqual([])
    expect(asked(after, 'depth-changes')).toEqual([])
    expect(asked(after, 'order-impossible')).toEqual([])
    expect(asked(after, 'machine-too-soon')).toEqual([])
    expect(worked(after).stack.cuts[0]!.finished).toBeCloseTo(19.6, 9)
  })

  it('O2 a depth from the finished face is 17.6 on the day, and says nothing', () => {
    const given = flooded({ finishedDepth: 19.6 }, false)
    expect(worked(given).stack.cuts[0]!.day).toBeCloseTo(17.6, 9)
    expect(asked(given, 'depth-changes')).toEqual([])
    expect(asked(flooded({ depth: 19.6 }, true), 'open-pocket')).toEqual([])
  })

  // Assumed: as much white paste as hides from 2.2 mm by the model of it.
  const WHITE = 1.92
  const channel = (cut: object, more: Partial<PieceDocument> = {}): Given => ({
    piece: {
      ...PLAIN,
      timbers: boards(22),
      pours: [
        { id: 'white', resin: 'deep', depth: 13, tint: [{ pigment: 'white-paste', percent: WHITE }] },
        { id: 'clear', resin: 'deep', height: 22 }
      ],
      cuts: [{ id: 'channel', face: 'back', shape: { rectangle: [60, 12] }, ...cut }],
      ...more
    }
  })

  it('O3 cover 13.0 - 1.0 - 10.6 = 1.4 under what hides: a stop', () => {
    const given = channel({ depth: 10.6 })
    const { covers, hiding } = worked(given)
    expect(covers[0]!.layers.find(l => l.pour === 0)!.mm).toBeCloseTo(13 - 1 - 10.6, 9)
    expect(hiding[0]!.depth!.centralMm).toBeCloseTo(2.2, 1)
    const found = theOne(given, 'opaque-cover')
    expect(found.severity).toBe('stop')
    expect(found.value).toBeCloseTo(1.4, 5)
    expect(found.says).toMatch(/leaves 1\.4 mm of white; it hides from 2\.2 mm/)
    const after = mended(given, found.fix!)
    expect(asked(after, 'opaque-cover')).toEqual([])
    expect(asked(after, 'cut-through-layer')).toEqual([])
    // The same depth without flattening would have left 2.4.
    const unflattened = channel({ depth: 10.6 }, { flatten: { back: 0, front: 1 } })
    expect(worked(unflattened).covers[0]!.layers.find(l => l.pour === 0)!.mm).toBeCloseTo(2.4, 9)
    expect(asked(unflattened, 'opaque-cover')[0]?.severity).not.toBe('stop')
  })

  it('O3 a bore right through the channel does not hide that its cover is thin', () => {
    const given = channel({ depth: 10.6 })
    const bored = {
      piece: {
        ...given.piece,
        cuts: [
          ...given.piece.cuts!,
          { id: 'bore', kind: 'bore', face: 'front', shape: { circle: 8 }, through: true } as const
        ]
      }
    }
    expect(theOne(bored, 'opaque-cover').value).toBeCloseTo(1.4, 5)
  })

  it('O3 deeper than the layer it goes into the clear: another stop, mended by the same depth', () => {
    const given = channel({ depth: 13.5 })
    const found = theOne(given, 'cut-through-layer')
    expect(found.severity).toBe('stop')
    // From 1.0 up 13.5: 1.5 beyond the top of the white at 13.0.
    expect(found.value).toBeCloseTo(1.5, 9)
    expect(asked(given, 'opaque-cover')).toEqual([])
    const fixed = worked(mended(given, found.fix!)).piece.cuts[0]!.depth!
    const inWhite = theOne(channel({ depth: 10.6 }), 'opaque-cover')
    expect(worked(mended(channel({ depth: 10.6 }), inWhite.fix!)).piece.cuts[0]!.depth).toBeCloseTo(fixed, 9)
  })

  const line = (depth: object): Given => ({
    piece: {
      ...PLAIN,
      cuts: [
        {
          id: 'line',
          kind: 'groove',
          face: 'front',
          profile: 'v',
          angle: 60,
          along: {
            points: [
              [80, -60],
              [120, 60]
            ]
          },
          ...depth
        }
      ],
      markings: [
        {
          id: 'scale',
          linear: { from: [-40, 0], to: [40, 0], length: 8, at: [0, 0.5, 1] },
          width: 2 * 1.2 * Math.tan(Math.PI / 6),
          sandedAfter: 0.3,
          filled: []
        }
      ]
    }
  })

  it('O11 1.2 deep 60° lines, 0.3 sanded off: 1.39 wide becomes 1.04', () => {
    // 2·depth·tan 30°.
    expect(2 * 1.2 * Math.tan(Math.PI / 6)).toBeCloseTo(1.39, 2)
    expect(2 * 0.9 * Math.tan(Math.PI / 6)).toBeCloseTo(1.04, 2)
    const found = theOne(line({ depth: 1.2 }), 'line-narrows')
    expect(found.says).toMatch(/1\.39 mm wide.*0\.3 mm.*1\.04 mm wide\. Cut 1\.5 deep on the day for 1\.39/)
    expect(found.value).toBeCloseTo(1.0392, 4)
    const after = mended(line({ depth: 1.2 }), found.fix!)
    expect(asked(after, 'line-narrows')).toEqual([])
    expect(worked(after).stack.cuts[0]!.day).toBeCloseTo(1.5, 9)
    expect(worked(after).stack.cuts[0]!.finished).toBeCloseTo(1.2, 9)
  })

  it('O11 the lines of a scale are cut so deep that they are right once sanded', () => {
    const { markings } = worked(line({ depth: 1.2 })).stack
    expect(markings[0]!.day).toBeCloseTo(1.5, 9)
    expect(markings[0]!.finished).toBeCloseTo(1.2, 9)
  })

  // Two slabs of 1.6 m on either side of a river, 45 mm thick, undercut by 20 mm along it.
  const river = (undercut: number): Given => ({
    piece: {
      castwright: 1,
      name: 'a river table',
      outline: { rectangle: [1600, 700] },
      mould: { margin: 0 },
      timbers: ([-1, 1] as const).map(side => ({
        id: side < 0 ? 'near' : 'far',
        species: 'ash-white',
        thickness: 45,
        outline: { rectangle: [1600, 200] as [number, number], at: [0, side * 250] as [number, number] },
        underside: {
          rectangle: [1600, 200 - undercut] as [number, number],
          at: [0, side * (250 + undercut / 2)] as [number, number]
        }
      })),
      pours: [{ id: 'river', resin: 'deep', depth: 45 }]
    }
  })

  it('O18 an undercut of 20 mm on 45 mm along two edges of 1.6 m takes about 1.4 l more', () => {
    const filled = (undercut: number) => worked(river(undercut)).stack.pours[0]!.filledMl / 1000
    // Straight: 300 × 45 × 1600. Half of 20 × 45 a side: 2 · 20·45/2 · 1600.
    expect(filled(0)).toBeCloseTo((300 * 45 * 1600) / 1e6, 3)
    const more = filled(20) - filled(0)
    expect(more).toBeCloseTo((2 * ((20 * 45) / 2) * 1600) / 1e6, 3)
    expect(more).toBeCloseTo(1.4, 1)
  })
})
