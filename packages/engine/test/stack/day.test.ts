import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { bounds } from '../../src/shape/measure.ts'
import { coreAt } from '../../src/stack/core.ts'
import { removalAt } from '../../src/stack/event.ts'
import { vDepthMm } from '../../src/stack/groove.ts'
import { finishedHeight, finishedThickness } from '../../src/stack/stack.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { plainPiece, stackOf } from './build.ts'

type StepDocument = NonNullable<PieceDocument['steps']>[number]

const inMould: StepDocument[] = [{ do: 'make mould' }, { do: 'pour', what: 'body' }, { do: 'demould' }]
/** A body 29 mm high; out of the mould the front is up. */
const body = (more: Partial<PieceDocument>, steps: StepDocument[]): PieceDocument =>
  plainPiece({ pours: [{ id: 'body', resin: 'medium', depth: 29 }], ...more, steps: [...inMould, ...steps] })
const pocket = {
  id: 'pocket',
  face: 'front' as const,
  shape: { rectangle: [60, 40] as [number, number] },
  depth: 19.6
}
const flood = { id: 'flood', resin: 'thin', kind: 'flood' as const, depth: 2 }
const pours = [{ id: 'body', resin: 'medium', depth: 29 }, flood]

describe('depth is from the face that exists on that day', () => {
  it('O2: a pocket cut before the flood lands 2 mm lower under the finished face than one cut after it', () => {
    const first = stackOf(
      body({ pours, cuts: [pocket] }, [
        { do: 'cut', what: 'pocket' },
        { do: 'pour', what: 'flood' }
      ])
    )
    expect(first.cuts[0]).toMatchObject({ faceZ: 29, day: 19.6 })
    expect(first.cuts[0]!.floor).toBeCloseTo(29 - 19.6, 9)
    expect(first.cuts[0]!.finished).toBeCloseTo(21.6, 9)
    // The pocket stands open when the coat comes.
    expect(first.states.find(s => s.step.pour?.id === 'flood')!.open).toEqual([0])

    const after = stackOf(
      body({ pours, cuts: [pocket] }, [
        { do: 'pour', what: 'flood' },
        { do: 'cut', what: 'pocket' }
      ])
    )
    expect(after.cuts[0]).toMatchObject({ faceZ: 31, day: 19.6 })
    expect(after.cuts[0]!.floor).toBeCloseTo(31 - 19.6, 9)
    expect(after.cuts[0]!.finished).toBeCloseTo(19.6, 9)
    expect(finishedThickness(after)).toBe(31)
    // The usual order floods first.
    expect(stackOf(plainPiece({ pours, cuts: [pocket] })).cuts[0]!.finished).toBeCloseTo(19.6, 9)
  })

  it('a depth from the finished face is reckoned back to the day', () => {
    const { depth: _, ...rest } = pocket
    const cut = { ...rest, finishedDepth: 19.6 }
    const stack = stackOf(
      body({ pours, cuts: [cut] }, [
        { do: 'cut', what: 'pocket' },
        { do: 'pour', what: 'flood' }
      ])
    )
    expect(stack.cuts[0]!.day).toBeCloseTo(17.6, 9)
    expect(stack.cuts[0]!.finished).toBeCloseTo(19.6, 9)
  })

  it('a cut before flattening loses what is flattened off', () => {
    const order = (steps: StepDocument[]) => stackOf(body({ cuts: [pocket] }, steps)).cuts[0]!
    const before = order([
      { do: 'cut', what: 'pocket' },
      { do: 'flatten', face: 'front', by: 1.5 }
    ])
    expect(before.floor).toBeCloseTo(29 - 19.6, 9)
    expect(before.finished).toBeCloseTo(18.1, 9)
    const after = order([
      { do: 'flatten', face: 'front', by: 1.5 },
      { do: 'cut', what: 'pocket' }
    ])
    expect(after.floor).toBeCloseTo(27.5 - 19.6, 9)
    expect(after.finished).toBeCloseTo(19.6, 9)
  })

  it('O3: 13.0 of opaque resin, the back flattened by 1.0 and a channel of 10.6 leave a cover of 1.4', () => {
    const stack = stackOf(
      plainPiece({
        flatten: { back: 1, front: 0 },
        pours: [
          { resin: 'medium', depth: 13, opaque: true },
          { resin: 'medium', depth: 12 }
        ],
        cuts: [
          {
            face: 'back',
            kind: 'groove',
            along: {
              points: [
                [-60, 0],
                [60, 0]
              ]
            },
            width: 8,
            depth: 10.6
          }
        ]
      })
    )
    const core = coreAt(stack.geometry, stack.events, 0, 0)
    expect(core[0]!.material).toEqual({ kind: 'pour', index: 0 })
    expect(core[0]!.to - core[0]!.from).toBeCloseTo(1.4, 9)
    // As cast the floor stands at 11.6, finished at 10.6.
    expect(stack.cuts[0]!.floor).toBeCloseTo(11.6, 9)
    expect(finishedHeight(stack, stack.cuts[0]!.floor)).toBeCloseTo(10.6, 9)
  })

  it('O11: a 60° V 1.2 deep is 1.39 wide, and 1.04 once 0.3 is sanded off', () => {
    const groove = {
      id: 'line',
      face: 'front' as const,
      profile: 'v' as const,
      angle: 60,
      along: {
        points: [
          [-40, 0],
          [40, 0]
        ] as [number, number][]
      },
      depth: 1.2
    }
    const stack = stackOf(
      body({ cuts: [groove] }, [
        { do: 'cut', what: 'line' },
        { do: 'sand', face: 'front', by: 0.3 }
      ])
    )
    const event = stack.events.find(e => e.kind === 'cut')!
    const widthAt = (z: number) => {
      const b = bounds(removalAt(event.kind === 'cut' ? event.removal : never(), z))
      return b.maxY - b.minY
    }
    expect(widthAt(29)).toBeCloseTo(1.3856, 3)
    expect(widthAt(stack.finishedHigh)).toBeCloseTo(1.0392, 3)
    expect(vDepthMm(1.3856406, 60)).toBeCloseTo(1.2, 6)
  })

  it('O11: the line of a marking is cut so much deeper that it is right after sanding', () => {
    const marking = {
      id: 'scale',
      width: 1.04,
      angle: 60,
      filled: [{ pigment: 'white-paste', percent: 3 }],
      linear: {
        from: [-50, 0] as [number, number],
        to: [50, 0] as [number, number],
        length: 8,
        at: [0, 0.5, 1]
      }
    }
    const stack = stackOf(plainPiece({ flatten: { back: 0, front: 1 }, markings: [marking] }))
    const { day, finished } = stack.markings[0]!
    expect(finished).toBeCloseTo(1.04 / (2 * Math.tan(Math.PI / 6)), 9)
    expect(day! - finished!).toBeCloseTo(0.3, 9)
    // Three lines 8 long, each L·w·d/2 and a cone: the resin in them, in the finished face.
    const r = 1.04 / 2
    const line = 8 * r * finished! + (Math.PI * r * r * finished!) / 3
    const filled = finishedVolumes(stack).get('marking 0')! * 1000
    expect(Math.abs(filled - 3 * line) / (3 * line)).toBeLessThan(2e-3)
  })
})

