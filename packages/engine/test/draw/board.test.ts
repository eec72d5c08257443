import { describe, expect, it } from 'vitest'
import type { Change } from '../../src/draw/board.ts'
import {
  liveEdge,
  liveEdgeTimber,
  timberMirrored,
  timberMoved,
  timberSplit,
  timberTurned
} from '../../src/draw/board.ts'
import { entriesOf } from '../../src/piece/entry.ts'
import type { Patch } from '../../src/piece/patch.ts'
import { applyPatch, invertPatch } from '../../src/piece/patch.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { union } from '../../src/shape/combine.ts'
import { area, bounds } from '../../src/shape/measure.ts'
import { mirrorX, rotate, translate } from '../../src/shape/transform.ts'
import { chance } from '../stack/random.ts'
import { FILES, FORMS, regionFor } from './forms.ts'
import { symmetricDifference } from './same-region.ts'

const piece: PieceDocument = {
  castwright: 1,
  name: 'Invented',
  outline: { rectangle: [400, 300] },
  timbers: [
    ...FORMS.map(([form, outline]) => ({
      id: form,
      species: 'ash-white',
      outline,
      underside: outline,
      thickness: 20
    })),
    { species: 'ash-white', outline: { rectangle: [200, 80] as [number, number] }, thickness: 20 }
  ],
  pours: [{ id: 'clear', resin: 'deep', fill: 'timber' }],
  steps: [
    { do: 'prepare timber', what: 'polygon' },
    { do: 'set timber', what: 'polygon' },
    { do: 'set timber', what: 'timber 10' },
    { do: 'pour', what: 'clear' }
  ]
}
/** Index of the plain rectangle, which has no name. */
const last = FORMS.length

/** Applies a change; checks that the result reads, that all it names is there, and that the inverse undoes it. */
function after(change: Change, document = piece): PieceDocument {
  expect(change).not.toHaveProperty('problem')
  const { patch } = change as { patch: Patch }
  const next = applyPatch(document, patch)
  entriesOf(checkPiece(next, 'test').value, 'test')
  expect(applyPatch(next, invertPatch(document, patch))).toEqual(document)
  return next
}
const problem = (change: Change) => (change as { problem: string }).problem

