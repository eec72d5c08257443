import { describe, expect, it } from 'vitest'
import { PathPen } from '../../../src/cuts/toolpath.ts'
import { airCut } from '../../../src/cuts/write/air-cut.ts'
import { cutExtentOf, extentOf, pathsOf } from '../../../src/cuts/write/extent.ts'
import { placed } from '../../../src/cuts/write/placed.ts'
import { passesOf, passNamed, restart } from '../../../src/cuts/write/restart.ts'
import { slug } from '../../../src/cuts/write/slug.ts'
import { testCut } from '../../../src/cuts/write/test-cut.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import { dialect, drawn, flat, program, run, tiny } from './sample.ts'
import { scan } from './scan.ts'

/** Passes of a pocket at one place, each from the last one's floor. */
function deepPocket(floors: readonly number[], x = 0): PathPen {
  const pen = new PathPen(6.4)
  floors.forEach((z, k) => {
    pen.pass(`pass ${k + 1} of ${floors.length}, ${-z} deep`)
    pen.over(x, 0)
    pen.down(k === 0 ? 1 : floors[k - 1]! + 0.5)
    pen.line(x, 0, z, 300)
    pen.line(x + 20, 0, z, 900)
    pen.line(x + 20, 20, z, 900)
    pen.line(x, 0, z, 900)
  })
  return pen
}

describe('a placement', () => {
  it('keeps every length and radius, and a quarter turn is exact', () => {
    const path = drawn(5)
    const turned = placed(path, { turnDeg: 90, shiftX: 3, shiftY: -7 })
    path.moves.forEach((m, i) => {
      const t = turned.moves[i]!
      if (m.kind === 'dwell' || t.kind === 'dwell') return
      expect(t.x).toBe(-m.y + 3)
      expect(t.y).toBe(m.x - 7)
      expect(t.z).toBe(m.z)
      if (m.kind === 'arc' && t.kind === 'arc') {
        expect(Math.hypot(t.x - t.cx, t.y - t.cy)).toBeCloseTo(Math.hypot(m.x - m.cx, m.y - m.cy), 9)
        expect(t.clockwise).toBe(m.clockwise)
      }
    })
    // 3-4-5: (5, 0) turned by atan(4/3) is (3, 4).
    const pen = new PathPen(6.4)
    pen.over(5, 0)
    const at = placed(pen.done(), { turnDeg: (Math.atan2(4, 3) * 180) / Math.PI, shiftX: 0, shiftY: 0 })
      .moves[0]!
    expect(at).toMatchObject({ z: 6.4 })
    if (at.kind !== 'dwell') {
      expect(at.x).toBeCloseTo(3, 12)
      expect(at.y).toBeCloseTo(4, 12)
    }
  })

  it('there and back is the path, and it still writes', () => {
    const path = drawn(8)
    const away = placed(path, { turnDeg: 1.234, shiftX: 0, shiftY: 0 })
    const back = placed(away, { turnDeg: -1.234, shiftX: 0, shiftY: 0 })
    path.moves.forEach((m, i) => {
      const b = back.moves[i]!
      if (m.kind !== 'dwell' && b.kind !== 'dwell')
        expect(Math.hypot(m.x - b.x, m.y - b.y)).toBeLessThan(1e-9)
    })
    expect(() => scan(writeProgram(program([run(away)]), dialect()).text)).not.toThrow()
  })

  it('refuses what is no number', () => {
    expect(() => placed(tiny(), { turnDeg: Number.NaN, shiftX: 0, shiftY: 0 })).toThrow(/turnDeg is NaN/)
  })
})

