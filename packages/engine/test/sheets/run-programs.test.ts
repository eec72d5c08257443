import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import type { ShopDocument } from '../../src/piece/shop-schema.ts'
import { plan } from '../../src/plan.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { runSheet } from '../../src/sheets/run-sheet.ts'
import { runSheetHtml } from '../../src/sheets/run-sheet-html.ts'
import { runSheetMarkdown } from '../../src/sheets/run-sheet-md.ts'

const examples = join(import.meta.dirname, '../../../../examples')
const read = (name: string) => JSON.parse(readFileSync(join(examples, name), 'utf8'))
const WORKSHOP: ShopDocument = read('workshop.shop.json')
const files = { 'heron-table.svg': readFileSync(join(examples, 'heron-table.svg'), 'utf8') }
const planned = (name: string, shop: ShopDocument) =>
  plan(
    {
      piece: checkPiece(read(`${name}.piece.json`), 'piece'),
      shop: checkShop(shop, 'shop').value,
      readings: [],
      files
    },
    { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }
  )

describe('programs on the run sheet', () => {
  for (const name of ['saltmarsh-panel', 'meadow-boards', 'heron-table']) {
    it(`${name}: every program stands in the list and at its step, with what goes before it`, () => {
      const p = planned(name, WORKSHOP)
      const set = programSet(machiningOf(p.work)!)
      const sheet = runSheet(p, { programs: set })
      expect(sheet.written).toBe(true)
      expect(sheet.programs!.rows.map(r => r[0])).toEqual(set.programs.map(f => f.file))
      const markdown = runSheetMarkdown(p, { programs: set })
      const page = runSheetHtml(p, { programs: set })
      for (const f of set.programs) {
        const step = p.work.steps[f.made[0]!.operation.step]!.number
        const at = sheet.steps.find(s => s.number === step)!
        const values = at.facts.map(x => x.value)
        expect(values).toContain(f.file)
        if (f.air !== null) expect(values).toContain(f.air.file)
        if (f.test !== null) expect(values).toContain(f.test.file)
        expect(page).toContain(f.file)
        expect(markdown).toContain(f.file)
      }
      // What it is counted from stands once a setting.
      const zero = set.programs[0]!.input.zero[0]!
      expect(sheet.steps.filter(s => s.does.includes(zero))).toHaveLength(1)
    })

    it(`${name}: where nothing runs on a machine there is no talk of programs or what they are counted from`, () => {
      const p = planned(name, { castwright: 1 })
      expect(machiningOf(p.work)).toBeNull()
      expect(runSheet(p).programs).toBeNull()
      const text = runSheetMarkdown(p)
      expect(text.match(/\b(?:programs?|X0 Y0|Z0|test cut|air cut)\b.*/gi) ?? []).toEqual([])
    })
  }
})
