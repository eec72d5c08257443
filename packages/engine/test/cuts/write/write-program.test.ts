import { describe, expect, it } from 'vitest'
import type { Move, Toolpath } from '../../../src/cuts/toolpath.ts'
import { PathPen } from '../../../src/cuts/toolpath.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import type { Dialect } from '../../../src/piece/dialect-field.ts'
import type { Way } from './near.ts'
import { away, placeAt } from './near.ts'
import { dialect, drawn, flat, program, run, tiny } from './sample.ts'
import type { ScannedMove } from './scan.ts'
import { scan } from './scan.ts'

const DIALECTS: readonly Partial<Dialect>[] = [
  {},
  { decimals: 2 },
  { decimals: 4, lineNumbers: true },
  { decimals: 6 },
  { units: 'inch' },
  { units: 'inch', decimals: 3 },
  { arcs: false },
  { zero: 'bed', air: 'M7' },
  { arcs: false, decimals: 2 },
  { comments: false, spindleWait: 0, changes: 'in the program' },
  { cycles: true, startLines: ['%', 'G64 P0.01'], endLines: ['G53 G0 Z0', '%'] }
]

const stepOf = (d: Dialect) =>
  (d.units === 'inch' ? 25.4 : 1) * 10 ** -(d.decimals ?? (d.units === 'inch' ? 4 : 3))

function waysOf({ moves }: Toolpath, shift: number): Way[] {
  const out: Way[] = []
  let at: Exclude<Move, { kind: 'dwell' }> | null = null
  for (const m of moves) {
    if (m.kind === 'dwell') continue
    if (at !== null)
      out.push({
        from: [at.x, at.y, at.z + shift],
        to: [m.x, m.y, m.z + shift],
        centre: m.kind === 'arc' ? [m.cx, m.cy] : null,
        clockwise: m.kind === 'arc' && m.clockwise
      })
    at = m
  }
  return out
}

const wayOf = (m: ScannedMove): Way => ({
  from: m.from,
  to: m.to,
  centre: m.centre,
  clockwise: m.motion === 2
})

/** Farthest that any of `a` strays from all of `b`, over places along each. */
function strays(a: readonly Way[], b: readonly Way[]): number {
  let most = 0
  for (const w of a)
    for (const t of w.centre === null ? [0, 0.5, 1] : [0, 0.13, 0.5, 0.71, 1]) {
      const p = placeAt(w, t)
      let least = Number.POSITIVE_INFINITY
      for (const v of b) {
        least = Math.min(least, away(p, v))
        if (least <= most) break
      }
      most = Math.max(most, least)
    }
  return most
}

/** Lines of a maker's own are not the writer's: the scanner would not take them. */
const bare = (text: string, d: Dialect) =>
  text
    .split('\n')
    .filter(l => !d.startLines.includes(l) && !d.endLines.includes(l))
    .join('\n')

