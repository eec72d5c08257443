import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import type { Locator, Page } from 'playwright-core'
import { describe, expect, onTestFinished, test } from 'vitest'
import { browser, PHONE, soon } from './browser.ts'
import type { Desk, Document } from './desk.ts'
import { openDesk } from './desk.ts'
import type { Camera, Edge, Place } from './photo-picture.ts'
import { benchPng, camera, edgeDistance, edgePlace } from './photo-picture.ts'

const open = browser()
const ID = 'tracedpiece'
/** A4 (ISO 216), mm; its near left corner is the origin of the bench. */
const SHEET: Place = [210, 297]
const WOOD: Edge = {
  middle: [345, 150],
  radius: 85,
  waves: [
    { size: 12, times: 2, phase: 0.4 },
    { size: 5, times: 3, phase: 1 },
    { size: 2, times: 7, phase: 0 }
  ]
}
const LENS: Camera = camera([150, -260, 720], [170, 150], 2900, [2400, 1800])
const PHOTO = benchPng(LENS, SHEET, WOOD, 7)
const BENCH = { name: 'bench.png', mimeType: 'image/png', buffer: PHOTO }
/** How far a press may lie from the true edge, px of the photo, and the traced outline from it, mm. */
const MOST_PX = 3
const MOST_MM = 0.5
const PRESSES = 72

const PIECE: Document = {
  castwright: 1,
  name: 'Invented table',
  outline: { rectangle: [820, 400] },
  timbers: [
    {
      id: 'left',
      species: 'ash-white',
      thickness: 24,
      moisture: 8.5,
      outline: { rectangle: [60, 406], at: [-380, 0] }
    }
  ],
  pours: [{ resin: 'deep', fill: 'timber' }]
}

async function begun(desk: Desk): Promise<Page> {
  await desk.lay(ID, PIECE)
  const { page } = await open(`${desk.url}/piece/${ID}`)
  await page.getByRole('link', { name: 'Trace a photo' }).click()
  return page
}

type Chosen = Parameters<Locator['setInputFiles']>[0]

async function choose(page: Page, file: Chosen): Promise<void> {
  await page.locator('input[type=file]').first().setInputFiles(file)
}

/** A file over the limit, by its path: the browser reads it itself, where bytes would be sent to it as text. */
function largePhoto(): string {
  const folder = mkdtempSync(join(tmpdir(), 'castwright-'))
  onTestFinished(() => rmSync(folder, { recursive: true }))
  const path = join(folder, 'large.png')
  writeFileSync(path, Buffer.alloc(12_600_000))
  return path
}

/** Presses on the four corners as the screen shows them, in an order of no meaning, then brings each to half a px. */
async function markCorners(page: Page): Promise<void> {
  const box = (await page.locator('.photo-stage').boundingBox())!
  const scale = box.width / LENS.widthPx
  const corners: Place[] = [
    [SHEET[0], SHEET[1]],
    [0, 0],
    [0, SHEET[1]],
    [SHEET[0], 0]
  ]
  for (const [x, y] of corners) {
    const [u, v] = LENS.see(x, y)
    await page.mouse.click(Math.round(box.x + u * scale), Math.round(box.y + v * scale))
  }
  await soon(() => page.locator('.mark-at').count()).toBe(4)
  const inOrder: Place[] = [[0, 0], [SHEET[0], 0], SHEET, [0, SHEET[1]]]
  for (const [k, place] of inOrder.entries()) {
    const mark = page.locator('.mark-at').nth(k)
    await mark.focus()
    const [u, v] = LENS.see(...place)
    for (let step = 0; step < 12; step++) {
      const at = await mark.evaluate(e => [Number.parseFloat(e.style.left), Number.parseFloat(e.style.top)])
      const [du, dv] = [u - at[0]! / scale, v - at[1]! / scale]
      if (Math.abs(du) <= 0.55 && Math.abs(dv) <= 0.55) break
      if (Math.abs(du) > 0.55) await page.keyboard.press(du > 0 ? 'ArrowRight' : 'ArrowLeft')
      if (Math.abs(dv) > 0.55) await page.keyboard.press(dv > 0 ? 'ArrowDown' : 'ArrowUp')
    }
  }
}

