import { describe, expect, it } from 'vitest'
import { outlinePath } from '../../../src/cuts/area/outline-path.ts'
import type { Move } from '../../../src/cuts/toolpath.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { difference } from '../../../src/shape/combine.ts'
import { inside } from '../../../src/shape/measure.ts'
import type { Region } from '../../../src/shape/region.ts'
import type { Painted } from './painted.ts'
import { cutLength, depthIn, eachPlace, flat, job, painted, pathOf, steepestInto, tipsOf } from './painted.ts'

const board = rectangle(100, 60, 0, 0.01)

/** Heights of what is left along a line beside the part, 3 mm (a cutter of 6's radius) off its edge. */
function along(p: Painted, y: number): { x: number; z: number }[] {
  const out: { x: number; z: number }[] = []
  const row = Math.round((y - p.y0) / p.cellMm - 0.5)
  for (let k = 0; k < p.columns; k++)
    out.push({ x: p.x0 + (k + 0.5) * p.cellMm, z: p.z[row * p.columns + k]! })
  return out
}

function touches(region: Region, moves: readonly Move[], half: number): boolean {
  return tipsOf(moves, 0.3).some(
    t => t.z < 0 && (inside(region, t.x, t.y) || -depthIn(region, t.x, t.y) < half - 0.03)
  )
}