describe('every program', () => {
  it.each(DIALECTS.map(d => [JSON.stringify(d), d] as const))('%s', (_, change) => {
    const d = dialect(change)
    const step = stepOf(d)
    const shift = d.zero === 'bed' ? 28 : 0
    for (let seed = 1; seed <= (d.arcs ? 8 : 2); seed++) {
      const path = drawn(seed)
      const { text, lines } = writeProgram(program([run(path)]), d)
      expect(text.split('\n').length - 1).toBe(lines)
      const { moves, stops } = scan(bare(text, d))
      const clear = 6.4 + shift
      // Up in Z alone, then across: before it knows where it stands it moves nothing else.
      expect(moves[0]!.motion).toBe(0)
      expect(moves[0]!.to.slice(0, 2), `seed ${seed}`).toEqual([Number.NaN, Number.NaN])
      for (const m of moves) {
        const along = m.to[0] !== m.from[0] || m.to[1] !== m.from[1]
        if (m.motion === 0 && along && m !== moves[0]) {
          expect(m.to[2], `seed ${seed} line ${m.line}`).toBeGreaterThan(clear - step)
          expect(m.from[2]).toBeGreaterThan(clear - step)
        }
        if (m.motion === 0 && m.to[2] < clear - step) expect(m.to[2]).toBeGreaterThanOrEqual(1 + shift - step)
        if (m.motion !== 0) expect(m.feed).toBeGreaterThan(0)
        if (m.motion >= 2) expect(d.arcs).toBe(true)
      }
      const cutting = moves.filter(m => m.to[2] < 1.4 + shift && m.motion !== 0)
      expect(cutting.every(m => m.spindle === 18_000)).toBe(true)
      expect(stops).toBe(1)
      expect(moves.at(-1)!.to[2]).toBeCloseTo(clear, 2)
      // What is written is the path: within the tolerance and one and a half steps, either way.
      const from = moves.findIndex(m => m.spindle !== 0)
      const written = moves.slice(from + 1).map(wayOf)
      const meant = waysOf(path, shift)
      const most = 0.01 + 2.2 * step
      expect(strays(meant, written), `path, seed ${seed}`).toBeLessThan(most)
      expect(strays(written, meant), `program, seed ${seed}`).toBeLessThan(most)
    }
  })

  it('is the same bytes of the same input', () => {
    const once = writeProgram(program([run(drawn(3))]), dialect())
    expect(writeProgram(program([run(drawn(3))]), dialect())).toEqual(once)
  })

  it('is these bytes (change only)', () => {
    expect(writeProgram(program([run(tiny())]), dialect()).text).toMatchSnapshot()
    const inch = dialect({ units: 'inch', lineNumbers: true, zero: 'bed', comments: false, air: 'M8' })
    expect(writeProgram(program([run(tiny())]), inch).text).toMatchSnapshot()
  })

  it('tells the line of each pass', () => {
    const { text, passes } = writeProgram(program([run(tiny())]), dialect())
    expect(passes.map(p => p.name)).toEqual(['pass 1 of 2, 2.0 deep', 'pass 2 of 2, 4.0 deep'])
    const lines = text.split('\n')
    for (const p of passes) expect(lines[p.line - 2]).toBe(`(${p.name})`)
    expect(lines[passes[0]!.line - 1]).toBe('G0 X10.0 Y0.0')
  })
})

describe('lengths and numbers', () => {
  it('writes an inch as 25.4 mm, feeds too', () => {
    const pen = new PathPen(25.4)
    pen.pass('one')
    pen.over(50.8, -12.7)
    pen.line(50.8, -12.7, -2.54, 254)
    const at = { clearMm: 25.4, bedMm: -25.4 }
    const { text } = writeProgram(program([run(pen.done())], at), dialect({ units: 'inch' }))
    expect(text).toContain('X2.0 Y-0.5\n')
    expect(text).toContain('G1 Z-0.1 F10\n')
    expect(text).toContain('\nG20\n')
  })

  it('puts heights over the bed where the maker sets the zero there', () => {
    const worked = scan(writeProgram(program([run(tiny())]), dialect()).text)
    const bed = scan(writeProgram(program([run(tiny())]), dialect({ zero: 'bed' })).text)
    expect(bed.moves.length).toBe(worked.moves.length)
    bed.moves.forEach((m, i) => {
      expect(m.to[2]).toBeCloseTo(worked.moves[i]!.to[2] + 28, 9)
    })
    expect(bed.comments.join(' ')).toContain('Zero of heights: the bed')
  })

  it('says a feed again after every stop', () => {
    const two = [run(tiny()), run(tiny(), { number: 2, shape: flat(4) })]
    const { text } = writeProgram(program(two), dialect({ changes: 'in the program' }))
    for (const block of text.split('T2 M6')) {
      const cut = block.split('\n').find(l => /^G1 Z-/.test(l))
      expect(cut).toMatch(/F300$/)
    }
    const { moves, stops } = scan(text)
    expect(stops).toBe(2)
    expect(new Set(moves.map(m => m.tool))).toEqual(new Set([1, 2, 0]))
  })

  it('refuses two cutters where the machine takes one a program', () => {
    const two = [run(tiny()), run(tiny(), { number: 2 })]
    expect(() => writeProgram(program(two), dialect())).toThrow(/one program a cutter/)
  })

  it('runs line numbers on past 99999', () => {
    const pen = new PathPen(6.4)
    pen.pass('long')
    pen.over(0, 0)
    for (let k = 0; k < 100_100; k++) pen.line(k % 2, 0, -1, 500)
    const { text } = writeProgram(program([run(pen.done())]), dialect({ lineNumbers: true }))
    const numbers = text.split('\n').flatMap(l => /^N([0-9]+)/.exec(l)?.[1] ?? [])
    expect(Math.max(...numbers.map(Number))).toBe(99_999)
    expect(Math.min(...numbers.map(Number))).toBe(1)
  })
})

