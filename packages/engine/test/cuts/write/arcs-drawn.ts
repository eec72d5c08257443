import type { Arc, Written } from '../../../src/cuts/write/arc.ts'
import { writtenArc } from '../../../src/cuts/write/arc.ts'
import { numbersOf } from '../../../src/cuts/write/number.ts'
import type { Dialect } from '../../../src/piece/dialect-field.ts'
import { chance } from '../../stack/random.ts'
import { dialect } from './sample.ts'

/** An arc drawn by lot, as it is written, in the unit of the dialect. */
export interface Drawn {
  readonly from: { readonly x: number; readonly y: number; readonly z: number }
  readonly at: { readonly x: number; readonly y: number; readonly z: number }
  readonly arc: Arc
  readonly written: readonly Written[]
  /** mm */
  readonly radiusMm: number
}

/** Arcs of radii from `least` to `most` mm, written at the decimals of a dialect. */
export function arcsDrawn(
  change: Partial<Dialect>,
  count: number,
  least: number,
  most: number,
  tolMm = 0.01
): Drawn[] {
  const numbers = numbersOf(dialect(change))
  const c = chance(count)
  return Array.from({ length: count }, () => {
    const r = least * (most / least) ** c.next()
    const [cx, cy] = [c.span(-300, 300), c.span(-300, 300)]
    const a = c.span(0, 7)
    const b = a + c.span(0.02, 6.2)
    const from = { x: cx + r * Math.cos(a), y: cy + r * Math.sin(a), z: 0 }
    const arc: Arc = {
      kind: 'arc', x: cx + r * Math.cos(b), y: cy + r * Math.sin(b), z: c.span(-9, 0), cx, cy, clockwise: c.is(0.5),
      feedMmMin: 500
    } // biome-ignore format: an arc
    const at = { x: numbers.rounded(from.x), y: numbers.rounded(from.y), z: 0 }
    return {
      from,
      at,
      arc,
      written: writtenArc(from, at, arc, numbers, tolMm, change.arcs ?? true),
      radiusMm: r
    }
  })
}

/** Worst difference of start and end radius of the arcs written, in the unit. */
export function radiiApart(drawn: readonly Drawn[]): number {
  let most = 0
  for (const { at, written } of drawn) {
    let { x, y } = at
    for (const w of written) {
      if (w.kind === 'arc')
        most = Math.max(most, Math.abs(Math.hypot(w.i, w.j) - Math.hypot(w.x - x - w.i, w.y - y - w.j)))
      ;({ x, y } = w)
    }
  }
  return most
}
