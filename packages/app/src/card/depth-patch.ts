import type { Patch } from '../../../engine/src/piece/patch.ts'
import type { Json } from '../worker/document.ts'

/** Keys of which a pour has exactly one: how much of it there is. */
const AMOUNTS = ['depth', 'height', 'mass', 'fill'] as const

/** The edit that gives a pour a depth as cast, mm, whatever it was given by before. */
export function depthPatch(document: Json, pour: number, depthMm: number): Patch {
  const own = (document['pours'] as Json[] | undefined)?.[pour] ?? {}
  return [
    ...AMOUNTS.filter(key => key !== 'depth' && own[key] !== undefined).map(
      key => ({ op: 'remove', path: `/pours/${pour}/${key}` }) as const
    ),
    { op: own['depth'] === undefined ? 'add' : 'replace', path: `/pours/${pour}/depth`, value: depthMm }
  ]
}
