import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { careOf } from '../../src/sheets/care.ts'

const EXAMPLES = join(import.meta.dirname, '../../../../examples')
const example = (name: string) =>
  JSON.parse(readFileSync(join(EXAMPLES, `${name}.piece.json`), 'utf8')) as object
const files = { 'heron-table.svg': readFileSync(join(EXAMPLES, 'heron-table.svg'), 'utf8') }
const care = (piece: object) =>
  careOf(
    plan(
      { piece: checkPiece(piece, 'piece'), shop: usualShop(), files },
      { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
    )
  )
const said = (piece: object) =>
  care(piece)
    .sections.flatMap(s => s.lines.map(l => l.says))
    .join('\n')

describe('care of the finished piece', () => {
  it.each(['saltmarsh-panel', 'heron-table', 'meadow-boards'])(
    '%s: every line says what it rests on, none claims strength or food',
    name => {
      const c = care(example(name))
      for (const s of c.sections)
        for (const l of s.lines) {
          expect(l.basis.length).toBeGreaterThan(5)
          expect(l.says).not.toMatch(/food.safe|safe to|NaN|undefined|guarantee/i)
        }
      expect(c.madeOf.join(' ')).toContain('It weighs')
    }
  )

  it('names the temperature at which its resin softens, the unfavourable end', () => {
    const planned = plan(
      { piece: checkPiece(example('saltmarsh-panel'), 'piece'), shop: usualShop() },
      { asOf: '2026-01-05T08:00:00Z', effort: 'preview' }
    )
    const least = Math.min(...planned.work.casts.flatMap(c => c?.windows.tgC.band[0] ?? []))
    expect(said(example('saltmarsh-panel'))).toContain(`softens from about ${Math.floor(least)}`)
  })

  it('a face that meets food gets the line that makes no claim', () => {
    expect(said(example('saltmarsh-panel'))).not.toContain('no claim about food')
    expect(said({ ...example('saltmarsh-panel'), food: 'front' })).toContain('no claim about food')
  })
})
