import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import { expect, onTestFinished, test } from 'vitest'
import type { Ink, Mark, Paint, Sheet } from '../../engine/src/sheets/mark.ts'
import { box } from '../../engine/src/sheets/mark.ts'
import { penOf, WASHES } from '../../engine/src/sheets/pen.ts'
import { svgDocument } from '../../engine/src/sheets/svg.ts'
import { browser } from './browser.ts'

const open = browser()
const INKS = ['outline', 'edge', 'hidden', 'halo', 'axis', 'hardware', 'grain', 'dot', 'stone-light'] as const
const rgb = (hex: string) => `rgb(${[1, 3, 5].map(k => Number.parseInt(hex.slice(k, k + 2), 16)).join(', ')})`

// The browser's own cascade is the other side: what a class says must not give way to what is said of all paths.
test('lines, arrowheads and washes of a drawing in a file of its own are drawn as their pens say', async () => {
  const line = (ink: Ink): Mark => ({ kind: 'path', ink, lines: [Float64Array.of(0, 0, 9, 9)] })
  const area = (paint: Paint): Mark => ({
    kind: 'region',
    rings: [box(0, 0, 5, 5)],
    paint,
    hatch: null,
    edge: null
  })
  const sheet: Sheet = {
    widthMm: 20,
    heightMm: 20,
    marks: [
      ...INKS.map(line),
      { kind: 'path', ink: 'outline', lines: [Float64Array.of(0, 0, 9, 9)], widthMm: 1.5, paint: '#112233' },
      { kind: 'arrow', ink: 'dimension', at: [5, 5], directionDeg: 0, lengthMm: 2 },
      area('clear'),
      area('cover-2')
    ]
  }
  const folder = mkdtempSync(join(tmpdir(), 'castwright-svg-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  const file = join(folder, 'pens.svg')
  writeFileSync(file, svgDocument(sheet, 'pens'))
  const { page } = await open(pathToFileURL(file).href)
  const drawn = await page.evaluate(() =>
    [...document.querySelectorAll('path')].map(path => {
      const { stroke, strokeWidth, fill, opacity, strokeDasharray } = getComputedStyle(path)
      return { stroke, width: Number.parseFloat(strokeWidth), fill, opacity, dashes: strokeDasharray }
    })
  )
  INKS.forEach((ink, k) => {
    const pen = penOf(ink)
    expect(drawn[k], ink).toEqual({
      stroke: rgb(pen.colour),
      width: pen.widthMm,
      fill: 'none',
      opacity: String(pen.strength),
      dashes: pen.dashesMm?.map(mm => `${mm}px`).join(', ') ?? 'none'
    })
  })
  const [own, arrow, clear, cover] = drawn.slice(INKS.length)
  expect(own).toMatchObject({ stroke: rgb('#112233'), width: 1.5 })
  expect(arrow).toMatchObject({ fill: rgb(penOf('dimension').colour), stroke: 'none' })
  expect([clear!.fill, cover!.fill]).toEqual([
    rgb(WASHES.get('clear')!.colour),
    rgb(WASHES.get('cover-2')!.colour)
  ])
}, 60_000)
