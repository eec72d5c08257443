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
import { bounds, inside } from '../../engine/src/shape/measure.ts'
import { corePartsAt } from '../../engine/src/sheets/core-model.ts'
import { coreStrip } from '../../engine/src/sheets/core-strip.ts'
import { coreWords } from '../../engine/src/sheets/core-words.ts'
import { coreModelOf } from '../../engine/src/sheets/model.ts'
import type { PageAssets } from '../../engine/src/sheets/page.ts'
import { page as pageOf } from '../../engine/src/sheets/page.ts'
import { seeded } from '../../engine/src/sheets/seeded.ts'
import { svgBody } from '../../engine/src/sheets/svg.ts'
import { BOARDS, PANEL, planOf, TABLE } from '../../engine/test/sheets/pieces.ts'
import { pageBundle } from '../bundle.mjs'

/** The page in a real browser. CASTWRIGHT_BROWSER names one; without it Debian's Chromium. */
const EXECUTABLE = process.env['CASTWRIGHT_BROWSER'] ?? '/usr/bin/chromium'
const ARGS = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync'
]
const DESK = { width: 1440, height: 900 }
const PHONE = { width: 390, height: 844 }

const planned = {
  panel: planOf(PANEL),
  'panel despite': planOf(PANEL, { despite: [{ id: 'opaque-cover', because: 'the wall behind is dark' }] }),
  table: planOf(TABLE),
  boards: planOf(BOARDS)
}
type Name = keyof typeof planned

let script = ''
let browser: Browser
const folder = mkdtempSync(join(tmpdir(), 'castwright-page-'))
const file = (name: Name) => pathToFileURL(join(folder, `${name}.html`)).href

beforeAll(async () => {
  const [bundle] = (await build({
    ...pageBundle,
    build: { ...pageBundle.build, lib: { ...pageBundle.build.lib, formats: ['iife'] }, write: false }
  } as Parameters<typeof build>[0])) as Rolldown.RolldownOutput[]
  script = bundle!.output[0].code
  const at = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url))
  const assets: PageAssets = {
    script,
    style: readFileSync(at('src/page.css'), 'utf8'),
    fonts: ([400, 500, 700] as const).map(weight => ({
      weight,
      italic: false,
      base64: readFileSync(at(`fonts/alegreya-sans-latin-${weight}-normal.woff2`)).toString('base64')
    }))
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
    const says: Record<Name, RegExp> = {
      panel: /^1 stop\s+Not ready to pour\. Cable channel leaves 2\.4 mm of reed green/,
      'panel despite': /^1 overridden\s+Nothing else stands against it: one finding is gone on despite/,
      table: /^Ready\s+Nothing stands against it\.$/,
      boards: /^Ready\s+Nothing stands against it\.$/
    }
    for (const name of Object.keys(planned) as Name[]) {
      const { context, page, errors, requests } = await opened(name, DESK)
      expect(errors, name).toEqual([])
      expect(requests, name).toEqual([file(name)])
      expect(await page.evaluate(() => document.fonts.check('500 14px "Alegreya Sans"'))).toBe(true)
      expect(await page.locator('.verdict').innerText()).toMatch(says[name])
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
