import { describe, expect, it } from 'vitest'
import { lengthsIn } from '../../src/piece/lengths.ts'
import { plan } from '../../src/plan.ts'
import { careOf } from '../../src/sheets/care.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { exampleInput } from '../calendar/example-work.ts'

const metric = lengthsIn({ length: 'mm', temperature: '°C', mass: 'g' })
const inches = lengthsIn({ length: 'in', temperature: '°F', mass: 'g' })
const fractions = lengthsIn({ length: 'in fraction', temperature: '°F', mass: 'g' })

// 25.4 mm an inch, 12 in a foot: exact by definition (international yard and pound agreement, 1959).
describe('a length on a sheet', () => {
  it('is decimal inches as sure as the mm, or a fraction with them beside it', () => {
    expect(metric.of(14.5, 1, 1)).toBe('14.5')
    expect(inches.of(25.4, 1)).toBe('1')
    expect(inches.of(14.5, 1, 1)).toBe('0.571')
    expect(inches.of(0.15, 2)).toBe('0.0059')
    // 14.5 mm are 36.54 of 1/64 in: 37/64. 30 mm are 37.8 of 1/32 in: 38/32.
    expect(fractions.of(14.5, 1)).toBe('37/64 (0.571)')
    expect(fractions.of(30, 0)).toBe('1 3/16')
    expect(fractions.of(25.4, 1)).toBe('1')
    // What a fraction of a rule does not tell stays decimal.
    expect(fractions.of(0.9, 1)).toBe('0.035')
    expect(fractions.of(8.06, 2)).toBe('0.3173')
    expect(inches.signed(-12.7, 1)).toBe('\u22120.5')
    expect(inches.run(3.048)).toBe('10 ft')
    expect(inches.area(0.09290304, 2)).toBe('1 ft²')
    // An eighth of an inch a foot is one in 96.
    expect(inches.slope(1000 / 96)).toEqual(['0.125', 'in/ft'])
    expect(inches.degrees(100)).toBe('212')
    expect([metric.feed(2540), inches.feed(2540), fractions.feed(2500)]).toEqual(['2540', '100', '98.4'])
  })

  it('stands beside the mm of a sentence that is not ours to write anew', () => {
    expect(inches.beside('a 12.5 mm layer at 66 °C, 10 × 20 mm wide, 22 to 29 °C')).toBe(
      'a 12.5 mm (0.492 in) layer at 66 °C (151 °F), 10 × 20 mm (0.39 × 0.79 in) wide, 22 to 29 °C (72 to 84 °F)'
    )
    expect(inches.beside('2500 mm/min over 3 mm² and 5 mmol')).toBe('2500 mm/min over 3 mm² and 5 mmol')
    // Places found on the plan have no unit; limits are told in a row.
    expect(inches.beside('near -25.4, 50.8, of 12 mm; near 3, 4.')).toBe(
      'near -25.4, 50.8 mm (-1, 2 in), of 12 mm (0.47 in); near 3, 4 mm (0.12, 0.16 in).'
    )
    expect(inches.beside('limits 60, 100, 150 °C')).toBe('limits 60, 100, 150 °C (140, 212, 302 °F)')
    // A difference has no zero to count from: 9/5 °F a K (NIST SP 811).
    expect(inches.beside('a room 0.5 °C cooler, 14 K lower')).toBe(
      'a room 0.5 °C (0.9 °F) cooler, 14 K (25.2 °F) lower'
    )
    expect(inches.beside(inches.beside('2 K warmer'))).toBe('2 K (3.6 °F) warmer')
    // A square foot is 0.09290304 m²: exact (the same).
    expect(inches.beside('2 coats on 0.27 m²')).toBe('2 coats on 0.27 m² (2.9 ft²)')
    expect(inches.beside(inches.beside('0.27 m²'))).toBe('0.27 m² (2.9 ft²)')
    const twice = inches.beside(inches.beside('18 mm at 60 °C'))
    expect(twice).toBe('18 mm (0.71 in) at 60 °C (140 °F)')
    expect(metric.beside('12.5 mm')).toBe('12.5 mm')
  })
})

