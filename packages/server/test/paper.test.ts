import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { Mark, PieceDocument, Sheet } from '@castwright/engine'
import {
  asMadeOf,
  buySheet,
  careOf,
  checkPiece,
  checkShop,
  clientQuote,
  daysOf,
  drawnOf,
  paperTemplates,
  plan,
  privateQuote,
  quoteOf,
  readReadings,
  runSheet,
  sectionDrawing
} from '@castwright/engine'
import { describe, expect, it } from 'vitest'
import { asMadePdf, buyListPdf, carePdf, quotePdf, runSheetPdf, sheetsPdf } from '../src/paper/index.ts'
import { readPaper } from './read-paper.ts'

const AS_OF = '2026-11-28T08:00:00Z'
const example = (name: string) =>
  JSON.parse(
    readFileSync(fileURLToPath(new URL(`../../../examples/${name}.piece.json`, import.meta.url)), 'utf8')
  ) as PieceDocument
const FILES = {
  'heron-table.svg': readFileSync(
    fileURLToPath(new URL('../../../examples/heron-table.svg', import.meta.url)),
    'utf8'
  )
}
const planOf = (name: string) =>
  plan(
    {
      piece: checkPiece(example(name), 'piece'),
      shop: checkShop({ castwright: 1 }, 'shop').value,
      files: FILES
    },
    { asOf: AS_OF, effort: 'preview' }
  )
const countImages = (marks: readonly Mark[]): number =>
  marks.reduce((n, m) => n + (m.kind === 'group' ? countImages(m.marks) : m.kind === 'image' ? 1 : 0), 0)
const planned = (piece: PieceDocument) =>
  plan(
    { piece: checkPiece(piece, 'piece'), shop: checkShop({ castwright: 1 }, 'shop').value },
    { asOf: AS_OF, effort: 'preview' }
  )

describe('sheets in true size', () => {
  const sheets = paperTemplates(planned(example('saltmarsh-panel'))).flatMap(t => t.sheets)
  const bytes = sheetsPdf(sheets, { title: 'Saltmarsh chart panel: templates', asOf: AS_OF })

  it('pages are A4 to a hundredth of a millimetre and carry two bars of 100 mm within 0.1 mm', async () => {
    const read = await readPaper(bytes)
    expect(read.title).toBe('Saltmarsh chart panel: templates')
    expect(read.pages).toHaveLength(sheets.length)
    for (const page of read.pages) {
      const sides = [page.widthMm, page.heightMm].sort((a, b) => a - b)
      expect(sides[0]).toBeCloseTo(210, 2)
      expect(sides[1]).toBeCloseTo(297, 2)
      const bars = page.stretches.filter(s => Math.abs(s.lengthMm - 100) < 0.1)
      const level = bars.filter(s => Math.abs(s.from[1] - s.to[1]) < 0.01)
      const upright = bars.filter(s => Math.abs(s.from[0] - s.to[0]) < 0.01)
      expect(Math.min(level.length, upright.length)).toBeGreaterThan(0)
    }
  })

  it('is the same bytes each time, and its type is within it', () => {
    expect(sheetsPdf(sheets, { title: 'Saltmarsh chart panel: templates', asOf: AS_OF })).toEqual(bytes)
    const text = Buffer.from(bytes).toString('latin1')
    expect(text).toContain('/FontFile2')
    expect(text).not.toContain('/BaseFont /Helvetica')
  })
})

