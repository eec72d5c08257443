import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { browser, DESK, PHONE } from './browser.ts'
import { CUP_CSV, castWhole, laidDesk, MOMENT } from './screens.ts'

/**
 * How the main screens look, against pictures kept beside this file. VISUAL=write draws them anew: they are looked at
 * before they are kept. Small, so that a change of layout or colour is seen and the hinting of a letter is not.
 */
const FOLDER = join(import.meta.dirname, 'visual')
const WRITE = process.env['VISUAL'] === 'write'
const open = browser()

/** Width of a kept picture, and the side of the squares whose mean colours are compared, px. */
const WIDE_PX = 360
const SQUARE_PX = 12
/** Most difference of a mean, of 255; and most squares of a picture that may differ by more. */
const MOST_OFF = 10
const MOST_SQUARES = 0.01

interface Off {
  readonly size: readonly [number, number]
  readonly kept: readonly [number, number]
  readonly squares: number
  readonly off: number
  readonly worst: number
}

/** The picture at the width kept, as PNG. Drawn by the browser itself. */
async function small(page: Page, png: Buffer): Promise<Buffer> {
  const url = await page.evaluate(
    async ([data, wide]) => {
      const image = new Image()
      image.src = `data:image/png;base64,${data}`
      await image.decode()
      const canvas = document.createElement('canvas')
      canvas.width = wide
      canvas.height = Math.round((image.height * wide) / image.width)
      const pen = canvas.getContext('2d')!
      pen.imageSmoothingQuality = 'high'
      pen.drawImage(image, 0, 0, canvas.width, canvas.height)
      return canvas.toDataURL('image/png')
    },
    [png.toString('base64'), WIDE_PX] as const
  )
  return Buffer.from(url.split(',')[1]!, 'base64')
}

/** How many squares of two pictures differ in their mean colour. */
function compared(page: Page, now: Buffer, kept: Buffer): Promise<Off> {
  return page.evaluate(
    async ([a, b, side, most]) => {
      const read = async (data: string) => {
        const image = new Image()
        image.src = `data:image/png;base64,${data}`
        await image.decode()
        const canvas = document.createElement('canvas')
        canvas.width = image.width
        canvas.height = image.height
        const pen = canvas.getContext('2d', { willReadFrequently: true })!
        pen.drawImage(image, 0, 0)
        return pen.getImageData(0, 0, image.width, image.height)
      }
      const [p, q] = [await read(a), await read(b)]
      const mean = (d: ImageData, x0: number, y0: number) => {
        const sum = [0, 0, 0]
        let n = 0
        for (let y = y0; y < Math.min(y0 + side, d.height); y++)
          for (let x = x0; x < Math.min(x0 + side, d.width); x++, n++)
            for (let k = 0; k < 3; k++) sum[k]! += d.data[(y * d.width + x) * 4 + k]!
        return sum.map(s => s / n)
      }
      let squares = 0
      let off = 0
      let worst = 0
      for (let y = 0; y < Math.min(p.height, q.height); y += side)
        for (let x = 0; x < p.width; x += side) {
          const [u, v] = [mean(p, x, y), mean(q, x, y)]
          const d = Math.max(...u.map((c, k) => Math.abs(c - v[k]!)))
          squares++
          worst = Math.max(worst, d)
          if (d > most) off++
        }
      return { size: [p.width, p.height], kept: [q.width, q.height], squares, off, worst } as const
    },
    [now.toString('base64'), kept.toString('base64'), SQUARE_PX, MOST_OFF] as const
  )
}

async function looksAs(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready)
  const now = await small(page, await page.screenshot({ animations: 'disabled', caret: 'hide' }))
  const path = join(FOLDER, `${name}.png`)
  if (WRITE) {
    mkdirSync(FOLDER, { recursive: true })
    writeFileSync(path, now)
    return
  }
  expect(existsSync(path), `${name}.png is kept; VISUAL=write draws it`).toBe(true)
  const { size, kept, squares, off, worst } = await compared(page, now, readFileSync(path))
  expect.soft(size, name).toEqual(kept)
  expect
    .soft(
      off / squares,
      `${name}: ${off} of ${squares} squares differ, the worst by ${worst.toFixed(0)} of 255`
    )
    .toBeLessThanOrEqual(MOST_SQUARES)
}

test('the main screens look as they were kept', async () => {
  const desk = await laidDesk()
  const { page } = await open(desk.url, { at: MOMENT })
  await page.locator('.shelf-card .picture svg').nth(3).waitFor()
  await looksAs(page, 'pieces')

  await page.goto(`${desk.url}/piece/panel123`)
  await castWhole(page)
  await looksAs(page, 'sheet')
  await page.emulateMedia({ colorScheme: 'dark' })
  await looksAs(page, 'sheet-dim')
  await page.emulateMedia({ colorScheme: 'light' })
  await page.setViewportSize(PHONE)
  await castWhole(page)
  await looksAs(page, 'sheet-390')
  await page.setViewportSize(DESK)
  await castWhole(page)
  await page.getByRole('button', { name: 'Lay heat over it' }).click()
  await page.locator('#heat-here').waitFor()
  await looksAs(page, 'sheet-heat')

  await page.setViewportSize(DESK)
  await page.goto(`${desk.url}/shop`)
  await page.locator('.shop .field').first().waitFor()
  await looksAs(page, 'shop')
  await page.getByRole('button', { name: 'A cup that was watched' }).click()
  await page.getByLabel('What pours call it').fill('mine')
  await page.getByLabel(/^Readings/).fill(CUP_CSV)
  await page.locator('.cup-fit').waitFor()
  await page.locator('.cup-result').scrollIntoViewIfNeeded()
  await looksAs(page, 'cup')
})

test('a picture that differs is seen', async () => {
  const desk = await laidDesk()
  const { page } = await open(`${desk.url}/shop`, { at: MOMENT })
  await page.locator('.shop .field').first().waitFor()
  const one = await small(page, await page.screenshot())
  const same = await compared(page, one, one)
  expect([same.off, same.worst]).toEqual([0, 0])
  // A heading gone is a small change: it is seen.
  await page.evaluate(() => document.querySelector('.shop .big')!.remove())
  const other = await compared(page, await small(page, await page.screenshot()), one)
  expect(other.off / other.squares).toBeGreaterThan(MOST_SQUARES)
})