/** All that a sheet says, phrase by phrase, the same in every unit but for its figures. */
function phrases(units: object, name: string): string[] {
  const input = exampleInput(name, { shop: { units } })
  const planned = plan(input, { asOf: '2026-11-30T08:00:00Z', effort: 'preview', despite: [] })
  const sheet = runSheet(planned)
  const table = (t: { title: string; rows: readonly (readonly string[])[] } | null) =>
    t === null ? [] : t.rows.map(r => `${t.title}: ${r.join(' | ')}`)
  return [
    ...sheet.facts.map(f => `${f.label} ${f.value} ${f.unit}`),
    ...sheet.steps.flatMap(s => [
      ...s.does,
      ...s.facts.map(f => `${f.label} ${f.value} ${f.unit}`),
      ...s.blanks.map(b => `${b.label} ${b.planned ?? ''} ${b.unit}`),
      ...table(s.table),
      s.sanding?.title ?? '',
      s.amounts?.vessel ?? ''
    ]),
    ...sheet.findings.map(f => f.says),
    ...careOf(planned).sections.flatMap(s => s.lines.map(l => l.says))
  ]
}

const FIGURE = /\d+(?:\.\d+)?/g
/** What is sold is called by its size in mm, and no length has these units. */
const NAMED = /^(?:Cutter|Board|Tool) /
const OTHER =
  /[−-]?\d+(?:\.\d+)?(?: ?(?:%|°|h\b|d\b|days?\b|min\b|kg\b|g\b|ml\b|l\b)| to \d+(?:\.\d+)?(?: ?%|\)))/g

describe.each(['saltmarsh-panel', 'heron-table', 'meadow-boards'])('the run sheet of %s in inches', name => {
  const mm = phrases({}, name)
  const inch = phrases({ length: 'in', temperature: '°F' }, name)

  it('has no mm but in names and beside its inches', () => {
    expect(inch).toHaveLength(mm.length)
    for (const [i, words] of inch.entries()) {
      const left = words
        .replace(/ mm \([^)]* in\)/g, ' both')
        .replace(/(?:board|bit|mill) \d+(?:\.\d+)? mm/g, 'name')
      if (!NAMED.test(words)) expect(left, mm[i]).not.toMatch(/\bmm\b/)
      if (!/\(.*°F\)/.test(words)) expect(words).not.toMatch(/°C/)
    }
  })

  it('has every figure of a length as the mm over 25.4, within what the mm were rounded to', () => {
    let compared = 0
    for (const [i, was] of mm.entries()) {
      if (!/ mm\b/.test(was) || / mm \(/.test(inch[i]!)) continue
      const [a, b] = [was.match(FIGURE) ?? [], inch[i]!.match(FIGURE) ?? []]
      expect(b, inch[i]).toHaveLength(a.length)
      for (const [k, figure] of a.entries()) {
        const places = /\.(\d+)/.exec(figure)?.[1]?.length ?? 0
        const off = Math.abs(Number(b[k]) - Number(figure) / 25.4)
        // The mm were rounded to their last place, the inches to a place that is as sure.
        if (b[k] !== figure && !/ft|°F/.test(inch[i]!)) {
          // Feeds are said to a tenth of an inch.
          const half = /in\/min/.test(inch[i]!) ? 0.05 : 0.00501
          expect(off, `${was} → ${inch[i]}`).toBeLessThanOrEqual((0.5 * 10 ** -places) / 25.4 + half)
          compared++
        }
      }
    }
    expect(compared).toBeGreaterThan(40)
  })

  it('leaves no length of a phrase in mm: what stays the same is a count, an angle, a time or a name', () => {
    for (const [i, was] of mm.entries()) {
      if (!/ mm\b/.test(was) || / mm \(/.test(inch[i]!)) continue
      if (NAMED.test(was)) continue
      const left = inch[i]!.replace(OTHER, '').match(FIGURE) ?? []
      for (const figure of was.replace(OTHER, '').match(/\d+\.\d+/g) ?? [])
        expect(left, `${was} → ${inch[i]}`).not.toContain(figure)
    }
  })
})
