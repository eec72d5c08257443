import { describe, expect, it } from 'vitest'
import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import type { PieceDocument } from '../../../src/piece/piece-schema.ts'
import { forChords } from '../../../src/proving/sweep/chords.ts'
import type { Stack } from '../../../src/stack/stack.ts'
import { plainPiece, stackOf } from '../../stack/build.ts'
import { cutter, Program } from '../program.ts'
import { GUARDS, proofOf } from './pocket.ts'

/**
 * 80 × 50 mm in 15 mm of waste: 8 mm of resin with stones from 2 to 6 at the right, 12 mm over it, a channel 10 wide
 * from the back up to 7; the pocket from the front is 30 × 20, 6 deep. Program z of the top 0, of the seam −12.
 */
function layered(more: Partial<PieceDocument> = {}): Stack {
  return stackOf(
    plainPiece({
      outline: { rectangle: [80, 50] },
      mould: { margin: 15 },
      pours: [
        {
          id: 'low',
          resin: 'medium',
          depth: 8,
          stones: [{ kind: 'gravel', zone: { rectangle: [20, 40], at: [25, 0] }, from: 2, to: 6 }]
        },
        { id: 'high', resin: 'medium', depth: 12 }
      ],
      cuts: [
        { id: 'channel', face: 'back', kind: 'slot', shape: { rectangle: [10, 40], at: [-25, 0] }, depth: 7 },
        { id: 'pocket', face: 'front', kind: 'pocket', shape: { rectangle: [30, 20], corner: 3 }, depth: 6 }
      ],
      ...more
    }),
    { levelFall: 0 }
  )
}

const at = (stack: Stack, name: string) =>
  stack.events.findIndex(e => e.kind === 'cut' && stack.entries.cuts[e.index]!.id === name)

function proved(program: Program, more: Parameters<typeof proofOf>[2] = {}) {
  const stack = layered()
  const event = at(stack, 'pocket')
  return proofOf(stack, program, { events: event, wantedEvents: null, ...more })
}

const down = (x: number, y: number, z: number) =>
  new Program().rapid(x, y, 5).line(x, y, z, 300).rapid(x, y, 5)

describe('layers, stones and hollows under a cut', () => {
  it('stones are met below the top of their zone and within it', () => {
    expect(proved(down(25, 0, -13.9)).reports).toEqual([])
    const met = proved(down(25, 0, -15)).reports
    expect(met).toMatchObject([{ kind: 'stones', line: 2 }])
    expect(met[0]!.value).toBeCloseTo(1, 4)
    expect(proved(down(5, 0, -15)).reports).toEqual([])
  })

  it('a layer that is to stay closed', () => {
    const guards = { ...GUARDS, closed: ['pour 0'] }
    expect(proved(down(5, 0, -11.9), { guards }).reports).toEqual([])
    const met = proved(down(5, 0, -12.5), { guards }).reports
    expect(met).toMatchObject([{ kind: 'closed layer' }])
    expect(met[0]!.value).toBeCloseTo(0.5, 4)
  })

  it('what is left over layers and hollows at the least', () => {
    const { leastLeft } = proved(down(-25, 0, -10))
    const over = Object.fromEntries(leastLeft.map(l => [l.over, l.mm]))
    // The channel reaches up to 13 below the top.
    expect(over.void).toBeCloseTo(3, 4)
    expect(over['pour 0']).toBeCloseTo(2, 4)
  })

  it('a hollow, the far face and the bed are not to be broken into unless it is wanted', () => {
    const wanted = { wantedEvents: at(layered(), 'pocket') }
    const kinds = (p: ReturnType<typeof proved>) => p.reports.map(r => r.kind).sort()
    expect(kinds(proved(down(-25, 0, -13.5), wanted))).toEqual(['cut away', 'void'])
    expect(kinds(proved(down(5, 0, -20.3), wanted))).toEqual(['cut away', 'far face'])
    expect(kinds(proved(down(5, 0, -20.3)))).toEqual([])
    expect(proved(down(5, 0, -21.5)).reports).toMatchObject([{ kind: 'bed', limit: 1 }])
    // Into the hollow and no further: there is nothing below its roof.
    const { removedMm3 } = proved(down(-25, 0, -16))
    expect(Math.abs(removedMm3 - Math.PI * 9 * 13)).toBeLessThan(10)
  })
})

