import type { Operation, Patch } from '../piece/patch.ts'
import { decimals } from '../quantity/format.ts'
import { parseQuantity } from '../quantity/parse.ts'
import type { Dimension } from '../quantity/unit.ts'
import { fromFixedUnit } from '../quantity/unit.ts'

/** Which way a fix may be rounded so that it still clears the finding. */
export type Rounding = 'up' | 'down'

/**
 * The patch that sets a value of a document, whether it stands there, is left out, or its parents are.
 * Lists are never grown: an index must exist.
 */
export function setValue(document: unknown, pointer: string, value: unknown): Patch {
  const tokens = pointer
    .split('/')
    .slice(1)
    .map(t => t.replaceAll('~1', '/').replaceAll('~0', '~'))
  let at: unknown = document
  let path = ''
  for (let k = 0; k < tokens.length; k++) {
    const key = tokens[k]!
    const here = `${path}/${key.replaceAll('~', '~0').replaceAll('/', '~1')}`
    const next =
      at !== null && typeof at === 'object' && Object.hasOwn(at, key)
        ? (at as Record<string, unknown>)[key]
        : undefined
    if (k === tokens.length - 1)
      return [{ op: next === undefined ? 'add' : 'replace', path: here, value } as Operation]
    if (next === undefined) {
      // The rest of the way is built inside out.
      const rest = tokens.slice(k + 1).reduceRight<unknown>((inner, name) => ({ [name]: inner }), value)
      return [{ op: 'add', path: here, value: rest } as Operation]
    }
    at = next
    path = here
  }
  throw new Error('a fix needs a place')
}

/** The patch that takes a value out of a document; null when it is not there. */
export function removeValue(document: unknown, pointer: string): Patch | null {
  const tokens = pointer.split('/').slice(1)
  let at: unknown = document
  for (const key of tokens) {
    if (at === null || typeof at !== 'object' || !Object.hasOwn(at, key)) return null
    at = (at as Record<string, unknown>)[key]
  }
  return [{ op: 'remove', path: pointer }]
}

/** What a document holds at a pointer; undefined when nothing. */
export function typedAt(document: unknown, pointer: string): unknown {
  let at: unknown = document
  for (const key of pointer.split('/').slice(1)) {
    if (at === null || typeof at !== 'object' || !Object.hasOwn(at, key)) return undefined
    at = (at as Record<string, unknown>)[key]
  }
  return at
}

/**
 * The patch that sets a quantity, rounded to a step that a maker can set (0.1 mm, 1 g ...), on the safe side,
 * and in the unit the document uses there.
 */
export function setQuantity(
  document: unknown,
  pointer: string,
  dimension: Dimension,
  value: number,
  rounding: Rounding,
  step = 0.1
): Patch {
  const typed = typedAt(document, pointer)
  const unit = typeof typed === 'string' ? parseQuantity(typed, dimension)?.unit : undefined
  if (unit === undefined) return setValue(document, pointer, rounded(value, rounding, step))
  const scale =
    unit === 'in'
      ? 0.005
      : unit === 'ft' || unit === 'm' || unit === 'kg' || unit === 'lb' || unit === 'l'
        ? 0.001
        : step
  return setValue(
    document,
    pointer,
    `${decimals(rounded(fromFixedUnit(value, unit), rounding, scale), 4)} ${unit}`
  )
}

/** A number rounded to a step, up or down, without binary dust. */
export function rounded(value: number, rounding: Rounding, step: number): number {
  const n = value / step
  const whole = rounding === 'up' ? Math.ceil(n - 1e-7) : Math.floor(n + 1e-7)
  return Number((whole * step).toFixed(6))
}
