import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser } from './browser.ts'
import { everyScreen, NAME } from './screens.ts'

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

async function look(page: Page, name: string): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' })
  const light = await new AxeBuilder({ page }).analyze()
  expect.soft(words(light.violations), name).toEqual([])
  // The dim theme has other colours and nothing else.
  await page.emulateMedia({ colorScheme: 'dark' })
  const dim = await new AxeBuilder({ page }).withRules([CONTRAST]).analyze()
  expect.soft(words(dim.violations), `${name}, dim`).toEqual([])
  // Colours were measured, not passed over.
  for (const { passes } of [light, dim])
    expect(
      passes.map(p => p.id),
      name
    ).toContain(CONTRAST)
}

test('axe finds nothing on any screen, light and dim', () => everyScreen(open, look), 90_000)
