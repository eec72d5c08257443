import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { readPiece, readShop } from '../../src/piece/read.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { restarted } from '../../src/programs/restarted.ts'
import { readProgram } from '../../src/proving/read/read-program.ts'
import { machineCards } from '../../src/sheets/machine-card.ts'
import { workOf } from '../../src/work.ts'
import { scan } from '../cuts/write/scan.ts'

const folder = join(import.meta.dirname, '../../../../examples')
const read = (name: string) => readFileSync(join(folder, name), 'utf8')
const work = workOf({
  piece: readPiece(read('meadow-boards.piece.json'), 'piece'),
  shop: readShop(read('workshop.shop.json'), 'shop').value,
  effort: 'preview'
})
const set = programSet(machiningOf(work)!)

describe('the programs of an example', () => {
  it('hold to the words the writer may use, with their test cuts and air cuts', () => {
    expect(set.programs.length).toBeGreaterThan(2)
    for (const p of set.programs) {
      for (const text of [p.written.text, p.test?.written.text, p.air?.written.text])
        if (text !== undefined) expect(() => scan(text), p.file).not.toThrow()
      expect(new Set(set.programs.map(x => x.file)).size).toBe(set.programs.length)
    }
  })

  it('begin anew at each of their passes, and read back', () => {
    for (const p of set.programs) {
      const passes = p.written.passes.length
      expect(passes, p.file).toBeGreaterThan(0)
      for (const n of new Set([1, Math.ceil(passes / 2), passes])) {
        const again = restarted(set, p.file, String(n), ['Gone on despite a stop'])
        expect(again.file).toBe(p.file.replace(/\.nc$/, `-from-pass-${n}.nc`))
        expect(again.written.passes).toHaveLength(passes - n + 1)
        expect(readProgram(again.written.text).complaints).toEqual([])
        expect(again.written.text).toContain('(RESTART: ')
        expect(again.written.text).toContain('(Note: Gone on despite a stop)')
        expect(again.minutes).toBeLessThanOrEqual(p.minutes + 0.2)
      }
    }
  })

  it('offer the nearest where a name is not there', () => {
    const { file } = set.programs[0]!
    expect(() => restarted(set, file.replace('0', 'o'), '1')).toThrow(`nearest: ${file}`)
    expect(() => restarted(set, 'x', '1')).toThrow(/allowed: .*\.nc/)
    expect(() => restarted(set, file, '999')).toThrow(/allowed: 1 to/)
  })
})

describe('the card at the machine', () => {
  const finding = {
    id: 'x', severity: 'caution' as const, about: 'a', says: `${set.programs[0]!.file} line 9: it rubs.`, value: 1, unit: 'mm',
    limit: 1, basis: 'b', at: ''
  } // biome-ignore format: a finding
  const text = machineCards(set, 'Meadow *boards*', [finding as never])

  it('names every program once in order, behind its test cut and its air cut', () => {
    let at = 0
    for (const p of set.programs) {
      for (const f of [p.test?.file, p.air?.file, p.file]) {
        if (f === undefined) continue
        const here = text.indexOf(`**${f}**`, at)
        expect(here, f).toBeGreaterThan(at)
        at = here
      }
      expect(text.split(`**${p.file}**`)).toHaveLength(2)
    }
  })

  it('says lie, zero, checks, what stands, and the safety lines', () => {
    expect(text).toContain('# At the machine: Meadow \\*boards\\*')
    for (const on of set.machining.settings)
      if (set.programs.some(p => p.made[0]!.operation.setting === on.setting.index))
        expect(text).toContain(on.setting.up === 'front' ? '## Front up' : '## Back up')
    for (const z of set.programs[0]!.input.zero) expect(text).toContain(z)
    expect(text).toMatch(/- \[ \] Height set anew after every cutter/)
    expect(text).toContain('**Caution.** ')
    expect(text).toMatch(/> \*\*Safety\.\*\* .*\*Gives way to the manual of the machine/)
    expect(text).not.toMatch(/food safe|safe to run/i)
  })
})
