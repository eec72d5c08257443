import type { Mark } from './mark.ts'
import { line, PLANE_MM, text } from './mark.ts'
import type { SectionPath } from './section-cut.ts'
import type { View } from './view.ts'
import { onSheet } from './view.ts'

// The line of a section across: its ends beyond the edges, seen from the right, so that left on the section is the
// foot of the plan.
function cuttingPlaneAcross({ legs }: SectionPath, view: View): Mark[] {
  const leg = legs[0]!
  const [x, low] = onSheet(view, leg.at, leg.from)
  const high = onSheet(view, leg.at, leg.to)[1]
  const start = low - ACROSS_END_MM
  const end = high + ACROSS_END_MM
  const run = Float64Array.of(x, start, x, end)
  return [
    { kind: 'path', ink: 'halo', lines: [run] },
    { kind: 'path', ink: 'cutting-plane', lines: [run] },
    {
      kind: 'path',
      ink: 'cutting-plane-end',
      lines: [Float64Array.of(x, start, x, low), Float64Array.of(x, high, x, end)]
    },
    ...[start, end].flatMap((y): Mark[] => [
      line('cutting-plane', [x, y], [x - 4.4, y]),
      { kind: 'arrow', ink: 'cutting-plane', at: [x - 5.6, y], directionDeg: 180, lengthMm: 2.4 },
      text([x + 2.6, y - 1.7], 'A', {
        lettering: 'plane',
        heightMm: PLANE_MM,
        anchor: 'middle',
        strong: true
      })
    ])
  ]
}

/** How far the line of a section across reaches over the edges, mm: short of the dimensions. */
const ACROSS_END_MM = 3

/** The line of the section: thin along it, wide at its ends and corners, arrows that say which way it is seen. */
export function cuttingPlane(path: SectionPath, view: View): Mark[] {
  if (path.along === 'y') return cuttingPlaneAcross(path, view)
  const points = path.legs.flatMap(leg => [onSheet(view, leg.from, leg.at), onSheet(view, leg.to, leg.at)])
  const first = points[0]!
  const last = points[points.length - 1]!
  const start: [number, number] = [first[0] - 4, first[1]]
  const end: [number, number] = [last[0] + 4, last[1]]
  const run = Float64Array.from([start, ...points.slice(1, -1), end].flat())
  const out: Mark[] = [
    { kind: 'path', ink: 'halo', lines: [run] },
    { kind: 'path', ink: 'cutting-plane', lines: [run] }
  ]
  const wide: Float64Array[] = [
    Float64Array.of(start[0], start[1], start[0] + 4, start[1]),
    Float64Array.of(end[0] - 4, end[1], end[0], end[1])
  ]
  for (let k = 1; k + 2 < points.length; k += 2) {
    const [x, y0] = points[k]!
    const y1 = points[k + 1]![1]
    const s = Math.sign(y1 - y0)
    const reach = Math.min(2.4, Math.abs(y1 - y0) / 2)
    wide.push(
      Float64Array.of(x - 2.4, y0, x, y0, x, y0 + s * reach),
      Float64Array.of(x, y1 - s * reach, x, y1, x + 2.4, y1)
    )
  }
  out.push({ kind: 'path', ink: 'cutting-plane-end', lines: wide })
  for (const [spot, side] of [
    [start, -1],
    [end, 1]
  ] as const) {
    out.push(
      line('cutting-plane', spot, [spot[0], spot[1] + 4.4]),
      { kind: 'arrow', ink: 'cutting-plane', at: [spot[0], spot[1] + 5.6], directionDeg: 90, lengthMm: 2.4 },
      text([spot[0] + side * 3, spot[1] - 1.7], 'A', {
        lettering: 'plane',
        heightMm: PLANE_MM,
        anchor: 'middle',
        strong: true
      })
    )
  }
  return out
}
