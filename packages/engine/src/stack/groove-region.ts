import { union } from '../shape/combine.ts'
import { divideArc } from '../shape/flatten.ts'
import { stroke } from '../shape/offset.ts'
import type { Region, Ring } from '../shape/region.ts'
import { EMPTY, regionOfSound } from '../shape/region.ts'

/** The region of all lines drawn `widthMm` wide with round ends; edges stray at most `tolMm`. */
export function strokeAll(lines: readonly Float64Array[], widthMm: number, tolMm: number): Region {
  if (widthMm <= 0) return EMPTY
  return union(
    ...lines.map(line =>
      line.length === 4
        ? regionOfSound([capsule(line, widthMm / 2, tolMm)])
        : stroke(line, widthMm, { ends: 'round', tolMm })
    )
  )
}

// A straight line with round ends, whose half circles keep their area: scales have hundreds of them.
function capsule(line: Float64Array, radius: number, tolMm: number): Ring {
  const [ax, ay, bx, by] = [line[0]!, line[1]!, line[2]!, line[3]!]
  const along = Math.atan2(by - ay, bx - ax)
  const { count, rho } = divideArc(Math.PI, tolMm / radius)
  const ring = new Float64Array(4 * (count + 1))
  let size = 0
  for (const [x, y, start] of [
    [bx, by, along - Math.PI / 2],
    [ax, ay, along + Math.PI / 2]
  ] as const) {
    for (let k = 0; k <= count; k++) {
      const r = k === 0 || k === count ? radius : rho * radius
      const a = start + (Math.PI * k) / count
      ring[size++] = x + r * Math.cos(a)
      ring[size++] = y + r * Math.sin(a)
    }
  }
  return ring
}
