import { describe, expect, it } from 'vitest'
import { edgesRead } from '../../../src/cuts/pins/edge-read.ts'
import type { Frame } from '../../../src/cuts/pins/frame.ts'
import { frameOf, pointToProgram } from '../../../src/cuts/pins/frame.ts'
import { measuredFrame } from '../../../src/cuts/pins/measured-frame.ts'
import { readingSchema } from '../../../src/piece/reading-schema.ts'
import { settingsOf } from '../../../src/steps/setting.ts'
import { worked } from '../../cases/asked.ts'
import { PLAIN } from '../../findings/harness.ts'
import { chance } from '../../stack/random.ts'

type Place = readonly [number, number]

const work = worked({
  shop: { castwright: 1, machine: { x: 800, y: 600 } },
  piece: {
    ...PLAIN,
    // A corner cut off: an edge at 45 degrees that no side names.
    outline: {
      polygon: [
        [-150, -100],
        [150, -100],
        [150, 40],
        [90, 100],
        [-150, 100]
      ]
    },
    mould: { shape: { rectangle: [320, 220], at: [4, 3] }, bearers: 250 },
    timbers: [],
    cuts: [
      { id: 'front pocket', face: 'front', shape: { rectangle: [40, 30], at: [60, 40] }, depth: 4 },
      { id: 'back pocket', face: 'back', shape: { rectangle: [40, 30], at: [-60, 40] }, depth: 4 }
    ]
  }
})
const { stack } = work
const settings = settingsOf(stack.steps)
const frames = settings.map(s => frameOf(work.piece, s, stack, work.pins.datum))
const RADIUS = 2.5

/** A place of the plan where the machine finds it: as it lies, turned and shifted. Worked from the rotation. */
function lies(frame: Frame, [x, y]: Place, deg: number, sx: number, sy: number): [number, number] {
  const [X, Y] = pointToProgram(frame, x, y)
  const a = (deg * Math.PI) / 180
  return [Math.cos(a) * X - Math.sin(a) * Y + sx, Math.sin(a) * X + Math.cos(a) * Y + sy]
}

/** Middle of a tip that touches at a place of an edge; `out` is the unit way out of the piece on the plan. */
const tip = ([x, y]: Place, [ox, oy]: Place): Place => [x + RADIUS * ox, y + RADIUS * oy]

const EDGES: readonly { readonly of: object; readonly out: Place; readonly at: readonly Place[] }[] = [
  {
    of: { side: 'near' },
    out: [0, -1],
    at: [
      [-120, -107],
      [120, -107]
    ]
  },
  {
    of: { side: 'left' },
    out: [-1, 0],
    at: [
      [-156, -60],
      [-156, 50]
    ]
  },
  {
    of: {
      along: [
        [150, 40],
        [90, 100]
      ]
    },
    out: [Math.SQRT1_2, Math.SQRT1_2],
    at: [
      [120, 70],
      [100, 90]
    ]
  },
  {
    of: {
      along: [
        [164, 100],
        [164, -100]
      ]
    },
    out: [1, 0],
    at: [[164, 20]]
  }
]

function read(
  i: number,
  edges: typeof EDGES,
  move: readonly [number, number, number],
  noise = () => 0,
  more: object[] = []
) {
  const frame = frames[i]!
  const list = edges.map(({ of, out, at }, k) => ({
    id: `edge-000${k}`,
    at: `2026-11-28T0${k}:00Z`,
    kind: 'edge',
    face: frame.up,
    ...of,
    radius: RADIUS,
    measured: at.map(p => lies(frame, tip(p, out), ...move).map(v => v + noise()))
  }))
  return measuredFrame(
    frame,
    settings[i]!,
    stack,
    work.pins,
    [...list, ...more].map(r => readingSchema.parse(r))
  )
}

