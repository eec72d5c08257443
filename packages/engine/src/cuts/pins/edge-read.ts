import type { Reading } from '../../piece/reading-schema.ts'
import { bounds, inside } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import type { Geometry } from '../../stack/shapes.ts'
import type { Frame } from './frame.ts'
import { pointToProgram } from './frame.ts'
import type { EdgeTouch } from './registered.ts'
import { latest } from './thickness-read.ts'

/** Edges touched on the machine with one face up. */
export interface EdgesRead {
  readonly touches: readonly EdgeTouch[]
  /** Each touch in words: "left side, touch 2". */
  readonly names: readonly string[]
  /** What is against edges that were left out, in words. */
  readonly refused: readonly string[]
}

type Place = readonly [x: number, y: number]
type EdgeReading = Extract<Reading, { kind: 'edge' }>

/** How far beside an edge is looked for what it bounds, mm. */
const BESIDE_MM = 0.5

/**
 * Edges touched with the face of the frame up, as it lies, each with the way out of the piece. An edge is one side of
 * the casting by name, or runs through two points of the plan: then out is where the casting ends, else where the
 * outline ends. Of readings of one edge the last counts.
 *
 * Limits: straight edges; a touch is not held against the ends of its edge; a side by name is the outermost line of
 * the casting there, with its ears.
 */
export function edgesRead(
  frame: Frame,
  { mould, outline }: Pick<Geometry, 'mould' | 'outline'>,
  readings: readonly Reading[]
): EdgesRead {
  const own = readings.flatMap(r => (r.kind === 'edge' && r.face === frame.up ? [r] : []))
  const names = [...new Set(own.map(nameOf))]
  const out = { touches: [] as EdgeTouch[], names: [] as string[], refused: [] as string[] }
  for (const name of names) {
    const reading = latest(own.filter(r => nameOf(r) === name))!
    const edge = edgeOf(reading, mould, outline)
    if (edge === null) {
      out.refused.push(
        `${name}: allowed is a straight edge of the casting or of the outline, by two of its points that lie apart`
      )
      continue
    }
    const on = pointToProgram(frame, ...edge.on)
    const past = pointToProgram(frame, edge.on[0] + edge.out[0], edge.on[1] + edge.out[1])
    const outDeg = (Math.atan2(past[1] - on[1], past[0] - on[0]) * 180) / Math.PI
    reading.measured.forEach((measured, k) => {
      out.touches.push({ on, outDeg, measured, radiusMm: reading.radius })
      out.names.push(`${name}, touch ${k + 1}`)
    })
  }
  return out
}

function nameOf({ side, along }: EdgeReading): string {
  return along === undefined ? `${side} side` : `edge ${along.map(p => p.join(', ')).join(' to ')}`
}

// A point on the edge and the direction out of the piece, on the plan.
function edgeOf(
  { side, along }: EdgeReading,
  mould: Region,
  outline: Region
): { on: Place; out: Place } | null {
  if (along === undefined) {
    const b = bounds(mould)
    const [x, y] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
    if (side === 'left') return { on: [b.minX, y], out: [-1, 0] }
    if (side === 'right') return { on: [b.maxX, y], out: [1, 0] }
    return side === 'near' ? { on: [x, b.minY], out: [0, -1] } : { on: [x, b.maxY], out: [0, 1] }
  }
  const [[ax, ay], [bx, by]] = along
  const long = Math.hypot(bx - ax, by - ay)
  if (long < 2 * BESIDE_MM) return null
  const on: Place = [(ax + bx) / 2, (ay + by) / 2]
  const n: Place = [(by - ay) / long, (ax - bx) / long]
  for (const region of [mould, outline]) {
    const [right, left] = [1, -1].map(s =>
      inside(region, on[0] + s * BESIDE_MM * n[0], on[1] + s * BESIDE_MM * n[1])
    )
    if (right !== left) return { on, out: right ? [-n[0], -n[1]] : n }
  }
  return null
}
