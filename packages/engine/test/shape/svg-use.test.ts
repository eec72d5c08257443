import { describe, expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import { readSvg, SvgError } from '../../src/shape/svg.ts'
import { boxOf, page } from './svg-page.ts'

const read = (inner: string, id?: string) =>
  readSvg(page(inner), id === undefined ? { tolMm: 0.01 } : { tolMm: 0.01, id })
const boxes = (inner: string) => read(inner).shapes.map(s => boxOf(s.region))

const UNIT = '<rect id="unit" width="1" height="1"/>'

describe('use', () => {
  it('draws a copy, moved by x and y, after its own transform', () => {
    expect(boxes(`${UNIT}<use href="#unit" x="10" y="20"/>`)).toEqual([
      [0, -1, 1, 0],
      [10, -21, 11, -20]
    ])
    // SVG 1.1, 5.6: the translation by x and y is appended to the transform, so it is scaled too.
    expect(boxes(`<defs>${UNIT}</defs><use href="#unit" x="10" y="20" transform="scale(2)"/>`)).toEqual([
      [20, -42, 22, -40]
    ])
  })

  it('reads href and xlink:href, href first', () => {
    const text = page(
      `<defs>${UNIT}<rect id="two" width="2" height="2"/></defs>
       <use xlink:href="#unit"/><use href="#two" xlink:href="#unit"/>`
    ).replace('<svg', '<svg xmlns:xlink="http://www.w3.org/1999/xlink"')
    expect(readSvg(text, { tolMm: 0.01 }).shapes.map(s => area(s.region))).toEqual([1, 4])
  })

  it('follows copies of groups that hold copies', () => {
    expect(
      boxes(`<defs>${UNIT}<g id="row"><use href="#unit"/><use href="#unit" x="5"/></g>
        <g id="grid"><use href="#row"/><use href="#row" y="7"/></g></defs><use href="#grid" x="100"/>`)
    ).toEqual([
      [100, -1, 101, 0],
      [105, -1, 106, 0],
      [100, -8, 101, -7],
      [105, -8, 106, -7]
    ])
  })

  it('may refer to what comes later, and to an element’s first bearer of the id', () => {
    expect(
      boxes(`<use href="#unit" x="3"/><defs>${UNIT}<rect id="unit" width="9" height="9"/></defs>`)
    ).toEqual([[3, -1, 4, 0]])
  })

  it('hands its style down to the copy', () => {
    const twice = '<path id="p" d="M0 0H20V20H0ZM5 5H15V15H5Z"/>'
    const areas = read(
      `<defs>${twice}</defs><use href="#p" fill-rule="evenodd"/><use href="#p"/>`
    ).shapes.map(s => area(s.region))
    expect(areas).toEqual([300, 400])
    expect(read(`<defs>${twice}</defs><use href="#p" display="none"/>`).shapes).toEqual([])
    expect(read(`<defs><g display="none" id="q">${twice}</g></defs><use href="#q"/>`).shapes).toEqual([])
  })

  it('a copy bears the id of the outermost use, an original its own', () => {
    const { shapes } = read(
      `${UNIT}<defs><g id="g"><use id="inner" href="#unit"/></g></defs><use id="left" href="#g"/><use href="#g"/>`
    )
    expect(shapes.map(s => s.id)).toEqual(['unit', 'left', null])
  })

  it('loads nothing from outside and reports what it cannot follow', () => {
    const { shapes, skipped } = read(
      `<use href="other.svg#a"/><use href="https://example.org/x.svg#a"/>
       <use href="#nowhere"/><use/><clipPath id="c"><rect width="1" height="1"/></clipPath><use href="#c"/><use href="data:image/svg+xml,x#a"/>`
    )
    expect(shapes).toEqual([])
    expect(skipped.map(s => s.why)).toEqual([
      'nothing outside the file is loaded',
      'nothing outside the file is loaded',
      'nothing in the file has that id',
      'nothing outside the file is loaded',
      'it refers to a clipPath, which is no shape',
      'nothing outside the file is loaded'
    ])
  })

  it('what a copy leaves out is said once, however often it is copied', () => {
    const { skipped } = read(`<defs><text id="t">a</text></defs>${'<use href="#t"/>'.repeat(50)}`)
    expect(skipped).toEqual([{ what: 'text "t"', why: 'turn text into paths', line: 2 }])
  })

  for (const [name, inner] of [
    ['itself', '<use id="a" href="#a"/>'],
    ['its own group', '<g id="a"><g><use href="#a"/></g></g>'],
    ['each other', '<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'],
    ['the whole file', '<g><use href="#root"/></g>'],
    ['a symbol in itself', '<symbol id="a"><use href="#a"/></symbol><use href="#a"/>']
  ] as const) {
    it(`in a circle is refused: ${name}`, () => {
      const text = page(inner).replace('<svg', '<svg id="root"')
      expect(() => readSvg(text, { tolMm: 0.01 })).toThrow(
        /^line 2: a use of "#.*" within itself; allowed: no circles/
      )
    })
  }

  it('the same element twice, one after the other, is no circle', () => {
    expect(
      read(`<defs><g id="a">${UNIT}</g></defs><g><use href="#a"/><use href="#a"/></g>`).shapes
    ).toHaveLength(2)
  })
})

describe('symbol', () => {
  const KNOB = '<symbol id="knob" viewBox="0 0 10 10"><rect x="2" y="2" width="6" height="6"/></symbol>'

  it('is fitted into the width and height of the use', () => {
    expect(boxes(`${KNOB}<use href="#knob" x="20" y="30" width="50" height="50"/>`)).toEqual([
      [30, -70, 60, -40]
    ])
    // Wider than high: meet, in the middle.
    expect(boxes(`${KNOB}<use href="#knob" width="100" height="50"/>`)).toEqual([[35, -40, 65, -10]])
    expect(
      boxes(
        `${KNOB.replace('viewBox', 'preserveAspectRatio="none" viewBox')}<use href="#knob" width="100" height="50"/>`
      )
    ).toEqual([[20, -40, 80, -10]])
  })

  it('may be used again and again, and its own style goes before that of the use', () => {
    const twice = 'd="M0 0H20V20H0ZM5 5H15V15H5Z"'
    const { shapes } = read(
      `<symbol id="s" fill-rule="evenodd"><path ${twice}/></symbol><use href="#s"/><use href="#s" fill-rule="nonzero"/>`
    )
    expect(shapes.map(s => area(s.region))).toEqual([300, 300])
  })

  it('has no size of its own', () => {
    const sized = KNOB.replace('<symbol', '<symbol x="5" y="5" width="10" height="10"')
    expect(boxes(`${sized}<use href="#knob" width="50" height="50"/>`)).toEqual([[10, -40, 40, -10]])
    expect(boxes(`${sized}<use href="#knob"/>`)).toEqual([[70, -80, 130, -20]])
  })

  it('without a size fills the view around it', () => {
    // The page is 200 × 100 units: scale 10, 50 units to the right.
    expect(boxes(`${KNOB}<use href="#knob"/>`)).toEqual([[70, -80, 130, -20]])
  })

  it('without a viewBox is drawn in the units of the use', () => {
    expect(
      boxes(
        '<symbol id="s" x="9" y="9" width="9" height="9"><rect x="2" width="6" height="6"/></symbol><use href="#s" x="1"/>'
      )
    ).toEqual([[3, -6, 9, 0]])
  })

  it('a used svg takes width and height from the use before its own', () => {
    const inner =
      '<svg id="s" width="20" height="20" viewBox="0 0 10 10"><rect width="10" height="10"/></svg>'
    expect(boxes(`<defs>${inner}</defs><use href="#s"/>`)).toEqual([[0, -20, 20, 0]])
    expect(boxes(`<defs>${inner}</defs><use href="#s" width="40" height="40"/>`)).toEqual([[0, -40, 40, 0]])
  })
})

describe('one element by its id', () => {
  const DRAWING = `<g id="lid" transform="translate(10 0)"><rect id="a" width="4" height="4"/>
    <g id="b"><rect width="2" height="2"/><circle cx="20" cy="20" r="1"/></g></g>
    <rect id="c" x="50" width="3" height="3"/><defs><rect id="d" width="1" height="1"/></defs>
    <use id="e" href="#d" x="70"/><g display="none"><rect id="f" width="1" height="1"/></g>
    <text>words</text>`

  it('is read in its place, with what is in it and nothing else', () => {
    expect(read(DRAWING, 'a').shapes.map(s => boxOf(s.region))).toEqual([[10, -4, 14, 0]])
    expect(boxOf(read(DRAWING, 'lid').region)).toEqual([10, -21, 31, 0])
    expect(read(DRAWING, 'b').shapes).toHaveLength(2)
    expect(boxOf(read(DRAWING, 'c').region)).toEqual([50, -3, 53, 0])
    expect(boxOf(read(DRAWING, 'e').region)).toEqual([70, -1, 71, 0])
    expect(read(DRAWING, 'a').skipped).toEqual([])
    expect(read(DRAWING).shapes).toHaveLength(5)
  })

  it('the root’s own id stands for all', () => {
    const text = page(DRAWING).replace('<svg', '<svg id="all"')
    expect(readSvg(text, { tolMm: 0.01, id: 'all' }).shapes).toHaveLength(5)
  })

  it('that is not there, or not drawn, is refused with what there is', () => {
    expect(() => read(DRAWING, 'z')).toThrow(
      'line 1: no element with the id "z"; allowed: one of "lid", "a", "b", "c", "d", "e", "f"'
    )
    expect(() => read('<rect width="1" height="1"/>', 'z')).toThrow(/the file has no ids/)
    for (const id of ['d', 'f']) {
      expect(() => read(DRAWING, id)).toThrow(SvgError)
      expect(() => read(DRAWING, id)).toThrow(/not drawn where it stands/)
    }
  })

  it('errors in parts that were not asked for do not matter, those around it do', () => {
    const broken = '<path d="M0 0 oops"/><rect id="ok" width="1" height="1"/>'
    expect(() => read(broken)).toThrow(SvgError)
    expect(area(read(broken, 'ok').region)).toBe(1)
    expect(() => read(`<g transform="wobble(3)">${broken}</g>`, 'ok')).toThrow(
      /transform="wobble\(3\)"; allowed: matrix/
    )
  })
})
