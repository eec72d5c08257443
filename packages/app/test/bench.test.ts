import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { readPaper } from '../../server/test/read-paper.ts'
import { browser, PHONE, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
const MEANT = /ERR_INTERNET_DISCONNECTED|ERR_FAILED|ERR_CONNECTION_REFUSED/
const PHONE_AT_BENCH = { viewport: PHONE, timezoneId: 'Europe/Berlin', meant: MEANT }

/** Invented; as small as what is recorded of a build allows. */
const TILE: Document = {
  castwright: 1,
  name: 'Invented tile between two banks',
  outline: { rectangle: [140, 110] },
  mould: { margin: 8 },
  timbers: [44, -44].map((y, k) => ({
    id: k === 0 ? 'north bank' : 'south bank',
    species: 'ash-white',
    outline: { rectangle: [148, 30], at: [0, y] },
    thickness: 24,
    moisture: 8.5
  })),
  pours: [
    { id: 'reed green', resin: 'deep', tint: [{ pigment: 'green-paste', percent: 1 }], height: 14 },
    { id: 'clear', resin: 'deep', height: 24 }
  ],
  finish: { both: { coat: 'hardwax-oil' } }
}

const title = (page: Page) => page.locator('.bench-step h2').textContent()

/** Presses "done" and holds it, by the clock of the page. */
async function hold(page: Page): Promise<void> {
  const button = page.locator('.hold')
  await button.hover()
  await page.mouse.down()
  await page.clock.runFor(2100)
  await page.mouse.up()
}

interface Recorded {
  readonly id: string
  readonly kind: string
  readonly step?: string
  readonly at: string
  readonly [more: string]: unknown
}

test('a build at the bench: done by holding, a pour counted from its record, no network in the middle, a second device', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', example('saltmarsh-panel'))
  const readings = async () =>
    ((await (await desk.ask('GET', '/api/pieces/panel123/readings')).json()) as { readings: Recorded[] })
      .readings
  const { page, context } = await open(`${desk.url}/piece/panel123`, PHONE_AT_BENCH)
  await page.clock.install({ time: new Date('2026-11-28T16:00:00+01:00') })
  await page.goto(`${desk.url}/piece/panel123/bench`)
  await soon(() => title(page)).toBe('Make the mould')
  await page.evaluate(() => navigator.serviceWorker.ready.then(r => r.active?.state))

  // A short press does nothing; one that is held goes on to the next step.
  await page.locator('.hold').click()
  expect(await title(page)).toBe('Make the mould')
  const steps = [
    'Prepare north bank',
    'Prepare south bank',
    'Set north bank',
    'Set south bank',
    'Pour reed green'
  ]
  for (const [k, next] of steps.entries()) {
    await hold(page)
    await soon(() => title(page)).toBe(next)
    // On record before the clock of the page leaps on, so that a slow server is not taken for one that is away. At the
    // first reading the server loads the engine.
    await expect.poll(async () => (await readings()).length, { timeout: 30_000 }).toBe(k + 1)
  }

  // Poured: the pad opens with what the plan mixes; the windows count from now.
  await page.getByRole('button', { name: 'Poured' }).click()
  const pad = page.locator('.pad input')
  expect(Number(await pad.inputValue())).toBeGreaterThan(400)
  await pad.fill('430')
  await page.getByRole('button', { name: 'Enter, g' }).click()
  await soon(() => page.locator('.time h3').textContent()).toBe('Bubbles, pass 1 of 6')

  await context.setOffline(true)
  await hold(page)
  await soon(() => title(page)).toMatch(/^Wait about/)
  await soon(() => page.locator('.bench-head .f').textContent()).toBe('no network, kept here')
  expect(await page.locator('.count').textContent()).toContain('until it opens')

  // A phone that slept through the night: the count is right at once, and within the window it says so.
  await page.clock.fastForward('20:00:00')
  await soon(() => page.locator('.count').textContent()).toContain('left of the best time')
  const before = await page.locator('.count b').textContent()
  await page.getByRole('button', { name: 'Tacky: print, no smear' }).click()
  await soon(() => page.locator('.recorded p').textContent()).toContain('Tacky')
  await page.reload()
  await soon(() => title(page)).toMatch(/^Wait about/)
  expect(before).toMatch(/^\d+:\d\d$|^\d+$/)
  await soon(() => page.locator('.count').textContent()).toContain('left of the best time')

  // Back in reach: each of them counts once.
  await context.setOffline(false)
  await soon(async () => (await readings()).map(r => r.kind).sort()).toEqual(
    ['done', 'done', 'done', 'done', 'done', 'done', 'poured', 'stage'].sort()
  )
  const poured = (await readings()).find(r => r.kind === 'poured')!
  expect(poured).toMatchObject({ pour: 'reed green', mass: 430 })
  expect(Date.parse(poured.at)).toBeGreaterThanOrEqual(Date.parse('2026-11-28T16:00:00+01:00'))
  expect(new Set((await readings()).map(r => r.id)).size).toBe(8)

  // Another device stands at the same step, and what it records comes here.
  const other = await open(`${desk.url}/piece/panel123/bench`, PHONE_AT_BENCH)
  await soon(() => title(other.page)).toMatch(/^Wait about/)
  await other.page.clock.install()
  await hold(other.page)
  await soon(() => title(other.page)).toMatch(/Set the stones/)
  await soon(() => title(page)).toMatch(/Set the stones/)

  // Taken back there: both stay on record, neither counts, and this device follows.
  await other.page.getByRole('button', { name: 'Take it back' }).click()
  await soon(() => title(page)).toMatch(/^Wait about/)
  expect((await readings()).filter(r => r.kind === 'withdrawn')).toHaveLength(1)
}, 90_000)

