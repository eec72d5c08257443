import { BufferAttribute, BufferGeometry } from 'three'
import type { RoundBody } from '../../../engine/src/round/round-model.ts'

/** A body as the graphics card takes it: points, and for each the heights its prism spans, mm. */
export function bodyShape(body: RoundBody): BufferGeometry {
  const shape = new BufferGeometry()
  shape.setAttribute('position', new BufferAttribute(body.positions, 3))
  const stretch = new Float32Array((body.positions.length / 3) * 2)
  for (let k = 0; k < body.heights.length / 2; k++) {
    const [from, to] = [body.heights[2 * k]!, body.heights[2 * k + 1]!]
    for (let p = body.prisms[4 * k]!; p < body.prisms[4 * k + 1]!; p++) {
      stretch[2 * p] = from
      stretch[2 * p + 1] = to
    }
  }
  shape.setAttribute('stretch', new BufferAttribute(stretch, 2))
  shape.setIndex(new BufferAttribute(body.indices, 1))
  return shape
}

/** Its edges; each stretches from the lower of its ends to the upper, so that peeling takes it along. */
export function rimShape(body: RoundBody): BufferGeometry {
  return lineShape(body.rims, body.fromMm, body.toMm)
}

/** Lines as x, y, z of both ends of each, mm, that peeling leaves or takes with the heights given. */
function lineShape(lines: Float32Array, fromMm: number, toMm: number): BufferGeometry {
  const shape = new BufferGeometry()
  shape.setAttribute('position', new BufferAttribute(lines, 3))
  const stretch = new Float32Array((lines.length / 3) * 2)
  for (let p = 0; p < stretch.length; p += 4) {
    const a = lines[(p / 2) * 3 + 2]!
    const b = lines[(p / 2 + 1) * 3 + 2]!
    // A level edge goes when peeling passes it; the outlines of the peeled face are drawn by the section there.
    stretch[p] = stretch[p + 2] = a === b ? (a >= toMm - 1e-4 ? a - 0.01 : a) : Math.min(a, b)
    stretch[p + 1] = stretch[p + 3] = a === b ? (a <= fromMm + 1e-4 ? a + 0.01 : a + 0.005) : Math.max(a, b)
  }
  shape.setAttribute('stretch', new BufferAttribute(stretch, 2))
  return shape
}

/** A square over the whole picture. */
export function wholeSheet(): BufferGeometry {
  const shape = new BufferGeometry()
  shape.setAttribute('position', new BufferAttribute(Float32Array.of(-1, -1, 0, 3, -1, 0, -1, 3, 0), 3))
  return shape
}

/** The plane of a cut across the whole piece, as large as need be; heights −1 to `thick` + 1, mm. */
export function cutPlane(along: 'x' | 'y', at: number, reachMm: number, thickMm: number): BufferGeometry {
  const [a, b] = [-reachMm, reachMm]
  const corner = (u: number, z: number) => (along === 'x' ? [u, at, z] : [at, u, z])
  const shape = new BufferGeometry()
  const points = [corner(a, 0), corner(b, 0), corner(b, thickMm), corner(a, thickMm)].flat()
  shape.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3))
  shape.setAttribute(
    'stretch',
    new BufferAttribute(Float32Array.from([0, thickMm, 0, thickMm, 0, thickMm, 0, thickMm]), 2)
  )
  shape.setIndex([0, 1, 2, 0, 2, 3])
  return shape
}
