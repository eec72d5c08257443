import { area, bounds } from '../../src/shape/measure.ts'
import { readSvg } from '../../src/shape/svg.ts'
import { lengthMm, readLength } from '../../src/shape/svg-length.ts'
import { readTransform } from '../../src/shape/svg-transform.ts'
import type { Evidence } from '../evidence.ts'
import { table } from '../evidence.ts'

const model = 'shape/svg'
const svg = (attributes: string, inner: string) =>
  readSvg(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inner}</svg>`, { tolMm: 0.01 })

const worst = (pairs: readonly (readonly [ours: number, published: number])[]): number =>
  Math.max(...pairs.map(([ours, published]) => Math.abs(ours - published)))

// One inch in each absolute unit.
const INCH = ['25.4mm', '2.54cm', '101.6Q', '1in', '72pt', '6pc', '96px', '96']

// preserveAspectRatio: left and upper edge of a 10 × 10 viewBox in a view of 40 × 20, by hand.
const RATIOS: readonly (readonly [ratio: string, left: number, top: number])[] = [
  ['xMinYMin meet', 0, 0],
  ['xMidYMid meet', 10, 0],
  ['xMaxYMax meet', 20, 0],
  ['xMinYMin slice', 0, 0],
  ['xMidYMid slice', 0, -10],
  ['xMaxYMax slice', 0, -20],
  ['none', 0, 0]
]

const grid = 'coordinates lie on the grid of the clipper, 1e-4 mm'

export const rows: readonly Evidence[] = [
  table({
    model,
    what: 'one inch in mm, cm, Q, in, pt, pc, px and plain numbers',
    source: 'CSS Values and Units Module Level 3, 6.2 "Absolute lengths" (W3C)',
    confidence: 'memory',
    unit: 'mm',
    tolerance: 1e-14,
    why: 'exact by definition; one rounding of doubles',
    cells: INCH.length,
    worst: () => worst(INCH.map(text => [lengthMm(readLength(text, 'width'))!, 25.4]))
  }),
  {
    model,
    what: 'a rectangle 200 wide on an A4 page of 210 mm with viewBox "0 0 210 297"',
    source: 'SVG 1.1, 7.7 "The viewBox attribute" (W3C)',
    confidence: 'exact',
    unit: 'mm',
    published: 200,
    tolerance: 0,
    why: 'one unit is one millimetre; nothing is rounded',
    ours: () =>
      bounds(
        svg('width="210mm" height="297mm" viewBox="0 0 210 297"', '<rect width="200" height="1"/>').region
      ).maxX
  },
  table({
    model,
    what: 'matrix of "translate(50,90) rotate(-45) translate(130,160)", worked there with .707 for √½',
    source: 'SVG 1.1, 7.5 "Nested transformations" (W3C)',
    confidence: 'memory',
    unit: '1 or user units',
    tolerance: 0.04,
    why: 'three digits of √½, times a shift of 290',
    cells: 6,
    worst: () => {
      const wanted = '.707 -.707 .707 .707 255.03 111.21'.split(' ').map(Number)
      const m = readTransform('translate(50,90) rotate(-45) translate(130,160)')
      return worst(m.map((v, k) => [v, wanted[k]!]))
    }
  }),
  table({
    model,
    what: 'where preserveAspectRatio puts a square viewBox in a view of 40 × 20 mm',
    source: 'SVG 1.1, 7.8 "The preserveAspectRatio attribute" (W3C), positions by hand',
    confidence: 'derived',
    unit: 'mm',
    tolerance: 1e-4,
    why: grid,
    cells: 2 * RATIOS.length,
    worst: () =>
      worst(
        RATIOS.flatMap(([ratio, left, top]) => {
          const { region } = svg(
            `width="40mm" height="20mm" viewBox="0 0 10 10" preserveAspectRatio="${ratio}"`,
            '<rect width="10" height="10"/>'
          )
          const b = bounds(region)
          return [[b.minX, left] as const, [-b.maxY, top] as const]
        })
      )
  }),
  {
    model,
    what: 'area of a circle of radius 40 mm under rotate, skew and an uneven scale of determinant 1.5',
    source: 'area of an ellipse, π·a·b; an affine map scales areas by its determinant',
    confidence: 'exact',
    unit: 'mm²',
    published: Math.PI * 1600 * 1.5,
    tolerance: 0.05,
    why: 'chords keep the area; points are rounded to a grid of 1e-4 mm',
    ours: () =>
      area(
        svg(
          'width="200mm" height="200mm" viewBox="0 0 200 200"',
          '<circle r="40" transform="rotate(33) skewX(20) scale(3 .5)"/>'
        ).region
      )
  },
  {
    model,
    what: 'area of a rectangle 80 × 50 mm with corners of 10 × 6 mm',
    source: 'closed form w·h − (4 − π)·rx·ry',
    confidence: 'exact',
    unit: 'mm²',
    published: 4000 - (4 - Math.PI) * 60,
    tolerance: 0.01,
    why: 'chords keep the area; points are rounded to a grid of 1e-4 mm',
    ours: () =>
      area(
        svg(
          'width="100mm" height="100mm" viewBox="0 0 100 100"',
          '<rect width="80" height="50" rx="10" ry="6"/>'
        ).region
      )
  },
  {
    model,
    what: 'the hollow of a five-pointed star of radius 10 mm under evenodd',
    source: 'closed form: pentagon of circumradius R·cos 72°/cos 36°, area 5/2·r²·sin 72°',
    confidence: 'exact',
    unit: 'mm²',
    published:
      2.5 * ((10 * Math.cos(0.4 * Math.PI)) / Math.cos(0.2 * Math.PI)) ** 2 * Math.sin(0.4 * Math.PI),
    tolerance: 0.005,
    why: grid,
    ours: () => {
      const points = [0, 2, 4, 1, 3].map(k => {
        const a = 0.4 * Math.PI * k
        return `${10 * Math.sin(a)},${10 * Math.cos(a)}`
      })
      const star = (rule: string) =>
        area(
          svg(
            'width="9mm" height="9mm" viewBox="0 0 9 9"',
            `<polygon fill-rule="${rule}" points="${points.join(' ')}"/>`
          ).region
        )
      return star('nonzero') - star('evenodd')
    }
  }
]
