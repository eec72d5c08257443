import { describe, expect, it } from 'vitest'
import type { Box, SnapScene } from '../../src/draw/snap.ts'
import { boxOf, snapBox, snapPoint } from '../../src/draw/snap.ts'
import { chance } from '../stack/random.ts'

const box = (minX: number, minY: number, w: number, h: number): Box => ({
  minX,
  minY,
  maxX: minX + w,
  maxY: minY + h
})
const shift = (moving: Box, scene: SnapScene, tol: number) => {
  const { dx, dy } = snapBox(moving, scene, tol)
  return [dx, dy]
}

describe('a box that is moved', () => {
  it('goes edge to edge, middle to middle, to the mould and to the centre lines', () => {
    const other = box(0, 0, 100, 40)
    expect(shift(box(101.5, 200, 30, 7), { others: [other] }, 2)).toEqual([-1.5, 0])
    expect(shift(box(-31.5, 200, 30, 7), { others: [other] }, 2)).toEqual([1.5, 0])
    expect(shift(box(36, 200, 30, 7), { others: [other] }, 2)).toEqual([-1, 0])
    expect(shift(box(-199, -148.5, 50, 50), { others: [], mould: box(-200, -150, 400, 300) }, 2)).toEqual([
      -1, -1.5
    ])
    expect(shift(box(1, -30, 60, 59), { others: [], centre: [0, 0] }, 2)).toEqual([-1, 0.5])
    // An edge does not go to another's middle.
    expect(shift(box(51, 200, 300, 7), { others: [other] }, 2)).toEqual([0, 0])
  })

  it('goes to the grid only where nothing else is near', () => {
    const scene: SnapScene = { others: [box(0.4, 0, 100, 40)], gridMm: 1 }
    expect(snapBox(box(0.9, 500.3, 30, 7), scene, 2).dx).toBeCloseTo(-0.5, 12)
    expect(snapBox(box(0.9, 500.3, 30, 7), scene, 2).dy).toBeCloseTo(-0.3, 12)
    expect(snapBox(box(50.2, 500.3, 30, 7), scene, 0.1)).toMatchObject({ dx: 0, dy: 0 })
  })

  it('breaks ties the same way whatever the order of the list', () => {
    const c = chance(81)
    for (let k = 0; k < 300; k++) {
      const others = Array.from({ length: 6 }, () =>
        box(c.whole(-20, 20), c.whole(-20, 20), 2 * c.whole(1, 9), 2 * c.whole(1, 9))
      )
      const moving = box(c.whole(-20, 20), c.whole(-20, 20), 2 * c.whole(1, 9), 2 * c.whole(1, 9))
      const scene = { others, centre: [0, 0] as const, mould: box(-30, -30, 60, 60) }
      const first = snapBox(moving, scene, 3)
      const shuffled = [...others].sort(() => c.next() - 0.5)
      const again = snapBox(moving, { ...scene, others: shuffled }, 3)
      expect([again.dx, again.dy]).toEqual([first.dx, first.dy])
      // Once snapped it stays: a second snap moves nothing.
      const moved = box(
        moving.minX + first.dx,
        moving.minY + first.dy,
        moving.maxX - moving.minX,
        moving.maxY - moving.minY
      )
      const second = snapBox(moved, scene, 3)
      expect([second.dx, second.dy]).toEqual([0, 0])
      expect(second.guides).toEqual(first.guides)
      // Twin: the least distance over every pair that may meet, by listing them all.
      const pairs = others.flatMap(o => [
        ...[o.minX, o.maxX].flatMap(e => [moving.minX, moving.maxX].map(m => e - m)),
        (o.minX + o.maxX) / 2 - (moving.minX + moving.maxX) / 2
      ])
      for (const m of [moving.minX, moving.maxX]) pairs.push(-m, -30 - m, 30 - m)
      pairs.push(-(moving.minX + moving.maxX) / 2)
      const least = Math.min(...pairs.map(Math.abs))
      expect(Math.abs(first.dx)).toBe(least <= 3 ? least : 0)
    }
  })

  it('draws each line it lies on once, as far as all that lies on it', () => {
    const scene: SnapScene = {
      others: [box(0, 0, 50, 40), box(0, 100, 20, 40)],
      centre: [0, 0],
      mould: box(-200, -150, 400, 300)
    }
    const got = snapBox(box(1, -80.25, 30, 20), scene, 2)
    expect(got.guides).toEqual([{ axis: 'x', at: 0, from: -150, to: 150, kind: 'centre line' }])
    const edges = snapBox(box(1, -80.25, 30, 20), { others: scene.others }, 2)
    expect(edges.guides).toEqual([{ axis: 'x', at: 0, from: -80.25, to: 140, kind: 'edge' }])
  })

  it('is left alone by numbers that are none', () => {
    expect(shift(box(Number.NaN, 0, 1, 1), { others: [], centre: [0, 0] }, 5)).toEqual([0, 0])
    expect(shift(box(0.1, 0, 1, 1), { others: [], centre: [0, 0] }, Number.NaN)).toEqual([0, 0])
    expect(shift(box(0.1, 0.1, 1, 1), { others: [], gridMm: 0 }, 5)).toEqual([0, 0])
  })
})

describe('a point', () => {
  it('goes to edges and to middles', () => {
    const scene: SnapScene = { others: [box(0, 0, 100, 40)], gridMm: 1 }
    expect(snapPoint([49, 41.5], scene, 2)).toMatchObject({ dx: 1, dy: -1.5 })
    expect(snapPoint([30.25, 300.75], scene, 2)).toMatchObject({ dx: -0.25, dy: 0.25 })
  })

  it('and lines have a box', () => {
    expect(boxOf([3, 4])).toEqual(box(3, 4, 0, 0))
    expect(boxOf(Float64Array.from([0, 9, 5, -2]), [7, 1])).toEqual(box(0, -2, 7, 11))
  })
})
