import { describe, expect, it } from 'vitest'
import type { CutJob } from '../../../src/cuts/cut-job.ts'
import { borePath } from '../../../src/cuts/line/bore.ts'
import type { Toolpath } from '../../../src/cuts/toolpath.ts'
import { PathPen } from '../../../src/cuts/toolpath.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import { dialect, drawn, flat, program, run } from './sample.ts'
import type { ScannedMove } from './scan.ts'
import { scan } from './scan.ts'

const job: CutJob = {
  cutter: { ...flat(8), form: 'drill', angleDeg: 118 },
  feeds: {
    rpm: 6000, feedMmMin: 600, plungeMmMin: 240, rampMmMin: 240, rampDeg: 90, depthMm: 4, stepMm: 3, allowanceMm: 0,
    climb: true, why: []
  },
  topMm: 0,
  floorMm: -18,
  clearMm: 6.4,
  tolMm: 0.01,
  arcs: true
} // biome-ignore format: feeds

const holes = [-100, -20, 60].map(x => ({ x, y: 10, diameterMm: 8, through: false, name: 'pin hole' }))

function bores(depth: number): Toolpath {
  const path = borePath({ ...job, floorMm: -depth }, holes)
  if ('says' in path) throw new Error(path.says)
  return path
}

/** Where holes are, how deep, and the deepest single feed down. */
function drilled(moves: readonly ScannedMove[]) {
  const at = new Map<string, { floor: number; peck: number; feed: number }>()
  for (const m of moves) {
    if (m.motion !== 1) continue
    const key = `${m.to[0]},${m.to[1]}`
    const was = at.get(key) ?? { floor: 0, peck: 0, feed: m.feed }
    at.set(key, {
      floor: Math.min(was.floor, m.to[2]),
      peck: Math.max(was.peck, Math.min(0, m.from[2]) - m.to[2]),
      feed: m.feed
    })
  }
  return at
}

const written = (path: Toolpath, change = {}) =>
  writeProgram(program([run(path)]), dialect({ cycles: true, ...change })).text

describe('holes by canned cycles', () => {
  it.each([
    [3, 'G98 G81 X-100.0 Y10.0 Z-3.0 R1.0 F240'],
    [18, 'G98 G83 X-100.0 Y10.0 Z-18.0 R1.0 Q3.167 F240']
  ])('are those of the moves, %d deep', (depth, first) => {
    const path = bores(depth)
    const text = written(path)
    expect(text).toContain(`${first}\n`)
    expect(text.match(/G8[13] /g)).toHaveLength(3)
    const cycles = drilled(scan(text).moves)
    const moves = drilled(scan(writeProgram(program([run(path)]), dialect()).text).moves)
    expect([...cycles.keys()]).toEqual([...moves.keys()])
    for (const [key, c] of cycles) {
      const m = moves.get(key)!
      expect(c.floor).toBe(m.floor)
      expect(c.feed).toBe(m.feed)
      // No deeper in one go than the path has it, a step of the decimals allowed.
      expect(c.peck).toBeLessThanOrEqual(m.peck + 1e-3)
    }
  })

  it('end before anything else moves, and cross high', () => {
    const pen = new PathPen(6.4)
    const all = bores(18)
    const rest = drawn(4)
    const joined = {
      moves: [...all.moves, ...rest.moves],
      passes: [...all.passes, ...rest.passes.map(p => ({ ...p, from: p.from + all.moves.length }))]
    }
    pen.done()
    const text = written(joined)
    expect(text).toMatch(/G83[^\n]*\n(\([^\n]*\n)*G80\n(\([^\n]*\n)*G0 /)
    for (const m of scan(text).moves.slice(1))
      if (m.motion === 0 && (m.to[0] !== m.from[0] || m.to[1] !== m.from[1]))
        expect(m.to[2]).toBeGreaterThanOrEqual(6.4)
    expect(written(bores(18))).toMatch(/G80\nM5\nM2\n$/)
  })

  it('wait at the foot with G82', () => {
    const pen = new PathPen(6.4)
    pen.pass('hole')
    pen.over(5, 5)
    pen.down(1)
    pen.line(5, 5, -3, 100)
    pen.dwell(0.5)
    pen.lift()
    expect(written(pen.done())).toContain('G98 G82 X5.0 Y5.0 Z-3.0 R1.0 P0.5 F100\n')
  })

  it('are none where the cutter does more than go down', () => {
    const pen = new PathPen(6.4)
    pen.pass('slot')
    pen.over(5, 5)
    pen.down(1)
    pen.line(5, 5, -3, 100)
    pen.line(15, 5, -3, 400)
    pen.lift()
    expect(written(pen.done())).not.toMatch(/^(G98 )?G8[123]/m)
  })

  it('in inches, over the bed', () => {
    const text = written(bores(18), { units: 'inch', zero: 'bed' })
    expect(text).toContain('G98 G83 X-3.937 Y0.3937 Z0.3937 R1.1417 Q0.1247 F9.45\n')
    const at = drilled(
      scan(text).moves.map(m => ({
        ...m,
        from: [m.from[0], m.from[1], m.from[2] - 28],
        to: [m.to[0], m.to[1], m.to[2] - 28]
      }))
    )
    expect(Math.min(...[...at.values()].map(a => a.floor))).toBeCloseTo(-18, 2)
  })
})
