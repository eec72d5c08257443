import { trueMinus } from '../quantity/rough.ts'
import { lengthIn, lengthUnit } from '../quantity/shown-units.ts'
import type { CoreModel } from './core-model.ts'
import { corePartsAt } from './core-model.ts'

/** The core at a point in words, front to back, for those who listen to the page. */
export function coreWords(model: CoreModel, x: number, y: number): string {
  const { shown } = model
  const place = `x ${trueMinus(lengthIn(shown, x, 1))}, y ${trueMinus(lengthIn(shown, y, 1))}`
  const parts = corePartsAt(model, x, y)
  if (parts.length === 0) return `${place}: outside the piece.`
  const words = [...parts].reverse().map(p => {
    const size = `${lengthIn(shown, p.to - p.from, 1, 1)} ${lengthUnit(shown)}`
    if (p.material === null) return p.words === '' ? `void ${size}` : `void ${size}, ${p.words}`
    return p.cover === null
      ? `${p.name} ${size}`
      : `${p.name} ${size}, ${p.cover === 'hidden' ? 'hides what is behind' : `${p.cover} from the front`}`
  })
  return `${place}, from front to back: ${words.join('; ')}.`
}
