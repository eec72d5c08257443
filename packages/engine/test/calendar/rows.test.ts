import { describe, expect, it } from 'vitest'
import { tasksOf } from '../../src/calendar/tasks.ts'
import { daysOf } from '../../src/days.ts'
import type { Work } from '../../src/findings/work.ts'
import { plan } from '../../src/plan.ts'
import { quoteOf } from '../../src/quote.ts'
import { workOf } from '../../src/work.ts'
import { exampleInput, exampleWork } from './example-work.ts'

const options = { piece: '', originMs: 0 }
const asOf = '2026-11-30T08:00:00+01:00'
const tasks = (work: Work) => tasksOf(work, options)
const minutes = (work: Work, kind: string) =>
  tasks(work).tasks.reduce((sum, t) => sum + (t.kind === kind && t.attended ? t.minutes : 0), 0)

// A table cast two side by side; of six the mould is filled three times.
const row = (pieces: number, gang = 2) =>
  exampleInput('heron-table', { piece: { quantity: { pieces, blanks: pieces, gang } } })

describe('a row of pieces alike, through a mould', () => {
  const one = workOf(row(1, 1))
  const five = workOf(row(5))

  it('fills the mould as often as it takes, the last time with what is left', () => {
    expect(one.fills!.blanks).toEqual([1])
    expect(five.fills!.blanks).toEqual([2, 2, 1])
    expect(five.steps[five.fills!.to]!.kind).toBe('demould')
    expect(five.steps.slice(0, five.fills!.from).map(s => s.kind)).toContain('make mould')
  })

  it('holds every blank: what is done to each so many times over, what is done once as before', () => {
    for (const kind of ['mill', 'set', 'demould', 'turn', 'flatten', 'coat', 'pack', 'edge'])
      expect(minutes(five, kind), kind).toBeCloseTo(5 * minutes(one, kind), 6)
    for (const kind of ['test cut', 'air cut', 'water test'])
      expect(minutes(five, kind), kind).toBeCloseTo(minutes(one, kind), 6)
  })

  it('lays nothing into the mould before the fill before it is out', () => {
    const { tasks: all, gaps } = tasks(five)
    const after = (id: string, seen = new Set<string>()): Set<string> => {
      for (const g of gaps)
        if (g.before === id && g.leastMin >= 0 && !seen.has(g.after)) after(g.after, seen.add(g.after))
      return seen
    }
    for (const fill of [1, 2]) {
      const out = all.find(t => t.kind === 'demould' && t.id.includes(`fill ${fill} of 3`))!
      const later = after(out.id)
      const next = all.filter(t => t.id.includes(`fill ${fill + 1} of 3`))
      expect(next.length).toBeGreaterThan(5)
      for (const t of next) expect(later.has(t.id), t.id).toBe(true)
    }
  })

  it('lets batches run into each other inside a blank, and begins another where one is full', () => {
    const small = { vessels: [{ capacity: 3000, diameter: 160 }] }
    const two = workOf(
      exampleInput('heron-table', { shop: small, piece: { quantity: { pieces: 2, blanks: 2, gang: 2 } } })
    )
    const { count } = two.rounds[1]!.batches!.mixed!
    const { gaps } = tasks(two)
    const seams = gaps.filter(g => g.says === 'river: batches run into each other').map(g => g.after)
    // By hand: batch k begins where (k - 1)/count of two blanks is full; a whole number is no seam.
    const wanted = Array.from({ length: count - 1 }, (_, i) => i + 2).filter(k => ((k - 1) * 2) / count !== 1)
    expect(count).toBeGreaterThan(2)
    expect(seams).toEqual(wanted.map(k => `pour river: pour ${k}`))
  })

  it('has days in which every fill cures before it leaves the mould', () => {
    const days = daysOf(row(3), { asOf })
    expect(days.clash).toBe(null)
    const at = (says: string) => days.tasks.find(t => t.task.id.includes(says))!
    for (const fill of [1, 2]) {
      const poured = at(`pour river: pour, fill ${fill} of 2`)
      const out = at(`demould: fill ${fill} of 2`)
      const { open } = days.casts[0]![1]!.windows.demould
      expect(out.startMin - poured.endMin).toBeGreaterThanOrEqual(open - 1)
    }
    const single = daysOf(row(1, 1), { asOf })
    expect(days.readyMs![0]!).toBeGreaterThan(single.readyMs![0]!)
  })
})

it('a row too long to be placed says so at once, and what to do', () => {
  const days = daysOf(row(80, 1), { asOf })
  expect(days.readyMs).toBe(null)
  expect(days.problem.tasks.length).toBeGreaterThan(600)
  expect(days.clash!.says).toHaveLength(1)
  expect(days.clash!.says[0]).toMatch(/^\d+ tasks are more than the 600 .* plan fewer pieces at a time/)
})

describe('a row of boards', () => {
  const boards = exampleWork('meadow-boards')
  const { blanks, pieces } = boards.quantity

  it('is mixed together in few batches, each out of its vessel in time', () => {
    const own = boards.batches[0]!
    const { batches } = boards.rounds[0]!
    expect(blanks).toBe(14)
    expect(batches!.pouredG).toBeCloseTo(blanks * own.pouredG, 9)
    expect(batches!.mixedG).toBeCloseTo(blanks * own.mixedG, 9)
    const { count, batchG, standingMin, allowedMin } = batches!.mixed!
    expect(count * batchG).toBeCloseTo(batches!.mixedG, 6)
    expect(count).toBeLessThan(blanks)
    expect(standingMin).toBeLessThanOrEqual(allowedMin!)
    // A minute into each blank at the least.
    expect(standingMin).toBeGreaterThanOrEqual(blanks / count)
  })

  it('is mixed blank by blank where the maker fixed the batches', () => {
    const document = exampleInput('meadow-boards').piece.document
    const pours = document.pours!.map(p => ({ ...p, batches: 2 }))
    const fixed = exampleWork('meadow-boards', { piece: { pours } })
    expect(fixed.rounds[0]!.batches!.mixed!.count).toBe(2 * blanks)
  })

  it('is coated in parts that one window holds for, every blank by every coat once', () => {
    const { tasks: all, gaps } = tasks(boards)
    const coats = all.filter(t => t.kind === 'coat')
    for (const coat of [1, 2])
      for (const face of ['front', 'back']) {
        const own = coats.filter(t => t.says.startsWith(`Coat ${coat} of 2 on the ${face}`))
        const done = own.flatMap(t => {
          const [, from, to] = /\(blanks (\d+) to (\d+)\)/.exec(t.says)!.map(Number) as [
            number,
            number,
            number
          ]
          return Array.from({ length: to - from + 1 }, (_, k) => from + k)
        })
        expect(done).toEqual(Array.from({ length: blanks }, (_, k) => k + 1))
      }
    for (const t of coats.filter(t => t.says.startsWith('Coat 2'))) {
      const part = /\(.*\)/.exec(t.says)![0]
      const window = gaps.find(g => g.after === t.id && g.mostMin !== null)!
      expect(all.find(x => x.id === window.before)!.says).toContain(part)
    }
  })

  it('costs the minutes of its calendar', () => {
    const input = exampleInput('meadow-boards')
    const { cost } = quoteOf(plan(input, { asOf, effort: 'preview' }), { asOf })
    const days = daysOf(input, { asOf })
    expect(cost.handsMin).toBeCloseTo(days.handsOnMin, 3)
    expect(minutes(boards, 'pack')).toBeCloseTo(30 * pieces, 0)
  })
})
