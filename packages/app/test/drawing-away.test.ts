import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { newPiece } from '../../engine/src/piece/kind.ts'
import { browser, soon } from './browser.ts'
import type { Desk, Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
/** What the browser notes of a server that is not there, and of one that refuses: the screen says it in words. */
const MEANT = /ERR_INTERNET_DISCONNECTED|status of (404|413)/
const ID = 'panel123'
type Entry = Record<string, unknown>

const svg = (mm: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="${mm}mm" height="${mm}mm" viewBox="0 0 ${mm} ${mm}"><rect id="bar" width="${mm}" height="${mm}"/></svg>`

async function readBar(page: Page, name: string, mm: number): Promise<void> {
  await page
    .locator('.tools-row input[type=file]')
    .setInputFiles({ name, mimeType: 'image/svg+xml', buffer: Buffer.from(svg(mm)) })
  await page
    .locator('.drawing-parts li', { hasText: 'bar' })
    .getByRole('button', { name: 'as a timber' })
    .click()
}

/** Names of the drawings beside the piece at the server, and of those its document names. */
async function atServer(desk: Desk): Promise<{ beside: string[]; named: string[] }> {
  const { document, files } = (await desk.piece(ID)) as unknown as { document: Document; files: object }
  const outlines = (document['timbers'] as Entry[]).map(t => (t['outline'] as Entry)['file'])
  return { beside: Object.keys(files), named: outlines.filter(f => f !== undefined) as string[] }
}

const parts = (page: Page) => page.locator('.plane .part[data-at^="/timbers/"]')

test('a drawing read without a network is kept, used at once and sent before the edit that names it; a refused one stays here', async () => {
  const desk = await openDesk()
  // Its two timbers leave the middle free, where a drawing is laid.
  await desk.lay(ID, newPiece('panel') as unknown as Document)
  const { page, context } = await open(`${desk.url}/piece/${ID}`, { meant: MEANT })
  const timbers = (n: number) => soon(() => parts(page).count()).toBe(n)
  const removeBar = async () => {
    await page.locator('.plane .part[data-at="/timbers/2"]').focus()
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Remove', exact: true }).first().click()
    await timbers(2)
  }
  const saved = page.locator('.top .tools summary').first()
  await page.locator('.tools-row').waitFor()
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined))
  await context.setOffline(true)
  await page.locator('.band', { hasText: 'No network since' }).waitFor()
  await readBar(page, 'away.svg', 20)
  await timbers(3)
  await soon(() => saved.textContent()).toContain('kept here')
  expect(await page.locator('.trouble').count()).toBe(0)

  // It lives through a reload: the plan is made of it again.
  await page.reload()
  await timbers(3)
  expect(await atServer(desk)).toEqual({ beside: [], named: [] })

  const puts: string[] = []
  page.on('request', r => {
    if (r.method() === 'PUT') puts.push(new URL(r.url()).pathname)
  })
  await context.setOffline(false)
  await soon(() => atServer(desk)).toEqual({ beside: ['away.svg'], named: ['away.svg'] })
  await soon(() => saved.textContent()).toBe('revision 2')
  await soon(() => puts).toEqual([`/api/pieces/${ID}/files/away.svg`, `/api/pieces/${ID}`])

  // The server refuses one: said in words, nothing else is undone, the edit is saved.
  await page.getByRole('button', { name: 'Undo', exact: true }).waitFor()
  const says = 'found 4100 kB; allowed: up to 4000 kB'
  await page.route('**/files/large.svg', r =>
    r.fulfill({ status: 413, json: { error: { code: 'too-large', says } } })
  )
  await page.evaluate(() => scrollTo(0, 0))
  await removeBar()
  await readBar(page, 'large.svg', 24)
  const band = page.locator('.band[role=alert]', { hasText: 'large.svg was not taken by the desk' })
  await band.waitFor()
  expect(await band.textContent()).toContain(says)
  await timbers(3)
  await soon(() => atServer(desk)).toEqual({ beside: ['away.svg'], named: ['large.svg'] })
  await soon(() => saved.textContent()).toBe('revision 4')
  await band.getByRole('button', { name: 'Close' }).click()
  expect(await band.count()).toBe(0)

  // It is here when the piece is opened anew, and is offered to the server once more.
  await page.unroute('**/files/large.svg')
  await page.reload()
  await timbers(3)
  await soon(() => atServer(desk)).toEqual({ beside: ['away.svg', 'large.svg'], named: ['large.svg'] })
  expect(await page.locator('.band').count()).toBe(0)
  // One that was read without a network goes out while another screen is open as well.
  await context.setOffline(true)
  await removeBar()
  await readBar(page, 'third.svg', 22)
  await soon(() => saved.textContent()).toContain('kept here')
  await page.getByRole('link', { name: 'Pieces' }).click()
  puts.length = 0
  await context.setOffline(false)
  await soon(() => atServer(desk)).toEqual({
    beside: ['away.svg', 'large.svg', 'third.svg'],
    named: ['third.svg']
  })
  await soon(() => puts).toEqual([`/api/pieces/${ID}/files/third.svg`, `/api/pieces/${ID}`])
})
