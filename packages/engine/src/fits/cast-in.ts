import type { HardwareRecord } from '../catalogue/hardware-record.ts'
import { circle, rectangle } from '../shape/build.ts'
import type { Region } from '../shape/region.ts'
import { rotate } from '../shape/transform.ts'
import { coreAt } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'
import { partOf } from './hardware.ts'

/** A part that is cast in, as it lies in the piece. On the plan; heights mm as cast. */
export interface CastIn {
  /** What the document calls it. */
  readonly name: string
  readonly region: Region
  readonly from: number
  readonly to: number
}

/**
 * Where parts that are cast in lie: on the floor of their pour as cast, as deep as their body.
 *
 * Limits: a part without a place or a size is left out; its body is taken as its whole size, cables not counted.
 * Check: a strip of known size on the floor of its pour (test/programs/proved.test.ts).
 */
export function castInParts(stack: Stack, records: readonly HardwareRecord[]): CastIn[] {
  return stack.entries.hardware.flatMap(({ index, id, value }): CastIn[] => {
    const pour = stack.entries.pours.find(p => p.id === value.castIn)?.index
    const part = partOf(value, records[index]!)
    if (pour === undefined || value.at === undefined || part === null || !(part.depthMm > 0)) return []
    const [x, y] = value.at
    const core = coreAt(stack.geometry, stack.events, x, y)
    const own = core.find(p => p.material.kind === 'pour' && p.material.index === pour)
    const from = Math.max(own?.from ?? 0, stack.pours[pour]!.floor)
    const region =
      part.shape === 'round'
        ? circle(part.widthMm, 0.01, x, y)
        : rotate(rectangle(part.lengthMm, part.widthMm, part.cornerMm, 0.01, x, y), value.turn, x, y)
    return [{ name: id, region, from, to: from + part.depthMm }]
  })
}
