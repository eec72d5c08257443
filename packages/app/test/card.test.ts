import { expect, test } from 'vitest'
import { cardSaid } from '../../engine/src/fits/card-words.ts'
import { checkShop } from '../../engine/src/piece/read.ts'
import { shopSchema } from '../../engine/src/piece/shop-schema.ts'
import { GROUPS } from '../src/shop/shop-groups.ts'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()

test('every fact of a shop has a place on its screen', () => {
  const placed = [
    ...GROUPS.flatMap(([, keys]) => keys as readonly string[]),
    'cards',
    'castwright',
    '$schema'
  ]
  expect([...placed].sort()).toEqual(Object.keys(shopSchema.shape).sort())
})

test('a hiding card is read from its steps, said in words, kept and taken away', async () => {
  const desk = await openDesk()
  const stored = async () =>
    ((await (await desk.ask('GET', '/api/shop')).json()) as { document: Document }).document
  const { page } = await open(`${desk.url}/shop`)
  await page.getByRole('button', { name: 'A card that was cast' }).click()
  const form = page.getByRole('group', { name: 'A card that was cast' })
  const keep = form.getByRole('button', { name: 'Keep this card' })
  const wrong = form.locator('.cup-wrong')
  await form.getByLabel('Pigment').selectOption('white-paste')
  await form.getByLabel('Share of the mix').fill('3')
  await form.getByLabel('Share of the mix').press('Enter')
  expect(await keep.isDisabled()).toBe(true)

  // Looked at only: a card that hides before it shows is none.
  await form.getByLabel('Deepest step that still shows').fill('2')
  await form.getByLabel('Shallowest step that hides').fill('1.2')
  await form.getByLabel('Shallowest step that hides').press('Enter')
  await soon(() => wrong.textContent()).toMatch(/hides.*allowed: deeper than the step that still shows/)
  expect(await keep.isDisabled()).toBe(true)

  // Read: one bad line is told by its number; then the words are the engine's own.
  await form.getByRole('button', { name: 'colours read' }).click()
  const steps = form.getByLabel(/^Steps/)
  await steps.fill('0.4 #a9abac #e2e2e0\n0.8 #c6c7c6 white')
  await soon(() => wrong.textContent()).toMatch(/line 2: found "0\.8 #c6c7c6 white"; allowed: a depth in mm/)
  await steps.fill('0.4 #a9abac #e2e2e0\n0.8 #c6c7c6 #e3e3e1\n1.6 #d9d9d7 #e3e3e1')
  await soon(() => keep.isDisabled()).toBe(false)
  expect(await wrong.count()).toBe(0)
  const said = await form.locator('.learned li').allTextContents()
  await keep.click()
  await page.locator('.cards .entry').waitFor()
  const document = await stored()
  expect((document['cards'] as Document[])[0]).toMatchObject({ pigment: 'white-paste', percent: 3 })
  expect(said).toEqual([...cardSaid(checkShop(document, 'shop').value, 0).says])
  expect(said[0]).toMatch(/^3 % of it in resin hides from \d\.\d+ mm, between/)

  await page.locator('.cards .entry').click()
  await soon(() => page.locator('.cards .learned li').allTextContents()).toEqual(said)
  await page.getByRole('button', { name: /^Remove the card of/ }).click()
  await soon(async () => (await stored())['cards']).toEqual([])
}, 60_000)
