import { describe, expect, it } from 'vitest'
import { frameOf } from '../../src/draw/frame.ts'
import type { PlanMap } from '../../src/draw/pull.ts'
import { keepsOf, mapped, movedFrame, pulledFrame, snappedTurn, turnedFrame } from '../../src/draw/pull.ts'
import { shapeMoved, shapeTurned } from '../../src/draw/shape-place.ts'
import { HANDLES, handlesOf, shapeResized } from '../../src/draw/shape-resize.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import { area } from '../../src/shape/measure.ts'
import type { Region } from '../../src/shape/region.ts'
import { FILES, FORMS, regionFor } from './forms.ts'
import { symmetricDifference } from './same-region.ts'

/** The region drawn through a map, point by point. */
const through = (map: PlanMap, region: Region): Region => ({
  rings: region.rings.map(ring => {
    const out = new Float64Array(ring.length)
    for (let k = 0; k < ring.length; k += 2) {
      const [x, y] = mapped(map, [ring[k]!, ring[k + 1]!])
      out[k] = x
      out[k + 1] = y
    }
    return out
  })
})
/** Rounding of kept points and curves, as a share of the area. */
const SHARE = 0.002

// What grow adds and corners are not scaled with the rest: without them the preview is the shape itself.
const plain = FORMS.map(([form, s]): [string, ShapeDocument] => {
  const { grow: _grow, corner: _corner, ...rest } = s
  return [form, rest]
})

describe.each(plain)('a %s under the hand', (_form, shape) => {
  const frame = frameOf(shape, FILES)

  it.each(HANDLES)('is drawn as it will be when %s is let go', handle => {
    const from = handlesOf(shape, FILES).find(h => h.handle === handle)!.at
    for (const k of [1.3, 0.8]) {
      const to = [frame.x + k * (from[0] - frame.x), frame.y + k * (from[1] - frame.y)] as const
      const done = shapeResized(shape, handle, to, FILES) as { shape: ShapeDocument }
      const { map, frame: shown } = pulledFrame(frame, handle, to, keepsOf(shape))
      const [is, wanted] = [through(map, regionFor(shape)), regionFor(done.shape)]
      expect(symmetricDifference(is, wanted) / area(wanted)).toBeLessThan(SHARE)
      const after = frameOf(done.shape, FILES)
      for (const key of ['x', 'y', 'widthMm', 'heightMm', 'turnDeg'] as const)
        expect(Math.abs(shown[key] - after[key]), key).toBeLessThan(0.05)
    }
  })

  it('is drawn as it will be when it is turned or moved', () => {
    const turn = turnedFrame(frame, frame.turnDeg + 37)
    const turnedTo = regionFor(shapeTurned(shape, 37, [frame.x, frame.y]))
    expect(symmetricDifference(through(turn.map, regionFor(shape)), turnedTo) / area(turnedTo)).toBeLessThan(
      SHARE
    )
    const move = movedFrame(frame, 12.5, -7)
    const movedTo = regionFor(shapeMoved(shape, 12.5, -7))
    expect(symmetricDifference(through(move.map, regionFor(shape)), movedTo) / area(movedTo)).toBeLessThan(
      SHARE
    )
  })
})

it('stops a side before the opposite one', () => {
  const frame = { x: 0, y: 0, widthMm: 40, heightMm: 20, turnDeg: 0 }
  const got = pulledFrame(frame, 'right', [-90, 0], 'nothing').frame
  expect(got.widthMm).toBeCloseTo(0.1, 6)
  expect(got.x).toBeCloseTo(-19.95, 6)
})

it.each([
  [43, 45],
  [42.4, 42],
  [-91, -90],
  [179.4, 180],
  [-179, 180],
  [200, -160],
  [0.4, 0]
])('draws %s degrees to %s', (deg, to) => {
  expect(snappedTurn(deg)).toBe(to)
})
