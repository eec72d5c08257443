import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { AxeBuilder } from '@axe-core/playwright'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { chromium } from 'playwright-core'
import type { Rolldown } from 'vite'
import { build } from 'vite'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../engine/src/piece/piece-schema.ts'
import { bounds, inside } from '../../engine/src/shape/measure.ts'
import { corePartsAt } from '../../engine/src/sheets/core-model.ts'
import { coreStrip } from '../../engine/src/sheets/core-strip.ts'
import { coreWords } from '../../engine/src/sheets/core-words.ts'
import { coreModelOf } from '../../engine/src/sheets/model.ts'
import type { PageAssets } from '../../engine/src/sheets/page.ts'
import { page as pageOf } from '../../engine/src/sheets/page.ts'
import { wellInside } from '../../engine/src/sheets/pointer.ts'
import { runSheetHtml } from '../../engine/src/sheets/run-sheet-html.ts'
import { seeded } from '../../engine/src/sheets/seeded.ts'
import { svgBody } from '../../engine/src/sheets/svg.ts'
import { BOARDS, PANEL, planOf, SHOP, TABLE } from '../../engine/test/sheets/pieces.ts'
import { pageBundle } from '../bundle.mjs'

/** The page in a real browser. CASTWRIGHT_BROWSER names one; without it Debian's Chromium. */
const EXECUTABLE = process.env['CASTWRIGHT_BROWSER'] ?? '/usr/bin/chromium'
const ARGS = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../scripts/browser-flags.json'), 'utf8')
) as string[]
const DESK = { width: 1440, height: 900 }
const PHONE = { width: 390, height: 844 }

// Too deep a pour, wet timber: much to look at.
const RESTLESS: PieceDocument = {
  ...TABLE,
  timbers: TABLE.timbers!.map(t => ({ ...t, moisture: 17, sealed: 'no' as const })),
  pours: [TABLE.pours[0]!, { ...TABLE.pours[1]!, depth: 12 }, { ...TABLE.pours[2]!, resin: 'thin' }]
}
// A shop that prices only some things is told of the rest: one finding more, and not of the piece.
const UNPRICED = { ...SHOP, prices: [] }
const planned = {
  panel: planOf(PANEL, {}, UNPRICED),
  'panel despite': planOf(
    PANEL,
    { despite: [{ id: 'opaque-cover', because: 'the wall behind is dark' }] },
    UNPRICED
  ),
  table: planOf(TABLE, {}, UNPRICED),
  boards: planOf(BOARDS, {}, UNPRICED),
  restless: planOf(RESTLESS, {}, UNPRICED)
}
type Name = keyof typeof planned

let script = ''
let browser: Browser
const folder = mkdtempSync(join(tmpdir(), 'castwright-page-'))
const file = (name: Name) => pathToFileURL(join(folder, `${name}.html`)).href

const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url))
const fonts = (): PageAssets['fonts'] =>
  ([400, 500, 700] as const).map(weight => ({
    weight,
    italic: false,
    base64: readFileSync(at(`fonts/alegreya-sans-latin-${weight}-normal.woff2`)).toString('base64')
  }))

beforeAll(async () => {
  const [bundle] = (await build({
    ...pageBundle,
    build: { ...pageBundle.build, lib: { ...pageBundle.build.lib, formats: ['iife'] }, write: false }
  } as Parameters<typeof build>[0])) as Rolldown.RolldownOutput[]
  script = bundle!.output[0].code
  const assets: PageAssets = {
    script,
    style: readFileSync(at('src/page.css'), 'utf8'),
    fonts: fonts()
  }
  for (const [name, plan] of Object.entries(planned))
    writeFileSync(join(folder, `${name}.html`), pageOf(plan, assets))
  browser = await chromium.launch({ executablePath: EXECUTABLE, args: ARGS })
}, 60_000)

afterAll(async () => {
  await browser?.close()
  rmSync(folder, { recursive: true, force: true })
})

