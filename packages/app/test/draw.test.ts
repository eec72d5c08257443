import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { boxOf } from '../../engine/src/draw/snap.ts'
import { newPiece } from '../../engine/src/piece/kind.ts'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { plan } from '../../engine/src/plan.ts'
import { browser, soon } from './browser.ts'
import type { Desk, Document } from './desk.ts'
import { openDesk } from './desk.ts'

const open = browser()
type Entry = Record<string, unknown>

/** The box of each timber as the engine itself reads the document: the truth the screen is held to, mm. */
function boxes(document: Document, files: Readonly<Record<string, string>> = {}) {
  const { work } = plan(
    { piece: checkPiece(document, 'drawn'), shop: usualShop(), files },
    { asOf: '2026-11-27T09:00:00Z', effort: 'preview' }
  )
  return work.stack.geometry.timbers.map(t => boxOf(...t.upper.rings))
}

async function laid(
  kind: 'panel' | 'tabletop'
): Promise<{ desk: Desk; page: Page; stored: () => Promise<Document> }> {
  const desk = await openDesk()
  await desk.lay('drawn00001', newPiece(kind) as unknown as Document)
  const { page } = await open(`${desk.url}/piece/drawn00001`)
  await page.locator('.plane .part').first().waitFor()
  return { desk, page, stored: async () => (await desk.piece('drawn00001')).document }
}

const revision = (page: Page, n: number) =>
  soon(() => page.locator('.top .units summary').first().textContent()).toBe(`revision ${n}`)

test('a timber is dragged, drawn to a line near by, sized by a handle, turned and undone', async () => {
  const { page, stored } = await laid('panel')
  const before = boxes(await stored())[0]!
  const svg = page.locator('.plane svg.plan')
  const part = page.locator('.plane .part[data-at="/timbers/0"]')
  const at = async (x: number, y: number) => {
    // The plan is to scale: its outline, 300 mm wide, says what a millimetre is on the screen.
    const box = (await part.boundingBox())!
    const px = box.width / (before.maxX - before.minX)
    return [box.x + (x - before.minX) * px, box.y + (before.maxY - y) * px] as const
  }
  await svg.waitFor()
  const [x, y] = await at(-130, 60)
  const px = (await part.boundingBox())!.width / (before.maxX - before.minX)
  await page.mouse.move(x, y)
  await page.mouse.down()
  // 20.3 mm to the right: whole millimetres draw it to 20.
  await page.mouse.move(x + 8 * px, y, { steps: 4 })
  await page.mouse.move(x + 20.3 * px, y, { steps: 4 })
  await page.mouse.up()
  await revision(page, 2)
  const moved = boxes(await stored())[0]!
  expect(moved.minX - before.minX).toBeCloseTo(20, 1)
  expect(moved.maxX - moved.minX).toBeCloseTo(before.maxX - before.minX, 6)
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await revision(page, 3)

  await part.focus()
  await soon(() => part.getAttribute('aria-pressed')).toBe('true')
  const handle = page.getByRole('button', { name: /Size, right/ })
  await handle.focus()
  await page.keyboard.press('ArrowLeft')
  await revision(page, 4)
  const sized = boxes(await stored())[0]!
  expect(sized.maxX).toBeCloseTo(before.maxX - 1, 6)
  expect(sized.minX).toBeCloseTo(before.minX, 6)

  await page.getByRole('spinbutton', { name: 'Turn, degrees' }).fill('30')
  await page.getByRole('button', { name: 'Turn', exact: true }).click()
  await revision(page, 5)
  const timber = ((await stored())['timbers'] as Entry[])[0]!
  expect((timber['outline'] as Entry)['turn']).toBe(30)
})

test('copied, pasted, mirrored, split and removed, each one edit', async () => {
  const { page, stored } = await laid('panel')
  const ids = async () => ((await stored())['timbers'] as Entry[]).map(t => t['id'])
  const part = page.locator('.plane .part[data-at="/timbers/0"]')
  await part.focus()
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Split along A–A', exact: true }).click()
  await revision(page, 2)
  const halves = boxes(await stored())
  expect(halves).toHaveLength(3)
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await revision(page, 3)
  await part.focus()
  if ((await part.getAttribute('aria-pressed')) !== 'true') await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Copy', exact: true }).click()
  await page.getByRole('button', { name: 'Paste', exact: true }).click()
  await revision(page, 4)
  const all = await ids()
  expect(new Set(all).size, 'names are kept apart').toBe(3)
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await revision(page, 5)
  await page.getByRole('button', { name: 'Remove', exact: true }).first().click()
  await revision(page, 6)
  expect(await ids()).toEqual([all[1]])
})

