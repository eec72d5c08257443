import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { applyPatch, invertPatch } from '../../src/piece/patch.ts'
import { checkPiece, readPiece, readShop } from '../../src/piece/read.ts'
import { TROUBLES } from '../../src/piece/reading-schema.ts'
import { plan } from '../../src/plan.ts'
import { rescues } from '../../src/rescue/rescues.ts'

const folder = join(import.meta.dirname, '../../../../examples')
const text = (name: string) => readFileSync(join(folder, name), 'utf8')
const shop = readShop(text('workshop.shop.json'), 'workshop').value
const files = Object.fromEntries(
  readdirSync(folder)
    .filter(f => f.endsWith('.svg'))
    .map(f => [f, text(f)])
)
const ASK = { asOf: '2026-12-05T08:00+01:00', effort: 'quick' as const }

/** Every trouble asked about on each example as it is drawn, nothing read: what is offered can be planned. */
describe.each(['saltmarsh-panel', 'heron-table', 'meadow-boards'])('%s', name => {
  const source = `${name}.piece.json`
  const input = { piece: readPiece(text(source), source), shop, files, source, effort: 'preview' as const }
  it.each([...TROUBLES])('%s', what => {
    const [rescue] = rescues(input, {
      ...ASK,
      what,
      ...(what === 'bubble' ? { answers: { at: '20,10' } } : {})
    })
    const { ways, closed } = rescue!
    // What the piece does not have cannot go wrong.
    const absent = closed.every(c => /^(the piece has no|no layer is left)/.test(c.why))
    expect(ways.length > 0 || absent, closed.map(c => c.why).join('; ')).toBe(true)
    if (absent) return
    expect(ways.length + closed.length).toBeGreaterThan(2)
    for (const c of closed) expect(c.why).not.toContain('cannot be planned')
    for (const w of ways) {
      const after = applyPatch(input.piece.document, w.patch)
      expect(applyPatch(after, invertPatch(input.piece.document, w.patch))).toEqual(input.piece.document)
    }
    // The first of them, planned by itself.
    const first = ways[0]!
    const again = plan(
      { ...input, piece: checkPiece(applyPatch(input.piece.document, first.patch), 'again') },
      { asOf: ASK.asOf, effort: 'preview' }
    ).plan
    expect(first.after).toEqual(again.totals)
  })
})