describe('a part cut out', () => {
  // Round it with a cutter of 6 mm in three turns; the last but for two tabs when asked.
  const round = (tabs: boolean): Program => {
    const p = new Program().rapid(-43, -28, 5)
    for (const z of [-7, -14, -20.3]) {
      const corners = [
        [43, -28],
        [43, 28],
        [-43, 28],
        [-43, -28]
      ] as const
      p.line(-43, -28, z, 300)
      for (const [x, y] of corners) {
        if (tabs && z < -15 && x === -Math.sign(y) * 43) {
          // Halfway along the long sides a tab 12 mm wide between the walls, 6 mm high.
          const [from, to] = y > 0 && x < 0 ? [9, -9] : [-9, 9]
          p.line(from, y, z).line(from, y, -14).line(to, y, -14).line(to, y, z)
        }
        p.line(x, y, z)
      }
    }
    return p.rapid(-43, -28, 5)
  }

  it('comes free with the move that closes the ring', () => {
    const program = round(false)
    const free = proved(program).reports
    expect(free).toMatchObject([{ kind: 'part free' }])
    // The last side of the last turn.
    expect(free[0]!.line).toBe(program.lines - 1)
    expect(Math.abs(free[0]!.value - 80 * 50)).toBeLessThan(120)
  })

  it('is held by tabs, by a skin, or by its face', () => {
    const skin = new Program()
    skin.rapid(-43, -28, 5).line(-43, -28, -19.5, 300)
    for (const [x, y] of [
      [43, -28],
      [43, 28],
      [-43, 28],
      [-43, -28]
    ] as const)
      skin.line(x, y, -19.5)
    expect(proved(skin).reports).toEqual([])
    expect(proved(round(false), { guards: { ...GUARDS, held: 'face' } }).reports).toEqual([])
    expect(proved(round(true)).reports).toEqual([])
  })

  it('drops out of a hole as well', () => {
    const ring = new Program().rapid(11, 0, 5).line(11, 0, -20.3, 300)
    ring.arc(false, 11, 0, -20.3, 0, 0).rapid(11, 0, 5)
    const free = proved(ring).reports
    expect(free).toMatchObject([{ kind: 'part free', line: 3 }])
    expect(Math.abs(free[0]!.value - Math.PI * 64)).toBeLessThan(15)
  })
})

describe('arcs', () => {
  it('are swept in each plane: a groove in an upright one is as deep as its circle', () => {
    const ball = new Map<number, CutterShape>([[1, cutter({ form: 'ball' })]])
    // In z-x about (0, 20): from (−10, ..) down to z = 20 − √(...) and up again.
    const r = Math.hypot(20, 10)
    const p = new Program().rapid(-10, 0, 5).line(-10, 0, 0, 300)
    p.arc(true, 10, 0, 0, 20, 0, 1000, 18).rapid(10, 0, 5)
    const anticlockwise = new Program().rapid(-10, 0, 5).line(-10, 0, 0, 300)
    anticlockwise.arc(false, 10, 0, 0, 20, 0, 1000, 18).rapid(10, 0, 5)
    const depths = [p, anticlockwise].map(q => {
      const { depth } = proved(q, { cutterByTool: ball })
      return depth.values.reduce((a, b) => Math.max(a, b), 0)
    })
    // One way round is under the line between the ends, the other far above the work.
    expect(Math.max(...depths)).toBeCloseTo(r - 20, 1)
    expect(Math.min(...depths)).toBeLessThan(0.05)
  })

  it('are laid within their chord tolerance', () => {
    let most = 0
    let [px, py] = [30, 0]
    forChords(30, 0, 0, 0, 30, 0, 0, 0, false, (x, y) => {
      most = Math.max(most, 30 - Math.hypot((x + px) / 2, (y + py) / 2))
      ;[px, py] = [x, y]
    })
    expect(most).toBeLessThan(0.002)
    expect([px, py]).toEqual([0, 30])
  })
})
