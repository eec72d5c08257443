import { describe, expect, it } from 'vitest'
import { readSvg } from '../../src/shape/svg.ts'
import { readTransform } from '../../src/shape/svg-transform.ts'
import { randomFrom } from './random.ts'
import { page } from './svg-page.ts'

type Point = readonly [x: number, y: number]

/** One transform function as SVG writes it, and what it does to a point by plain geometry. */
interface Step {
  readonly text: string
  readonly does: (p: Point) => Point
}

function turned(p: Point, degrees: number, c: Point): Point {
  // In polar coordinates about the centre, so that nothing is shared with the matrices under test.
  const r = Math.hypot(p[0] - c[0], p[1] - c[1])
  const a = Math.atan2(p[1] - c[1], p[0] - c[0]) + (degrees * Math.PI) / 180
  return [c[0] + r * Math.cos(a), c[1] + r * Math.sin(a)]
}

function randomStep(random: () => number): Step {
  const n = (least: number, most: number) => Number((least + (most - least) * random()).toFixed(3))
  const [a, b, c] = [n(-20, 20), n(-20, 20), n(0.5, 2)]
  switch (Math.floor(random() * 9)) {
    case 0:
      return { text: `translate(${a} ${b})`, does: p => [p[0] + a, p[1] + b] }
    case 1:
      return { text: `translate(${a})`, does: p => [p[0] + a, p[1]] }
    case 2:
      return { text: `scale(${c},-1.25)`, does: p => [p[0] * c, p[1] * -1.25] }
    case 3:
      return { text: `scale(${c})`, does: p => [p[0] * c, p[1] * c] }
    case 4:
      return { text: `rotate(${10 * a})`, does: p => turned(p, 10 * a, [0, 0]) }
    case 5:
      return { text: `rotate(${10 * a} ${b},${a})`, does: p => turned(p, 10 * a, [b, a]) }
    case 6:
      return { text: `skewX(${a})`, does: p => [p[0] + p[1] * Math.tan((a * Math.PI) / 180), p[1]] }
    case 7:
      return { text: ` skewY( ${a} )`, does: p => [p[0], p[1] + p[0] * Math.tan((a * Math.PI) / 180)] }
    default:
      return {
        text: `matrix(${c} .2 -.3 1.1 ${a} ${b})`,
        does: p => [c * p[0] - 0.3 * p[1] + a, 0.2 * p[0] + 1.1 * p[1] + b]
      }
  }
}

describe('transforms', () => {
  it('nested ones do to points what plain geometry does, innermost and last first, 300 seeds', () => {
    let worst = 0
    for (let seed = 1; seed <= 300; seed++) {
      const random = randomFrom(seed)
      const groups = Array.from({ length: 1 + Math.floor(random() * 4) }, () =>
        Array.from({ length: 1 + Math.floor(random() * 3) }, () => randomStep(random))
      )
      const points: Point[] = Array.from({ length: 3 }, () => [100 * random(), 100 * random()])
      const line = `<polyline fill="none" points="${points.map(p => p.join()).join(' ')}"/>`
      const text = groups.reduceRight(
        (inner, steps) =>
          `<g transform="${steps.map(s => s.text).join(random() < 0.5 ? ' ' : ',')}">${inner}</g>`,
        line
      )
      const found = readSvg(page(text), { tolMm: 0.01 }).shapes[0]!.open[0]!
      points.forEach((p, k) => {
        const [x, y] = groups.flat().reduceRight<Point>((q, step) => step.does(q), p)
        worst = Math.max(worst, Math.abs(found[2 * k]! - x), Math.abs(found[2 * k + 1]! + y))
      })
      expect(worst, `seed ${seed}`).toBeLessThan(1e-9)
    }
  })

  it('give the matrix of the worked example of SVG 1.1, section 7.5', () => {
    // "translate(50,90), rotate(-45), translate(130,160)": [.707 −.707 .707 .707 255.03 111.21], worked there
    // with .707 for √½ (memory).
    const m = readTransform('translate(50,90) rotate(-45) translate(130,160)')
    const wanted = [Math.SQRT1_2, -Math.SQRT1_2, Math.SQRT1_2, Math.SQRT1_2, 255.03, 111.21]
    m.forEach((v, k) => {
      expect(Math.abs(v - wanted[k]!)).toBeLessThan(k < 4 ? 1e-15 : 0.04)
    })
  })

  it('quarter turns are exact, also about a centre', () => {
    for (const [text, wanted] of [
      ['rotate(90)', [0, 1, -1, 0, 0, 0]],
      ['rotate(-90)', [0, -1, 1, 0, 0, 0]],
      ['rotate(180)', [-1, 0, 0, -1, 0, 0]],
      ['rotate(-630)', [0, 1, -1, 0, 0, 0]],
      ['rotate(90 10 20)', [0, 1, -1, 0, 30, 10]]
    ] as const) {
      readTransform(text).forEach((v, k) => {
        expect(v + 0, text).toBe(wanted[k])
      })
    }
  })

  it('an empty list and none change nothing; blanks and commas are SVG’s', () => {
    for (const text of ['', '  ', 'none', ' none ']) expect(readTransform(text)).toEqual([1, 0, 0, 1, 0, 0])
    expect(readTransform('\n translate (1\t,\n2) ,scale( 3 )')).toEqual([3, 0, 0, 3, 1, 2])
    expect(readTransform('translate(10-5)')).toEqual([1, 0, 0, 1, 10, -5])
    expect(readTransform('translate(.5.25)')).toEqual([1, 0, 0, 1, 0.5, 0.25])
  })

  for (const [text, says] of [
    ['turn(3)', /transform="turn\(3\)"; allowed: matrix/],
    ['rotate(45deg)', /"deg" at index 2 is no number/],
    ['translate(1mm)', /"mm" at index 1 is no number/],
    ['scale(1 2 3)', /scale with 3 numbers; allowed: 1 or 2/],
    ['rotate(1 2)', /rotate with 2 numbers; allowed: 1 or 3/],
    ['matrix(1 2 3)', /matrix with 3 numbers; allowed: 6/],
    ['translate()', /translate with 0 numbers/],
    ['translate(1,)', /missing after the last comma/],
    ['translate(1', /transform="translate\(1"/],
    ['translate 1', /transform="translate 1"/],
    ['none scale(2)', /transform="none scale\(2\)"/],
    ['Scale(2)', /transform="Scale\(2\)"/],
    ['scale(1e8)', /the number "1e8"/],
    ['scale(1e7) scale(1e7)', /a transform that stretches by 100000000000000; allowed: up to 10000000/],
    ['skewX(90)', /stretches/]
  ] as const) {
    it(`"${text}" is refused`, () => {
      expect(() => readSvg(page(`<g transform="${text}"/>`), { tolMm: 0.01 })).toThrow(says)
    })
  }

  it('one that leaves no area draws nothing and says so', () => {
    const { shapes, skipped } = readSvg(
      page(
        '<rect transform="scale(0 1)" width="5" height="5"/><g transform="matrix(1 2 2 4 0 0)"><circle r="3"/></g>'
      ),
      { tolMm: 0.01 }
    )
    expect(shapes).toEqual([])
    expect(skipped.map(s => s.why)).toEqual(Array(2).fill('its transform leaves it no area'))
  })
})

