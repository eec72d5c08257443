import { bounds } from '../shape/measure.ts'
import type { Region } from '../shape/region.ts'
import type { Timber } from './piece-schema.ts'

/** Direction of the grain of a timber, degrees from x: as the piece says, else along its longer side, as boards are cut. */
export function grainDegOf(timber: Pick<Timber, 'grain'>, outline: Region): number {
  if (timber.grain !== undefined) return timber.grain
  const b = bounds(outline)
  return b.maxX - b.minX >= b.maxY - b.minY ? 0 : 90
}
