import { expect, test } from 'vitest'
import { fitCupTest } from '../../engine/src/cast/own-resin.ts'
import { checkCupTest, checkShop } from '../../engine/src/piece/read.ts'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { openDesk } from './desk.ts'
import { CUP_CSV } from './screens.ts'

const open = browser()
const SHOP = {
  castwright: 1,
  resins: [{ id: 'mine', like: 'medium', potLife: { minutes: '25 min' }, greatestDepth: 60 }]
}

/** Writes on the form what became of its button: a fit may end sooner than the test can ask. Runs in the browser. */
function watchKeep(form: SVGElement | HTMLElement) {
  new MutationObserver(() => {
    const keep = [...form.querySelectorAll('button')].find(b => b.textContent === 'Keep this test')
    const told = form.getAttribute('data-keep')
    const now = keep!.disabled ? 'held' : told === 'held' ? 'held, then free' : told
    if (now !== null && now !== told) form.setAttribute('data-keep', now)
  }).observe(form, { subtree: true, childList: true, attributes: true })
}

test('a cup test is read from a file, fitted over its readings and kept with its resin, raw', async () => {
  const desk = await openDesk()
  await desk.ask('PUT', '/api/shop', { base: 0, edit: 'shop-000001', document: SHOP })
  const stored = async () =>
    ((await (await desk.ask('GET', '/api/shop')).json()) as { document: Document }).document
  const { page } = await open(`${desk.url}/shop`)
  await page.getByRole('button', { name: 'A cup that was watched' }).click()
  const form = page.locator('.cup-form')
  const keep = form.getByRole('button', { name: 'Keep this test' })
  const wrong = form.locator('.cup-wrong')
  const file = (text: string) =>
    form
      .locator('input[type=file]')
      .setInputFiles({ name: 'cup.csv', mimeType: 'text/csv', buffer: Buffer.from(text) })

  // What cannot be used is said in one message, where and what; nothing is stored.
  await form.getByLabel(/^Readings/).fill('0, 22.4\n10, 22.9\n5, 23.4')
  await soon(() => wrong.textContent()).toMatch(/line 3: found .*; allowed: readings in order of time/)
  await form.getByLabel(/^Readings/).fill('min, temp (C)\n0, 22.4\n30, 26.1\n60, 48')
  await soon(() => wrong.textContent()).toMatch(/found no mass; allowed: /)
  expect(await keep.isDisabled()).toBe(true)

  // A unit that is not said is asked for, not guessed.
  await file(CUP_CSV.replace('temp (F)', 'temp'))
  await soon(() => wrong.textContent()).toMatch(/line 6: found 73.2 without a unit/)
  expect(await wrong.textContent()).not.toContain('--')
  await form.getByRole('button', { name: 'These are °F' }).click()
  await form.locator('.cup-fit').waitFor()
  expect(await wrong.count()).toBe(0)
  expect(await stored()).toEqual(SHOP)

  // As many crosses as readings, two lines each; the words are the engine's own for this test.
  await form.getByRole('button', { name: 'as it is written' }).click()
  await file(CUP_CSV)
  await soon(() => keep.isDisabled()).toBe(false)
  await form.getByLabel('Strings after').fill('92')
  await form.evaluate(watchKeep)
  await form.getByLabel('Strings after').press('Enter')
  await soon(() => form.getAttribute('data-keep')).toBe('held, then free')
  const crosses = await form.locator('.cup-fit .i-pointer').first().getAttribute('d')
  expect(crosses!.match(/M/g)).toHaveLength(2 * 12)
  expect(await form.locator('.cup-fit').getAttribute('aria-label')).toMatch(
    /^12 readings over 3 h.*hottest 122 °C/
  )
  await soon(async () => (await form.locator('.learned').last().textContent())!).toMatch(
    /By pot life of the label/
  )

  await keep.click()
  await page.locator('.kept-cups .entry').waitFor()
  // It stands on the screen before the server has it.
  await soon(async () => JSON.stringify(await stored())).toContain('cupTests')
  const [test] = ((await stored())['resins'] as Document[])[0]!['cupTests'] as Document[]
  expect(test!['unit']).toBe('°F')
  expect(test!['strings']).toBe(92)
  expect((test!['readings'] as unknown[])[0]).toEqual([0, 73.2])
  const shop = checkShop(await stored(), 'shop').value
  const { says } = fitCupTest(checkCupTest(test, 'test').value, 'mine', shop)
  await page.locator('.kept-cups .entry').click()
  await page.locator('.cup-fit').waitFor()
  expect(await page.locator('.learned').first().locator('li').allTextContents()).toEqual([...says])

  await page.getByRole('button', { name: /^Remove the cup test of mine/ }).click()
  await soon(async () => ((await stored())['resins'] as Document[])[0]!['cupTests']).toEqual([])
  expect(await page.locator('.kept-cups li').count()).toBe(0)
}, 60_000)

test('a resin that is not in the shop yet is added with its first cup', async () => {
  const desk = await openDesk()
  const { page } = await open(`${desk.url}/shop`)
  await page.getByRole('button', { name: 'A cup that was watched' }).click()
  await page.getByLabel('What pours call it').fill('new one')
  await page.getByLabel('Nearest to').selectOption('thin')
  await page.getByLabel(/^Readings/).fill(CUP_CSV)
  await page.locator('.cup-fit').waitFor()
  await page.getByRole('button', { name: 'Keep this test' }).click()
  await page.locator('.kept-cups .entry', { hasText: 'new one' }).waitFor()
  const answer = await desk.ask('GET', '/api/shop')
  const { document } = (await answer.json()) as { document: { resins: Document[] } }
  expect(document.resins.map(r => [r['id'], r['like']])).toEqual([['new one', 'thin']])
}, 30_000)
