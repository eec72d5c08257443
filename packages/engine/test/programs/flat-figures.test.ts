import { expect, test } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { setIn } from './made.ts'

const figures = (deepest?: number): PieceDocument => ({
  castwright: 1,
  name: 'Number plate (invented)',
  outline: { rectangle: [150, 80] },
  mould: { margin: 12 },
  flatten: { back: 0, front: 0 },
  pours: [{ id: 'resin', resin: 'deep', depth: 16 }],
  markings: [
    {
      id: 'number',
      face: 'front',
      figures: 'outline',
      angle: 90,
      width: 0.6,
      lines: [
        [
          [-60, -34],
          [60, -34]
        ]
      ],
      ...(deepest === undefined ? {} : { deepest }),
      numerals: [{ text: '17', at: [0, 4], height: 52 }]
    }
  ]
})

test('figures no deeper than they may go get a flat floor, cleared first, and prove clean', () => {
  const set = setIn(figures(1.2))
  expect(set.notMade).toEqual([])
  const names = set.programs.map(p => p.made[0]!.operation.name)
  const floor = names.indexOf('number, figures, floor')
  expect(floor).toBeGreaterThanOrEqual(0)
  expect(names.indexOf('number, figures')).toBeGreaterThan(floor)
  for (const { programs, proof } of proveSet(set)) {
    expect(proof.reports, programs.map(p => p.file).join(' ')).toEqual([])
    expect(proof.comparison!.cutAway.mostMm).toBe(0)
  }
})

test('a floor cut 1.5 times the detection limit too deep is caught', () => {
  const set = setIn(figures(1.2))
  const own = set.programs.filter(p => p.made[0]!.operation.name.startsWith('number'))
  const [clean] = proveSet({ ...set, programs: own })
  const by = 1.5 * clean!.proof.comparison!.detectsUpMm
  const deeper = own.map(p => {
    if (!p.made[0]!.operation.name.endsWith('floor')) return p
    const text = p.written.text.replace(/Z(-[\d.]+)/g, (_, z) => `Z${(Number(z) - by).toFixed(3)}`)
    return { ...p, written: { ...p.written, text } }
  })
  const kinds = proveSet({ ...set, programs: deeper }).flatMap(p => p.proof.reports.map(r => r.kind))
  expect(kinds).toContain('cut away')
})

test('without a limit the V does it all', () => {
  expect(setIn(figures()).machining.operations.map(o => o.name)).not.toContain('number, figures, floor')
})
