import type { Page } from 'playwright-core'
import { expect } from 'vitest'
import { DESK, PHONE } from './browser.ts'
import { planned } from './screens.ts'

/** Least height of what a finger meets: WCAG 2.2, success criterion 2.5.5. */
const TOUCH_PX = 44

/** What is lower than a finger needs, as words. */
function tooLow(page: Page): Promise<string[]> {
  return page.evaluate(least => {
    const out: string[] = []
    for (const at of document.querySelectorAll<HTMLElement>(
      'button, nav a, summary, select, input:not([type=file]):not([type=checkbox]), .check, label.file'
    )) {
      const box = at.getBoundingClientRect()
      // Not on the screen: in something that is shut, or there for listeners.
      if (box.width < 2 || box.height < 2 || !at.checkVisibility()) continue
      if (box.height < least - 0.5)
        out.push(
          `${at.tagName.toLowerCase()}.${at.className} ${(at.getAttribute('aria-label') ?? at.textContent ?? '').slice(0, 24)}: ${box.height.toFixed(0)}`
        )
    }
    return [...new Set(out)]
  }, TOUCH_PX)
}

/** By how much the page is wider than its window, px, and what reaches over it. */
function tooWide(page: Page): Promise<{ wide: number; over: string }> {
  return page.evaluate(() => ({
    wide: document.documentElement.scrollWidth - innerWidth,
    over: [...document.querySelectorAll('body *')]
      .filter(e => e.getBoundingClientRect().right > innerWidth + 1)
      .slice(0, 5)
      .map(e => `${e.tagName}.${e.getAttribute('class')}`)
      .join(', ')
  }))
}

/** No wider than its window, at a desk and on a phone; what a finger meets is 44 px high. */
export async function lookAtWidth(page: Page, name: string): Promise<void> {
  for (const viewport of [DESK, PHONE]) {
    await page.setViewportSize(viewport)
    if ((await page.locator('.layer').count()) > 0) await planned(page)
    const { wide, over } = await tooWide(page)
    expect.soft(wide, `${name}, ${viewport.width} px: ${over}`).toBeLessThanOrEqual(0)
  }
  expect.soft(await tooLow(page), name).toEqual([])
}
