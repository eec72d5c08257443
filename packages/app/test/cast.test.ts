import type { BrowserContext, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { peakAt } from '../../engine/src/cast/whole/whole-cast.ts'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { layerAt } from '../../engine/src/sheets/heat.ts'
import { fullPlan } from '../../engine/src/whole.ts'
import { browser, soon } from './browser.ts'
import { example, openDesk } from './desk.ts'
import { castWhole } from './screens.ts'

/**
 * The cast of the whole mould in the app, against the engine asked here without it: same piece, same shop, no worker,
 * no messages between.
 */
const open = browser()
const PIECE = example('saltmarsh-panel')
const AS_OF = '2026-03-02T09:00:00.000Z'

const figure = (text: string | null) => Number((text ?? '').replace('−', '-').replace(/[^-0-9.]/g, ''))

/**
 * Counts in the worker how often WebAssembly was compiled and how often that was refused; its policy stays real. For
 * a window without a service worker, which would answer from what it keeps.
 */
async function counted(context: BrowserContext, policy: (of: string) => string): Promise<void> {
  await context.route(/\/assets\/main-[^/]*\.js$/, async route => {
    const answer = await route.fetch()
    const headers = answer.headers()
    const name = 'content-security-policy'
    await route.fulfill({
      response: answer,
      headers: { ...headers, [name]: policy(headers[name]!) },
      body: `${COUNTER}${await answer.text()}`
    })
  })
}

const COUNTER = `const Own = WebAssembly.Module
globalThis.kernels = { compiled: 0, refused: 0 }
WebAssembly.Module = class extends Own {
  constructor(bytes) {
    try {
      super(bytes)
      kernels.compiled++
    } catch (e) {
      kernels.refused++
      throw e
    }
  }
}
`

function kernels(page: Page): Promise<{ compiled: number; refused: number }> {
  return page.workers()[0]!.evaluate('kernels')
}

test('the whole mould is cast in the worker, by its kernel in WebAssembly, and says how far it is', async () => {
  const own = fullPlan(
    { piece: checkPiece(PIECE, 'panel'), shop: usualShop(), files: {}, source: 'panel' },
    { asOf: AS_OF }
  )
  const { map } = own.work.whole!
  const desk = await openDesk()
  await desk.lay('panel123', PIECE)
  const { page, context } = await open(desk.url, {
    at: AS_OF,
    meant: /Service Worker/,
    serviceWorkers: 'block'
  })
  await counted(context, policy => policy)
  await page.goto(`${desk.url}/piece/panel123`)
  // Column first, and it says so; then a share that grows; then the coarse cast, or straight the full one.
  await soon(() => page.locator('.goes-by').first().textContent()).toMatch(/^Up and down alone/)
  await soon(() => page.locator('.casting').textContent()).toMatch(/^Casting the whole mould, \d+ %$/)
  expect(await page.getByRole('button', { name: 'Lay heat over it' }).count()).toBe(1)
  await castWhole(page)
  expect(await page.locator('.verdict [role=status]').last().textContent()).toBe('The whole mould is cast.')

  const peaks = page.locator('.layer .facts > div:nth-child(4) dd')
  const shownC = async (i: number) => Number.parseInt((await peaks.nth(i).textContent())!, 10)
  // Layers stand front to back: clear, then green.
  const pours = own.plan.pours.filter(p => p.kind === 'cast')
  for (const [i, pour] of [pours[1]!, pours[0]!].entries())
    expect(await shownC(i), pour.id).toBe(Math.round(pour.cast!.peakC))
  // A column of the same layers is hotter: what is shown is not the column's.
  expect(Math.round(own.plan.pours[0]!.cast!.peakC)).toBeLessThan(30)

  // The kernel was compiled in the worker, under the policy of the server.
  expect(await kernels(page)).toEqual({ compiled: 1, refused: 0 })

  // Heat on the plan: off at first; what is said at the pointer is the map's own.
  expect(await page.locator('g.heat').count()).toBe(0)
  await page.getByRole('button', { name: 'Lay heat over it' }).click()
  await page.locator('g.heat .i-hatch').first().waitFor({ state: 'attached' })
  const core = page.locator('#core')
  const slider = page.getByRole('slider', { name: 'Heat: Height as cast' })
  const here = async () => {
    const k = Number(await slider.inputValue())
    const z = (map.facesMm[k]! + map.facesMm[k + 1]!) / 2
    const [x, y] = [await core.getAttribute('data-x'), await core.getAttribute('data-y')].map(Number)
    return {
      z,
      c: peakAt(map, x!, y!, z),
      said: figure((await page.locator('#heat-here').textContent())!.replace('°C', ''))
    }
  }
  const first = await here()
  expect(first.said).toBe(Math.round(first.c))
  // It begins at the height of the hottest place of all.
  const hottest = own.work.whole!.hottest.flatMap((h, i) =>
    h === null ? [] : [{ h, c: own.work.casts[i]!.peakC }]
  )
  const top = hottest.reduce((a, b) => (b.c > a.c ? b : a))
  expect(Number(await slider.inputValue())).toBe(layerAt(map, top.h[2]))
  await page.locator('.plane').focus()
  for (let k = 0; k < 6; k++) await page.keyboard.press('Shift+ArrowUp')
  await soon(() => page.locator('#core-says').textContent()).toMatch(/Heat: /)
  const moved = await here()
  expect(moved.said).toBe(Math.round(moved.c))
  await slider.press('End')
  const high = await here()
  expect(high.z).toBeGreaterThan(first.z)
  expect(high.said).toBe(Math.round(high.c))

  // Other units are drawn from the cast that is there: no new one.
  await page
    .locator('.units', { has: page.getByRole('group', { name: 'length', includeHidden: true }) })
    .locator('summary')
    .click()
  await page.getByRole('button', { name: '°F', exact: true }).click()
  await soon(() => page.locator('#heat-here').textContent()).toMatch(/°F/)
  await soon(() => peaks.first().textContent()).toContain('°F')
  expect(await page.locator('.casting').count()).toBe(0)
  expect(await page.locator('.goes-by').first().textContent()).toBe('The whole mould, cast finely.')
}, 90_000)

test('where the policy allows no WebAssembly the plain kernel casts', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', PIECE)
  const { page, context } = await open(desk.url, {
    at: AS_OF,
    meant: /wasm-eval|WebAssembly|Service Worker/,
    serviceWorkers: 'block'
  })
  await counted(context, policy => policy.replace(" 'wasm-unsafe-eval'", ''))
  await page.goto(`${desk.url}/piece/panel123`)
  await soon(() => page.locator('.casting').textContent()).toMatch(/, [1-9]\d* %$/)
  const { compiled, refused } = await kernels(page)
  expect(compiled).toBe(0)
  expect(refused).toBeGreaterThan(0)
})

