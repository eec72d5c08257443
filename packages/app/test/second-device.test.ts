import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import type { Desk, Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
/** Invented; small, so that its mould is cast soon. */
const PIECE: Document = {
  castwright: 1,
  name: 'Invented tile in two colours',
  outline: { rectangle: [120, 90] },
  pours: [
    { id: 'reed green', resin: 'deep', tint: [{ pigment: 'green-paste', percent: 1 }], depth: 14 },
    { id: 'clear', resin: 'deep', depth: 10 }
  ]
}
/** The desk answers an edit on an older revision so: the browser notes it as an error, and the band asks. */
const CLASH = /status of (404|409)/

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

  // A piece that is gone is no network that is gone.
  await there.route('**/api/pieces/panel123', r =>
    r.fulfill({ status: 404, json: { error: { code: 'no-such-piece', says: 'no piece panel123 here' } } })
  )
  await typeDepth(here, '14')
  await there.locator('.band[role=alert]', { hasText: 'not at the desk any more' }).waitFor()
  expect(await there.locator('.band', { hasText: 'No network' }).count()).toBe(0)
  expect(await depthField(there).inputValue()).toBe('13')
})

/** What the server keeps aside of the piece: the documents, oldest first. */
async function keptAside(desk: Desk): Promise<string[]> {
  const { aside } = (await desk.piece('panel123')) as unknown as { aside: { number: number }[] }
  return Promise.all(
    aside.map(async a => (await desk.ask('GET', `/api/pieces/panel123/asides/${a.number}`)).text())
  )
}

/** The maker goes to what is kept aside by keys: looked at by axe, in both themes, then laid and set aside. */
async function fetchAside(desk: Desk, page: Page): Promise<void> {
  const summary = page.locator('.top .tools summary').first()
  await soon(() => summary.textContent()).toBe('revision 2, 1 kept aside')
  await summary.focus()
  await page.keyboard.press('Enter')
  const row = page.locator('.asides li')
  await soon(() => row.textContent()).toMatch(/from Desk.*made on revision 1/)
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    const { violations } = await new AxeBuilder({ page }).include('.revisions').setLegacyMode(true).analyze()
    expect(violations.map(v => v.id)).toEqual([])
  }
  await page.keyboard.press('Tab')
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(
    /^Lay on the desk: \d\d\//
  )
  await page.keyboard.press('Enter')
  await soon(() => depthField(page).inputValue()).toBe('17')
  await soon(async () => JSON.stringify((await desk.piece('panel123')).document)).toContain('"depth":17')
  // It is an edit like any other, and the list shows it while it stands open.
  await page.locator('.revisions li', { hasText: 'laid on the desk' }).waitFor()
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await soon(() => depthField(page).inputValue()).toBe('15')
  await row.getByRole('button', { name: /^Discard for good/ }).press('Enter')
  const leave = row.getByRole('button', { name: /^Keep it/ })
  await soon(() => leave.evaluate(b => b === document.activeElement)).toBe(true)
  await leave.press('Enter')
  const drop = row.getByRole('button', { name: /^Discard for good/ })
  await soon(() => drop.evaluate(b => b === document.activeElement)).toBe(true)
  await drop.press('Enter')
  // The hand is put on the way out first: pressed before that, it would go there.
  await soon(() => leave.evaluate(b => b === document.activeElement)).toBe(true)
  await row.getByRole('button', { name: /^Discard now/ }).press('Enter')
  await soon(() => keptAside(desk)).toEqual([])
  await soon(() => row.count()).toBe(0)
  await soon(() => summary.textContent()).toMatch(/^revision \d$/)
  await soon(async () => JSON.stringify((await desk.piece('panel123')).document)).toContain('"depth":15')
}

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
    expect(await keptAside(desk)).toEqual([expect.stringContaining('"depth":16')])
    // Work goes on while the question stands: what is kept aside must not be older than what leaves the desk.
    if (choice !== 'Mine') await typeDepth(here, '17')
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
    if (choice === 'Mine') {
      // Mine is a revision now, said in words, and need not be kept aside any more.
      await soon(() => keptAside(desk)).toEqual([])
      const list = await desk.ask('GET', '/api/pieces/panel123/revisions')
      const { revisions } = (await list.json()) as { revisions: { says: string }[] }
      expect(revisions.map(r => r.says)[0]).toBe('Mine laid over the other one')
      await soon(() => here.locator('.top .tools summary').first().textContent()).toBe('revision 3')
    } else {
      await soon(() => keptAside(desk)).toEqual([expect.stringContaining('"depth":17')])
      await fetchAside(desk, here)
    }
  })
