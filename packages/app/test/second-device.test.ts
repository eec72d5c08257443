import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
const PIECE = example('saltmarsh-panel')
/** The desk answers an edit on an older revision so: the browser notes it as an error, and the band asks. */
const CLASH = /status of 409/

const depthField = (page: Page) =>
  page.locator('.layer.open .fields').getByRole('textbox', { name: /: depth$/ })

async function typeDepth(page: Page, text: string): Promise<void> {
  await depthField(page).fill(text)
  await depthField(page).press('Enter')
}

async function two(url: string): Promise<readonly [Page, Page]> {
  const pages: Page[] = []
  for (let k = 0; k < 2; k++) {
    const { page } = await open(url, { meant: CLASH })
    await page.getByRole('button', { name: 'Reed green' }).click()
    await depthField(page).waitFor()
    pages.push(page)
  }
  return pages as never
}

test('an edit on one device is laid on the other by itself', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', PIECE)
  const [here, there] = await two(`${desk.url}/piece/panel123`)
  await typeDepth(here, '12')
  await soon(() => depthField(there).inputValue()).toBe('12')
  await soon(() => there.locator('.layer.open .facts dd').first().textContent()).toMatch(/^12/)
  // And the other way, on what came from here.
  await typeDepth(there, '13')
  await soon(() => depthField(here).inputValue()).toBe('13')
  expect(await desk.revisions('panel123')).toBe(3)
  expect(await here.locator('.band').count()).toBe(0)
})

for (const [choice, wins] of [
  ['Mine', '16'],
  ['The other one', '15']
] as const)
  test(`both edit at once: both are kept, and "${choice}" goes on`, async () => {
    const desk = await openDesk()
    await desk.lay('panel123', PIECE)
    const [here, there] = await two(`${desk.url}/piece/panel123`)
    // The edit of one is held on its way until the other's is there.
    let let1: () => void = () => undefined
    const gate = new Promise<void>(done => {
      let1 = done
    })
    await here.route('**/api/pieces/panel123', async route => {
      if (route.request().method() === 'PUT') await gate
      await route.continue()
    })
    await typeDepth(here, '16')
    await typeDepth(there, '15')
    await soon(async () => (await desk.piece('panel123')).revision).toBe(2)
    let1()
    const band = here.locator('.band[role=alert]')
    await band.waitFor()
    // Nothing was written over: the newest is the other's, mine stands aside.
    const stored = await desk.piece('panel123')
    expect(JSON.stringify(stored.document)).toContain('"depth":15')
    const { aside } = stored as unknown as { aside: { number: number }[] }
    expect(aside).toHaveLength(1)
    const kept = await desk.ask('GET', `/api/pieces/panel123/asides/${aside[0]!.number}`)
    expect(await kept.text()).toContain('"depth":16')
    await band.getByRole('button', { name: choice, exact: true }).click()
    await soon(() => band.count()).toBe(0)
    await soon(() => depthField(here).inputValue()).toBe(wins)
    await soon(() => depthField(there).inputValue()).toBe(wins)
    await soon(async () => JSON.stringify((await desk.piece('panel123')).document)).toContain(
      `"depth":${wins}`
    )
    // The one that does not go on can still be had.
    const all = await desk.ask('GET', '/api/pieces/panel123/revisions/2')
    expect(await all.text()).toContain('"depth":15')
  })
