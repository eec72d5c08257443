import { describe, expect, it } from 'vitest'
import { plan } from '../../src/plan.ts'
import { page } from '../../src/sheets/page.ts'
import { exampleInput } from '../calendar/example-work.ts'

/** Exact by definition: mm an inch, m a foot (international yard and pound, 1959; NIST SP 811 appendix B.8). */
const INCH_MM = 25.4
const FOOT_M = 0.3048

/** A page of an example without script, style and licence. */
function pageIn(units: object, name: string): string {
  const planned = plan(exampleInput(name, { shop: { units } }), {
    asOf: '2026-11-30T08:00:00Z',
    effort: 'preview',
    despite: []
  })
  return page(planned, { script: '1', style: 'a{}', fonts: [] }).replace(
    /<(style|script)[\s\S]*?<\/\1>|<!--[\s\S]*?-->/g,
    ''
  )
}

/** All that is read or heard: a line for each text and each name of a drawing. */
function linesOf(markup: string): string[] {
  return markup
    .replace(/aria-label="([^"]*)"/g, '>\n$1\n<')
    .replace(/<\/(?:p|div|li|d[dt]|t[dh]|text|h\d|span|title)>/g, '\n')
    .replace(/<[^>]+>/g, ' ')
    .split('\n')
    .map(l => l.replace(/\s+/g, ' ').trim())
    .filter(l => l !== '' && l !== '&lt;' && l !== '&gt;')
}

/** The parts of a page that match, as lines. */
function partsOf(markup: string, part: RegExp): string[] {
  return [...markup.matchAll(part)].flatMap(m => linesOf(m[0]))
}

const FIGURE = /[−-]?\d+(?:\.\d+)?/g
/** How far an inch may be from a figure of mm: both are rounded, the inch to two places more, mm. */
function bothRounded(figure: string): number {
  const places = /\.(\d+)/.exec(figure)?.[1]?.length ?? 0
  // A trailing nought is left out: "15" may stand for 15.0.
  return 0.5 * 10 ** -places + 0.5 * 10 ** -Math.min(4, places + 2) * INCH_MM + 1e-9
}

/** What is sold is called by its size in mm, in every shop. */
const NAMED = /(?:board|bit|mill|drill|bit 60°|disc of) \d+(?:\.\d+)? ?mm/g

/** Drawings at the size of the piece: every figure on them is a length. */
const DRAWN = /<svg[^>]* class="draw (?:plan|aa|bb)[\s\S]*?<\/svg>/g
const FACTS = /<dl class="facts">[\s\S]*?<\/dl>/g
const MOULD = /<section class="paper mould"[\s\S]*?<\/section>/g

describe.each(['saltmarsh-panel', 'heron-table'])('the page of %s in inches', name => {
  const mm = pageIn({}, name)
  const inch = pageIn({ length: 'in', temperature: '°F' }, name)

  it('says its units, and has no mm and no °C but in names and beside its own', () => {
    expect(linesOf(inch).join('\n')).toContain(', in, °F, g')
    for (const line of linesOf(inch)) {
      const left = line.replace(NAMED, 'name').replace(/mm \([^)]* in\)/g, 'both')
      expect(left).not.toMatch(/mm\b/)
      expect(line.replace(/°C \([^)]* °F\)/g, 'both')).not.toMatch(/°C/)
      expect(line).not.toMatch(/\d m²?(?![a-z²]| \()/)
    }
  })

  it('has every figure of its drawings as the mm over 25.4, within what both are rounded to', () => {
    const texts = (page: string) =>
      [...page.matchAll(DRAWN)].flatMap(m => [...m[0].matchAll(/<text[^>]*>([^<]*)</g)].map(x => x[1]!))
    const [was, is] = [texts(mm), texts(inch)]
    // Wider figures may leave no room for one beside them: what stands is a part of what stood, in its order.
    expect(is.length).toBeGreaterThan(0.9 * was.length)
    let at = 0
    let compared = 0
    const same = (words: string, other: string) => {
      const [a, b] = [words.match(FIGURE) ?? [], other.match(FIGURE) ?? []]
      const near = a.every((x, k) => Math.abs(Number(b[k]) * INCH_MM - Number(x)) <= bothRounded(x))
      return a.length === b.length && near && words.replace(FIGURE, '') === other.replace(FIGURE, '')
    }
    for (const words of is) {
      while (at < was.length && !same(was[at]!, words)) at++
      expect(was[at], `${words} is in no drawing in mm`).toBeDefined()
      compared += words.match(FIGURE)?.length ?? 0
      at++
    }
    expect(compared).toBeGreaterThan(20)
  })

  it('has depths, peaks and the mould in its units, and volumes as they were', () => {
    const [was, is] = [mm, inch].map(text => [...partsOf(text, FACTS), ...partsOf(text, MOULD)]) as [
      string[],
      string[]
    ]
    expect(is).toHaveLength(was.length)
    const compared = { mm: 0, '°C': 0, ml: 0 }
    for (const [i, words] of was.entries()) {
      const found = /^[\d.]+(?: × [\d.]+)* (mm|°C|ml)(?: [\d–]+)?$/.exec(words)
      if (found === null) continue
      const unit = found[1] as keyof typeof compared
      expect(is[i]).toContain({ mm: ' in', '°C': ' °F', ml: ' ml' }[unit])
      const [a, b] = [words.match(FIGURE)!, is[i]!.match(FIGURE)!]
      expect(b, is[i]).toHaveLength(a.length)
      for (const [k, figure] of a.entries()) {
        const x = Number(figure)
        // Whole degrees of both: half of each.
        if (unit === '°C') expect(Math.abs(Number(b[k]) - (x * 1.8 + 32)), is[i]).toBeLessThanOrEqual(1.4)
        else if (unit === 'ml') expect(b[k]).toBe(figure)
        else expect(Math.abs(Number(b[k]) * INCH_MM - x), is[i]).toBeLessThanOrEqual(bothRounded(figure))
        compared[unit]++
      }
    }
    expect(Object.values(compared).every(n => n > 1)).toBe(true)
  })

  it('says what is wanted by the metre in feet, never less than is needed', () => {
    const [was, is] = [mm, inch].map(t => partsOf(t, /<section class="paper buy"[\s\S]*?<\/section>/g))
    let compared = 0
    expect(is).toHaveLength(was!.length)
    for (const [i, words] of was!.entries()) {
      const by = /^([\d.]+) (m|m²)$/.exec(words)
      if (by === null) continue
      const factor = by[2] === 'm' ? FOOT_M : FOOT_M ** 2
      const [, feet, unit] = /^([\d.]+) (ft²?)$/.exec(is![i]!)!
      expect(unit).toBe(by[2] === 'm' ? 'ft' : 'ft²')
      expect(Number(feet) * factor).toBeGreaterThanOrEqual(Number(by[1]) - 1e-9)
      expect(Number(feet) * factor).toBeLessThan(Number(by[1]) + 0.1 * factor + 1e-9)
      compared++
    }
    expect(compared).toBeGreaterThan(2)
  })
})

describe('a page in fractions', () => {
  const text = linesOf(pageIn({ length: 'in fraction', temperature: '°F' }, 'heron-table')).join('\n')

  it('has the decimals beside its depths, and decimals alone where a fraction says too little', () => {
    // 720 mm are 28.346 in: 28 11/32 to the nearest 64th; 0.3 mm are 0.0118.
    expect(text).toContain('28 11/32 × 17 21/64')
    expect(text).toMatch(/As cast\n0\.012 in/)
    expect(text).not.toMatch(/(?:about|than) 0[,\n]/)
  })
})