describe('edges touched on the machine', () => {
  it('give turn and shift back exactly with either face up, by name and by two points in either order', () => {
    for (const i of [0, 1])
      for (let seed = 1; seed <= 20; seed++) {
        const { span } = chance(seed)
        const move = [span(-3, 3), span(-8, 8), span(-8, 8)] as const
        const { frame, place, unused } = read(i, EDGES, move)
        expect(unused).toEqual([])
        expect(frame.turnDeg).toBeCloseTo(move[0], 8)
        expect(frame.shiftX).toBeCloseTo(move[1], 8)
        expect(frame.shiftY).toBeCloseTo(move[2], 8)
        expect(place!.rootMeanSquareMm).toBeLessThan(1e-8)
      }
  })

  it('agree with three touches worked by hand: turn from two of one edge, shift along it from the other', () => {
    // Near side read 0.4 higher at the right over 240 mm, tip radius 2.5: tan θ = 0.4/240.
    const front = frames.findIndex(f => f.mirror === 'none')
    const [x0, y0] = [frames[front]!.x0, frames[front]!.y0]
    const reading = (side: string, measured: Place[]) =>
      readingSchema.parse({
        id: `edge-${side}-1`,
        at: '2026-11-28T08:00Z',
        kind: 'edge',
        face: frames[front]!.up,
        side,
        measured,
        radius: 0
      })
    const { frame } = measuredFrame(frames[front]!, settings[front]!, stack, work.pins, [
      reading('near', [
        [-120, -107 - y0],
        [120, -106.6 - y0]
      ]),
      reading('left', [[-156 - x0, 0]])
    ])
    expect(frame.turnDeg).toBeCloseTo((Math.atan(0.4 / 240) * 180) / Math.PI, 9)
    // The lines themselves: the edge as it lies passes through what was touched.
    const a = (frame.turnDeg * Math.PI) / 180
    const off = (p: Place, n: Place, r: number) =>
      Math.cos(a) * n[0] * (p[0] - frame.shiftX) -
      Math.sin(a) * n[1] * (p[0] - frame.shiftX) +
      Math.sin(a) * n[0] * (p[1] - frame.shiftY) +
      Math.cos(a) * n[1] * (p[1] - frame.shiftY) -
      r
    expect(off([-120, -107 - y0], [0, -1], 107 + y0)).toBeCloseTo(0, 9)
    expect(off([-156 - x0, 0], [-1, 0], 156 + x0)).toBeCloseTo(0, 9)
  })

  it('find the turn as well as the theory of least squares says, over 400 seeded touchings', () => {
    // Only the turn of one edge is asked: σ of a slope of n places is σ/√Σ(x − x̄)² (Bevington & Robinson; memory).
    const xs = [-120, -60, 0, 60, 120]
    const { span } = chance(7)
    const sigma = 0.1
    const gauss = () => {
      let s = 0
      for (let k = 0; k < 12; k++) s += span(-0.5, 0.5)
      return s * sigma
    }
    const edges = [
      { of: { side: 'near' }, out: [0, -1] as const, at: xs.map(x => [x, -107] as const) },
      { of: { side: 'left' }, out: [-1, 0] as const, at: [[-156, 0]] as const }
    ]
    let sum = 0
    const times = 400
    for (let k = 0; k < times; k++) sum += (read(0, edges, [0.5, 1, -1], gauss).frame.turnDeg - 0.5) ** 2
    const want = (sigma / Math.sqrt(xs.reduce((s, x) => s + x * x, 0))) * (180 / Math.PI)
    // The spread of a spread over 400 is 3.5 %: three of them.
    expect(Math.sqrt(sum / times) / want).toBeGreaterThan(0.89)
    expect(Math.sqrt(sum / times) / want).toBeLessThan(1.11)
  })

  it('go with marks into one fit', () => {
    const frame = frames[1]!
    const move = [0.3, 2, -1] as const
    const marks = [
      [-100, -60],
      [120, 40]
    ].map(d => ({ drawn: d, measured: lies(frame, d as unknown as Place, ...move) }))
    const { frame: after, names } = read(1, EDGES.slice(0, 1), move, () => 0, [
      { id: 'marks-0001', at: '2026-11-28T09:00Z', kind: 'place', face: frame.up, marks }
    ])
    expect(after.turnDeg).toBeCloseTo(0.3, 8)
    expect(names).toEqual(['mark 1', 'mark 2', 'near side, touch 1', 'near side, touch 2'])
  })

  it('leave the frame as planned and say why where they do not settle it', () => {
    const one = read(0, EDGES.slice(0, 1), [0.5, 1, 1])
    expect(one.place).toBeNull()
    expect(one.frame.turnDeg).toBe(0)
    expect(one.unused[0]).toMatch(/allowed: two marks/)
    const nowhere = edgesRead(frames[0]!, stack.geometry, [
      readingSchema.parse({
        id: 'edge-0009',
        at: '2026-11-28T08:00Z',
        kind: 'edge',
        face: frames[0]!.up,
        along: [
          [-10, 0],
          [10, 0]
        ],
        measured: [[0, 0]],
        radius: 0
      })
    ])
    expect(nowhere.touches).toEqual([])
    expect(nowhere.refused[0]).toMatch(/^edge -10, 0 to 10, 0: allowed is a straight edge/)
  })

  it('count a later reading of an edge in the place of an earlier, and none of the other face', () => {
    const late = {
      id: 'edge-late1',
      at: '2026-11-28T10:00Z',
      kind: 'edge',
      face: frames[0]!.up,
      side: 'near',
      measured: [[0, -110]],
      radius: 1
    }
    const { names } = read(0, EDGES, [0, 0, 0], () => 0, [late])
    expect(names.filter(n => n.startsWith('near'))).toEqual(['near side, touch 1'])
    expect(read(0, [], [0, 0, 0], () => 0, [{ ...late, face: frames[1]!.up }]).place).toBeNull()
  })
})
