import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { plan } from '../../src/plan.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'

const file = join(import.meta.dirname, '../../../../examples/saltmarsh-panel.piece.json')
const saltmarsh = JSON.parse(readFileSync(file, 'utf8')) as PieceDocument

function sheetInput(piece: PieceDocument) {
  return {
    piece: checkPiece(piece, 'piece'),
    shop: checkShop({ castwright: 1, machine: { x: 800, y: 600 } }, 'shop').value
  }
}

function sheet(piece: PieceDocument) {
  const planned = plan(sheetInput(piece), { asOf: '2026-11-28T09:00+01:00', effort: 'preview' })
  const { work } = planned
  const of = (kind: string) =>
    work.steps.flatMap((s, i) =>
      s.kind === kind
        ? [{ detail: stepDetail(planned.plan, work, i), facts: stepFacts(planned.plan, work, i) }]
        : []
    )
  return { plan: planned.plan, work, of }
}

describe('pins on the run sheet', () => {
  const { plan: answer, work, of } = sheet(saltmarsh)
  const [drill] = of('drill pins')

  it('say where they stand, how wide and how deep, and how far the faces may miss', () => {
    expect(drill!.facts).toEqual(['2 pins, Ø 8 and 6', '599 apart', '20 deep'])
    const facts = drill!.detail.facts.map(f => `${f.label} ${f.value} ${f.unit}`)
    // 298 from the middle of a piece 520 long: 38 outside.
    expect(facts[0]).toBe('Pin 1 Ø 8 mm at x −298, y 0 mm, 38 mm outside the outline')
    expect(facts[1]).toBe('Hole Ø 8.06 mm, 20 deep; bed 20 mm')
    expect(facts.at(-1)).toMatch(/^The faces may miss by 0\.2\d? mm \(at most 0\.2\d; 0\.3 is borne\)$/)
    expect(drill!.detail.blanks.map(b => b.planned)).toEqual(['−298', '0', '301', '0'])
  })

  it('say which way it is turned over, and what a wrong turn would show', () => {
    const turns = of('turn over')
    const last = turns.at(-1)!
    expect(last.facts[0]).toBe('about the line from left to right: left stays left, onto the pins')
    expect(last.detail.does.join(' ')).toMatch(
      /Turned about the other line, upside-down left to right, it does not go on/
    )
    // Before the holes are drilled there is nothing to put it on.
    if (turns.length > 1) expect(turns[0]!.detail.does).toEqual([])
    const alike = sheet({ ...saltmarsh, pins: { diameter: 6 } })
    expect(alike.of('turn over').at(-1)!.detail.does.join(' ')).toMatch(
      /it goes on as well, upside-down left to right/
    )
  })

  it('say what to touch before the cut, and how the piece was found to lie', () => {
    const lines = (readings: readonly object[]) => {
      const given = { ...sheetInput(saltmarsh), readings: readings.map(r => readingSchema.parse(r)) }
      const { plan: p, work: w } = plan(given, { asOf: '2026-11-28T09:00+01:00', effort: 'preview' })
      const turn = w.steps.findLastIndex(s => s.kind === 'turn over')
      return stepDetail(p, w, turn).facts.map(f => `${f.label} ${f.value} ${f.unit}`)
    }
    const planned = lines([])
    expect(planned.filter(l => l.startsWith('Touch'))).toHaveLength(2)
    expect(planned.join()).not.toMatch(/Found turned|Thickness read/)
    // Front up, as drawn but for a shift of 0.4 and -0.2.
    const marks = [
      [-200, 50],
      [200, 50],
      [0, -60]
    ].map(([x, y]) => ({ drawn: [x, y], measured: [x! + 0.4, y! - 0.2] }))
    const read = lines([
      { id: 'r-place-0001', at: '2026-12-20T09:00Z', kind: 'place', face: 'front', marks },
      {
        id: 'r-thick-0001',
        at: '2026-12-20T09:05Z',
        kind: 'thickness',
        thickness: work.stack.finishedHigh - work.stack.finishedLow + 0.3
      }
    ])
    expect(read).toContain('Found turned by 0 °')
    expect(read).toContain('shifted x 0.4, y −0.2 mm')
    expect(read.join()).toMatch(/Thickness read/)
  })

  it('stand in the plan; a piece without any has none', () => {
    expect(answer.pins!.pins.map(p => p.x)).toEqual(work.pins.pins.map(p => p.x))
    const plain = sheet({ ...saltmarsh, cuts: [], markings: [], hardware: [] })
    expect(plain.plan.pins).toBeNull()
    expect(plain.of('drill pins')).toEqual([])
  })
})
