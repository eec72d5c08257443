import { expect, test } from 'vitest'
import { browser, soon } from '../browser.ts'
import { drawing, example, openDesk } from '../desk.ts'

const open = browser()
/** The driver of a software card speaks of its own speed. */
const meant = /GPU stall due to ReadPixels/

test('the sheet shows the piece in the round and lays it down again; what draws it comes when asked for', async () => {
  const desk = await openDesk()
  await desk.lay('heron123', example('heron-table'), { 'heron-table.svg': drawing('heron-table.svg') })
  const { page } = await open(`${desk.url}/piece/heron123`, { viewport: { width: 700, height: 700 }, meant })
  await page.locator('.layer').first().waitFor()
  const scripts = () =>
    page.evaluate(() => performance.getEntriesByType('resource').filter(r => r.name.endsWith('.js')).length)
  const before = await scripts()
  await page.getByRole('button', { name: 'In the round' }).click()
  await page.locator('.round-pad').waitFor()
  expect(await scripts()).toBeGreaterThan(before)
  const says = page.locator('.round-says')
  await soon(() => says.textContent()).toMatch(/seen from the front: .*River .* from 0 to 32 mm/)
  await page.getByRole('button', { name: 'turned over' }).click()
  await soon(() => says.textContent()).toMatch(/seen from the back/)
  await page.getByRole('button', { name: 'As a plan' }).click()
  await page.locator('#plan svg').first().waitFor()
  expect(await page.locator('.round').count()).toBe(0)
}, 40_000)
