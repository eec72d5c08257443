import { describe, expect, it } from 'vitest'
import { pocketPath } from '../../../src/cuts/area/pocket-path.ts'
import type { CutJob } from '../../../src/cuts/cut-job.ts'
import type { Move } from '../../../src/cuts/toolpath.ts'
import { circle, rectangle } from '../../../src/shape/build.ts'
import { difference, union } from '../../../src/shape/combine.ts'
import { area, bounds } from '../../../src/shape/measure.ts'
import type { Region } from '../../../src/shape/region.ts'
import { chance } from '../../stack/random.ts'
import { depthIn, discHolds, eachPlace, flat, job, painted, pathOf, steepestInto, tipsOf } from './painted.ts'

/** Pockets tried; more with CASTWRIGHT_POCKETS. */
const COUNT = Number(process.env['CASTWRIGHT_POCKETS'] ?? 10)

/** A pocket with islands, from a seed: rectangles and discs together, others taken out. */
function pocket(seed: number): Region {
  const c = chance(seed)
  const some = (n: number, far: number, most: number): Region[] =>
    Array.from({ length: n }, () => {
      const [x, y] = [(c.next() - 0.5) * far, (c.next() - 0.5) * far]
      return c.next() < 0.5
        ? circle(8 + c.next() * most, 0.02, x, y)
        : rectangle(8 + c.next() * most, 8 + c.next() * most, c.next() < 0.5 ? 0 : 2, 0.02, x, y)
    })
  const whole = union(rectangle(40, 30, 3, 0.02), ...some(3, 40, 30))
  return difference(whole, union(...some(2, 40, 8)))
}

/** Everything the cutter can reach is cut to the floor, nothing outside by more than the tolerance. */
function covers(region: Region, j: CutJob, moves: readonly Move[]): void {
  const half = j.cutter.diameterMm / 2
  const b = bounds(region)
  const picture = painted(moves, half, [b.minX - 2, b.minY - 2, b.maxX + 2, b.maxY + 2], 0.4)
  const standing: string[] = []
  const gouged: string[] = []
  eachPlace(picture, (x, y, z) => {
    const deep = depthIn(region, x, y)
    if (z < j.topMm && deep < -j.tolMm) gouged.push(`${x.toFixed(2)}, ${y.toFixed(2)}`)
    if (z > j.floorMm + 1e-6 && deep > 0.1 && discHolds(region, x, y, half, 0.02))
      standing.push(`${x.toFixed(2)}, ${y.toFixed(2)}`)
  })
  expect({ standing: standing.slice(0, 4), gouged: gouged.slice(0, 4) }).toEqual({ standing: [], gouged: [] })
}

/** At rapid speed only over the work, or straight up. */
function rapidsHigh(j: CutJob, moves: readonly Move[]): void {
  let last = { x: 0, y: 0, z: Number.POSITIVE_INFINITY }
  for (const t of tipsOf(moves, 0.5)) {
    // Straight up it may go anywhere.
    const up = Math.hypot(t.x - last.x, t.y - last.y) < 1e-6 && t.z > last.z
    if (t.rapid && !up) expect(t.z).toBeGreaterThan(j.topMm)
    last = t
  }
  for (const end of [moves[0]!, moves[moves.length - 1]!])
    expect(end).toMatchObject({ kind: 'rapid', z: j.clearMm })
}

