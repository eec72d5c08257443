import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne } from './asked.ts'

describe('makers’ cases: tabs', () => {
  // A bare board of 0.75 in, nothing flattened; tabs of 0.08 in.
  const board = (thick: string, read: number | null): Given => ({
    piece: {
      castwright: 1,
      name: 'a board cut out',
      outline: { rectangle: [300, 200] },
      flatten: { front: 0, back: 0 },
      mould: { margin: 20 },
      timbers: [
        { ...PLAIN.timbers![0]!, id: 'board', outline: { rectangle: [340, 240] }, thickness: '0.75 in' }
      ],
      pours: [{ id: 'fill', kind: 'inlay', into: ['line'], resin: 'thin', fill: 'cut' }],
      cuts: [
        {
          id: 'trim',
          kind: 'outline',
          face: 'front',
          shape: { difference: [{ rectangle: [320, 220] }, { rectangle: [300, 200] }] },
          through: true,
          tabs: { thick }
        },
        {
          id: 'line',
          kind: 'groove',
          face: 'front',
          along: {
            points: [
              [-50, 0],
              [50, 0]
            ]
          },
          width: 6,
          depth: 3
        }
      ],
      steps: [{ do: 'prepare timber', what: 'board' }, { do: 'cut', what: 'trim' }, { do: 'deliver' }]
    } as PieceDocument,
    shop: { castwright: 1, machine: { x: 800, y: 600 } },
    readings:
      read === null
        ? []
        : [{ kind: 'thickness', thickness: read, id: 'r-2026-11-28-0001', at: '2026-11-28T10:00Z' }]
  })

  it('C70 a board typed 0.75 in and measured 0.692: tabs of 0.08 in are 0.56 mm and refused', () => {
    expect(asked(board('0.08 in', null), 'tab-thin')).toEqual([])
    const found = theOne(board('0.08 in', 0.692 * 25.4), 'tab-thin')
    expect(found.severity).toBe('stop')
    // 0.08 − (0.75 − 0.692) = 0.022 in
    expect(found.value).toBeCloseTo(0.022 * 25.4, 3)
    expect(found.says).toMatch(/0\.56 mm.*measured 17\.58 mm thick where the plan has 19\.05/)
    // The makers' own remedy, 0.03 in more, leaves 1.32 mm: still under the limit.
    expect(theOne(board('0.11 in', 0.692 * 25.4), 'tab-thin').value).toBeCloseTo(1.3208, 3)
    expect(asked(mended(board('0.08 in', 0.692 * 25.4), found.fix!), 'tab-thin')).toEqual([])
  })
})