describe('an outline', () => {
  it('goes once round a rectangle and a little ramp more, on corners of its radius', () => {
    // One pass 3 deep from 1 over the top at 3°: 76.3 of ramp; once round: 2·(100 + 60) + 2π·3.
    const { moves } = pathOf(outlinePath(job(flat(6), 3), board, { side: 'outside' }))
    const ramp = Math.hypot(4 / Math.tan((3 * Math.PI) / 180), 4)
    expect(cutLength(moves)).toBeCloseTo(ramp + 320 + 6 * Math.PI, 0)
    expect(touches(board, moves, 3)).toBe(false)
  })

  it.each([
    [true, -1],
    [false, 1]
  ])('climb %s: the part to the right of the way', (climb, sense) => {
    const turn = (moves: readonly Move[]) => {
      let sum = 0
      let last = { x: 0, y: 0 }
      for (const t of tipsOf(moves, 0.3)) {
        if (t.z < 0) sum += last.x * t.y - last.y * t.x
        last = t
      }
      return Math.sign(sum)
    }
    const j = job(flat(6), 3, { climb })
    expect(turn(pathOf(outlinePath(j, board, { side: 'outside' })).moves)).toBe(sense)
    expect(turn(pathOf(outlinePath(j, board, { side: 'inside' })).moves)).toBe(-sense)
  })

  it('leaves its tabs: four of 8 × 3 mm on straight parts, and cuts all else through', () => {
    const options = { side: 'outside', tabs: { count: 4, widthMm: 8, thickMm: 3 }, underMm: -18 } as const
    const { moves } = pathOf(outlinePath(job(flat(6), 18.3), board, options))
    const picture = painted(moves, 3, [-58, -38, 58, 38])
    let tabs = 0
    let low = 0
    const widths: number[] = []
    for (const [line, across] of [
      [along(picture, 33), 50],
      [along(picture, -33), 50]
    ] as const) {
      let wide = 0
      for (const { x, z } of line) {
        if (Math.abs(x) > across) continue
        if (Math.abs(z - -15) < 1e-6) wide += picture.cellMm
        else {
          if (wide > 0) {
            tabs++
            widths.push(wide)
            // Away from the corners.
            expect(Math.abs(x)).toBeLessThan(46)
          }
          wide = 0
          expect(z).toBeLessThan(-15 + 1e-6)
          low++
        }
      }
    }
    // Two on each long side; the evenly spaced ones of the short sides are moved no farther than their share.
    expect(tabs).toBeGreaterThanOrEqual(2)
    for (const w of widths) expect(w).toBeGreaterThanOrEqual(7.6)
    expect(low).toBeGreaterThan(300)
    expect(steepestInto(moves)).toBeLessThan(45.1)
    expect(touches(board, moves, 3)).toBe(false)
  })

  it('a cutter that does not plunge comes down beside tabs no steeper than its ramp', () => {
    const options = { side: 'outside', tabs: { count: 3, widthMm: 6, thickMm: 2 } } as const
    const { moves } = pathOf(outlinePath(job(flat(6, { plunges: false }), 12), board, options))
    expect(steepestInto(moves)).toBeLessThan(3.05)
  })

  it('leaves a skin of the thickness asked for', () => {
    const { moves } = pathOf(
      outlinePath(job(flat(6), 18.3), board, { side: 'outside', skinMm: 0.8, underMm: -18 })
    )
    expect(Math.min(...tipsOf(moves, 0.5).map(t => t.z))).toBeCloseTo(-17.2, 9)
  })

  it('cuts openings before the outside, and the wall before the pass that frees', () => {
    const ring = difference(circle(120, 0.02), circle(60, 0.02))
    const j = job(flat(6), 9, { allowanceMm: 0.3, depthMm: 3 })
    const { moves, passes } = pathOf(outlinePath(j, ring, { side: 'outside' }))
    expect(passes.map(p => p.name.replace(/, [\d.]+ deep/, ''))).toEqual([
      'ring 1, pass 1 of 3',
      'ring 1, pass 2 of 3',
      'ring 1, the wall',
      'ring 1, pass 3 of 3',
      'ring 2, pass 1 of 3',
      'ring 2, pass 2 of 3',
      'ring 2, the wall',
      'ring 2, pass 3 of 3'
    ])
    const radius = (from: number, to: number) => {
      const at = tipsOf(moves.slice(from, to), 0.5).filter(t => t.z < 0)
      const r = at.map(t => Math.hypot(t.x, t.y))
      return [Math.min(...r), Math.max(...r)]
    }
    // Inside the opening of 30: 27 − 0.3 before, 27 on the wall.
    expect(radius(passes[0]!.from, passes[1]!.from)[1]).toBeCloseTo(26.7, 1)
    expect(radius(passes[3]!.from, passes[4]!.from)[1]).toBeCloseTo(27, 1)
    expect(radius(passes[4]!.from, passes[5]!.from)[0]).toBeCloseTo(63.3, 1)
    expect(radius(passes[7]!.from, moves.length)[0]).toBeCloseTo(63, 1)
    const picture = painted(moves, 3, [-70, -70, 70, 70], 0.5)
    eachPlace(picture, (x, y, z) => {
      const r = Math.hypot(x, y)
      if (r > 30.1 && r < 59.9) expect(z).toBe(Number.POSITIVE_INFINITY)
      if ((r > 60.1 && r < 65.8) || (r > 24.2 && r < 29.9)) expect(z).toBeCloseTo(-9, 9)
    })
  })

  it('with a cutter that closes an opening or joins two parts there is no path', () => {
    const ring = difference(rectangle(80, 80, 0, 0.01), rectangle(30, 5, 0, 0.01))
    expect(outlinePath(job(flat(6), 3), ring, { side: 'outside' })).toMatchObject({ largestMm: 4.99 })
    const two = {
      rings: [...rectangle(30, 30, 0, 0.01, -18, 0).rings, ...rectangle(30, 30, 0, 0.01, 18, 0).rings]
    }
    const found = outlinePath(job(flat(8), 3), two, { side: 'outside' })
    expect(found).toMatchObject({ largestMm: 5.99 })
  })

  it('refuses tabs as thick as the board, and says where a ring is too small for one', () => {
    const tabs = { count: 4, widthMm: 8, thickMm: 3 }
    expect(outlinePath(job(flat(6), 3), board, { side: 'outside', tabs })).toHaveProperty('says')
    const small = outlinePath(job(flat(3), 6), circle(4, 0.01), { side: 'inside', tabs })
    expect(small).toMatchObject({ says: expect.stringMatching(/too short for a tab/) })
  })
})