// 25.4 mm an inch: exact by definition (1959).
describe('a shop in inches', () => {
  const inInches = plan(
    {
      piece: checkPiece(example('saltmarsh-panel'), 'piece'),
      shop: checkShop({ castwright: 1, units: { length: 'in', temperature: '°F' } }, 'shop').value
    },
    { asOf: AS_OF, effort: 'preview' }
  )
  const [height] = [inInches.work.stack.pours[0]!.liquidLevel]

  it('has bars of 4 in, 101.6 mm, on its templates', async () => {
    const sheets = paperTemplates(inInches).flatMap(t => t.sheets)
    const read = await readPaper(sheetsPdf(sheets, { title: 't', asOf: AS_OF }))
    for (const page of read.pages) {
      const bars = page.stretches.filter(s => Math.abs(s.lengthMm - 4 * 25.4) < 0.1)
      expect(bars.some(s => Math.abs(s.from[1] - s.to[1]) < 0.01)).toBe(true)
      expect(bars.some(s => Math.abs(s.from[0] - s.to[0]) < 0.01)).toBe(true)
    }
    expect(read.words).toContain('this bar is 4 in')
    // The cable hole, 9 mm.
    expect(read.words).toContain(`Ø ${(9 / 25.4).toFixed(3)}: `)
  })

  it('reads its levels in inches and its heat in °F; mm are beside them or in the name of what is sold', async () => {
    const { words } = await readPaper(runSheetPdf(runSheet(inInches), null, 'A4'))
    expect(words).toContain(`Fill to ${(height! / 25.4).toFixed(3)} in over the mould base`)
    const peak = inInches.plan.pours[0]!.cast!.peakC * 1.8 + 32
    expect(words).toContain(`Peak ${peak.toFixed(0)} °F`)
    const left = words
      .replace(/ ?mm \([^)]* in\)/g, '')
      .replace(/(?:board|bit|mill|60°|drill) \d+(?:\.\d+)? mm/g, '')
    expect(left).not.toMatch(/\d ?mm\b/)
    expect(words.replace(/ ?°C \([^)]* °F\)/g, '')).not.toContain('°C')
    const drawing = await readPaper(sheetsPdf([sectionDrawing(inInches)], { title: 't', asOf: AS_OF }))
    expect(drawing.words).toMatch(/\bin\b/)
    expect(drawing.words).not.toMatch(/\d ?mm\b/)
  })
})

describe('marks', () => {
  it('lie where the sheet has them, y up; letters of any name can be selected', async () => {
    const sheet: Sheet = {
      widthMm: 100,
      heightMm: 50,
      marks: [
        { kind: 'line', ink: 'outline', from: [10, 20], to: [60, 20] },
        { kind: 'circle', ink: 'outline', at: [10, 10], radiusMm: 5 },
        { kind: 'arrow', ink: 'dimension', at: [20, 20], directionDeg: 30, lengthMm: 3 },
        {
          kind: 'region',
          rings: [Float64Array.of(0, 0, 10, 0, 10, 10)],
          paint: '#ff0000',
          hatch: { kind: 'along' },
          edge: 'edge'
        },
        {
          kind: 'text',
          lettering: 'figure',
          at: [30, 40],
          text: 'Příliš žluťoučký Ø 12 ≤ ½',
          heightMm: 4,
          anchor: 'start'
        },
        {
          kind: 'group',
          name: 'g',
          marks: [
            {
              kind: 'text',
              lettering: 'figure',
              at: [90, 8],
              text: 'end',
              heightMm: 3,
              anchor: 'end',
              turnDeg: 90
            }
          ]
        }
      ]
    }
    const [page] = (await readPaper(sheetsPdf([sheet], { title: 't', asOf: AS_OF }))).pages
    const line = page!.stretches.find(s => Math.abs(s.lengthMm - 50) < 0.01)!
    expect(line.from[0]).toBeCloseTo(10, 2)
    expect(line.from[1]).toBeCloseTo(20, 2)
    const words = page!.texts.find(t => t.text.includes('Ø'))!
    expect(words.text).toBe('Příliš žluťoučký Ø 12 ≤ ½')
    expect(words.x).toBeCloseTo(30, 1)
    expect(words.y).toBeCloseTo(40, 1)
  })

  it('refuse what is no number', () => {
    const bad: Sheet = {
      widthMm: 10,
      heightMm: 10,
      marks: [{ kind: 'line', ink: 'axis', from: [0, 0], to: [Number.NaN, 1] }]
    }
    expect(() => sheetsPdf([bad], { title: 't', asOf: AS_OF })).toThrow('finite numbers only')
  })
})