describe('faces', () => {
  it('of a piece cast with its front down turn over with it', () => {
    const stack = stackOf(
      plainPiece({
        down: 'front',
        flatten: { back: 2, front: 0.5 },
        pours: [
          { resin: 'medium', depth: 6 },
          { resin: 'medium', depth: 18 }
        ],
        cuts: [{ face: 'back', shape: { circle: 20 }, depth: 10 }]
      })
    )
    // The front lay on the mould: 0.5 comes off below, 2 above.
    expect([stack.finishedLow, stack.finishedHigh]).toEqual([0.5, 22])
    expect(stack.cuts[0]!.side).toBe('high')
    expect(stack.cuts[0]!.floor).toBeCloseTo(12, 9)
    expect(finishedHeight(stack, stack.cuts[0]!.floor)).toBeCloseTo(10, 9)
  })

  it('stand at the highest timber inside the outline, not at one in the waste', () => {
    const timber = (x: number, thickness: number) => ({
      species: 'ash-white',
      outline: { rectangle: [40, 100] as [number, number], at: [x, 0] as [number, number] },
      thickness
    })
    const more = { mould: { margin: 60 }, pours: [{ resin: 'medium', depth: 10 }] }
    expect(stackOf(plainPiece({ ...more, timbers: [timber(0, 24)] })).castHeight).toBe(24)
    expect(stackOf(plainPiece({ ...more, timbers: [timber(180, 24)] })).castHeight).toBe(10)
  })
})