test('a level that breaks the plan: the ways on appear, each with its cost; one is taken', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', example('saltmarsh-panel'))
  const at = (hour: number) => `2026-11-28T${String(hour).padStart(2, '0')}:00+01:00`
  let n = 0
  const post = (record: object) =>
    desk.ask('POST', '/api/pieces/panel123/readings', { id: `before-${n++}0`, ...record })
  for (const step of ['make mould', 'set timber north bank', 'set timber south bank'])
    await post({ kind: 'done', step, at: at(9) })
  await post({ kind: 'poured', pour: 'reed green', mass: 430, at: at(10) })
  const { page } = await open(`${desk.url}/piece/panel123/bench`, {
    ...PHONE_AT_BENCH,
    at: '2026-11-29T12:00:00+01:00'
  })
  await soon(() => title(page)).toMatch(/green/)
  await page.getByRole('button', { name: 'Level over the mould base' }).click()
  await page.locator('.pad input').fill('9')
  await page.getByRole('button', { name: 'Enter, mm' }).click()
  await page.locator('.ways-on .best').waitFor()
  expect(await page.locator('.rescue h2').textContent()).toMatch(/^Reed green stands 9.0 mm high/)
  // Nothing is asserted: it asks.
  expect(await page.locator('.question legend').count()).toBeGreaterThan(0)
  for (const word of ['time', 'money', 'risk'])
    expect(await page.locator('.ways-on .best dt').allTextContents()).toContain(word)
  expect(await page.locator('.ways-on > li').count()).toBeGreaterThan(1)

  // Taken: what was measured stays as it is, and 14 less 9 is poured on it, so that the clear lies where it was to lie.
  const before = await desk.piece('panel123')
  const first = page.locator('.ways-on .best')
  expect(await first.locator('h3').textContent()).toBe('Pour 5 mm more of the same on it')
  await first.getByRole('button', { name: 'Take this' }).click()
  await page.locator('.bench-step').waitFor()
  await soon(() => desk.revisions('panel123')).toBe(before.revision + 1)
  const { pours } = (await desk.piece('panel123')).document as { pours: { id: string; height: number }[] }
  expect(pours.map(p => p.height)).toEqual([9, 14, 30])
}, 60_000)