describe('the run sheet', () => {
  const sound = planned(example('saltmarsh-panel'))
  const drawn = drawnOf(sound)
  const days = daysOf(
    {
      piece: checkPiece(example('saltmarsh-panel'), 'piece'),
      shop: checkShop({ castwright: 1 }, 'shop').value
    },
    { asOf: AS_OF, effort: 'quick' }
  )

  it.each(['A4', 'letter'] as const)('on %s holds every step, amount and safety line', async paper => {
    const sheet = runSheet(sound, { days })
    const read = await readPaper(runSheetPdf(sheet, drawn, paper))
    expect(read.pages[0]!.widthMm).toBeCloseTo(paper === 'A4' ? 210 : 215.9, 2)
    const flat = read.words.replace(/\s+/g, '')
    const has = (words: string) => expect(flat, words).toContain(words.replace(/\s+/g, ''))
    for (const s of sheet.steps) {
      has(s.title)
      // Day and time of the calendar, and each window by the clock.
      for (const words of [s.day, s.when]) has(words)
      for (const row of s.windows?.rows ?? []) has(row[1]!)
      for (const d of s.does) has(d)
      for (const l of s.safety) has(l.line)
      for (const share of s.amounts?.shares ?? []) has(`${share.words} g`)
    }
    has(`${read.pages.length} of ${read.pages.length}`)
    // Nothing is written outside the margins.
    for (const page of read.pages)
      for (const t of page.texts) {
        expect(t.x).toBeGreaterThan(10)
        expect(t.x).toBeLessThan(page.widthMm - 10)
        expect(t.y).toBeGreaterThan(6)
      }
    // No title of a step, no heading stands last on its page: under it is more than the foot.
    const titles = new Set(['Programs', 'Steps', 'What stands', ...sheet.steps.map(s => s.title)])
    for (const page of read.pages) {
      const low = page.texts.filter(t => t.y < 40 && t.y > 14 && titles.has(t.text.replace(/^\d+\s+/, '')))
      for (const t of low)
        expect(
          page.texts.filter(o => o.y > 14 && o.y < t.y - 5),
          t.text
        ).not.toEqual([])
    }
    // No word of a table's head is broken.
    if (sheet.programs !== null) for (const h of sheet.programs.head) expect(read.words).toContain(h)
  })

  it('shows the band of the heat course lighter than its windows, and its limit in a colour', async () => {
    const inks = (await readPaper(runSheetPdf(runSheet(sound), null, 'A4'))).pages.flatMap(p => p.inks)
    for (const tone of ['#dddbd8', '#94a36a', '#dde2cd', '#c07f12', '#d8d4cb']) expect(inks).toContain(tone)
  })

  it('while a stop stands holds no steps but what is begun', async () => {
    const stopped = planned(example('saltmarsh-panel.spoiled'))
    expect(stopped.plan.verdict).toBe('stop')
    const read = await readPaper(runSheetPdf(runSheet(stopped), null, 'A4'))
    expect(read.words).toContain('not written')
    expect(read.words).toContain('Making safe')
    expect(read.words).not.toContain('Make the mould')
  })
})

describe('the buy list on paper', () => {
  it('holds every line that is bought with its packs, and by when to order; what is on the shelf is not bought', async () => {
    const shop = checkShop(
      {
        castwright: 1,
        prices: [
          { item: 'hardwax-oil', unit: 'ml', pack: 375, price: 24, days: 4 },
          { item: 'silicone-sealant', unit: 'm', pack: 10, price: 9, stock: 90 }
        ]
      },
      'shop'
    ).value
    const input = { piece: checkPiece(example('saltmarsh-panel'), 'piece'), shop, files: FILES }
    const planned = plan(input, { asOf: AS_OF, effort: 'preview' })
    const list = buySheet(planned, daysOf(input, { asOf: AS_OF, effort: 'quick' }))
    const { words } = await readPaper(buyListPdf(list, 'A4'))
    const flat = (text: string) => text.replace(/\s+/g, ' ')
    for (const l of planned.plan.buy.filter(b => b.buy > 0))
      expect(words.toLowerCase(), l.item).toContain(flat(l.name.toLowerCase()))
    expect(words).toContain('1 × 375 ml, 24.00 EUR')
    expect(words).toMatch(/To be ordered by .*[Hh]ardwax oil/)
    expect(words).toMatch(/On the shelf already .*[Ss]ilicone sealant: 5\.02 m/)
    expect(words).toContain('things without a price')
  })
})

describe('every example', () => {
  it.each(['saltmarsh-panel', 'heron-table', 'meadow-boards'])(
    '%s prints whole, with its pictures',
    async name => {
      const planned = planOf(name)
      const drawn = drawnOf(planned)
      const read = await readPaper(runSheetPdf(runSheet(planned), drawn, 'A4'))
      expect(read.words).toContain(planned.plan.name)
      expect(read.pages[0]!.images).toBe(countImages(drawn.front.marks))
      for (const bytes of [
        sheetsPdf([sectionDrawing(planned)], { title: name, asOf: AS_OF }),
        carePdf(careOf(planned), drawn, 'A4')
      ])
        expect((await readPaper(bytes)).pages.length).toBeGreaterThan(0)
    }
  )

  it('a picture lies where its mark is, first row at the top, open where it is open', async () => {
    // Two pixels one over the other: the upper red, the lower open.
    const picture = {
      width: 1,
      height: 2,
      rgba: Uint8ClampedArray.of(255, 0, 0, 255, 0, 0, 255, 0),
      box: { minX: 0, minY: 0, maxX: 1, maxY: 2 }
    }
    const sheet: Sheet = {
      widthMm: 100,
      heightMm: 100,
      marks: [{ kind: 'image', href: 'picture:0', at: [20, 30], widthMm: 10, heightMm: 20 }]
    }
    const drawn = {
      front: sheet,
      back: sheet,
      section: { ...sheet, marks: [] },
      scale: 1,
      sectionScale: 1,
      pictures: [picture]
    }
    const bytes = carePdf({ ...careOf(planOf('saltmarsh-panel')), about: null }, drawn, 'A4')
    const { pages } = await readPaper(bytes)
    expect(pages[0]!.images).toBe(1)
    const [at] = pages[0]!.pictures
    expect(at!.widthMm).toBeCloseTo(10, 2)
    expect(at!.heightMm).toBeCloseTo(20, 2)
  })
})

