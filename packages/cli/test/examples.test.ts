import { readdirSync, readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import * as paper from '@castwright/server/paper'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { testFolder } from './folder.ts'

const folder = join(import.meta.dirname, '..', '..', '..', 'examples')
const folderOfTests = testFolder()
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']

interface Found {
  readonly id: string
  readonly at: string
  readonly severity: string
}
interface Checked {
  readonly verdict: string
  readonly findings: readonly Found[]
}
// Each example is checked once, however many tests look at what was found.
const checked = new Map<string, Checked>()
const check = (name: string): Checked => {
  const known = checked.get(name)
  if (known !== undefined) return known
  const { out, err, code } = answer(['check', join(folder, `${name}.piece.json`), '--json', ...AS_OF])
  if (code === 2) throw new Error(err)
  const found = JSON.parse(out) as Checked
  checked.set(name, found)
  return found
}

/** The mistakes made in each spoiled twin, and the finding each must show: id and the entry it stands at. */
const MISTAKES: Record<string, readonly [about: string, id: string, at: string][]> = {
  'saltmarsh-panel.spoiled': [
    ['parts of the label by volume, weighed', 'ratio-off', '/pours/0/measured'],
    ['a bank that is still wet', 'timber-wet', '/timbers/1'],
    ['a switch larger than its pocket', 'hardware-pocket', '/hardware/1'],
    ['bearers twice as far apart', 'base-sags', '/mould/bearers'],
    ['the channel a little deeper than the green hides', 'opaque-cover', '/cuts/0'],
    ['a bore through a shell', 'cut-meets-stones', '/cuts/6']
  ],
  'heron-table.spoiled': [
    ['a quick resin poured as deep as a slow one', 'pour-heat', '/pours/1'],
    ['walls lower than the liquid', 'wall-low', '/mould/wall'],
    ['no liner', 'no-release', '/mould/liner'],
    ['a slab that nothing holds down', 'timber-floats', '/timbers/1'],
    ['a slab that is still wet', 'timber-wet', '/timbers/0'],
    ['a back left bare', 'faces-unlike', '/finish/back'],
    ['legs that stand close together', 'tips-over', '/supports'],
    ['screws through round holes', 'slots-short', '/supports/held']
  ],
  'meadow-boards.spoiled': [
    ['a family that is not predicted', 'resin-family', '/pours/0'],
    ['as many blanks as boards', 'blanks-few', '/quantity/blanks'],
    ['a flood coat on one face, oil on the other', 'faces-unlike', '/finish/front'],
    ['sanded from 80 to 240 at once', 'grit-step-skipped', '/finish/front/grits'],
    ['sanded too fine for a flood coat', 'grit-too-fine', '/finish/back/grit'],
    ['a groove as deep as the board, under the stem', 'cut-breaks-out', '/cuts/1'],
    ['a groove still open when the back is flooded', 'open-pocket', '/steps/7'],
    ['a stem filled before it is cut', 'order-impossible', '/steps/11']
  ]
}

describe('examples', () => {
  const names = readdirSync(folder)
    .filter(f => f.endsWith('.piece.json'))
    .map(f => basename(f, '.piece.json'))

  it('each has a spoiled twin', () => {
    const sound = names.filter(n => !n.endsWith('.spoiled'))
    expect(sound.length).toBeGreaterThanOrEqual(3)
    expect(names.filter(n => n.endsWith('.spoiled')).sort()).toEqual(sound.map(n => `${n}.spoiled`).sort())
    expect(Object.keys(MISTAKES).sort()).toEqual(sound.map(n => `${n}.spoiled`).sort())
  })

  it('each says that it is invented', () => {
    for (const n of names)
      expect(JSON.parse(readFileSync(join(folder, `${n}.piece.json`), 'utf8'))).toMatchObject({
        about: expect.stringMatching(/^Invented example/)
      })
  })

  for (const name of Object.keys(MISTAKES)) {
    const sound = name.replace('.spoiled', '')
    it(`${sound} has no stop`, () => {
      expect(check(sound).findings.filter(f => f.severity === 'stop')).toEqual([])
    })

    describe(`${name} shows`, () => {
      const { verdict, findings } = check(name)
      const before = check(sound).findings
      for (const [about, id, at] of MISTAKES[name]!)
        it(`${about}: ${id}`, () => {
          const now = findings.filter(f => f.id === id && f.at === at)
          expect(now.length).toBe(1)
          expect(before.filter(f => f.id === id && f.at === at && f.severity === now[0]!.severity)).toEqual(
            []
          )
        })

      it('a verdict that is not ready', () => {
        expect(verdict).not.toBe('ready')
      })
    })
  }

  it('the whole plan of a table with slanted edges is written, printed sheets and all', () => {
    const out = folderOfTests.at('heron')
    const { code, err } = answer(
      ['plan', join(folder, 'heron-table.piece.json'), '--out', out, ...AS_OF],
      paper
    )
    expect(code, err).toBe(0)
    for (const sheet of ['run-sheet.pdf', 'drawing.pdf', 'care.pdf', 'solid.3mf'])
      expect(readdirSync(out)).toContain(sheet)
  })

  it('the twins differ in their mistakes', () => {
    const sets = Object.values(MISTAKES).map(m =>
      m
        .map(([, id]) => id)
        .sort()
        .join(' ')
    )
    expect(new Set(sets).size).toBe(sets.length)
  })
})

describe.each(['heron-table', 'meadow-boards', 'saltmarsh-panel'])('%s in the shop with prices', name => {
  const given = [join(folder, `${name}.piece.json`), '--shop', join(folder, 'priced.shop.json'), ...AS_OF]

  it('is quoted whole: nothing it uses is without a price', () => {
    const { out, code } = answer(['quote', ...given, '--json'])
    expect(code).toBe(0)
    const { cost, whole } = JSON.parse(out) as { cost: { unpriced: string[]; total: number }; whole: boolean }
    expect(cost.unpriced).toEqual([])
    expect(whole).toBe(true)
    expect(cost.total).toBeGreaterThan(0)
  })

  it('has days in its hours, and an order for what is brought', () => {
    const { out, code } = answer(['days', ...given, '--json'])
    expect(code).toBe(0)
    const { tasks, orderBy } = JSON.parse(out) as {
      tasks: { begins: string; attended: boolean }[]
      orderBy: unknown[]
    }
    expect(orderBy.length).toBeGreaterThan(0)
    const closed = tasks.filter(
      t => t.attended && ['Wed', 'Sun'].includes(new Date(t.begins.slice(0, 10)).toUTCString().slice(0, 3))
    )
    expect(closed).toEqual([])
  })
})
