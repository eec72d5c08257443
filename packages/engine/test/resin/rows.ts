import { describe, expect, it } from 'vitest'
import type { Evidence } from '../evidence.ts'
import { oursOf } from '../evidence.ts'

/** Each evidence row as a test of this folder too, so that a change here is judged without the whole page. */
export function checkRows(rows: readonly Evidence[]): void {
  describe('published and independently computed values', () => {
    for (const r of rows)
      it(`${r.model}: ${r.what}`, () => {
        const ours = oursOf(r)
        const text = `ours ${ours}, published ${r.published} ${r.unit}`
        expect(Math.abs(ours - r.published), text).toBeLessThanOrEqual(r.tolerance)
      })
  })
}

/** Computes once; evidence rows are read several times in a run. */
export function once<T>(compute: () => T): () => T {
  let done: { readonly value: T } | null = null
  return () => {
    done ??= { value: compute() }
    return done.value
  }
}

/** Largest of |ours − published| over the cells of a table, absolute or relative to the published value. */
export function worst(
  pairs: readonly (readonly [ours: number, published: number])[],
  relative = false
): number {
  let most = 0
  for (const [ours, published] of pairs) {
    const off = Math.abs(ours - published) / (relative ? Math.abs(published) : 1)
    // a NaN must not slip through a comparison
    if (!(off <= most)) most = off
  }
  return most
}