/** A page opened from its file; what it complained of and asked for comes along. */
async function opened(
  name: Name,
  viewport: { width: number; height: number },
  colorScheme: 'light' | 'dark' = 'light'
): Promise<{ page: Page; context: BrowserContext; errors: string[]; requests: string[] }> {
  const context = await browser.newContext({ viewport, colorScheme })
  const page = await context.newPage()
  const errors: string[] = []
  const requests: string[] = []
  page.on('console', m => {
    if (m.type() === 'error' || m.type() === 'warning') errors.push(m.text())
  })
  page.on('pageerror', e => errors.push(e.message))
  page.on('request', r => {
    if (!r.url().startsWith('data:')) requests.push(r.url())
  })
  await page.goto(file(name))
  await page.evaluate(() => document.fonts.ready.then(() => undefined))
  return { page, context, errors, requests }
}

const settled = (page: Page) =>
  page.evaluate(
    () => new Promise<void>(done => requestAnimationFrame(() => requestAnimationFrame(() => done())))
  )

describe('the script', () => {
  it('is one text under 60 kB, without the clipper and without the schemas', () => {
    expect(script.length).toBeLessThan(60_000)
    expect(script).not.toMatch(/Clipper|ZodError|safeParse|createElement\("script"\)/)
  })
})

describe('a page in a browser', () => {
  it('opens without a complaint, asks for nothing but itself, and says the verdict', async () => {
    const says: Partial<Record<Name, RegExp>> = {
      panel: /^1 stop\s+Not ready to pour\. Cable channel leaves 1\.4 mm of reed green/,
      'panel despite': /^1 overridden\s+Nothing else stands against it: one finding is gone on despite/,
      table: /^Ready\s+Nothing stands against it\.$/,
      boards: /^Ready\s+Nothing stands against it\.$/
    }
    for (const name of Object.keys(planned) as Name[]) {
      const { context, page, errors, requests } = await opened(name, DESK)
      expect(errors, name).toEqual([])
      expect(requests, name).toEqual([file(name)])
      expect(await page.evaluate(() => document.fonts.check('500 14px "Alegreya Sans"'))).toBe(true)
      expect(await page.locator('.verdict').innerText()).toMatch(says[name] ?? /^\d+ (stop|caution)s?[\s·]/)
      expect(await page.locator('#next-finding').count()).toBe(planned[name].plan.findings.length > 0 ? 1 : 0)
      await context.close()
    }
  })

  it('shows at twenty places the core that the engine gives there', async () => {
    for (const name of ['panel', 'table'] as const) {
      const { page, context } = await opened(name, DESK)
      const model = coreModelOf(planned[name].work)
      const drawing = page.locator('svg.plan.wide.front')
      const outline =
        (await drawing.locator('.pointer').count()) === 1 ? bounds(model.geometry.outline) : null
      expect(outline).not.toBeNull()
      const box = (await drawing.boundingBox())!
      const random = seeded(77)
      let compared = 0
      for (let k = 0; compared < 20 && k < 60; k++) {
        await page.mouse.move(
          box.x + box.width * (0.12 + 0.76 * random()),
          box.y + box.height * (0.16 + 0.65 * random())
        )
        await settled(page)
        const seen = await page.evaluate(() => {
          const pad = document.getElementById('plan')!
          return {
            x: Number(pad.dataset['x']),
            y: Number(pad.dataset['y']),
            strip: document.querySelector('#core svg')!.innerHTML
          }
        })
        if (!inside(model.geometry.outline, seen.x, seen.y)) continue
        const data = JSON.parse((await page.locator('#piece-data').textContent())!)
        const wanted = svgBody(coreStrip(model, seen.x, seen.y, { levels: 'finished', ...data.strip }))
        const same = await page.evaluate(
          ([a, b]) => {
            const drawn = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
            drawn.innerHTML = b!
            return drawn.innerHTML === a
          },
          [seen.strip, wanted]
        )
        expect(same, `${name} at ${seen.x}, ${seen.y}`).toBe(true)
        compared++
      }
      expect(compared).toBe(20)
      await context.close()
    }
  })

  it('moves the pointer by the arrow keys and reads the core there', async () => {
    const { page, context } = await opened('panel', DESK)
    const model = coreModelOf(planned.panel.work)
    await page.locator('#plan').focus()
    const [x, y] = JSON.parse((await page.locator('#piece-data').textContent())!).pointer as [number, number]
    for (const key of ['ArrowRight', 'ArrowRight', 'Shift+ArrowUp', 'ArrowDown'])
      await page.keyboard.press(key)
    const words = coreWords(model, Math.round((x + 2) * 10) / 10, Math.round((y + 9) * 10) / 10)
    await page.waitForFunction(w => document.getElementById('core-says')?.textContent === w, words, {
      timeout: 3000
    })
    expect(corePartsAt(model, x, y).length).toBeGreaterThan(0)
    // Seen from behind the same key goes the way it looks.
    await page.getByRole('button', { name: 'turned over' }).click()
    expect(await page.locator('svg.plan.wide.back').isVisible()).toBe(true)
    expect(await page.locator('svg.plan.wide.front').isVisible()).toBe(false)
    await page.locator('#plan').focus()
    await page.keyboard.press('ArrowRight')
    await settled(page)
    expect(Number(await page.locator('#plan').getAttribute('data-x'))).toBeCloseTo(x + 1, 6)
    await context.close()
  })

  it('keeps the pointer on the piece, however far it is sent', async () => {
    for (const name of ['panel', 'table'] as const) {
      const { page, context } = await opened(name, DESK)
      const model = coreModelOf(planned[name].work)
      const b = bounds(model.geometry.outline)
      await page.locator('#plan').focus()
      for (const [key, times] of [
        ['Shift+ArrowRight', 80],
        ['Shift+ArrowUp', 60]
      ] as const)
        for (let k = 0; k < times; k++) await page.keyboard.press(key)
      await settled(page)
      const [x, y] = await page.evaluate(() => {
        const pad = document.getElementById('plan')!
        return [Number(pad.dataset['x']), Number(pad.dataset['y'])] as const
      })
      expect(wellInside(model.geometry.outline, x, y), `${name} at ${x}, ${y}`).toBe(true)
      expect(b.maxX - x, name).toBeLessThan(12)
      expect(corePartsAt(model, x, y).some(p => p.material !== null)).toBe(true)
      await context.close()
    }
  })

  it('changes heights at a press and walks through the findings', async () => {
    const { page, context } = await opened('panel', DESK)
    const high = async () => (await page.locator('.section-aa svg:visible').boundingBox())!.height
    const flat = await high()
    await page.getByRole('button', { name: /stretched/ }).click()
    expect(await high()).toBeGreaterThan(flat + 30)
    await page.getByRole('button', { name: 'as cast' }).click()
    await settled(page)
    expect(await page.locator('#core svg').innerHTML()).toContain('i-ghost')
    await page.locator('#next-finding').click()
    expect(await page.locator('#walk-at').innerText()).toBe('1 of 1')
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('finding-1')
    await page.locator('#theme').click()
    expect(await page.evaluate(() => document.documentElement.dataset['theme'])).toBe('dim')
    await context.close()
  })

  it('needs no more room than the window, at a desk and on a phone', async () => {
    for (const name of ['panel despite', 'boards'] as const) {
      const { page, context } = await opened(name, DESK)
      for (const viewport of [
        DESK,
        { width: 1100, height: 800 },
        { width: 820, height: 1180 },
        PHONE,
        { width: 320, height: 640 }
      ]) {
        await page.setViewportSize(viewport)
        const [wide, has] = await page.evaluate(() => [document.documentElement.scrollWidth, innerWidth])
        expect(wide, `${name} at ${viewport.width}`).toBeLessThanOrEqual(has!)
      }
      await context.close()
    }
  })

  it('walks through all findings by one key, none of them behind the bar that stays', async () => {
    for (const viewport of [DESK, PHONE]) {
      const { page, context } = await opened('restless', viewport)
      const count = planned.restless.plan.findings.length
      expect(count).toBeGreaterThanOrEqual(4)
      await page.locator('#next-finding').focus()
      for (let k = 1; k <= count + 1; k++) {
        await page.keyboard.press('Enter')
        await settled(page)
        const number = ((k - 1) % count) + 1
        expect(await page.locator('#walk-at').innerText()).toBe(`${number} of ${count}`)
        const seen = await page.evaluate(() => {
          const found = document.activeElement!.closest('.find')!
          const bar = document.getElementById('next-finding')!.closest('p')!.getBoundingClientRect()
          const focus = document.activeElement!.getBoundingClientRect()
          return {
            id: found.id,
            marked: document.querySelectorAll('.find.at').length,
            barTop: bar.top,
            barFoot: bar.bottom,
            focusTop: focus.top,
            focusFoot: focus.bottom,
            top: found.getBoundingClientRect().top,
            height: innerHeight
          }
        })
        const where = `${number} at ${viewport.width}: ${JSON.stringify(seen)}`
        expect(seen.id, where).toBe(`finding-${number}`)
        expect(seen.marked).toBe(1)
        // The bar is in sight, and neither the finding nor what is focused in it lies under it or outside.
        expect(seen.barTop, where).toBeGreaterThanOrEqual(0)
        expect(seen.barFoot, where).toBeLessThan(seen.height)
        expect(seen.top, where).toBeGreaterThanOrEqual(seen.barFoot)
        expect(seen.focusTop, where).toBeGreaterThanOrEqual(seen.barFoot)
        expect(seen.focusFoot, where).toBeLessThanOrEqual(seen.height)
      }
      await context.close()
    }
  })

  it('has no accessibility violation that can be found by machine, in both themes and sizes', async () => {
    // A page with its run sheet, safety lines open, and one with a stop.
    const { page, context } = await opened('panel despite', DESK)
    await page.evaluate(() => {
      for (const d of document.querySelectorAll('details')) d.open = true
    })
    expect(await violations(page), 'desk, light').toEqual([])
    await page.emulateMedia({ colorScheme: 'dark' })
    await page.setViewportSize(PHONE)
    expect(await violations(page), 'phone, dim').toEqual([])
    await context.close()
    const stopped = await opened('panel', PHONE)
    expect(await violations(stopped.page), 'a stop, phone, light').toEqual([])
    await stopped.page.emulateMedia({ colorScheme: 'dark' })
    await stopped.page.setViewportSize(DESK)
    expect(await violations(stopped.page), 'a stop, desk, dim').toEqual([])
    await stopped.context.close()
  }, 40_000)
})

