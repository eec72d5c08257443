import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import type { Wanted, Window } from './browser.ts'
import { DESK, soon } from './browser.ts'
import type { Desk } from './desk.ts'
import { drawing, example, openDesk } from './desk.ts'

/** A moment at which every test of the looks stands still. */
export const MOMENT = '2026-03-02T09:00:00.000Z'
/** A name of this machine that is not loopback: under it the browser is not paired. */
export const NAME = 'desk.test'

/** A desk with the examples on it, under both names. */
export async function laidDesk(): Promise<Desk> {
  const desk = await openDesk({ names: [NAME], now: () => new Date(MOMENT) })
  const svg = { 'heron-table.svg': drawing('heron-table.svg') }
  await desk.lay('meadow12', example('meadow-boards'))
  await desk.lay('heron123', example('heron-table'), svg)
  await desk.lay('panel123', example('saltmarsh-panel'))
  await desk.lay('spoiled1', example('saltmarsh-panel.spoiled'))
  return desk
}

/** An invented workshop with a machine. */
const WORKSHOP: unknown = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../examples/workshop.shop.json'), 'utf8')
)

/** A screen: where it is, and what is done until it stands there whole. */
interface Screen {
  readonly name: string
  readonly path: string
  /** Seen by a device that is not paired. */
  readonly unpaired?: boolean
  readonly ready: (page: Page) => Promise<unknown>
}

/** Until the full pass of heat and cure is on the screen. */
export async function planned(page: Page): Promise<void> {
  await page.locator('.layer').first().waitFor()
  await soon(() => page.locator('.pass').textContent()).toBe('')
}

/** How long the cast of a whole mould may take on a machine that is busy with other tests, ms. */
const CAST_MS = 60_000

/** Until the whole mould is cast as well. */
export async function castWhole(page: Page): Promise<void> {
  await planned(page)
  await page
    .locator('.goes-by', { hasText: /^The whole mould, cast finely\.$/ })
    .first()
    .waitFor({ timeout: CAST_MS })
  await page.locator('.casting').waitFor({ state: 'detached', timeout: CAST_MS })
}

/** Readings that are made up: a cup of a medium resin, 150 g in 60 mm at 22 °C, in °F by the clock past midnight. */
export const CUP_CSV = `# invented readings
# mass: 150 g
# cup: 60 mm
# room: 71.6 °F
clock,temp (F),seen
22:50,73.2,
23:10,79.9,
23:30,85.1,
23:50,92.8,
00:10,111.7,
00:20,138.2,strings
00:30,202.3,gelled
00:40,251.2,
00:50,250.2,
01:10,204,
01:30,155.1,
01:50,123.8,
`

