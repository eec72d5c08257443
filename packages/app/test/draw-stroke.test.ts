import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { newPiece } from '../../engine/src/piece/kind.ts'
import { browser, PHONE, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
type Entry = Record<string, unknown>
const PIECE = 'strokes001'

async function laid(kind: 'panel' | 'tabletop', wanted: Parameters<typeof open>[1] = {}) {
  const desk = await openDesk()
  const made = structuredClone(newPiece(kind)) as unknown as Document
  // One board to the left: the right half of the panel is free to draw on.
  const document = kind === 'panel' ? { ...made, timbers: [(made['timbers'] as Entry[])[0]!] } : made
  await desk.lay(PIECE, document)
  const { page, context } = await open(`${desk.url}/piece/${PIECE}`, wanted)
  const part = page.locator('.plane .part').first()
  await part.waitFor()
  const stored = async () => (await desk.piece(PIECE)).document
  return { desk, page, context, part, stored }
}

/** The place of a millimetre of the plan on the screen, by the left board of the panel: x −153 to −50, y −103 to 103. */
async function placer(page: Page): Promise<(x: number, y: number) => { x: number; y: number }> {
  // Its own box of points, without the width of its line.
  const [a, d, e, f] = await page
    .locator('.plane .part')
    .first()
    .evaluate(el => {
      const box = (el as SVGPathElement).getBBox()
      const m = (el as SVGPathElement).getScreenCTM()!
      return [(m.a * box.width) / 103, (m.d * box.height) / 206, m.a * box.x + m.e, m.d * box.y + m.f]
    })
  return (x, y) => ({ x: e! + (x + 153) * a!, y: f! + (103 - y) * d! })
}

/** A wavy edge from the far side to the near one, mm: a live edge as a hand draws it (invented). */
const wave = (k: number): [number, number] => [84 + 6 * Math.sin(k / 6), 98 - (k * 196) / 60]

function straying(points: readonly (readonly [number, number])[]): number {
  // How far the drawn wave strays from the polygon made of it, mm: slow, segment by segment.
  let most = 0
  for (let k = 2; k <= 58; k++) {
    const [x, y] = wave(k)
    let near = Number.POSITIVE_INFINITY
    points.forEach(([ax, ay], i) => {
      const [bx, by] = points[(i + 1) % points.length]!
      const l2 = (bx - ax) ** 2 + (by - ay) ** 2
      const t = l2 === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / l2))
      near = Math.min(near, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)))
    })
    most = Math.max(most, near)
  }
  return most
}

const drawnTimber = async (stored: () => Promise<Document>) =>
  ((await stored())['timbers'] as Entry[])[1] as { outline: { polygon: [number, number][] } } | undefined

test('a live edge drawn freehand by mouse becomes a simplified polygon as near as a pencil line', async () => {
  const { page, stored } = await laid('panel')
  const at = await placer(page)
  await page.getByRole('button', { name: 'Draw a live edge' }).click()
  const first = at(...wave(0))
  await page.mouse.move(first.x, first.y)
  await page.mouse.down()
  for (let k = 1; k <= 60; k++) {
    const p = at(...wave(k))
    await page.mouse.move(p.x, p.y)
  }
  await page.mouse.up()
  await page.locator('.drawn-point').first().waitFor()
  await page.keyboard.press('Enter')
  await page.getByText('Now the lower line').waitFor()
  await page.keyboard.press('Enter')
  await soon(async () => (await drawnTimber(stored)) !== undefined).toBe(true)
  const { polygon } = (await drawnTimber(stored))!.outline
  expect(polygon.length).toBeLessThan(60)
  expect(straying(polygon)).toBeLessThan(1)
  // Closed along the edge of the mould: beyond the right side of the piece, 150 mm.
  expect(Math.max(...polygon.map(p => p[0]))).toBeGreaterThan(150)
})

test('a finger draws it on a phone, and the page does not scroll under it', async () => {
  const { page, context, stored } = await laid('panel', { viewport: PHONE, hasTouch: true, isMobile: true })
  await page.getByRole('button', { name: 'Draw a live edge' }).tap()
  await page.locator('.plane .catch').waitFor()
  const at = await placer(page)
  const before = await page.evaluate(() => scrollY)
  const cdp = await context.newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', k: number) =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [at(...wave(k))] })
  await touch('touchStart', 0)
  for (let k = 1; k <= 60; k++) await touch('touchMove', k)
  await touch('touchEnd', 60)
  await page.locator('.drawn-point').first().waitFor()
  expect(await page.evaluate(() => scrollY)).toBe(before)
  await page.getByRole('button', { name: 'End the line' }).tap()
  await page.getByText('Now the lower line').waitFor()
  await page.getByRole('button', { name: 'End the line' }).tap()
  await soon(async () => (await drawnTimber(stored)) !== undefined).toBe(true)
  // A pixel of this screen is over a millimetre of the piece.
  expect(straying((await drawnTimber(stored))!.outline.polygon)).toBeLessThan(2)
})

test('Escape breaks off a drag: nothing is changed, the part stays in hand', async () => {
  const { desk, page, part } = await laid('panel')
  await part.focus()
  await page.keyboard.press('Enter')
  const b = (await part.boundingBox())!
  await page.mouse.move(b.x + b.width / 2, b.y + 40)
  await page.mouse.down()
  await page.mouse.move(b.x + b.width / 2 + 60, b.y + 60, { steps: 4 })
  expect(await part.getAttribute('transform')).toContain('matrix')
  await page.keyboard.press('Escape')
  expect(await part.getAttribute('transform')).toBeNull()
  await page.mouse.move(b.x + b.width / 2 + 90, b.y + 60, { steps: 2 })
  await page.mouse.up()
  expect(await part.getAttribute('aria-pressed')).toBe('true')
  expect(await part.getAttribute('transform')).toBeNull()
  // Had it been an edit, it would be sent within this time.
  await page.waitForTimeout(800)
  expect(await desk.revisions(PIECE)).toBe(1)
})

test('a boundary in the section is dragged by half millimetres and changes the depth below it', async () => {
  const { page, stored } = await laid('tabletop')
  await page.getByRole('button', { name: 'stretched × 3' }).click()
  const level = page.getByRole('slider', { name: /Upper face of Lower river/ })
  const depth = async () => ((await stored())['pours'] as Entry[])[0]!['depth'] as number
  const before = await depth()
  const grip = (await level.locator('.grip').boundingBox())!
  const y = grip.y + grip.height / 2
  // Heights stand three times as large as lengths; what a millimetre of length is, the drawing says.
  const px = await level.locator('.grip').evaluate(el => (el as SVGPathElement).getScreenCTM()!.d)
  await page.mouse.move(grip.x + 20, y)
  await page.mouse.down()
  await page.mouse.move(grip.x + 20, y - 6 * px, { steps: 6 })
  const says = Number.parseFloat((await level.locator('text').textContent())!)
  await page.mouse.up()
  await soon(depth).toBe(says)
  expect(says).toBeGreaterThan(before)
  expect((says * 2) % 1).toBe(0)
  // The boundary now stands where it was let go.
  await soon(async () => {
    const now = (await level.locator('.grip').boundingBox())!
    return Math.abs(now.y + now.height / 2 - (y - 6 * px)) < 4 * px
  }).toBe(true)
})
