import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
/** More presses of Tab than any screen has stops: further on there is nothing. */
const MOST_TABS = 150

interface Here {
  readonly name: string
  readonly role: string
}

/** What has the focus, by its own words. */
function here(page: Page): Promise<Here> {
  return page.evaluate(() => {
    const at = document.activeElement
    const label = (at as HTMLInputElement | null)?.labels?.[0]?.querySelector('span')?.textContent
    return {
      name: at?.getAttribute('aria-label') ?? label ?? at?.textContent ?? '',
      role: at?.getAttribute('role') ?? at?.tagName.toLowerCase() ?? ''
    }
  })
}

/** Tabs on until what is sought has the focus. */
async function tabTo(page: Page, name: RegExp, role?: string, key = 'Tab'): Promise<void> {
  const passed: string[] = []
  for (let k = 0; k < MOST_TABS; k++) {
    await page.keyboard.press(key)
    const at = await here(page)
    passed.push(`${at.role} ${at.name.slice(0, 30)}`)
    if (name.test(at.name) && (role === undefined || at.role === role)) return
  }
  throw new Error(`no stop named ${name}; passed: ${passed.join(' | ')}`)
}

async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.press('Control+a')
  await page.keyboard.type(text)
}

test('the whole way from an empty list to a changed piece is walked by keys alone', async () => {
  const desk = await openDesk()
  const { page } = await open(desk.url)
  await page.getByRole('button', { name: 'Panel' }).waitFor()

  // Begin a piece.
  await tabTo(page, /^Panel$/)
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { name: 'Panel' }).waitFor()
  await tabTo(page, /^Name$/)
  await type(page, 'By keys')
  await tabTo(page, /^Width$/)
  await type(page, '320')
  await tabTo(page, /^Timber$/, 'select')
  const species = page.getByRole('combobox', { name: 'Timber' })
  await soon(() => species.locator('option').count()).toBeGreaterThan(10)
  const usual = await species.inputValue()
  await page.keyboard.press('ArrowDown')
  const chosen = await species.inputValue()
  expect(chosen).not.toBe(usual)
  await tabTo(page, /^Lay it on the sheet$/)
  await page.keyboard.press('Enter')
  await page.waitForURL(/\/piece\//)
  const id = page.url().split('/').at(-1)!
  const document = async () => (await desk.piece(id)).document
  await page.locator('.layer').first().waitFor()
  expect((await document())['name']).toBe('By keys')
  expect(JSON.stringify((await document())['outline'])).toContain('320')
  expect(JSON.stringify((await document())['timbers'])).toContain(chosen)

  // The first stop of the page leads past its top to the job card.
  await tabTo(page, /^To the job card$/, undefined, 'Shift+Tab')
  expect(await page.locator('.skip').boundingBox(), 'it is seen when it has the focus').not.toBeNull()

  // The core at the pointer, by arrows on the plan.
  await tabTo(page, /^Plan\./)
  const core = page.locator('#core')
  const x = Number(await core.getAttribute('data-x'))
  const y = Number(await core.getAttribute('data-y'))
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowDown']) await page.keyboard.press(key)
  await soon(() => core.getAttribute('data-x')).toBe(String(Math.round((x + 2) * 10) / 10))
  expect(Number(await core.getAttribute('data-y'))).toBeCloseTo(y - 1, 6)
  await soon(() => page.locator('#core-says').textContent()).toMatch(/front to back: .*mm/)

  // The line of the section.
  await tabTo(page, /^Line of the section/)
  const line = page.locator('.line-a')
  const at = Number(await line.getAttribute('aria-valuenow'))
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('Shift+ArrowUp')
  await soon(async () => Number(await line.getAttribute('aria-valuenow'))).toBeCloseTo(at + 11, 6)
  await page.keyboard.press('v')
  await soon(() => page.locator('.c-section h2').textContent()).toContain('across')

  // A timber is taken hold of and moved.
  await tabTo(page, /^Left board$/i, 'button')
  const before = (await document())['timbers']
  await page.keyboard.press('Enter')
  await soon(() => page.locator('.part.here').count()).toBe(1)
  await page.keyboard.press('Shift+ArrowRight')
  await page.keyboard.press('ArrowUp')
  const place = (d: Document) =>
    ((d['timbers'] as Document[])[0]!['outline'] as Document)['at'] as [number, number] | undefined
  const start = place({ timbers: before }) ?? [0, 0]
  await soon(async () => place(await document())).toEqual([start[0] + 10, start[1] + 1])
  await page.keyboard.press('Control+z')
  await page.keyboard.press('Control+z')
  await soon(async () => (await document())['timbers']).toEqual(before)
  await page.keyboard.press('Control+Shift+z')
  await soon(async () => place(await document())).toEqual([start[0] + 10, start[1]])
  await page.keyboard.press('Escape')
  await soon(() => page.locator('.part.here').count()).toBe(0)

  // A layer is opened and its depth changed.
  const layer = (await page.locator('.layer .entry').first().textContent())!
  await tabTo(page, new RegExp(`^${layer}$`))
  await page.keyboard.press('Enter')
  await page.locator('.layer.open .fields').waitFor()
  await tabTo(page, /: depth$/, 'input')
  await type(page, '6.5')
  await page.keyboard.press('Enter')
  await soon(async () => JSON.stringify((await document())['pours'])).toContain('"depth":6.5')

  // The findings are walked through: the focus goes to each.
  await tabTo(page, /^Next finding$/, undefined, 'Shift+Tab')
  await page.keyboard.press('Enter')
  await soon(async () => page.evaluate(() => globalThis.document.activeElement?.id)).toBe('finding-1')
  await tabTo(page, /^Basis$/)
  await page.keyboard.press('Enter')
  await soon(() => page.locator('#finding-1 .why[open] .basis').textContent()).toMatch(/\w{4,}/)
})
