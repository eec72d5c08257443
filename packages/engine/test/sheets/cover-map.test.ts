import { expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { ringArea } from '../../src/shape/measure.ts'
import { coverMap, offMap } from '../../src/sheets/cover-map.ts'
import type { RegionMark } from '../../src/sheets/mark.ts'
import { settingView } from '../../src/sheets/setting-sheet.ts'
import { SHOP } from '../programs/machine-piece.ts'
import { setIn, workIn } from '../programs/made.ts'
import { LAYERED } from '../programs/proved-piece.ts'

// 20 cast in 8 and 12; a pocket of 30 × 20, corners of 3, 6 deep from the front: 20 − 6 − 8 = 6 stay over the lower
// layer, over all of the pocket: 30·20 − (4 − π)·9 = 592 mm² (drawing and closed form).
const piece: PieceDocument = {
  ...LAYERED,
  hardware: [],
  cuts: LAYERED.cuts!.filter(c => c.id === 'pocket')
}
const SIZE = { widthMm: 166, mostHeightMm: 84 }

it('draws what is left over the next layer where it is cut, and says where least is', () => {
  const [work, set] = [workIn(piece), setIn(piece)]
  const proofs = proveSet(set)
  const map = coverMap(work, set, proofs, 0, SIZE, set.programs.find(p => p.file.includes('pocket'))!.file)!
  expect(map.least).toHaveLength(1)
  expect(map.least[0]).toMatchObject({ over: 'low' })
  expect(map.least[0]!.mm).toBeCloseTo(6, 3)
  expect(Math.abs(map.least[0]!.x)).toBeLessThanOrEqual(15)
  // The band from 4 to 8 alone, as large as the pocket within a cell of 0.2 along its edge of 95 mm.
  expect(map.bands).toEqual([2])
  const { scale } = settingView(work, set.machining.settings[0]!, SIZE).view
  const drawn = map.marks
    .filter((m): m is RegionMark => m.kind === 'region')
    .flatMap(m => m.rings)
    .reduce((sum, r) => sum + ringArea(r) / scale ** 2, 0)
  expect(Math.abs(drawn - (600 - (4 - Math.PI) * 9))).toBeLessThan(0.2 * 95)
  expect(offMap(work, set, proofs, 0, SIZE)).toBeNull()
})

it('no map where nothing lies under what is cut', () => {
  const one = { ...piece, pours: [{ ...LAYERED.pours![1]!, depth: 20 }] }
  const set = setIn(one, SHOP)
  const file = set.programs.find(p => p.file.includes('pocket'))!.file
  expect(coverMap(workIn(one), set, proveSet(set), 0, SIZE, file)).toBeNull()
})

it('draws what is cut away where the cutter goes too deep', () => {
  const set = setIn(piece)
  const deep = {
    ...set,
    programs: set.programs.map(p =>
      p.file.includes('pocket')
        ? { ...p, written: { ...p.written, text: p.written.text.replaceAll(/Z-6(\.0*)?(?=\s)/g, 'Z-7') } }
        : p
    )
  }
  const off = offMap(workIn(piece), deep, proveSet(deep), 0, SIZE)!
  expect(off.cutAwayMm).toBeCloseTo(1, 1)
  expect(off.leftMm).toBe(0)
})
