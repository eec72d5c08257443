import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { testFolder } from './folder.ts'

const readme = readFileSync(join(import.meta.dirname, '..', '..', '..', 'README.md'), 'utf8')
const blocks = [...readme.matchAll(/```json\n([\s\S]*?)```/g)].map(m => m[1]!)
const { put } = testFolder()
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']

describe('the README', () => {
  const pieces = blocks.filter(b => b.includes('"outline"'))
  const shop = blocks.find(b => b.includes('"scale"'))!
  const reading = blocks.find(b => b.includes('"kind": "moisture"'))!

  it('begins with a piece of ten lines that has nothing against it', () => {
    expect(pieces[0]!.trim().split('\n').length).toBeLessThanOrEqual(10)
    const { out, code } = answer(['check', put('first.piece.json', pieces[0]!), ...AS_OF])
    expect(code).toBe(0)
    expect(out).toContain('Nothing stands against it.')
  })

  it('holds pieces, a shop and a reading that can be used', () => {
    expect(pieces.length).toBeGreaterThanOrEqual(2)
    const shopFile = put('my.shop.json', shop)
    const readings = put('my.jsonl', reading)
    const cards = put('cards.shop.json', blocks.find(b => b.includes('"cards"'))!)
    for (const [i, text] of pieces.entries()) {
      const args = ['check', put(`piece${i}.piece.json`, text), '--shop', shopFile, ...AS_OF]
      expect(answer(args).code, answer(args).err).toBe(0)
    }
    const clock = put('clock.piece.json', pieces[1]!)
    expect(answer(['check', clock, '--readings', readings, ...AS_OF]).code).toBe(0)
    expect(answer(['check', clock, '--shop', cards, ...AS_OF]).code).toBe(0)
  })

  it('names commands and kinds that are there', () => {
    for (const [, line] of readme.matchAll(/^npx castwright (.*)$/gm)) {
      const word = line!.split(' ')[0]!
      expect(answer(['help', word]).out, word).toContain(
        `castwright ${word}`.replace('castwright help', 'castwright')
      )
    }
  })

  it('promises no safety', () => {
    expect(readme).not.toMatch(/food safe|food-safe|safe to run/i)
  })
})
