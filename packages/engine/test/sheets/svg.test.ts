import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import type { Mark, Sheet } from '../../src/sheets/mark.ts'
import { box, line, text } from '../../src/sheets/mark.ts'
import { escapeXml, hundredths, svgBody, svgDocument } from '../../src/sheets/svg.ts'

const sheet = (...marks: Mark[]): Sheet => ({ widthMm: 100, heightMm: 50, marks })

/** Elements of a drawing as saxes reads them: a second opinion on what is well-formed. */
function elements(xml: string): { name: string; attributes: Record<string, string>; text: string }[] {
  const out: { name: string; attributes: Record<string, string>; text: string }[] = []
  const parser = new SaxesParser()
  parser.on('error', e => {
    throw e
  })
  parser.on('opentag', t => {
    out.push({ name: t.name, attributes: t.attributes as Record<string, string>, text: '' })
  })
  parser.on('text', t => {
    const last = out[out.length - 1]
    if (last) last.text += t
  })
  parser.write(xml).close()
  return out
}

describe('marks as SVG', () => {
  it('writes millimetres to a hundredth in the fewest signs', () => {
    const cases: [number, string][] = [
      [0, '0'],
      [-0.004, '0'],
      [12.5, '12.5'],
      [0.07, '.07'],
      [-0.5, '-.5'],
      [1000, '1000'],
      [3.999, '4'],
      [-2.341, '-2.34']
    ]
    for (const [mm, words] of cases) {
      expect(hundredths(mm)).toBe(words)
      expect(Math.abs(Number(words) - mm)).toBeLessThanOrEqual(0.005 + 1e-12)
    }
  })

  it('refuses what is not a finite number, wherever it stands', () => {
    const bad: Mark[] = [
      line('outline', [Number.NaN, 0], [1, 1]),
      line('outline', [0, 0], [1, Number.POSITIVE_INFINITY]),
      text([0, Number.NaN], 'x'),
      { kind: 'circle', ink: 'axis', at: [0, 0], radiusMm: Number.NaN },
      {
        kind: 'region',
        rings: [Float64Array.of(0, 0, 1, 0, Number.NaN, 1)],
        paint: null,
        hatch: null,
        edge: 'outline'
      }
    ]
    for (const mark of bad) expect(() => svgBody(sheet(mark)), mark.kind).toThrow(/finite/)
  })

  it('turns y down and keeps x: the upper edge of the sheet is 0', () => {
    const [path] = elements(`<svg>${svgBody(sheet(line('outline', [10, 50], [20, 45])))}</svg>`).slice(1)
    expect(path!.attributes['d']).toBe('M10 0l10 5')
  })

  it('does not let rounding add up along a path', () => {
    // A thousand steps of 0.1234 mm: relative steps of rounded points end on the rounded end.
    const points = Float64Array.from({ length: 2002 }, (_, k) => (k % 2 === 0 ? (k / 2) * 0.1234 : 10))
    const d = elements(`<svg>${svgBody(sheet({ kind: 'path', ink: 'edge', lines: [points] }))}</svg>`)[1]!
      .attributes['d']!
    const numbers = d
      .replace(/^M0 40l/, '')
      .split(' ')
      .map(Number)
    const end = numbers.filter((_, k) => k % 2 === 0).reduce((a, b) => a + b, 0)
    expect(end).toBeCloseTo(123.4, 2)
  })

  it('writes words that look like markup as words', () => {
    const hostile = '</text><script>alert("1")</script>&\u0000\u0008]]>\'\uD800'
    const xml = svgDocument(sheet(text([1, 1], hostile)), hostile)
    const found = elements(xml)
    expect(found.map(e => e.name)).toEqual(['svg', 'title', 'style', 'text'])
    expect(found[3]!.text.trim()).toBe('</text><script>alert("1")</script>&]]>\'')
    expect(escapeXml('a<b & "c"')).toBe('a&lt;b &amp; &quot;c&quot;')
  })

  it('is a file of its own size in millimetres, the same bytes on every run', () => {
    const marks: Mark[] = [
      {
        kind: 'region',
        rings: [box(10, 10, 60, 30)],
        paint: '#6e8154',
        hatch: { kind: 'along', seed: 3 },
        edge: 'outline'
      },
      {
        kind: 'region',
        rings: [box(60, 10, 90, 30)],
        paint: 'clear',
        hatch: { kind: 'across', seed: 3 },
        edge: 'outline'
      }
    ]
    const once = svgDocument(sheet(...marks), 'two')
    expect(svgDocument(sheet(...marks), 'two')).toBe(once)
    const root = elements(once)[0]!.attributes
    expect([root['width'], root['height'], root['viewBox']]).toEqual(['100mm', '50mm', '0 0 100 50'])
  })
})
