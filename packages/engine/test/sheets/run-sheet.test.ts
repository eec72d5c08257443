import { SaxesParser } from 'saxes'
import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import type { Planned } from '../../src/plan.ts'
import { plan } from '../../src/plan.ts'
import { mixAmounts, scantTints } from '../../src/sheets/run-mix.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { runSheetHtml } from '../../src/sheets/run-sheet-html.ts'
import { runSheetMarkdown, words } from '../../src/sheets/run-sheet-md.ts'
import { HAZARDS_OF } from '../../src/steps/safety.ts'
import { BOARDS, PANEL, planOf, SHOP, TABLE } from './pieces.ts'

const HOSTILE = '</style><script>alert(1)</script> "a\' | b\n# c `d` [e](http://f) &amp; <img src=x>'

/** A plan with every stop gone on despite, so that its run sheet is written. */
function going(piece: PieceDocument, because = 'the test says so', shop: ShopDocument = SHOP): Planned {
  const stops = planOf(piece, {}, shop).plan.findings.filter(f => f.severity === 'stop')
  const despite = [...new Set(stops.map(f => f.id))].map(id => ({ id, because }))
  return planOf(piece, { despite }, shop)
}

/** A table made in three batches at a given moment. */
const TIMED: PieceDocument = {
  ...TABLE,
  pours: TABLE.pours.map((p, i) => (i === 1 ? { ...p, batches: 3, start: '2026-11-28T09:00+01:00' } : p))
}
/** A lamp: mains parts, a face that meets food, charred timber, stones, marbling of an unpredicted family. */
const LAMP: PieceDocument = {
  castwright: 1,
  name: 'Lamp with a charred foot',
  outline: { rectangle: [160, 120] },
  food: 'front',
  mould: { base: 'glass-plate' },
  timbers: [
    {
      id: 'foot',
      species: 'ash-white',
      outline: { rectangle: [40, 120], at: [-60, 0] },
      thickness: 20,
      charred: 2,
      moisture: 8
    }
  ],
  pours: [
    {
      id: 'smoke',
      resin: 'polyester',
      depth: 10,
      stones: [{ kind: 'river-gravel', all: true, set: 'before the pour' }]
    },
    {
      id: 'swirl',
      resin: 'medium',
      height: 20,
      marbling: [
        { share: 60, tint: [{ pigment: 'white-paste', percent: 2 }] },
        { share: 40, tint: [] }
      ]
    }
  ],
  cuts: [{ id: 'well', face: 'back', shape: { circle: 60 }, depth: 8, way: 'router' }],
  hardware: [{ id: 'holder', kind: 'lamp-holder', in: 'well' }],
  finish: { front: { coat: 'hardwax-oil' } }
}

interface Node {
  readonly name: string
  readonly attributes: Record<string, string>
  readonly children: (Node | string)[]
}

/** The page as saxes reads it: a second opinion on what is well-formed. */
function tree(text: string): Node {
  const root: Node = { name: '', attributes: {}, children: [] }
  const open = [root]
  const parser = new SaxesParser()
  parser.on('error', e => {
    throw e
  })
  parser.on('opentag', t => {
    const node: Node = { name: t.name, attributes: t.attributes as Record<string, string>, children: [] }
    open[open.length - 1]!.children.push(node)
    open.push(node)
  })
  parser.on('closetag', () => {
    open.pop()
  })
  parser.on('text', t => {
    open[open.length - 1]!.children.push(t)
  })
  parser.write(text).close()
  return root
}

function all(node: Node, name: string, ofClass?: string): Node[] {
  const own =
    node.name === name &&
    (ofClass === undefined || (node.attributes.class ?? '').split(' ').includes(ofClass))
  const below = node.children.flatMap(c => (typeof c === 'string' ? [] : all(c, name, ofClass)))
  return own ? [node, ...below] : below
}

function textOf(node: Node): string {
  return node.children.map(c => (typeof c === 'string' ? c : textOf(c))).join('')
}