describe('a pocket', () => {
  it.each(Array.from({ length: COUNT }, (_, k) => k + 1))(
    'of seed %i is cleared where the cutter reaches, and nowhere else',
    seed => {
      const region = pocket(seed)
      const c = chance(seed + 100)
      const j = job(
        flat([3, 4, 6][seed % 3]!),
        6,
        { allowanceMm: seed % 2 === 0 ? 0.3 : 0, climb: seed % 4 < 2, stepMm: 0.5 + 4 * c.next() },
        { arcs: seed % 5 !== 0 }
      )
      const { moves } = pathOf(pocketPath(j, region))
      covers(region, j, moves)
      rapidsHigh(j, moves)
    }
  )

  it('goes round a disc in rings: the length is the sum of circles', () => {
    // A disc of 40 mm, cutter 10, step 4: rings of radius 15, 11, 7, 3; the helix on top.
    const j = job(flat(10), 3, { stepMm: 4 })
    const { moves } = pathOf(pocketPath(j, circle(40, 0.001)))
    const tips = tipsOf(moves, 0.05).filter(t => t.z === -3)
    const at = (r: number) => tips.filter(t => Math.abs(Math.hypot(t.x, t.y) - r) < 0.05).length * 0.05
    for (const r of [15, 11, 7, 3]) expect(at(r) / (2 * Math.PI * r)).toBeGreaterThan(0.97)
  })

  it.each([
    [true, 'counter-clockwise outside, clockwise about the island'],
    [false, 'the other way']
  ])('climb %s: %s', climb => {
    const region = difference(rectangle(60, 60, 0, 0.01), circle(20, 0.01))
    const j = job(flat(6), 3, { climb })
    const { moves } = pathOf(pocketPath(j, region))
    // Turning about the middle: at the wall's ring (27 from it along an axis) and at the island's (13).
    const turns = { outside: 0, island: 0 }
    let [x, y] = [0, 0]
    for (const t of tipsOf(moves, 0.2)) {
      const turn = x * t.y - y * t.x
      const r = Math.hypot(t.x, t.y)
      if (t.z === -3 && Math.abs(Math.max(Math.abs(t.x), Math.abs(t.y)) - 27) < 0.02) turns.outside += turn
      if (t.z === -3 && Math.abs(r - 13) < 0.02) turns.island += turn
      ;[x, y] = [t.x, t.y]
    }
    expect(Math.sign(turns.outside)).toBe(climb ? 1 : -1)
    expect(Math.sign(turns.island)).toBe(climb ? -1 : 1)
  })

  it('never goes down steeper than its ramp into what stands, nor deeper a pass than asked', () => {
    const region = rectangle(50, 20, 0, 0.01)
    const j = job(flat(6, { plunges: false }), 10)
    const { moves, passes } = pathOf(pocketPath(j, region))
    expect(passes.map(p => p.name)).toEqual([
      'pass 1 of 3, 3.3 deep',
      'pass 2 of 3, 6.7 deep',
      'pass 3 of 3, 10 deep'
    ])
    expect(steepestInto(moves)).toBeLessThan(3.01)
  })

  it('open at an edge is entered from outside', () => {
    // A rebate 20 wide along the right edge of a board 100 wide; air beside it.
    const rebate = rectangle(20, 60, 0, 0.01, 40, 0)
    const air = difference(rectangle(300, 300, 0, 0.01), rectangle(100, 60, 0, 0.01))
    const j = job(flat(6, { plunges: false }), 4)
    const { moves } = pathOf(pocketPath(j, rebate, { free: air }))
    rapidsHigh(j, moves)
    const down = moves.filter((m, i) => {
      const before = moves[i - 1]
      return (
        m.kind === 'line' &&
        before !== undefined &&
        before.kind !== 'dwell' &&
        m.x === before.x &&
        m.y === before.y
      )
    })
    expect(down.length).toBeGreaterThan(0)
    for (const m of down)
      if (m.kind === 'line' && m.z < 0)
        expect(depthIn(rectangle(100, 60, 0, 0.01), m.x, m.y)).toBeLessThan(-3)
    const picture = painted(moves, 3, [25, -32, 60, 32])
    eachPlace(picture, (x, y, z) => {
      if (x < 50 && x > 30.1 && Math.abs(y) < 29.9) expect(z).toBe(-4)
      if (x < 29.9 && Math.abs(y) < 30) expect(z).toBe(Number.POSITIVE_INFINITY)
    })
  })

  it('as wide as the cutter is a slot', () => {
    const j = job(flat(6), 3)
    const { moves } = pathOf(pocketPath(j, rectangle(40, 6, 3, 0.001)))
    covers(rectangle(40, 6, 3, 0.001), j, moves)
  })

  it('smaller than the cutter names the largest that goes in', () => {
    expect(pocketPath(job(flat(6), 3), rectangle(40, 5, 0, 0.01))).toMatchObject({ largestMm: 5 })
    expect(pocketPath(job(flat(6), 3), { rings: [] })).toMatchObject({ largestMm: null })
    expect(
      pocketPath(job(flat(6, { form: 'v', angleDeg: 60 }), 3), rectangle(40, 40, 0, 0.01))
    ).toMatchObject({ largestMm: null })
  })

  it('leaves its allowance to a last pass along the wall, come onto on an arc', () => {
    const j = job(flat(6), 8, { allowanceMm: 0.4 })
    const region = rectangle(60, 40, 5, 0.01)
    const { moves, passes } = pathOf(pocketPath(j, region))
    const walls = passes[passes.length - 1]!
    expect(walls.name).toBe('walls, the last pass')
    const rough = painted(moves.slice(0, walls.from), 3, [-32, -22, 32, 22])
    eachPlace(rough, (x, y, z) => {
      if (z < 0) expect(depthIn(region, x, y)).toBeGreaterThan(0.4 - 0.03)
    })
    const arcs = moves.slice(walls.from).filter(m => m.kind === 'arc')
    expect(arcs.length).toBeGreaterThanOrEqual(6)
    covers(region, j, moves)
  })

  it('takes few moves: arcs where rings are arcs', () => {
    const region = difference(circle(80, 0.01), circle(30, 0.01))
    const with_ = pathOf(pocketPath(job(flat(6), 3), region)).moves.length
    const without = pathOf(pocketPath(job(flat(6), 3, {}, { arcs: false }), region)).moves.length
    expect(with_).toBeLessThan(without / 5)
    expect(area(region)).toBeGreaterThan(0)
  })
})