describe('a run sheet in a browser', () => {
  it('stands within a phone: each part to weigh a row of its own', async () => {
    const context = await browser.newContext({ viewport: { width: 320, height: 640 } })
    const page = await context.newPage()
    for (const name of ['panel despite', 'table', 'boards'] as const) {
      const sheet = join(folder, `${name} run sheet.html`)
      writeFileSync(sheet, runSheetHtml(planned[name], { fonts: fonts() }))
      await page.goto(pathToFileURL(sheet).href)
      await page.evaluate(() => document.fonts.ready.then(() => undefined))
      for (const width of [320, 390]) {
        await page.setViewportSize({ width, height: 640 })
        const wide = await page.evaluate(() => document.documentElement.scrollWidth)
        expect(wide, `${name} at ${width}`).toBeLessThanOrEqual(width)
        const tables = await page.evaluate(() =>
          [...document.querySelectorAll('.mix')].map(table => {
            const box = (cell: Element) => {
              const { left, right, top, bottom } = cell.getBoundingClientRect()
              return { left, right, top, bottom, words: cell.textContent ?? '' }
            }
            const row = (of: string) => [...table.querySelectorAll(`${of} > *`)].map(box)
            return { names: row('thead tr'), grams: row('.g') }
          })
        )
        expect(tables.length, name).toBeGreaterThan(0)
        for (const { names, grams } of tables) {
          expect(names[names.length - 1]!.words).toBe('Total')
          names.forEach((n, k) => {
            const g = grams[k]!
            const where = `${name} at ${width}: ${n.words} ${JSON.stringify([n, g])}`
            // Its grams stand beside it, under what came before, and words are no column of letters.
            expect(g.right, where).toBeLessThanOrEqual(width)
            expect(g.left, where).toBeGreaterThanOrEqual(n.right - 0.5)
            expect(g.top < n.bottom && n.top < g.bottom, where).toBe(true)
            expect(n.right - n.left, where).toBeGreaterThan(70)
            if (k > 0) expect(g.top, where).toBeGreaterThanOrEqual(grams[k - 1]!.bottom - 0.5)
          })
        }
      }
    }
    await context.close()
  })
})

// The page has no frames: axe's plain mode sees all of it, in half the time.
async function violations(page: Page): Promise<string[]> {
  const result = await new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .setLegacyMode(true)
    .analyze()
  return result.violations.map(
    v =>
      `${v.id}: ${v.nodes
        .map(n => n.target.join(' '))
        .slice(0, 3)
        .join(', ')}`
  )
}
