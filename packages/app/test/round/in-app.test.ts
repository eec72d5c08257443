import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, soon } from '../browser.ts'
import { openDesk } from '../desk.ts'

const open = browser()
/** A software card draws every point by itself: few of them are drawn sooner. */
const SIDE = { width: 480, height: 480 }
/** The driver of a software card speaks of its own speed. */
const meant = /GPU stall due to ReadPixels/

/** What axe finds in the view, in both themes: rule and place. */
async function violations(page: Page): Promise<string[]> {
  const out: string[] = []
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme })
    const found = await new AxeBuilder({ page }).include('.round').setLegacyMode(true).analyze()
    expect(found.passes.length).toBeGreaterThan(5)
    out.push(
      ...found.violations.map(
        v => `${colorScheme}, ${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`
      )
    )
  }
  return out
}

test('the sheet shows the piece in the round and lays it down again; what draws it comes when asked for', async () => {
  const desk = await openDesk()
  await desk.lay('tile1234', {
    castwright: 1,
    name: 'Invented tile',
    outline: { rectangle: [160, 90] },
    timbers: [
      {
        id: 'bank',
        species: 'ash-white',
        outline: { rectangle: [60, 96], at: [-55, 0] },
        thickness: 18,
        moisture: 8
      }
    ],
    pours: [{ id: 'river', resin: 'deep', fill: 'timber', tint: [{ pigment: 'blue-tint', percent: 0.05 }] }]
  })
  const { page } = await open(`${desk.url}/piece/tile1234`, { viewport: SIDE, meant })
  await page.locator('.layer').first().waitFor()
  const scripts = () =>
    page.evaluate(() => performance.getEntriesByType('resource').filter(r => r.name.endsWith('.js')).length)
  const before = await scripts()
  await page.getByRole('button', { name: 'In the round' }).click()
  await page.locator('.round-pad').waitFor()
  expect(await scripts()).toBeGreaterThan(before)
  const says = page.locator('.round-says')
  await soon(() => says.textContent()).toMatch(/seen from the front: .*River .* from 0 to \d+ mm/)
  expect(await violations(page)).toEqual([])
  await page.getByRole('button', { name: 'Level by level' }).click()
  await page.locator('.round-pad svg path').first().waitFor()
  await page.setViewportSize({ width: 390, height: 800 })
  expect(await violations(page), 'level by level, on a phone').toEqual([])
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(390)
  await page.setViewportSize(SIDE)
  await page.getByRole('button', { name: 'As a body' }).click()
  await page.getByRole('button', { name: 'turned over' }).click()
  await soon(() => says.textContent()).toMatch(/seen from the back/)
  await page.getByRole('button', { name: 'As a plan' }).click()
  await page.locator('#plan svg').first().waitFor()
  expect(await page.locator('.round').count()).toBe(0)
}, 120_000)
