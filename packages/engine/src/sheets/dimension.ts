import type { Mark, Spot } from './mark.ts'
import { FIGURE_MM, line, text, textWidthMm } from './mark.ts'

/** Length of an arrowhead, mm: ten times the narrow line (ISO 129-1 practice; memory). */
const ARROW_MM = 1.8
/** Extension lines begin this far from the edge and end this far past the dimension line, mm. */
const GAP_MM = 0.8
const PAST_MM = 1
/** Figures stand this far over their line, mm. */
const OVER_MM = 0.7

export interface Dimension {
  /** Ends on the edge that is measured; level or upright, not slanted. */
  readonly from: Spot
  readonly to: Spot
  /** Distance of the dimension line from the edge, mm: up or right when positive. */
  readonly off: number
  readonly words: string
  readonly strong?: boolean
}

/**
 * A dimension as marks: two extension lines, the dimension line with its arrowheads, the figure over it, read
 * from below or from the right (ISO 129-1; memory). Where the span has no room for arrowheads they stand
 * outside; where it has none for the figure, that stands beside the second end, or lies beside an upright line.
 * @throws Error for a slanted span
 */
export function dimension({ from, to, off, words, strong }: Dimension): Mark[] {
  const level = Math.abs(from[1] - to[1]) < 1e-9
  if (!level && Math.abs(from[0] - to[0]) > 1e-9)
    throw new Error(
      `a slanted dimension from (${from.join(', ')}) to (${to.join(', ')}); level or upright only`
    )
  const [a, b] = level === from[0] <= to[0] || (!level && from[1] <= to[1]) ? [from, to] : [to, from]
  const span = level ? b[0] - a[0] : b[1] - a[1]
  const sign = Math.sign(off) || 1
  // Along and across the dimension line.
  const put = (base: Spot, along: number, across: number): Spot =>
    level ? [base[0] + along, base[1] + across] : [base[0] + across, base[1] + along]
  const wide = textWidthMm(words, FIGURE_MM, strong)
  const arrowsIn = span >= 2 * ARROW_MM + 0.6
  const textIn = span >= wide + 0.8
  const out: Mark[] = [
    line('dimension', put(a, 0, sign * GAP_MM), put(a, 0, off + sign * PAST_MM)),
    line('dimension', put(b, 0, sign * GAP_MM), put(b, 0, off + sign * PAST_MM)),
    line('dimension', put(a, arrowsIn ? 0 : -2 * ARROW_MM, off), put(b, arrowsIn ? 0 : 2 * ARROW_MM, off))
  ]
  const forward = level ? 0 : 90
  out.push(
    {
      kind: 'arrow',
      ink: 'dimension',
      at: put(a, 0, off),
      directionDeg: arrowsIn ? forward + 180 : forward,
      lengthMm: ARROW_MM
    },
    {
      kind: 'arrow',
      ink: 'dimension',
      at: put(b, 0, off),
      directionDeg: arrowsIn ? forward : forward + 180,
      lengthMm: ARROW_MM
    }
  )
  const bold = strong === undefined ? {} : { strong }
  if (!level && !textIn) {
    // Lying down, on the far side of the line.
    const [x, y] = put(a, span / 2, off)
    out.push(
      text([x + sign * 1.2, y - 0.33 * FIGURE_MM], words, { anchor: sign > 0 ? 'start' : 'end', ...bold })
    )
    return out
  }
  const place = textIn ? put(a, span / 2, off) : put(b, 2 * ARROW_MM + 0.6 + wide / 2, off)
  out.push(
    text(level ? [place[0], place[1] + OVER_MM] : [place[0] - OVER_MM, place[1]], words, {
      anchor: 'middle',
      ...bold,
      ...(level ? {} : { turnDeg: 90 })
    })
  )
  return out
}

/** Several dimensions end to end on one line; those too short for their figure are drawn without one. */
export function chain(stops: readonly number[], y: number, off: number, words: readonly string[]): Mark[] {
  const out: Mark[] = []
  for (let k = 0; k + 1 < stops.length; k++) {
    const [x0, x1] = [stops[k]!, stops[k + 1]!]
    const fits = x1 - x0 >= textWidthMm(words[k]!, FIGURE_MM) + 0.6
    // A figure that does not fit its link is left out: two of them would stand in each other.
    const marks = dimension({ from: [x0, y], to: [x1, y], off, words: fits ? words[k]! : '' })
    out.push(...marks.filter(m => m.kind !== 'text' || m.text !== ''))
  }
  return out
}
