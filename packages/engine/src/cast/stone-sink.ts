import type { StoneRecord } from '../catalogue/stone.ts'
import { sphereOfMm } from '../resin/settling.ts'
import type { CastInput } from './bed.ts'
import type { StoneSink } from './window-stones.ts'

/** The cast's input with the stones of each pour, for their windows. */
export interface CastWithStones extends CastInput {
  readonly stones?: readonly (readonly StoneRecord[])[]
}

/**
 * The stones that are dropped into a pour, for their window; undefined when none are. Several kinds: the
 * smallest and the largest of all, the narrowest band.
 */
export function stoneSink(input: CastWithStones, index: number): StoneSink | undefined {
  const { stones } = input.stack.piece.pours[index]!
  const { floor, liquidLevel } = input.stack.pours[index]!
  const records = input.stones?.[index]
  const dropped = stones.flatMap((s, j) => {
    const record = records?.[j]
    return s.set === 'into the pour' && record !== undefined ? [{ s, record }] : []
  })
  if (dropped.length === 0) return undefined
  const sizes = dropped.flatMap(({ s, record }) =>
    s.placed === undefined ? [...record.sizeMm] : s.placed.map(p => sphereOfMm(p.size))
  )
  const from = Math.max(...dropped.map(({ s }) => s.from ?? floor))
  const to = Math.min(...dropped.map(({ s }) => s.to ?? liquidLevel))
  return {
    sizeMm: [Math.min(...sizes), Math.max(...sizes)],
    densityKgM3: Math.min(...dropped.map(({ record }) => record.densityKgM3)),
    liquidKgM3: input.choices[index]!.record.model!.bulk.liquidKgM3,
    mostMm: from > floor + 0.05 ? liquidLevel - from : Number.POSITIVE_INFINITY,
    leastMm: Math.max(0, liquidLevel - to)
  }
}
