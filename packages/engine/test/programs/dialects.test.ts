import { expect, test } from 'vitest'
import { proveSet } from '../../src/programs/prove-set.ts'
import { machinePiece, SHOP } from './machine-piece.ts'
import { setIn } from './made.ts'

type Program = NonNullable<NonNullable<(typeof SHOP)['machine']>['program']>

// Each way a machine may want its programs, from the piece to the swept text; a seed that has cuts of many kinds.
const DIALECTS: readonly (readonly [string, Program, RegExp])[] = [
  ['inches', { units: 'inch' }, /^G20$/m],
  ['chords', { arcs: false }, /^G21$/m],
  ['canned cycles', { cycles: true }, /^G21$/m],
  ['changes in the program', { changes: 'in the program' }, /^T[0-9]+ M6$/m],
  ['line numbers and two decimals', { lineNumbers: true, decimals: 2 }, /^N[0-9]+ /m],
  ['heights from the bed', { zero: 'bed' }, /Zero of heights: the bed/],
  ['no comments', { comments: false }, /^G21$/m]
]

test.for(DIALECTS)('%s: read back and proved clean', ([, program, mark]) => {
  const set = setIn(machinePiece(9), { ...SHOP, machine: { ...SHOP.machine!, program } })
  expect(set.notMade).toEqual([])
  for (const p of set.programs) {
    expect(p.written.text, p.file).toMatch(mark)
    if (program.arcs === false) expect(p.written.text, p.file).not.toMatch(/^(N[0-9]+ )?G0?[23]( |$)/m)
    if (program.comments === false) expect(p.written.text, p.file).not.toContain('(')
  }
  for (const { programs, proof } of proveSet(set)) {
    const what = programs.map(p => p.file).join(' ')
    for (const p of programs) expect(p.complaints, what).toEqual([])
    expect(proof.reports, what).toEqual([])
    expect(proof.removedMm3, what).toBeGreaterThan(0)
  }
})

test('a round edge by machine is said to have no program', () => {
  const piece = {
    ...machinePiece(9),
    edges: [{ profile: 'round' as const, size: 2, way: 'machine' as const }]
  }
  expect(setIn(piece).notMade.map(n => [n.at, n.name])).toEqual([['/edges/0', 'round of the front edge']])
})
