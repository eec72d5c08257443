import { deflateSync } from 'node:zlib'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { plan } from '../../engine/src/plan.ts'
import { faceImage } from '../../engine/src/sheets/face-image.ts'
import { coreModelOf } from '../../engine/src/sheets/model.ts'
import { pngAddress } from '../../engine/src/sheets/png.ts'
import { imageFor } from '../../engine/src/sheets/sheet-views.ts'
import { browser, soon } from './browser.ts'
import { drawing, example, openDesk } from './desk.ts'

/** Colours laid on the plan, as the browser reads them, against the engine asked here. */
const open = browser()
const TABLE = { document: example('heron-table'), files: { 'heron-table.svg': drawing('heron-table.svg') } }
const model = () => {
  const piece = checkPiece(TABLE.document, 'piece')
  const input = { piece, shop: usualShop(), files: TABLE.files }
  return coreModelOf(plan(input, { asOf: '2026-03-02T09:00:00Z', effort: 'preview' }).work)
}

/** The bytes of a picture as a browser decodes them. */
function decoded(page: Page, address: string): Promise<{ width: number; height: number; rgba: number[] }> {
  return page.evaluate(async from => {
    const picture = new Image()
    picture.src = from
    await picture.decode()
    const { naturalWidth: width, naturalHeight: height } = picture
    const canvas = new OffscreenCanvas(width, height)
    const to = canvas.getContext('2d')!
    to.drawImage(picture, 0, 0)
    return { width, height, rgba: [...to.getImageData(0, 0, width, height).data] }
  }, address)
}

test('the plan shows the colours of slanted sides, on the front and turned over', async () => {
  const desk = await openDesk()
  await desk.lay('herontable', TABLE.document, TABLE.files)
  const { page } = await open(`${desk.url}/piece/herontable`)
  const drawn = page.locator('g.picture image')
  const own = model()
  for (const face of ['front', 'back'] as const) {
    if (face === 'back') await page.getByRole('button', { name: 'turned over' }).click()
    const image = imageFor(own, face)!
    const address = async () =>
      (await drawn.count()) === 0 ? '' : ((await drawn.getAttribute('href')) ?? '')
    await soon(async () => {
      const at = await address()
      return at === '' ? [] : (await decoded(page, at)).rgba
    }).toEqual([...image.rgba])
  }
}, 60_000)

test('a picture written by the engine is read by a browser, pixel by pixel', async () => {
  const desk = await openDesk()
  const { page } = await open(`${desk.url}/`)
  const image = faceImage(model(), { face: 'front', pixelMm: 4 })
  const read = await decoded(page, pngAddress(image, deflateSync))
  expect([read.width, read.height]).toEqual([image.width, image.height])
  expect(read.rgba).toEqual([...image.rgba])
}, 30_000)
