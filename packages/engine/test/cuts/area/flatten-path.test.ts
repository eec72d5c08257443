import { describe, expect, it } from 'vitest'
import { flattenPath } from '../../../src/cuts/area/flatten-path.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { difference, union } from '../../../src/shape/combine.ts'
import { depthIn, eachPlace, flat, job, painted, pathOf, tipsOf } from './painted.ts'

const bit = flat(25, { form: 'surfacing', plunges: false, fluteMm: 6 })
const shapes = {
  board: rectangle(120, 70, 0, 0.01),
  disc: circle(90, 0.05),
  horseshoe: difference(rectangle(120, 90, 0, 0.01), rectangle(50, 60, 0, 0.01, 0, 30)),
  two: union(rectangle(30, 30, 0, 0.01, -60, 0), rectangle(30, 30, 0, 0.01, 60, 10))
}

describe('flattening', () => {
  it.each(
    (Object.keys(shapes) as (keyof typeof shapes)[]).flatMap(name =>
      [0, 90, 33].map(deg => [name, deg] as const)
    )
  )('%s along %i°: all of the face, entered from outside', (name, alongDeg) => {
    const region = shapes[name]
    const j = job(bit, 1.5, { depthMm: 1, stepMm: 10 })
    const { moves, passes } = pathOf(flattenPath(j, region, { alongDeg, beyondMm: 2 }))
    expect(passes).toHaveLength(2)
    const picture = painted(moves, 12.5, [-100, -80, 100, 80], 1)
    eachPlace(picture, (x, y, z) => {
      if (depthIn(region, x, y) > 0.05) expect(z).toBe(-1.5)
    })
    // Whatever goes down at depth does so clear of the stock.
    let last = { x: 0, y: 0, z: 9 }
    for (const t of tipsOf(moves, 0.5)) {
      if (t.z < 0 && t.z < last.z) expect(-depthIn(region, t.x, t.y)).toBeGreaterThanOrEqual(12.5 + 2 - 1e-6)
      last = t
    }
  })

  it('takes the rows that a board needs: of even step, the first one step deep into it', () => {
    // 70 high, flat radius 12.5, step 10: middles from −35 − 12.5 + 10 = −37.5 on; the last reaches 35.
    const j = job(bit, 1, { stepMm: 10 })
    const { moves } = pathOf(flattenPath(j, shapes.board, { alongDeg: 0, beyondMm: 2 }))
    const rows = [
      ...new Set(moves.flatMap(m => (m.kind === 'line' && m.z === -1 ? [Math.round(m.y * 1e6) / 1e6] : [])))
    ]
    expect(rows).toEqual([-37.5, -27.5, -17.5, -7.5, 2.5, 12.5, 22.5])
    const long = moves.filter(m => m.kind === 'line').map(m => (m.kind === 'line' ? Math.abs(m.x) : 0))
    expect(Math.max(...long)).toBe(60 + 12.5 + 2)
  })

  it('one way lifts between the rows', () => {
    const j = job(bit, 1, { stepMm: 10 })
    const { moves } = pathOf(flattenPath(j, shapes.board, { alongDeg: 0, beyondMm: 2, oneWay: true }))
    let x = 0
    for (const m of moves) {
      if (m.kind === 'line' && m.z === -1) expect(m.x).toBeGreaterThanOrEqual(x)
      if (m.kind !== 'dwell') x = m.x
    }
  })

  it('a ball leaves no flat face', () => {
    expect(
      flattenPath(job(flat(6, { form: 'ball' }), 1), shapes.board, { alongDeg: 0, beyondMm: 2 })
    ).toHaveProperty('says')
  })
})
