import { describe, expect, it } from 'vitest'
import { area, bounds, inside, perimeter } from '../../src/shape/measure.ts'
import type { Region } from '../../src/shape/region.ts'
import { readSvg } from '../../src/shape/svg.ts'
import { boxOf, page } from './svg-page.ts'

const read = (inner: string, tolMm = 0.01) => readSvg(page(inner), { tolMm })

describe('basic shapes in mm', () => {
  it('come out exactly where they are drawn, with y turned up', () => {
    const { region } = read('<rect x="10" y="20" width="30.5" height="40.25"/>')
    expect(boxOf(region)).toEqual([10, -60.25, 40.5, -20])
    expect(area(region)).toBe(30.5 * 40.25)
  })

  it('a point drawn below another lies below it', () => {
    const { region } = read('<polygon points="0,0 10,0 0,30"/>')
    expect(inside(region, 1, -1)).toBe(true)
    expect(inside(region, 1, -20)).toBe(true)
    expect(inside(region, 1, 1)).toBe(false)
    expect(inside(region, 9, -20)).toBe(false)
  })

  it('outer rings run counter-clockwise whichever way they are drawn', () => {
    const there = read('<path d="M0 0H10V10H0Z"/>').region
    const back = read('<path d="M0 0V10H10V0Z"/>').region
    expect(area(there)).toBe(100)
    expect(area(back)).toBe(100)
  })

  // Closed forms: circle π·r², ellipse π·a·b, rounded rectangle w·h − (4 − π)·rx·ry.
  const forms: [string, string, number][] = [
    ['circle', '<circle cx="50" cy="50" r="30"/>', Math.PI * 900],
    ['ellipse', '<ellipse cx="50" cy="50" rx="40" ry="12"/>', Math.PI * 480],
    ['ellipse with ry alone', '<ellipse cx="50" cy="50" ry="12"/>', Math.PI * 144],
    ['ellipse with rx alone', '<ellipse cx="50" cy="50" rx="9" ry="auto"/>', Math.PI * 81],
    ['rounded rectangle', '<rect width="80" height="50" rx="10" ry="6"/>', 4000 - (4 - Math.PI) * 60],
    ['rx alone', '<rect width="80" height="50" rx="10"/>', 4000 - (4 - Math.PI) * 100],
    ['ry alone', '<rect width="80" height="50" ry="7"/>', 4000 - (4 - Math.PI) * 49],
    ['rx auto', '<rect width="80" height="50" rx="auto" ry="7"/>', 4000 - (4 - Math.PI) * 49],
    ['rx 0', '<rect width="80" height="50" rx="0" ry="7"/>', 4000],
    ['radii too large', '<rect width="80" height="50" rx="999" ry="999"/>', Math.PI * 40 * 25],
    ['one radius too large', '<rect width="80" height="50" rx="30"/>', 4000 - (4 - Math.PI) * 30 * 25]
  ]
  for (const [name, element, exact] of forms) {
    it(`${name} has the area of its closed form at three tolerances`, () => {
      for (const tol of [0.1, 0.01, 0.001]) {
        const { region } = read(element, tol)
        // No edge strays by more than the tolerance; the grid of 1e-4 mm adds half a step.
        expect(Math.abs(area(region) - exact)).toBeLessThan((tol / 10 + 1e-4) * perimeter(region))
      }
    })
  }

  it('every point and every middle of a chord of a circle stays within the tolerance', () => {
    for (const tol of [0.1, 0.01, 0.001]) {
      expect(worstStray(read('<circle r="40"/>', tol).region, 40)).toBeLessThan(tol + 1e-4)
      // Closer than that by far would waste points.
      expect(worstStray(read('<circle r="40"/>', tol).region, 40)).toBeGreaterThan(tol / 4)
    }
  })

  it('a polyline and an open path are filled as if closed, and are still given as open lines', () => {
    for (const element of ['<polyline points="0,0 10,0 10,10"/>', '<path d="M0 0H10V10"/>']) {
      const reading = read(element)
      expect(area(reading.region)).toBe(50)
      expect(reading.shapes[0]!.open).toEqual([Float64Array.of(0, 0, 10, 0, 10, -10)])
    }
  })

  it('open ones without fill and lines stay open only', () => {
    for (const element of [
      '<polyline points="0,0 10,0 10,10" fill="none"/>',
      '<path d="M0 0H10V10" style="fill:none;stroke:red"/>',
      '<g fill="none"><path d="M0 0H10V10"/></g>'
    ]) {
      const reading = read(element)
      expect(reading.region.rings).toEqual([])
      expect(reading.shapes[0]!.open).toEqual([Float64Array.of(0, 0, 10, 0, 10, -10)])
    }
    const line = read('<line x1="1" y1="2" x2="3" y2="4"/>')
    expect(line.region.rings).toEqual([])
    expect(line.shapes[0]!.open).toEqual([Float64Array.of(1, -2, 3, -4)])
  })

  it('closed outlines without fill enclose when they have a stroke, and are reported when they have none', () => {
    const seen = read('<path d="M0 0H10V10Z" fill="none" stroke="black"/>')
    expect(area(seen.region)).toBe(50)
    expect(seen.skipped).toEqual([])
    const unseen = read('<rect id="frame" width="100" height="100" fill="none"/>')
    expect(unseen.region.rings).toEqual([])
    expect(unseen.skipped).toEqual([
      { what: 'rect "frame"', why: 'it has neither fill nor stroke, so it is not seen', line: 2 }
    ])
  })

  it('an outline without fill whose stroke may come from a style sheet encloses', () => {
    const reading = read(
      '<style>.cut{stroke:red}</style><g class="cut" fill="none"><path d="M0 0H10V10Z"/></g>'
    )
    expect(area(reading.region)).toBe(50)
    expect(reading.skipped.map(s => s.what)).toEqual(['style'])
  })

  it('a polyline that returns to its start is a ring', () => {
    const reading = read('<polyline points="0,0 10,0 10,10 0,0" fill="none" stroke="black"/>')
    expect(area(reading.region)).toBe(50)
    expect(reading.shapes[0]!.open).toEqual([])
  })

  it('shapes without size draw nothing and say so', () => {
    const reading = read('<circle/><rect width="5"/><ellipse rx="0" ry="4"/><polygon/><path/>')
    expect(reading.shapes).toEqual([])
    expect(reading.skipped.map(s => s.why)).toEqual(Array(5).fill('it has no size'))
  })
})

