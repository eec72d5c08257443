import { describe, expect, it } from 'vitest'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { complaintsOf, movesOf } from './moves.ts'

const last = (text: string, options = {}) => movesOf(`G21 G90 F100\n${text}\nM2`, options).at(-1)!.slice(1)
const said = (text: string, options = {}) =>
  complaintsOf(`G21 G90 F100\n${text}\nM2`, options).map(c => c.says)
const N = Number.NaN

// NISTIR 6556: G10 L2 3.5.5, G28 3.5.8, G53 3.5.12, work systems 3.5.13, G92 3.5.18. Places are worked out by hand.
describe('zeros', () => {
  it('counted from the last place (G91), also of one axis, and back', () => {
    expect(last('G0 X1 Y2 Z3\nG91 X1 Z-1\nX1\nG90 Y5')).toEqual([3, 5, 2])
  })

  it('G92 shifts all systems; G92.1 and G92.2 take the shift away, G92.3 brings it back after G92.2', () => {
    const shift = 'G0 X10 Y0 Z0\nG92 X1\n'
    expect(last(`${shift}X5`)).toEqual([14, 0, 0])
    expect(last(`${shift}G55 X5`)).toEqual([14, 0, 0])
    expect(last(`${shift}G92.1\nX5`)).toEqual([5, 0, 0])
    expect(last(`${shift}G92.2\nX5`)).toEqual([5, 0, 0])
    expect(last(`${shift}G92.2\nX5\nG92.3\nX5`)).toEqual([14, 0, 0])
    expect(last(`${shift}G92.2\nX5\nG20 G92.3\nX1`)).toEqual([34.4, 0, 0])
    expect(last(`${shift}G92.1\nX5\nG92.3\nX5`)).toEqual([5, 0, 0])
    // A shift upon a shift: the place stays, its numbers change.
    expect(last(`${shift}X5\nG92 X0\nX1`)).toEqual([15, 0, 0])
    expect(last(`${shift}X#5211`)).toEqual([18, 0, 0])
    expect(said(shift)).toEqual([])
  })

  it('G92 where the place is not known takes it to be the zero of the setting, with a word', () => {
    expect(last('G92 X0 Y0 Z5\nG0 X1 Z2')).toEqual([1, 0, 2])
    expect(said('G92 X0 Y0 Z5\nG0 X1 Z2')).toEqual([expect.stringMatching(/wherever the cutter stands/)])
  })

  it('another work system set by the program lies where the difference of the two puts it', () => {
    const text = 'G10 L2 P1 X100 Y50 Z-20\nG10 L2 P2 X130 Y50 Z-20\nG54 G0 X0 Y0 Z0\nG55 X5'
    expect(last(text)).toEqual([35, 0, 0])
    expect(said(text)).toEqual([expect.stringMatching(/sets a zero itself/)])
    // Each of the nine by its code.
    for (const [n, code] of ['G54', 'G55', 'G56', 'G57', 'G58', 'G59', 'G59.1', 'G59.2', 'G59.3'].entries()) {
      const { motions, facts } = readProgram(
        `G21\nG10 L2 P${n === 0 ? 2 : 1} X1000\nG10 L2 P${n + 1} X1007\n${code} G0 X0 Y0 Z0\nM2`
      )
      expect([code, motions.x[0]]).toEqual([code, 7])
      expect(facts.systems).toEqual([n + 1])
    }
  })

  it('another work system whose zero is not set is taken to lie in the same place, with a word', () => {
    expect(last('G54 G0 X1 Y1 Z1\nG55 X5')).toEqual([5, 1, 1])
    expect(said('G54 G0 X1 Y1 Z1\nG55 X5')).toEqual([expect.stringMatching(/another work system/)])
    expect(said('G55 G0 X1 Y1 Z1\nX5')).toEqual([])
  })

  it('G53 and G28 go to a place not known, unless the machine zero is given', () => {
    expect(last('G0 X1 Y2 Z3\nG53 G0 Z0')).toEqual([1, 2, N])
    expect(last('G0 X1 Y2 Z3\nG28 Z9')).toEqual([N, N, N])
    expect(said('G0 X1 Y2 Z3\nG53 G0 Z0\nG28')).toEqual([expect.stringMatching(/machine's own zero/)])
    const machine = { machineZero: { x: -100, y: -50, z: 80 } }
    expect(last('G0 X1 Y2 Z3\nG91 G53 G0 Z-2', machine)).toEqual([1, 2, 78])
    expect(said('G0 X1 Y2 Z3\nG53 G0 Z0', machine)).toEqual([])
    // By the programmed place, then home: where the parameters of the control say.
    const home = { ...machine, parameters: { 5161: 1, 5162: 2, 5163: 0, 5181: 9, 5182: 9, 5183: 9 } }
    const text = 'G21 G90\nG0 X1 Y2 Z3\nG91 G28 Z4\nM2'
    expect(movesOf(text, home).slice(1)).toEqual([
      ['rapid', 1, 2, 7],
      ['rapid', -99, -48, 80]
    ])
    expect(last('G0 X1 Y2 Z3\nG30', home)).toEqual([-91, -41, 89])
  })

  it('a probe leaves the axes it moved unknown until they have a place again', () => {
    const text = 'G0 X1 Y2 Z3\nG38.2 Z-9 F50\nG0 X5\nZ3'
    expect(movesOf(`G21\n${text}\nM2`)).toEqual([
      ['rapid', 1, 2, 3],
      ['line', 1, 2, N],
      ['rapid', 5, 2, N],
      ['rapid', 5, 2, 3]
    ])
    expect(readProgram(`G21\n${text}\nM2`).facts.unplaced).toBe(2)
    expect(said(`${text}\nX#5061`).at(-1)).toMatch(/where a probe touched/)
  })

  it('the start is not known until every axis has a place; an arc cannot start there', () => {
    expect(movesOf('G21\nG0 Z5\nX1\nY1\nM2')[1]).toEqual(['rapid', 1, N, 5])
    expect(said('G0 X1 Y1\nG2 X2 R5')).toEqual([expect.stringMatching(/starts at a place that is not known/)])
    expect(said('G0 X1 Y1\nG98 G81 X2 Z-1 R1')).toEqual([expect.stringMatching(/height that is not known/)])
    expect(said('G0 X900000 Y1 Z1\nG91 X900000')).toEqual([expect.stringMatching(/too far away/)])
  })
})

// NISTIR 6556, table 8, each step against the one that must come after it.
describe('order of execution', () => {
  const motions = (text: string) => readProgram(text).motions

  it('feed mode before F: G94 F on one line after inverse time', () => {
    expect(motions('G21 G93\nG0 X0 Y0 Z0\nG1 X10 F2\nF300 G94 X20\nM2').feed[2]).toBe(300)
  })

  it('T before M6 before M3: the new cutter turns', () => {
    const m = motions('G21 M3 S100\nG0 X0 Y0 Z0\nM3 M6 T7 S200 X1\nM2')
    expect([m.tool[1], m.spindle[1], m.tool[2], m.spindle[2]]).toEqual([7, 0, 7, 200])
  })

  it('a dwell before the move of its line, stops after it', () => {
    expect(movesOf('G21\nG0 X0 Y0 Z0\nM0 X1 G4 P2\nM2')).toEqual([
      ['rapid', 0, 0, 0],
      ['dwell', 2],
      ['rapid', 1, 0, 0],
      ['stop']
    ])
  })

  it('plane, units and distance before the move; spindle and length offset too', () => {
    const m = motions('G21 F100\nG0 X0 Y0 Z0\nX1 G91 G20\nX1 G43 H3 M4 S50\nG18 G3 X1 K2 I0.5 Z0\nM2')
    expect([m.x[1], m.x[2], m.offset[1], m.offset[2], m.spindle[2], m.plane[3]]).toEqual([
      25.4, 50.8, 0, 3, -50, 18
    ])
  })

  it('the shift before the move of the same line is an error, the stop at the end makes nothing after it', () => {
    expect(complaintsOf('G21\nG0 X0 Y0 Z0\nG92 X5 G0\nM2')).toHaveLength(1)
    expect(movesOf('G21\nM2 G0 X1 Y1 Z1\nX9\n')).toEqual([['rapid', 1, 1, 1]])
  })
})
