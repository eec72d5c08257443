import type { Patch } from '../../../engine/src/piece/patch.ts'
import { at as valueAt } from './document-place.ts'

/**
 * The patch that puts a value at a JSON Pointer of a document; undefined takes it out. Groups that are missing on
 * the way are begun; one that is left empty goes too, so that a document holds only what was said.
 */
export function setPatch(document: unknown, pointer: string, value: unknown): Patch {
  const tokens = pointer.split('/').slice(1)
  const patch: Patch[number][] = []
  for (let k = 1; k < tokens.length; k++) {
    const parent = `/${tokens.slice(0, k).join('/')}`
    if (valueAt(document, parent) !== undefined) continue
    if (value === undefined) return []
    patch.push({ op: 'add', path: parent, value: {} })
  }
  const was = valueAt(document, pointer)
  if (value !== undefined) patch.push({ op: was === undefined ? 'add' : 'replace', path: pointer, value })
  else if (was !== undefined) {
    const parent = `/${tokens.slice(0, -1).join('/')}`
    const rest =
      tokens.length > 1 ? (valueAt(document, parent) as Record<string, unknown> | undefined) : undefined
    const alone =
      rest !== undefined &&
      !Array.isArray(rest) &&
      Object.keys(rest).length === 1 &&
      !/^\d+$/.test(tokens.at(-2) ?? '')
    patch.push({ op: 'remove', path: alone ? parent : pointer })
  }
  return patch
}
