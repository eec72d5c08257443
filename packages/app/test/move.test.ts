import { beforeAll, expect, it } from 'vitest'
import { newPiece } from '../../engine/src/piece/kind.ts'
import { applyPatch } from '../../engine/src/piece/patch.ts'
import { checkPiece, usualShop } from '../../engine/src/piece/read.ts'
import { plan } from '../../engine/src/plan.ts'
import { bounds } from '../../engine/src/shape/measure.ts'
import { loadPathMap } from '../src/late/path-map.ts'
import { movePatch } from '../src/sheet/move.ts'
import type { Json } from '../src/worker/document.ts'

/** A panel whose first timber has a slanted edge, a measured top and one coordinate typed in inches (invented). */
function panel(): Json {
  const made = structuredClone(newPiece('panel')) as unknown as Json
  const first = (made['timbers'] as Json[])[0]!
  first['underside'] = { rectangle: [98, 206], at: ['-4 in', 0] }
  first['outline'] = { rectangle: [94, 206], at: ['-4 in', 0] }
  first['measured'] = {
    from: [-149, -103],
    step: [94, 206],
    heights: [
      [20, 20.5],
      [21, 20]
    ]
  }
  return made
}
beforeAll(loadPathMap)

const timber = (d: Json) => (d['timbers'] as Json[])[0]!

it('moves a timber with its underside and its measured top, and leaves what was typed where nothing changes', () => {
  const before = panel()
  const after = applyPatch(before, movePatch(before, '/timbers/0', 0, 7.5))
  expect((timber(after)['outline'] as Json)['at']).toEqual(['-4 in', 7.5])
  expect((timber(after)['underside'] as Json)['at']).toEqual(['-4 in', 7.5])
  expect((timber(after)['measured'] as Json)['from']).toEqual([-149, -95.5])
})

it('moves what the engine reads by just as much', () => {
  const before = structuredClone(newPiece('panel')) as unknown as Json
  const box = (d: Json) => {
    const { work } = plan(
      { piece: checkPiece(d, 'moved'), shop: usualShop(), files: {} },
      { asOf: '2026-11-27T09:00:00Z', effort: 'preview' }
    )
    return bounds(work.stack.geometry.timbers[0]!.upper)
  }
  const [a, b] = [box(before), box(applyPatch(before, movePatch(before, '/timbers/0', 1.7, -2)))]
  expect([b.minX - a.minX, b.maxY - a.maxY]).toEqual([expect.closeTo(1.7, 3), expect.closeTo(-2, 3)])
})

it('moves a part by the cut it sits in, and a groove by its points', () => {
  const document: Json = {
    cuts: [
      { id: 'pocket', shape: { circle: 20, at: [5, 5] } },
      {
        id: 'groove',
        along: {
          points: [
            [0, 0],
            ['1 in', 4]
          ]
        }
      }
    ],
    hardware: [
      { kind: 'magnet', in: 'pocket' },
      { kind: 'magnet', at: [1, 2] }
    ]
  }
  const moved = (at: string) => applyPatch(document, movePatch(document, at, 2, 0))
  expect((moved('/hardware/0')['cuts'] as Json[])[0]!['shape']).toEqual({ circle: 20, at: [7, 5] })
  expect((moved('/hardware/1')['hardware'] as Json[])[1]!['at']).toEqual([3, 2])
  const path: Json = { cuts: [{ along: { path: 'M 0 0 L 10 -5' } }] }
  const lower = applyPatch(path, movePatch(path, '/cuts/0', 2, -3))
  const numbers = ((lower['cuts'] as Json[])[0]!['along'] as { path: string }).path.match(/-?[\d.]+/g)
  expect(numbers?.map(Number)).toEqual([2, 3, 12, -2])
  expect((moved('/cuts/1')['cuts'] as Json[])[1]!['along']).toEqual({
    points: [
      [2, 0],
      [27.4, 4]
    ]
  })
})