describe('curves under transforms', () => {
  it('stay within the tolerance in mm whatever the stretch, 40 seeds', () => {
    let worst = 0
    for (let seed = 1; seed <= 40; seed++) {
      const random = randomFrom(seed)
      const steps = Array.from({ length: 3 }, () => randomStep(random))
      const scale = 10 ** (4 * random() - 2)
      const list = `${steps.map(s => s.text).join(' ')} scale(${scale.toPrecision(6)})`
      const toMm = (p: Point): Point => {
        const s = Number(scale.toPrecision(6))
        const [x, y] = steps.reduceRight<Point>((q, step) => step.does(q), [s * p[0], s * p[1]])
        return [x, -y]
      }
      const c = Array.from({ length: 8 }, () => Number((60 * random()).toFixed(2)))
      const size = 60 * scale
      const tolMm = Math.max(0.002, size / 2000)
      const d = `M${c[0]} ${c[1]}C${c.slice(2).join(' ')}`
      const [cubic, circle] = readSvg(
        page(`<g transform="${list}" fill="none" stroke="red"><path d="${d}"/><circle r="20"/></g>`),
        { tolMm }
      ).shapes
      const ring = circle!.region.rings[0]!
      for (let k = 0; k <= 400; k++) {
        const t = k / 400
        const on = toMm([bezier(c, 0, t), bezier(c, 1, t)])
        const a = 2 * Math.PI * t
        const strayCubic = distanceTo(cubic!.open[0]!, on, false) / tolMm
        // The grid of the clipper adds up to 1e-4 mm.
        const strayCircle =
          (distanceTo(ring, toMm([20 * Math.cos(a), 20 * Math.sin(a)]), true) - 1e-4) / tolMm
        worst = Math.max(worst, strayCubic, strayCircle)
      }
      expect(worst, `seed ${seed}, ${list}, tolerance ${tolMm}`).toBeLessThanOrEqual(1)
    }
    // A tolerance never made use of would mean far too many points.
    expect(worst).toBeGreaterThan(0.3)
  })
})

function bezier(c: readonly number[], axis: 0 | 1, t: number): number {
  // De Casteljau's construction.
  let p = [0, 2, 4, 6].map(k => c[k + axis]!)
  while (p.length > 1) p = p.slice(1).map((v, k) => p[k]! + t * (v - p[k]!))
  return p[0]!
}

function distanceTo(line: Float64Array, [x, y]: Point, closed: boolean): number {
  let least = Number.POSITIVE_INFINITY
  for (let k = closed ? 0 : 2; k < line.length; k += 2) {
    const p = k === 0 ? line.length - 2 : k - 2
    const [ax, ay, bx, by] = [line[p]!, line[p + 1]!, line[k]!, line[k + 1]!]
    const long = (bx - ax) ** 2 + (by - ay) ** 2
    const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long))
    least = Math.min(least, Math.hypot(ax + t * (bx - ax) - x, ay + t * (by - ay) - y))
  }
  return least
}
