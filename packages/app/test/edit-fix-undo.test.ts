import { expect, test } from 'vitest'
import { applyPatch } from '../../engine/src/piece/patch.ts'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { check } from '../../engine/src/plan.ts'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { example, openDesk } from './desk.ts'

const open = browser()
const SPOILED = example('saltmarsh-panel.spoiled')
/** A stop of this piece that one press mends: a part larger than its pocket. */
const STOP = 'hardware-pocket'

test('a stop is mended by its fix, comes back with undo and goes with redo; the server follows', async () => {
  // The fix is the one the engine's own check offers, made by another way than the screen's.
  const plan = check(
    { piece: checkPiece(SPOILED, 'spoiled'), shop: usualShop(), files: {}, source: 'spoiled' },
    { asOf: '2026-03-02T09:00:00Z' }
  )
  const finding = plan.findings.find(f => f.id === STOP)!
  expect(finding.severity).toBe('stop')
  const mended = applyPatch(SPOILED, finding.fix!) as Document
  expect(mended).not.toEqual(SPOILED)

  const desk = await openDesk()
  await desk.lay('spoiled1', SPOILED)
  const { page } = await open(`${desk.url}/piece/spoiled1`)
  const stops = page.locator('.verdict .st')
  const stop = page.locator('.find.stop', { hasText: finding.says.slice(0, 40) })
  const fix = page.getByRole('button', { name: finding.fixSays! })
  const onServer = async () => (await desk.piece('spoiled1')).document
  const undo = page.getByRole('button', { name: 'Undo', exact: true })
  const redo = page.getByRole('button', { name: 'Redo', exact: true })

  await fix.waitFor()
  const count = plan.totals.stops
  expect(await stops.textContent()).toBe(`${count} stops`)
  expect(await undo.isDisabled()).toBe(true)

  for (const [press, document, left] of [
    [fix, mended, count - 1],
    [undo, SPOILED, count],
    [redo, mended, count - 1],
    [undo, SPOILED, count]
  ] as const) {
    await press.click()
    await soon(() => stops.textContent()).toBe(`${left} stop${left === 1 ? '' : 's'}`)
    await soon(() => stop.count()).toBe(left === count ? 1 : 0)
    await soon(onServer).toEqual(document)
  }
  expect(await desk.revisions('spoiled1'), 'each step is a revision of its own').toBe(5)
  expect(await undo.isDisabled()).toBe(true)
  expect(await redo.isDisabled()).toBe(false)
})

test('a figure is changed where it is shown: pressed by keys, its field opens under the hand', async () => {
  const desk = await openDesk()
  await desk.lay('figures1', example('saltmarsh-panel'))
  const { page } = await open(`${desk.url}/piece/figures1`)
  await page.locator('.layer').first().waitFor()
  const inHand = () => page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? '')
  for (const [figure, field, typed, told] of [
    ['Change: Reed green, As cast', 'Reed green: depth', '13', ['pours', 0, 'depth', 13]],
    ['Change: Size, finished', 'The whole piece, outline: width', '518', ['outline', 'rectangle', 0, 518]],
    ['Change: Number', 'The whole piece: quantity', '2', ['quantity', 2]]
  ] as const) {
    const button = page.getByTitle(figure, { exact: true })
    await button.focus()
    await page.keyboard.press('Enter')
    await soon(inHand).toBe(field)
    await page.keyboard.type(typed)
    await page.keyboard.press('Enter')
    if (field.endsWith('quantity')) await page.keyboard.press('Tab')
    const path = told.slice(0, -1)
    await soon(async () => {
      let value: unknown = (await desk.piece('figures1')).document
      for (const key of path) value = (value as Record<string | number, unknown> | undefined)?.[key]
      return value
    }).toBe(told[told.length - 1])
  }
})

test('what is half typed stays when another device changes the piece meanwhile', async () => {
  const desk = await openDesk()
  await desk.lay('halftyped', example('saltmarsh-panel'))
  const { page } = await open(`${desk.url}/piece/halftyped`)
  await page.locator('.layer').first().waitFor()
  await page.getByTitle('Change: Number', { exact: true }).click()
  for (const label of ['The whole piece: name', 'The whole piece: quantity']) {
    const input = page.getByLabel(label, { exact: true })
    const typed = label.endsWith('name') ? 'Half a na' : '12'
    await input.fill('')
    await input.pressSequentially(typed)
    const { revision, document } = await desk.piece('halftyped')
    const [first, ...others] = document['pours'] as { depth: number }[]
    const depth = first!.depth + 1
    const saved = await desk.ask('PUT', '/api/pieces/halftyped', {
      base: revision,
      edit: `elsewhere-${revision}`,
      says: 'elsewhere',
      document: { ...document, pours: [{ ...first, depth }, ...others] }
    })
    expect(saved.status).toBe(200)
    await page.getByText(`revision ${revision + 1}`).waitFor()
    expect(await input.inputValue()).toBe(typed)
    await input.press('Escape')
    expect(await input.inputValue()).not.toBe(typed)
  }
})
