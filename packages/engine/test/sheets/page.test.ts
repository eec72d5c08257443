import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { html, raw, scriptJson } from '../../src/sheets/markup.ts'
import type { PageAssets } from '../../src/sheets/page.ts'
import { page, verdictWords } from '../../src/sheets/page.ts'
import { sha256Base64, sha256Hex } from '../../src/sheets/sha256.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

const ASSETS: PageAssets = {
  script: 'console.log("a page")',
  style: 'body{color:#292724}',
  fonts: [{ weight: 400, italic: false, base64: 'AAAA' }]
}
const HOSTILE = '</script><img src=x onerror=alert(1)>"\'<!--'

describe('SHA-256', () => {
  // FIPS 180-4 examples (NIST, SHA256.pdf): "abc", the empty message, the 448-bit message; in hexadecimal.
  const published: [string, string][] = [
    ['abc', 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'],
    ['', 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855'],
    [
      'abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq',
      '248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1'
    ]
  ]
  it('is that of FIPS 180-4', () => {
    for (const [words, hex] of published)
      expect(sha256Base64(words)).toBe(Buffer.from(hex, 'hex').toString('base64'))
  })

  it('is that of Node for texts of every length about a block, and of every plane', () => {
    for (let n = 0; n < 140; n++) {
      const words = 'añ中😀'.repeat(40).slice(0, n)
      expect(sha256Base64(words), `${n}`).toBe(createHash('sha256').update(words, 'utf8').digest('base64'))
      const bytes = Uint8Array.from({ length: n }, (_, k) => (k * 151) % 256)
      expect(sha256Hex(bytes), `${n}`).toBe(createHash('sha256').update(bytes).digest('hex'))
    }
  })
})

describe('markup', () => {
  it('escapes what is put in, joins lists, drops nothing and false', () => {
    expect(html`<p title="${'"<'}">${[html`<b>${'&'}</b>`, null, false, 3]}</p>`.text).toBe(
      '<p title="&quot;&lt;"><b>&amp;</b>3</p>'
    )
    expect(html`${raw('<i>')}`.text).toBe('<i>')
  })

  it('lets no JSON end its script', () => {
    const text = scriptJson({ a: HOSTILE, b: '\u2028' }).text
    expect(text).not.toMatch(/[<>&\u2028]/)
    expect(JSON.parse(text)).toEqual({ a: HOSTILE, b: '\u2028' })
  })
})

describe('a page', () => {
  const planned = planOf(PANEL)
  const text = page(planned, ASSETS)

  it('names its script and style by their hashes in a policy that allows no request', () => {
    const policy = /http-equiv="Content-Security-Policy" content="([^"]+)"/.exec(text)![1]!
    const hash = (s: string) => `'sha256-${createHash('sha256').update(s, 'utf8').digest('base64')}'`
    const style = /<style>([\s\S]*?)<\/style>/.exec(text)![1]!
    const script = /<script>([\s\S]*?)<\/script>/.exec(text)![1]!
    expect(policy).toContain("default-src 'none'")
    expect(policy).toContain(`script-src ${hash(script)}`)
    expect(policy).toContain(`style-src ${hash(style)}`)
    expect(policy).not.toMatch(/unsafe|https?:|\*/)
  })

  it('asks for nothing outside itself and styles nothing inline', () => {
    // Addresses stand in the licence note alone; data: is the type that comes along.
    const outside = [...text.matchAll(/(?:src|href|url)\s*[=(]\s*["']?([^"')\s>]+)/g)].map(m => m[1]!)
    expect(outside.filter(a => !a.startsWith('#') && !a.startsWith('data:'))).toEqual([])
    expect(text).not.toMatch(/ style="/)
    expect(text).not.toMatch(/ on[a-z]+="/)
  })

  it('is the same bytes on every run', () => {
    expect(page(planOf(PANEL), ASSETS)).toBe(text)
  })

  it('holds every line of a plan: steps, buy list, findings, each once', () => {
    for (const piece of [TABLE, BOARDS]) {
      const p = planOf(piece)
      const t = page(p, ASSETS)
      expect(t.match(/<li class="step[ "]/g)).toHaveLength(p.plan.steps.length)
      expect(t.match(/<tbody><tr class="g">/g)!.length).toBe(new Set(p.plan.buy.map(l => l.group)).size)
      expect(t).not.toMatch(/NaN|undefined|\[object/)
    }
    expect(text.match(/class="find [a-z]+" id="finding-/g)).toHaveLength(planned.plan.findings.length)
  })

  it('does not write the run sheet while a stop stands, and says why', () => {
    expect(planned.plan.verdict).toBe('stop')
    expect(text).toContain('Run sheet not written while a stop stands')
    expect(text).not.toContain('<li class="step"')
    expect(text).toContain('Not ready to pour. Cable channel leaves')
  })

  it('writes it once the stop is gone on despite, with the reason at the entry and on top', () => {
    const because = 'the wall behind is dark'
    const p = planOf(PANEL, { despite: [{ id: 'opaque-cover', because }] })
    const t = page(p, ASSETS)
    expect(t).not.toContain('not written while a stop stands')
    expect(t.match(/<li class="step[ "]/g)).toHaveLength(p.plan.steps.length)
    expect(t.split(because).length - 1).toBe(2)
    expect(verdictWords(p.plan)).toContain('gone on despite')
  })

  it('folds the safety lines under their step, with what goes before them', () => {
    const p = planOf(BOARDS)
    const t = page(p, ASSETS)
    const lines = p.plan.steps.reduce((sum, s) => sum + s.safety.length, 0)
    expect(t.match(/<details class="safety">/g)).toHaveLength(
      p.plan.steps.filter(s => s.safety.length > 0).length
    )
    expect(t.match(/ go before\.<\/span>/g)).toHaveLength(lines)
  })

  it('takes hostile names, notes, figures and reasons for words', () => {
    const hostile: PieceDocument = {
      ...PANEL,
      name: HOSTILE,
      markings: [{ ...PANEL.markings![0]!, numerals: [{ text: '<svg onload=1>', at: [0, 0] }] }]
    }
    const p = planOf(hostile, { despite: [{ id: 'opaque-cover', because: HOSTILE }] })
    const t = page(p, { ...ASSETS, notice: HOSTILE })
    expect(t).not.toContain('<img')
    expect(t).not.toContain('<svg onload')
    expect(t).toContain('&lt;img src=x onerror=alert(1)&gt;')
    expect(t.match(/<script>/g)).toHaveLength(1)
  })

  it('refuses a script or style that would end its element, and a font that is not base64', () => {
    expect(() => page(planned, { ...ASSETS, script: 'x="</script>"' })).toThrow(/script/)
    expect(() => page(planned, { ...ASSETS, style: '</STYLE>' })).toThrow(/style/)
    expect(() =>
      page(planned, { ...ASSETS, fonts: [{ weight: 400, italic: false, base64: 'a b' }] })
    ).toThrow(/base64/)
  })
})