test('a live edge is drawn point by point and stands where it was pressed', async () => {
  const { page, stored } = await laid('panel')
  // Room for it: the right board goes first.
  const right = page.locator('.plane .part[data-at="/timbers/1"]')
  const board = boxes(await stored())[1]!
  const box = (await right.boundingBox())!
  const px = box.width / (board.maxX - board.minX)
  const press = ([x, y]: readonly [number, number]) =>
    page.mouse.click(box.x + (x - board.minX) * px, box.y + (board.maxY - y) * px)
  await right.focus()
  await page.keyboard.press('Enter')
  await page.getByRole('button', { name: 'Remove', exact: true }).first().click()
  await revision(page, 2)
  await page.getByRole('button', { name: 'Draw a live edge' }).click()
  const line = [
    [90, 98],
    [86, 40],
    [92, -30],
    [88, -98]
  ] as const
  for (const [i, spot] of line.entries()) {
    await press(spot)
    await soon(() => page.locator('.drawn-point').count()).toBe(i + 1)
  }
  await page.keyboard.press('Enter')
  await page.getByText('Now the lower line').waitFor()
  await page.keyboard.press('Enter')
  await revision(page, 3)
  const timbers = (await stored())['timbers'] as Entry[]
  expect(timbers).toHaveLength(2)
  const points = (timbers[1]!['outline'] as { polygon: [number, number][] }).polygon
  for (const [x, y] of line)
    expect(Math.min(...points.map(p => Math.hypot(p[0] - x, p[1] - y))), `${x}, ${y}`).toBeLessThan(1)
  expect(boxes(await stored())[1]!.maxX).toBeCloseTo(153, 1)
})

test('a drawing is read; one of its shapes becomes a timber, of its own size', async () => {
  const { page, stored } = await laid('panel')
  const text =
    '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><script>document.title="caught"</script><rect id="bar" x="20" y="10" width="30" height="60"/><circle id="disc" cx="120" cy="50" r="20"/></svg>'
  await page
    .locator('.tools-row input[type=file]')
    .setInputFiles({ name: 'parts.svg', mimeType: 'image/svg+xml', buffer: Buffer.from(text) })
  const row = page.locator('.drawing-parts li', { hasText: 'bar' })
  await row.getByRole('button', { name: 'as a timber' }).click()
  await soon(async () => ((await stored())['timbers'] as Entry[]).length).toBe(3)
  expect(await page.title()).not.toContain('caught')
  const document = await stored()
  const bar = boxes(document, { 'parts.svg': text })[2]!
  expect([bar.maxX - bar.minX, bar.maxY - bar.minY]).toEqual([expect.closeTo(30, 3), expect.closeTo(60, 3)])
  expect([(bar.minX + bar.maxX) / 2, (bar.minY + bar.maxY) / 2]).toEqual([
    expect.closeTo(0, 1),
    expect.closeTo(0, 1)
  ])
})

test('a cut, a magnet and a stone are placed where the plan is pressed; heights are moved in the section', async () => {
  const { page, stored } = await laid('tabletop')
  const catcher = page.locator('.plane .catch')
  const place = async (what: string) => {
    await page.keyboard.press('Escape')
    await page.locator('.tools-row').getByRole('button', { name: what, exact: true }).click()
    await catcher.click({ position: { x: 300, y: 180 } })
  }
  await place('a cut')
  await soon(async () => ((await stored())['cuts'] as Entry[] | undefined)?.length).toBe(1)
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  await place('stones')
  await soon(async () =>
    JSON.stringify(((await stored())['pours'] as Entry[])[0]!['stones'] ?? null)
  ).toContain('placed')
  await page.getByRole('button', { name: 'Undo', exact: true }).click()
  const level = page.getByRole('slider', { name: /Upper face of Lower river/ })
  await level.focus()
  await page.keyboard.press('ArrowUp')
  await soon(async () => ((await stored())['pours'] as Entry[])[0]!['depth']).toBe(18.5)
  await soon(() => level.getAttribute('aria-valuenow')).toBe('18.5')
})