const SCREENS: readonly Screen[] = [
  {
    name: 'pieces',
    path: '/',
    ready: page => soon(() => page.locator('.shelf-card .picture svg').count()).toBe(4)
  },
  {
    name: 'begin',
    path: '/',
    ready: async page => {
      await page.getByRole('button', { name: 'Tray' }).click()
      await page.locator('.preview svg').waitFor()
    }
  },
  {
    name: 'sheet with findings and open entries',
    path: '/piece/spoiled1',
    ready: async page => {
      await planned(page)
      await page.getByRole('button', { name: 'Next finding' }).click()
      await page.getByRole('button', { name: 'Reed green', exact: true }).click()
      await page.locator('.layer.open .fields').waitFor()
      await page.getByRole('button', { name: 'Reed green: All fields' }).click()
      for (const why of await page.locator('.why summary').all()) await why.click()
      await page.locator('.layer.open .help summary').first().click()
    }
  },
  {
    name: 'sheet with a cut in hand',
    path: '/piece/panel123',
    ready: async page => {
      await planned(page)
      await page.locator('.step .entry').last().click()
      await page.locator('.step.open .fields').waitFor()
      await page.locator('.units summary').first().click()
    }
  },
  {
    name: 'sheet with heat over the plan and a depth tried',
    path: '/piece/panel123',
    ready: async page => {
      await castWhole(page)
      await page.getByRole('button', { name: 'Lay heat over it' }).click()
      await page.locator('#heat-here').waitFor()
      await page.locator('.what-if > summary').nth(1).click()
      await page.getByRole('slider', { name: 'Reed green: Depth as cast' }).press('PageUp')
      await page.locator('.tried-peak').waitFor()
      await soon(() => page.locator('.waits-on .tried-peak').count()).toBe(0)
      for (const why of await page.locator('.layer .why summary').all()) await why.click()
    }
  },
  {
    name: 'shop with a cup test',
    path: '/shop',
    ready: async page => {
      await page.getByRole('button', { name: 'A cup that was watched' }).click()
      await page.getByLabel('What pours call it').fill('mine')
      await page.getByLabel(/^Readings/).fill(CUP_CSV)
      await page.locator('.cup-fit').waitFor()
      for (const why of await page.locator('.cup-result summary').all()) await why.click()
    }
  },
  {
    name: 'shop',
    path: '/shop',
    ready: async page => {
      await page.getByRole('heading', { name: 'The room' }).waitFor()
      await soon(() => page.locator('.shop .field').count()).toBeGreaterThan(5)
    }
  },
  {
    name: 'devices',
    path: '/devices',
    ready: async page => {
      await page.getByRole('button', { name: 'Pair a device' }).click()
      await page.locator('.three-words').waitFor()
    }
  },
  {
    name: 'bench, the number pad open',
    path: '/piece/panel123/bench',
    ready: async page => {
      await page.locator('.bench-step').waitFor({ timeout: CAST_MS })
      await page.getByRole('button', { name: 'Enter a reading' }).click()
      await page.getByRole('button', { name: /^Humidity/ }).click()
      await page.locator('.pad').waitFor()
    }
  },
  {
    name: 'bench while a stop stands',
    path: '/piece/spoiled1/bench',
    ready: page => page.locator('.bench-stop').waitFor({ timeout: CAST_MS })
  },
  {
    name: 'days, a task looked at',
    path: '/piece/panel123/days',
    ready: async page => {
      await page.locator('.days-head time').waitFor({ timeout: CAST_MS })
      await page.locator('.bar:not(.alone)').first().click()
      await page.locator('.looked-task').waitFor()
    }
  },
  {
    name: 'buy',
    path: '/piece/panel123/buy',
    ready: page => page.locator('.buying table').waitFor({ timeout: CAST_MS })
  },
  {
    name: 'print while a stop stands',
    path: '/piece/spoiled1/print',
    ready: page => page.locator('main.print li.not').first().waitFor({ timeout: CAST_MS })
  },
  {
    name: 'cuts by hand',
    path: '/piece/panel123/cuts',
    ready: async page => {
      await page.locator('.by-hand .programs').waitFor({ timeout: CAST_MS })
      await page.locator('.by-hand th .link').first().click()
      await page.locator('.ways-by').waitFor()
    }
  },
  {
    name: 'cuts by machine, a program open',
    path: '/piece/panel123/cuts',
    ready: async page => {
      // The last to want a shop: from here on it has a machine.
      await page.evaluate(
        document =>
          fetch('/api/shop', {
            method: 'PUT',
            headers: { 'x-castwright': '1', 'content-type': 'application/json' },
            body: JSON.stringify({ base: 0, edit: 'laid-workshop', document })
          }),
        WORKSHOP
      )
      await page.reload()
      await page.locator('.cuts-right .programs').waitFor({ timeout: CAST_MS })
      await page.getByRole('button', { name: /Cable channel/ }).click()
      await page.locator('.run').waitFor()
      await page.locator('.zero-check summary').first().click()
    }
  },
  {
    name: 'no such piece',
    path: '/piece/nothing12',
    ready: page => page.getByText('no such piece').waitFor()
  },
  {
    name: 'pairing',
    path: '/pair',
    unpaired: true,
    ready: page => page.getByRole('textbox', { name: 'Pairing words' }).waitFor()
  }
]

/** What a browser says of answers that these screens are there for. */
const MEANT = /status of (401|404)/

/**
 * Goes through every screen, one after the other in one window, and lets each be looked at once it stands there
 * whole; those of an unpaired device in a window of their own.
 */
export async function everyScreen(
  open: (url: string, wanted?: Wanted) => Promise<Window>,
  look: (page: Page, name: string) => Promise<void>
): Promise<void> {
  const desk = await laidDesk()
  const origins = [desk.url, `http://${NAME}:${desk.port}`] as const
  const wanted = { meant: MEANT, at: MOMENT }
  const windows = [await open(origins[0], wanted), await open(origins[1], wanted)] as const
  for (const at of SCREENS) {
    const k = at.unpaired === true ? 1 : 0
    const { page } = windows[k]
    await page.setViewportSize(DESK)
    await page.goto(`${origins[k]}${at.path}`)
    await at.ready(page)
    await look(page, at.name)
  }
}
