import { bounds } from '../../shape/measure.ts'
import type { Bounds, Region } from '../../shape/region.ts'
import type { StackEvent } from '../../stack/event.ts'
import type { Stack } from '../../stack/stack.ts'
import { boxInProgram, type Frame, zInProgram } from './frame.ts'

/** Cells beyond which a block is refused: 1800 × 900 mm at 0.2 mm has 40 million. */
const MOST_CELLS = 60_000_000

/**
 * The cells over some regions of the plan, in program coordinates: how many, and the corner of the first.
 * @throws RangeError for none, or more than {@link MOST_CELLS}
 */
export function gridOver(regions: readonly Region[], frame: Frame, cellMm: number) {
  const box = regions.map(r => boxInProgram(frame, bounds(r))).reduce(hull)
  const nx = Math.ceil((box.maxX - box.minX) / cellMm - 1e-9)
  const ny = Math.ceil((box.maxY - box.minY) / cellMm - 1e-9)
  if (!(nx * ny >= 1 && nx * ny <= MOST_CELLS))
    throw new RangeError(`a block of ${nx} by ${ny} cells; allowed 1 to ${MOST_CELLS} in all`)
  return {
    nx,
    ny,
    minX: (box.minX + box.maxX - nx * cellMm) / 2,
    minY: (box.minY + box.maxY - ny * cellMm) / 2
  }
}

/** The face that lies down, program z. */
export function lowestFace(stack: Stack, frame: Frame, events: number): number {
  let faces: readonly number[] = [0, stack.castHeight]
  for (const { events: done, lowZ, highZ } of stack.states)
    if (done <= events && Number.isFinite(lowZ) && Number.isFinite(highZ)) faces = [lowZ, highZ]
  return Math.min(...faces.map(z => zInProgram(frame, z)))
}

/** Lowest and highest place of all material after some events, as cast. Formers are out before anything is machined. */
export function materialHeights(stack: Stack, events: readonly StackEvent[]): readonly [number, number] {
  let low = 0
  let high = 0
  for (const e of events) {
    if (e.kind === 'timber') high = Math.max(high, stack.geometry.timbers[e.index]!.high)
    else if (e.kind === 'pour') high = Math.max(high, e.to)
    else if (e.kind === 'flood') {
      high = Math.max(high, e.to)
      low = Math.min(low, e.from)
    } else if (e.kind === 'trim') {
      if (e.side === 'low') low = Math.max(low, e.z)
      else high = Math.min(high, e.z)
    }
  }
  return [low, high]
}

function hull(a: Bounds, b: Bounds): Bounds {
  return {
    minX: Math.min(a.minX, b.minX),
    minY: Math.min(a.minY, b.minY),
    maxX: Math.max(a.maxX, b.maxX),
    maxY: Math.max(a.maxY, b.maxY)
  }
}
