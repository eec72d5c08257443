import { join } from 'node:path'
import { surelyPlanned } from '@castwright/engine'
import { describe, expect, it } from 'vitest'
import { load } from '../src/load.ts'
import { answer } from '../src/main.ts'
import { testFolder } from './folder.ts'

const { put } = testFolder()
const PIECE = join(import.meta.dirname, '../../../examples/saltmarsh-panel.piece.json')
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']
/** Steps by what they say: their numbers change with the example. */
const stepThat = (says: string): string => {
  const { input } = load({ piece: PIECE, shop: undefined, readings: undefined })
  const { work } = surelyPlanned(input, { asOf: AS_OF[1]!, effort: 'preview' })
  return String(work.steps.find(s => s.says.toLowerCase().includes(says))!.number)
}
const prove = (text: string, ...more: string[]) =>
  answer(['prove', PIECE, put('some.ngc', text), '--cell', '1', ...more, ...AS_OF])

describe('prove', () => {
  it('wants a step, and names those there are', () => {
    const { err, code } = prove('M2\n')
    expect(code).toBe(2)
    expect(err).toMatch(/found no --step; allowed: the number of a step/)
  })

  it('tells of errors with line and column, of what was not proved, and ends with 1', () => {
    const step = stepThat('cable hole')
    const { out, code } = prove('G21 F9 T1 M6\nG0 X0 Y0 Z50\nG73 X1\nG53 G0 Z0\n', '--step', step, '--free')
    expect(code).toBe(1)
    expect(out).toContain('line 3, column 1: This G code is not in the standard.')
    expect(out).toContain('In what was swept nothing is met but what is to be cut.')
    expect(out).toMatch(/Not proved:\n- 1 line has an error/)
    expect(out).toContain('- 1 move goes to a place that is known at the machine only')
    expect(out).toContain('- The program never says that it ends')
  })

  it('a cutter that is not said is a stop, with no place where none is known', () => {
    const { out, code } = prove('G21\nG0 X0 Y0 Z50\nM2\n', '--step', stepThat('cable hole'), '--free')
    expect(code).toBe(1)
    expect(out.replace(/\s+/g, ' ')).toContain('stop some.ngc, line 2, moves while no cutter is named')
    expect(out).not.toContain('NaN')
  })

  it('a file with nothing in it is no program', () => {
    for (const text of ['', '\n \n']) {
      const { err, code } = prove(text, '--step', stepThat('cable hole'))
      expect(code).toBe(2)
      expect(err).toContain('some.ngc: found an empty file; allowed: a program in RS-274')
    }
  })

  it('a program above the work that is read whole meets nothing, and --json says what was not proved', () => {
    const step = stepThat('cable hole')
    const text = 'G21 G90 F900 M3 S9000\nT1 M6\nG43 H1\nG0 Z50\nX0 Y0\nG1 X50\nM30\n'
    const { out, code } = prove(text, '--step', step, '--free')
    expect(out).toContain('Nothing met but what is to be cut.')
    expect(out).not.toContain('Not proved')
    expect(code).toBe(0)
    const json = JSON.parse(
      prove(`${text}G41\n`.replace('G0 Z50', 'G41 G0 Z50'), '--step', step, '--free', '--json').out
    )
    expect(json.notProved).toEqual([expect.stringMatching(/step aside/)])
    expect(json.facts.endLine).toBe(7)
  })
})