describe('a path that breaks what every program promises', () => {
  const bad = (say: (pen: PathPen) => void, change: object = {}) => {
    const pen = new PathPen(6.4)
    say(pen)
    return () => writeProgram(program([run({ moves: pen.moves, passes: pen.passes })], change), dialect())
  }
  const raw = (moves: readonly Move[]) => () => writeProgram(program([run({ moves, passes: [] })]), dialect())

  it.each([
    ['crosses low', bad(p => { p.over(0, 0); p.line(0, 0, -2, 100); p.moves.push({ kind: 'rapid', x: 9, y: 0, z: -2 }) }), /move 3 crosses at rapid speed below/],
    ['slants down', raw([{ kind: 'rapid', x: 0, y: 0, z: 6.4 }, { kind: 'rapid', x: 9, y: 0, z: 1 }]), /crosses/],
    ['rapid into the work', bad(p => { p.over(0, 0); p.down(-1); p.lift() }), /goes down at rapid speed where nothing was cut/],
    ['begins low', raw([{ kind: 'rapid', x: 0, y: 0, z: 6 }]), /begins below the clearance height/],
    ['begins with a cut', raw([{ kind: 'line', x: 0, y: 0, z: 6.4, feedMmMin: 9 }]), /begins with a cut/],
    ['ends low', bad(p => { p.over(0, 0); p.line(0, 0, 2, 100) }), /ends at 2, below/],
    ['no feed', bad(p => { p.over(0, 0); p.line(0, 0, -1, 0); p.lift() }), /fed at 0/],
    ['no number', bad(p => { p.over(0, 0); p.line(Number.NaN, 0, -1, 9); p.lift() }), /goes to NaN/],
    ['far off', bad(p => { p.over(1e22, 0); p.lift() }), /at most 100000/],
    ['an arc that does not close', bad(p => { p.over(0, 0); p.arc(10, 0, 6.4, 4, 0, true, 9); p.lift() }), /radius 4 at its start and 6/],
    ['into the bed', bad(p => { p.over(0, 0); p.line(0, 0, -29, 9); p.lift() }), /1 mm into the bed; 0.5/],
    ['nothing', raw([]), /has no move/],
    ['a clearance height in the work', bad(p => { p.over(0, 0) }, { clearMm: 1.4 }), /not above the work/]
  ] as const)('%s', (_, write, message) => {
    expect(write).toThrow(message)
  }) // biome-ignore format: one row a case

  it('goes down at rapid speed where it has cut before, and not beside it', () => {
    const again = (x: number) => () => {
      const pen = new PathPen(6.4)
      pen.over(0, 0)
      pen.line(0, 0, -3, 100)
      pen.line(20, 0, -3, 100)
      pen.over(x, 0)
      pen.down(-3)
      pen.line(x, 0, -5, 100)
      return writeProgram(program([run(pen.done())]), dialect())
    }
    expect(again(10)).not.toThrow()
    expect(again(22.9)).not.toThrow()
    expect(again(23.1)).toThrow(/nothing was cut/)
  })
})