/** Where a place of the bench lies on the screen, by the browser's own reading of how the photo is laid. */
function onScreen(page: Page, place: Place): Promise<Place> {
  return page.evaluate(
    ([u, v]) => {
      const image = document.querySelector('.photo-face img')!
      const p = new DOMMatrix(getComputedStyle(image).transform).transformPoint(new DOMPoint(u, v))
      const box = document.querySelector('.photo-face')!.getBoundingClientRect()
      return [box.left + p.x / p.w, box.top + p.y / p.w] as const
    },
    LENS.see(...place)
  )
}

/** Presses along the edge on whole px of the screen, each the farthest from the edge that may still be pressed. */
async function pressAlong(page: Page): Promise<void> {
  const [zero, hundred] = [await onScreen(page, [0, 0]), await onScreen(page, [100, 0])]
  const scale = (hundred[0] - zero[0]) / 100
  for (let n = 0; n < PRESSES; n++) {
    const [x, y] = edgePlace(WOOD, (2 * Math.PI * n) / PRESSES)
    const [sx, sy] = await onScreen(page, [x, y])
    let [best, most] = [[Math.round(sx), Math.round(sy)] as Place, -1]
    for (let i = -2; i <= 2; i++)
      for (let j = -2; j <= 2; j++) {
        const at: Place = [Math.round(sx) + i, Math.round(sy) + j]
        const off = pxFromEdge([x + (at[0] - sx) / scale, y - (at[1] - sy) / scale])
        if (off <= MOST_PX && off > most) [best, most] = [at, off]
      }
    expect(most, 'a px of the screen within reach of the edge').toBeGreaterThan(0)
    await page.mouse.click(...best)
  }
}

/** Distance from the edge as the photo shows it, px, by the places of the edge about the nearest. */
function pxFromEdge(place: Place): number {
  const [u, v] = LENS.see(...place)
  const angle = Math.atan2(place[1] - WOOD.middle[1], place[0] - WOOD.middle[0])
  let least = Number.POSITIVE_INFINITY
  for (let k = -200; k <= 200; k++) {
    const [a, b] = LENS.see(...edgePlace(WOOD, angle + k * 0.0005))
    least = Math.min(least, Math.hypot(a - u, b - v))
  }
  return least
}

/** The farthest that a ring lies from the edge, and the edge from the ring, mm. */
function farthest(ring: readonly Place[]): number {
  let most = 0
  ring.forEach(([x, y], k) => {
    const [a, b] = ring[(k + 1) % ring.length]!
    for (const t of [0, 0.25, 0.5, 0.75])
      most = Math.max(most, edgeDistance(WOOD, [x + t * (a - x), y + t * (b - y)]))
  })
  for (let k = 0; k < 360; k++) {
    const [x, y] = edgePlace(WOOD, (k * Math.PI) / 180)
    let least = Number.POSITIVE_INFINITY
    ring.forEach(([px, py], j) => {
      const [qx, qy] = ring[(j + 1) % ring.length]!
      const [dx, dy] = [qx - px, qy - py]
      const t = Math.min(1, Math.max(0, ((x - px) * dx + (y - py) * dy) / (dx * dx + dy * dy)))
      least = Math.min(least, Math.hypot(px + t * dx - x, py + t * dy - y))
    })
    most = Math.max(most, least)
  }
  return most
}

async function accessible(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze()
  expect(violations.map(v => `${v.id}: ${v.nodes[0]?.html}`)).toEqual([])
}

const timbersOf = async (desk: Desk) => (await desk.piece(ID)).document['timbers'] as Document[]
const photosOf = async (desk: Desk) =>
  ((await (await desk.ask('GET', `/api/pieces/${ID}/photos`)).json()) as { photos: Document[] }).photos

