import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { formatInchFraction } from '../../engine/src/quantity/format.ts'
import { browser, soon } from './browser.ts'
import type { Document } from './desk.ts'
import { example, openDesk } from './desk.ts'
import { castWhole } from './screens.ts'

const open = browser()
const PIECE = example('saltmarsh-panel')

/** Exact by definition (international yard and pound, NIST SP 811 appendix B.8): mm an inch, g an ounce. */
const INCH_MM = 25.4
const OUNCE_G = 28.349523125

async function choose(page: Page, ...words: readonly string[]): Promise<void> {
  const units = page.locator('.units', {
    has: page.getByRole('group', { name: 'length', includeHidden: true })
  })
  await units.locator('summary').click()
  for (const name of words) await units.getByRole('button', { name, exact: true }).click()
  await units.locator('summary').click()
}

const figure = (text: string | null) => Number((text ?? '').replace('−', '-').replace(/[^-0-9.]/g, ''))

test('units are switched without a change of the document, and what is typed is stored as typed', async () => {
  const desk = await openDesk()
  await desk.lay('panel123', PIECE)
  const stored = async () => JSON.stringify((await desk.piece('panel123')).document)
  const before = await stored()
  const { page } = await open(`${desk.url}/piece/panel123`)
  await page.getByRole('button', { name: 'Reed green', exact: true }).click()
  await page.getByRole('button', { name: 'Reed green: All fields' }).click()
  const fields = page.locator('.layer.open .fields')
  const depth = fields.getByRole('textbox', { name: /: depth$/ })
  const facts = page.locator('.layer.open .facts dd')
  // What is compared with what follows is the last answer, not one on the way to it.
  await castWhole(page)
  expect(await depth.inputValue()).toBe('14')
  const peakC = figure((await facts.nth(3).textContent())!.split('–')[0]!.replace(/°.*/, ''))
  const mass = page.locator('.title dl > div', { hasText: 'Mass' }).locator('dd')
  const kilos = figure(await mass.textContent())

  const textsOf = (selector: string) => page.locator(`${selector} text`).allTextContents()
  const drawn = async () => ({
    plan: await textsOf('svg.plan'),
    section: await textsOf('#section'),
    core: await textsOf('#core'),
    curve: await textsOf('.curve'),
    steps: await page.locator('.step .f').allTextContents(),
    batches: await page.locator('.batch').allTextContents()
  })
  const metric = await drawn()
  expect(metric.plan).toContain('520')
  expect(metric.steps.join()).toContain('620 × 238 inside')

  // Seen in inches, Fahrenheit and ounces; every field is passed through, and none is written.
  await choose(page, 'in, fractions', '°F', 'oz, lb')
  expect(await depth.inputValue()).toBe(formatInchFraction(14, 64).replace(' in', ''))
  expect(await depth.locator('..').textContent()).toContain('in')
  const peak = (await facts.nth(3).textContent())!
  expect(peak).toContain('°F')
  expect(Math.abs(figure(peak.replace(/°.*/, '')) - ((peakC * 9) / 5 + 32))).toBeLessThanOrEqual(1.5)
  const band = /°F\D*(\d+)–/.exec(peak)
  if (band !== null) expect(Number(band[1]), 'the band is in the same unit').toBeGreaterThan(70)
  // Both are read to a tenth: 0.05 kg and 0.05 lb at most.
  expect(await mass.textContent()).toContain('lb')
  expect(Math.abs(figure(await mass.textContent()) * 16 * OUNCE_G - kilos * 1000)).toBeLessThan(50 + 23)
  const inputs = await page.locator('.card .qf input').all()
  expect(inputs.length).toBeGreaterThan(8)
  for (const input of inputs) {
    await input.focus()
    await page.keyboard.press('Enter')
  }
  await page.locator('.skip').focus()
  // 520 mm are 20 15/32 in: 20.472; 60 °C are 140 °F; 347 g are 12.24 oz.
  await soon(async () => (await drawn()).plan).toContain('20 15/32')
  await choose(page, 'in, decimal')
  await soon(async () => (await drawn()).plan).toContain('20.472')
  const inches = await drawn()
  // The mould of 620 × 238 mm.
  expect(inches.steps.join()).toContain('24.41 × 9.37 inside')
  expect(inches.batches[0]).toContain('12.24')
  expect(inches.batches[0]).toContain('oz')
  expect(inches.curve.join(' ')).toContain('°F after')
  for (const key of ['plan', 'section', 'core'] as const) {
    expect(inches[key].length, key).toBeGreaterThan(3)
    expect(inches[key], key).not.toEqual(metric[key])
  }
  expect(Number(await depth.inputValue())).toBeCloseTo(14 / INCH_MM, 3)
  for (const input of inputs) await input.focus()
  await choose(page, 'mm', '°C', 'g, kg')
  expect(await depth.inputValue()).toBe('14')
  // All of it is again as it was: nothing drifted.
  await soon(drawn).toEqual(metric)
  expect(await stored()).toBe(before)
  expect(await desk.revisions('panel123')).toBe(1)
  expect(await page.getByRole('button', { name: 'Undo', exact: true }).isDisabled()).toBe(true)

  // Typed in inches it is stored in inches, as typed, and read back so.
  const pour = async () => ((await desk.piece('panel123')).document['pours'] as Document[])[0]!
  await choose(page, 'in, fractions', '°F')
  await depth.fill('1/2')
  await depth.press('Enter')
  await soon(async () => (await pour())['depth']).toBe('1/2 in')
  await depth.fill('1 1/2')
  await depth.press('Enter')
  await soon(async () => (await pour())['depth']).toBe('1 1/2 in')
  expect(await depth.inputValue()).toBe('1 1/2')
  const warm = fields.getByRole('textbox', { name: /: start temperature$/ })
  await warm.fill('77')
  await warm.press('Enter')
  await soon(async () => (await pour())['startTemperature']).toBe('77 °F')
  const typed = await stored()
  await choose(page, 'mm', '°C')
  expect(Number(await depth.inputValue())).toBeCloseTo(1.5 * INCH_MM, 9)
  expect(await warm.inputValue()).toBe('25')
  await choose(page, 'in, fractions', '°F')
  expect(await depth.inputValue()).toBe('1 1/2')
  expect(await stored()).toBe(typed)

  // The clear pour now ends below the green: no plan. After a reload the field that is named stands there to be
  // changed, in the units chosen, which this browser remembers.
  await page.reload()
  await page.getByRole('heading', { name: 'This cannot be planned yet' }).waitFor()
  expect(await page.locator('.units summary', { hasText: '°F' }).textContent()).toBe('in, °F, g')
  const height = page.locator('.trouble').getByRole('textbox', { name: /: height$/ })
  expect(Number((await height.inputValue()).split(' ')[0])).toBeCloseTo(30 / INCH_MM, 0)
  await height.fill('2 1/4')
  await height.press('Enter')
  await page.locator('.layer').first().waitFor()
  await soon(async () => ((await desk.piece('panel123')).document['pours'] as Document[])[1]!['height']).toBe(
    '2 1/4 in'
  )
}, 90_000)