test('the lot of a mix: pressed from the shelf or written, by keyboard, without network, and there again at the next batch', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', TILE)
  const lots = [
    { amount: 4000, lot: 'K2', expires: '2027-03-31' },
    { amount: 4000, lot: 'L-7' }
  ]
  const shop = { castwright: 1, prices: [{ item: 'deep', unit: 'g', pack: 1000, price: 20, lots }] }
  const kept = await desk.ask('PUT', '/api/shop', { base: 0, edit: 'shop-0001', document: shop })
  expect(kept.status, await kept.text()).toBe(200)
  const at = '2026-11-28T09:00+01:00'
  const steps = ['make mould', 'set timber north bank', 'set timber south bank']
  for (const [k, step] of steps.entries())
    await desk.ask('POST', '/api/pieces/panel123/readings', { id: `before-${k}0`, kind: 'done', step, at })
  const readings = async () =>
    ((await (await desk.ask('GET', '/api/pieces/panel123/readings')).json()) as { readings: Recorded[] })
      .readings
  const { page, context } = await open(`${desk.url}/piece/panel123/bench`, {
    ...PHONE_AT_BENCH,
    at: '2026-11-28T12:00:00+01:00'
  })
  await soon(() => title(page)).toBe('Pour reed green')
  await page.evaluate(() => navigator.serviceWorker.ready.then(r => r.active?.state))
  await context.setOffline(true)

  // By keys alone: the number has the focus, the lot is the next stop, the shelf's lots after it.
  await page.getByRole('button', { name: 'Mixing now' }).focus()
  await page.keyboard.press('Enter')
  const lot = page.getByLabel('Lot of resin and hardener')
  await lot.waitFor()
  expect(await lot.inputValue()).toBe('')
  expect(await page.locator('.pad-lot button').allTextContents()).toEqual(['K2', 'L-7'])
  expect(await page.locator('.pad-head input').evaluate(e => e === document.activeElement)).toBe(true)
  await page.keyboard.press('Tab')
  expect(await lot.evaluate(e => e === document.activeElement)).toBe(true)
  await page.keyboard.press('Tab')
  await page.keyboard.press('Space')
  expect(await lot.inputValue()).toBe('K2')
  expect(await page.locator('.pad-lot button').first().getAttribute('aria-pressed')).toBe('true')
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width)
  await page.locator('.pad-head input').focus()
  await page.keyboard.type('5')
  await page.locator('.pad-head input').fill('300')
  await page.keyboard.press('Enter')
  await soon(() => page.locator('.recorded p').textContent()).toMatch(/^Mixing now 300 g, lot K2, recorded/)

  // The next batch comes with it; what is written over it counts.
  await page.getByRole('button', { name: 'Mixing now' }).click()
  await soon(() => lot.inputValue()).toBe('K2')
  await lot.fill('  own   mark ')
  await page.keyboard.press('Enter')
  await soon(() => page.locator('.recorded p').textContent()).toContain('lot own mark')
  // No lot is no field of the record.
  await page.getByRole('button', { name: 'Mixing now' }).click()
  await soon(() => lot.inputValue()).toBe('own mark')
  await lot.fill('')
  await page.keyboard.press('Enter')
  await soon(() => page.locator('.recorded p').textContent()).not.toContain('lot')

  await context.setOffline(false)
  const mixed = async () => (await readings()).filter(r => r.kind === 'mixed')
  await soon(async () => (await mixed()).length).toBe(3)
  expect((await mixed()).map(r => [r['pour'], r['lot']])).toEqual([
    ['reed green', 'K2'],
    ['reed green', 'own mark'],
    ['reed green', undefined]
  ])
  expect((await mixed())[0]).toMatchObject({ mass: 300 })

  // On the record as made.
  const record = await desk.ask('GET', '/api/pieces/panel123/as-made.pdf?asOf=2026-11-29T10:00%2B01:00')
  const { words } = await readPaper(new Uint8Array(await record.arrayBuffer()))
  expect(words).toContain('K2, own mark')
}, 90_000)

