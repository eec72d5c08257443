import type { Window } from '../cast/window.ts'
import type { Mark } from './mark.ts'
import { box, CAPTION_MM, line, text, textWidthMm } from './mark.ts'
import type { WindowRow } from './window-rows.ts'

/** Height of a lane and of the bar in it, mm. */
export const LANE_MM = 4.7
const BAR_MM = 2.2
/** Clear of each other in one lane, mm. */
const APART_MM = 1.8
const LABEL_GAP_MM = 0.9

/** Where lanes lie: minutes to mm, the ends of the axis and of the sheet, mm. */
export interface LaneAxis {
  readonly x: (min: number) => number
  readonly fromMm: number
  readonly toMm: number
  readonly widthMm: number
}

interface Laid {
  readonly row: WindowRow
  readonly lane: number
  readonly labelAt: number
  readonly anchor: 'start' | 'end'
}

/** Windows laid in as few lanes as their bars and names allow, those that come first on top. */
export function lanesOf(rows: readonly WindowRow[], axis: LaneAxis): readonly Laid[] {
  const taken: [number, number][][] = []
  return rows
    .filter(r => r.window.reached)
    .map(row => {
      const [from, to] = reach(row.window, axis)
      const wide = textWidthMm(row.short, CAPTION_MM)
      // Behind its bar where there is room on the sheet, else before it.
      const behind = to + LABEL_GAP_MM + wide <= axis.widthMm
      const labelAt = behind ? to + LABEL_GAP_MM : from - LABEL_GAP_MM
      const span: [number, number] = behind ? [from, labelAt + wide] : [labelAt - wide, to]
      const free = taken.findIndex(lane =>
        lane.every(([a, b]) => span[1] + APART_MM <= a || span[0] >= b + APART_MM)
      )
      const lane = free < 0 ? taken.length : free
      taken[lane] = [...(taken[lane] ?? []), span]
      return { row, lane, labelAt, anchor: behind ? ('start' as const) : ('end' as const) }
    })
}

/** How many lanes they take. */
export function laneCount(laid: readonly Laid[]): number {
  return laid.reduce((most, l) => Math.max(most, l.lane + 1), 0)
}

/** Lanes drawn downwards from `headMm`: full where a window is sure, lighter over its doubt, strokes at its likeliest ends. */
export function laneMarks(laid: readonly Laid[], headMm: number, axis: LaneAxis): Mark[] {
  const { x } = axis
  return laid.flatMap(({ row: { short, window }, lane, labelAt, anchor }): Mark[] => {
    const foot = headMm - (lane + 1) * LANE_MM + (LANE_MM - BAR_MM) / 2
    const head = foot + BAR_MM
    const [from, to] = reach(window, axis)
    const { openBand, closeBand, open, close } = window
    const sureFrom = openBand[1] === null ? null : x(openBand[1])
    const sureTo = close === null ? to : x(closeBand[0] ?? close)
    const marks: Mark[] = [wash(from, to, foot, head)]
    if (sureFrom !== null && sureTo - sureFrom > 0.2) marks.push(wash(sureFrom, sureTo, foot, head, true))
    marks.push(line('curve', [x(open), foot - 0.4], [x(open), head + 0.4]))
    if (close !== null) marks.push(line('curve', [x(close), foot - 0.4], [x(close), head + 0.4]))
    marks.push(text([labelAt, foot + 0.1], short, { anchor, heightMm: CAPTION_MM }))
    return [{ kind: 'group', name: 'time-window', marks }]
  })
}

// A wash as dark where it is sure, half as dark where it is not.
function wash(from: number, to: number, foot: number, head: number, sure = false): Mark {
  const rings = [box(from, foot, Math.max(to, from + 0.3), head)]
  return { kind: 'region', rings, paint: sure ? 'window' : 'window-doubt', hatch: null, edge: null }
}

function reach({ band, open, close }: Window, { x, fromMm, toMm }: LaneAxis): [number, number] {
  const from = Math.max(fromMm, x(Math.min(band[0], open)))
  const to = close === null || band[1] === null ? toMm : x(Math.max(band[1], close))
  return [from, Math.min(toMm, to)]
}