describe('a flood', () => {
  const proud = {
    species: 'ash-white',
    outline: { rectangle: [100, 200] as [number, number], at: [-100, 0] as [number, number] },
    thickness: 24
  }

  it('over a face that is level lies on it, wherever it lies', () => {
    for (const face of ['front', 'back'] as const) {
      const stack = stackOf(
        plainPiece({
          pours: [
            { resin: 'medium', depth: 20 },
            { resin: 'thin', kind: 'flood', face, depth: 2 }
          ]
        })
      )
      expect(finishedThickness(stack), face).toBe(22)
      expect(stack.pours[1]).toMatchObject({ depth: 2 })
      expect(stack.pours[1]!.filledMl).toBeCloseTo(120, 6)
      expect(coreAt(stack.geometry, stack.events, 0, 0).map(p => [p.from, p.to, p.material.index])).toEqual(
        face === 'front'
          ? [
              [0, 20, 0],
              [20, 22, 1]
            ]
          : [
              [-2, 0, 1],
              [0, 20, 0]
            ]
      )
    }
  })

  it('by mass is as deep as that mass makes it', () => {
    const stack = stackOf(
      plainPiece({
        pours: [
          { resin: 'medium', depth: 20 },
          { resin: 'thin', kind: 'flood', mass: 198 }
        ]
      }),
      { densityGMl: 1.1, levelFall: 0.05 }
    )
    // 198 g are 180 ml, after cure 171 ml on 600 cm²: 2.85 mm.
    expect(stack.pours[1]!.depth).toBeCloseTo(2.85, 6)
    expect(stack.pours[1]!.liquidMl).toBeCloseTo(180, 9)
    expect(finishedThickness(stack)).toBeCloseTo(22.85, 6)
  })

  it('first fills what lies lower than the timber, its depth over the lowest place', () => {
    const stack = stackOf(
      plainPiece({
        timbers: [proud],
        pours: [
          { resin: 'medium', depth: 20 },
          { resin: 'thin', kind: 'flood', depth: 6 }
        ]
      })
    )
    // Resin stands 4 below the timber: 6 over it is 2 over the timber.
    expect(finishedThickness(stack)).toBe(26)
    expect(stack.pours[1]!.filledMl).toBeCloseTo((200 * 200 * 6 + 100 * 200 * 2) / 1000, 6)
    const at = (x: number) => coreAt(stack.geometry, stack.events, x, 0).map(p => [p.from, p.to])
    expect(at(100)).toEqual([
      [0, 20],
      [20, 26]
    ])
    expect(at(-100)).toEqual([
      [0, 24],
      [24, 26]
    ])
  })

  it('kept to a region by dams lies there alone, and a cut there is measured from it', () => {
    const region = { rectangle: [80, 80] as [number, number], at: [60, 0] as [number, number] }
    const bore = (x: number) => ({
      face: 'front' as const,
      shape: { circle: 10, at: [x, 0] as [number, number] },
      depth: 5
    })
    const stack = stackOf(
      plainPiece({
        pours: [
          { resin: 'medium', depth: 20 },
          { resin: 'thin', kind: 'flood', depth: 3, region }
        ],
        cuts: [bore(60), bore(-60)]
      })
    )
    expect(stack.pours[1]!.filledMl).toBeCloseTo((80 * 80 * 3) / 1000, 6)
    expect(stack.cuts.map(c => c.floor)).toEqual([18, 15])
    expect(stack.finishedHigh).toBe(23)
    expect(finishedVolumes(stack).get('pour 1')! * 1000).toBeCloseTo(80 * 80 * 3 - 25 * Math.PI * 3, 1)
  })

  it('in a hollow of the face fills it: a top-up behind a dam', () => {
    const stack = stackOf(
      plainPiece({
        timbers: [proud],
        pours: [
          { resin: 'medium', depth: 20 },
          { resin: 'thin', kind: 'flood', depth: 3.5, region: { rectangle: [200, 200], at: [50, 0] } }
        ]
      })
    )
    expect(finishedThickness(stack)).toBe(24)
    expect(stack.pours[1]!.filledMl).toBeCloseTo((200 * 200 * 3.5) / 1000, 6)
    expect(stack.pours[1]!.level).toBe(23.5)
  })
})

