import type { Cut } from '../piece/piece-schema.ts'
import { circle } from '../shape/build.ts'
import { union } from '../shape/combine.ts'
import { stroke } from '../shape/offset.ts'
import type { Region } from '../shape/region.ts'

/**
 * A keyhole slot: a screw head goes in at the first of its two points and is pushed along to the second, where the lips
 * of the slot hold it. At the face it is as wide as the neck, round the first point as wide as the head; the head of
 * the slot lies under the face, from the floor up to the lips, all along.
 */
export function keyholePlan(cut: Cut, tolMm: number): Region {
  const [[x, y]] = cut.along!.points! as [[number, number], [number, number]]
  return union(stroke(lineOf(cut), cut.width!, { ends: 'round', tolMm }), circle(cut.head!, tolMm, x, y))
}

/** What is open under the lips. */
export function keyholeHead(cut: Cut, tolMm: number): Region {
  return stroke(lineOf(cut), cut.head!, { ends: 'round', tolMm })
}

function lineOf(cut: Cut): Float64Array {
  return Float64Array.from(cut.along!.points!.flat())
}
