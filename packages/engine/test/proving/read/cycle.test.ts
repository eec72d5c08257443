import { describe, expect, it } from 'vitest'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { complaintsOf, type Made, movesOf } from './moves.ts'

// Rules: NISTIR 6556, 3.5.16 and its sections; the moves are written out by hand from them.
const START = 'G21 F100 S900 M3\nG0 X0 Y0 Z9\n'
const after = (line: string): readonly Made[] => movesOf(`${START}${line}\nM2`).slice(1)
/** The spindle at each move. */
const spindles = (line: string): number[] => [...readProgram(`${START}${line}\nM2`).motions.spindle].slice(1)

describe('cycles', () => {
  it('G98 goes back to the height before, G99 to the retract plane', () => {
    const down: Made[] = [
      ['rapid', 1, 2, 9],
      ['rapid', 1, 2, 3],
      ['line', 1, 2, -4]
    ]
    expect(after('G98 G81 X1 Y2 Z-4 R3')).toEqual([...down, ['rapid', 1, 2, 9]])
    expect(after('G99 G81 X1 Y2 Z-4 R3')).toEqual([...down, ['rapid', 1, 2, 3]])
    // A start below the retract plane is raised to it first, and G98 then means that height.
    expect(after('G98 G81 X1 Y2 Z-4 R12')).toEqual([
      ['rapid', 0, 0, 12],
      ['rapid', 1, 2, 12],
      ['line', 1, 2, -4],
      ['rapid', 1, 2, 12]
    ])
  })

  it('R and the depth hold on for the same cycle, L does not, another cycle wants its own', () => {
    expect(after('G99 G81 X1 Y2 Z-4 R3\nX5\nX6 Z-5').slice(4)).toEqual([
      ['rapid', 5, 2, 3],
      ['line', 5, 2, -4],
      ['rapid', 5, 2, 3],
      ['rapid', 6, 2, 3],
      ['line', 6, 2, -5],
      ['rapid', 6, 2, 3]
    ])
    expect(complaintsOf(`${START}G81 X1 Z-4 R3\nG85 X2\nM2`)).toHaveLength(1)
    expect(complaintsOf(`${START}G81 X1 Z-4 R3\nG80\nX2\nM2`)[0]!.says).toMatch(/no motion is in force/)
    // Counted in G91, R is from the height of its own line: the second line goes down by three more.
    expect(after('G91 G99 G81 X1 Z-4 R-3 L2\nX1').map(m => m[3])).toEqual([9, 6, 2, 6, 6, 2, 6, 6, 3, -1, 3])
  })

  it('G82 waits at the depth, G85 and G89 come out at the feed', () => {
    expect(after('G99 G82 X1 Z-4 R3 P1.5').slice(2)).toEqual([
      ['line', 1, 0, -4],
      ['dwell', 1.5],
      ['rapid', 1, 0, 3]
    ])
    expect(after('G98 G85 X1 Z-4 R3').slice(2)).toEqual([
      ['line', 1, 0, -4],
      ['line', 1, 0, 3],
      ['rapid', 1, 0, 9]
    ])
    expect(after('G98 G89 X1 Z-4 R3 P2').slice(2)).toEqual([
      ['line', 1, 0, -4],
      ['dwell', 2],
      ['line', 1, 0, 3],
      ['rapid', 1, 0, 9]
    ])
  })

  it('G83 goes down by Q, out, and back to 0.254 mm above where it was (memory)', () => {
    expect(after('G99 G83 X1 Z-4 R1 Q2').slice(1)).toEqual([
      ['rapid', 1, 0, 1],
      ['line', 1, 0, -1],
      ['rapid', 1, 0, 1],
      ['rapid', 1, 0, -0.746],
      ['line', 1, 0, -3],
      ['rapid', 1, 0, 1],
      ['rapid', 1, 0, -2.746],
      ['line', 1, 0, -4],
      ['rapid', 1, 0, 1]
    ])
    // Whole pecks end at the depth, with no empty one after them.
    expect(after('G99 G83 X1 Z-3 R1 Q2').filter(m => m[0] === 'line')).toHaveLength(2)
  })

  it('G84 turns the tap out again, G86 and G88 come out with the spindle off, G88 waits for the operator', () => {
    expect(after('G99 G84 X1 Z-4 R3').slice(2)).toEqual([
      ['line', 1, 0, -4],
      ['line', 1, 0, 3]
    ])
    expect(spindles('G99 G84 X1 Z-4 R3\nG0 Z9').slice(2)).toEqual([900, -900, 900])
    expect(spindles('G99 G86 X1 Z-4 R3 P1\nG0 Z9').slice(2)).toEqual([900, 900, 0, 900])
    expect(after('G99 G88 X1 Z-4 R3 P1').slice(2)).toEqual([
      ['line', 1, 0, -4],
      ['dwell', 1],
      ['stop'],
      ['rapid', 1, 0, 3]
    ])
  })

  it('G87 passes beside the middle with the spindle held and bores from below', () => {
    const line = 'G98 G87 X1 Y2 Z-9 R3 I0.5 J0 K-2'
    expect(after(line)).toEqual([
      ['rapid', 1, 2, 9],
      ['rapid', 1.5, 2, 9],
      ['rapid', 1.5, 2, -9],
      ['rapid', 1, 2, -9],
      ['line', 1, 2, -2],
      ['line', 1, 2, -9],
      ['rapid', 1.5, 2, -9],
      ['rapid', 1.5, 2, 9],
      ['rapid', 1, 2, 9]
    ])
    expect(spindles(line)).toEqual([900, 0, 0, 0, 900, 900, 0, 0, 0])
  })

  // The same program with its letters turned round, x to y, y to z, z to x, must make the same moves turned round.
  it.each([
    'G98 G81 X1 Y2 Z-4 R3',
    'G91 G99 G82 X1 Y2 Z-4 R-3 L3 P1',
    'G99 G83 X3 Y1 Z-4 R1 Q0.7',
    'G98 G85 X1 Y2 Z-4 R12\nX4\nY7',
    'G98 G87 X1 Y2 Z-9 R3 I0.5 J0.25 K-2',
    'G2 X5 Y3 I4 J-3 Z2',
    'G3 X5 Y3 R7'
  ])('in the other planes: %s', line => {
    const text = `G17 G21 F100 S900 M3\nG0 X0 Y0 Z9\n${/G[23] /.test(line) ? line.replace(/I4 J-3/, 'I2.5 J1.5') : line}\nM2`
    const turned: Readonly<Record<string, string>> = { X: 'Y', Y: 'Z', Z: 'X', I: 'J', J: 'K', K: 'I' }
    let program = text
    let expected = movesOf(text)
    expect(expected.length).toBeGreaterThan(1)
    for (const plane of [19, 18]) {
      program = program.replace(/[XYZIJK]/g, c => turned[c]!).replace(/G1[789]/, `G${plane}`)
      expected = expected.map(m =>
        m.length < 4 ? m : ([m[0], m[3], m[1], m[2], ...m.slice(4)] as unknown as Made)
      )
      const made = movesOf(program)
      expect(made.map(m => m.slice(0, 4))).toEqual(expected.map(m => m.slice(0, 4)))
      // The middle of an arc stands along the first and second axis: x y, y z, z x.
      expect(made.map(m => m.slice(4))).toEqual(expected.map(m => m.slice(4)))
    }
  })
})