describe('an inlay', () => {
  const groove = { id: 'line', ...pocketAt(0), depth: 6 }
  const inlay = { id: 'inlay', resin: 'thin', kind: 'inlay' as const, into: ['line'] }
  const at = (more: object, cuts: PieceDocument['cuts'] = [groove]) =>
    stackOf(plainPiece({ cuts, pours: [{ resin: 'medium', depth: 20 }, { ...inlay, ...more } as never] }), {
      levelFall: 0.04,
      densityGMl: 1.1
    })

  it('fills its cut to the face, on the face the cut is in', () => {
    const stack = at({ fill: 'cut' })
    expect(stack.pours[1]).toMatchObject({ side: 'high', depth: 6, level: 20 })
    expect(stack.pours[1]!.filledMl).toBeCloseTo((60 * 40 * 6) / 1000, 6)
    expect(stack.pours[1]!.liquidMl).toBeCloseTo((60 * 40 * 6) / 1000 / 0.96, 6)
    expect(stack.states[stack.states.length - 1]!.open).toEqual([])
    const back = at({ fill: 'cut' }, [{ ...groove, face: 'back' }])
    expect(back.pours[1]!.side).toBe('low')
  })

  it('by depth or mass stands lower', () => {
    expect(at({ depth: 2 }).pours[1]!.level).toBeCloseTo(16, 9)
    // 5.28 g are 4.8 ml, after cure 4.608 ml on 24 cm²: 1.92 mm over a floor at 14.
    const byMass = at({ mass: 5.28 })
    expect(byMass.pours[1]!.level).toBeCloseTo(15.92, 6)
    expect(finishedVolumes(byMass).get('pour 1')).toBeCloseTo(4.608, 6)
    // More than the cut holds runs off: the cut is full.
    expect(at({ mass: 100 }).pours[1]!.filledMl).toBeCloseTo(14.4, 6)
  })

  it('into a cut that another inlay has filled in part takes only what is open', () => {
    const stack = stackOf(
      plainPiece({
        cuts: [
          { id: 'one', ...pocketAt(0), depth: 6 },
          { id: 'two', ...pocketAt(30), depth: 6 }
        ],
        pours: [
          { resin: 'medium', depth: 20 },
          { resin: 'thin', kind: 'inlay', into: ['one'], fill: 'cut' },
          { resin: 'thin', kind: 'inlay', into: ['two'], fill: 'cut' }
        ]
      })
    )
    // The usual order cuts both, then fills both: they share 30 × 40.
    expect(stack.pours[1]!.filledMl).toBeCloseTo((60 * 40 * 6) / 1000, 6)
    expect(stack.pours[2]!.filledMl).toBeCloseTo((30 * 40 * 6) / 1000, 6)
  })

  it('into a cut right through ends at the far face', () => {
    const stack = at({ fill: 'cut' }, [{ id: 'line', face: 'front', shape: { circle: 20 }, through: true }])
    expect(stack.pours[1]!.depth).toBe(20)
    expect(stack.pours[1]!.filledMl).toBeCloseTo((Math.PI * 100 * 20) / 1000, 3)
    expect(coreAt(stack.geometry, stack.events, 0, 0)).toEqual([
      { from: 0, to: 20, material: { kind: 'pour', index: 1 } }
    ])
  })
})

function pocketAt(x: number) {
  return {
    face: 'front' as const,
    shape: { rectangle: [60, 40] as [number, number], at: [x, 0] as [number, number] }
  }
}

function never(): never {
  throw new Error('not a cut')
}
