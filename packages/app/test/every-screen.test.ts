import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser } from './browser.ts'
import { openDesk } from './desk.ts'
import { everyScreen, NAME } from './screens.ts'
import { lookAtWidth } from './width.ts'

const open = browser([`--host-resolver-rules=MAP ${NAME} 127.0.0.1`])
type Results = Awaited<ReturnType<AxeBuilder['analyze']>>
const CONTRAST = 'color-contrast'

/** Violations as words: rule, place, what is the matter. */
function words(found: Results['violations']): string[] {
  return found.map(v => {
    const places = v.nodes.map(n => `${n.target.join(' ')} (${n.any.map(a => a.message).join('; ')})`)
    return `${v.id}: ${places.slice(0, 4).join(' | ')}`
  })
}

// No frames to go into; of what passes it is enough to know that it was looked at: describing each place is slow.
function axe(page: Page): AxeBuilder {
  return new AxeBuilder({ page }).options({ resultTypes: ['violations'] }).setLegacyMode(true)
}

async function lookByAxe(page: Page, name: string): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await axe(page).analyze()
  expect.soft(words(light.violations), name).toEqual([])
  // The dim theme has other colours and nothing else.
  await page.emulateMedia({ colorScheme: 'dark' })
  const dim = await axe(page).withRules([CONTRAST]).analyze()
  expect.soft(words(dim.violations), `${name}, dim`).toEqual([])
  // Colours were measured, not passed over.
  for (const { passes } of [light, dim])
    expect(
      passes.map(p => p.id),
      name
    ).toContain(CONTRAST)
}

// One walk for both: to bring a screen to where it stands whole takes longer than to look at it.
test(
  'axe finds nothing on any screen, light and dim; none is wider than its window, and what a finger meets is 44 px high',
  () =>
    everyScreen(open, async (page, name) => {
      await lookByAxe(page, name)
      await page.emulateMedia({ colorScheme: 'light' })
      await lookAtWidth(page, name)
    }),
  300_000
)

test('what is wrong is found: a nameless button, pale words, and the dim theme is another', async () => {
  const desk = await openDesk()
  const { page } = await open(desk.url)
  await page.getByRole('button', { name: 'Panel' }).waitFor()
  const ground = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor)
  const light = await ground()
  await page.emulateMedia({ colorScheme: 'dark' })
  expect(await ground()).not.toBe(light)
  await page.evaluate(() => {
    document.querySelector('#main')!.append(document.createElement('button'))
    document.querySelector<HTMLElement>('#begin-head')!.style.color = getComputedStyle(
      document.body
    ).backgroundColor
  })
  const { violations } = await axe(page).analyze()
  expect(violations.map(v => v.id)).toEqual(expect.arrayContaining(['button-name', CONTRAST]))
})
