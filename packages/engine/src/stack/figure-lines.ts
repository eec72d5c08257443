import type { Marking } from '../piece/piece-schema.ts'
import { union } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import { mirrorX, translate } from '../shape/transform.ts'
import { textLines, textRegion } from './figure-text.ts'

/**
 * Numerals of a marking on the plan, seen from the front: on the back they are mirrored, so that they read from there,
 * upright when the piece is turned about its upright line.
 */
export function figureLines(m: Marking): Float64Array[] {
  if (m.figures !== 'single line') return []
  return m.numerals.flatMap(({ text, at: [x, y], height }) =>
    textLines(text, { x, y }, height).map(line =>
      m.face === 'front' ? line : line.map((v, k) => (k % 2 === 0 ? 2 * x - v : v))
    )
  )
}

/** The same as outlines: the region that a V cuts out, as wide at the face as the figures are drawn. */
export function figureRegion(m: Marking, tolMm: number): Region {
  if (m.figures !== 'outline') return EMPTY
  return union(
    ...m.numerals.map(({ text, at: [x, y], height }) => {
      const upright = textRegion(text, { x: 0, y: 0 }, height, tolMm)
      return translate(m.face === 'front' ? upright : mirrorX(upright), x, y)
    })
  )
}
