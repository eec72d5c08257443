import { expect, test } from 'vitest'
import { browser, soon } from './browser.ts'
import { openDesk } from './desk.ts'

/** Most inputs from an empty list to a verdict on one's own piece: the line of the issue. */
const MOST_INPUTS = 25
const open = browser()

/** Every click, typed field, choice, key and drag of a maker goes through here. */
function hand() {
  const made: string[] = []
  return {
    made,
    input: async (what: string, act: () => Promise<unknown>) => {
      made.push(what)
      await act()
    }
  }
}

test('from an empty list to a verdict on an own piece in at most 25 inputs', async () => {
  const desk = await openDesk()
  const { page } = await open(desk.url)
  const { made, input } = hand()
  const field = (name: string) => page.getByRole('textbox', { name })

  await input('kind', () => page.getByRole('button', { name: 'Panel' }).click())
  await input('name', () => field('Name').fill('Hall mirror'))
  await input('width', () => field('Width').fill('340'))
  await input('depth', () => field('Depth').fill('180'))
  await input('thickness', () => field('Thickness, finished').fill('20'))
  await input('species', () => page.getByRole('combobox', { name: 'Timber' }).selectOption('walnut-black'))
  await input('begin', () => page.getByRole('button', { name: 'Lay it on the sheet' }).click())
  await page.waitForURL(/\/piece\//)
  const id = page.url().split('/').at(-1)!

  // A timber is pulled 12 mm to the side of where it was laid.
  const timber = page.locator('[data-at="/timbers/0"]')
  await timber.waitFor()
  const before = (await desk.piece(id)).document
  expect(JSON.stringify(before), 'what is typed below is not there yet').not.toContain('"depth":7')
  const box = (await timber.boundingBox())!
  await input('drag', async () => {
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2)
    await page.mouse.down()
    await page.mouse.move(box.x + box.width / 2 + 20, box.y + box.height / 2, { steps: 4 })
    await page.mouse.up()
  })
  const layer = page.locator('.layer .entry').first()
  await input('open the layer', () => layer.click())
  const name = (await layer.textContent())!
  await input('depth of the pour', () => field(`${name}: depth`).fill('7'))
  await input('said', () => page.keyboard.press('Enter'))

  await soon(async () => page.locator('.pass').textContent()).toBe('')
  expect(await page.locator('#verdict').textContent()).toMatch(/\w{3,}/)
  expect(await page.locator('.verdict .count').textContent()).toMatch(/\d+ (stop|caution|note)|Ready/)
  await soon(async () => JSON.stringify((await desk.piece(id)).document)).toContain('"depth":7')
  const after = (await desk.piece(id)).document
  expect(after['name']).toBe('Hall mirror')
  expect(after['outline']).toMatchObject({ rectangle: [340, 180] })
  expect(JSON.stringify(after['timbers'])).toContain('walnut-black')
  expect(after['timbers']).not.toEqual(before['timbers'])
  expect(made.length, made.join(', ')).toBeLessThanOrEqual(MOST_INPUTS)
})
