import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterEach, expect, test } from 'vitest'
import type { PlannerLimits } from '../src/planner.ts'
import { Planner } from '../src/planner.ts'

const panel = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', '..', '..', 'examples', 'saltmarsh-panel.piece.json'), 'utf8')
)
const ask = (document: unknown = panel) => ({
  sheet: 'buy.csv' as const,
  document,
  shop: null,
  files: {},
  readings: [],
  asOf: '2026-11-20T09:00+01:00',
  despite: [],
  assets: null,
  paper: 'A4' as const
})
/** Limits are read at each ask: a test may change them in between. */
const limits = (more: Partial<PlannerLimits> = {}) => ({
  mostMs: 20_000,
  idleMs: 30_000,
  mostWaiting: 20,
  ...more
})
const kept: Planner[] = []
const planner = (with_: PlannerLimits) => {
  const made = new Planner(with_)
  kept.push(made)
  return made
}
afterEach(() => {
  for (const p of kept.splice(0)) p.close()
})
/** What became of it: the first word of the text, or the code of the refusal. */
const ended = (asked: Promise<string | Uint8Array>) =>
  asked.then(
    made => (made.length > 20 ? 'planned' : String(made)),
    (e: { status: number; code: string }) => `${e.status} ${e.code}`
  )

test('a plan that takes too long is given up, those behind it are planned', async () => {
  // No thread starts within a millisecond: this one is late whatever the piece.
  const changing = limits({ mostMs: 1 })
  const p = planner(changing)
  const late = p.plan(ask())
  Object.assign(changing, { mostMs: 20_000 })
  const behind = p.plan(ask())
  expect(await ended(late)).toBe('504 too-long')
  expect(await ended(behind)).toBe('planned')
})

test('the thread lives through a piece that cannot be used', async () => {
  const p = planner(limits())
  const all = [ask(), ask({ castwright: 1, name: 'No outline' }), ask('no document'), ask()].map(a =>
    ended(p.plan(a))
  )
  expect(await Promise.all(all)).toEqual(['planned', '422 not-usable', '422 not-usable', 'planned'])
})

test('no more wait than may; the others are told to ask again', async () => {
  const p = planner(limits({ mostWaiting: 2 }))
  const all = [1, 2, 3, 4, 5].map(() => ended(p.plan(ask())))
  expect(await Promise.all(all)).toEqual(['planned', 'planned', 'planned', '503 busy', '503 busy'])
})

test('a thread without work is ended, and one starts anew when it is asked', async () => {
  const p = planner(limits({ idleMs: 30 }))
  expect(p.awake).toBe(false)
  expect(await ended(p.plan(ask()))).toBe('planned')
  expect(p.awake).toBe(true)
  await expect.poll(() => p.awake, { timeout: 5000 }).toBe(false)
  expect(await ended(p.plan(ask()))).toBe('planned')
})

test('closing tells whoever waits, and waits for no plan', async () => {
  const p = planner(limits())
  const all = [1, 2, 3].map(() => ended(p.plan(ask())))
  p.close()
  expect(await Promise.all(all)).toEqual(['503 closing', '503 closing', '503 closing'])
  expect(await ended(p.plan(ask()))).toBe('503 closing')
  expect(p.awake).toBe(false)
})
