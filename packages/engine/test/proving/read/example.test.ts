import { describe, expect, it } from 'vitest'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { complaintsOf, movesOf } from './moves.ts'

// The worked examples of NIST RS274/NGC version 3 (NISTIR 6556); section numbers in the names. "memory" where the
// wording of the example was recalled and not read again.
describe("the standard's worked examples", () => {
  it('3.3.2.1: spaces inside numbers mean nothing: "g0x +0. 12 34y 7" is x 0.1234 y 7 (memory)', () => {
    expect(movesOf('G21 G0 Z0\ng0x +0. 12 34y 7\nM2')[1]).toEqual(['rapid', 0.1234, 7, 0])
  })

  it('3.3.2.2: a parameter set on a line acts after all values of the line are read', () => {
    const text = 'G21 G0 Y0 Z0\n#3=15\n#3=6 G1 X#3 F100\nX#3\nM2'
    expect(movesOf(text).slice(1)).toEqual([
      ['line', 15, 0, 0],
      ['line', 6, 0, 0]
    ])
  })

  it('3.3.2.3: [1 + acos[0] - [#3 ** [4.0/2]]] (memory) with #3 = 5 is 1 + 90 - 25', () => {
    expect(movesOf('G21 G0 Y0 Z0\n#3=5\nX[1 + acos[0] - [#3 ** [4.0/2]]]\nM2')[1]).toEqual([
      'rapid',
      66,
      0,
      0
    ])
  })

  it('3.3.2.4: [2.0 / 3 * 1.5 - 5.5 / 11.0] is 0.5 (memory)', () => {
    expect(movesOf('G21 G0 Y0 Z0\nX[2.0 / 3 * 1.5 - 5.5 / 11.0]\nM2')[1]).toEqual(['rapid', 0.5, 0, 0])
  })

  it('3.5.3.2: from (7, 7), G17 G2 X10 Y16 I3 J4 Z9: about (10, 11), rising to 9', () => {
    expect(movesOf('G21 F100\nG0 X7 Y7 Z0\nG17 G2 X10 Y16 I3 J4 Z9\nM2')[1]).toEqual([
      'clockwise',
      10,
      16,
      9,
      10,
      11
    ])
  })

  it('3.5.3.1: G17 G2 X10 Y15 R20 Z5 (memory) is a clockwise arc of radius 20, of at most half a turn', () => {
    const arc = movesOf('G21 F100\nG0 X0 Y0 Z0\nG17 G2 X10 Y15 R20 Z5\nM2')[1]!
    const [cx, cy] = [arc[4] as number, arc[5] as number]
    expect(Math.hypot(cx, cy)).toBeCloseTo(20, 8)
    expect(Math.hypot(cx - 10, cy - 15)).toBeCloseTo(20, 8)
    // Clockwise and short: the middle lies to the right of the way.
    expect(10 * cy - 15 * cx).toBeLessThan(0)
  })

  it('3.5.16: at (1, 2, 3), G90 G81 G98 X4 Y5 Z1.5 R2.8', () => {
    const text = 'G21 F100\nG0 X1 Y2 Z3\nG90 G81 G98 X4 Y5 Z1.5 R2.8\nM2'
    expect(movesOf(text).slice(1)).toEqual([
      ['rapid', 4, 5, 3],
      ['rapid', 4, 5, 2.8],
      ['line', 4, 5, 1.5],
      ['rapid', 4, 5, 3]
    ])
  })

  it('3.5.16: at (1, 2, 3), G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3: three holes, 4.2 deep from 4.8 (memory)', () => {
    const text = 'G21 F100\nG0 X1 Y2 Z3\nG91 G81 G98 X4 Y5 Z-0.6 R1.8 L3\nM2'
    expect(movesOf(text).slice(1)).toEqual([
      ['rapid', 1, 2, 4.8],
      ...[1, 2, 3].flatMap(n => [
        ['rapid', 1 + 4 * n, 2 + 5 * n, 4.8],
        ['line', 1 + 4 * n, 2 + 5 * n, 4.2],
        ['rapid', 1 + 4 * n, 2 + 5 * n, 4.8]
      ])
    ])
  })

  it('3.3.6: the order of the words on a line means nothing, the order of table 8 does', () => {
    const a = 'G21 G90 G94\nT3 M6\nG0 X0 Y0 Z5\nG1 X10 F600 M3 S12000\nM2'
    const b = 'G94 G90 G21\nM6 T3\nZ5 Y0 X0 G0\nS12000 M3 F600 X10 G1\nM2'
    expect(readProgram(a)).toEqual(readProgram(b))
    const { motions } = readProgram(a)
    // The spindle turns and the feed holds before the move of the same line is made.
    expect([motions.feed[2], motions.spindle[2], motions.tool[2]]).toEqual([600, 12000, 3])
  })

  it('3.3.4: a message is shown, of two comments on a line the last counts', () => {
    const { facts } = readProgram('(one) (MSG, turn the piece over)\n(two)\n(three) (four)\nM2')
    expect(facts.messages).toEqual([{ line: 1, text: 'turn the piece over' }])
    expect(facts.header).toEqual(['two', 'four'])
  })

  it('says nothing about any of them', () => {
    const text =
      '%\nN10 G21 G17 G90 G94 G54 G80 G49 G40 G64\nN20 T1 M6\nG43 H1\nN30 S18000 M3\nG0 X7 Y7 Z5\nG1 Z0 F300\nG2 X10 Y16 I3 J4\nG0 Z5\nM9 M5\nM2\n%\n'
    expect(complaintsOf(text)).toEqual([])
    expect(readProgram(text).complaints).toEqual([])
  })
})
