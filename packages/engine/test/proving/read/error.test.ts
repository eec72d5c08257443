import { describe, expect, it } from 'vitest'
import { complaintText } from '../../../src/proving/read/complaint.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { complaintsOf, movesOf } from './moves.ts'

// Each row: a line put after a sound beginning, the column of the fault, and what is said. The rules: NISTIR 6556.
const BEFORE = 'G21 G90 G94 F500\nG0 X1 Y1 Z5\n'
const ROWS: readonly (readonly [line: string, column: number, says: RegExp])[] = [
  // Lines and words, 3.3.
  ['N123456 G1 X5', 1, /line number/],
  ['N-5 G1 X5', 1, /line number/],
  ['N1.5 G1 X5', 1, /line number/],
  ['G1 N10 X5', 4, /line number must be the first/],
  [`G1 X5 (${'-'.repeat(260)})`, 257, /too long/],
  ['G1 X5 /', 7, /a word should begin/],
  ['G1 X5 \u0007', 7, /a word should begin/],
  ['G1 X5 é', 7, /a word should begin/],
  ['G1 W5', 4, /No word of the standard begins with W/],
  ['G1 X5 E3', 7, /No word of the standard begins with E/],
  ['o100 while [1]', 1, /No word of the standard begins with O/],
  ['% G1', 3, /tape mark/],
  // Numbers, 3.3.2.1.
  ['G1 X', 5, /number is missing/],
  ['G1 X-', 5, /number is missing/],
  ['G1 X.', 5, /number is missing/],
  ['G1 X1e3', 6, /No word of the standard begins with E/],
  ['G1 X1.2.3', 8, /two points/],
  ['G1 X--5', 5, /number is missing/],
  ['G1 X10000000', 4, /too large/],
  [`G1 X${'9'.repeat(200)}`, 4, /too large/],
  // Parameters and expressions, 3.3.2.2 to 3.3.2.4.
  ['G1 X#0', 5, /no parameter of that number/],
  ['G1 X#5400', 5, /no parameter of that number/],
  ['G1 X#1.5', 5, /no parameter of that number/],
  ['G1 X#7', 5, /before the program sets it/],
  ['#5221=3', 1, /zero is moved by writing/],
  ['#7 G1 X5', 4, /no value to set/],
  ['G1 X[1/0]', 7, /divides by zero/],
  ['G1 X[5 MOD 0]', 8, /divides by zero/],
  ['G1 X[1', 5, /never closed/],
  ['G1 X[1 ? 2]', 8, /operator or a closing bracket/],
  ['G1 X[]', 6, /number is missing/],
  ['G1 X5]', 6, /closed that was never opened/],
  ['G1 X-[5]', 5, /sign stands before/],
  ['G1 X-#1', 5, /sign stands before/],
  [`G1 X${'['.repeat(65)}1${']'.repeat(65)}`, 69, /within each other/],
  ['G1 XSQRT[-1]', 5, /SQRT has no value/],
  ['G1 XLN[0]', 5, /LN has no value/],
  ['G1 XASIN[1.1]', 5, /ASIN has no value/],
  ['G1 XACOS[-2]', 5, /ACOS has no value/],
  ['G1 X[[0-2]**0.5]', 11, /no such power/],
  ['G1 XEXP[9999]', 5, /no number that can be used/],
  ['G1 XATAN[1]', 12, /two values/],
  ['G1 XATAN[1]/2', 13, /bracket is missing after ATAN/],
  ['G1 XSIN 30', 9, /bracket is missing after SIN/],
  ['G1 XSINE[30]', 8, /bracket is missing after SIN/],
  ['G1 XSQR[4]', 5, /no function has that name/],
  // Comments, 3.3.4.
  ['(a (b) G1 X5', 4, /inside a comment/],
  ['G1 X5 (never closed', 7, /not closed/],
  ['G1 X5 )', 7, /closed that was never opened/],
  // Repeats and modal groups, 3.3.5 and table 4.
  ['G1 X5 X6', 7, /two X words/],
  ['G0 G1 X5', 4, /one group/],
  ['G90 G91', 5, /one group/],
  ['G20 G21', 5, /one group/],
  ['G4 G92 P1 X0', 4, /one group/],
  ['M3 M5', 4, /one group/],
  ['M7 M8', 4, /one group/],
  ['M3 M6 M8 M48 M0', 14, /too many M words/],
  ['G77', 1, /not in the standard/],
  ['G1.05 X5', 1, /not in the standard/],
  ['G95 F1', 1, /feed per turn/],
  ['M98', 1, /not in the standard/],
  ['M3.5', 1, /not in the standard/],
  ['G92 G1 X5', 5, /both want/],
  ['G28 G0 X5', 5, /both want/],
  // Words that nothing uses, and their ranges.
  ['G1 X5 P2', 7, /makes use of/],
  ['G1 X5 Q2', 7, /makes use of/],
  ['G1 X5 R2', 7, /makes use of/],
  ['G1 X5 L2', 7, /makes use of/],
  ['G1 X5 H2', 7, /makes use of/],
  ['G1 X5 D2', 7, /makes use of/],
  ['G1 X5 I2', 7, /makes use of/],
  ['F-100', 1, /below 0/],
  ['S-100', 1, /below 0/],
  ['T-1', 1, /whole/],
  ['T1.5', 1, /whole/],
  ['T70000', 1, /whole/],
  ['G43', 1, /which length offset/],
  ['G43 H-1', 5, /whole/],
  ['G4', 1, /how long to wait/],
  ['G4 P-1', 4, /below 0/],
  ['G1 X5 A90', 7, /rotary/],
  // Motion, 3.5.
  ['G1', 1, /goes nowhere/],
  ['G0 F100', 1, /goes nowhere/],
  ['G80 X5', 5, /no motion is in force/],
  ['G53 G2 X5 I2', 1, /straight move only/],
  ['G53', 1, /straight move only/],
  ['G10 P1 X0', 1, /known with L2 only/],
  ['G10 L20 P1 X0', 5, /known with L2 only/],
  ['G10 L2 X0', 1, /which work system/],
  ['G10 L2 P10 X0', 8, /which work system/],
  ['G10 L2 P1', 1, /sets nothing/],
  ['G92', 1, /shifts nothing/],
  ['G92.3', 1, /before the program sets it/],
  ['G38.2 X1 Y1 Z4.9', 1, /too little way/],
  ['G38.2', 1, /goes nowhere/],
  // Arcs, 3.5.3.
  ['G2 Z3 I1', 1, /no end in its plane/],
  ['G2 X5', 1, /neither a radius nor a middle/],
  ['G2 X5 I2 R2', 10, /both by its radius and by its middle/],
  ['G2 X5 I2 K1', 10, /does not lie in its plane/],
  ['G18 G2 X5 I2 J1', 14, /does not lie in its plane/],
  ['G2 X5 I2.1', 7, /equally far/],
  ['G2 X1 Y1 R5', 10, /ends where it starts/],
  ['G2 X5 R1.9', 7, /too small/],
  ['G2 X1 Y1 I0', 10, /no radius/],
  // Inverse time, 3.5.19.
  ['G93 G1 X5', 5, /every cut wants its own feed/],
  ['G93 G1 X5 F0', 11, /every cut wants its own feed/],
  // Cycles, 3.5.16.
  ['G81 R2', 5, /no place to go/],
  ['G81 X1 R2', 8, /no depth/],
  ['G81 X1 Z0', 1, /no retract plane/],
  ['G81 X1 Z3 R2', 11, /below the depth/],
  ['G81 X1 Z0 R2 L0', 14, /so many times/],
  ['G81 X1 Z0 R2 L1.5', 14, /so many times/],
  ['G81 X1 Z0 R2 L-1', 14, /so many times/],
  ['G82 X1 Z0 R2', 11, /how long to wait/],
  ['G83 X1 Z0 R2', 11, /how deep one peck/],
  ['G83 X1 Z0 R2 Q0', 11, /how deep one peck/],
  ['G83 X1 Z0 R2 Q0.00001', 11, /more moves/],
  ['G84 X1 Z0 R2', 11, /turning clockwise/],
  ['G86 X1 Z0 R2 P1', 11, /spindle turning/],
  ['M3 S9 G87 X1 Z0 R2 I1', 17, /pass through the hole/],
  ['G93 G81 X1 Z0 R2 F3', 15, /inverse time/],
  ['G41 D1 G81 X1 Z0 R2', 18, /compensated/],
  ['G41 D1 G28 X1', 8, /compensated/],
  ['G41 D1 G53 G0 X1', 8, /compensated/],
  ['G18 G41 D1', 5, /plane of X and Y only/],
  ['G91 G1 X900000 Y900000 Z900000 X1', 32, /two X words/]
]

