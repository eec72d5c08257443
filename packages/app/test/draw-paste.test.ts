import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { newPiece } from '../../engine/src/piece/kind.ts'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
type Entry = Record<string, unknown>

const panel = () => structuredClone(newPiece('panel')) as unknown as Document
const part = (page: Page) => page.locator('.plane .part[data-at="/timbers/0"]')

async function take(page: Page): Promise<void> {
  await part(page).focus()
  await page.keyboard.press('Enter')
  await page.locator('.frame-row').waitFor()
}

test('copied by keys in one piece, pasted by keys in another, beside what stands there', async () => {
  const desk = await openDesk()
  const from = panel()
  ;(from['timbers'] as Entry[])[0]!['moisture'] = 7.3
  await desk.lay('copied0001', from)
  await desk.lay('pasted0001', panel())
  const { page } = await open(`${desk.url}/piece/copied0001`)
  await part(page).waitFor()
  await take(page)
  await page.keyboard.press('Control+c')
  await page.getByText('copied', { exact: false }).first().waitFor()
  await page.goto(`${desk.url}/piece/pasted0001`)
  await part(page).waitFor()
  await page.keyboard.press('Control+v')
  const timbers = async () => (await desk.piece('pasted0001')).document['timbers'] as Entry[]
  await soon(async () => (await timbers()).length).toBe(3)
  const all = await timbers()
  expect(all[2]!['moisture']).toBe(7.3)
  expect(new Set(all.map(t => t['id'])).size).toBe(3)
  expect((await desk.piece('copied0001')).document).toEqual(from)
})

test.each([
  ['no entry', '{"castwright":1,"kind":"timber","entry":{"species":7},"files":{}}'],
  ['cut short', '{"castwright":1,"kind":"timber","entry":{'],
  ['nested past all use', `{"castwright":1,"kind":"timber","entry":${'['.repeat(5000)}${']'.repeat(5000)}}`],
  ['a kind that is none', '{"castwright":1,"kind":"__proto__","entry":{},"files":{}}']
])('a clip that is %s is refused with words and changes nothing', async (_what, text) => {
  const desk = await openDesk()
  await desk.lay('pasted0001', panel())
  const { page } = await open(`${desk.url}/piece/pasted0001`)
  await part(page).waitFor()
  await page.evaluate(t => localStorage.setItem('castwright-clip', t), text)
  await page.locator('.tools-row').getByRole('button', { name: 'Paste', exact: true }).click()
  await soon(() => page.locator('.tool-says').textContent()).not.toBe('')
  expect(await desk.revisions('pasted0001')).toBe(1)
})

test('axe finds nothing while a part is in hand, its points are, and a line is drawn; light and dim', async () => {
  const desk = await openDesk()
  const polygon = [
    [-140, -80],
    [-30, -80],
    [-40, 80],
    [-140, 80]
  ]
  const made = panel()
  const timbers = [{ ...(made['timbers'] as Entry[])[0]!, outline: { polygon } }]
  await desk.lay('looked0001', { ...made, timbers })
  const { page } = await open(`${desk.url}/piece/looked0001`)
  await part(page).waitFor()
  await take(page)
  const look = async (name: string) => {
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      const { violations } = await new AxeBuilder({ page })
        .options({ resultTypes: ['violations'] })
        .setLegacyMode(true)
        .analyze()
      const found = violations.map(v => `${v.id}: ${v.nodes.map(n => n.target.join(' ')).join(' | ')}`)
      expect.soft(found, `${name}, ${colorScheme}`).toEqual([])
    }
  }
  await look('a part in hand')
  await page.getByRole('button', { name: 'Points', exact: true }).click()
  await page.getByRole('button', { name: /: Point 2\./ }).focus()
  await page.getByRole('button', { name: 'Take it out' }).waitFor()
  await look('a point in hand')
  await page.keyboard.press('Escape')
  await page.getByRole('button', { name: 'Draw a live edge' }).click()
  await page.locator('.plane .catch').waitFor()
  await look('a line drawn')
}, 60_000)
