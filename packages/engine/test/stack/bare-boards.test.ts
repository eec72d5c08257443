import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { finishedVolumes } from '../../src/stack/volume.ts'
import { stackOf } from './build.ts'

const boards = JSON.parse(
  readFileSync(join(import.meta.dirname, '../../../../examples/meadow-boards.piece.json'), 'utf8')
) as PieceDocument

/** The same boards laid in a mould that nothing is cast in, taken out, and worked in the usual order. */
const moulded: PieceDocument = {
  ...boards,
  steps: [
    { do: 'prepare timber', what: 'board' },
    { do: 'make mould' },
    { do: 'set timber', what: 'board' },
    { do: 'demould' },
    { do: 'turn over' },
    { do: 'flatten', face: 'back' },
    { do: 'cut', what: 'juice groove' },
    { do: 'turn over' },
    { do: 'flatten', face: 'front' },
    { do: 'cut', what: 'stem' },
    { do: 'pour', what: 'copper' },
    { do: 'sand', face: 'front' },
    { do: 'coat', face: 'both' },
    { do: 'deliver' }
  ]
}

describe('boards that are not cast', () => {
  const bare = stackOf(boards)
  const laid = stackOf(moulded)

  it('exist once they are prepared', () => {
    expect(bare.states[0]).toMatchObject({ events: 1, lowZ: 0, highZ: 24 })
    expect(bare.events[0]).toEqual({ kind: 'timber', index: 0 })
    expect(bare.events.some(e => e.kind === 'demould')).toBe(false)
    expect(bare.castHeight).toBe(24)
  })

  it('come out as they do from a mould: faces, depths, pour and volumes', () => {
    for (const [index, cut] of bare.cuts.entries()) {
      const { step: _a, ...own } = cut
      const { step: _b, ...other } = laid.cuts[index]!
      expect(own).toEqual(other)
    }
    expect([bare.finishedLow, bare.finishedHigh]).toEqual([laid.finishedLow, laid.finishedHigh])
    expect(bare.finishedHigh - bare.finishedLow).toBeCloseTo(24 - 0.5 - 0.5, 9)
    expect(bare.pours).toEqual(laid.pours)
    const volumes = finishedVolumes(bare)
    expect([...volumes]).toEqual([...finishedVolumes(laid)])
    expect([...volumes.keys()].sort()).toEqual(['pour 0', 'timber 0'])
  })

  it('are there from the start in an order that does not prepare them', () => {
    const stack = stackOf({ ...boards, steps: moulded.steps!.slice(4) })
    expect(stack.states[0]!.events).toBe(1)
    expect([...finishedVolumes(stack)]).toEqual([...finishedVolumes(laid)])
  })
})
