import { describe, expect, it } from 'vitest'
import { learnedFactors } from '../../src/calendar/learned-minutes.ts'
import { minutesOfPrograms } from '../../src/calendar/machine-minutes.ts'
import { tasksOf } from '../../src/calendar/tasks.ts'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { plan } from '../../src/plan.ts'
import { programSet, programTimes } from '../../src/programs/program-set.ts'
import { batches as cardBatches } from '../../src/sheets/page-card.ts'
import { pourDetail } from '../../src/sheets/run-pour.ts'
import { stepFacts } from '../../src/sheets/step-facts.ts'
import { stepKeys } from '../../src/steps/step-key.ts'
import { EXAMPLES, exampleInput, exampleWork } from './example-work.ts'

const options = { piece: '', originMs: 0 }

describe.each(EXAMPLES)('tasks of %s', name => {
  const work = exampleWork(name)
  const { tasks, gaps } = tasksOf(work, options)
  const of = (kind: string) => tasks.filter(t => t.kind === kind)
  const { blanks } = work.quantity

  it('give every step that is no wait a task, and every task a name of its own and a basis', () => {
    const keys = stepKeys(work.steps)
    for (const [i, step] of work.steps.entries())
      if (step.kind !== 'wait')
        expect(
          tasks.some(t => t.step === keys[i]),
          keys[i]
        ).toBe(true)
    expect(new Set(tasks.map(t => t.id)).size).toBe(tasks.length)
    for (const t of tasks) {
      expect(Number.isFinite(t.minutes) && t.minutes >= 0, t.id).toBe(true)
      expect(t.basis.says, t.id).not.toBe('')
    }
  })

  it('turn in no circle, and every gap is between tasks that are there', () => {
    const after = new Map<string, string[]>()
    for (const g of gaps) {
      expect(tasks.some(t => t.id === g.before) && tasks.some(t => t.id === g.after), g.says).toBe(true)
      after.set(g.before, [...(after.get(g.before) ?? []), g.after])
      if (g.mostMin !== null) expect(g.mostMin).toBeGreaterThanOrEqual(g.leastMin)
    }
    const left = new Set(tasks.map(t => t.id))
    while (left.size > 0) {
      const free = [...left].filter(id => gaps.every(g => g.after !== id || !left.has(g.before)))
      expect(free.length).toBeGreaterThan(0)
      for (const id of free) left.delete(id)
    }
  })

  it('hold all minutes the finish knows: grades and coats', () => {
    const sanding = work.faces.reduce(
      (sum, f) => sum + (f.sanding?.ladder.steps.reduce((s, g) => s + g.minutes, 0) ?? 0),
      0
    )
    const graded = of('sand').filter(t => /P\d+$/.test(t.id) && t.basis.from === 'model')
    expect(graded.reduce((sum, t) => sum + t.minutes, 0)).toBeCloseTo(blanks * sanding, 6)
    const coats = work.faces.reduce((sum, f) => sum + f.coats * (f.coating?.eachMin ?? 0), 0)
    expect(of('coat').reduce((sum, t) => sum + t.minutes, 0)).toBeCloseTo(blanks * coats, 6)
  })

  it('hold every minute of the programs: changes, test cuts, air cuts, runs (O13)', () => {
    const set = programSet(machiningOf(work)!)
    const { tasks: by } = tasksOf(work, {
      ...options,
      machine: minutesOfPrograms(programTimes(machiningOf(work)!))
    })
    const sum = (kinds: string[]) =>
      by
        .filter(t => kinds.includes(t.kind) && t.basis.says.includes('programs'))
        .reduce((s, t) => s + t.minutes, 0)
    const all = (pick: (p: (typeof set.programs)[number]) => number) =>
      set.programs.reduce((s, p) => s + pick(p), 0)
    expect(sum(['test cut'])).toBeCloseTo(
      all(p => p.test?.minutes ?? 0),
      6
    )
    expect(sum(['air cut'])).toBeCloseTo(
      all(p => p.air?.minutes ?? 0),
      6
    )
    expect(sum(['flatten', 'cut', 'pins'])).toBeCloseTo(
      blanks * all(p => p.made.reduce((s, m) => s + m.time.minutes, 0)),
      6
    )
    expect(all(p => (p.test?.minutes ?? 0) + (p.air?.minutes ?? 0))).toBeGreaterThan(0)
  })
})

describe('tasks of the panel', () => {
  const given = (more: Parameters<typeof exampleWork>[1] = {}) =>
    tasksOf(exampleWork('saltmarsh-panel', more), options)

  it('hold sealant overnight, the water test, passes, watches, level and rest (O13)', () => {
    const { tasks } = given()
    const minutes = (id: string) => tasks.find(t => t.id === id)?.minutes
    expect(minutes('make mould: sealant')).toBe(720)
    expect(minutes('make mould: water stands')).toBe(60)
    expect(minutes('pour clear: watch')).toBe(90)
    expect(tasks.filter(t => t.id.startsWith('pour clear: bubbles')).length).toBe(6)
    expect(tasks.some(t => t.kind === 'level')).toBe(true)
    expect(tasks.some(t => t.kind === 'rest')).toBe(true)
  })

  it('wait for the window of the pour below, from the last batch to what opens and from the first stir to what closes', () => {
    const work = exampleWork('saltmarsh-panel')
    const { recoat } = work.casts[0]!.windows
    const { gaps } = tasksOf(work, options)
    const between = gaps.filter(g => g.after === 'pour clear: mix')
    expect(between.find(g => g.mostMin === recoat.close)?.soft).toBe(true)
    expect(between.some(g => g.before === 'pour reed green: pour' && g.leastMin === recoat.open)).toBe(true)
  })

  it('take the shop’s word on minutes, and before it what nobody corrected', () => {
    const plain = given().tasks.find(t => t.kind === 'coat')!
    const slow = given({ shop: { minutes: [{ work: 'coat', times: 2 }] } }).tasks.find(
      t => t.kind === 'coat'
    )!
    expect(slow.minutes).toBeCloseTo(2 * plain.minutes, 9)
    expect(slow.basis.from).toBe('shop')
  })

  it('wait for what is bought before it is used', () => {
    const prices = [{ item: 'hardwax-oil', unit: 'ml', price: 20, days: 6 }]
    const { tasks, gaps } = given({ shop: { prices } })
    const id = 'delivery hardwax-oil'
    expect(tasks.find(t => t.id === id)?.minutes).toBe(6 * 1440)
    const after = gaps.find(g => g.before === id)!.after
    expect(tasks.find(t => t.id === after)!.step).toMatch(/^(coat|sand)/)
  })
})

