import { request } from 'node:http'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, test } from 'vitest'
import { browser, PHONE, soon } from './browser.ts'
import type { Desk } from './desk.ts'
import { openDesk } from './desk.ts'

/** A name that is not loopback: under it a device is known by its pairing. */
const NAME = 'desk.test'
const open = browser()
/** The answer to a change on an older revision, and no answer at all: the screen says both in words. */
const MEANT = /status of 409|ERR_INTERNET_DISCONNECTED/

/** Asks as a device that is not the desk. */
function asked(
  port: number,
  method: string,
  path: string,
  body: unknown,
  cookie = ''
): Promise<{ status: number; cookie: string }> {
  return new Promise((done, fail) => {
    const headers = {
      host: `${NAME}:${port}`,
      'x-castwright': '1',
      'content-type': 'application/json',
      cookie
    }
    request({ host: '127.0.0.1', port, method, path, headers }, a => {
      a.resume().on('end', () =>
        done({ status: a.statusCode ?? 0, cookie: (a.headers['set-cookie']?.[0] ?? '').split(';')[0]! })
      )
    })
      .on('error', fail)
      .end(JSON.stringify(body))
  })
}

interface Shop {
  readonly revision: number
  readonly document: { readonly name?: string; readonly currency?: string }
  readonly aside: readonly { readonly number: number }[]
}
const shopOf = async (desk: Desk) => (await (await desk.ask('GET', '/api/shop')).json()) as Shop

test('what was typed in the shop while a phone changed it is kept aside, laid over, taken back and set aside', async () => {
  const desk = await openDesk({ names: [NAME] })
  await desk.ask('PUT', '/api/shop', {
    base: 0,
    edit: 'shop-edit-1',
    document: { castwright: 1, name: 'Shed' }
  })
  const { words } = (await (await desk.ask('POST', '/api/pairing', {})).json()) as { words: string }
  const { cookie } = await asked(desk.port, 'POST', '/api/pair', { words, name: 'Bench phone' })
  const { page, context } = await open(`${desk.url}/shop`, { meant: MEANT })
  const field = (name: string) => page.getByRole('textbox', { name, exact: true })
  const type = async (name: string, text: string) => {
    await field(name).fill(text)
    await field(name).press('Enter')
  }
  await soon(() => field('Shop: name').inputValue()).toBe('Shed')

  // Two changes are on their way here while the phone's is saved.
  let let1: () => void = () => undefined
  const gate = new Promise<void>(done => {
    let1 = done
  })
  await page.route('**/api/shop', async route => {
    if (route.request().method() === 'PUT') await gate
    await route.continue()
  })
  await type('Shop: name', 'Barn')
  await type('Shop: currency', 'NOK')
  const phone = { base: 1, edit: 'shop-edit-2', document: { castwright: 1, name: 'Quay' } }
  expect((await asked(desk.port, 'PUT', '/api/shop', phone, cookie)).status).toBe(200)
  let1()
  const stands = page.locator('[role=alert]', { hasText: 'The shop was changed on Bench phone meanwhile' })
  await stands.waitFor()
  await soon(() => field('Shop: name').inputValue()).toBe('Quay')
  expect(await shopOf(desk)).toMatchObject({ revision: 2, document: { name: 'Quay' } })
  // Both changes are in the one that is kept.
  const rows = page.locator('.asides li')
  await soon(() => rows.count()).toBe(1)
  expect(await rows.textContent()).toMatch(/from Desk.*made on revision 1/)
  await soon(async () => (await shopOf(desk)).aside.length).toBe(1)

  for (const [colorScheme, viewport] of [
    ['light', undefined],
    ['dark', PHONE]
  ] as const) {
    await page.emulateMedia({ colorScheme })
    if (viewport !== undefined) await page.setViewportSize(viewport)
    const { violations } = await new AxeBuilder({ page }).include('.intro').setLegacyMode(true).analyze()
    expect(violations.map(v => v.id)).toEqual([])
  }
  for (const button of await page.locator('.asides button').all()) {
    const box = (await button.boundingBox())!
    expect(Math.min(box.width, box.height), 'WCAG 2.2, 2.5.5').toBeGreaterThanOrEqual(44)
  }

  await rows.getByRole('button', { name: /^Lay it over/ }).click()
  await soon(async () => (await shopOf(desk)).document).toEqual({
    castwright: 1,
    name: 'Barn',
    currency: 'NOK'
  })
  await soon(() => field('Shop: name').inputValue()).toBe('Barn')
  expect(await stands.count()).toBe(0)
  await page.getByRole('button', { name: 'Take it back' }).click()
  await soon(async () => (await shopOf(desk)).document).toEqual({ castwright: 1, name: 'Quay' })
  await soon(() => page.getByRole('button', { name: 'Take it back' }).count()).toBe(0)

  // By keys alone: asked once more, the hand stands on the way out, and is not sent to the top of the page after.
  const focused = () => page.evaluate(() => document.activeElement?.textContent)
  await rows.getByRole('button', { name: /^Discard for good/ }).focus()
  await page.keyboard.press('Enter')
  await soon(focused).toBe('Keep it')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Enter')
  await soon(async () => (await shopOf(desk)).aside).toEqual([])
  await soon(() => rows.count()).toBe(0)
  await soon(focused).toBe('Kept aside')
  expect(await page.locator('.asides [role=status]').textContent()).toBe('Discarded.')

  // What is typed without a network is sent when it is back.
  await context.setOffline(true)
  await page.locator('.band', { hasText: 'No network since' }).waitFor()
  const lost = page.waitForEvent('requestfailed', r => r.method() === 'PUT')
  await type('Shop: name', 'Loft')
  await lost
  await context.setOffline(false)
  await soon(async () => (await shopOf(desk)).document.name).toBe('Loft')
})
