import { describe, expect, it } from 'vitest'
import { frameOf, shapeSized, timberResized, timberSized } from '../../src/draw/frame.ts'
import { handlesOf } from '../../src/draw/shape-resize.ts'
import { newPiece } from '../../src/piece/kind.ts'
import { applyPatch } from '../../src/piece/patch.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import { bounds } from '../../src/shape/measure.ts'
import { rotate } from '../../src/shape/transform.ts'
import { FILES, FORMS, regionFor } from './forms.ts'

/** Curves are read to 0.01 mm, and the slow twin turns its region back by itself: both stray together. */
const NEAR_MM = 0.03

/** The frame reckoned from the placed region alone: turned back about the origin, boxed, its middle turned again. */
function slowFrame(s: ShapeDocument) {
  const turn = s.turn ?? 0
  const b = bounds(rotate(regionFor(s), -turn))
  const a = (turn * Math.PI) / 180
  const [u, v] = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2]
  return {
    x: u * Math.cos(a) - v * Math.sin(a),
    y: u * Math.sin(a) + v * Math.cos(a),
    widthMm: b.maxX - b.minX,
    heightMm: b.maxY - b.minY
  }
}

describe.each(FORMS)('a %s', (form, shape) => {
  it('is framed as its region is', () => {
    const got = frameOf(shape, FILES)
    for (const [key, mm] of Object.entries(slowFrame(shape)))
      expect(Math.abs(got[key as 'x'] - mm), key).toBeLessThan(NEAR_MM)
    expect(got.turnDeg).toBe(shape.turn ?? 0)
  })

  it.each(['width', 'height'] as const)('takes the %s typed, about its middle', side => {
    const before = frameOf(shape, FILES)
    const wanted = (side === 'width' ? before.widthMm : before.heightMm) * 1.3
    const sized = shapeSized(shape, side, wanted, FILES)
    expect(sized).not.toHaveProperty('problem')
    const after = slowFrame((sized as { shape: ShapeDocument }).shape)
    const own = side === 'width' ? 'widthMm' : 'heightMm'
    const other = side === 'width' ? 'heightMm' : 'widthMm'
    expect(Math.abs(after[own] - wanted)).toBeLessThan(NEAR_MM)
    expect(Math.hypot(after.x - before.x, after.y - before.y)).toBeLessThan(2 * NEAR_MM)
    // What `grow` adds is as wide as before (README, Shapes): proportions are kept inside it.
    const grown = 2 * Number(shape.grow ?? 0)
    const free = ['rectangle', 'polygon', 'holes', 'path'].includes(form)
    const factor = free ? 1 : (wanted - grown) / (before[own] - grown)
    expect(Math.abs(after[other] - ((before[other] - grown) * factor + grown))).toBeLessThan(2 * NEAR_MM)
  })
})

it('refuses a size that is none', () => {
  for (const mm of [0, -5, Number.NaN])
    expect(shapeSized({ circle: 9 }, 'width', mm)).toHaveProperty('problem')
})

const document = (): PieceDocument => {
  const made = newPiece('panel') as unknown as PieceDocument
  const timbers = made.timbers!.map((t, i) =>
    i === 0
      ? {
          ...t,
          outline: {
            polygon: [
              [0, 0],
              [80, 0],
              [70, 50],
              [0, 60]
            ] as [number, number][]
          },
          underside: {
            polygon: [
              [0, 0],
              [95, 0],
              [88, 50],
              [0, 60]
            ] as [number, number][]
          }
        }
      : t
  )
  return { ...made, timbers }
}

it('pulls the underside by as much: the foot of a slanted edge stays as far out as it was', () => {
  const before = document()
  const change = timberResized(before, 0, 'right', [110, 30])
  expect(change).not.toHaveProperty('problem')
  const t = applyPatch(before, (change as { patch: [] }).patch).timbers![0]!
  const right = (s: ShapeDocument) => bounds(regionFor(s)).maxX
  expect(right(t.outline)).toBeCloseTo(110, 3)
  expect(right(t.underside!)).toBeCloseTo(125, 3)
  expect(bounds(regionFor(t.underside!)).minX).toBeCloseTo(0, 3)
})

it('sizes a timber by number with its underside, and names what is no timber', () => {
  const before = document()
  const change = timberSized(before, 0, 'width', 100)
  const t = applyPatch(before, (change as { patch: [] }).patch).timbers![0]!
  expect(frameOf(t.outline).widthMm).toBeCloseTo(100, 3)
  expect(frameOf(t.outline).x).toBeCloseTo(40, 3)
  expect(frameOf(t.underside!).widthMm).toBeCloseTo(115, 3)
  const other = before.timbers![1]!
  const one = timberResized(before, 1, 'left', handlesOf(other.outline)[7]!.at)
  expect((one as { patch: unknown[] }).patch).toHaveLength(1)
  expect(timberSized(before, 9, 'width', 10)).toHaveProperty('problem')
})