describe('money and records on paper', () => {
  const shop = checkShop({ castwright: 1, rates: { labour: 30, tax: 20 } }, 'shop').value
  const piece = checkPiece(example('saltmarsh-panel'), 'piece')

  it('no sum stands without its label, and the client sees no cost', async () => {
    const quote = quoteOf(plan({ piece, shop }, { asOf: AS_OF, effort: 'preview' }), { asOf: AS_OF })
    const own = await readPaper(quotePdf('Panel', 'private', privateQuote(quote), null, 'A4', AS_OF))
    for (const page of own.pages)
      for (const { text } of page.texts)
        if (/\d EUR/.test(text))
          expect(text).toMatch(/[Cc]ost|[Pp]rice|Paid|Tax|Deposit|used|Hands|Machine|leaves|left for an hour/)
    const about = { sizeMm: [520, 220, 28], madeOf: ['Timber: ash.'], ready: '2026-12-30T08:34+01:00' }
    const parts = clientQuote({ ...quote, whole: true }, about)
    const given = await readPaper(quotePdf('Panel', 'quote', parts, null, 'letter', AS_OF))
    expect(given.words).toContain('Ready on 2026-12-30')
    expect(given.words).toContain('Price to the client with tax')
    expect(given.words).not.toMatch(/Cost to the shop|blank|Hands/)
  })

  it('what was made stands beside what was planned', async () => {
    const { readings } = readReadings(
      [
        { kind: 'poured', pour: 'reed green', mass: 431, id: 'made-0001', at: '2026-11-28T10:00+01:00' },
        { kind: 'height', pour: 'reed green', height: 13.2, id: 'made-0002', at: '2026-11-29T10:00+01:00' },
        {
          kind: 'moisture',
          timber: 'north bank',
          moisture: 9.4,
          id: 'made-0003',
          at: '2026-11-27T10:00+01:00',
          note: 'řezáno'
        },
        {
          kind: 'photo',
          photo: 'aaaaaaaaaaaaaaaaaaaaaaaa',
          step: 'pour reed green',
          note: 'foam at the rim',
          id: 'made-0004',
          at: '2026-11-28T10:20+01:00'
        },
        { kind: 'mixed', pour: 'reed green', lot: 'K2', id: 'made-0006', at: '2026-11-28T10:00+01:00' },
        {
          kind: 'note',
          step: 'demould',
          note: 'came out clean',
          id: 'made-0005',
          at: '2026-12-04T10:20+01:00'
        }
      ]
        .map(r => `${JSON.stringify(r)}\n`)
        .join(''),
      'readings'
    )
    const record = asMadeOf({ piece, shop, readings }, AS_OF)
    const green = record.pours.find(p => p.name.startsWith('reed green'))!
    expect(green.figures.map(f => [f.what, f.built])).toEqual([
      ['Mixed', null],
      ['Poured', '431 g'],
      ['Lot', 'K2'],
      ['Level as cast', '13.2 mm'],
      ['When', expect.stringContaining('28')]
    ])
    // The moment it was poured is no word of the plan.
    expect(green.figures.at(-1)!.planned).toBe('as the days had it')
    const { words } = await readPaper(asMadePdf(record, null, 'A4'))
    for (const said of ['431 g', '13.2 mm', '9.4 %', 'řezáno', 'not read', 'Otherwise than planned'])
      expect(words).toContain(said)
    // A photo that is not at hand is named, with its step and its note; so are the notes, and what was set.
    for (const said of [
      'pour reed green: foam at the rim',
      'aaaaaaaaaaaa',
      'demould: came out clean',
      'Settings'
    ])
      expect(words).toContain(said)
    expect(record.settings.length).toBeGreaterThan(3)
    expect(
      record.settings.find(s => s.what === 'wall keyhole' || /mm deep a pass|passes? of/.test(s.says))
    ).toBeDefined()
  })
})
