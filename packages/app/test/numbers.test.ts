import type { Page } from 'playwright-core'
import { expect, test } from 'vitest'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { plan } from '../../engine/src/plan.ts'
import { bounds } from '../../engine/src/shape/measure.ts'
import { castPartsAt, corePartsAt } from '../../engine/src/sheets/core-model.ts'
import { coreStrip } from '../../engine/src/sheets/core-strip.ts'
import { coreModelOf } from '../../engine/src/sheets/model.ts'
import { sectionAt } from '../../engine/src/sheets/section-at.ts'
import { seeded } from '../../engine/src/sheets/seeded.ts'
import { svgBody } from '../../engine/src/sheets/svg.ts'
import { sectionDrawn } from '../src/sheet/section-drawn.ts'
import { plannedView } from '../src/worker/planned-view.ts'
import { browser, soon } from './browser.ts'
import { drawing, example, openDesk } from './desk.ts'

/**
 * What the screen says against the engine, asked here without the app: the model never went through the worker's
 * messages, and sizes of the core are those of its parts, not those of a drawing.
 */
const open = browser()
const AS_OF = '2026-03-02T09:00:00.000Z'
const PLACES = 5
/** Half of the last place shown, mm. */
const HALF_MM = 0.0501

/** Every text of a drawing, in its order. */
function textsOf(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/gs)].map(m => m[1]!.replace(/<[^>]*>/g, ''))
}

async function shown(page: Page, selector: string): Promise<string[]> {
  const texts = textsOf(await page.locator(`${selector} svg`).first().innerHTML())
  // Nothing equals nothing: a drawing without words would prove no number.
  expect(texts.length, selector).toBeGreaterThan(0)
  return texts
}

/** Sizes of a core said in words, front to back, mm. */
function sizesSaid(words: string): number[] {
  return [...words.matchAll(/ (\d+(?:\.\d+)?) mm/g)].map(m => Number(m[1]))
}

const figure = (text: string) => Number(text.replace('−', '-').replace(/[^-0-9.]/g, ''))