/** The list items of Markdown that have a tick box, unescaped: one a step. */
function mdSteps(text: string): string[] {
  return text
    .split(/^- \[ \] /m)
    .slice(1)
    .map(block => block.split(/^(?! {6}|$)/m)[0]!)
    .map(block => block.replace(/\\([!-/:-@[-`{-~])/g, '$1'))
}

const PIECES: [string, Planned][] = [
  ['panel', going(PANEL)],
  ['table', going(TIMED)],
  ['boards', going(BOARDS)],
  ['lamp', going(LAMP)]
]

describe('a run sheet', () => {
  it('has every step once, in order, with a box to tick, in both forms', () => {
    for (const [name, p] of PIECES) {
      expect(p.plan.verdict, `${name}: ${p.plan.says}`).not.toBe('stop')
      const rows = all(tree(runSheetHtml(p)), 'li', 'step')
      const md = mdSteps(runSheetMarkdown(p))
      expect(rows.map(r => r.attributes.id)).toEqual(p.plan.steps.map(s => `step-${s.number}`))
      expect(md).toHaveLength(p.plan.steps.length)
      p.plan.steps.forEach((s, i) => {
        expect(all(rows[i]!, 'span', 'box'), `${name} ${s.number}`).toHaveLength(1)
        expect(md[i]!.startsWith(`**${s.number}  `), `${name} ${s.number}`).toBe(true)
        if (s.kind !== 'wait') {
          expect(textOf(all(rows[i]!, 'h3')[0]!)).toBe(`${s.number}${s.says}`)
          expect(md[i]).toContain(s.says)
        }
      })
    }
  })

  it('says each safety line inside its step, with whom it gives way to', () => {
    let lines = 0
    for (const [name, p] of PIECES) {
      const rows = all(tree(runSheetHtml(p)), 'li', 'step')
      const md = mdSteps(runSheetMarkdown(p))
      p.plan.steps.forEach((s, i) => {
        const boxes = all(rows[i]!, 'div', 'safety')
        expect(boxes.length, `${name} ${s.number}`).toBe(s.safety.length > 0 ? 1 : 0)
        const own = boxes.length === 0 ? [] : all(boxes[0]!, 'li').map(textOf)
        expect(own).toHaveLength(s.safety.length)
        s.safety.forEach((l, k) => {
          lines++
          expect(own[k], `${name} ${s.number}`).toContain(l.line)
          expect(md[i], `${name} ${s.number}`).toContain(`> **Safety.** ${l.line} *Gives way to `)
          for (const to of l.defersTo) {
            expect(own[k]).toContain(to)
            expect(md[i]).toContain(to)
          }
        })
      })
    }
    expect(lines).toBeGreaterThan(100)
  })

  it('leaves no step without a line whose kind has a hazard, nor mains without its electrician', () => {
    for (const [name, p] of PIECES) {
      for (const [i, s] of runSheet(p).steps.entries()) {
        const why = p.work.steps[i]!.why
        const cold = s.kind === 'wait' && why !== 'recoat' && why !== 'demould'
        if (HAZARDS_OF[s.kind].length > 0 && !cold)
          expect(s.safety.length, `${name} ${s.number} ${s.kind}`).toBeGreaterThan(0)
      }
    }
    const fit = runSheet(PIECES[3]![1]).steps.find(s => s.kind === 'fit')!
    expect(fit.safety.map(l => l.defersTo.join())).toContain('a licensed electrician,local electrical codes')
  })

  it('keeps a step and its safety lines on one sheet of paper', () => {
    const text = runSheetHtml(PIECES[0]![1])
    expect(text).toMatch(/\.step\{[^}]*break-inside:avoid/)
    expect(text).toMatch(/\.safety\{[^}]*break-before:avoid/)
    // No size is set: A4 and Letter both do.
    expect(text).toMatch(/@page\{margin/)
    expect(text).not.toMatch(/@page\{[^}]*size:/)
  })

  it('claims of nothing that it is safe', () => {
    for (const [, p] of PIECES)
      for (const text of [runSheetMarkdown(p), runSheetHtml(p)]) {
        const plain = text.toLowerCase().replaceAll('\\', '')
        expect(plain).not.toMatch(/food[ -]?safe|safe to |is safe|are safe|harmless|non-?toxic/)
        // A hash may spell anything.
        expect(plain.replace(/sha256-[^']+/g, '')).not.toMatch(/nan|undefined|\[object|infinity/)
      }
  })

  it('asks for nothing outside itself, runs nothing, and is the same bytes on every run', () => {
    const p = PIECES[0]![1]
    const text = runSheetHtml(p, { fonts: [{ weight: 400, italic: false, base64: 'AAAA' }] })
    expect(text).not.toMatch(/<script| style="| on[a-z]+="|<link|<img|<iframe/)
    expect([...text.matchAll(/(?:src|href|url)\s*[=(]\s*["']?([^"')\s>]+)/g)].map(m => m[1])).toEqual([
      'data:font/woff2;base64,AAAA'
    ])
    expect(text).toContain("default-src 'none'; style-src 'sha256-")
    expect(runSheetHtml(going(PANEL), { fonts: [{ weight: 400, italic: false, base64: 'AAAA' }] })).toBe(text)
    expect(() => runSheetHtml(p, { fonts: [{ weight: 400, italic: false, base64: 'a b' }] })).toThrow(
      /base64/
    )
  })
})

describe('the amounts of a run sheet', () => {
  it('are those of the plan, to the step of the scale, at the ratio of the resin', () => {
    for (const resolution of [0.01, 0.1, 0.5, 1, 2]) {
      for (const piece of [PANEL, TIMED, BOARDS]) {
        const p = going(piece, 'test', { ...SHOP, scale: { resolution } })
        for (const s of runSheet(p).steps) {
          if (s.kind !== 'pour' || s.amounts === null) continue
          const { amounts } = s
          const index = p.work.steps[s.number - 1]!.pour!.index
          const pour = p.plan.pours[index]!
          // What several blanks take is mixed together.
          const mixedG = amounts.blanks * pour.batches!.mixedG
          const where = `${p.plan.name}, ${pour.id}, scale ${resolution}`
          const [a, b, ...tint] = amounts.shares
          const sum = amounts.shares.reduce((x, y) => x + y.g, 0)
          const slack = (amounts.shares.length * resolution) / 2 + 0.01
          expect(Math.abs(sum - mixedG / amounts.batches), where).toBeLessThanOrEqual(slack)
          expect(Math.abs(amounts.totalG - sum), where).toBeLessThanOrEqual(resolution / 2 + 1e-9)
          for (const x of [a!.g, b!.g, amounts.totalG])
            expect(Math.abs(x / resolution - Math.round(x / resolution)), `${where}: ${x}`).toBeLessThan(1e-6)
          // The generic mix is 100 : 44 by mass, densities 1.14 and 0.98 g/ml.
          expect(Math.abs(b!.g - 0.44 * a!.g), where).toBeLessThanOrEqual(0.72 * resolution + 1e-9)
          expect(Math.abs(a!.ml! * 1.14 - a!.g), where).toBeLessThanOrEqual(resolution / 2 + 1e-9)
          expect(Math.abs(b!.ml! * 0.98 - b!.g), where).toBeLessThanOrEqual(resolution / 2 + 1e-9)
          p.work.piece.pours[index]!.tint.forEach((t, k) => {
            const g = (mixedG / amounts.batches) * (t.percent / 100)
            expect(Math.abs(tint[k]!.g - g), where).toBeLessThanOrEqual(Math.max(resolution / 2, 0.06 * g))
            expect(tint[k]!.g, where).toBeGreaterThan(0)
          })
        }
      }
    }
  }, 20_000)

  it('are printed as they are: grams of each part large, millilitres below, in both forms', () => {
    const p = PIECES[1]![1]
    const sheet = runSheet(p)
    const rows = all(tree(runSheetHtml(p)), 'li', 'step')
    const md = mdSteps(runSheetMarkdown(p))
    for (const s of sheet.steps) {
      if (s.amounts === null) continue
      const row = rows[s.number - 1]!
      const grams = all(all(row, 'tr', 'g')[0]!, 'td').map(textOf)
      expect(grams.map(t => Number(t.replace(/g$/, '')))).toEqual([
        ...s.amounts.shares.map(x => x.g),
        s.amounts.totalG
      ])
      const cells = /\| weigh \| (.*) \|/.exec(md[s.number - 1]!)![1]!.split(' | ')
      expect(cells.map(c => c.replaceAll('*', ''))).toEqual(grams.map(g => g.replace(/g$/, ' g')))
    }
    const three = sheet.steps.find(s => s.title === 'Pour river one')!
    expect(three.amounts!.batches).toBe(3)
    expect(all(rows[three.number - 1]!, 'span', 'tick')).toHaveLength(3)
  })

  it('say how to weigh a pigment that the scale cannot, keeping pigment and part A', () => {
    const pigment = { name: 'blue' } as unknown as Parameters<typeof scantTints>[0][number]['pigment']
    // 0.5 g on a scale of 0.1 g: 1 g in 9 g of A is one part in ten; 5 g of it hold 0.5 g and 4.5 g of A.
    expect(scantTints([{ pigment, share: 0.005 }], 100, 0.1)).toEqual([
      'Blue: 0.5 g is too little for this scale. Stir 1.0 g of it into 9.0 g of part A, weigh 5.0 g of that, and take 4.5 g less of part A.'
    ])
    expect(scantTints([{ pigment, share: 0.0005 }], 100, 0.1)[0]).toMatch(/thinned or not/)
    expect(scantTints([{ pigment, share: 0.02 }], 100, 0.1)).toEqual([])
  })

  it('match a mix worked by hand: 500 g in two batches at 100 : 50 with 2 % tint', () => {
    const amounts = mixAmounts({
      mixedG: 500,
      batches: 2,
      mix: { massA: 100, massB: 50, densityAGMl: 1.1, densityBGMl: 1 },
      tint: [{ pigment: { name: 'white' } as never, share: 0.02 }],
      resolution: 1,
      blanks: 3,
      vessel: 'pot',
      lot: null
    })
    // 250 g, 5 g of it white (scant on 1 g, still 5), 245 g left: 163.3 and 81.7 g; 148.5 and 81.7 ml.
    expect(amounts.shares.map(s => [s.name, s.words])).toEqual([
      ['Part A', '163'],
      ['Part B', '82'],
      ['white', '5']
    ])
    expect(amounts.shares[0]!.ml).toBeCloseTo(148.48, 1)
    expect(amounts.shares[1]!.ml).toBeCloseTo(81.67, 1)
    expect(amounts.totalG).toBe(250)
  })

  it('are given for all blanks that are poured at once', () => {
    const p = PIECES[2]![1]
    const mixed = p.plan.pours[0]!.batches!.mixedG
    expect(p.plan.quantity.blanks).toBe(14)
    const { amounts } = runSheet(p).steps.find(s => s.kind === 'pour')!
    expect(amounts).toMatchObject({ batches: 1, blanks: 14 })
    expect(Math.abs(amounts!.totalG - 14 * mixed)).toBeLessThanOrEqual(2)
    for (const form of [runSheetMarkdown(p), runSheetHtml(p)])
      expect(form).toContain('One batch for 14 blanks together')
    expect(runSheetMarkdown(p)).toContain('14 blanks are started for 12 good pieces')
    const briefs = runSheet(p).steps.map(s => [s.kind, s.brief])
    expect(briefs).toContainEqual(['coat', '14 blanks'])
    expect(briefs).toContainEqual(['deliver', '12 pieces'])
    const row = going({ ...PANEL, quantity: { pieces: 5, blanks: 5, gang: 2 } })
    expect(runSheet(row).steps.find(s => s.kind === 'pour')!.brief).toBe('2 blanks at a time, 3 fills for 5')
    expect(runSheet(PIECES[0]![1]).steps.every(s => !s.brief.includes('blank'))).toBe(true)
  })

  it('tell the level of a pour from what exists then, and what it cures to', () => {
    const p = PIECES[0]![1]
    const pour = (title: string) =>
      runSheet(p)
        .steps.find(s => s.title === title)!
        .does.join(' ')
    const { stack } = p.plan.pours[1]!
    expect(pour('Pour clear')).toContain(`Fill to ${stack.liquidLevel.toFixed(1)} mm over the mould base`)
    expect(pour('Pour clear')).toContain(
      `${(p.plan.mould.wall - stack.liquidLevel).toFixed(1)} mm under the top of the walls`
    )
    expect(pour('Pour clear')).toContain('It cures to 30.0, 16.0 deep as cast.')
    // An inlay is filled level with the face of its cut: 8 mm in the finished piece, 0.3 more before sanding.
    const inlay = runSheet(PIECES[2]![1]).steps.find(s => s.title === 'Fill with copper')!
    expect(inlay.does.join(' ')).toContain('Fill level with the front as it is now: 8.3 mm deep.')
  })
})

describe('the times of a run sheet', () => {
  it('count from the first pour, or stand on the clock when the document says when', () => {
    const free = runSheet(PIECES[0]![1])
    expect(free.steps.find(s => s.kind === 'pour')!.when).toBe('+ 0 min')
    expect(free.clock).toContain('from the first pour into the mould')
    const timed = runSheet(PIECES[1]![1])
    const [one, two] = timed.steps.filter(s => s.kind === 'pour' && s.title !== 'Seal with seal')
    expect([one!.day, one!.when]).toEqual(['Sat 28 Nov', '09:00'])
    // The second pour, in the zone of the document: start of the first and what its wait lasts.
    const at = new Date(
      Date.parse('2026-11-28T09:00+01:00') + PIECES[1]![1].plan.steps[two!.number - 1]!.startMin * 60_000
    )
    const local = new Intl.DateTimeFormat('en-GB', {
      timeZone: 'Europe/Berlin',
      hour: '2-digit',
      minute: '2-digit'
    })
    expect(two!.when).toBe(`from ${local.format(at)}`)
    expect(two!.facts[0]!.label).toBe('Pour between')
    expect(two!.facts[0]!.value.startsWith(`Sun 29 Nov ${local.format(at)} and `)).toBe(true)
    expect(timed.steps[0]!.day).toBe('Before the first pour')
  })
})

describe('a run sheet and what stands', () => {
  const stop = planOf(PANEL)

  it('is not written while a stop stands; what is begun and what makes safe is', () => {
    expect(stop.plan.verdict).toBe('stop')
    const md = runSheetMarkdown(stop)
    expect(mdSteps(md)).toHaveLength(0)
    expect(md).toContain('not written while a stop stands')
    expect(md).toContain('Never bin it warm')
    expect(all(tree(runSheetHtml(stop)), 'li', 'step')).toHaveLength(0)
    const begun = plan(
      {
        piece: checkPiece(PANEL, 'piece'),
        shop: checkShop(SHOP, 'shop').value,
        readings: [{ kind: 'mixed', pour: 'reed green', id: 'r-2026-0001', at: '2026-11-20T09:00+01:00' }]
      },
      { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }
    )
    const steps = runSheet(begun).steps
    expect(steps.map(s => s.title)[0]).toBe('Pour reed green')
    expect(steps.map(s => s.kind)).toEqual(['pour', 'wait'])
    expect(mdSteps(runSheetMarkdown(begun))[0]).toContain('Never bin it warm')
  })

  it('names every finding that stands, and at its step too', () => {
    for (const [name, p] of PIECES) {
      const md = runSheetMarkdown(p).replace(/\\([!-/:-@[-`{-~])/g, '$1')
      const rows = all(tree(runSheetHtml(p)), 'li', 'step')
      for (const f of runSheet(p).findings) {
        expect(md, `${name} ${f.id}`).toContain(f.says)
        if (f.step !== null) expect(textOf(rows[f.step - 1]!), `${name} ${f.id}`).toContain(f.says)
      }
    }
  })

  it('prints why it goes on despite a stop: on top, at the step and at the edge of every sheet of paper', () => {
    const p = going(PANEL, 'the wall behind is dark')
    const text = runSheetHtml(p)
    expect(p.plan.despite.map(d => d.id)).toContain('opaque-cover')
    const page = tree(text)
    expect(all(page, 'div', 'over').map(textOf).join()).toContain('the wall behind is dark')
    expect(all(page, 'div', 'despite').map(textOf).join()).toContain('the wall behind is dark')
    expect(/@bottom-left\{content:"([^"]*)"/.exec(text)![1]).toContain('opaque-cover')
    expect(runSheetMarkdown(p).split('the wall behind is dark').length).toBeGreaterThan(2)
  })
})

