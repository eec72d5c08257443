import { describe, expect, it } from 'vitest'
import { daysOf } from '../../src/days.ts'
import { findingsOf } from '../../src/findings/checks.ts'
import type { Finding } from '../../src/findings/finding.ts'
import { blocksOf } from '../../src/orders/block.ts'
import type { OrderPlan } from '../../src/orders/order-plan.ts'
import { planOrder } from '../../src/orders/order-plan.ts'
import { OrderSearch } from '../../src/orders/order-search.ts'
import type { Orders } from '../../src/orders/orders.ts'
import { ordersOf } from '../../src/orders/orders.ts'
import { refusedMoves } from '../../src/orders/refused.ts'
import { applyPatch } from '../../src/piece/patch.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { plan } from '../../src/plan.ts'
import type { Planned } from '../../src/plan-answer.ts'
import { quoteOf } from '../../src/quote.ts'
import type { PlanInput } from '../../src/work.ts'
import { workOf } from '../../src/work.ts'
import { exampleInput } from '../calendar/example-work.ts'
import type { Doing } from './small-board.ts'
import { faceOf, smallBoard, writtenSlowly } from './small-board.ts'

const asOf = '2026-11-30T08:00:00+01:00'
const HALF_DAY = 43_200_000
/** Boards 1 and 2 have two fillings, and hundreds of orders. */
const BOARDS = Array.from({ length: Number(process.env['CASTWRIGHT_ORDERS'] ?? 0) }, (_, i) => i + 1)
if (BOARDS.length === 0) BOARDS.push(3, 4)

const patched = (input: PlanInput, patch: Orders['ways'][number]['patch']): PlanInput => ({
  ...input,
  piece: checkPiece(applyPatch(input.piece.document, patch), 'piece')
})

function* permutations<T>(list: readonly T[]): Generator<T[]> {
  if (list.length === 0) yield []
  for (let i = 0; i < list.length; i++)
    for (const rest of permutations([...list.slice(0, i), ...list.slice(i + 1)])) yield [list[i]!, ...rest]
}

/** What a maker would say of an order of such a board: each of these before that. */
function sound(order: readonly Doing[]): boolean {
  const at = (word: string, about?: string) =>
    order.findIndex(d => d.do === word && (about === undefined || d.face === about || d.what === about))
  const before = (a: number, b: number) => a < 0 || b < 0 || a < b
  const fills = order.filter(d => d.do === 'fill').map(d => d.what!)
  return (
    before(at('flatten', 'front'), at('cut', 'pocket')) &&
    before(at('flatten', 'back'), at('cut', 'hollow')) &&
    before(at('flatten', 'front'), at('sand', 'front')) &&
    fills.every(f => before(at('mark', f), at('fill', f)) && before(at('fill', f), at('sand', 'front'))) &&
    before(at('flatten', 'back'), at('coat')) &&
    before(at('sand', 'front'), at('coat'))
  )
}

/** What such an order gives up: bare walls, rims broken by hand, cuts from a face that is not flat. */
function gives(order: readonly Doing[]): number {
  let out = 0
  order.forEach((d, i) => {
    if (d.do !== 'cut' && d.do !== 'mark') return
    if (order.slice(0, i).some(e => e.do === 'coat')) out++
    else if (order.slice(0, i).some(e => e.do === 'sand' && e.face === faceOf(d))) out++
    if (order.slice(i).some(e => e.do === 'flatten' && e.face === faceOf(d))) out++
  })
  return out
}