test('a depth is tried by keys and by hand, changes nothing, is taken by a press and undone', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', PIECE)
  const document = async () => (await desk.piece('panel123')).document
  const { page } = await open(`${desk.url}/piece/panel123`)
  await castWhole(page)
  const layer = page.locator('.layer').nth(1)
  const peak = async () => Number.parseInt((await layer.locator('.tried-peak b').textContent())!, 10)
  await layer.locator('.what-if > summary').click()
  const depth = layer.getByRole('slider', { name: 'Reed green: Depth as cast' })
  const take = layer.getByRole('button', { name: /^Take / })
  expect(await take.isDisabled()).toBe(true)
  expect(await depth.getAttribute('aria-valuetext')).toBe('14 mm')
  // The limit and what a millimetre does are said, from the search on the whole mould.
  expect(await layer.locator('.what-if').textContent()).toMatch(/1 mm more adds −?[\d.]+ °C/)
  expect(await layer.locator('.what-if').textContent()).toMatch(
    /top of the band (meets|is over)|does the top of the band meet/
  )
  const curve = await layer.locator('svg.curve').innerHTML()

  await depth.focus()
  await page.keyboard.press('ArrowRight')
  await layer.locator('.tried-peak').waitFor()
  await soon(() => depth.getAttribute('aria-valuetext')).toBe('14.5 mm')
  await page.keyboard.press('End')
  await soon(() => depth.getAttribute('aria-valuetext')).toBe('28 mm')
  // An estimate at once, then a cast of the whole mould at rest; the plan's curve stays dashed beside it.
  await soon(() => layer.locator('.by').textContent()).toBe('The whole mould, cast coarsely.')
  await soon(() => layer.locator('.waits-on').count()).toBe(0)
  const deep = await peak()
  const plain = Number.parseInt((await layer.locator('.facts > div:nth-child(4) dd').textContent())!, 10)
  expect(deep, 'twice the depth is hotter').toBeGreaterThan(plain)
  expect(await layer.locator('svg.curve').innerHTML()).not.toBe(curve)
  expect(await document()).toEqual(PIECE)
  expect(await layer.locator('.moved div').count()).toBeGreaterThan(0)

  // By hand, and a warmer room on top.
  const box = (await depth.boundingBox())!
  await page.mouse.move(box.x + box.width - 9, box.y + box.height / 2)
  await page.mouse.down()
  await page.mouse.move(box.x + box.width * 0.6, box.y + box.height / 2, { steps: 4 })
  await page.mouse.up()
  await soon(async () => Number(await depth.inputValue())).toBeLessThan(24)
  const room = layer.getByRole('slider', { name: 'Reed green: Room' })
  await soon(() => layer.locator('.waits-on').count()).toBe(0)
  const before = await peak()
  await room.press('End')
  await soon(() => room.getAttribute('aria-valuetext')).toMatch(/10 °C warmer/)
  await soon(peak).toBeGreaterThan(before + 5)
  await layer.getByRole('button', { name: 'As it stands' }).click()
  await soon(() => layer.locator('svg.curve').innerHTML()).toBe(curve)

  for (let k = 0; k < 3; k++) await depth.press('ArrowRight')
  await soon(() => take.textContent()).toBe('Take 15.5 mm')
  await take.click()
  await soon(async () => JSON.stringify((await document())['pours'])).toContain('"depth":15.5')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await soon(document).toEqual(PIECE)
}, 90_000)
