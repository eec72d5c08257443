import type { Marking } from '../piece/piece-schema.ts'
import { union } from '../shape/combine.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import { mirrorX, translate } from '../shape/transform.ts'
import type { Removal } from './event.ts'
import { textLines, textRegion } from './figure-text.ts'
import type { Stack } from './stack.ts'

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

/**
 * What the single-line numerals of a marking take away: the V of its lines. null where it has none, or is cut by no step.
 * It is no event of the stack: figures are left out of covers and volumes.
 */
export function figureRemoval(stack: Stack, marking: number): Removal | null {
  const own = stack.events.find(e => e.kind === 'mark' && e.index === marking)
  const lines = figureLines(stack.piece.markings[marking]!)
  if (own?.kind !== 'mark' || lines.length === 0) return null
  return { ...own.removal, lines }
}