describe('an air cut', () => {
  it('goes the same way a lift above the work, the spindle off, and stops at the zero, the middle and the corners', () => {
    for (const seed of [1, 2, 3, 4]) {
      const cut = program([run(drawn(seed))])
      const air = airCut(cut)
      const { moves, stops, comments } = scan(writeProgram(air, dialect()).text)
      expect(Math.min(...moves.filter(m => !Number.isNaN(m.to[2])).map(m => m.to[2]))).toBeGreaterThanOrEqual(
        6.4 - 1e-9
      )
      expect(moves.every(m => m.spindle === 0)).toBe(true)
      expect(stops).toBe(1 + 6)
      expect(comments.some(c => c.startsWith('AIR CUT'))).toBe(true)
      const a = extentOf(pathsOf(air.runs))
      const c = extentOf(pathsOf(cut.runs))
      for (const key of ['minX', 'maxX', 'minY', 'maxY'] as const) expect(a[key]).toBe(c[key])
      expect(cutExtentOf(pathsOf(air.runs)).minZ).toBeCloseTo(6.4, 9)
      expect(a.maxZ).toBeCloseTo(2 + 6.4 - cutExtentOf(pathsOf(cut.runs)).minZ, 9)
      // The stops stand where the box of the cut says.
      const box = cutExtentOf(pathsOf(cut.runs))
      expect(air.visits.slice(2).map(v => [v.x, v.y])).toEqual([
        [box.minX, box.minY], [box.maxX, box.minY], [box.maxX, box.maxY], [box.minX, box.maxY]
      ]) // biome-ignore format: a box
    }
  })

  it('stops once at places that fall together', () => {
    const pen = new PathPen(6.4)
    pen.pass('hole')
    pen.over(12, 8)
    pen.line(12, 8, -10, 200)
    expect(airCut(program([run(pen.done())])).visits).toHaveLength(2)
  })
})

describe('a test cut', () => {
  it('is half as deep, 2 mm at the most', () => {
    for (const [depth, want] of [[1.5, 0.75], [4, 2], [4.2, 2], [18, 2]] as const) {
      const pen = deepPocket([-depth])
      const { program: test } = testCut(program([run(pen.done())]))
      expect(cutExtentOf(pathsOf(test!.runs)).minZ, `${depth}`).toBeCloseTo(-want, 9)
      const { comments, moves } = scan(writeProgram(test!, dialect()).text)
      expect(comments.some(c => c.startsWith('TEST CUT'))).toBe(true)
      expect(Math.min(...moves.slice(1).map(m => m.to[2]))).toBeCloseTo(-want, 2)
    }
  }) // biome-ignore format: pairs

  it('leaves out passes that would go the same way again, and no others', () => {
    const test = testCut(program([run(deepPocket([-1.5, -3, -4.5, -6]).done())])).program!
    expect(passesOf(test).map(p => p.name)).toEqual([
      'pocket, pass 1 of 4, 1.5 deep',
      'pocket, pass 2 of 4, 3 deep'
    ])
    const pen = deepPocket([-3, -6])
    const other = deepPocket([-3, -6], 60)
    const base = pen.moves.length
    pen.lift()
    const both = {
      moves: [...pen.done().moves, ...other.done().moves],
      passes: [...pen.passes, ...other.passes.map(p => ({ ...p, from: p.from + base + 1 }))]
    }
    const two = testCut(program([run(both)])).program!
    expect(passesOf(two)).toHaveLength(2)
    const { moves } = scan(writeProgram(two, dialect()).text)
    expect(moves.some(m => m.to[0] === 40 && m.to[2] < 0)).toBe(true)
  })

  it('writes for paths drawn by lot', () => {
    for (let seed = 20; seed < 40; seed++) {
      const { program: test } = testCut(program([run(drawn(seed))]))
      const { moves } = scan(writeProgram(test!, dialect()).text)
      expect(Math.min(...moves.slice(1).map(m => m.to[2]))).toBeGreaterThanOrEqual(-2.0005)
    }
  })

  it('goes to the middle of a stated scrap, at full size', () => {
    const cut = program([run(deepPocket([-3]).done())])
    const { program: test, leftOut } = testCut(cut, { x: 60, y: 60, thickness: 9 })
    expect(leftOut).toEqual([])
    const box = cutExtentOf(pathsOf(test!.runs))
    expect([box.minX, box.maxX, box.minY, box.maxY]).toEqual([-10, 10, -10, 10])
    expect(test!.stock).toMatchObject({ minX: -30, maxX: 30, minZ: -9, maxZ: 0 })
  })

  it('chooses the window with the most passes, or says what scrap it needs', () => {
    const runs = [-100, 0, 22, 44].map((x, k) =>
      run(deepPocket([-3], x).done(), {
        number: k + 1,
        parts: [{ name: `pocket ${k}`, path: deepPocket([-3], x).done(), topMm: 0 }]
      })
    )
    const cut = program(runs)
    const some = testCut(cut, { x: 102, y: 60, thickness: 9 })
    expect(some.program!.runs.map(r => r.number)).toEqual([2, 3, 4])
    expect(some.leftOut).toEqual(['pocket 0, pass 1 of 1, 3 deep'])
    // 164 of way, cutter 6, 15 of rim on either side.
    expect(some.needs).toEqual({ x: 200, y: 56, thickness: 7 })
    const none = testCut(cut, { x: 50, y: 50, thickness: 9 })
    expect(none.program).toBeNull()
    expect(none.leftOut).toHaveLength(4)
  })
})

