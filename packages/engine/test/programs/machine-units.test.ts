import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { readPiece, readShop } from '../../src/piece/read.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { readProgram } from '../../src/proving/read/read-program.ts'
import { machineCards } from '../../src/sheets/machine-card.ts'
import { programsPart } from '../../src/sheets/page-programs.ts'
import { detail } from '../../src/sheets/run-part.ts'
import { programTable, withPrograms } from '../../src/sheets/run-programs.ts'
import { workOf } from '../../src/work.ts'

/** Exact by definition (international yard and pound, 1959; NIST SP 811 appendix B.8). */
const INCH_MM = 25.4

const folder = join(import.meta.dirname, '../../../../examples')
const read = (name: string) => readFileSync(join(folder, name), 'utf8')

/** The programs of an example in a shop of such units, on a machine of such a dialect. */
function made(units: object, program: object = {}) {
  const shop = JSON.parse(read('workshop.shop.json'))
  const own = { ...shop, units, machine: { ...shop.machine, program } }
  const work = workOf({
    piece: readPiece(read('saltmarsh-panel.piece.json'), 'piece'),
    shop: readShop(JSON.stringify(own), 'shop').value,
    effort: 'preview'
  })
  const set = programSet(machiningOf(work)!)
  return { set, card: machineCards(set, 'Panel', []) }
}

const metric = made({})
const inInches = made({ length: 'in' })

/** What stands behind X, Y or Z in a text, in its order. */
const posted = (text: string) => [...text.matchAll(/\b[XYZ](-?\d+(?:\.\d+)?)/g)].map(m => Number(m[1]))

describe('the card at a machine in mm, in a shop in inches', () => {
  it('says which figures are the machine’s', () => {
    expect(inInches.card).toContain('what stands behind X, Y and Z, are in mm, as the machine reads them')
    expect(metric.card).not.toContain('as the machine reads them')
  })

  it('leaves what the machine shows in mm, and the programs as they were', () => {
    const fixed = posted(inInches.card.replace(/from Z\S+ mm to Z\S+ mm/g, ''))
    expect(fixed.length).toBeGreaterThan(10)
    expect(fixed).toEqual(posted(metric.card))
    const heights = [...metric.card.matchAll(/from (\S+) mm to (\S+) mm/g)].map(m => [m[1], m[2]])
    expect([...inInches.card.matchAll(/from Z(\S+) mm to Z(\S+) mm/g)].map(m => [m[1], m[2]])).toEqual(
      heights
    )
    expect(inInches.set.programs.map(p => p.written.text)).toEqual(
      metric.set.programs.map(p => p.written.text)
    )
  })

  it('has all else in inches: what is measured, laid under, taken for a test', () => {
    const thick = /plan ([\d.]+) mm/.exec(metric.card)![1]!
    const inch = /plan ([\d.]+) in/.exec(inInches.card)![1]!
    expect(Math.abs(Number(inch) * INCH_MM - Number(thick))).toBeLessThan(0.05 + 0.0005 * INCH_MM)
    expect(inInches.card).toContain('0.315 in across')
    expect(inInches.card).toContain('a gauge of 5 mm (0.2 in)')
    const boards = (card: string) =>
      [...card.matchAll(/cheap board ([\d.]+) × ([\d.]+) × ([\d.]+)/g)].flatMap(m => m.slice(1).map(Number))
    const [mm, own] = [boards(metric.card), boards(inInches.card)]
    expect(own).toHaveLength(mm.length)
    for (const [k, x] of own.entries())
      expect(Math.abs(x * INCH_MM - mm[k]!)).toBeLessThan(0.5 + 0.005 * INCH_MM)
    const left = inInches.card
      .replace(/Z-?[\d.]+ mm/g, 'Z')
      .replace(/mm \([^)]* in\)/g, 'both')
      .replace(/(?:board|bit|mill|60°) [\d.]+ mm/g, 'name')
    expect(left).not.toMatch(/\d ?mm\b/)
  })

  it('is told from the machine on the run sheet and the page too', () => {
    const first = inInches.set.programs[0]!.made[0]!.operation
    const own = withPrograms(inInches.set, first.step, detail({}))
    expect(own.does.join(' ')).toContain('in mm, as the machine reads them')
    expect(own.does.join(' ')).toMatch(/Pin 1, 0\.315 in across, stands at X-298 Y0/)
    expect(programTable(inInches.set)!.title).toContain('Z in mm, as the machine reads it')
    expect(programTable(inInches.set)!.rows).toEqual(programTable(metric.set)!.rows)
    expect(programsPart(inInches.set, true)!.text).toContain('as the machine reads them')
    expect(programsPart(metric.set, true)!.text).not.toContain('as the machine reads them')
  })
})

describe('a machine that is programmed in inches', () => {
  const { set, card } = made({}, { units: 'inch' })

  it('is told its pins and heights in inches, on the card and in its programs', () => {
    expect(card).toContain('are in inches, as the machine reads them; all else is in mm')
    const [was, is] = [posted(metric.card), posted(card.replace(/from Z\S+ in to Z\S+ in/g, ''))]
    expect(is).toHaveLength(was.length)
    for (const [k, x] of is.entries()) expect(Math.abs(x * INCH_MM - was[k]!)).toBeLessThan(0.07)
    // The pin holes stand 298 and 301 mm from the middle.
    const zero = set.programs[0]!.input.zero.join(' ')
    expect(zero).toContain(`stands at X-${(298 / INCH_MM).toFixed(4).replace(/0+$/, '')} Y0`)
    expect(zero).toContain('Pin 1, 0.315 across')
    expect(set.programs[0]!.written.text).toContain(`X-${(298 / INCH_MM).toFixed(4).replace(/0+$/, '')} Y0`)
    expect(card).toMatch(/Measured thickness .* mm, plan [\d.]+ mm/)
  })
})

// Said to 0.1 mm. The V bit of the shop is flat for 0.1 mm: its sides meet that much deeper, 0.05 / tan 30°.
const TIP_MM = 0.05 * Math.sqrt(3)

describe('a machine whose zero is the bed', () => {
  const { set, card } = made({}, { zero: 'bed' })

  it('has its programs’ heights from the bed, as they are written', () => {
    const said = [...card.matchAll(/\*\*(\S+?)\*\*, [^,]+, from (\S+) mm to (\S+) mm/g)]
    expect(said).toHaveLength(set.programs.length)
    for (const [k, [, , , to]] of said.entries()) {
      const p = set.programs[k]!
      // What the reader, which shares no code with the writer, finds lowest.
      const { motions } = readProgram(p.written.text)
      let least = Number.POSITIVE_INFINITY
      for (let i = 0; i < motions.count; i++) least = Math.min(least, motions.z[i]!)
      expect(Math.abs(Number(to) - least), p.file).toBeLessThan(0.05 + TIP_MM)
    }
    expect(programTable(set)!.rows.map(r => r[4]!.split(', ')[1])).toEqual(said.map(s => s[3]))
  })
})
