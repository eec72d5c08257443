import { describe, expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import type { SvgReading } from '../../src/shape/svg.ts'
import { readSvg, SvgError } from '../../src/shape/svg.ts'
import { page } from './svg-page.ts'
import { SAMPLES } from './svg-samples.ts'

const read = (text: string): SvgReading => readSvg(text, { tolMm: 0.01 })

/** The error a text must give. */
function refused(text: string): SvgError {
  try {
    read(text)
  } catch (e) {
    expect(e, String(e)).toBeInstanceOf(SvgError)
    return e as SvgError
  }
  throw new Error(`read without an error: ${text.slice(0, 200)}`)
}

const NS = 'xmlns="http://www.w3.org/2000/svg"'

describe('entities and everything outside', () => {
  it('a billion laughs are refused at the DOCTYPE', () => {
    const lol = Array.from({ length: 9 }, (_, k) => `<!ENTITY lol${k + 1} "${`&lol${k};`.repeat(10)}">`).join(
      '\n'
    )
    const e = refused(
      `<?xml version="1.0"?>\n<!DOCTYPE lolz [\n<!ENTITY lol0 "lol">\n${lol}\n]>\n<svg ${NS}><text>&lol9;</text></svg>`
    )
    expect(e.message).toMatch(/^line \d+: a DOCTYPE; allowed: none/)
  })

  it('so are an external entity, an external subset and a parameter entity', () => {
    for (const doctype of [
      '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>',
      '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">',
      '<!DOCTYPE svg SYSTEM "http://example.org/a.dtd">',
      '<!DOCTYPE svg [<!ENTITY % p SYSTEM "http://example.org/p"> %p;]>'
    ]) {
      expect(refused(`${doctype}<svg ${NS}>&x;</svg>`).message).toMatch(/DOCTYPE/)
    }
  })

  it('an entity without a DOCTYPE is refused, those of XML itself are read', () => {
    expect(refused(page('<text>&nbsp;</text>')).message).toMatch(/^line 2: "undefined entity"/)
    expect(refused(page('<rect width="&w;" height="1"/>')).message).toMatch(/undefined entity/)
    expect(area(read(page('<rect width="&#53;" height="&#x32;"/>')).region)).toBe(10)
  })
})

describe('bounds', () => {
  it('a file of 9 million characters is refused before it is read, one of 7 is read', () => {
    expect(refused(page(' '.repeat(9_000_000))).message).toBe(
      `line 1: a file of ${page('').length + 9_000_000} characters; allowed: up to 8000000`
    )
    expect(read(page(`${' '.repeat(7_000_000)}<rect width="2" height="3"/>`)).shapes).toHaveLength(1)
  })

  it('elements nested deeper than 64 are refused, 64 are read', () => {
    const nested = (n: number) => page(`${'<g>'.repeat(n)}<rect width="1" height="1"/>${'</g>'.repeat(n)}`)
    expect(read(nested(62)).shapes).toHaveLength(1)
    expect(refused(nested(63)).message).toBe('line 2: elements nested 65 deep; allowed: up to 64')
    expect(refused(nested(100_000)).message).toMatch(/nested 65 deep/)
    expect(refused(`<svg>${'<x:a xmlns:x="u">'.repeat(100)}`).message).toMatch(/nested 65 deep/)
  })

  it('more than 50000 elements are refused', () => {
    const many = (n: number) => page('<rect/>'.repeat(n))
    expect(read(many(49_999)).skipped).toHaveLength(1001)
    expect(refused(many(50_000)).message).toBe('line 2: element number 50001; allowed: up to 50000 elements')
  })

  it('a use bomb is stopped at 10000 expansions', () => {
    let defs = '<rect id="u0" width="1" height="1"/>'
    for (let k = 1; k <= 12; k++) defs += `<g id="u${k}">${`<use href="#u${k - 1}"/>`.repeat(10)}</g>`
    expect(refused(page(`<defs>${defs}</defs><use href="#u12"/>`)).message).toMatch(
      /^line 2: expansion number 10001 of use; allowed: up to 10000/
    )
  })

  it('so are few expansions of much, and a long chain of single ones', () => {
    const row = `<defs><g id="row">${'<text/>'.repeat(9000)}</g></defs>${'<use href="#row"/>'.repeat(9)}`
    expect(refused(page(row)).message).toMatch(
      /element number 50001 to draw, copies by use counted; allowed: up to 50000/
    )
    let chain = '<rect id="c0" width="1" height="1"/>'
    for (let k = 1; k <= 200; k++) chain += `<use id="c${k}" href="#c${k - 1}"/>`
    expect(refused(page(`<defs>${chain}</defs><use href="#c200"/>`)).message).toMatch(
      /nested 65 deep, use counted; allowed: up to 64/
    )
    let symbols = '<symbol id="c0"><rect width="1" height="1"/></symbol>'
    for (let k = 1; k <= 200; k++) symbols += `<symbol id="c${k}"><use href="#c${k - 1}"/></symbol>`
    expect(refused(page(`${symbols}<use href="#c200"/>`)).message).toMatch(/nested 65 deep, use counted/)
  })

  it('more than two million points are refused', () => {
    // Curves a kilometre long at 0.01 mm: about ten thousand points each.
    const large = page('<path fill="none" d="M0 0C0 9e5 9e5 9e5 9e5 0"/>'.repeat(300))
    expect(refused(large).message).toMatch(
      /more than 2000000 points at this tolerance; at most 2000000 are allowed/
    )
  })

  it('numbers beyond 1e7, and points beyond a kilometre, are refused wherever they stand', () => {
    for (const element of [
      '<path d="M0 0L1e8 0"/>',
      '<path d="M0 0L1e999 0"/>',
      '<path d="M0 0A1 1 1e9 0 0 5 5"/>',
      `<path d="M0 0H${'9'.repeat(100_000)}"/>`,
      '<polygon points="0,0 10,0 0,1e8"/>',
      '<rect width="1e8" height="1"/>',
      '<circle r="1e308"/>',
      '<g transform="translate(1e8)"/>'
    ]) {
      expect(refused(page(element)).message, element).toMatch(
        /^line 2: .*the number "[-\d.e…]+" at index \d+; allowed/
      )
    }
    for (const element of [
      '<path d="M9e6 0L5 5L6 6"/>',
      '<path d="M0 0m1e7 0m1e7 0l5 5 6 0z"/>',
      '<circle r="9e6"/>',
      '<svg viewBox="0 0 1e-4 1e-4"><circle r="1"/></svg>',
      '<rect transform="scale(1e6)" width="100" height="1"/>',
      // Near ends of a far-reaching arc.
      '<path d="M0 0A1e7 1e7 0 1 1 0 100z"/>'
    ]) {
      expect(refused(page(element)).message, element).toMatch(
        /a point at \(.*\) mm; allowed are −1000000 to 1000000 mm/
      )
    }
  })

  it('a scribble that crosses itself without end is refused', () => {
    const zigzag = Array.from({ length: 3000 }, (_, k) => `${(k * 7919) % 1009},${(k * 104729) % 1013}`).join(
      ' '
    )
    expect(refused(page(`\n<polygon points="${zigzag}"/>`)).message).toMatch(
      /^line 3: lines cross in more than/
    )
    // Many scribbles, each harmless alone and clear of the others.
    const small = Array.from({ length: 300 }, (_, k) => `${(k * 79) % 101},${(k * 47) % 103}`).join(' ')
    const one = (k: number) => `<polygon transform="translate(${200 * k})" points="${small}"/>`
    expect(read(page(one(0))).shapes).toHaveLength(1)
    expect(refused(page(Array.from({ length: 60 }, (_, k) => one(k)).join(''))).message).toMatch(
      /^line 1: shapes whose lines cross in more than 200000 places; at most 200000/
    )
    // Bars without crossings of their own, laid over each other.
    const bars = Array.from({ length: 600 }, (_, k) => `<path d="M${k / 4} 0h.1v150h-.1z"/>`).join('')
    expect(
      refused(page(bars + bars.replaceAll(/M(\S+) 0h.1v150h-.1z/g, 'M0 $1v.1h150v-.1z'))).message
    ).toMatch(/^line 1: shapes whose lines cross in more than/)
  })

  it('long texts without sense are read once over: digits, blanks, letters, brackets', () => {
    const n = 500_000
    for (const element of [
      `<path d="M${'1'.repeat(n)}x"/>`,
      `<path d="M0 0${' '.repeat(n)}x"/>`,
      `<rect width="${'1'.repeat(n)}!" height="1"/>`,
      `<rect width="1${' '.repeat(n)}!" height="1"/>`,
      `<rect width="1${'a'.repeat(n)}" height="1"/>`,
      `<g transform="${'('.repeat(n)}"/>`,
      `<g transform="${'a'.repeat(n)}"/>`,
      `<g transform="translate(${'1 '.repeat(n / 2)})"/>`,
      `<g transform="translate(1)${' '.repeat(n)}x"/>`,
      `<svg viewBox="${'0 '.repeat(n / 2)}"/>`,
      `<svg preserveAspectRatio="none${' '.repeat(n)}x" viewBox="0 0 1 1"/>`,
      `<polygon points="1${','.repeat(n)}"/>`
    ]) {
      expect(refused(page(element)).message.length, element.slice(0, 60)).toBeLessThan(400)
    }
    expect(
      read(page(`<rect style="${'a:b;'.repeat(n / 8)}${'! '.repeat(n / 4)}:! ;" width="1" height="1"/>`))
        .shapes
    ).toHaveLength(1)
    expect(read(page(`<g id="${'x'.repeat(n)}"><title>${'y'.repeat(n)}</title><rect/></g>`)).shapes).toEqual(
      []
    )
  })
})

describe('what is no SVG', () => {
  it('binary, empty, words, JSON, HTML and another XML are refused with where and what', () => {
    const png = '\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR'
    for (const text of [
      png,
      '',
      ' \n ',
      'hello',
      '{"a":1}',
      '\u0000'.repeat(1000),
      '\uFFFF',
      '<',
      '<svg',
      '<>'
    ]) {
      expect(refused(text).message).toMatch(/^line \d+: "?.+; allowed: /)
    }
    expect(refused('<html xmlns="http://www.w3.org/1999/xhtml"/>').message).toBe(
      'line 1: "html" as outermost element; allowed: <svg xmlns="http://www.w3.org/2000/svg">'
    )
    expect(refused('<svg xmlns="urn:other"/>').message).toMatch(/as outermost element/)
    expect(refused('<g xmlns="http://www.w3.org/2000/svg"/>').message).toMatch(/"g" as outermost element/)
    expect(refused(`<svg ${NS}/><svg ${NS}/>`).message).toMatch(/only one root/)
  })

  it('a text cut off anywhere is refused, for every place in every sample', () => {
    for (const [name, text] of Object.entries(SAMPLES)) {
      for (let k = 0; k < text.length; k += 1 + (k % 3)) {
        expect(refused(text.slice(0, k)).line, `${name} cut at ${k}`).toBeGreaterThan(0)
      }
    }
  })

  it('names of JavaScript’s own mean nothing special', () => {
    for (const name of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      const reading = read(
        page(`<${name} id="${name}"/><rect ${name}="1" style="${name}:1" width="1" height="1"/>`)
      )
      expect(reading.shapes).toHaveLength(1)
      expect(reading.skipped).toHaveLength(1)
      expect(refused(page(`<g transform="${name}(1)"/>`)).message).toMatch(/allowed: matrix/)
      expect(refused(page(`<rect width="1${name}" height="1"/>`)).message).toMatch(/allowed: a number/)
    }
  })

  it('a byte order mark before and blanks after do no harm; a missing namespace does not either', () => {
    expect(read(`\uFEFF${page('<rect width="1" height="1"/>')}\n\n`).shapes).toHaveLength(1)
    expect(read('<svg width="5mm" height="5mm"><rect width="1" height="1"/></svg>').shapes).toHaveLength(1)
    expect(
      read('<s:svg xmlns:s="http://www.w3.org/2000/svg"><s:rect width="1" height="1"/></s:svg>').shapes
    ).toHaveLength(1)
  })

  it('errors carry the line and column of the element', () => {
    const e = refused(`<svg ${NS}>\n\n  <g>\n     <circle\n       r="-3"/>\n  </g>\n</svg>`)
    expect(e.message).toBe('line 4: circle: r="-3"; allowed: 0 or more')
    expect([e.line, e.column, e.name]).toEqual([4, 6, 'SvgError'])
    const f = refused(`<svg ${NS}>\n  <rect width="x" height="1"/></svg>`)
    expect([f.line, f.column]).toEqual([2, 3])
    const g = refused(`<svg ${NS}>\n<g></svg>`)
    expect(g.line).toBe(2)
  })

  it('path data that breaks off is refused with its index, not drawn by half', () => {
    expect(refused(page('<path d="M0 0L10 10 20"/>')).message).toMatch(/^line 2: path data: .*index \d+/)
    expect(refused(page('<polygon points="0,0 10,0 10"/>')).message).toBe(
      'line 2: polygon: points with 5 numbers; allowed: pairs'
    )
  })
})

it('a tolerance that is none is an error of the caller', () => {
  for (const tolMm of [0, -1, Number.NaN, Number.POSITIVE_INFINITY]) {
    expect(() => readSvg(page(''), { tolMm })).toThrow(/a tolerance of .* mm; allowed: above 0/)
  }
})
