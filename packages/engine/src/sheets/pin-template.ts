import type { Template } from '../cuts/hand/template.ts'
import { frameOf, regionToProgram } from '../cuts/pins/frame.ts'
import type { Work } from '../findings/work.ts'
import { lengthsOf } from '../piece/lengths.ts'
import { settingsOf } from '../steps/setting.ts'

/** Round the pins, for their crosses and numbers, mm. */
const ROOM_MM = 25

/**
 * Where the bed is drilled for the pins, in true size, as it is seen with the piece in its first setting. null: no
 * machine, no pair of pins, or a piece that is moved along on index pins, whose holes it makes itself.
 */
export function pinTemplate(work: Work): Template | null {
  const { pins, stack, shop } = work
  const L = lengthsOf(shop)
  const [setting] = settingsOf(stack.steps)
  if (shop.machine === undefined || setting === undefined) return null
  if (!pins.needed || pins.index !== null || pins.plate.length < 2) return null
  const holes = pins.plate.map(({ at, bedHoleMm }) => ({ x: at[0]![0], y: at[0]![1], diameterMm: bedHoleMm }))
  const [xs, ys] = [holes.map(h => h.x), holes.map(h => h.y)]
  const [a, b] = [holes[0]!, holes.at(-1)!]
  const edge = regionToProgram(frameOf(stack.piece, setting, stack, pins.datum), stack.geometry.mould)
  const each = pins.plate.map(p => `pin ${p.number} Ø ${L.of(p.bedHoleMm, 2)}, ${L.of(p.depthMm, 1)} deep`)
  return {
    kind: 'pins',
    name: 'holes in the bed',
    face: setting.up,
    cutOut: { rings: [] },
    drawn: { rings: [] },
    // The line through them carries the sheets between, so that their distance is on the paper.
    lines: [Float64Array.of(a.x, a.y, b.x, b.y), cross(0, 5), cross(5, 0)],
    holes,
    from: { x: 0, y: 0 },
    figures: [],
    edge,
    scope: {
      minX: Math.min(0, ...xs) - ROOM_MM,
      minY: Math.min(0, ...ys) - ROOM_MM,
      maxX: Math.max(0, ...xs) + ROOM_MM,
      maxY: Math.max(0, ...ys) + ROOM_MM
    },
    says: [
      `Bed, seen from above: ${each.join('; ')}. Numbers are X / Y from the zero, the small cross.`,
      `Middles of pins ${L.of(Math.hypot(b.x - a.x, b.y - a.y), 2)} apart: measure that over the joined sheets.`,
      `Paper is true to some tenths; the faces are to meet within ${L.of(pins.toleranceMm, 2)}. Where the machine can, let it drill at these numbers, and look by the sheet that they are where they belong.`
    ]
  }
}

function cross(x: number, y: number): Float64Array {
  return Float64Array.of(-x, -y, x, y)
}