describe('orders of the steps', () => {
  it.each(BOARDS)(
    'are, of small board %i, the best of every permutation planned one by one',
    seed => {
      const { input, doings, head } = smallBoard(seed)
      const found = ordersOf(input, { asOf })
      const given = findingsOf(workOf(input)).filter(f => f.severity === 'stop').length
      const readyNow = daysOf(input, { asOf, effort: 'quick' }).readyMs![0]!
      const seen = new Set<string>()
      let best: number[] | null = null
      for (const order of permutations(doings)) {
        // The order as it stands is no other one.
        if (!sound(order) || order.every((d, i) => d === doings[i])) continue
        const steps = writtenSlowly(head, order)
        const turns = steps.filter(s => (s as Doing).do === 'turn over').length
        const now = (input.piece.document as { steps: Doing[] }).steps.filter(
          s => s.do === 'turn over'
        ).length
        const key = JSON.stringify(steps)
        if (seen.has(key) || turns > now + 1) continue
        seen.add(key)
        const changed = {
          ...input,
          piece: checkPiece({ ...(input.piece.document as object), steps }, 'piece')
        }
        const work = workOf(changed)
        if (work.faults.length > 0) continue
        const findings = findingsOf(work)
        const stops = findings.filter(f => f.severity === 'stop').length
        if (stops > given) continue
        const days = daysOf(changed, { asOf, effort: 'quick' })
        const coins = quoteOf({ work } as Planned, { asOf }).cost.total
        const rank = [
          stops,
          findings.filter(f => f.severity === 'caution').length,
          gives(order),
          halfDays(days.readyMs![0]! - readyNow),
          coins,
          days.handsOnMin
        ]
        if (best === null || less(rank, best)) best = rank
      }
      expect(found.ways.length).toBeGreaterThan(0)
      const top = found.ways[0]!.figures
      expect([top.stops, top.cautions, halfDays(top.readyMs! - readyNow), top.coins]).toEqual([
        best![0],
        best![1],
        best![3],
        best![4]
      ])
      expect(top.handsMin).toBeCloseTo(best![5]!, 6)
    },
    60_000
  )

  it('have the figures of the plan, days and quote of the patched piece', () => {
    const { input } = smallBoard(3)
    const found = ordersOf(input, { asOf, effort: 'full' })
    const way = found.ways[0]!
    const changed = patched(input, way.patch)
    const planned = plan(changed, { asOf, effort: 'preview' })
    const days = daysOf(changed, { asOf })
    expect(way.figures).toEqual({
      readyMs: days.readyMs![0],
      handsMin: days.handsOnMin,
      visits: days.visits,
      coins: quoteOf(planned, { asOf }).cost.total,
      stops: planned.plan.findings.filter(f => f.severity === 'stop').length,
      cautions: planned.plan.findings.filter(f => f.severity === 'caution').length
    })
    // What was an improvement of the piece is none of the piece it was taken into.
    expect(ordersOf(changed, { asOf }).ways.some(w => w.better)).toBe(false)
  })

  it('are worth a change or not by the rate of the shop', () => {
    const { input } = smallBoard(3)
    const better = (labour: number | undefined) => {
      const { labour: _, ...rates } = input.shop.rates
      const shop = { ...input.shop, rates: labour === undefined ? rates : { ...rates, labour } }
      return ordersOf({ ...input, shop }, { asOf }).ways.filter(w => w.better).length
    }
    expect(better(60)).toBeGreaterThan(0)
    expect(better(undefined)).toBe(0)
  })

  it('let two fillings harden at once, and follow the hours of the shop', () => {
    const { input } = smallBoard(1)
    const [best] = ordersOf(input, { asOf }).ways
    expect(best?.better).toBe(true)
    expect(best?.does).toContain('fill upper and lower in one go, with one wait')
    expect(best?.gains).toMatch(/^\d days? sooner/)
    const always = { mon: [], tue: [], wed: [], thu: [], fri: [], sat: [], sun: [] }
    const open = Object.fromEntries(
      Object.keys(always).map(d => [d, ['00:00-24:00']])
    ) as unknown as typeof input.shop.hours
    const [free] = ordersOf({ ...input, shop: { ...input.shop, hours: open! } }, { asOf }).ways
    const saved = (w: typeof best, given: number) => given - w!.figures.readyMs!
    const now = daysOf(input, { asOf, effort: 'quick' }).readyMs![0]!
    const then = daysOf({ ...input, shop: { ...input.shop, hours: open! } }, { asOf, effort: 'quick' })
      .readyMs![0]!
    expect(saved(free, then)).not.toBe(saved(best, now))
  })

  it('that spoil the piece are refused with the reason', () => {
    const { refused } = ordersOf(smallBoard(3).input, { asOf })
    const why = Object.fromEntries(refused.map(r => [r.does, r.why]))
    expect(why['Coat both faces before “Sand the front”']).toBe(
      'flattening or sanding takes the coat off again'
    )
    expect(why['Fill upper before “Cut upper”']).toBe('what is filled has to be cut first')
    expect(why['Coat both faces before “Fill upper”']).toMatch(/^resin does not hold on a coat/)
    expect(refused.every(r => r.basis.length > 0)).toBe(true)
  })

  it('are refused each for its own reason, though others stand on the same basis', () => {
    const base = planOrder(smallBoard(3).input, [], { asOf, effort: 'quick' }) as OrderPlan
    const basis = 'common practice, no source'
    const stops = ['a', 'b'].map((id): Finding => {
      return { ...base.findings[0]!, id, severity: 'stop', says: `Spoils ${id}.`, basis }
    })
    let turn = 0
    const search = new OrderSearch(base, () => {
      const figures = { ...base.figures, stops: base.figures.stops + 1 }
      return { ...base, figures, findings: [...base.findings, stops[turn++ % 2]!] }
    })
    expect(search.refused.some(r => r.basis === basis)).toBe(true)
    while (search.step());
    expect(turn).toBeGreaterThan(2)
    expect(search.refused.map(r => r.why).filter(w => w.startsWith('Spoils'))).toEqual([
      'Spoils a',
      'Spoils b'
    ])
  })

  it('keep what stands round the outline until what is open at the edge is filled', () => {
    const input = exampleInput('meadow-boards')
    const { cuts } = input.piece.document as { cuts: { id: string; along: object }[] }
    const reaching = (x: number) => {
      const longer = cuts.map(c =>
        c.id === 'stem'
          ? {
              ...c,
              along: {
                points: [
                  [-x, 6],
                  [x, 6]
                ]
              }
            }
          : c
      )
      const piece = checkPiece({ ...(input.piece.document as object), cuts: longer }, 'piece')
      return refusedMoves(blocksOf(workOf({ ...input, piece })).blocks).map(r => r.does)
    }
    // The board is 380 mm long: half of it is 190.
    expect(reaching(170)).not.toContain('Trim to the outline before “Fill with copper”')
    expect(reaching(195)).toContain('Trim to the outline before “Fill with copper”')
  })

  it('of an example: the one that stands is the best where none is better', () => {
    const found = ordersOf(exampleInput('heron-table'), { asOf })
    expect(found.whole).toBe(true)
    expect(found.ways.filter(w => w.better)).toEqual([])
  })

  it('leave what is done where it was', () => {
    const done = (step: string) => ({ id: `r-${step}`, kind: 'done', step, at: '2026-11-29T10:00:00+01:00' })
    const { input } = smallBoard(3)
    const last = workOf(input).steps.findIndex(s => s.kind === 'coat')
    const readings = [readingSchema.parse({ ...done('coat both'), id: 'r-00000001' })]
    expect(last).toBeGreaterThan(0)
    expect(ordersOf({ ...input, readings }, { asOf })).toMatchObject({ looked: 0, ways: [], whole: true })
  })
})

// No -0.
const halfDays = (ms: number) => Math.round(ms / HALF_DAY) + 0

function less(a: readonly number[], b: readonly number[]): boolean {
  const k = a.findIndex((x, i) => Math.abs(x - b[i]!) > 1e-9)
  return k >= 0 && a[k]! < b[k]!
}
