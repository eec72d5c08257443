import { trueMinus } from '../quantity/rough.ts'
import { lengthIn, lengthUnit } from '../quantity/shown-units.ts'
import type { CoreModel } from './core-model.ts'
import { corePartsAt, seenFigures, seenWords } from './core-model.ts'

/** The core at a point in words, front to back, for those who listen to the page. */
export function coreWords(model: CoreModel, x: number, y: number): string {
  const { shown } = model
  const place = `x ${trueMinus(lengthIn(shown, x, 1))}, y ${trueMinus(lengthIn(shown, y, 1))}`
  const parts = corePartsAt(model, x, y)
  if (parts.length === 0) return `${place}: outside the piece.`
  const words = [...parts].reverse().map(p => {
    const size = `${lengthIn(shown, p.to - p.from, 1, 1)} ${lengthUnit(shown)}`
    if (p.material !== null) return `${p.name} ${size}`
    const held = p.words === '' ? '' : `, ${p.words}`
    return `void ${size}${held}${p.seen === null ? '' : `, ${seenWords(p.seen)}, ${seenFigures(p.seen)}`}`
  })
  return `${place}, from front to back: ${words.join('; ')}.`
}
