import { describe, expect, it } from 'vitest'
import type { Plan } from '../../src/plan.ts'
import { BUY_COLUMNS, buyCsv } from '../../src/sheets/buy-csv.ts'
import { BOARDS, PANEL, planOf, SHOP, TABLE } from './pieces.ts'

/** A reader of RFC 4180 sign by sign, as its grammar says: field, escaped field, CRLF. Throws at anything else. */
function parse(text: string): string[][] {
  const rows: string[][] = []
  let row: string[] = []
  let i = 0
  while (i < text.length) {
    let field = ''
    if (text[i] === '"') {
      i++
      for (;;) {
        if (i >= text.length) throw new Error('a quote that is not closed')
        if (text[i] !== '"') field += text[i++]
        else if (text[i + 1] === '"') {
          field += '"'
          i += 2
        } else break
      }
      i++
    } else {
      while (i < text.length && text[i] !== ',' && text[i] !== '\r') {
        if (text[i] === '"' || text[i] === '\n') throw new Error(`a bare ${JSON.stringify(text[i])} at ${i}`)
        field += text[i++]
      }
    }
    row.push(field)
    if (text[i] === ',') i++
    else if (text[i] === '\r' && text[i + 1] === '\n') {
      rows.push(row)
      row = []
      i += 2
    } else throw new Error(`neither comma nor line end at ${i}`)
  }
  if (row.length > 0) throw new Error('a last line without its end')
  return rows
}

const column = (name: (typeof BUY_COLUMNS)[number]) => BUY_COLUMNS.indexOf(name)
/** What a spreadsheet shows: a leading apostrophe marks text. */
const shown = (cell: string) => (cell.startsWith("'") ? cell.slice(1) : cell)

describe('the buy list as CSV', () => {
  it('read back holds every line of the plan', () => {
    for (const piece of [PANEL, TABLE, BOARDS]) {
      const { plan } = planOf(piece)
      const [head, ...rows] = parse(buyCsv(plan))
      expect(head).toEqual([...BUY_COLUMNS])
      expect(rows).toHaveLength(plan.buy.length)
      plan.buy.forEach((l, i) => {
        const cell = (name: (typeof BUY_COLUMNS)[number]) => rows[i]![column(name)]!
        expect(rows[i]).toHaveLength(BUY_COLUMNS.length)
        expect(cell('what')).toBe(l.name)
        expect(cell('id')).toBe(l.item)
        expect(cell('for what')).toBe(l.group)
        expect(Number(cell('need'))).toBeCloseTo(l.need, 2)
        expect(Number(cell('with spare'))).toBeCloseTo(l.withSpare, 2)
        expect(Number(cell('in stock'))).toBeCloseTo(l.stock, 2)
        expect(Number(cell('buy'))).toBeCloseTo(l.buy, 2)
        expect(cell('unit')).toBe(l.unit)
        expect(cell('cost') === '' ? null : Number(cell('cost'))).toBe(l.cost)
        expect(cell('currency')).toBe(plan.totals.currency)
        expect(cell('note')).toBe(l.note)
        const pack = l.packs[0]
        if (pack !== undefined) {
          expect(Number(cell('packs')) * Number(cell('pack size'))).toBeCloseTo(l.buy, 6)
          expect(cell('pack unit')).toBe(l.unit)
          expect(Number(cell('price per pack'))).toBe(pack.price)
        }
      })
    }
  })

  it('gives packs of several sizes rows of their own, so that need and cost still add up', () => {
    const { plan } = planOf(
      { ...TABLE, pours: TABLE.pours.map(p => ({ ...p, resin: 'river' })) },
      {},
      {
        ...SHOP,
        resins: [
          {
            id: 'river',
            like: 'deep',
            packs: [
              { mass: 1500, price: 40 },
              { mass: 3000, price: 70 }
            ]
          }
        ]
      }
    )
    const line = plan.buy.find(l => l.item === 'river')!
    expect(line.packs.length).toBe(2)
    const rows = parse(buyCsv(plan)).filter(r => r[column('id')] === 'river')
    const sum = (name: 'need' | 'buy' | 'cost') => rows.reduce((s, r) => s + Number(r[column(name)]), 0)
    expect(rows).toHaveLength(2)
    expect(sum('need')).toBeCloseTo(line.need, 2)
    expect(sum('buy')).toBeCloseTo(line.buy, 2)
    expect(sum('cost')).toBe(line.cost)
  })

  it('ends every line in CR LF and quotes what must be quoted', () => {
    const text = buyCsv(planOf(PANEL).plan)
    expect(text.endsWith('\r\n')).toBe(true)
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/)
    expect(text).toContain('"ash, white: north bank"')
    expect(text.startsWith('what,id,for what,need')).toBe(true)
  })

  it('lets no word be a formula, and gives every word back', () => {
    const { plan } = planOf(TABLE)
    const bad = [
      "=cmd|' /C calc'!A0",
      '+1',
      '-1',
      '@SUM(A1)',
      ' =1',
      '\t=1',
      '\r=1',
      "'=1",
      '＝1',
      'a"b,c\r\nd',
      'plain',
      ' x '
    ]
    const hostile: Plan = {
      ...plan,
      totals: { ...plan.totals, currency: '=1' },
      buy: bad.map(item => ({ ...plan.buy[0]!, item, name: item, note: item, packs: [] })),
      despite: [{ id: '=1', because: '@x\n"y"' }]
    }
    const rows = parse(buyCsv(hostile)).slice(1)
    bad.forEach((item, i) => {
      for (const name of ['what', 'id', 'note'] as const) {
        const cell = rows[i]![column(name)]!
        expect(cell, JSON.stringify(item)).not.toMatch(/^\s*[=+\-@＝]/)
        expect(shown(cell)).toBe(item)
      }
      expect(rows[i]![column('currency')]).toBe("'=1")
    })
    expect(rows[bad.length]![0]).toBe('gone on despite =1')
    expect(rows[bad.length]!.at(-1)).toBe('because: @x\n"y"')
    expect(rows).toHaveLength(bad.length + 1)
  })
})
