import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

type Pour = PieceDocument['pours'][number]

const swirl = (...pigments: string[]): Given => ({
  piece: {
    ...PLAIN,
    pours: [
      {
        id: 'swirl',
        resin: 'deep',
        depth: 20,
        marbling: pigments.map(pigment => ({
          share: 100 / pigments.length,
          tint: [{ pigment, percent: 2 }]
        }))
      }
    ]
  }
})
const tinted = (pigment: string, percent: number, more: Partial<Pour> = {}): Given => ({
  piece: {
    ...PLAIN,
    pours: [{ id: 'colour', resin: 'deep', depth: 20, tint: [{ pigment, percent }], ...more } as Pour]
  }
})

describe('makers’ cases: colour', () => {
  it('C57 colours from across the wheel mix to mud, and the plan says to stir little; neighbours and white do not', () => {
    const mud = theOne(swirl('red-paste', 'green-paste'), 'turns-mud')
    expect(mud.says).toMatch(/mix to mud.*few strokes/)
    for (const other of ['white-paste', 'orange-paste', 'violet-paste'])
      expect(asked(swirl('red-paste', other), 'turns-mud'), other).toEqual([])
  })

  it('C57 poster paint and colours of another family are not for this resin', () => {
    const paint = theOne(tinted('water-paint', 2), 'tint-family')
    expect(paint.severity).toBe('stop')
    expect(paint.says).toMatch(/not for this resin.*foams polyurethane/)
    const dye: Given = {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'colour', resin: 'polyurethane', depth: 20, tint: [{ pigment: 'green-dye', percent: 0.002 }] }
        ]
      }
    }
    expect(theOne(dye, 'tint-family').says).toMatch(/not for polyurethane: it may foam/)
    expect(asked(tinted('green-dye', 0.002), 'tint-family')).toEqual([])
  })
})

describe('tints that are asked for something', () => {
  it('are given the share that does it, and it does', () => {
    const given = tinted('white-paste', 0.5, { hidesFrom: 3 })
    const found = theOne(given, 'tint-strength')
    const after = mended(given, found.fix!)
    expect(asked(after, 'tint-strength')).toEqual([])
    const { depth } = worked(after).hiding[0]!
    expect(depth!.centralMm).toBeLessThanOrEqual(3)
    expect(depth!.centralMm).toBeGreaterThan(2.9)
  })

  it('are told when that is over what the mix takes', () => {
    const found = theOne(tinted('white-paste', 2, { hidesFrom: 0.3 }), 'tint-strength')
    expect(found.fix).toBeNull()
    expect(found.says).toMatch(
      /would take \d+(\.\d+)? % of white paste \(titanium dioxide\); allowed up to 6 %/
    )
    expect(theOne(tinted('white-paste', 8), 'tint-over-cap').says).toMatch(
      /8 % of white paste.*allowed up to 6 %/
    )
  })

  // Beer-Lambert on the tint of one band would double the loss at twice the share; over three bands it is near it.
  it('let through what is wanted once the share is set', () => {
    const given = tinted('amber-tint', 0.2, { lightThrough: 40 })
    const after = mended(given, theOne(given, 'tint-strength').fix!)
    expect(asked(after, 'tint-strength')).toEqual([])
    expect(
      asked(mended(given, [{ op: 'add', path: '/pours/0/lightThrough', value: 99 }]), 'tint-strength')
    ).toHaveLength(1)
  })

  it('are answered at both ends of what may be asked', () => {
    for (const lightThrough of [0.1, 99.9])
      expect(theOne(tinted('amber-tint', 0.2, { lightThrough }), 'tint-strength').limit).toBe(lightThrough)
  })

  it('are given no share of a pigment of which there is none', () => {
    const given = tinted('amber-tint', 0.2, { lightThrough: 40 })
    const both = mended(given, [
      { op: 'add', path: '/pours/0/tint/1', value: { pigment: 'violet-tint', percent: 0 } }
    ])
    const { fix, fixSays } = theOne(both, 'tint-strength')
    expect(fix!.map(o => o.path)).toEqual(['/pours/0/tint/0/percent'])
    expect(fixSays).not.toMatch(/violet|NaN/)
    expect(asked(mended(both, fix!), 'tint-strength')).toEqual([])
  })
})

describe('the depth that a pour gives to its neighbour', () => {
  const piece = (next: object): Given => ({
    piece: {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, thickness: 30 })),
      pours: [
        {
          id: 'green',
          resin: 'deep',
          depth: 18,
          tint: [{ pigment: 'green-paste', percent: 2 }],
          opaque: true
        },
        { id: 'clear', resin: 'deep', ...next } as Pour
      ],
      cuts: [{ id: 'bay', face: 'back', shape: { rectangle: [60, 60] }, depth: 16.5, for: 'clock' }],
      hardware: [{ id: 'clock', kind: 'quartz-movement', in: 'bay', depth: 16, thread: 20 }]
    }
  })

  it('keeps the bay as deep as its part and the piece as thick as it was', () => {
    for (const next of [{ depth: 12 }, { height: 30 }]) {
      const given = piece(next)
      const found = theOne(given, 'opaque-cover')
      expect(found.fixSays).toMatch(/^green \d\.\d deeper, clear so much less$/)
      const [before, after] = [worked(given), worked(mended(given, found.fix!))]
      expect(after.piece.cuts[0]!.depth).toBe(16.5)
      expect(after.stack.castHeight).toBeCloseTo(before.stack.castHeight, 9)
      expect(asked(mended(given, found.fix!), 'opaque-cover')).toEqual([])
    }
  })
})
