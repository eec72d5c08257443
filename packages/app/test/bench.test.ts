import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, PHONE, soon } from './browser.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
const MEANT = /ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_CONNECTION_REFUSED/
const PHONE_AT_BENCH = { viewport: PHONE, timezoneId: 'Europe/Berlin', meant: MEANT }

const title = (page: Page) => page.locator('.bench-step h2').textContent()

/** Presses "done" and holds it, by the clock of the page. */
async function hold(page: Page): Promise<void> {
  const button = page.locator('.hold')
  await button.hover()
  await page.mouse.down()
  await page.clock.runFor(2100)
  await page.mouse.up()
}

interface Recorded {
  readonly id: string
  readonly kind: string
  readonly step?: string
  readonly at: string
  readonly [more: string]: unknown
}

test('a build at the bench: done by holding, a pour counted from its record, no network in the middle, a second device', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', example('saltmarsh-panel'))
  const readings = async () =>
    ((await (await desk.ask('GET', '/api/pieces/panel123/readings')).json()) as { readings: Recorded[] })
      .readings
  const { page, context } = await open(`${desk.url}/piece/panel123`, PHONE_AT_BENCH)
  await page.clock.install({ time: new Date('2026-11-28T16:00:00+01:00') })
  await page.goto(`${desk.url}/piece/panel123/bench`)
  await soon(() => title(page)).toBe('Make the mould')
  await page.evaluate(() => navigator.serviceWorker.ready.then(r => r.active?.state))

  // A short press does nothing; one that is held goes on to the next step.
  await page.locator('.hold').click()
  expect(await title(page)).toBe('Make the mould')
  for (const next of [
    'Prepare north bank',
    'Prepare south bank',
    'Set north bank',
    'Set south bank',
    'Pour reed green'
  ]) {
    await hold(page)
    await soon(() => title(page)).toBe(next)
  }
  await soon(async () => (await readings()).length).toBe(5)

  // Poured: the pad opens with what the plan mixes; the windows count from now.
  await page.getByRole('button', { name: 'Poured' }).click()
  const pad = page.locator('.pad input')
  expect(Number(await pad.inputValue())).toBeGreaterThan(400)
  await pad.fill('430')
  await page.getByRole('button', { name: 'Enter, g' }).click()
  await soon(() => page.locator('.time h3').textContent()).toBe('Bubbles, pass 1 of 6')

  await context.setOffline(true)
  await hold(page)
  await soon(() => title(page)).toMatch(/^Wait about/)
  await soon(() => page.locator('.bench-head .f').textContent()).toBe('no network, kept here')
  expect(await page.locator('.count').textContent()).toContain('until it opens')

  // A phone that slept through the night: the count is right at once, and within the window it says so.
  await page.clock.fastForward('20:00:00')
  await soon(() => page.locator('.count').textContent()).toContain('left of the best time')
  const before = await page.locator('.count b').textContent()
  await page.getByRole('button', { name: 'Tacky: print, no smear' }).click()
  await soon(() => page.locator('.recorded p').textContent()).toContain('Tacky')
  await page.reload()
  await soon(() => title(page)).toMatch(/^Wait about/)
  expect(before).toMatch(/^\d+:\d\d$|^\d+$/)
  await soon(() => page.locator('.count').textContent()).toContain('left of the best time')

  // Back in reach: each of them counts once.
  await context.setOffline(false)
  await soon(async () => (await readings()).map(r => r.kind).sort()).toEqual(
    ['done', 'done', 'done', 'done', 'done', 'done', 'poured', 'stage'].sort()
  )
  const poured = (await readings()).find(r => r.kind === 'poured')!
  expect(poured).toMatchObject({ pour: 'reed green', mass: 430 })
  expect(Date.parse(poured.at)).toBeGreaterThanOrEqual(Date.parse('2026-11-28T16:00:00+01:00'))
  expect(new Set((await readings()).map(r => r.id)).size).toBe(8)

  // Another device stands at the same step, and what it records comes here.
  const other = await open(`${desk.url}/piece/panel123/bench`, PHONE_AT_BENCH)
  await soon(() => title(other.page)).toMatch(/^Wait about/)
  await other.page.clock.install()
  await hold(other.page)
  await soon(() => title(other.page)).toMatch(/Set the stones/)
  await soon(() => title(page)).toMatch(/Set the stones/)

  // Taken back there: both stay on record, neither counts, and this device follows.
  await other.page.getByRole('button', { name: 'Take it back' }).click()
  await soon(() => title(page)).toMatch(/^Wait about/)
  expect((await readings()).filter(r => r.kind === 'withdrawn')).toHaveLength(1)
}, 90_000)
