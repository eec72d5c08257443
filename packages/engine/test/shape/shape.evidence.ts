import { circle, rectangle } from '../../src/shape/build.ts'
import { union } from '../../src/shape/combine.ts'
import { divideArc, flattenCubic } from '../../src/shape/flatten.ts'
import { area, centroid, perimeter } from '../../src/shape/measure.ts'
import { inradius, sharpInnerCorners } from '../../src/shape/narrow.ts'
import { offset, stroke } from '../../src/shape/offset.ts'
import { pathRegion } from '../../src/shape/path.ts'
import { regionOfRings } from '../../src/shape/region.ts'
import { translate } from '../../src/shape/transform.ts'
import { type Evidence, table } from '../evidence.ts'
import { ringOf } from './random.ts'

const rounding = 'closed form kept by construction; what is left is rounding of doubles'
const round = { join: 'round', tolMm: 0.001 } as const

/** Greatest stray of a circle of 60 mm from its polygon at 0.01 mm, on either side. */
function greatestStray(): number {
  const ring = circle(60, 0.01).rings[0]!
  let worst = 0
  for (let k = 0, p = ring.length - 2; k < ring.length; p = k, k += 2) {
    const mid = Math.hypot((ring[p]! + ring[k]!) / 2, (ring[p + 1]! + ring[k + 1]!) / 2)
    worst = Math.max(worst, Math.abs(Math.hypot(ring[k]!, ring[k + 1]!) - 30), Math.abs(mid - 30))
  }
  return worst
}

/** Four cubics as a circle, flattened finely: greatest radial error over the radius. */
function cubicCircle(): number {
  const k = (4 / 3) * Math.tan(Math.PI / 8)
  let most = 0
  flattenCubic([1, 0, 1, k, k, 1, 0, 1], 1e-9, (x, y) => {
    most = Math.max(most, Math.abs(Math.hypot(x, y) - 1))
  })
  return most
}

function pentagram(rule: 'nonzero' | 'evenodd'): number {
  const at = (k: number) =>
    [10 * Math.sin((4 * Math.PI * k) / 5), 10 * Math.cos((4 * Math.PI * k) / 5)] as const
  return area(regionOfRings([ringOf(at(0), at(1), at(2), at(3), at(4))], rule))
}
const PHI = (1 + Math.sqrt(5)) / 2

