import { describe, expect, it } from 'vitest'
import type { Frame } from '../../engine/src/draw/frame.ts'
import { pulledFrame } from '../../engine/src/draw/pull.ts'
import { handlesOf } from '../../engine/src/draw/shape-resize.ts'
import type { PageView } from '../../engine/src/sheets/page-data.ts'
import { gripsOf, nearestGrip } from '../src/draw/grips.ts'
import type { Held } from '../src/draw/held.ts'
import { snappedMove, snappedPoint, snappedPull } from '../src/draw/plan-scene.ts'
import { sheetTransform, toSheet } from '../src/sheet/place.ts'

const VIEW = {
  id: 'desk',
  face: 'front',
  scale: 0.4,
  widthMm: 160,
  heightMm: 110,
  originX: 80,
  originY: 55
} as unknown as PageView

describe('a map of the plan on the sheet', () => {
  it.each(['front', 'back'] as const)('is the same place, face %s: mapped, then drawn', face => {
    const view = { ...VIEW, face } as PageView
    const map = [0.8, 0.3, -0.5, 1.2, 17, -9] as const
    const [a, b, c, d, e, f] = sheetTransform(view, map)
      .replace(/matrix\(|\)/g, '')
      .split(' ')
      .map(Number) as [number, number, number, number, number, number]
    for (const [x, y] of [
      [0, 0],
      [31, -12],
      [-80, 44]
    ] as const) {
      const [sx, sy] = toSheet(view, x, y)
      const wanted = toSheet(view, map[0] * x + map[2] * y + map[4], map[1] * x + map[3] * y + map[5])
      expect(a * sx + c * sy + e).toBeCloseTo(wanted[0], 2)
      expect(b * sx + d * sy + f).toBeCloseTo(wanted[1], 2)
    }
  })
})

const SCENE = {
  centre: [0, 0] as const,
  others: [{ minX: 50, maxX: 90, minY: -30, maxY: 30 }],
  gridMm: 1
}

describe('what is dragged', () => {
  it('lies on the edge of another part, to the thousandth, with a guide there', () => {
    const box = { minX: 0, maxX: 20.35, minY: -7, maxY: 5 }
    const got = snappedMove(box, [29.2, 40.31], SCENE, 1)
    expect(box.maxX + got.by[0]).toBeCloseTo(50, 6)
    expect(got.guides.map(g => [g.axis, g.at])).toEqual([['x', 50]])
  })

  it('goes free where it is asked to, to a tenth of a millimetre', () => {
    expect(snappedMove({ minX: 0, maxX: 9, minY: 0, maxY: 9 }, [49.96, 3.14], null, 1)).toEqual({
      by: [50, 3.1],
      guides: []
    })
    expect(snappedPoint([12.34, 5.01], null, 1)).toEqual({ to: [12.3, 5], guides: [] })
  })
})

describe('a pulled side', () => {
  const frame: Frame = { x: 20, y: 0, widthMm: 40, heightMm: 20, turnDeg: 0 }

  it('is drawn to a line the way it pulls, and no other way', () => {
    const got = snappedPull(frame, 'right', [49.6, 29.7], SCENE, 1)
    expect(got.to[0]).toBe(50)
    expect(got.to[1]).toBe(29.7)
    expect(got.guides.every(g => g.axis === 'x')).toBe(true)
  })

  it('of a part turned by a quarter is drawn along the other axis', () => {
    const got = snappedPull({ ...frame, turnDeg: 90 }, 'right', [20.4, 29.7], SCENE, 1)
    expect(got.to).toEqual([20.4, 30])
  })

  it('of a turned part takes sizes of whole millimetres', () => {
    const turned = { ...frame, turnDeg: 30, widthMm: 40.4 }
    const to = [45.3, 13.9] as const
    const got = snappedPull(turned, 'right', to, SCENE, 1)
    const size = pulledFrame(turned, 'right', got.to, 'nothing').frame.widthMm
    const free = pulledFrame(turned, 'right', to, 'nothing').frame.widthMm
    expect(size).toBeCloseTo(Math.round(free), 6)
  })
})

const held = (w: number, h: number): Held => ({
  at: '/timbers/0',
  shape: { rectangle: [w, h] },
  frame: { x: 0, y: 0, widthMm: w, heightMm: h, turnDeg: 0 },
  handles: handlesOf({ rectangle: [w, h] }),
  vertices: []
})
/** 22 px round a finger where a millimetre of the sheet is 4 px: 44 px across (WCAG 2.2, 2.5.5). */
const FINGER_MM = 5.5

describe('grips', () => {
  it('are eight sides and corners and a turn, beyond the far side', () => {
    const grips = gripsOf(held(200, 120), VIEW, 'size', FINGER_MM)
    expect(grips).toHaveLength(9)
    const turn = grips.find(g => g.kind === 'turn')!
    expect(turn.at[0]).toBeCloseTo(0, 9)
    expect(turn.at[1]).toBeGreaterThan(60)
  })

  it('turns from the near side where the sheet ends beyond the far one', () => {
    const high: Held = { ...held(200, 120), frame: { x: 0, y: 65, widthMm: 200, heightMm: 120, turnDeg: 0 } }
    expect(gripsOf(high, VIEW, 'size', FINGER_MM).find(g => g.kind === 'turn')!.at[1]).toBeLessThan(5)
  })

  it('leave out the middle of a side too short for fingers', () => {
    const keys = gripsOf(held(200, 20), VIEW, 'size', FINGER_MM).map(g => g.key)
    expect(keys).not.toContain('left')
    expect(keys).toContain('far')
  })

  it('leave the middle of a small part to moving it', () => {
    const grips = gripsOf(held(20, 20), VIEW, 'size', FINGER_MM)
    expect(nearestGrip(grips, [1, 1], [0, 0])).toBeNull()
    expect(nearestGrip(grips, [9, 8], [0, 0])?.key).toBe('far right')
  })

  it('are the points of an outline, with a place to add one where there is room', () => {
    const vertices = [
      [0, 0],
      [100, 0],
      [101, 1],
      [0, 80]
    ].map(([x, y], index) => ({ ring: 0, index, x: x!, y: y! }))
    const grips = gripsOf({ ...held(101, 80), vertices }, VIEW, 'points', FINGER_MM)
    expect(grips.filter(g => g.kind === 'vertex')).toHaveLength(4)
    expect(grips.filter(g => g.kind === 'between').map(g => g.at)).toEqual([
      [50, 0],
      [50.5, 40.5],
      [0, 40]
    ])
  })
})