describe('hostile words', () => {
  const p = going({ ...PANEL, name: HOSTILE, about: HOSTILE }, HOSTILE)

  it('stay words in HTML', () => {
    const text = runSheetHtml(p)
    const page = tree(text)
    expect(text).not.toMatch(/<script|<img/)
    expect(text.match(/<\/style>/g)).toHaveLength(1)
    expect(textOf(all(page, 'h1')[0]!)).toBe(p.plan.name)
    // In the string of the printed edge no sign can end it.
    const edge = /@bottom-left\{content:"((?:[^"\\]|\\[0-9a-f]+ )*)";font/.exec(text)
    expect(edge).not.toBeNull()
    const read = edge![1]!.replace(/\\([0-9a-f]+) /g, (_, hex: string) =>
      String.fromCodePoint(Number.parseInt(hex, 16))
    )
    expect(read.startsWith(p.plan.name)).toBe(true)
  })

  it('stay words in Markdown: one line, nothing but escaped signs', () => {
    const md = runSheetMarkdown(p)
    expect(md.split('\n')[0]).toBe(`# Run sheet: ${words(p.plan.name)}`)
    expect(md).not.toMatch(/(?<!\\)<|(?<!\\)\[e|http:\/\/|(?<!\\)`/)
    const out = words(HOSTILE)
    expect(out).not.toContain('\n')
    expect(out.replace(/\\([!-/:-@[-`{-~])/g, '$1')).toBe(HOSTILE.replace('\n', ' '))
    expect(out.replace(/\\./g, '')).not.toMatch(/[`*_[\]<>|~&#@\\]/)
    // Every row of a table has the cells of its head.
    for (const block of md.split(/\n\s*\n/)) {
      const rows = block.split('\n').filter(l => l.trim().startsWith('|'))
      const cells = rows.map(r => r.replace(/\\\|/g, '').split('|').length)
      expect(new Set(cells).size, block).toBeLessThanOrEqual(1)
    }
  })
})