test('findings follow the switch: the sentence, what was found and its limit', async () => {
  const desk = await openDesk()
  await desk.lay('spoiled1', example('saltmarsh-panel.spoiled'))
  const { page } = await open(`${desk.url}/piece/spoiled1`)
  await page.locator('.layer').first().waitFor()
  await castWhole(page)
  const found = () =>
    page.locator('.find').evaluateAll(all =>
      all.map(f => ({
        says: f.querySelector('.says')!.textContent!,
        fix: f.querySelector('.fix')?.textContent ?? '',
        why: f.querySelector('.basis')!.textContent!,
        figures: [...f.querySelectorAll('.figures > span')].map(s =>
          s.textContent!.replace(/\s+/g, ' ').trim()
        )
      }))
    )
  const metric = await found()
  expect(metric.flatMap(f => f.figures).filter(f => / ?mm$/.test(f)).length).toBeGreaterThan(3)
  await choose(page, 'in, decimal', '°F', 'oz, lb')
  await soon(async () => (await found()).flatMap(f => f.figures).some(f => /in$/.test(f))).toBe(true)
  const inches = await found()
  expect(inches).toHaveLength(metric.length)
  let compared = 0
  for (const [i, was] of metric.entries()) {
    const is = inches[i]!
    // A sentence has its mm with the inches beside them, and °C with °F.
    for (const words of [is.says, is.fix, is.why]) {
      const left = words.replace(/mm \([^)]* in\)/g, '').replace(/°C \([^)]* °F\)/g, '')
      expect(left.replace(/(?:board|bit|mill) \d+(?:\.\d+)? mm/g, '')).not.toMatch(/\d ?mm\b|°C/)
    }
    expect(is.figures).toHaveLength(was.figures.length)
    for (const [k, words] of was.figures.entries()) {
      if (!/mm$/.test(words)) continue
      expect(is.figures[k]).toMatch(/in$/)
      const figures = (text: string) =>
        text
          .replaceAll('−', '-')
          .match(/-?\d+(?:\.\d+)?/g)!
          .map(Number)
      const [a, b] = [figures(words), figures(is.figures[k]!)]
      for (const [j, mm] of a.entries()) {
        // Read to a tenth of a mm up to 100, and to a thousandth of an inch or finer.
        const half = Math.abs(mm) >= 100 ? 0.5 + 0.005 * INCH_MM : 0.05 + 0.0005 * INCH_MM
        expect(Math.abs(b[j]! * INCH_MM - mm), `${words} → ${is.figures[k]}`).toBeLessThanOrEqual(half + 1e-9)
        compared++
      }
    }
  }
  expect(compared).toBeGreaterThan(5)
  await choose(page, 'mm', '°C', 'g, kg')
  await soon(found).toEqual(metric)
  expect(await desk.revisions('spoiled1')).toBe(1)
}, 90_000)