describe('fill rules', () => {
  // Two squares, 20 and 10 wide, both clockwise on the screen.
  const SAME = 'M0 0H20V20H0ZM5 5H15V15H5Z'
  // The inner one the other way round.
  const OTHER = 'M0 0H20V20H0ZM5 5V15H15V5Z'

  it('nonzero fills what is wound twice and leaves what is wound back', () => {
    expect(area(read(`<path d="${SAME}"/>`).region)).toBe(400)
    expect(area(read(`<path d="${OTHER}"/>`).region)).toBe(300)
  })

  it('evenodd leaves a hole either way: by attribute, by style, inherited, and style before attribute', () => {
    for (const inner of [
      `<path fill-rule="evenodd" d="${SAME}"/>`,
      `<path style="stroke:none; fill-rule : evenodd" d="${SAME}"/>`,
      `<g fill-rule="evenodd"><g><path d="${SAME}"/></g></g>`,
      `<g style="fill-rule:evenodd"><path fill-rule="nonsense" d="${OTHER}"/></g>`,
      `<path fill-rule="nonzero" style="fill-rule:evenodd !important" d="${SAME}"/>`
    ]) {
      expect(area(read(inner).region), inner).toBe(300)
    }
    expect(area(read(`<g fill-rule="evenodd"><path fill-rule="nonzero" d="${SAME}"/></g>`).region)).toBe(400)
  })

  it('a five-pointed star is hollow by evenodd only', () => {
    const points = [0, 2, 4, 1, 3].map(k => {
      const a = (2 * Math.PI * k) / 5
      return `${10 * Math.sin(a)},${-10 * Math.cos(a)}`
    })
    const solid = read(`<polygon points="${points.join(' ')}"/>`).region
    const hollow = read(`<polygon fill-rule="evenodd" points="${points.join(' ')}"/>`).region
    // Closed form: the inner pentagon has circumradius R·cos 72°/cos 36°, area (5/2)·r²·sin 72°.
    const r = (10 * Math.cos((2 * Math.PI) / 5)) / Math.cos(Math.PI / 5)
    expect(area(solid) - area(hollow)).toBeCloseTo(2.5 * r * r * Math.sin((2 * Math.PI) / 5), 2)
    expect(inside(hollow, 0, 0)).toBe(false)
    expect(inside(solid, 0, 0)).toBe(true)
  })
})

