import { describe, expect, it } from 'vitest'
import { PIGMENTS } from '../../src/catalogue/pigment.ts'
import type { Bands } from '../../src/catalogue/pigment-optics.ts'
import { contrastOf, strokeReadAtMm } from '../../src/colour/contrast.ts'
import { marbled } from '../../src/colour/marble.ts'
import { linearOfHex } from '../../src/colour/srgb.ts'
import type { Optics } from '../../src/colour/stacked.ts'

const paste = (id: string, percent = 3): Optics => {
  const p = PIGMENTS.find(x => x.id === id)!
  const c = (percent / 100) * p.pigmentFraction * 1100
  return {
    scatterPerMm: [c * p.scatterM2PerG, c * p.scatterM2PerG, c * p.scatterM2PerG],
    absorbPerMm: p.absorbBandsM2PerG.map(k => k * c) as unknown as Bands
  }
}
const poured = (...ids: string[]) =>
  marbled(
    ids.map(id => ({ optics: paste(id), share: 1 })),
    20,
    [0.7, 0.7, 0.7]
  )

describe('colours poured into each other', () => {
  it('of one kind mix to themselves, whatever the shares', () => {
    const m = marbled(
      [
        { optics: paste('green-paste'), share: 10 },
        { optics: paste('green-paste'), share: 70 }
      ],
      20,
      [0, 0, 0]
    )
    expect(m.apart).toBeCloseTo(0, 9)
    expect(m.fromMixed).toBeCloseTo(0, 6)
    expect(m.mud).toBeNull()
  })

  it('mix to what lies between: no band leaves the span of its strands', () => {
    for (const m of [
      poured('blue-paste', 'white-paste'),
      poured('red-paste', 'turquoise-paste', 'grey-paste')
    ])
      for (let b = 0; b < 3; b++) {
        expect(m.mixed[b]!).toBeGreaterThanOrEqual(Math.min(...m.strands.map(s => s[b]!)) - 1e-9)
        expect(m.mixed[b]!).toBeLessThanOrEqual(Math.max(...m.strands.map(s => s[b]!)) + 1e-9)
      }
  })

  // Practice: colours across the wheel mix to brown or grey; neighbours and white do not.
  it('turn to mud across the wheel, and not beside it or with white', () => {
    expect(poured('red-paste', 'turquoise-paste').mud?.pair).toEqual([0, 1])
    expect(poured('red-paste', 'green-paste').mud).not.toBeNull()
    expect(poured('blue-paste', 'ochre-paste').mud).not.toBeNull()
    // Green comes of it, which is a colour.
    expect(poured('blue-paste', 'yellow-paste').mud).toBeNull()
    expect(poured('blue-paste', 'white-paste').mud).toBeNull()
    expect(poured('blue-paste', 'turquoise-paste').mud).toBeNull()
    expect(poured('red-paste', 'orange-paste').mud).toBeNull()
    expect(poured('white-paste', 'black-paste').mud).toBeNull()
  })

  it('name the worst pair of three', () => {
    const three = poured('white-paste', 'red-paste', 'green-paste')
    expect(three.mud?.pair).toEqual([1, 2])
    expect(three.apart).toBeGreaterThan(20)
  })
})

describe('contrast', () => {
  // WCAG: black on white 21 : 1; #767676 on white is the darkest grey commonly given for 4.5 : 1 (4.54).
  it('is that of the published examples, whichever way round', () => {
    expect(contrastOf(linearOfHex('#000000'), linearOfHex('#ffffff'))).toBeCloseTo(21, 5)
    expect(contrastOf(linearOfHex('#ffffff'), linearOfHex('#767676'))).toBeCloseTo(4.54, 2)
    expect(contrastOf(linearOfHex('#767676'), linearOfHex('#767676'))).toBe(1)
  })

  // tan of one minute of arc is 0.00029089: 1 mm at 3437.7 mm.
  it('of a stroke of 1 mm ends at 3.44 m, and grows with it', () => {
    expect(strokeReadAtMm(1)).toBeCloseTo(3437.75, 1)
    expect(strokeReadAtMm(1.4)).toBeCloseTo(1.4 * strokeReadAtMm(1), 9)
    expect(strokeReadAtMm(0)).toBe(0)
  })
})