describe('tracing over a photo', () => {
  test('the traced timber lies within 0.5 mm of the wood that was photographed', async () => {
    const desk = await openDesk()
    const page = await begun(desk)
    await accessible(page)
    await choose(page, BENCH)
    await page.locator('.photo-stage').waitFor()
    await markCorners(page)
    expect(await page.locator('.tag:not(.side)').allTextContents()).toHaveLength(4)
    await accessible(page)

    await page.getByRole('button', { name: 'Lay it flat' }).click()
    // The near left corner of the sheet comes to the origin: plan and bench are one.
    for (const axis of ['x', 'y']) {
      await page.getByRole('textbox', { name: `First mark, ${axis}` }).fill('0')
      await page.keyboard.press('Enter')
    }
    // The wheel brings the wood nearer, about where the pointer is.
    await page.mouse.move(...(await onScreen(page, WOOD.middle)))
    await page.mouse.wheel(0, -200)
    await pressAlong(page)
    await soon(() => page.locator('.vertex').count()).toBe(PRESSES)
    await accessible(page)
    await page.getByRole('button', { name: 'Make it a timber' }).click()
    await soon(async () => (await timbersOf(desk)).length).toBe(2)
    const made = (await timbersOf(desk))[1]!
    expect(made).toMatchObject({ id: 'traced', species: 'ash-white', thickness: 24, moisture: 8.5 })
    const { polygon } = made['outline'] as { polygon: Place[] }
    expect(polygon).toHaveLength(PRESSES)
    expect(farthest(polygon)).toBeLessThan(MOST_MM)

    // One edit, taken back by one press.
    await page.getByRole('button', { name: 'Undo', exact: true }).first().click()
    await soon(async () => (await timbersOf(desk)).length).toBe(1)

    // The laying is kept: the photo opens as it was left.
    await soon(async () => ((await photosOf(desk))[0]?.['laid'] as Document | null)?.['trace']).toHaveLength(
      PRESSES
    )
    await page.reload()
    await page.getByRole('button', { name: /Open the photo of/ }).click()
    await soon(() => page.locator('.vertex').count()).toBe(PRESSES)
    await page.getByRole('button', { name: 'Make it the outline' }).click()
    await soon(async () => (await desk.piece(ID)).document['outline']).toEqual({ polygon })
  }, 90_000)

  test('a press stays where it was when no edge is to be caught; points move, close up and go by keys', async () => {
    const desk = await openDesk()
    const page = await begun(desk)
    await choose(page, BENCH)
    await page.getByRole('button', { name: 'a distance' }).click()
    const face = page.locator('.photo-face')
    await face.focus()
    // The cross begins in the middle: two marks 400 px apart, the far corner by ten px a press.
    await page.keyboard.press('Enter')
    for (let k = 0; k < 40; k++) await page.keyboard.press('Shift+ArrowRight')
    await page.keyboard.press('Enter')
    await soon(() => page.locator('.mark-at').count()).toBe(2)
    await page.getByRole('textbox', { name: 'Distance' }).fill('100')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Lay it flat' }).click()
    await page.getByRole('checkbox', { name: 'Catch the edge in the photo' }).uncheck()
    // 400 px are 100 mm: every px of the photo is a quarter of a mm, wherever it lies.
    const box = (await face.boundingBox())!
    const presses: Place[] = [
      [box.x + 300, box.y + 300],
      [box.x + 500, box.y + 300],
      [box.x + 500, box.y + 450],
      [box.x + 300, box.y + 450]
    ]
    for (const at of presses) await page.mouse.click(...at)
    await soon(() => page.locator('.vertex').count()).toBe(4)
    const places = () =>
      page
        .locator('.vertex')
        .evaluateAll(all =>
          all.map(v => [Number(v.getAttribute('cx')), Number(v.getAttribute('cy'))] as const)
        )
    for (const [k, [x, y]] of (await places()).entries()) {
      expect(Math.abs(box.x + x - presses[k]![0])).toBeLessThan(0.5)
      expect(Math.abs(box.y + y - presses[k]![1])).toBeLessThan(0.5)
    }
    const trace = async () =>
      ((await photosOf(desk))[0]?.['laid'] as { trace: Place[] } | null)?.trace.map(([u, v]) => [
        Math.round(u),
        Math.round(v)
      ])
    await soon(async () => (await trace())?.length).toBe(4)
    const before = (await trace())!
    await page.locator('.vertex').first().focus()
    await page.keyboard.press('Shift+ArrowLeft')
    await page.keyboard.press('ArrowUp')
    await soon(trace).toEqual([[before[0]![0]! - 10, before[0]![1]! - 1], ...before.slice(1)])
    // A press on the line between two points comes between them.
    await page.mouse.click(box.x + 500, box.y + 375)
    await soon(() => page.locator('.vertex').count()).toBe(5)
    expect((await places())[2]![1]).toBeCloseTo(375, -1)
    await page.locator('.vertex').nth(2).focus()
    await page.keyboard.press('Delete')
    await face.focus()
    await page.keyboard.press('Backspace')
    await soon(() => page.locator('.vertex').count()).toBe(3)
    await soon(async () => (await trace())?.slice(1)).toEqual(before.slice(1, 3))
  }, 90_000)

  test('what is no photo is refused in words, and a photo taken out of reach is kept later', async () => {
    const desk = await openDesk()
    await desk.lay(ID, PIECE)
    const { page, context } = await open(`${desk.url}/piece/${ID}/photo`, {
      meant: /ERR_INTERNET_DISCONNECTED|ERR_FAILED/
    })
    const says = page.locator('.photo-says')
    await page.getByText('No photo of this piece yet.').waitFor()
    await choose(page, { name: 'notes.txt', mimeType: 'text/plain', buffer: Buffer.from('not a picture') })
    expect(await says.textContent()).toMatch(/found text\/plain; allowed: JPEG, PNG or WebP/)
    await choose(page, largePhoto())
    await soon(() => says.textContent()).toMatch(/found 12.6 MB; allowed: up to 12 MB/)

    await context.setOffline(true)
    await choose(page, BENCH)
    await soon(() => page.locator('.photo-side .end').textContent()).toMatch(/not kept yet/)
    expect(await photosOf(desk)).toHaveLength(0)
    await markCorners(page)
    await context.setOffline(false)
    await soon(async () => ((await photosOf(desk))[0]?.['laid'] as Document | null)?.['marks']).toHaveLength(
      4
    )
    await soon(() => page.locator('.photo-side .end').textContent()).toMatch(/kept with the piece/)
  }, 90_000)

  test('fingers spread the view and draw along the edge', async () => {
    const desk = await openDesk()
    await desk.lay(ID, PIECE)
    const { page, context } = await open(`${desk.url}/piece/${ID}/photo`, { viewport: PHONE, hasTouch: true })
    await choose(page, BENCH)
    await page.locator('.photo-stage').waitFor()
    await markCorners(page)
    await page.getByRole('button', { name: 'Lay it flat' }).click()
    for (const axis of ['x', 'y']) {
      await page.getByRole('textbox', { name: `First mark, ${axis}` }).fill('0')
      await page.keyboard.press('Enter')
    }
    const cdp = await context.newCDPSession(page)
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...fingers: Place[]) =>
      cdp.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: fingers.map(([x, y], id) => ({ x, y, id }))
      })
    await page.evaluate(() => scrollTo(0, 0))
    const scale = async () => {
      const [a, b] = [await onScreen(page, [0, 0]), await onScreen(page, [100, 0])]
      return (b[0] - a[0]) / 100
    }
    const [cx, cy] = await onScreen(page, WOOD.middle)
    const before = await scale()
    await touch('touchStart', [cx - 20, cy])
    await touch('touchStart', [cx - 20, cy], [cx + 20, cy])
    for (let k = 1; k <= 10; k++) await touch('touchMove', [cx - 20 - 3 * k, cy], [cx + 20 + 3 * k, cy])
    await touch('touchEnd')
    // Fingers 40 px apart went to 100 px.
    expect(Math.abs((await scale()) / before - 2.5)).toBeLessThan(0.2)
    expect(await page.locator('.vertex').count(), 'spreading sets no point').toBe(0)

    await page.getByRole('button', { name: 'draw along' }).click()
    await page.evaluate(() => scrollTo(0, 0))
    const line: Place[] = []
    for (let k = 0; k <= 90; k++) line.push(await onScreen(page, edgePlace(WOOD, 0.2 + (k * 6.2) / 90)))
    await touch('touchStart', line[0]!)
    for (const at of line.slice(1)) await touch('touchMove', at)
    await touch('touchEnd')
    await soon(() => page.locator('.vertex').count()).toBeGreaterThan(15)
    await page.getByRole('button', { name: 'Make it a timber' }).click()
    await soon(async () => (await timbersOf(desk)).length).toBe(2)
    const { polygon } = (await timbersOf(desk))[1]!['outline'] as { polygon: Place[] }
    // The finger's px are a millimetre here: the tidied line may leave it by 1.5 px, the chord by as much again.
    expect(farthest(polygon)).toBeLessThan(3 / (await scale()))
    await accessible(page)
  }, 90_000)
})
