import type { Locator, Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { frameOf } from '../../engine/src/draw/frame.ts'
import { newPiece } from '../../engine/src/piece/kind.ts'
import type { ShapeDocument } from '../../engine/src/piece/shape-field.ts'
import { browser, PHONE, soon } from './browser.ts'
import type { Desk, Document } from './desk.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
type Entry = Record<string, unknown>
const PIECE = 'handheld01'

interface Laid {
  readonly desk: Desk
  readonly page: Page
  readonly outline: () => Promise<ShapeDocument>
}

async function laid(document: Document, wanted: Parameters<typeof open>[1] = {}): Promise<Laid> {
  const desk = await openDesk()
  await desk.lay(PIECE, document)
  const { page } = await open(`${desk.url}/piece/${PIECE}`, wanted)
  await page.locator('.plane .part').first().waitFor()
  const outline = async () =>
    ((await desk.piece(PIECE)).document['timbers'] as Entry[])[0]!['outline'] as ShapeDocument
  return { desk, page, outline }
}

/** A board in the mould with room about it, so that it can be turned and sized (invented). */
function board(outline: ShapeDocument): Document {
  const made = structuredClone(newPiece('panel')) as unknown as Document
  const first = (made['timbers'] as Entry[])[0]!
  return { ...made, timbers: [{ ...first, outline }] }
}

const part = (page: Page, i = 0) => page.locator(`.plane .part[data-at="/timbers/${i}"]`)

async function take(page: Page): Promise<void> {
  await part(page).focus()
  if ((await part(page).getAttribute('aria-pressed')) !== 'true') await page.keyboard.press('Enter')
  await page.locator('.frame-row').waitFor()
}

async function middle(l: Locator): Promise<readonly [number, number]> {
  const b = (await l.boundingBox())!
  return [b.x + b.width / 2, b.y + b.height / 2]
}

/**
 * What each of 40 moves of the mouse changed in the document, as counts of changed nodes by the screen's own
 * observer. Work that grows with the piece shows here whatever else the machine does; the time of a frame is
 * measured in `speed/`.
 */
async function changedByMoves(page: Page, x: number, y: number): Promise<readonly number[]> {
  const counts: number[] = []
  for (let k = 1; k <= 40; k++) {
    await page.evaluate(() => {
      const seen = new Set<Node>()
      const observer = new MutationObserver(records => {
        for (const r of records) seen.add(r.target)
      })
      const wanted = { subtree: true, childList: true, attributes: true, characterData: true }
      observer.observe(document.body, wanted)
      Object.assign(globalThis, { drag: { seen, observer } })
    })
    await page.mouse.move(x + k / 2, y - k)
    counts.push(
      await page.evaluate(async () => {
        // One move a frame, as a hand makes them, and the frame after it.
        for (const _ of [1, 2]) await new Promise(done => requestAnimationFrame(done))
        const { drag } = globalThis as unknown as { drag: { seen: Set<Node>; observer: MutationObserver } }
        for (const r of drag.observer.takeRecords()) drag.seen.add(r.target)
        drag.observer.disconnect()
        return drag.seen.size
      })
    )
  }
  return counts
}

const revision = (desk: Desk) => async () => (await desk.piece(PIECE)).revision

test('turned by its handle about its middle, drawn to a quarter, as one edit', async () => {
  const { desk, page, outline } = await laid(board({ rectangle: [120, 80], at: [-20, 10] }))
  await take(page)
  const grip = page.getByRole('button', { name: /: Turn\./ }).locator('.reach')
  const [x, y] = await middle(grip)
  const [cx, cy] = await middle(part(page))
  // A press that trembles changes nothing.
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x + 1, y)
  await page.mouse.up()
  // A quarter to the left, two degrees short of it.
  const r = Math.hypot(x - cx, y - cy)
  const a = (88 * Math.PI) / 180
  await page.mouse.down()
  await page.mouse.move(x - 30, y + 10, { steps: 3 })
  await page.mouse.move(cx - r * Math.sin(a), cy - r * Math.cos(a), { steps: 3 })
  expect(await page.locator('.drag-says').textContent()).toBe('90°')
  await page.mouse.up()
  await soon(revision(desk)).toBe(2)
  const after = await outline()
  expect(after.turn).toBe(90)
  expect(frameOf(after).x).toBeCloseTo(-20, 3)
  expect(frameOf(after).y).toBeCloseTo(10, 3)
  await soon(() => part(page).getAttribute('transform')).toBeNull()
})

