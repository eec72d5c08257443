import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Browser, BrowserContext, BrowserContextOptions, Page } from 'playwright-core'
import { chromium } from 'playwright-core'
import { afterAll, beforeAll, expect, onTestFinished } from 'vitest'

/** CASTWRIGHT_BROWSER names one; without it Debian's Chromium. */
const EXECUTABLE = process.env['CASTWRIGHT_BROWSER'] ?? '/usr/bin/chromium'
const ARGS = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../scripts/browser-flags.json'), 'utf8')
) as string[]
export const DESK = { width: 1440, height: 900 }
export const PHONE = { width: 390, height: 844 }

/** How long a step of the browser may take on a machine that is busy with other tests, ms. */
const PATIENCE_MS = 25_000

export interface Wanted extends BrowserContextOptions {
  /** Console errors that the test is about; every other one fails it. */
  readonly meant?: RegExp
  /** The clock of the page, standing still. */
  readonly at?: string
}

/** A window on the desk. */
export interface Window {
  readonly page: Page
  readonly context: BrowserContext
}

/**
 * One Chromium for the tests of a file. Each window is a browser of its own to the server (no cookie, no kept
 * piece); a test fails for any console error, any uncaught one and any request that leaves the origin.
 */
export function browser(more: readonly string[] = []): (url: string, wanted?: Wanted) => Promise<Window> {
  let running: Browser | null = null
  beforeAll(async () => {
    running = await chromium.launch({ executablePath: EXECUTABLE, args: [...ARGS, ...more] })
  }, 60_000)
  afterAll(async () => {
    await running?.close()
  })
  return async (url, { meant, at, ...options } = {}) => {
    const context = await running!.newContext({ viewport: DESK, colorScheme: 'light', ...options })
    context.setDefaultTimeout(PATIENCE_MS)
    const errors: string[] = []
    const foreign: string[] = []
    const own = new URL(url).origin
    context.on('console', m => {
      const says = `${m.text()} (${m.location().url})`
      if ((m.type() === 'error' || m.type() === 'warning') && meant?.test(says) !== true) errors.push(says)
    })
    context.on('weberror', e => errors.push(e.error().stack ?? e.error().message))
    context.on('request', r => {
      const asked = new URL(r.url())
      if (!['data:', 'blob:'].includes(asked.protocol) && asked.origin !== own) foreign.push(r.url())
    })
    onTestFinished(async () => {
      await context.close()
      expect(errors, 'errors of the console').toEqual([])
      expect(foreign, 'requests that leave the origin').toEqual([])
    })
    const page = await context.newPage()
    if (at !== undefined) await page.clock.setFixedTime(at)
    await page.goto(url)
    return { page, context }
  }
}

/** What comes to be true while the app works: looked at again and again until it is, or patience ends. */
export function soon(look: () => unknown): ReturnType<typeof expect.poll> {
  return expect.poll(look, { timeout: PATIENCE_MS, interval: 40 })
}