describe('a seal coat', () => {
  const brushedMin = (own: readonly { id: string; minutes: number }[]) =>
    own.filter(t => /: pour/.test(t.id)).reduce((s, t) => s + t.minutes, 0)

  it('is mixed in as many batches as can be brushed on before they set in the cup', () => {
    const work = exampleWork('heron-table')
    const { tasks, gaps } = tasksOf(work, options)
    const own = tasks.filter(t => t.step === 'pour edge seal')
    const mixes = own.filter(t => /: mix/.test(t.id))
    const allowed = work.batches[0]!.split as { allowedMin: number }
    expect(mixes.length).toBe(2)
    for (const [k, mix] of mixes.entries()) {
      const brush = own.find(t => t.id === `pour edge seal: pour ${k + 1}`)!
      expect(Math.ceil(mix.minutes) + Math.ceil(brush.minutes)).toBeLessThanOrEqual(allowed.allowedMin)
      const out = gaps.find(g => g.before === mix.id && g.after === brush.id && g.from === 'start')!
      expect(out.mostMin).toBe(allowed.allowedMin)
    }
    // The plan, its run sheet and its cost go by the same batches.
    const split = work.batches[0]!.split as { count: number; standingMin: number }
    expect(split.count).toBe(2)
    expect(split.standingMin).toBeGreaterThan(mixes[0]!.minutes + brushedMin(own) / 2 - 1e-6)
    expect(split.standingMin).toBeLessThan(mixes[0]!.minutes + brushedMin(own) / 2 + 0.5 + 1e-6)
    // All of it is brushed on: five minutes, and thirty a square metre, as in one go.
    expect(brushedMin(own)).toBeGreaterThan(allowed.allowedMin - mixes[0]!.minutes)
  })
})

describe('the number of batches', () => {
  const pours = (n: number, more: object) => {
    const { document } = exampleInput('saltmarsh-panel').piece
    return { pours: document.pours.map((p, i) => (i === n ? { ...p, ...more } : p)) }
  }
  it.each([
    ['batches', { batches: 3 }, 3],
    ['minutes of one batch', { minutes: 20 }, 1],
    ['a vessel in which one batch does not fit', { vessel: '400 ml' }, 2]
  ])('is one in tasks, cost, run sheet, card and step: %s', (_, more, count) => {
    const input = exampleInput('saltmarsh-panel', { piece: pours(1, more) })
    const planned = plan(input, { asOf: '2026-11-30T08:00:00+01:00', effort: 'preview' })
    const { work } = planned
    const own = tasksOf(work, options).tasks.filter(t => t.step === 'pour clear')
    expect(own.filter(t => /: mix/.test(t.id)).length).toBe(count)
    // The other pour of the piece is one batch.
    expect(planned.plan.totals.batches).toBe(count + 1)
    const at = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === 1)
    const detail = pourDetail(planned.plan, work, at)
    expect(detail.amounts!.batches).toBe(count)
    const takes = detail.facts.find(f => f.label.startsWith('Stirring'))
    if ('minutes' in more) expect(takes!.value).toBe('20 min')
    const card = cardBatches(planned.plan, work, 1)!.text
    expect(card).toContain(count === 1 ? 'one batch<' : `${count} batches, each<`)
    // Part A to the step of the scale, as the run sheet has it.
    const { words } = detail.amounts!.shares[0]!
    expect(card).toContain(`<td>${words}</td>`)
    const told = stepFacts(planned.plan, work, at).find(f => f.startsWith('mix'))!
    expect(told.includes(`${count} ×`)).toBe(count > 1)
  })
})

describe('learned minutes', () => {
  const times = (n: number, r: number) =>
    Array.from({ length: n }, () => ({ kind: 'sand' as const, reckonedMin: 10, tookMin: 10 * r }))

  it.each([1, 2, 5, 20])('are r^(n/(n+2)) for %i equal records', n => {
    expect(learnedFactors(times(n, 1.5)).get('sand')!.factor).toBeCloseTo(1.5 ** (n / (n + 2)), 12)
  })

  it('are not moved by one forgotten clock', () => {
    expect(learnedFactors([...times(5, 1), ...times(1, 50)]).get('sand')!.factor).toBe(1)
  })

  it('have nothing to say without records, nor of nothing', () => {
    expect(learnedFactors([]).size).toBe(0)
    expect(learnedFactors([{ kind: 'sand', reckonedMin: 0, tookMin: 5 }]).size).toBe(0)
  })
})
