import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import { drawing, example, openDesk } from './desk.ts'

const open = browser()
const MEANT = /ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_CONNECTION_REFUSED/

/** Types a depth into the field of the first layer, which stands open. */
async function pourDepth(page: Page, text: string): Promise<void> {
  const field = page.locator('.layer .fields').getByRole('textbox', { name: /: depth$/ })
  await field.fill(text)
  await field.press('Enter')
}

const atService = (page: Page) =>
  page.evaluate(() => navigator.serviceWorker.ready.then(r => r.active?.state))

test('edits go on without a network, survive a reload and are sent once when it is back', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', example('saltmarsh-panel'))
  await desk.lay('heron123', example('heron-table'), { 'heron-table.svg': drawing('heron-table.svg') })
  const { page, context } = await open(`${desk.url}/piece/panel123`, { meant: MEANT })
  const saved = page.locator('.top .tools summary').first()
  await page.getByRole('button', { name: 'Reed green' }).click()
  await page.locator('.layer .fields').waitFor()
  expect(await atService(page)).toMatch(/^activ/)
  await soon(() => saved.textContent()).toBe('revision 1')

  await context.setOffline(true)
  await page.locator('.band', { hasText: 'No network since' }).waitFor()
  await pourDepth(page, '11')
  await soon(() => saved.textContent()).toContain('kept here')
  await pourDepth(page, '12')
  // The plan follows without a server: it is made here.
  await soon(() => page.locator('.layer.open .facts dd').first().textContent()).toMatch(/^12/)
  expect(JSON.stringify((await desk.piece('panel123')).document)).not.toContain('"depth":12')

  // The app opens from what the browser keeps, with the edit.
  await page.reload()
  await page.getByRole('button', { name: 'Reed green' }).click()
  await soon(() =>
    page
      .locator('.layer .fields')
      .getByRole('textbox', { name: /: depth$/ })
      .inputValue()
  ).toBe('12')
  expect(await page.locator('.band').textContent()).toContain('No network')

  // The other piece, a new one and the list are there as well as they were seen.
  await page.getByRole('link', { name: 'Pieces' }).click()
  await page.getByRole('button', { name: 'Dial' }).click()
  await page.getByRole('textbox', { name: 'Name' }).fill('Made away')
  await page.getByRole('button', { name: 'Lay it on the sheet' }).click()
  await page.waitForURL(/piece\/(?!panel)/)
  await page.locator('.layer').first().waitFor()
  await page.getByRole('link', { name: 'Pieces' }).click()
  await page.locator('.shelf-card', { hasText: 'Made away' }).waitFor()

  // Back in reach while another screen is open: everything kept goes out, each edit once.
  await context.setOffline(false)
  await soon(async () => (await desk.pieces()).map(p => p.name).sort()).toContain('Made away')
  await soon(async () => JSON.stringify((await desk.piece('panel123')).document)).toContain('"depth":12')
  await soon(() => page.locator('.band').count()).toBe(0)
  await page.reload()
  await page.locator('.shelf-card', { hasText: 'Made away' }).waitFor()
  const list = await desk.pieces()
  expect(list.map(p => p.name).sort()).toEqual(
    [example('heron-table')['name'], example('saltmarsh-panel')['name'], 'Made away'].sort()
  )
  expect(await desk.revisions('panel123'), 'what was kept is one revision').toBe(2)
  expect(await desk.revisions(list.find(p => p.name === 'Made away')!.id)).toBe(1)
  expect(await desk.revisions('heron123')).toBe(1)
})