export const rows: readonly Evidence[] = [
  {
    model: 'shape/flatten',
    what: 'chords of an arc: step 2·acos(1 − e/R) for R = 30 mm, e = 0.01 mm, in chords a quarter turn',
    source: 'chord error e = R(1 − cos(δ/2)), textbook',
    confidence: 'derived',
    unit: 'chords',
    published: Math.ceil(Math.PI / 2 / (2 * Math.acos(1 - 0.01 / 30))),
    tolerance: 0,
    why: 'a whole number',
    ours: () => divideArc(Math.PI / 2, 0.01 / 30).count
  },
  table({
    model: 'shape/flatten',
    what: 'area of a circle polygon over π·d²/4, d = 1 to 3000 mm at 0.1, 0.01 and 0.001 mm',
    source: 'area of a circle',
    confidence: 'exact',
    unit: '1',
    tolerance: 1e-12,
    why: rounding,
    cells: 12,
    worst: () => {
      let worst = 0
      for (const d of [1, 60, 300, 3000]) {
        for (const tol of [0.1, 0.01, 0.001]) {
          worst = Math.max(worst, Math.abs(area(circle(d, tol)) / ((Math.PI * d * d) / 4) - 1))
        }
      }
      return worst
    }
  }),
  {
    model: 'shape/flatten',
    what: 'greatest stray of the polygon of a 60 mm circle at a tolerance of 0.01 mm',
    source: 'definition of the tolerance',
    confidence: 'exact',
    unit: 'mm',
    published: 0.005,
    tolerance: 0.005,
    why: 'anything from 0 to the tolerance keeps the promise',
    ours: greatestStray
  },
  {
    model: 'shape/flatten',
    what: 'radial error of a circle of four cubics, k = 4/3·tan(π/8), over the radius',
    source: 'textbook figure 2.7e-4',
    confidence: 'memory',
    unit: '1',
    published: 2.7e-4,
    tolerance: 0.05e-4,
    why: 'the figure has two digits',
    ours: cubicCircle
  },
  {
    model: 'shape/build',
    what: 'area of 300 × 200 mm with corners of 12 mm: w·h − (4 − π)·r²',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm²',
    published: 60_000 - (4 - Math.PI) * 144,
    tolerance: 1e-8,
    why: rounding,
    ours: () => area(rectangle(300, 200, 12, 0.01))
  },
  {
    model: 'shape/build',
    what: 'length of the edge of 300 × 200 mm with corners of 12 mm: 2(w + h) − (8 − 2π)·r',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm',
    published: 1000 - (8 - 2 * Math.PI) * 12,
    tolerance: 0.05,
    why: 'chords of 0.01 mm; converges with the tolerance',
    ours: () => perimeter(rectangle(300, 200, 12, 0.01))
  },
  {
    model: 'shape/measure',
    what: 'height of the centre of a half disc of radius 30 mm: 4r/3π',
    source: 'textbook',
    confidence: 'exact',
    unit: 'mm',
    published: (4 * 30) / (3 * Math.PI),
    tolerance: 0.005,
    why: 'chords of 0.01 mm',
    ours: () => centroid(pathRegion('M 30 0 A 30 30 0 0 1 -30 0 Z', 0.01)).y
  },
  {
    model: 'shape/combine',
    what: 'union of two discs of 60 mm, 30 mm apart: 2πr² − lens',
    source: 'lens of two circles, 2r²·acos(d/2r) − d/2·√(4r² − d²)',
    confidence: 'exact',
    unit: 'mm²',
    published: 2 * Math.PI * 900 - (2 * 900 * Math.acos(0.5) - 15 * Math.sqrt(3600 - 900)),
    tolerance: 0.1,
    why: 'chords of 0.001 mm along the lens',
    ours: () => area(union(circle(60, 0.001), translate(circle(60, 0.001), 30, 0)))
  },
  {
    model: 'shape/region',
    what: 'pentagram in a circle of 10 mm by the winding rule: 5·r·(r/φ²)·sin 36°',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm²',
    published: (5 * 100 * Math.sin(Math.PI / 5)) / PHI ** 2,
    tolerance: 0.005,
    why: 'corners on a grid of 1e-4 mm',
    ours: () => pentagram('nonzero')
  },
  {
    model: 'shape/region',
    what: 'pentagram by the even-odd rule: less the inner pentagon, 5/2·(r/φ²)²·sin 72°',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm²',
    published:
      (5 * 100 * Math.sin(Math.PI / 5)) / PHI ** 2 - 2.5 * (10 / PHI ** 2) ** 2 * Math.sin((2 * Math.PI) / 5),
    tolerance: 0.005,
    why: 'corners on a grid of 1e-4 mm',
    ours: () => pentagram('evenodd')
  },
  {
    model: 'shape/offset',
    what: 'rectangle 80 × 50 mm moved out by 6 mm, round: A + P·d + π·d²',
    source: 'Steiner’s formula for convex bodies',
    confidence: 'exact',
    unit: 'mm²',
    published: 4000 + 260 * 6 + Math.PI * 36,
    tolerance: 0.04,
    why: 'chords of 0.001 mm inside the arcs, 38 mm long',
    ours: () => area(offset(rectangle(80, 50, 0, 0.01), 6, round))
  },
  {
    model: 'shape/offset',
    what: 'groove 6 mm wide and 50 mm long with round ends: w·l + π·w²/4',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm²',
    published: 300 + 9 * Math.PI,
    tolerance: 0.02,
    why: 'chords of 0.001 mm inside the arcs, 19 mm long',
    ours: () => area(stroke(Float64Array.of(0, 0, 30, 40), 6, { ends: 'round', tolMm: 0.001 }))
  },
  {
    model: 'shape/narrow',
    what: 'inscribed circle of the 3-4-5 triangle: (a + b − c)/2',
    source: 'Euclid IV.4, closed form',
    confidence: 'exact',
    unit: 'mm',
    published: 1,
    tolerance: 1e-4,
    why: 'the precision asked for',
    ours: () => inradius({ rings: [ringOf([0, 0], [4, 0], [0, 3])] }, 1e-4).radiusMm
  },
  {
    model: 'shape/narrow',
    what: 'what a cutter of radius 3 mm leaves in a square corner: (√2 − 1)·r',
    source: 'closed form',
    confidence: 'exact',
    unit: 'mm',
    published: 3 * (Math.SQRT2 - 1),
    tolerance: 0.012,
    why: 'two moves of the edge at 0.005 mm each',
    ours: () => sharpInnerCorners(rectangle(50, 30, 0, 0.01), 3, { side: 'inside' })[0]!.leftMm
  }
]
