import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Bubbles, voids and wet or porous inclusions. Given numbers as makers reported them; assumed ones are ours.

const block = (stones: object, more: object = {}): Given => ({
  piece: {
    castwright: 1,
    name: 'a block',
    outline: { rectangle: [120, 90] },
    mould: { margin: 0, bearers: 250 },
    pours: [
      {
        id: 'block',
        resin: 'medium',
        depth: 9,
        stones: [{ set: 'before the pour', all: true, ...stones } as never],
        ...more
      }
    ]
  }
})

describe('theme E: bubbles, voids, inclusions', () => {
  // Given: a woody seed pod in a block poured over the depth limit on purpose; clam-shaped cracks, air driven
  // out. Assumed: 80 mm, a casting resin for half that.
  const pod: Given = {
    ...block({ kind: 'seed-pods' }, { depth: 80, resin: 'casting' }),
    shop: { castwright: 1, resins: [{ id: 'casting', like: 'deep', greatestDepth: 40 }] }
  }

  it('C06 a seed pod in a block too deep: heat cracks, and a pod that gives off air, are two findings', () => {
    const heat = asked(pod, 'pour-heat')
    expect(heat).toHaveLength(1)
    expect(heat[0]!.severity).toBe('stop')
    expect(theOne(pod, 'sharp-inclusion').says).toMatch(
      /cracks round the seed pods, woody in block are likely/
    )
    expect(asked(block({ kind: 'seed-pods' }), 'sharp-inclusion')).toEqual([])
    const air = asked(pod, 'porous-inclusion').find(f => /hold air/.test(f.says))!
    expect(air.severity).toBe('caution')
    expect(air.value).toBeGreaterThan(100)
    expect(asked(mended(pod, air.fix!), 'porous-inclusion').filter(f => /hold air/.test(f.says))).toEqual([])
  })

  it('C06 the maker may go on in spite of it, and says why', () => {
    const all = plan(
      { piece: checkPiece(pod.piece, 'piece'), shop: checkShop(pod.shop!, 'shop').value },
      { asOf: '2026-03-02T09:00Z', effort: 'preview' }
    ).plan
    const despite = all.findings.map(f => ({ id: f.id, because: 'wanted as an effect' }))
    const { verdict, findings } = plan(
      { piece: checkPiece(pod.piece, 'piece'), shop: checkShop(pod.shop!, 'shop').value },
      { asOf: '2026-03-02T09:00Z', effort: 'preview', despite }
    ).plan
    expect(all.verdict).toBe('stop')
    expect(verdict).toBe('ready')
    expect(findings.map(f => f.id)).toContain('porous-inclusion')
  })

  it('C40 timber that is not sealed gives off its air into a pour that warms, by the gas law', () => {
    const open = (sealed: 'no' | 'tacky'): Given => ({
      piece: {
        ...PLAIN,
        timbers: PLAIN.timbers!.map(t => ({ ...t, sealed })),
        pours: [{ id: 'clear', resin: 'medium', depth: 9 }]
      }
    })
    const [found] = asked(open('no'), 'timber-air')
    expect(found!.severity).toBe('caution')
    expect(asked(open('tacky'), 'timber-air')).toEqual([])
    // Left board 100 × 200 × 20 mm: sides 600 × 9 of 600 × 20 and its top are in resin; air 0.55-0.62 of it.
    const ml = Number(/up to ([\d.]+) ml/.exec(found!.says)![1])
    const toC = Number(/warms to (\d+) °C/.exec(found!.says)![1])
    const byHand = 400 * 0.59 * ((toC - 20.5) / 293.65) * ((600 * 9) / (600 * 20 + 20_000))
    expect(ml / byHand).toBeGreaterThan(0.9)
    expect(ml / byHand).toBeLessThan(1.1)
  })

  // Given: hardwood board, recesses of letters filled with resin, background sealed. Assumed: strokes of 2.5 mm,
  // 3 mm deep.
  const letters = (width: number, depth: number): Given => ({
    piece: {
      ...PLAIN,
      cuts: [
        {
          id: 'letters',
          kind: 'groove',
          face: 'front',
          along: {
            points: [
              [75, -30],
              [75, 30],
              [120, 30]
            ]
          },
          width,
          depth
        }
      ],
      pours: [...PLAIN.pours!, { id: 'fill', kind: 'inlay', resin: 'medium', into: ['letters'], fill: 'cut' }]
    }
  })

  it('C42 letters narrower than about 3 mm and deeper than wide: seal, two fills and a skim', () => {
    const found = theOne(letters(2.5, 3), 'narrow-recess')
    expect(found.severity).toBe('caution')
    expect(found.limit).toBe(3)
    expect(found.says).toMatch(/Seal it first, fill it in two goes and a skim/)
    expect(asked(letters(4, 3), 'narrow-recess')).toEqual([])
    expect(asked(letters(2.5, 2), 'narrow-recess')).toEqual([])
    const after = mended(letters(2.5, 3), found.fix!)
    expect(asked(after, 'narrow-recess')).toEqual([])
    expect(worked(after).piece.pours.filter(p => p.kind === 'inlay')).toHaveLength(2)
  })

  // Given: stained panel, clear coat, dots filled with resin; dots of 2-3 mm trapped air; flooded and faced off.
  const dots = (across: number): Given => ({
    piece: {
      ...PLAIN,
      cuts: [{ id: 'dot', face: 'front', shape: { circle: across, at: [100, 0] }, depth: 4 }],
      pours: [...PLAIN.pours!, { id: 'fill', kind: 'inlay', resin: 'medium', into: ['dot'], fill: 'cut' }]
    }
  })

  it('C43 dots of 2 to 3 mm hold their air: flood the face and take it off', () => {
    for (const across of [2, 3]) {
      const found = theOne(dots(across), 'narrow-recess')
      // Bretherton: 3.6 mm in liquid epoxy.
      expect(found.limit).toBeCloseTo(3.6, 1)
      expect(found.says).toMatch(/or flood the face and take it off again/)
    }
    expect(asked(dots(4), 'narrow-recess')).toEqual([])
  })

  // Given: 0.5 mm clear, 0.4 mm cut, 0.3 mm out of flat.
  const faced = (clear: number, off: number, flat: number): Given => ({
    piece: {
      ...PLAIN,
      flatten: { back: 1, front: off },
      pours: [...PLAIN.pours!, { id: 'layer', kind: 'flood', resin: 'thin', depth: clear }],
      steps: [
        { do: 'make mould' },
        { do: 'set timber' },
        { do: 'pour', what: 'clear' },
        { do: 'wait', for: '7 d' },
        { do: 'demould' },
        { do: 'turn over' },
        { do: 'flatten', face: 'back' },
        { do: 'turn over' },
        { do: 'pour', what: 'layer' },
        { do: 'wait', for: '7 d' },
        { do: 'flatten', face: 'front' },
        { do: 'coat', face: 'both' },
        { do: 'wait', for: '14 d' },
        { do: 'deliver' }
      ]
    },
    shop: { castwright: 1, machine: { x: 800, y: 600, error: flat } }
  })

  it('C43 0.5 mm clear, 0.4 mm cut, 0.3 mm out of flat: will cut the stain', () => {
    const found = theOne(faced(0.5, 0.4, 0.3), 'flood-thin')
    expect(found.severity).toBe('caution')
    expect(found.value).toBeCloseTo(0.1, 6)
    expect(found.limit).toBe(0.3)
    expect(theOne(faced(0.4, 0.4, 0.3), 'flood-thin').severity).toBe('stop')
    expect(asked(faced(0.7, 0.4, 0.3), 'flood-thin')).toEqual([])
    expect(found.fix).toEqual([{ op: 'replace', path: '/pours/1/depth', value: 0.7 }])
  })

  // Given: a cone that looked open and dry; as the mix warmed, scales kept popping. Assumed: never heated.
  it('C45 cones never heated before: heat them once to the peak predicted', () => {
    const cone = (heated?: number) =>
      block({ kind: 'pine-cones', sealed: true, ...(heated === undefined ? {} : { heated }) }, { depth: 12 })
    const found = theOne(cone(), 'porous-inclusion')
    expect(found.severity).toBe('caution')
    const { peakBandC } = worked(cone()).casts[0]!
    expect(found.limit).toBe(Math.ceil(Math.min(150, peakBandC[1])))
    expect(found.limit).toBeGreaterThan(60)
    expect(found.says).toMatch(/Heat them once to \d+ °C or more before casting/)
    expect(asked(cone(40), 'porous-inclusion')).toHaveLength(1)
    expect(asked(mended(cone(), found.fix!), 'porous-inclusion')).toEqual([])
  })

  // Given: carnation buds, neither dried nor sealed. Assumed: moisture 80 %.
  it('C46 fresh flower buds are refused, and days of drying asked for', () => {
    const buds = (dry: string) => block({ kind: 'dried-flowers', dry, sealed: true, heated: 60 })
    const found = theOne(buds('fresh'), 'stones-damp')
    expect(found.severity).toBe('stop')
    expect(found.says).toMatch(/pressed about 5 to 10 days, in a drying agent 2 to 5, in air 7 to 14/)
    expect(found.settledBy).toMatch(/weight/)
    expect(theOne(buds('not sure'), 'stones-damp').severity).toBe('caution')
    expect(asked(buds('dry'), 'stones-damp')).toEqual([])
  })

  it('warm parts, a paddle and a thick fast coat: each said with its figure', () => {
    const coat = (more: object): Given => ({
      piece: {
        ...PLAIN,
        pours: [{ id: 'coat', resin: 'thin', depth: 3, ...more }]
      } as PieceDocument
    })
    expect(asked(coat({}), 'bubbles-stay')).toEqual([])
    expect(theOne(coat({ mixing: 'paddle' }), 'bubbles-stay').says).toMatch(
      /haze\. In the vessel bubbles .* Stir by hand/
    )
    expect(theOne(coat({ depth: 12 }), 'bubbles-stay').says).toMatch(/Under 4 bar they would be 0\.0\d mm/)
  })
})