describe('what is drawn', () => {
  it('leaves out display:none, hidden shapes and definitions', () => {
    const reading = read(`
      <g display="none"><rect width="1" height="1"/></g>
      <rect style="display: none" width="1" height="1"/>
      <g visibility="hidden"><rect width="1" height="1"/><rect id="seen" visibility="visible" width="2" height="2"/></g>
      <defs><rect width="1" height="1"/></defs>
      <symbol><rect width="1" height="1"/></symbol>
      <clipPath><rect width="1" height="1"/></clipPath><mask><rect width="1" height="1"/></mask>
      <marker><rect width="1" height="1"/></marker><pattern><rect width="1" height="1"/></pattern>`)
    expect(reading.shapes.map(s => s.id)).toEqual(['seen'])
    expect(reading.skipped).toEqual([])
  })

  it('names a shape by its title, its id, or its place', () => {
    const reading = read(
      `<rect width="1" height="1"><title> Lid &amp; <![CDATA[rim]]> </title></rect>
<rect id="a" width="1" height="1"/>
<rect width="1" height="1"/>`
    )
    expect(reading.shapes.map(s => s.name)).toEqual(['Lid & rim', 'rect "a"', 'rect in line 4'])
  })

  it('the region is the union of the shapes', () => {
    const reading = read('<rect width="10" height="10"/><rect x="5" width="10" height="10"/>')
    expect(reading.shapes.map(s => area(s.region))).toEqual([100, 100])
    expect(area(reading.region)).toBe(150)
  })

  it('editors’ own elements are passed over in silence, unknown ones of SVG are reported', () => {
    const reading = read(
      '<q:x xmlns:q="urn:q"><rect width="1" height="1"/></q:x><metadata><rect/></metadata><blob/>'
    )
    expect(reading.shapes).toEqual([])
    expect(reading.skipped).toEqual([{ what: 'blob in line 2', why: 'it is no shape', line: 2 }])
  })

  it('text, pictures, foreign content, scripts, style sheets and animation are reported', () => {
    const reading = readSvg(
      page(`<text id="t">a</text><image href="a.png"/><foreignObject/><script/><animate/>
<defs><style>@import "http://example.org/a.css"; rect{display:none}</style></defs>`).replace(
        '<svg',
        '<?xml-stylesheet href="b.css"?><svg'
      ),
      { tolMm: 0.01 }
    )
    expect(reading.skipped.map(s => `${s.line} ${s.what}`)).toEqual([
      '1 xml-stylesheet',
      '2 script',
      '3 style',
      '2 text "t"',
      '2 image in line 2',
      '2 foreignObject in line 2',
      '2 animate in line 2'
    ])
    expect(reading.skipped.find(s => s.what === 'text "t"')!.why).toBe('turn text into paths')
  })

  it('what would change a shape and is not applied is reported, and the shape drawn whole', () => {
    const reading = read(
      '<rect clip-path="url(#c)" style="mask:url(#m);transform:rotate(9deg)" width="2" height="2"/>'
    )
    expect(area(reading.region)).toBe(4)
    expect(reading.skipped.map(s => s.what)).toEqual([
      'clip-path of rect in line 2',
      'mask in style of rect in line 2',
      'transform in style of rect in line 2'
    ])
  })

  it('of a switch the first child that asks for nothing special is drawn', () => {
    const { region } = read(
      `<switch><title>Bar</title><foreignObject/><rect requiredExtensions="x" width="1" height="1"/>
       <rect systemLanguage="en" width="2" height="1"/><rect width="3" height="1"/><rect width="4" height="1"/></switch>`
    )
    expect(boxOf(region)).toEqual([0, -1, 3, 0])
  })

  it('a long list of what was skipped ends with a count', () => {
    const { skipped } = read(Array.from({ length: 1500 }, () => '<text/>\n').join(''))
    expect(skipped).toHaveLength(1001)
    expect(skipped.at(-1)).toEqual({ what: '500 more', why: 'the list is full', line: 1 })
  })
})

/** Largest distance from the circle of radius r of any point or middle of an edge. */
function worstStray(region: Region, r: number): number {
  let worst = 0
  for (const ring of region.rings) {
    for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
      worst = Math.max(worst, Math.abs(Math.hypot(ring[k]!, ring[k + 1]!) - r))
      const [mx, my] = [(ring[k]! + ring[p]!) / 2, (ring[k + 1]! + ring[p + 1]!) / 2]
      worst = Math.max(worst, Math.abs(Math.hypot(mx, my) - r))
    }
  }
  expect(bounds(region).maxX).toBe(r)
  return worst
}
