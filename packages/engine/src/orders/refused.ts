import type { Block } from './block.ts'
import { whyNot } from './law.ts'

/** An order that is not offered, and why. */
export interface RefusedOrder {
  readonly does: string
  readonly why: string
  readonly basis: string
}

/** What cannot be moved before or after what: of each reason the nearest two steps that it holds apart. */
export function refusedMoves(blocks: readonly Block[]): RefusedOrder[] {
  const out = new Map<string, RefusedOrder & { readonly far: number }>()
  for (const first of blocks)
    for (const then of blocks.slice(first.index + 1)) {
      const law = whyNot(then, first)
      const far = then.index - first.index
      if (law === null || (out.get(law.id)?.far ?? Number.POSITIVE_INFINITY) <= far) continue
      const { says } = then.step
      out.set(law.id, {
        does: `${says} before “${first.step.says}”`,
        why: law.says,
        basis: law.basis,
        far
      })
    }
  return [...out.values()].map(({ far: _, ...refused }) => refused)
}