describe('a restart', () => {
  const cut = program([run(deepPocket([-3, -6, -9]).done())])

  it('begins as every program does, at the pass that was named, and goes down into it at a feed', () => {
    const again = restart(cut, passNamed(cut, 'pass 2 of 3, 6 deep'))
    const { moves, comments, stops } = scan(writeProgram(again, dialect()).text)
    expect(stops).toBe(1)
    expect(passesOf(again).map(p => p.pass)).toEqual([0, 1])
    expect(comments.join('\n')).toMatch(/Done before: 1 passes, the last of them pocket, pass 1 of 3, 3 deep/)
    const low = moves.find(m => m.to[2] < 0)!
    expect(low.motion).toBe(1)
    expect(low.to[2]).toBe(-2.5)
    expect(low.feed).toBe(300)
    expect(low.spindle).toBe(18_000)
    // The third pass goes down fast into what this program cut.
    expect(moves.some(m => m.motion === 0 && m.to[2] === -5.5)).toBe(true)
  })

  it('is the program itself from its first pass', () => {
    const again = restart(cut, { run: 0, part: 0, pass: 0 })
    expect(again.runs[0]!.parts[0]!.path).toEqual(cut.runs[0]!.parts[0]!.path)
  })

  it('goes on with the cutters that follow', () => {
    const two = program([run(tiny()), run(tiny(), { number: 2, shape: flat(4) })])
    const again = restart(two, { run: 0, part: 0, pass: 1 })
    expect(again.runs.map(r => r.parts[0]!.path.passes.length)).toEqual([1, 2])
    expect(restart(two, { run: 1, part: 0, pass: 0 }).runs).toHaveLength(1)
  })

  it('finds a pass by number, and offers the nearest name', () => {
    expect(passNamed(cut, '3')).toMatchObject({ pass: 2 })
    expect(() => passNamed(cut, 'pocket, pass 2 of 3, 7 deep')).toThrow(
      /allowed: 1 to 3; nearest: "pocket, pass 2 of 3, 6 deep"/
    )
    expect(() => restart(cut, { run: 0, part: 0, pass: 9 })).toThrow(/no pass 10/)
  })

  it('writes from any pass of paths drawn by lot', () => {
    for (let seed = 40; seed < 50; seed++) {
      const whole = program([run(drawn(seed, 5))])
      for (const at of passesOf(whole)) {
        const { moves } = scan(writeProgram(restart(whole, at), dialect()).text)
        const meant = scan(writeProgram(whole, dialect()).text).moves
        // It ends where the whole one ends.
        expect(moves.at(-1)!.to).toEqual(meant.at(-1)!.to)
      }
    }
  })
})

describe('a name of a file', () => {
  it('is of small letters, digits and dashes, and no device', () => {
    expect(slug('Back 1: pin holes, 2 × Ø 8')).toBe('back-1-pin-holes-2-x-dia-8')
    expect(slug('Möwe')).toBe('mowe')
    expect(slug('…')).toBe('program')
    expect(slug('CON')).toBe('program-con')
    expect(slug(`${'long name '.repeat(20)} test cut`)).toMatch(/^[a-z0-9-]{40,60}-test-cut$/)
  })
})
