import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { unzipSync } from 'fflate'
import { expect, test } from 'vitest'
import { readProgram } from '../../engine/src/proving/read/read-program.ts'
import { browser, PHONE, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
const PIECE = 'cutpanel01'
const WORKSHOP = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../examples/workshop.shop.json'), 'utf8')
) as Document

async function laid(
  shop: Document | null,
  wanted: Parameters<typeof open>[1] = {},
  more: Document = {} as Document
) {
  const desk = await openDesk()
  await desk.lay(PIECE, { ...example('saltmarsh-panel'), ...more })
  if (shop !== null) {
    const answer = await desk.ask('PUT', '/api/shop', { base: 0, edit: 'laid-workshop', document: shop })
    expect(answer.ok).toBe(true)
  }
  const { page } = await open(`${desk.url}/piece/${PIECE}/cuts`, wanted)
  await page.locator('.programs').first().waitFor({ timeout: 60_000 })
  return { desk, page }
}

test('programs stand in order with what proving found, and are saved as one archive that reads back', async () => {
  const { page } = await laid(WORKSHOP)
  const rows = page.locator('.programs tbody th[scope="row"]')
  await soon(() => rows.count()).toBeGreaterThan(8)
  expect(await page.getByText('nothing met').count()).toBe(await page.locator('.cuts-right .met').count())
  expect(await page.locator('.cuts-right').textContent()).toMatch(/Pin 1 at X −?-?298/)
  // Pressed, a row says how its cutter is run, and draws its way alone.
  await page.getByRole('button', { name: /Cable channel/ }).click()
  await soon(() => page.locator('.run dt').textContent()).toContain('flat end mill 6 mm')
  expect(await page.getByRole('button', { name: 'all ways' }).count()).toBe(1)
  const [archive] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save all programs' }).click()
  ])
  const files = unzipSync(readFileSync(await archive.path()))
  const programs = Object.entries(files).filter(([name]) => name.endsWith('.nc'))
  expect(programs.length).toBeGreaterThan(20)
  for (const [name, bytes] of programs) {
    const { complaints, motions } = readProgram(new TextDecoder().decode(bytes), { tool: 1 })
    expect(complaints, name).toEqual([])
    expect(motions.count, name).toBeGreaterThan(3)
  }
})

test('the zero check says go, and names a mirrored zero', async () => {
  const { page } = await laid(WORKSHOP)
  const card = page.locator('.setting').first().locator('.zero-check')
  await card.locator('summary').click()
  const places = await card.locator('.what').allInnerTexts()
  const drawn = places.map(p => [...p.matchAll(/[XY] (-?[0-9.]+)/g)].map(m => Number(m[1])))
  expect(drawn).toHaveLength(3)
  const type = async (read: (x: number, y: number) => [number, number]) => {
    const inputs = card.locator('input')
    let k = 0
    for (const [i, [x, y]] of drawn.entries()) {
      const [rx, ry] = read(x!, y!)
      await inputs.nth(k++).fill(String(rx))
      await inputs.nth(k++).fill(String(ry))
      if (i === 0) await inputs.nth(k++).fill('0')
    }
  }
  await type((x, y) => [x, y])
  await soon(() => card.locator('.zero-says').textContent()).toMatch(/^Go\./)
  await type((x, y) => [-x, y])
  await soon(() => card.locator('.zero-says').textContent()).toMatch(/^Do not cut\..*mirror/i)
})

test('the map of cover says where least is left, by colour, key and words', async () => {
  const { page } = await laid(WORKSHOP)
  await page.getByRole('button', { name: 'cover left under the cuts' }).click()
  const back = page.locator('.setting').first()
  await soon(() => back.locator('.map-key').textContent()).toMatch(/2 to 4/)
  expect(await back.locator('svg .w-cover-2').count()).toBe(1)
  // 14 of green less 1.4 of flattening less 9 of channel: 3.6 over the clear (drawing).
  expect(await back.locator('.map-key li').allInnerTexts()).toEqual([
    expect.stringMatching(/^3\.6 left over clear at the least, at X /)
  ])
  expect(await back.getByRole('img', { name: /map of what the cuts leave/ }).count()).toBe(1)
  // One program alone: hangers are cut in ash from face to face, over nothing.
  await page.getByRole('button', { name: /Left hanger/ }).click()
  await soon(() => back.locator('.map-key').textContent()).toBe(
    'No layer and no hollow lies under these cuts.'
  )
})

test('a finding is ringed on its drawing, with the lines of its program', async () => {
  const clamp = { circle: 24, at: [-120, 20] }
  const { page } = await laid(WORKSHOP, {}, { holding: { by: 'clamps', keepClear: [clamp] } })
  const found = page.locator('.find.stop', { hasText: 'clear' }).first()
  await found.getByRole('button', { name: 'Show on the drawing' }).click()
  expect(await found.getByRole('button').getAttribute('aria-pressed')).toBe('true')
  const lines = /lines? (\d+)/.exec((await found.textContent())!)![1]
  await soon(() => page.locator('svg text.mark').textContent()).toContain(lines)
  expect(await page.locator('svg circle.mark').count()).toBe(1)
  // What it goes round is seen.
  expect(await page.locator('svg circle.mark').evaluate(e => getComputedStyle(e).fill)).toBe('none')
  expect(await page.getByRole('img', { name: /finding is ringed: line/ }).count()).toBe(1)
  expect(
    await page
      .locator('.met b.stop')
      .first()
      .evaluate(e => e.parentElement!.textContent)
  ).toMatch(/^Stop\. .+/)
  await found.getByRole('button').click()
  await soon(() => page.locator('svg circle.mark').count()).toBe(0)
}, 120_000)

test('programs of one piece are not shown as those of another, and what was left half made is there later', async () => {
  const { desk, page } = await laid(WORKSHOP)
  await desk.lay('otherone01', { ...example('saltmarsh-panel'), name: 'Another', markings: [] })
  await page.getByRole('button', { name: /Tide scale, figures/ }).waitFor()
  const go = (to: string) => page.getByRole('link', { name: to, exact: true }).click()
  await go('Pieces')
  await page
    .getByRole('link', { name: /Another/ })
    .first()
    .click()
  await go('Cuts')
  await page.locator('.cuts-right .programs, main .waits').first().waitFor()
  expect(await page.locator('#main').textContent()).not.toContain('Tide scale')
  // Away while they are made, and back.
  await go('Sheet')
  await go('Cuts')
  await page.locator('.cuts-right .programs').waitFor({ timeout: 60_000 })
  expect(await page.locator('#main').textContent()).not.toContain('Tide scale')
}, 120_000)

test('without a machine the way by hand stands there, and nothing of programs, zero or pins', async () => {
  const { page } = await laid(null, { viewport: PHONE })
  await soon(() => page.locator('main').textContent()).toContain('By hand')
  const words = await page.locator('main').textContent()
  expect(words).toMatch(/drill 9/)
  expect(words).not.toMatch(/program|zero|\bpin\b/i)
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390)
})
