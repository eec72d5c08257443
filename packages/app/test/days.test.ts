import { readFileSync } from 'node:fs'
import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { daysOf } from '../../engine/src/days.ts'
import { daysData } from '../../engine/src/days-data.ts'
import { ordersOf } from '../../engine/src/orders/orders.ts'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { browser, soon } from './browser.ts'
import { drawing, example, openDesk } from './desk.ts'

const open = browser()
const MOMENT = '2026-11-28T16:00:00.000Z'

// The engine asked directly is the other side of each check; the file is read by ical.js, a reader of its own.
test('days of an example: ready as the engine says, a task put later moves the rest, the file can be read', async () => {
  const desk = await openDesk()
  const document = example('saltmarsh-panel')
  await desk.lay('panel123', document)
  const days = daysOf(
    { piece: checkPiece(document, 'the piece'), shop: usualShop(), files: {}, source: 'the piece' },
    { asOf: MOMENT }
  )
  const { page } = await open(`${desk.url}/piece/panel123/days`, { at: MOMENT })
  const ready = page.locator('.days-head time')
  await ready.waitFor({ timeout: 60_000 })
  expect(await ready.getAttribute('datetime')).toBe(daysData(days).ready?.[0])
  const first = page.locator('.bar:not(.alone)').first()
  const was = await first.getAttribute('title')

  // Pulled to the right by the mouse: it begins later, and what moved is said.
  const box = (await first.boundingBox())!
  await page.mouse.move(box.x + 2, box.y + 5)
  await page.mouse.down()
  await page.mouse.move(box.x + 42, box.y + 5, { steps: 4 })
  await page.mouse.up()
  await page.locator('.moved-says').waitFor()
  expect(await page.locator('.bar:not(.alone)').first().getAttribute('title')).not.toBe(was)
  await page.getByRole('button', { name: 'Undo the move' }).click()
  await soon(() => page.locator('.bar:not(.alone)').first().getAttribute('title')).toBe(was!)

  // A quarter of an hour by key.
  await page.locator('.bar:not(.alone)').first().press('ArrowRight')
  await page.locator('.moved-says').waitFor()
  await page.getByRole('button', { name: 'Undo the move' }).click()
  await soon(() => page.locator('.moved-says').count()).toBe(0)
  await soon(() => page.locator('.bar:not(.alone)').first().getAttribute('title')).toBe(was!)

  // Kept in the piece, as the calendar of the engine has it: still there when the page comes anew, and taken back.
  await page.locator('.bar:not(.alone)').first().press('ArrowRight')
  const kept = async () => (await desk.piece('panel123')).document['placed'] as { task: string; at: string }[]
  await soon(async () => (await kept())?.length).toBe(1)
  const [{ task, at }] = (await kept()) as [{ task: string; at: string }]
  const there = daysOf(
    {
      piece: checkPiece({ ...document, placed: [{ task, at }] }, 'the piece'),
      shop: usualShop(),
      files: {},
      source: 'the piece'
    },
    { asOf: MOMENT }
  )
  const own = there.tasks.find(t => t.task.id === task)!
  expect(there.originMs + own.startMin * 60_000).toBe(Date.parse(at))
  expect(own.startMin).toBe(days.tasks.find(t => t.task.id === task)!.startMin + 15)
  await page.reload()
  await ready.waitFor({ timeout: 60_000 })
  await soon(() => page.locator('.bar:not(.alone)').first().getAttribute('title')).not.toBe(was!)
  expect(await page.locator('.best').count()).toBeGreaterThan(0)
  await page.locator('.bar:not(.alone)').first().click()
  await page.locator('.looked-task').getByRole('button', { name: 'Let it go where it fits' }).click()
  await soon(kept).toEqual([])
  await soon(() => page.locator('.bar:not(.alone)').first().getAttribute('title')).toBe(was!)

  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Calendar file' }).click()
  ])
  const events = new ICAL.Component(ICAL.parse(readFileSync(await file.path(), 'utf8')))
    .getAllSubcomponents('vevent')
    .map(e => new ICAL.Event(e))
  // The calendar counts in whole minutes: what ends last is ready.
  const last = Math.max(...events.map(e => e.endDate.toJSDate().getTime()))
  expect(events.length).toBeGreaterThan(20)
  expect(Math.abs(last - days.readyMs![0]!)).toBeLessThanOrEqual(60_000)
  for (const { task, startMin } of days.tasks.filter(t => t.task.kind === 'pour'))
    expect(
      events.some(
        e =>
          e.summary.includes(task.says) &&
          e.startDate.toJSDate().getTime() === days.originMs + startMin * 60_000
      )
    ).toBe(true)
}, 120_000)

test('another order of the steps is looked for when it is asked for, and taken', async () => {
  const desk = await openDesk()
  const document = example('heron-table')
  const files = { 'heron-table.svg': drawing('heron-table.svg') }
  await desk.lay('table123', document, files)
  const input = {
    piece: checkPiece(document, 'the piece'),
    shop: usualShop(),
    files,
    source: 'the piece'
  }
  const { ways, looked } = ordersOf(input, { asOf: MOMENT })
  const { page } = await open(`${desk.url}/piece/table123/days`, { at: MOMENT })
  await page.locator('.days-head time').waitFor({ timeout: 60_000 })
  await page.getByRole('button', { name: 'Look for a better order' }).click()
  const panel = page.locator('.order-search')
  await panel.locator('summary').first().click({ timeout: 60_000 })
  expect(await panel.locator('.way b').allTextContents()).toEqual(ways.map(w => w.does))
  expect(await panel.getByRole('status').textContent()).toContain(`${looked} other order`)
  await panel.locator('.way').first().getByRole('button').click()
  const { value } = ways[0]!.patch[0] as { value: unknown }
  await soon(async () => (await desk.piece('table123')).document['steps']).toEqual(value)
  // What was found was of the piece before.
  await soon(() => panel.locator('.way').count()).toBe(0)
}, 120_000)
