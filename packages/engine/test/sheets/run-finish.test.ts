import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'
import { stepDetail } from '../../src/sheets/run-step.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { PLAIN } from '../findings/harness.ts'
import { planOf } from './pieces.ts'

const finished = (more: Partial<PieceDocument>) => planOf({ ...PLAIN, ...more })
const at = ({ plan }: ReturnType<typeof planOf>, says: RegExp) => plan.steps.findIndex(s => says.test(s.says))
const detail = (p: ReturnType<typeof planOf>, says: RegExp) => stepDetail(p.plan, p.work, at(p, says))
const words = (p: ReturnType<typeof planOf>, says: RegExp) => {
  const d = detail(p, says)
  return [...d.does, ...d.facts.map(f => `${f.label} ${f.value} ${f.unit}`)].join('\n')
}

describe('sanding on the sheets', () => {
  const p = finished({ finish: { both: { coat: 'oil-varnish', gloss: 'satin' } } })

  it('stands where a face is flattened last: every grade of the plan, coarse to fine', () => {
    const { sanding } = detail(p, /^Flatten the front/)
    const grades = p.plan.faces[0]!.sanding!.grades
    expect(sanding!.title).toBe('Sanding, disc of 150 mm')
    expect(sanding!.rows.map(r => r[0])).toEqual(grades.map(g => `P${g.grit}`))
    expect(sanding!.rows.map(r => r[1])).toEqual(grades.map(g => String(g.passes)))
    expect(words(p, /^Flatten the front/)).toMatch(/all marks of the sled/)
    expect(words(p, /^Flatten the front/)).toMatch(/paper marked 320 without a P has the grain of P400/)
    expect(detail(p, /^Coat/).sanding).toBeNull()
  })

  it('in few words on the job card', () => {
    const facts = stepFacts(p.plan, p.work, at(p, /^Flatten the back/))
    expect(facts.join()).toMatch(/sand P80 to P320, \d+ min/)
  })

  it('just before the coat where nothing flattens, both faces once', () => {
    const board = finished({ flatten: { back: 0, front: 0 } })
    const d = detail(board, /^Coat/)
    expect(d.sanding!.title).toBe('Sanding, disc of 150 mm, each face')
    expect(d.sanding!.rows.at(-1)![0]).toBe('P240')
    expect(d.does.join()).toMatch(/all marks of the planer/)
  })

  it('says of resin to be polished where water and pastes begin, with the line for wet sanding', () => {
    const clear = finished({
      timbers: [],
      pours: [{ id: 'clear', resin: 'deep', depth: 20 }],
      finish: { both: { coat: 'none', gloss: 'polished' } }
    })
    expect(words(clear, /^Flatten the front/)).toMatch(/From P(600|800) wet.*\n.*pastes of 3 and 1 µm/)
    const lines = clear.plan.steps[at(clear, /^Flatten the front/)]!.safety.map(s => s.line).join(' ')
    expect(lines).toMatch(/No mains tool near the water/)
    expect(lines).not.toMatch(/Dust of hardwoods/)
  })

  it('and in print', () => {
    const md = runSheetMarkdown(p)
    expect(md).toMatch(/\| Grit \| Passes \| Minutes \| Discs \|/)
    expect(md).toMatch(/\| Coat \| Wet, µm \| Dry, µm \| Have ready, ml \| Minutes \|/)
  })
})

describe('coats on the sheets', () => {
  it('each with films, amount and minutes; the gloss that was asked for', () => {
    const p = finished({ finish: { both: { coat: 'oil-varnish', coats: 3, gloss: 'satin' } } })
    const { table } = detail(p, /^Coat/)
    // Table of practice: 60 to 100 µm wet, 25 to 50 dry. 0.06 m² and half an edge of 18 mm × 1 m, 100 µm, 0.9.
    expect(table!.rows[0]!.slice(0, 3)).toEqual(['Each face: each of 3 coats', '60 to 100', '25 to 50'])
    const thick = p.plan.totals.sizeMm[2]
    expect(Number(table!.rows[0]![3])).toBeCloseTo(((0.06 + (1 * thick) / 2000) * 100) / 0.9, 0)
    expect(words(p, /^Coat/)).toMatch(/Each face, gloss satin 18 to 45 at 60°/)
    expect(words(p, /^Coat/)).toMatch(/On the edge at most 100 µm wet/)
    expect(stepFacts(p.plan, p.work, at(p, /^Coat/)).join()).toMatch(/3 coats,.* of work/)
  })

  it('a flood coat with its dam, how level the face must lie, and what the bench makes of it', () => {
    const p = finished({
      mould: { margin: 6, bearers: 250, corners: [0, 0.6, 0.6, 0] },
      finish: { both: { coat: 'flood-coat', film: 4, coats: 1, dam: 7 } }
    })
    const text = words(p, /^Coat/)
    expect(text).toMatch(/Poured 4\.1 mm thick/)
    expect(text).toMatch(/Stands by itself 2\.5 to 2\.9 mm/)
    expect(text).toMatch(/Dam 7 mm over the face/)
    expect(text).toMatch(/Level the face within 1\.4 mm\/m/)
    expect(text).toMatch(/The bench by its corners 0\.6 mm deeper/)
  })

  it('a flood among the pours too, and on the job card', () => {
    const p = finished({
      pours: [...PLAIN.pours, { id: 'gloss', kind: 'flood', face: 'front', resin: 'thin', depth: 5, dam: 8 }],
      finish: { back: { coat: 'epoxy-seal' } }
    })
    expect(words(p, /^Pour gloss|gloss/)).toMatch(/Dam 8 mm over the face/)
    const facts = stepFacts(p.plan, p.work, at(p, /gloss/))
    expect(facts).toContain('dam 8')
    expect(facts.join()).toMatch(/level within 1\.\d mm\/m/)
  })

  it('a face that meets food needs written compliance, and nothing is called safe', () => {
    const p = finished({ food: 'back' })
    expect(words(p, /^Coat/)).toMatch(/The back meets food: needs written compliance for the exact product/)
    expect(p.plan.steps[at(p, /^Coat/)]!.safety.map(s => s.line).join()).toMatch(/written compliance/)
    expect(words(finished({}), /^Coat/)).not.toMatch(/food/)
    expect(runSheetMarkdown(p).toLowerCase()).not.toMatch(/food[ -]?safe|is safe|safe to /)
  })
})
