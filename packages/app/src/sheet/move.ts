import type { Patch } from '../../../engine/src/piece/patch.ts'
import { parseQuantity } from '../../../engine/src/quantity/parse.ts'
import type { Json } from '../worker/messages.ts'

type Pair = readonly [number | string, number | string]

/**
 * The patch that moves an entry on the plan, mm. A part that sits in a cut moves by its cut; what is drawn by its
 * points gets a place (`at`), so that the points stay as they were drawn.
 */
export function movePatch(document: Json, at: string, dx: number, dy: number): Patch {
  const [, list, index] = at.split('/')
  const entry = (document[list!] as Json[])[Number(index)]!
  if (list === 'timbers') {
    const shapes = ['outline', 'underside'].filter(key => entry[key] !== undefined)
    return shapes.map(key => placed(`${at}/${key}`, entry[key] as Json, dx, dy))
  }
  if (list === 'cuts') {
    const along = entry['along'] as { points?: Pair[] } | undefined
    if (along?.points !== undefined)
      return [{ op: 'replace', path: `${at}/along/points`, value: along.points.map(p => sum(p, dx, dy)) }]
    if (entry['shape'] === undefined) return []
    return [placed(`${at}/shape`, entry['shape'] as Json, dx, dy)]
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

function placed(path: string, shape: Json, dx: number, dy: number): Patch[number] {
  const was = shape['at'] as Pair | undefined
  return { op: was === undefined ? 'add' : 'replace', path: `${path}/at`, value: sum(was ?? [0, 0], dx, dy) }
}

function sum([x, y]: Pair, dx: number, dy: number): [number, number] {
  return [round(mm(x) + dx), round(mm(y) + dy)]
}

function mm(x: number | string): number {
  return typeof x === 'number' ? x : (parseQuantity(x, 'length')?.value ?? 0)
}

function round(x: number): number {
  return Math.round(x * 10) / 10
}
