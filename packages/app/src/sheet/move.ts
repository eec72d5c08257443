import { mmOf, shapeMoved } from '../../../engine/src/draw/shape-place.ts'
import type { TimberDocument } from '../../../engine/src/draw/timber-shift.ts'
import { timberPatch, timberShifted } from '../../../engine/src/draw/timber-shift.ts'
import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { ShapeDocument } from '../../../engine/src/piece/shape-field.ts'
import { pathMoved } from '../late/path-map.ts'
import type { Json } from '../worker/document.ts'
import { thousandth } from './place.ts'

type Pair = readonly [number | string, number | string]

/**
 * The patch that moves an entry on the plan, mm. A timber takes its underside and its measured top along, a part
 * that sits in a cut its cut; what is drawn by its points gets a place (`at`), so that they stay as they were
 * drawn. A coordinate that does not change stays as it was typed. Empty where nothing can be moved.
 */
export function movePatch(document: Json, at: string, dx: number, dy: number): Patch {
  const [, list, index] = at.split('/')
  const entry = (document[list!] as Json[])[Number(index)]!
  if (list === 'timbers') {
    const timber = entry as unknown as TimberDocument
    return timberPatch(timber, timberShifted(timber, dx, dy), Number(index))
  }
  if (list === 'cuts') {
    const along = entry['along'] as { points?: Pair[]; path?: string } | undefined
    // The path's own y runs down.
    if (along?.path !== undefined) {
      const value = pathMoved(along.path, dx, -dy)
      return value === null ? [] : [{ op: 'replace', path: `${at}/along/path`, value }]
    }
    if (along?.points !== undefined)
      return [{ op: 'replace', path: `${at}/along/points`, value: along.points.map(p => sum(p, dx, dy)) }]
    const shape = entry['shape'] as ShapeDocument | undefined
    if (shape === undefined) return []
    return [{ op: 'replace', path: `${at}/shape`, value: shapeMoved(shape, dx, dy) }]
  }
  const inside = entry['in'] as string | undefined
  if (inside !== undefined) {
    const cuts = (document['cuts'] ?? []) as Json[]
    const cut = cuts.findIndex(c => c['id'] === inside)
    if (cut >= 0) return movePatch(document, `/cuts/${cut}`, dx, dy)
  }
  const was = (entry['at'] as Pair | undefined) ?? [0, 0]
  return [{ op: entry['at'] === undefined ? 'add' : 'replace', path: `${at}/at`, value: sum(was, dx, dy) }]
}

function sum([x, y]: Pair, dx: number, dy: number): Pair {
  return [dx === 0 ? x : thousandth(mmOf(x) + dx), dy === 0 ? y : thousandth(mmOf(y) + dy)]
}
