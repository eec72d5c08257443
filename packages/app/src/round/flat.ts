import { levelSheet } from '../../../engine/src/round/level-sheet.ts'
import type { RoundModel } from '../../../engine/src/round/round-model.ts'
import { svgBody } from '../../../engine/src/sheets/svg.ts'

/** A millimetre of a drawing is a quarter rem. */
const PIXELS_PER_MM = 4

/** Draws the levels of a model into the pad: marks of the engine, every word of them escaped. */
export function drawFlat(
  pad: HTMLElement,
  model: RoundModel,
  shown: { readonly fromMm: number; readonly toMm: number; readonly face: 'front' | 'back' },
  widthPx: number
): void {
  const sheet = levelSheet(model, { ...shown, widthMm: Math.min(200, widthPx / PIXELS_PER_MM) })
  let svg = pad.querySelector('svg')
  if (svg === null) {
    svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg')
    svg.setAttribute('class', 'draw')
    svg.setAttribute('aria-hidden', 'true')
    pad.append(svg)
  }
  svg.setAttribute('viewBox', `0 0 ${sheet.widthMm} ${sheet.heightMm}`)
  svg.innerHTML = svgBody(sheet)
}