test('numbers are typed exactly, in any unit, each as one edit', async () => {
  const { desk, page, outline } = await laid(board({ rectangle: [120, 80], at: [-20, 10] }))
  await take(page)
  const field = (name: string) => page.locator('.frame-row').getByRole('textbox', { name, exact: true })
  const type = async (name: string, text: string, to: number) => {
    await field(name).fill(text)
    await page.keyboard.press('Enter')
    await soon(revision(desk)).toBe(to)
  }
  await type('Width', '100.25', 2)
  await type('Centre x', '1/2 in', 3)
  await type('Turned', '15', 4)
  const { x, y, ...rest } = frameOf(await outline())
  expect(rest).toEqual({
    widthMm: expect.closeTo(100.25, 6),
    heightMm: expect.closeTo(80, 6),
    turnDeg: 15
  })
  expect([x, y]).toEqual([expect.closeTo(12.7, 3), expect.closeTo(10, 3)])
  await field('Width').fill('no number')
  await page.keyboard.press('Enter')
  await page.locator('.frame-row').getByRole('alert').waitFor()
})

test('a side is drawn to the middle of the piece with a guide, and goes free with Alt', async () => {
  const { desk, page, outline } = await laid(board({ rectangle: [120, 80], at: [-70, 10] }))
  await take(page)
  const px = (await part(page).boundingBox())!.width / 120
  const grip = page.getByRole('button', { name: /Size, right\./ }).locator('.reach')
  const [x, y] = await middle(grip)
  await page.mouse.move(x, y)
  await page.mouse.down()
  // The right side stands at −10: 10.4 mm to the centre line and a little over.
  await page.mouse.move(x + 10.4 * px, y, { steps: 5 })
  expect(await page.locator('.guides .guide').count()).toBeGreaterThan(0)
  await soon(() => page.getByRole('textbox', { name: 'Width', exact: true }).inputValue()).toBe('130')
  await page.keyboard.down('Alt')
  await page.mouse.move(x + 10.5 * px, y, { steps: 2 })
  expect(await page.locator('.guides .guide').count()).toBe(0)
  await page.keyboard.up('Alt')
  await page.mouse.move(x + 10.4 * px, y, { steps: 2 })
  await page.mouse.up()
  await soon(revision(desk)).toBe(2)
  const frame = frameOf(await outline())
  expect(frame.widthMm).toBeCloseTo(130, 3)
  expect(frame.x - frame.widthMm / 2).toBeCloseTo(-130, 3)
})

test('points are added, moved and taken out by mouse; Delete removes the part', async () => {
  const polygon: [number, number][] = [
    [-130, -60],
    [-30, -60],
    [-40, 70],
    [-130, 70]
  ]
  const { desk, page, outline } = await laid(board({ polygon }))
  await take(page)
  await page.getByRole('button', { name: 'Points', exact: true }).click()
  const px = (await part(page).boundingBox())!.width / 100
  const between = page.getByRole('button', { name: /After point 1\./ }).locator('.reach')
  const [x, y] = await middle(between)
  await page.mouse.move(x, y)
  await page.mouse.down()
  await page.mouse.move(x, y + 20 * px, { steps: 4 })
  await page.mouse.up()
  await soon(revision(desk)).toBe(2)
  const drawn = (await outline()).polygon!
  expect(drawn).toHaveLength(5)
  expect(drawn[1]).toEqual([expect.closeTo(-80, 0), expect.closeTo(-80, 0)])
  const row = page.locator('.frame-row')
  await soon(() => row.textContent()).toContain('Point 2')
  await row.getByRole('textbox', { name: 'y', exact: true }).fill('-77.5')
  await page.keyboard.press('Enter')
  await soon(revision(desk)).toBe(3)
  expect((await outline()).polygon![1]![1]).toBe(-77.5)
  await row.getByRole('button', { name: 'Take it out' }).click()
  await soon(async () => (await outline()).polygon).toEqual(polygon)
  await part(page).focus()
  await page.keyboard.press('Delete')
  await soon(async () => (await desk.piece(PIECE)).document['timbers']).toEqual([])
})

