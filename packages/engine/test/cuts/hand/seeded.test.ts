import { describe, expect, it } from 'vitest'
import { templatesOf } from '../../../src/cuts/hand/template.ts'
import { difference } from '../../../src/shape/combine.ts'
import { area, bounds } from '../../../src/shape/measure.ts'
import { offset } from '../../../src/shape/offset.ts'
import { templateSheets } from '../../../src/sheets/template-sheet.ts'
import { worked } from '../../cases/asked.ts'
import { soundPiece } from '../../findings/sound-piece.ts'
import { chance } from '../../stack/random.ts'

/** Seeded pieces whose cuts are made by hand, each by a way drawn at random. More with CASTWRIGHT_HAND. */
const COUNT = Number(process.env['CASTWRIGHT_HAND'] ?? 25)
const WAYS = ['router', 'drill', 'saw', 'sled', 'sent out'] as const

describe('seeded pieces by hand', () => {
  it(`${COUNT} of them: every cut has a tool or a reason, its numbers agree, its sheets hold it`, () => {
    for (let seed = 1; seed <= COUNT; seed++) {
      const c = chance(seed + 7000)
      const piece = soundPiece(seed)
      for (const cut of piece.cuts ?? []) cut.way = c.is(0.6) ? 'router' : c.pick(WAYS)
      for (const m of piece.markings ?? []) m.way = c.pick(['router', 'sent out'] as const)
      const work = worked({ piece })
      expect(work.steps.some(s => s.kind === 'drill pins')).toBe(false)
      for (const h of work.hand) {
        expect(
          (h.doing === null) === (h.cannot !== null || h.way === 'sent out'),
          `seed ${seed}: ${h.id}`
        ).toBe(true)
        const chosen = h.ways.find(w => w.way === h.way)
        if (h.of !== 'flatten') expect(chosen?.possible ?? true).toBe(h.cannot === null)
        const d = h.doing
        if (d === null) continue
        expect(d.minutes).toBeGreaterThan(0)
        if (d.passes !== null) {
          expect(d.passes.count * d.passes.eachMm).toBeCloseTo(h.depthMm, 9)
          if (h.way === 'router' && d.bushMm !== null) expect(d.passes.eachMm).toBeLessThanOrEqual(3.2 + 1e-9)
        }
        if (d.bushMm !== null && d.bitMm !== null) expect(d.offsetMm).toBe((d.bushMm - d.bitMm) / 2)
      }
      for (const t of templatesOf({ ...work, timbers: work.materials.timbers }, work.hand)) {
        if (t.kind === 'opening') {
          const h = work.hand.find(x => t.name.startsWith(x.id))!
          const { bushMm, bitMm } = h.doing!
          // The bit sweeps nothing beyond the cut.
          const round = { join: 'round', tolMm: 0.005 } as const
          const swept = offset(offset(t.cutOut, -bushMm! / 2, round), bitMm! / 2, round)
          expect(area(difference(swept, offset(t.drawn, 0.05, round)))).toBeLessThan(0.01)
        }
        const sheets = templateSheets(t, 'a piece', 'A4')
        expect(sheets.length).toBeGreaterThan(0)
        const b = bounds(t.cutOut)
        if (Number.isFinite(b.minX)) expect(b.maxX - b.minX).toBeLessThanOrEqual(sheets.length * 297)
      }
    }
  })
})
