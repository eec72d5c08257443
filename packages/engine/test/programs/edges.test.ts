import { expect, test } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { machinePiece, SHOP } from './machine-piece.ts'
import { setIn } from './made.ts'

const edged = (edges: PieceDocument['edges'], seed = 9): PieceDocument => ({ ...machinePiece(seed), edges })

test('chamfers of both faces prove clean, each in its own setting, before the piece is cut out', () => {
  const set = setIn(edged([{ face: 'both', profile: 'chamfer', size: 2.5, way: 'machine' }]))
  expect(set.notMade).toEqual([])
  const own = set.programs.filter(p => p.made[0]!.operation.kind === 'edges')
  expect(own.map(p => set.machining.settings[p.made[0]!.operation.setting]!.setting.up).sort()).toEqual([
    'back',
    'front'
  ])
  const proofs = proveSet({ ...set, programs: own })
  expect(proofs).toHaveLength(2)
  for (const { programs, proof } of proofs) expect(proof.reports, programs[0]!.file).toEqual([])
  const freed = set.programs.findIndex(p => p.made[0]!.operation.kind === 'outline')
  const front = set.programs.findIndex(p => p.made[0]!.operation.name === 'chamfer of the front edge')
  expect(front).toBeLessThan(freed)
})

test('takes a triangle along the outline on both of its sides: volume by closed form', () => {
  const size = 2
  const piece: PieceDocument = {
    castwright: 1,
    name: 'Plate (invented)',
    outline: { rectangle: [120, 80] },
    mould: { margin: 12 },
    flatten: { back: 0, front: 0 },
    pours: [{ id: 'resin', resin: 'deep', depth: 20 }],
    edges: [{ profile: 'chamfer', size, way: 'machine' }]
  }
  const set = setIn(piece)
  const [chamfer] = proveSet(set)
  expect(chamfer!.at).toBe('/edges/0')
  expect(chamfer!.proof.reports).toEqual([])
  // A V of section size² along 400 mm. At each corner of the rectangle two arms of the V meet and share a quarter of
  // what lies within; the rest is a quarter of the cone of the cutter outside: less than 4·size³ in all.
  const straight = size * size * 400
  expect(Math.abs(chamfer!.proof.removedMm3 - straight)).toBeLessThan(4 * size ** 3 + 0.01 * straight)
})

test('a chamfer too wide for the shop and a round edge are told with the tool that would do', () => {
  const set = setIn(
    edged([
      { profile: 'chamfer', size: 9, way: 'machine' },
      { face: 'back', profile: 'round', size: 4, way: 'machine' }
    ])
  )
  expect(set.notMade.map(n => n.at).sort()).toEqual(['/edges/0', '/edges/1'])
  expect(set.notMade.map(n => n.says).join(' ')).toMatch(/round-over bit of radius 4/)
  const without = { ...SHOP, cutters: SHOP.cutters!.filter(c => c.id !== 'point 90') }
  const none = setIn(edged([{ profile: 'chamfer', size: 2, way: 'machine' }]), without)
  expect(none.notMade.map(n => n.says).join(' ')).toMatch(/90/)
})

test('a chamfer cut too deep, or beside the outline, is caught', () => {
  const set = setIn(edged([{ profile: 'chamfer', size: 2.5, way: 'machine' }]))
  const own = set.programs.filter(p => p.made[0]!.operation.kind === 'edges')
  const [clean] = proveSet({ ...set, programs: own })
  const up = 1.5 * clean!.proof.comparison!.detectsUpMm
  const deeper = own.map(p => ({
    ...p,
    written: {
      ...p.written,
      text: p.written.text.replace(/Z(-[\d.]+)/g, (_, z) => `Z${(Number(z) - up).toFixed(3)}`)
    }
  }))
  const kinds = proveSet({ ...set, programs: deeper }).flatMap(p => p.proof.reports.map(r => r.kind))
  expect(kinds).toContain('cut away')
})