test('while a stop stands it says so, and never that the piece is done', async () => {
  const desk = await openDesk()
  await desk.lay('spoiled1', example('saltmarsh-panel.spoiled'))
  const { page } = await open(`${desk.url}/piece/spoiled1/bench`, PHONE_AT_BENCH)
  const note = page.locator('.bench-stop')
  await note.waitFor({ timeout: 30_000 })
  expect(await note.locator('.stop').count()).toBe(3)
  expect(await page.locator('#main').textContent()).toContain('Nothing was begun')
  expect(await page.locator('#main').textContent()).not.toMatch(/are done|can go out/)
}, 60_000)

test('begun by a press; a photo and a note taken without network are made small, sent once, and stand with the step', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', TILE)
  const readings = async () =>
    ((await (await desk.ask('GET', '/api/pieces/panel123/readings')).json()) as { readings: Recorded[] })
      .readings
  const { page, context } = await open(`${desk.url}/piece/panel123/bench`, PHONE_AT_BENCH)
  await page.clock.install({ time: new Date('2026-11-28T16:00:00+01:00') })
  await page.goto(`${desk.url}/piece/panel123/bench`)
  await soon(() => title(page)).toBe('Make the mould')
  await page.evaluate(() => navigator.serviceWorker.ready.then(r => r.active?.state))
  await page.getByRole('button', { name: 'I begin now' }).click()
  await soon(() => page.locator('.was-done').textContent()).toBe('Begun at 16:00')
  await expect.poll(async () => (await readings()).length, { timeout: 30_000 }).toBe(1)

  await context.setOffline(true)
  // As a camera gives it: 2400 px wide and without a name that says what it is.
  const taken = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(2400, 1800)
    const pen = canvas.getContext('2d')!
    for (let k = 0; k < 4000; k++) {
      pen.fillStyle = `hsl(${(k * 37) % 360} 60% ${20 + (k % 60)}%)`
      pen.fillRect((k * 971) % 2400, (k * 577) % 1800, 90, 60)
    }
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer())
    return Array.from(bytes)
  })
  const camera = page.locator('.bench-keep input[type=file]')
  expect(await camera.getAttribute('accept')).toBe('image/*')
  expect(await camera.getAttribute('capture')).toBe('environment')
  await camera.setInputFiles({ name: 'image', mimeType: 'image/png', buffer: Buffer.from(taken) })
  await page.locator('.bench-kept img').waitFor()
  await page.getByRole('button', { name: 'Write a note' }).click()
  await page.locator('.bench-note textarea').fill('Second joint of the frame\nsealed twice')
  await page.getByRole('button', { name: 'Keep it' }).click()
  await soon(() => page.locator('.bench-kept').textContent()).toContain('sealed twice')
  // What is no picture is said, and nothing is recorded.
  await camera.setInputFiles({ name: 'x.png', mimeType: 'image/png', buffer: Buffer.from('no picture') })
  await soon(() => page.locator('.bench-keep p').textContent()).toContain('no picture')
  await page.reload()
  await page.locator('.bench-kept img').waitFor()

  await context.setOffline(false)
  await soon(async () => (await readings()).map(r => r.kind)).toEqual(['began', 'photo', 'note'])
  const [, photo, note] = await readings()
  expect(photo).toMatchObject({ step: 'make mould' })
  expect(note).toMatchObject({ step: 'make mould', note: 'Second joint of the frame sealed twice' })
  const { photos } = (await (await desk.ask('GET', '/api/pieces/panel123/photos')).json()) as {
    photos: { id: string; width: number; height: number; size: number }[]
  }
  expect(photos).toHaveLength(1)
  expect(photos[0]).toMatchObject({ id: photo!['photo'], width: 1600, height: 1200 })
  expect(photos[0]!.size).toBeLessThan(900_000)

  // On record beside the piece: a page with the photo, its moment and its step.
  const record = await desk.ask('GET', '/api/pieces/panel123/as-made.pdf?asOf=2026-11-29T10:00%2B01:00')
  expect(record.status).toBe(200)
  const pdf = Buffer.from(await record.arrayBuffer()).toString('latin1')
  expect(pdf).toContain('/DCTDecode')
  expect(pdf).toMatch(/\/Width 1600\n?/)
}, 90_000)
