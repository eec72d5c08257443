import { describe, expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import { readSvg, SvgError } from '../../src/shape/svg.ts'
import { lengthMm, MM_PER_PX, readLength, userLength } from '../../src/shape/svg-length.ts'
import { boxOf, page } from './svg-page.ts'

const svg = (attributes: string, inner: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inner}</svg>`
const read = (text: string) => readSvg(text, { tolMm: 0.01 })
const closeTo = (found: readonly number[], wanted: readonly number[]) =>
  found.forEach((v, k) => {
    expect(v, `${found} against ${wanted}`).toBeCloseTo(wanted[k]!, 4)
  })

describe('physical units', () => {
  // CSS Values and Units 3, 6.2: 1 in = 2.54 cm = 96 px = 72 pt = 6 pc; 1 Q = 1/40 cm.
  const UNITS: [string, number][] = [
    ['254mm', 254],
    ['25.4cm', 254],
    ['10in', 254],
    ['720pt', 254],
    ['60pc', 254],
    ['960px', 254],
    ['960', 254],
    ['1016Q', 254],
    ['1016q', 254],
    ['254MM', 254],
    ['2.54e2mm', 254],
    [' +254.mm ', 254],
    ['.5in', 12.7]
  ]
  for (const [text, mm] of UNITS) {
    it(`width="${text}" is ${mm} mm`, () => {
      const reading = read(svg(`width="${text}" height="1mm"`, ''))
      expect(Math.abs(reading.widthMm - mm)).toBeLessThanOrEqual(mm * 2 ** -51)
    })
  }

  it('mm, cm and in are exact to the last bit', () => {
    for (const [text, mm] of [
      ['210mm', 210],
      ['29.7cm', 297],
      ['8.5in', 215.9],
      ['11in', 11 * 25.4],
      ['96px', 25.4],
      ['72pt', 25.4],
      ['6pc', 25.4]
    ] as const) {
      expect(lengthMm(readLength(text, 'width')), text).toBe(mm)
    }
  })

  it('a page whose viewBox counts millimetres keeps every number of the drawing', () => {
    const numbers = [0.1, 12.3, 99.9999, 145.0003]
    for (const n of numbers) {
      const { region } = read(
        svg('width="210mm" height="297mm" viewBox="0 0 210 297"', `<rect width="${n}" height="${n}"/>`)
      )
      expect(boxOf(region)).toEqual([0, -n, n, 0])
    }
  })

  it('lengths within a drawing are of CSS size before the transforms', () => {
    const { region } = read(
      svg('width="100mm" height="100mm"', '<rect x="10mm" y="1in" width="2cm" height="72pt"/>')
    )
    closeTo(boxOf(region), [10, -50.8, 30, -25.4])
    // In a viewBox of half the scale they are half as large.
    const half = read(
      svg('width="96px" height="96px" viewBox="0 0 192 192"', '<rect width="1in" height="48"/>')
    )
    closeTo(boxOf(half.region), [0, -6.35, 12.7, 0])
  })

  it('percentages are of the viewBox: width, height, and for r the diagonal over √2', () => {
    const { shapes } = read(
      svg(
        'width="80mm" height="60mm" viewBox="0 0 80 60"',
        '<rect x="10%" y="10%" width="50%" height="50%"/><circle r="10%"/>'
      )
    )
    closeTo(boxOf(shapes[0]!.region), [8, -36, 48, -6])
    closeTo(boxOf(shapes[1]!.region).slice(2), [Math.SQRT1_2 * 10, Math.SQRT1_2 * 10])
  })

  it('user units and mm agree: 1 px = 25.4/96 mm', () => {
    expect(userLength(readLength('25.4mm', 'x'), 0)).toBe(96)
    expect(userLength(readLength('1in', 'x'), 0)).toBe(96)
    expect(userLength(readLength('3pt', 'x'), 0)).toBe(4)
    expect(userLength(readLength('2pc', 'x'), 0)).toBe(32)
    expect(MM_PER_PX).toBe(25.4 / 96)
    expect(userLength(readLength('25%', 'x'), 80)).toBe(20)
    expect(lengthMm(readLength('25%', 'x'))).toBeNull()
  })

  for (const text of [
    '1em',
    '1ex',
    '1rem',
    '10vw',
    'mm',
    '',
    '1 mm',
    '1mm1',
    '1,5mm',
    '12µm',
    '1%%',
    '0x10'
  ]) {
    it(`"${text}" is refused as a width`, () => {
      expect(() => read(page(`<rect width="${text}" height="1"/>`))).toThrow(SvgError)
      expect(() => read(page(`<rect width="${text}" height="1"/>`))).toThrow(
        /^line 2: rect: width=".*allowed: a number/
      )
    })
  }
})

describe('the page', () => {
  it('says what it assumed where units are missing, and nothing where they are not', () => {
    expect(read(svg('width="10mm" height="5mm" viewBox="0 0 10 5"', '')).assumed).toEqual([])
    expect(read(svg('width="10px" height="5px"', '')).assumed).toEqual([])
    const bare = read(svg('width="96" height="48"', '<rect width="96" height="48"/>'))
    expect(boxOf(bare.region)).toEqual([0, -12.7, 25.4, 0])
    expect(bare.assumed).toHaveLength(1)
    expect(bare.assumed[0]).toMatch(/without a unit: taken as px of 1\/96 in/)
  })

  it('without a size the units of the viewBox are px', () => {
    const reading = read(svg('viewBox="0 0 96 192"', '<rect width="96" height="192"/>'))
    expect([reading.widthMm, reading.heightMm]).toEqual([25.4, 50.8])
    expect(boxOf(reading.region)).toEqual([0, -50.8, 25.4, 0])
    expect(reading.assumed[0]).toMatch(/units of the viewBox taken as px/)
    const shares = read(svg('width="100%" height="100%" viewBox="0 0 96 192"', ''))
    expect([shares.widthMm, shares.heightMm]).toEqual([25.4, 50.8])
  })

  it('without size and viewBox it is 300 by 150 px', () => {
    const reading = read(svg('', '<rect width="96" height="96"/>'))
    expect([reading.widthMm, reading.heightMm]).toEqual([300 * (25.4 / 96), 150 * (25.4 / 96)])
    expect(boxOf(reading.region)).toEqual([0, -25.4, 25.4, 0])
    expect(reading.assumed).toHaveLength(1)
  })

  it('one size is enough where a viewBox gives the proportion', () => {
    const wide = read(svg('width="50mm" viewBox="0 0 100 40"', '<rect width="100" height="40"/>'))
    expect([wide.widthMm, wide.heightMm]).toEqual([50, 20])
    expect(boxOf(wide.region)).toEqual([0, -20, 50, 0])
    const high = read(svg('height="50mm" viewBox="0 0 100 40"', ''))
    expect([high.widthMm, high.heightMm]).toEqual([125, 50])
    expect(high.assumed).toHaveLength(1)
  })

  for (const [attributes, says] of [
    ['width="0" height="5mm"', /width="0"; allowed: above 0/],
    ['width="-5mm" height="5mm"', /width="-5mm"; allowed: above 0/],
    ['width="5mm" height="5mm" viewBox="0 0 0 5"', /viewBox="0 0 0 5"; allowed: sizes above 0/],
    ['viewBox="0 0 10"', /viewBox="0 0 10"; allowed: x y width height/],
    ['viewBox="0 0 10 -1"', /viewBox="0 0 10 -1"/],
    [
      'width="1e7mm" height="1e7mm" viewBox="0 0 1e-7 1e-7"',
      /a transform that stretches by 100000000000000;/
    ],
    ['width="1e7mm" height="1e7mm" viewBox="1 1 1e-320 1e-320"', /a transform that stretches by Infinity/],
    ['viewBox="0 0 10 x"', /viewBox: "x" at index 7 is no number/],
    ['viewBox="0 0 1e8 5"', /the number "1e8"/],
    ['viewBox="0 0 5 5" preserveAspectRatio="xMidyMid"', /preserveAspectRatio="xMidyMid"; allowed: none, or/]
  ] as const) {
    it(`${attributes} is refused`, () => {
      expect(() => read(svg(attributes, ''))).toThrow(says)
    })
  }
})

describe('viewBox and preserveAspectRatio', () => {
  // A box of 10 × 10 in a page of 40 × 20 mm: meet scales by 2, slice by 4. What the unit square about the
  // box's middle (5, 5) becomes, by hand.
  const inPage = (ratio: string | null): number[] =>
    boxOf(
      read(
        svg(
          `width="40mm" height="20mm" viewBox="0 0 10 10"${ratio === null ? '' : ` preserveAspectRatio="${ratio}"`}`,
          '<rect x="4" y="4" width="2" height="2"/>'
        )
      ).region
    )
  const CASES: [string | null, number, number, number, number][] = [
    // ratio, left, top, width, height of the square in mm from the upper left corner
    [null, 18, 8, 4, 4],
    ['', 18, 8, 4, 4],
    ['xMidYMid', 18, 8, 4, 4],
    ['xMidYMid meet', 18, 8, 4, 4],
    ['xMinYMin meet', 8, 8, 4, 4],
    ['xMinYMax', 8, 8, 4, 4],
    ['xMaxYMid meet', 28, 8, 4, 4],
    ['xMidYMid slice', 16, 6, 8, 8],
    ['xMinYMin slice', 16, 16, 8, 8],
    ['xMaxYMax slice', 16, -4, 8, 8],
    ['xMinYMax slice', 16, -4, 8, 8],
    ['xMaxYMin slice', 16, 16, 8, 8],
    ['none', 16, 8, 8, 4]
  ]
  for (const [ratio, left, top, width, height] of CASES) {
    it(`a square in a wide page under ${ratio === null ? 'no attribute' : `"${ratio}"`}`, () => {
      closeTo(inPage(ratio), [left, -top - height, left + width, -top])
    })
  }

  it('in a high page y is what moves', () => {
    const at = (ratio: string): number[] =>
      boxOf(
        read(
          svg(
            `width="20mm" height="40mm" viewBox="0 0 10 10" preserveAspectRatio="${ratio}"`,
            '<rect width="10" height="10"/>'
          )
        ).region
      )
    closeTo(at('xMidYMid'), [0, -30, 20, -10])
    closeTo(at('xMinYMin'), [0, -20, 20, 0])
    closeTo(at('xMaxYMax'), [0, -40, 20, -20])
    closeTo(at('xMinYMax'), [0, -40, 20, -20])
    closeTo(at('xMaxYMin'), [0, -20, 20, 0])
    closeTo(at('xMinYMid slice'), [0, -40, 40, 0])
    closeTo(at('xMaxYMid slice'), [-20, -40, 20, 0])
  })

  it('the corner of the viewBox comes to the corner of the page', () => {
    const { region } = read(
      svg(
        'width="40mm" height="20mm" viewBox="-5 -100 20 10"',
        '<rect x="-5" y="-100" width="20" height="10"/>'
      )
    )
    closeTo(boxOf(region), [0, -20, 40, 0])
  })

  it('a circle stays round under meet and becomes an ellipse under none, within the tolerance', () => {
    const draw = (ratio: string) =>
      read(
        svg(
          `width="40mm" height="20mm" viewBox="0 0 10 10" preserveAspectRatio="${ratio}"`,
          '<circle cx="5" cy="5" r="5"/>'
        )
      ).region
    expect(Math.abs(area(draw('xMidYMid')) - Math.PI * 100)).toBeLessThan(0.01)
    expect(Math.abs(area(draw('none')) - Math.PI * 200)).toBeLessThan(0.01)
  })
})

describe('nested views', () => {
  it('an inner svg has its place, its viewBox and its own percentages', () => {
    const { shapes } = read(
      page(
        `<svg x="20" y="10" width="100" height="50" viewBox="0 0 10 10" preserveAspectRatio="xMinYMin">
           <rect width="100%" height="50%"/></svg>
         <svg x="50%" y="10%"><rect width="10%" height="10%"/></svg>`
      )
    )
    // Scale 5: 50 wide, 25 high, at (20, 10).
    closeTo(boxOf(shapes[0]!.region), [20, -35, 70, -10])
    // No viewBox and no size: units go on, percentages are of the view around.
    closeTo(boxOf(shapes[1]!.region), [100, -20, 120, -10])
  })

  it('views within views compose', () => {
    const { region } = read(
      page(`<svg x="100" width="100" height="100" viewBox="0 0 50 50"><svg x="25" y="25" width="25" height="25"
        viewBox="0 0 5 5"><rect x="1" y="1" width="1" height="1"/></svg></svg>`)
    )
    // 2 × 5 = 10 mm a unit; corner at (150, 50).
    closeTo(boxOf(region), [160, -70, 170, -60])
  })

  it('an inner view without size is not drawn', () => {
    const reading = read(
      page(
        '<svg width="0" height="5"><rect width="1" height="1"/></svg><svg viewBox="0 0 0 9"><circle r="1"/></svg>'
      )
    )
    expect(reading.shapes).toEqual([])
    expect(reading.skipped.map(s => s.why)).toEqual(['it has no size', 'it has no size'])
  })

  it('a transform of an inner svg counts once, drawn where it stands and by a use', () => {
    const inner =
      '<svg id="s" transform="translate(10 0)" width="10" height="10"><rect width="1" height="1"/></svg>'
    closeTo(boxOf(read(page(inner)).region), [10, -1, 11, 0])
    const used = read(page(`<defs>${inner}</defs><use href="#s" x="5"/>`))
    closeTo(boxOf(used.region), [15, -1, 16, 0])
  })
})
