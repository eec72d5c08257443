import type { Patch } from '../piece/patch.ts'
import type { PieceDocument } from '../piece/piece-schema.ts'
import type { ShapeDocument } from '../piece/shape-field.ts'
import { mmOf, shapeMoved } from './shape-place.ts'

/** A timber as the document holds it, moved on the plan. Light enough for a hand that drags: nothing is worked out. */
export type TimberDocument = NonNullable<PieceDocument['timbers']>[number]

const round = (mm: number) => Math.round(mm * 1e4) / 1e4 + 0

/** The timber moved by (dx, dy), mm, with its underside and its measured top. */
export function timberShifted(timber: TimberDocument, dx: number, dy: number): TimberDocument {
  const grid = timber.measured
  return {
    ...timber,
    ...outlines(timber, s => shapeMoved(s, dx, dy)),
    ...(grid === undefined
      ? {}
      : { measured: { ...grid, from: [round(mmOf(grid.from[0]) + dx), round(mmOf(grid.from[1]) + dy)] } })
  }
}

/** Its outline, and its underside if it has one, each mapped. */
export function outlines(
  timber: TimberDocument,
  map: (s: ShapeDocument) => ShapeDocument
): Partial<TimberDocument> {
  const under = timber.underside === undefined ? {} : { underside: map(timber.underside) }
  return { outline: map(timber.outline), ...under }
}

/** The patch from one form of timber `index` to another: an operation a key that changed, so that what else is edited meanwhile stays. */
export function timberPatch(before: TimberDocument, after: TimberDocument, index: number): Patch {
  const was = before as Record<string, unknown>
  return Object.entries(after)
    .filter(([key, value]) => JSON.stringify(value) !== JSON.stringify(was[key]))
    .map(([key, value]) => ({
      op: key in before ? 'replace' : 'add',
      path: `/timbers/${index}/${key}`,
      value
    }))
}