for (const [name, files] of [
  ['saltmarsh-panel', {}],
  ['heron-table', { 'heron-table.svg': drawing('heron-table.svg') }]
] as const)
  test(`section, core and title block of ${name} equal the engine's`, async () => {
    const document = example(name)
    const planned = plan(
      { piece: checkPiece(document, name), shop: usualShop(), files, source: name },
      { asOf: AS_OF }
    )
    const model = coreModelOf(planned.work)
    const view = { ...plannedView(planned), model }
    const desk = await openDesk()
    await desk.lay('numbers1', document, files)
    const { page } = await open(`${desk.url}/piece/numbers1`, { at: AS_OF })
    await page.locator('.layer').first().waitFor()
    await soon(() => page.locator('.pass').textContent()).toBe('')

    // Title block.
    const title = async (term: string) =>
      (await page.locator('.title dl > div', { hasText: term }).locator('dd').textContent())!
    const { totals } = planned.plan
    const size = (await title('Size')).split('×').map(figure)
    for (const [k, mm] of totals.sizeMm.entries()) expect(Math.abs(size[k]! - mm)).toBeLessThan(HALF_MM)
    const mass = await title('Mass')
    const grams = figure(mass) * (mass.includes('kg') ? 1000 : 1)
    expect(Math.abs(grams / totals.massG - 1), mass).toBeLessThan(0.05)
    expect(figure(await title('Number'))).toBe(totals.pieces)

    // Layers: depth as cast and finished, volume, peak.
    const layers = page.locator('.layer')
    expect(await layers.count()).toBe(planned.plan.pours.length)
    for (const pour of planned.plan.pours) {
      const layer = layers.filter({ has: page.getByRole('button', { name: pour.id, exact: false }) })
      const facts = (await layer.locator('.facts dd').allTextContents()).map(figure)
      expect(Math.abs(facts[0]! - pour.stack.depth)).toBeLessThan(HALF_MM)
      if (pour.finishedMm !== null) expect(Math.abs(facts[1]! - pour.finishedMm)).toBeLessThan(HALF_MM)
      expect(facts[2]).toBe(Math.round(pour.stack.liquidMl))
    }

    // The section along the line that was chosen for it, then along lines pulled across the plan.
    expect(await shown(page, '#section')).toEqual(
      textsOf(sectionDrawn(view, view.section.path, false).drawn.body)
    )
    const random = seeded(name.length)
    const box = bounds(model.geometry.outline)
    for (let k = 0; k < PLACES; k++) {
      const pad = (await page.locator('svg.plan').boundingBox())!
      const scale = pad.width / view.plane.view.widthMm
      const at = [
        box.minX + (box.maxX - box.minX) * (0.06 + 0.88 * random()),
        box.minY + (box.maxY - box.minY) * (0.08 + 0.84 * random())
      ] as const
      const screen = (x: number, y: number) =>
        [
          pad.x + (view.plane.view.originX + x * view.plane.view.scale) * scale,
          pad.y + (view.plane.view.heightMm - view.plane.view.originY - y * view.plane.view.scale) * scale
        ] as const
      // Taken hold of at its end beside the piece.
      const grip = await page.locator('.line-a .grip').evaluate((path, along) => {
        const spot = (path as SVGPathElement).getPointAtLength(0)
        const p = new DOMPoint(spot.x - (along ? 3 : 0), spot.y + (along ? 0 : 3)).matrixTransform(
          (path as SVGPathElement).getScreenCTM()!
        )
        return [p.x, p.y] as const
      }, view.section.path.along === 'x')
      await page.mouse.move(...grip)
      await page.mouse.down()
      await page.mouse.move(...screen(at[0], at[1]), { steps: 3 })
      await page.mouse.up()
      const line = page.locator('.line-a')
      const leg = Number(await line.getAttribute('aria-valuenow'))
      const path =
        view.section.path.along === 'x'
          ? ({ along: 'x', legs: [{ from: box.minX, to: box.maxX, at: leg }] } as const)
          : ({ along: 'y', legs: [{ from: box.minY, to: box.maxY, at: leg }] } as const)
      expect(
        Math.abs(leg - at[path.along === 'x' ? 1 : 0]),
        'the line went where it was pulled'
      ).toBeLessThan(1)
      expect(await shown(page, '#section'), `A-A at ${leg}`).toEqual(
        textsOf(sectionDrawn(view, path, false).drawn.body)
      )

      // The core at the pointer: drawn, said, and in the section across.
      await page.mouse.move(...screen(at[0], at[1] + 1.7))
      const core = page.locator('#core')
      const [x, y] = [Number(await core.getAttribute('data-x')), Number(await core.getAttribute('data-y'))]
      const parts = corePartsAt(model, x, y)
      expect(parts.length, `core at ${x}, ${y}`).toBeGreaterThan(0)
      await soon(async () => sizesSaid((await page.locator('#core-says').textContent()) ?? '')).toEqual(
        [...parts].reverse().map(p => Number((p.to - p.from).toFixed(1)))
      )
      const strip = { widthMm: 58, heightMm: Math.min(118, Math.max(84, view.plane.view.heightMm + 6)) }
      expect(await shown(page, '#core')).toEqual(
        textsOf(svgBody(coreStrip(model, x, y, { levels: 'finished', ...strip })))
      )
      expect(await shown(page, '.across')).toEqual(
        textsOf(svgBody(sectionAt(model, x, y, { widthMm: 88, heightMm: 46 })))
      )
      await page.getByRole('button', { name: 'as cast', exact: true }).click()
      expect(castPartsAt(model, x, y).length).toBeGreaterThanOrEqual(parts.length)
      expect(await shown(page, '#core')).toEqual(
        textsOf(svgBody(coreStrip(model, x, y, { levels: 'as cast', ...strip })))
      )
      await page.getByRole('button', { name: 'finished', exact: true }).click()
    }
  })

test('on paper every caution of every step stands open, and nothing that is worked by hand', async () => {
  const document = example('heron-table')
  const files = { 'heron-table.svg': drawing('heron-table.svg') }
  const { plan: planned } = plan(
    { piece: checkPiece(document, 'heron'), shop: usualShop(), files, source: 'heron' },
    { asOf: AS_OF }
  )
  const cautions = planned.steps.flatMap(s => s.safety.map(l => l.line))
  expect(cautions.length).toBeGreaterThan(5)
  const desk = await openDesk()
  await desk.lay('paper123', document, files)
  const { page } = await open(`${desk.url}/piece/paper123`, { at: AS_OF })
  await page.locator('.layer').first().waitFor()
  const shownLines = async () =>
    (await page.locator('.safety li').all()).length > 0
      ? page.locator('.safety li').evaluateAll(all => all.filter(l => l.checkVisibility()).length)
      : -1
  expect(await shownLines()).toBe(0)
  // Making a PDF fires the same events as printing does; what stands open is asked while it is made.
  await page.evaluate(() => {
    addEventListener('beforeprint', () => {
      window.document.body.dataset['open'] = [...window.document.querySelectorAll('.safety li')]
        .filter(l => l.checkVisibility())
        .map(l => l.textContent)
        .join('\n')
    })
  })
  const pdf = await page.pdf({ preferCSSPageSize: true })
  expect(pdf.subarray(0, 5).toString('latin1')).toBe('%PDF-')
  const printed = (await page.locator('body').getAttribute('data-open')) ?? ''
  expect(printed.split('\n')).toHaveLength(cautions.length)
  for (const line of cautions) expect(printed).toContain(line)
  expect(await shownLines()).toBe(0)
  await page.emulateMedia({ media: 'print' })
  for (const worked of ['.tools-row', '.choice', '.walk', '.whole', '.top .tools'])
    expect(await page.locator(worked).first().isVisible(), worked).toBe(false)
})