describe('a timber', () => {
  it('of each form moves, turns and mirrors with both of its edges', () => {
    const c = chance(61)
    FORMS.forEach(([form, s], i) => {
      const before = regionFor(s)
      const [dx, dy, deg] = [c.span(-50, 50), c.span(-50, 50), c.span(-180, 180)]
      const same = (next: PieceDocument, wanted: typeof before) => {
        for (const edge of [next.timbers![i]!.outline, next.timbers![i]!.underside!])
          expect(symmetricDifference(regionFor(edge), wanted), form).toBeLessThan(0.6)
      }
      same(after(timberMoved(piece, i, dx, dy)), translate(before, dx, dy))
      same(after(timberTurned(piece, i, deg, [dx, dy], FILES)), rotate(before, deg, dx, dy))
      if (form === 'file') expect(problem(timberMirrored(piece, i, 'x', dx))).toMatch(/polygon first/)
      else same(after(timberMirrored(piece, i, 'x', dx)), mirrorX(before, dx))
    })
  })

  it('changes only what moved, so that the patch is small', () => {
    const next = timberMoved(piece, last, 5, -2) as { patch: Patch }
    expect(next.patch).toEqual([
      { op: 'replace', path: `/timbers/${last}/outline`, value: { rectangle: [200, 80], at: [5, -2] } }
    ])
    expect(timberMoved(piece, last, 0, 0)).toEqual({ patch: [] })
  })

  it('keeps the grain with the wood', () => {
    // Left to the longer side of 200 × 80, the grain lies along x: 0 degrees.
    expect(after(timberTurned(piece, last, 30, [0, 0])).timbers![last]!.grain).toBe(30)
    expect(after(timberTurned(piece, last, 90, [0, 0])).timbers![last]).not.toHaveProperty('grain')
    const grained = { ...piece, timbers: piece.timbers!.map(t => ({ ...t, grain: 30 })) }
    expect(after(timberMirrored(grained, last, 'x', 0), grained).timbers![last]!.grain).toBe(150)
    expect(after(timberMirrored(grained, last, 'y', 0), grained).timbers![last]!.grain).toBe(-30)
  })

  it('carries its measured top along, point by point', () => {
    const rises = [
      [0, 1, 2],
      [3, 4, 5]
    ]
    const measured = { from: [-20, -10] as [number, number], step: [20, 30] as [number, number], rises }
    const { steps: _, ...without } = piece
    const document: PieceDocument = { ...without, timbers: [{ ...piece.timbers![last]!, measured }] }
    /** Twin: the height above each measured place as a list of places. */
    const places = (d: PieceDocument) => {
      const m = d.timbers![0]!.measured!
      const at = ([x, y]: [number, number], i: number, j: number) =>
        `${x + i * (m.step[0] as number)} ${y + j * (m.step[1] as number)}`
      return new Map(
        m.rises.flatMap((row, j) =>
          row.map((r, i): [string, unknown] => [at(m.from as [number, number], i, j), r])
        )
      )
    }
    const moved = (f: (x: number, y: number) => [number, number]) =>
      new Map(
        rises.flatMap((row, j) =>
          row.map((r, i): [string, unknown] => [
            f(-20 + 20 * i, -10 + 30 * j)
              .map(n => n + 0)
              .join(' '),
            r
          ])
        )
      )
    const run = (change: Change) => places(after(change, document))
    expect(run(timberMoved(document, 0, 5, 7))).toEqual(moved((x, y) => [x + 5, y + 7]))
    expect(run(timberMirrored(document, 0, 'x', 10))).toEqual(moved((x, y) => [20 - x, y]))
    expect(run(timberMirrored(document, 0, 'y', 10))).toEqual(moved((x, y) => [x, 20 - y]))
    expect(run(timberTurned(document, 0, 90, [4, 6]))).toEqual(moved((x, y) => [4 - (y - 6), 6 + (x - 4)]))
    expect(run(timberTurned(document, 0, -180, [4, 6]))).toEqual(moved((x, y) => [8 - x, 12 - y]))
    expect(problem(timberTurned(document, 0, 45, [0, 0]))).toMatch(/quarter turns/)
  })

  it('is opened like a book under a name of its own', () => {
    const next = after(timberMirrored(piece, 0, 'x', 100, { copy: true }))
    expect(next.timbers!.length).toBe(last + 2)
    expect(next.timbers![last + 1]!.id).toBe('circle 2')
    expect(next.timbers![last + 1]!.outline).toEqual({ circle: 60, at: [190, '1 in'] })
  })

  it('says what is wrong', () => {
    expect(problem(timberMoved(piece, 99, 0, 0))).toBe('no timber 100 in this piece')
    expect(problem(timberMoved(piece, 0, Number.NaN, 0))).toBe('found NaN; allowed: −10000 to 10000')
    expect(problem(timberTurned(piece, 5, 30, [0, 0]))).toMatch(/a.svg/)
  })
})

