import { describe, expect, it } from 'vitest'
import { programFilesOf } from '../../src/cuts-data.ts'
import { cutsPlan } from '../../src/cuts-plan.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { area, nearest } from '../../src/shape/measure.ts'
import { translate } from '../../src/shape/transform.ts'
import { workIn } from './made.ts'

const GAP = 0.15
/** A board with an inlay of 40 × 24 on either face, corners of 1.5. Invented. */
const INLAID: PieceDocument = {
  castwright: 1,
  name: 'Inlaid board (invented)',
  outline: { rectangle: [140, 90] },
  mould: { margin: 30 },
  flatten: { back: 0, front: 1 },
  pours: [{ id: 'resin', resin: 'deep', depth: 20 }],
  cuts: [
    {
      id: 'badge',
      kind: 'inlay',
      face: 'front',
      shape: { rectangle: [40, 24], at: [20, 10] },
      depth: 6,
      plug: { gap: GAP, thickness: 7, species: 'walnut-black' }
    },
    {
      id: 'arrow',
      kind: 'inlay',
      face: 'back',
      shape: {
        polygon: [
          [-50, -20],
          [-10, -20],
          [-30, 10]
        ]
      },
      depth: 6,
      plug: { gap: GAP, thickness: 7 }
    }
  ]
}

const work = workIn(INLAID)
const cuts = cutsPlan(work)!

describe('the plug of an inlay', () => {
  it('has programs of its own board that prove clean', () => {
    expect(cuts.set.notMade).toEqual([])
    expect(cuts.plugs.map(p => p.id)).toEqual(['badge', 'arrow'])
    for (const { cuts: own } of cuts.plugs) {
      expect(own.set.notMade).toEqual([])
      expect(own.set.programs).toHaveLength(1)
      for (const { proof, programs } of own.proofs) {
        expect(proof.reports).toEqual([])
        expect(programs[0]!.complaints).toEqual([])
        expect(proof.removedMm3).toBeGreaterThan(0)
      }
    }
  })

  it('is as large as the pocket less the gap all round: closed form', () => {
    const { outline } = cuts.plugs[0]!.work.stack.geometry
    // A rectangle less g on each side, its corners r − g.
    const [w, h, r] = [40 - 2 * GAP, 24 - 2 * GAP, 1.5 - GAP]
    expect(area(outline)).toBeCloseTo(w * h - (4 - Math.PI) * r * r, 1)
  })

  it.for([0, 1])('the cutter of plug %i runs its radius off the pocket less the gap', k => {
    const { at, work: board, cuts: own } = cuts.plugs[k]!
    expect(at).toBe(`/cuts/${k}/plug`)
    const { operation, path } = own.set.programs[0]!.made[0]!
    const half = operation.cutter.shape.diameterMm / 2
    // The pocket as the plug sees it: from its own face, about the middle of the plug.
    const pocket = work.stack.geometry.cutRegions[k]!
    const b = (v: readonly number[]) => (Math.min(...v) + Math.max(...v)) / 2
    const xs = pocket.rings[0]!.filter((_, i) => i % 2 === 0)
    const ys = pocket.rings[0]!.filter((_, i) => i % 2 === 1)
    const centred = translate(pocket, -b([...xs]), -b([...ys]))
    const mirrored = k === 0 ? 1 : -1
    let lowest = Number.POSITIVE_INFINITY
    for (const m of path.moves) {
      if (m.kind === 'dwell' || m.kind === 'rapid' || m.z > operation.job.floorMm + 1e-6) continue
      const off = nearest(centred, mirrored * m.x, m.y).distanceMm
      // Off the pocket by the radius less the gap; the last pass is the nearest.
      expect(off).toBeGreaterThan(half - GAP - 0.02)
      lowest = Math.min(lowest, off)
    }
    expect(lowest).toBeCloseTo(half - GAP, 1)
    expect(board.piece.timbers[0]!.thickness).toBe(7)
  })

  it('has its own zero, files and card', () => {
    const files = programFilesOf(cuts, { name: INLAID.name, despite: [] })
    const names = [...files.keys()]
    expect(names).toContain('plug-badge-01-front-plug.nc')
    expect(names).toContain('plug-badge-at-the-machine.md')
    expect(files.get('plug-badge-01-front-plug.nc')).toContain('X0 Y0 is the point 0, 0')
    expect(files.get('plug-badge-at-the-machine.md')).toContain('Plug of badge')
  })
})
