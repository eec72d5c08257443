import type { Reading } from '../../piece/reading-schema.ts'
import type { Stack } from '../../stack/stack.ts'

/** A thickness as measured and as planned then, mm. */
export interface ThicknessRead {
  readonly measuredMm: number
  readonly plannedMm: number
}

/** A thickness further than this from every planned one is of something else, mm. */
const FAR_MM = 3

/** The last thickness read, and what it was planned to be by then; null: none was read, or one of something else. */
export function thicknessRead(
  { states, steps }: Pick<Stack, 'states' | 'steps'>,
  readings: readonly Reading[],
  upTo = states.length - 1
): ThicknessRead | null {
  const last = latest(readings.flatMap(r => (r.kind === 'thickness' ? [r] : [])))
  if (last === null) return null
  // As it came out of the mould, and after each flattening.
  const planned = states.flatMap((s, i) =>
    i <= upTo && (steps[i]!.kind === 'flatten' || steps[i]!.kind === 'demould') ? [s.highZ - s.lowZ] : []
  )
  const off = planned.map(mm => Math.abs(mm - last.thickness))
  const least = Math.min(...off)
  if (planned.length === 0 || least > FAR_MM) return null
  return { measuredMm: last.thickness, plannedMm: planned[off.lastIndexOf(least)]! }
}

/** The last of some readings by their moment; one without a moment is later than all. */
export function latest<R extends { readonly at?: string | undefined }>(list: readonly R[]): R | null {
  return list.reduce<R | null>(
    (last, r) =>
      last === null || Date.parse(r.at ?? '') >= Date.parse(last.at ?? '') || r.at === undefined ? r : last,
    null
  )
}
