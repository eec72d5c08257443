import { appendFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { put, at } = testFolder()
const piece = put('sound.piece.json', JSON.stringify(SOUND))
const shop = put(
  'priced.json',
  JSON.stringify({ castwright: 1, currency: 'EUR', rates: { labour: 30, machine: 10, tax: 20 } })
)
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']

describe('castwright quote', () => {
  it('no sum of money stands without its label', () => {
    const { out, code } = answer(['quote', piece, '--shop', shop, ...AS_OF])
    expect(code).toBe(0)
    const sums = out.split('\n').filter(l => /\d EUR/.test(l))
    expect(sums.length).toBeGreaterThan(8)
    for (const l of sums) expect(l, l).toMatch(/Cost|cost|price|Price|Paid|Tax|Deposit|used|Hands|Machine/)
    expect(out).toContain('Without a price or a rate')
    expect(out).toContain('at least')
  })

  it('without any price or rate there is no sum, and minutes alone', () => {
    const { out, code } = answer(['quote', piece, '--shop', put('bare.json', '{"castwright":1}'), ...AS_OF])
    expect(code).toBe(0)
    expect(out).toContain('No price and no rate is known')
    expect(out).toMatch(/your hands, \d+ h/)
    expect(out).not.toMatch(/\d EUR/)
  })

  it('the client is quoted nothing that lacks a price; a wrong count is refused', () => {
    const refused = answer(['quote', piece, '--client', '--shop', shop, ...AS_OF])
    expect(refused.code).toBe(2)
    expect(refused.err).toContain('no price or rate for')
    expect(answer(['quote', piece, '--count', '0', ...AS_OF]).err).toContain('a whole number from 1')
  })

  it('writes beside what lies there', () => {
    const folder = at('q')
    mkdirSync(folder)
    writeFileSync(join(folder, 'keep.txt'), 'kept')
    expect(answer(['quote', piece, '--json', '--out', join(folder, 'quote.json'), ...AS_OF]).code).toBe(0)
    expect(readdirSync(folder).sort()).toEqual(['.castwright.json', 'keep.txt', 'quote.json'])
  })

  it('a quote that was kept is held against what was read since: minutes, mixed, used, learned', () => {
    const folder = at('kept')
    mkdirSync(folder)
    const own = put('kept/own.piece.json', JSON.stringify(SOUND))
    const log = join(folder, 'own.readings.jsonl')
    const prices = put(
      'kept.json',
      JSON.stringify({
        castwright: 1,
        rates: { labour: 30, machine: 10 },
        prices: [{ item: 'hardwax-oil', unit: 'ml', price: 0.1 }],
        resins: [{ id: 'deep', like: 'deep', packs: [{ mass: 1000, price: 30 }] }]
      })
    )
    const quote = (...more: string[]) => answer(['quote', own, '--shop', prices, ...more])
    const { err } = quote('--keep', '--as-of', '2026-11-20T09:00+01:00')
    expect(err).toContain('kept in')
    const kept = JSON.parse(readFileSync(log, 'utf8')) as {
      lines: { name: string; item?: string; group: string; amount: number; coins?: number }[]
      steps: { step: string; minutes: number }[]
    }
    const step = kept.steps.find(s => s.step === 'coat both')!
    const pour = SOUND.pours[0]!
    const resin = kept.lines.find(l => l.item === pour.resin)!
    const reading = (k: number, what: object) =>
      JSON.stringify({ id: `r-0000000${k}`, at: `2026-11-2${k}T10:00:00Z`, ...what })
    const mixed = Math.round(resin.amount) + 200
    appendFileSync(
      log,
      [
        reading(1, { kind: 'mixed', pour: pour.id, mass: mixed }),
        reading(2, { kind: 'poured', pour: pour.id, mass: mixed * 0.9 }),
        reading(3, { kind: 'done', step: step.step, minutes: 2 * step.minutes }),
        reading(4, { kind: 'used', item: 'hardwax-oil', amount: 50 }),
        ''
      ].join('\n')
    )
    const late = ['--as-of', '2026-12-20T09:00+01:00']
    const { out, code } = quote('--actual', ...late)
    expect(code).toBe(0)
    // By hand: twice the minutes at 30 an hour; 200 g more of resin at 30 a kilogram; a tenth of the mix left behind.
    const { steps, material, leftoverPct, quotedCoins, actualCoins } = JSON.parse(
      quote('--actual', '--json', ...late).out
    ) as Record<string, never>
    const line = (of: unknown, name: string) =>
      (of as { name: string; actual: number; quotedCoins: number; actualCoins: number }[]).find(
        l => l.name === name
      )!
    const sand = line(steps, step.step)
    expect(sand.actualCoins).toBe(Math.round(2 * step.minutes * 50))
    expect(sand.quotedCoins).toBe(Math.round(step.minutes * 50))
    const used = line(material, resin.name)
    expect(used.actual).toBe(mixed)
    expect(Math.abs(used.actualCoins - used.quotedCoins - 3 * (mixed - resin.amount))).toBeLessThanOrEqual(1)
    const oil = line(material, kept.lines.find(l => l.item === 'hardwax-oil')!.name)
    expect(oil).toMatchObject({ actual: 50, actualCoins: 500 })
    expect(leftoverPct).toBeCloseTo(10, 9)
    expect(Number(actualCoins) - Number(quotedCoins)).toBe(
      [sand, used, oil].reduce((t, l) => t + l.actualCoins - l.quotedCoins, 0)
    )
    expect(out).toContain(`${step.step}: quoted`)
    expect(out).toContain('100 % more')
    expect(out).toMatch(/coat: 1\.\d+ times what was reckoned, from 1 record/)
    expect(out).toContain('10 % stayed in the vessels')
    expect(quote('--actual', '--client', ...late).code).toBe(2)
  })

  it('several pieces are bought for together: packs for the sum, each at what it uses', () => {
    const other = put('other.piece.json', JSON.stringify({ ...SOUND, name: 'another panel' }))
    const prices = put(
      'together.json',
      JSON.stringify({
        castwright: 1,
        rates: { labour: 30 },
        prices: [{ item: 'hardwax-oil', unit: 'ml', pack: 1000, price: 50 }]
      })
    )
    const of = (...args: string[]) => answer(['quote', ...args, '--shop', prices, ...AS_OF])
    const { out, code } = of(piece, other)
    expect(code).toBe(0)
    expect(out).toContain('Buy together')
    // One litre of oil for both, 50; by themselves one each.
    expect(out).toMatch(
      /Hardwax oil: needed \d+ ml, buy 1 × 1000 ml: cost 50\.00 EUR \(a plain panel \d+ ml, another panel \d+ ml/
    )
    expect(out).toMatch(/Paid for packs and their delivery: at least 50\.00 EUR/)
    expect(out).toContain('Each bought for by itself costs 100.00 EUR: 50.00 EUR more')
    expect(of(piece, piece).err).toContain('each piece once')
    expect(of(piece, other, '--client').err).toContain('--client: one')
  })
})
