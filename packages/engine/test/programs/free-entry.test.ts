import { expect, test } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { SHOP } from './machine-piece.ts'
import { setIn } from './made.ts'

/** A plate that fills its mould but for 3 mm of waste: a rebate along one side, a pocket open at another. Invented. */
const OPEN: PieceDocument = {
  castwright: 1,
  name: 'Open plate (invented)',
  outline: { rectangle: [120, 80] },
  mould: { margin: 3 },
  flatten: { back: 0, front: 0 },
  pours: [{ id: 'resin', resin: 'deep', depth: 16 }],
  holding: { by: 'tape' },
  cuts: [
    { id: 'rebate', kind: 'rebate', face: 'front', shape: { rectangle: [14, 80], at: [-53, 0] }, depth: 5 },
    { id: 'mouth', face: 'front', shape: { rectangle: [40, 30], at: [50, 0] }, depth: 6 },
    {
      id: 'free',
      kind: 'outline',
      face: 'front',
      shape: { difference: [{ rectangle: [133, 93] }, { rectangle: [120, 80] }] },
      through: true,
      tabs: false
    }
  ]
}

const set = setIn(OPEN)
// The 3 mm of waste end here.
const [EDGE_X, EDGE_Y] = [63, 43]

test('cuts that are open at the edge prove clean', () => {
  expect(set.notMade).toEqual([])
  for (const { programs, proof } of proveSet(set)) {
    expect(programs[0]!.complaints).toEqual([])
    expect(proof.reports, programs[0]!.file).toEqual([])
  }
})

test.for(['rebate', 'mouth', 'free'])(
  '%s is entered from beside the material: no ramp, no helix in it',
  name => {
    const { operation, path } = set.programs.find(p => p.made[0]!.operation.name === name)!.made[0]!
    const half = operation.cutter.shape.diameterMm / 2
    let [x, y, z] = [Number.NaN, Number.NaN, Number.NaN]
    let downs = 0
    let fresh = false
    for (const [i, m] of path.moves.entries()) {
      if (m.kind === 'dwell') continue
      const pass = path.passes.find(p => p.from === i)
      // The wall is come to where the pass has cut.
      if (pass !== undefined) fresh = !pass.name.includes('wall')
      if (m.z < z - 1e-9 && m.z < operation.job.topMm - 1e-9) {
        expect(Math.hypot(m.x - x, m.y - y)).toBeLessThan(1e-9)
        // The first way down of a pass: the whole cutter beside the casting.
        const beside = Math.max(Math.abs(x) - EDGE_X, Math.abs(y) - EDGE_Y)
        if (fresh) expect(beside).toBeGreaterThan(half - 0.05)
        if (fresh) downs++
        fresh = false
      }
      ;[x, y, z] = [m.x, m.y, m.z]
    }
    expect(downs).toBeGreaterThan(0)
  }
)

test('a place to keep clear beside the edge is kept clear of', () => {
  const { cuts } = OPEN
  const holding = { by: 'tape', keepClear: [{ circle: 8, at: [97, 0] }] } satisfies PieceDocument['holding']
  const kept = setIn({ ...OPEN, holding, cuts: [cuts![1]!] }, SHOP)
  const rapid = proveSet(kept).flatMap(p => p.proof.reports)
  expect(rapid).toEqual([])
})
