import { describe, expect, it } from 'vitest'
import { gapsOf } from '../../../src/proving/read/gaps.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { PROGRAMS } from './mutation.ts'

const factsOf = (text: string, options = {}) => readProgram(text, options).facts

describe('facts of a program', () => {
  it('units, cutters, offsets and work systems, each once and in order', () => {
    const text =
      '(a) (b)\nG20\nT3 M6\nG43 H3\nM3 S9000\nG0 X0 Y0 Z1\nG1 Z0 F9\nG21\nT1 M6\nG43 H11\nM4 S90\nG55 G1 X1 F90\nT3 M6\n(late)\nG54 G0 X9\nM30\n'
    expect(factsOf(text)).toMatchObject({
      lines: 16,
      units: ['inch', 'mm'],
      unitsStated: true,
      cutters: [3, 1],
      offsets: [3, 11],
      systems: [1, 2],
      endLine: 16,
      firstCutLine: 7,
      spindleOnAtFirstCut: true,
      compensated: false,
      header: ['b'],
      stopped: null
    })
  })

  it('the spindle at the first cut: off, without a speed, after a change of cutter', () => {
    const on = (start: string) => factsOf(`G21 F9 ${start}\nG0 X0 Y0 Z0\nG1 X1\nM2`).spindleOnAtFirstCut
    expect(on('M3 S900')).toBe(true)
    expect(on('M4 S900')).toBe(true)
    expect(on('S900')).toBe(false)
    expect(on('M3')).toBe(false)
    expect(on('M3 S900\nM5')).toBe(false)
    expect(on('M3 S900\nT1 M6')).toBe(false)
    expect(factsOf('G21\nG0 X0 Y0 Z0\nM2').firstCutLine).toBe(0)
  })

  it('units and work system that change between plain lines are not missed', () => {
    const start = 'G21 F9 M3 S9\nG0 X0 Y0 Z0\nG1 X1\nX2\nX3\n'
    expect(factsOf(`${start}G20\nX1\nM2`).units).toEqual(['mm', 'inch'])
    expect(factsOf(`${start}G56\nX1\nM2`).systems).toEqual([1, 3])
    expect(factsOf('G0 X1 Y1 Z1\nG21\nM2').unitsStated).toBe(false)
  })

  it('at most 60 comments of the header and 200 messages', () => {
    const facts = factsOf(`${'(note)\n'.repeat(100)}${'(MSG, look)\n'.repeat(300)}G21\nM2`)
    expect([facts.header.length, facts.messages.length]).toEqual([60, 200])
  })

  it('a sound program cut short at any character is told of', () => {
    for (const text of PROGRAMS) {
      // Up to and with the "M" of its last code.
      const end = Math.max(text.lastIndexOf('M2'), text.lastIndexOf('M30')) + 1
      for (let k = 0; k <= end; k++) {
        const { complaints } = readProgram(text.slice(0, k))
        expect(
          complaints.some(c => /cut short/.test(c.says)),
          `at ${k} of ${text.slice(0, 20)}`
        ).toBe(true)
      }
    }
  })

  it('the cutter that is in when the program starts is taken from beside it', () => {
    const { motions } = readProgram('G21\nG0 X0 Y0 Z0\nT2 M6\nX1\nM2', { tool: 7 })
    expect([...motions.tool]).toEqual([7, 2, 2])
  })
})

describe('what of a program is not proved', () => {
  const gaps = (text: string, options = {}) => gapsOf(factsOf(text, options))
  const SOUND = 'G21 F9 M3 S9\nG0 Z5\nX0 Y0\nG1 Z-1\n'

  it('nothing, when all is read and every place is known', () => {
    expect(gaps(`${SOUND}M2`)).toEqual([])
    // Home before the first place, as many programs begin, keeps nothing from being proved.
    expect(gaps(`G21 F9\nG91 G28 Z0\nG90\n${SOUND}M2`)).toEqual([])
  })

  it.each([
    [`${SOUND}G1 X1 W2\nM2`, /^1 line has an error/],
    [`${SOUND}G1 X1 W2\nG77\nM2`, /^2 lines have errors/],
    [SOUND, /never says that it ends/],
    [`${SOUND}G41 D1\nX5\nG40\nM2`, /step aside/],
    [`${SOUND}G53 G0 Z0\nM2`, /^1 move goes to a place/],
    ['G21 F9\nG91\nG1 X1 Y1\nZ1\nM2', /^2 moves go to a place/],
    ['F9\nG0 X0 Y0 Z5\nM2', /does not say its units/]
  ])('%j', (text, says) => {
    expect(gaps(text)).toEqual([expect.stringMatching(says)])
  })

  it('what comes after the last line that is read', () => {
    expect(gaps(`${SOUND}M2`, { mostLines: 3 })).toEqual([expect.stringMatching(/stopped before the end/)])
  })
})
