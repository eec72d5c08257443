import { intersection } from '../../shape/combine.ts'
import { area, bounds } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { mirrorX, mirrorY } from '../../shape/transform.ts'
import type { Round } from './plan-form.ts'

/** The three wrong ways in which a flat template can be laid on. */
export type Turn = 'half turned' | 'turned over, left to right' | 'turned over, top to bottom'

/**
 * What a template laid on wrongly does.
 *
 * - seen      its edge does not lie in place: it cannot be laid on that way unnoticed
 * - harmless  it lies in place and every hole falls where one belongs
 * - astray    it lies in place and holes land where none belong: work lost
 */
export type TurnDoes = 'seen' | 'harmless' | 'astray'

/** Holes nearer than this to their place are in it, mm: a pencil line. */
const IN_PLACE_MM = 0.3
/** Share of the outline that may stick out and still not be seen by eye or stop. */
const UNSEEN_SHARE = 0.002

/**
 * How a drilling template answers to being laid on wrongly, about the middle of the box of its edge.
 *
 * Source: symmetry of plane figures; case C77 of makers: four dowels a side, a template with a direction mark laid on
 * upside down, saved by its symmetry. Check: a rectangle with holes alike about both axes (all harmless), with one hole
 * moved (all astray), an L (seen).
 *
 * Limits: it is taken to be placed by its edge; two pins or stops that differ left and right make every wrong turn seen.
 */
export function turnsOf(edge: Region, holes: readonly Round[]): Readonly<Record<Turn, TurnDoes>> {
  const b = bounds(edge)
  const [cx, cy] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
  const does = (sx: 1 | -1, sy: 1 | -1): TurnDoes => {
    let turned = edge
    if (sx < 0) turned = mirrorX(turned, cx)
    if (sy < 0) turned = mirrorY(turned, cy)
    const whole = area(edge)
    if (2 * (whole - area(intersection(edge, turned))) > UNSEEN_SHARE * whole) return 'seen'
    const met = holes.every(h => {
      const [x, y] = [cx + sx * (h.x - cx), cy + sy * (h.y - cy)]
      return holes.some(
        o =>
          Math.hypot(o.x - x, o.y - y) <= IN_PLACE_MM && Math.abs(o.diameterMm - h.diameterMm) <= IN_PLACE_MM
      )
    })
    return met ? 'harmless' : 'astray'
  }
  return {
    'half turned': does(-1, -1),
    'turned over, left to right': does(-1, 1),
    'turned over, top to bottom': does(1, -1)
  }
}

/** The same in a sentence for the template; null when every wrong turn is seen. */
export function turnWords(turns: Readonly<Record<Turn, TurnDoes>>): string | null {
  const list = Object.entries(turns) as [Turn, TurnDoes][]
  const astray = list.filter(([, does]) => does === 'astray').map(([turn]) => turn)
  if (astray.length > 0)
    return `It also lies in place ${or(astray)}, and then the holes are astray: mark "up" and "left" on it, and put one stop off the middle so that it fits one way only.`
  const harmless = list.filter(([, does]) => does === 'harmless').map(([turn]) => turn)
  return harmless.length === 0
    ? null
    : `It lies in place ${or(harmless)} too; its holes fall in the same places then, what is drawn beside them does not.`
}

function or(words: readonly string[]): string {
  return words.length === 1 ? words[0]! : `${words.slice(0, -1).join(', ')} or ${words[words.length - 1]}`
}
