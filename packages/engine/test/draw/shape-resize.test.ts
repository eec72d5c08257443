import { describe, expect, it } from 'vitest'
import type { Handle } from '../../src/draw/board.ts'
import { HANDLES, handlesOf, shapeResized } from '../../src/draw/board.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import { bounds } from '../../src/shape/measure.ts'
import { rotate } from '../../src/shape/transform.ts'
import { chance } from '../stack/random.ts'
import { FILES, FORMS, regionFor } from './forms.ts'

const OPPOSITE: Record<Handle, Handle> = {
  left: 'right',
  right: 'left',
  near: 'far',
  far: 'near',
  'near left': 'far right',
  'far right': 'near left',
  'near right': 'far left',
  'far left': 'near right'
}
const at = (s: ShapeDocument, h: Handle) => handlesOf(s, FILES).find(x => x.handle === h)!.at
const resized = (s: ShapeDocument, h: Handle, to: readonly [number, number]) => {
  const got = shapeResized(s, h, to, FILES)
  expect(got).not.toHaveProperty('problem')
  return (got as { shape: ShapeDocument }).shape
}
/** The box of the placed region seen in the shape's own turned frame: reckoned from the region alone. */
const ownBox = (s: ShapeDocument) => bounds(rotate(regionFor(s), -(s.turn ?? 0)))

describe.each(FORMS)('a %s', (form, s) => {
  it('has its handles on the box of its region', () => {
    const b = ownBox(s)
    const corner = (h: Handle) => {
      const [x, y] = at(s, h)
      const a = (-(s.turn ?? 0) * Math.PI) / 180
      return [x * Math.cos(a) - y * Math.sin(a), x * Math.sin(a) + y * Math.cos(a)]
    }
    const [x0, y0] = corner('near left')
    const [x1, y1] = corner('far right')
    for (const [got, wanted] of [
      [x0, b.minX],
      [y0, b.minY],
      [x1, b.maxX],
      [y1, b.maxY]
    ])
      expect(Math.abs(got! - wanted!)).toBeLessThan(0.03)
  })

  it('keeps the opposite handle where it is, and brings the pulled one to the place', () => {
    const c = chance(52)
    for (const handle of HANDLES) {
      const [x, y] = at(s, handle)
      const still = at(s, OPPOSITE[handle])
      // Outward and inward by up to a third, so that nothing turns inside out.
      const k = c.span(-0.3, 0.3)
      const to = [x + k * (x - still[0]), y + k * (y - still[1])] as const
      const next = resized(s, handle, to)
      const moved = at(next, handle)
      const kept = at(next, OPPOSITE[handle])
      if (form !== 'circle') expect(Math.hypot(kept[0] - still[0], kept[1] - still[1])).toBeLessThan(0.03)
      else expect(next.at).toEqual(s.at)
      // A circle's corner handle follows the farther side; a shape kept in proportion within what it has grown.
      const near = form === 'circle' ? 40 : form === 'union' ? 0.5 : 0.05
      expect(Math.hypot(moved[0] - to[0], moved[1] - to[1]), handle).toBeLessThan(near)
      expect(regionFor(next).rings.length).toBe(regionFor(s).rings.length)
    }
  })

  it('stops before it turns inside out', () => {
    for (const handle of HANDLES) {
      const still = at(s, OPPOSITE[handle])
      const from = at(s, handle)
      const past = [2 * still[0] - from[0], 2 * still[1] - from[1]] as const
      const got = shapeResized(s, handle, past, FILES)
      const box = 'shape' in got ? ownBox({ ...got.shape, grow: 0 }) : null
      if (box) expect(Math.min(box.maxX - box.minX, box.maxY - box.minY), handle).toBeGreaterThan(0.04)
    }
  })
})

describe('sizes', () => {
  it('keep what was typed in the direction that is not pulled', () => {
    expect(resized({ rectangle: ['4 in', 60] }, 'far', [0, 50])).toEqual({
      rectangle: ['4 in', 80],
      at: [0, 10]
    })
    expect(resized({ rectangle: [100, 60], corner: 20 }, 'right', [-20, 0])).toEqual({
      rectangle: [30, 60],
      corner: 15,
      at: [-35, 0]
    })
    expect(resized({ circle: 60 }, 'right', [50, 7])).toEqual({ circle: 100 })
  })

  it('refuses places that are none', () => {
    expect(shapeResized({ circle: 10 }, 'left', [Number.NaN, 0])).toHaveProperty('problem')
    expect(shapeResized({ file: 'none.svg' }, 'left', [0, 0])).toHaveProperty('problem')
  })
})