test('a move of a drag changes what is in hand alone, however many parts lie on the plan', async () => {
  const made = structuredClone(newPiece('tabletop')) as unknown as Document
  const wave = (x: number): ShapeDocument => ({
    polygon: [
      ...Array.from({ length: 200 }, (_, k): [number, number] => [
        x + 3 + 0.5 * Math.sin(k / 7),
        -150 + (k * 300) / 199
      ]),
      [x, 150],
      [x, -150]
    ]
  })
  const timbers = Array.from({ length: 40 }, (_, k) => ({
    ...(made['timbers'] as Entry[])[0]!,
    id: `stave ${k + 1}`,
    outline: wave(-200 + 10 * k),
    underside: undefined
  }))
  const { page } = await laid(JSON.parse(JSON.stringify({ ...made, timbers })) as Document)
  await take(page)
  await soon(() => page.locator('.sheet.old').count()).toBe(0)
  const [x, y] = await middle(part(page))
  await page.mouse.move(x, y)
  await page.mouse.down()
  const changed = await changedByMoves(page, x, y)
  expect(await part(page).getAttribute('transform')).toContain('matrix')
  expect(Math.max(...changed)).toBeGreaterThan(0)
  // The part, its frame and handles, the typed figures of the row: the 39 other parts are not touched.
  expect(Math.max(...changed)).toBeLessThan(30)
  // The measure itself: a listener that touches every part is seen.
  await page.evaluate(() => {
    addEventListener('pointermove', () => {
      for (const p of document.querySelectorAll('.plane .part'))
        p.setAttribute('data-seen', `${performance.now()}`)
    })
  })
  expect(Math.min(...(await changedByMoves(page, x, y)))).toBeGreaterThanOrEqual(40)
  await page.mouse.up()
})

test('on a phone a press takes a part in hand, moves no plan, and its handles are 44 px across', async () => {
  const { page } = await laid(board({ rectangle: [120, 80], at: [-20, 10] }), {
    viewport: PHONE,
    hasTouch: true,
    isMobile: true
  })
  const before = await middle(part(page))
  await part(page).tap()
  await page.locator('.frame-row').waitFor()
  const after = await middle(part(page))
  expect(Math.hypot(after[0] - before[0], after[1] - before[1])).toBeLessThan(0.5)
  const reaches = await page.locator('.handle .reach').all()
  expect(reaches.length).toBeGreaterThan(4)
  for (const r of reaches) expect((await r.boundingBox())!.width).toBeGreaterThanOrEqual(43.9)
})

test('cuts are taken in hand: a pocket is sized and typed, a groove is moved by its points', async () => {
  const desk = await openDesk()
  await desk.lay(PIECE, example('saltmarsh-panel'))
  const { page } = await open(`${desk.url}/piece/${PIECE}`)
  const cuts = example('saltmarsh-panel')['cuts'] as Entry[]
  const at = (id: string) => cuts.findIndex(c => c['id'] === id)
  const cut = async (id: string) => ((await desk.piece(PIECE)).document['cuts'] as Entry[])[at(id)]!
  const grip = (id: string) => page.locator(`.plane .part[data-at="/cuts/${at(id)}"]`)
  await grip('switch pocket').waitFor()
  // The cut that makes the outline would lie over everything.
  expect(await grip('trim').count()).toBe(0)

  const before = frameOf((await cut('switch pocket'))['shape'] as ShapeDocument)
  await grip('switch pocket').focus()
  await page.keyboard.press('Enter')
  await page.getByRole('textbox', { name: 'Width', exact: true }).fill(String(before.widthMm + 3))
  await page.keyboard.press('Enter')
  await soon(revision(desk)).toBe(2)
  const sized = frameOf((await cut('switch pocket'))['shape'] as ShapeDocument)
  expect(sized.widthMm).toBeCloseTo(before.widthMm + 3, 6)
  expect([sized.x, sized.y]).toEqual([expect.closeTo(before.x, 6), expect.closeTo(before.y, 6)])

  const points = async () => ((await cut('cable channel'))['along'] as { points: [number, number][] }).points
  const was = await points()
  await grip('cable channel').focus()
  await page.keyboard.press('Enter')
  await page.keyboard.press('ArrowRight')
  await soon(revision(desk)).toBe(3)
  expect(await points()).toEqual(was.map(([x, y]) => [expect.closeTo(x + 1, 6), y]))
})
