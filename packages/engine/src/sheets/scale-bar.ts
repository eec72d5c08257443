import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn, lengthUnit, METRIC } from '../quantity/shown-units.ts'
import { toFixedUnit } from '../quantity/unit.ts'
import type { Mark } from './mark.ts'
import { CAPTION_MM, line, text } from './mark.ts'

/** Lengths of a scale bar, in its unit; their halves can be read too. */
const BAR_STEPS = {
  mm: [10, 20, 50, 100, 200, 500, 1000, 2000],
  in: [1, 2, 4, 8, 12, 24, 48, 96]
} as const

/** A scale bar of a round length, marks from (x, y); about a quarter of `roomMm` on the sheet. */
export function scaleBar(
  scale: number,
  roomMm: number,
  x: number,
  y: number,
  shown: ShownUnits = METRIC
): Mark[] {
  const unit = lengthUnit(shown)
  const unitMm = toFixedUnit(1, unit)
  const steps = BAR_STEPS[unit]
  const whole = steps.findLast(s => s * unitMm * scale <= roomMm) ?? steps[0]!
  const end = x + whole * unitMm * scale
  const middle = (x + end) / 2
  return [
    { kind: 'path', ink: 'cutting-plane-end', lines: [Float64Array.of(x, y, middle, y)] },
    line('dimension', [x, y], [end, y]),
    ...[x, middle, end].map(at => line('dimension', [at, y - 1], [at, y + 1])),
    ...[
      [x, '0'],
      [middle, lengthIn(shown, (whole / 2) * unitMm, 0)],
      [end, `${whole} ${unit}`]
    ].map(([at, words]) =>
      text([at as number, y + 2.2], words as string, {
        anchor: 'middle',
        lettering: 'caption',
        heightMm: CAPTION_MM
      })
    )
  ]
}
