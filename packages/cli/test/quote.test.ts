import { mkdirSync, readdirSync, writeFileSync } from 'node:fs'
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
    expect(out).toMatch(/Hands \d+ h/)
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
})