describe('a timber parted', () => {
  it('of each form gives two that make up the whole, less the kerf', () => {
    const c = chance(62)
    FORMS.forEach(([form, s], i) => {
      const before = regionFor(s)
      const b = bounds(before)
      const middle = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2] as const
      let done = 0
      for (let k = 0; k < 12; k++) {
        const a = c.span(0, 2 * Math.PI)
        const line = [middle, [middle[0] + 30 * Math.cos(a), middle[1] + 30 * Math.sin(a)]] as const
        const got = timberSplit(piece, i, line, FILES)
        if ('problem' in got) {
          // Refused only where the slow way finds more than one piece: forms with hollows.
          expect(['holes', 'path', 'union', 'difference', 'file'], got.problem).toContain(form)
          continue
        }
        done++
        const next = after(got)
        const [one, two] = [next.timbers![i]!, next.timbers![last + 1]!]
        const [p, q] = [regionFor(one.outline), regionFor(two.outline)]
        expect(symmetricDifference(union(p, q), before), form).toBeLessThan(0.6)
        expect(Math.abs(area(p) + area(q) - area(before))).toBeLessThan(0.6)
        // Left of the line is the first: its middle lies there.
        const side = (r: typeof p) => {
          const box = bounds(rotate(r, (-a * 180) / Math.PI, ...middle))
          return (box.minY + box.maxY) / 2 - middle[1]
        }
        expect(side(p)).toBeGreaterThan(side(q))
        const sawn = timberSplit(piece, i, line, FILES, 3)
        if ('problem' in sawn) continue
        const kerf = after(sawn).timbers!
        const lost =
          area(before) - area(regionFor(kerf[i]!.outline)) - area(regionFor(kerf[last + 1]!.outline))
        expect(lost / 3).toBeGreaterThan(10)
        expect(lost / 3).toBeLessThan(150)
      }
      expect(done, form).toBeGreaterThan(2)
    })
  })

  it('keeps a rectangle a rectangle along its sides', () => {
    const next = after(
      timberSplit(
        piece,
        last,
        [
          [50, -9],
          [50, 9]
        ],
        {},
        4
      )
    )
    // The line runs away from the maker: the first part lies to its left.
    expect(next.timbers![last]!.outline).toEqual({ rectangle: [148, 80], at: [-26, 0] })
    expect(next.timbers![last + 1]!.outline).toEqual({ rectangle: [48, 80], at: [76, 0] })
    const level = after(
      timberSplit(piece, last, [
        [9, 10],
        [-9, 10]
      ])
    )
    expect(level.timbers![last]!.outline).toEqual({ rectangle: [200, 50], at: [0, -15] })
    expect(level.timbers![last]!.id).toBe('timber 10 a')
    expect(level.timbers![last + 1]!.grain).toBe(0)
  })

  it('names both parts in the steps', () => {
    const i = FORMS.findIndex(([form]) => form === 'polygon')
    const box = bounds(regionFor(FORMS[i]![1]))
    const y = (box.minY + box.maxY) / 2
    const next = after(
      timberSplit(piece, i, [
        [0, y],
        [50, y]
      ])
    )
    expect(next.steps!.slice(0, 4)).toEqual([
      { do: 'prepare timber', what: 'polygon a' },
      { do: 'prepare timber', what: 'polygon b' },
      { do: 'set timber', what: 'polygon a' },
      { do: 'set timber', what: 'polygon b' }
    ])
  })

  it('says why a line will not do, and what of a crown is lost', () => {
    expect(
      problem(
        timberSplit(piece, last, [
          [0, 500],
          [50, 500]
        ])
      )
    ).toMatch(/passes beside/)
    expect(
      problem(
        timberSplit(piece, last, [
          [0, 0],
          [0, 0]
        ])
      )
    ).toMatch(/at least 1 mm apart/)
    expect(
      problem(
        timberSplit(
          piece,
          last,
          [
            [0, 0],
            [9, 0]
          ],
          {},
          -1
        )
      )
    ).toMatch(/kerf of -1/)
    const crowned = { ...piece, timbers: [{ ...piece.timbers![last]!, crown: { rise: 2, along: 0 } }] }
    expect(
      timberSplit(crowned, 0, [
        [0, 0],
        [0, 9]
      ])
    ).not.toHaveProperty('says')
    expect(
      timberSplit(crowned, 0, [
        [0, 0],
        [9, 0]
      ])
    ).toHaveProperty('says')
    expect(
      after(
        timberSplit(crowned, 0, [
          [0, 0],
          [9, 0]
        ]),
        { ...crowned, steps: undefined } as never
      )
    ).toBeTruthy()
  })
})