describe('a line that breaks a rule', () => {
  for (const [line, column, says] of ROWS) {
    it(`${line.slice(0, 40)} is told of at column ${column}`, () => {
      const text = `${BEFORE}${line}\nG94 F500 G1 X9 Y9 Z9\nM2\n`
      const errors = complaintsOf(text).filter(c => c.severity === 'error')
      expect(errors.map(complaintText)).toHaveLength(1)
      expect(errors[0]).toMatchObject({ line: 3, column })
      expect(errors[0]!.says).toMatch(says)
      expect(errors[0]!.says).toMatch(/Nothing on this line is done\.|The move of this line is not made\./)
      expect(errors[0]!.found).not.toBe('')
      expect(errors[0]!.allowed).not.toBe('')
      // Its move is not made, and the reading goes on.
      const moves = movesOf(text)
      expect(moves[0]).toEqual(['rapid', 1, 1, 5])
      expect(moves.at(-1)![0]).toMatch(/line|rapid/)
      expect(readProgram(text).facts.leftOut).toBe(1)
    })
  }
})

describe('what is said once, or of the whole', () => {
  const severities = (text: string) => complaintsOf(text).map(c => [c.severity, c.line, c.column])

  it('a cut with no feed is an error, and its move is kept for the sweep to judge', () => {
    const text = 'G21\nG0 X0 Y0 Z0\nG1 X5\nX6\nM2'
    expect(severities(text)).toEqual([['error', 3, 4]])
    expect(movesOf(text)).toHaveLength(3)
  })

  it('units that are not stated, G70 and G71, compensation, ";", "/" and an O word', () => {
    expect(severities('G0 X1 Y1 Z1\nX2\nM2')).toEqual([['warning', 1, 1]])
    expect(severities('G71 F100\nG0 X1 Y1 Z1\nG70\nM2')).toEqual([['warning', 1, 1]])
    expect(movesOf('G70\nG0 X1 Y0 Z0\nM2')).toEqual([['rapid', 25.4, 0, 0]])
    expect(severities('G21 G41 D1\nG40\nG42 D1\nM2')).toEqual([['warning', 1, 5]])
    expect(severities('G21 ; mm\n; again\nM2')).toEqual([['warning', 1, 5]])
    expect(severities('/G21\n/G0 X1 Y1 Z1\nM2')).toEqual([['note', 1, 1]])
    expect(movesOf('G21\n/G0 X1 Y1 Z1\nM2', { skipDeleted: true })).toEqual([])
    expect(severities('%\nO1000\nM2\n%')).toEqual([['warning', 2, 1]])
  })

  it('a feed on a line that changes the units counts in the units before, as table 8 has it', () => {
    expect(severities('G21\nG20 F10\nG0 X0 Y0 Z0\nG1 X1\nM2')).toEqual([['warning', 2, 5]])
    expect(readProgram('G21\nG20 F10\nG0 X0 Y0 Z0\nG1 X1\nM2').motions.feed[1]).toBe(10)
    expect(readProgram('G20 F10\nG0 X0 Y0 Z0\nG1 X1\nM2').motions.feed[1]).toBe(254)
  })

  it('a fault of a motion that stands on a line before is told of where its place begins', () => {
    const of = (text: string) => complaintsOf(`${BEFORE}${text}\nM2`).map(c => [c.line, c.column])
    expect(of('G2 X3 I1\nN40 X9')).toEqual([[4, 5]])
    expect(of('G2 X3 I1\nN40 X9 R1')).toEqual([[4, 8]])
    expect(of('G41 D1\nG0 X3\nG40 G81 X1 Z0 R2\nG41 D1\n  X4')).toEqual([
      [3, 1],
      [7, 3]
    ])
  })

  it('plane, units and work system may not change while the radius is compensated', () => {
    for (const code of ['G18', 'G20', 'G55'])
      expect(
        complaintsOf(`${BEFORE}G41 D1\nX2 ${code}\nG40\nM2`).map(c => [c.severity, c.line, c.column])
      ).toEqual([
        ['warning', 3, 1],
        ['error', 4, 4]
      ])
  })

  it('a program cut short, an empty one, and what stands after the end', () => {
    const of = (text: string) => readProgram(text).complaints.map(c => c.says)
    expect(of('G21\nG0 X1 Y1 Z1\n')).toEqual([expect.stringMatching(/cut short/)])
    expect(of('')).toEqual([expect.stringMatching(/cut short/)])
    expect(of('G21\nM30\nG0 X1\n')).toEqual([expect.stringMatching(/after the end/)])
    expect(of('%\nG21\n%\n')).toEqual([])
    expect(readProgram('%\nG21\n%\n').facts.endLine).toBe(3)
    expect(readProgram('G21\nM30\n\n').facts.endLine).toBe(2)
    expect(of('G21\nT2\nG0 X1 Y1 Z1\nM2')).toEqual([expect.stringMatching(/never changes to it/)])
  })

  it('keeps 200 complaints and counts them all', () => {
    const r = readProgram('G77\n'.repeat(1000))
    expect(r.complaints).toHaveLength(200)
    expect([r.facts.errors, r.facts.leftOut]).toEqual([1000, 1000])
  })

  it('a complaint reads as a sentence with its place', () => {
    expect(complaintText(complaintsOf(`${BEFORE}G1 X[1/0]`)[0]!)).toBe(
      'line 3, column 7: This divides by zero. Nothing on this line is done. Found: 1 / 0. Allowed: a divisor other than 0.'
    )
  })
})