describe('a live edge', () => {
  const wave = (lift: number) =>
    Array.from({ length: 41 }, (_, k): [number, number] => [5 * k, lift + 8 * Math.sin(k / 6)])
  /** Area under a line of points by trapezia. */
  const under = (line: [number, number][]) =>
    line.slice(1).reduce((sum, p, k) => sum + ((p[1] + line[k]![1]) / 2) * (p[0] - line[k]![0]), 0)

  it('lies between its line and the straight back, whichever way both run', () => {
    const [top, bottom] = [wave(90), wave(70)]
    for (const t of [top, [...top].reverse()])
      for (const back of [
        [
          [0, 0],
          [200, 0]
        ],
        [
          [200, 0],
          [0, 0]
        ]
      ] as [number, number][][]) {
        const got = liveEdge(t, bottom, back as never) as { outline: never; underside: never }
        expect(area(regionFor(got.outline))).toBeCloseTo(under(top), 1)
        expect(area(regionFor(got.underside))).toBeCloseTo(under(bottom), 1)
      }
  })

  it('is cut off square at the ends of the back, and goes on level to them', () => {
    const got = liveEdge(wave(50), wave(50), [
      [30, 0],
      [150, 0]
    ]) as { outline: never }
    const b = bounds(regionFor(got.outline))
    expect([b.minX, b.maxX, b.minY]).toEqual([30, 150, 0])
    const short = liveEdge(wave(50).slice(10, 20), wave(50), [
      [0, 0],
      [200, 0]
    ]) as { outline: never }
    expect(bounds(regionFor(short.outline))).toMatchObject({ minX: 0, maxX: 200 })
  })

  it('lies below a far back, turned as the back is', () => {
    const got = liveEdge(wave(-50), wave(-40), [
      [0, 0],
      [200, 0]
    ]) as { outline: never; underside: never }
    expect(bounds(regionFor(got.outline)).maxY).toBe(0)
    const turned = (p: [number, number]): [number, number] => [-p[1], p[0]]
    const up = liveEdge(wave(90).map(turned), wave(70).map(turned), [turned([0, 0]), turned([200, 0])])
    expect(area(regionFor((up as { outline: never }).outline))).toBeCloseTo(under(wave(90)), 1)
  })

  it('comes into the piece as a timber that reads', () => {
    const edge = liveEdge(wave(90), wave(70), [
      [0, 0],
      [200, 0]
    ])
    const next = after(
      liveEdgeTimber(piece, edge, { species: 'walnut-black', thickness: '1 1/2 in', id: 'circle' })
    )
    expect(next.timbers![last + 1]).toMatchObject({ id: 'circle 2', thickness: '1 1/2 in' })
    expect(
      liveEdge(wave(90), wave(90), [
        [0, 0],
        [200, 0]
      ])
    ).not.toHaveProperty('underside')
  })

  it('says why not', () => {
    const back = [
      [0, 0],
      [200, 0]
    ] as const
    const why = (e: unknown) => (e as { problem: string }).problem
    expect(why(liveEdge([[0, 50]], wave(9), back))).toMatch(/the upper line: 1 points/)
    expect(
      why(
        liveEdge(
          [
            [0, 50],
            [200, -50]
          ],
          wave(9),
          back
        )
      )
    ).toMatch(/upper line: it crosses/)
    expect(why(liveEdge(wave(90), wave(-90), back))).toMatch(/different sides/)
    expect(
      why(
        liveEdge(wave(90), wave(9), [
          [0, 0],
          [0, 0]
        ])
      )
    ).toMatch(/back without length/)
    expect(
      why(
        liveEdge(
          [
            [0, 0.2],
            [200, 0.3]
          ],
          wave(9),
          back
        )
      )
    ).toMatch(/lies on the back/)
  })
})
