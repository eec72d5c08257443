import { describe, expect, it } from 'vitest'
import { timberElastic } from '../../src/fits/bow-timber.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { checkPiece, usualShop } from '../../src/piece/read.ts'
import { plan } from '../../src/plan.ts'
import { finishedVolumes, massOf } from '../../src/stack/volume.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'
import { soundPiece } from '../findings/sound-piece.ts'

type Supports = NonNullable<PieceDocument['supports']>

/** One board 800 × 300 × 20, nothing flattened, its grain along x. */
const board = (supports: Supports, more: Partial<PieceDocument> = {}): PieceDocument => ({
  castwright: 1,
  name: 'a shelf',
  outline: { rectangle: [800, 300] },
  flatten: { back: 0, front: 0 },
  timbers: [
    {
      id: 'board',
      species: 'oak-white',
      outline: { rectangle: [800, 300] },
      thickness: 20,
      moisture: 8.5,
      grain: 0
    }
  ],
  pours: [{ id: 'dot', kind: 'inlay', resin: 'thin', fill: 'cut', into: ['hole'] }],
  cuts: [{ id: 'hole', face: 'front', shape: { circle: 6 }, depth: 2 }],
  supports,
  ...more
})
const rails = (x: number): Supports => ({
  rails: [
    { from: [-x, -150], to: [-x, 150] },
    { from: [x, -150], to: [x, 150] }
  ]
})
const use = (piece: PieceDocument) => worked({ piece }).inUse!

describe('a piece on its supports', () => {
  it('sags on two rails at its ends by 2·5·q·L⁴/(384·E·I), grain along the span or across it', () => {
    for (const grain of [0, 90]) {
      const piece = board(rails(400))
      const work = worked({ piece: { ...piece, timbers: [{ ...piece.timbers![0]!, grain }] } })
      const { e1MPa, e2MPa } = timberElastic(work.materials.timbers[0]!, 'flat')
      const e = grain === 0 ? e1MPa : e2MPa
      const q = (9.80665e-3 * work.inUse!.massG) / 800
      const form = (2 * 5 * q * 800 ** 4) / (384 * e * ((300 * 20 ** 3) / 12))
      expect(work.inUse!.sag!.mm / form).toBeCloseTo(1, 6)
      expect(work.inUse!.sag!.bandMm[0] * 2).toBeCloseTo(work.inUse!.sag!.mm, 9)
      expect(work.inUse!.sag!.limitMm).toBeCloseTo(800 / 300, 9)
      expect(work.inUse!.overhang).toBeNull()
    }
  })

  // Legs at 44.1, 50 (thirty of them) and 50.11 % of the length: counted from the first they made two lines 0.1 mm apart.
  it('counts legs that stand nearly abreast as one line', () => {
    const abreast = Array.from({ length: 30 }, (_, k): [number, number] => [0, -140 + k])
    const { sag } = use(board({ legs: [[-47.2, 0], ...abreast, [0.9, 140], [320, 0], [320, 100]] }))
    expect(sag!.mm).toBeGreaterThan(0)
    expect(sag!.overMm).toBeCloseTo(321.4, 0)
  })

  // Three legs of which the search for a better place once made a line, rounded to whole mm.
  it('is never mended onto supports that stand on one line', () => {
    const piece = board({
      legs: [
        [390, 0],
        [391, 3],
        [398, 0]
      ],
      held: 'loose'
    })
    const { findings } = plan(
      { piece: checkPiece(piece, 'piece'), shop: usualShop() },
      { asOf: '2026-11-01T08:00Z', effort: 'preview' }
    ).plan
    expect(findings.find(f => f.id === 'tips-over')?.severity).toBe('stop')
  })

  it('sags more under a load, in proportion to all that it carries', () => {
    const alone = use(board(rails(400)))
    const loaded = use(board({ ...rails(400), load: alone.massG }))
    expect(loaded.sag!.mm / alone.sag!.mm).toBeCloseTo(2, 6)
  })

  it('weighs by its cores what it weighs by its volumes, within 3 %', () => {
    for (let seed = 1; seed <= 6; seed++) {
      const piece = soundPiece(seed)
      const work = worked({
        piece: {
          ...piece,
          supports: {
            legs: [
              [-50, -40],
              [50, -40],
              [0, 50]
            ]
          }
        }
      })
      const mass = massOf(finishedVolumes(work.stack), key => {
        const [kind, i] = key.split(' ')
        return kind === 'timber'
          ? work.floating[Number(i)]!.densityKgM3 / 1000
          : work.materials.resins[kind === 'pour' ? Number(i) : 0]!.record.model!.bulk.curedKgM3 / 1000
      })
      expect(Math.abs(work.inUse!.massG / mass - 1), `seed ${seed}`).toBeLessThan(0.03)
    }
  })

  it('moves at its screws as the board does, and more for a board that moves more', () => {
    const work = worked({
      piece: board({
        ...rails(300),
        screws: [
          [0, 120],
          [300, 0]
        ]
      })
    })
    const [across, along] = work.inUse!.screws
    const season = work.seasons[0]!
    // 120 mm of 300 across the grain, from the middle.
    expect(across!.along).toBe('y')
    expect(across!.toDryMm).toBeCloseTo((season.toDryMm![1] * 120) / 300, 6)
    expect(across!.toDampMm).toBeCloseTo((season.toDampMm![1] * 120) / 300, 6)
    expect(across!.needMm[0]).toBeCloseTo(2 * Math.max(Math.abs(across!.toDryMm), across!.toDampMm), 9)
    expect(across!.needMm[1] / across!.needMm[0]).toBeCloseTo(1.25, 6)
    expect(along!.needMm[0]).toBeLessThan(0.2 * across!.needMm[0])
    // Held fast at the screw itself, it goes nowhere.
    const fast = worked({ piece: board({ ...rails(300), screws: [[0, 120]], fixed: [0, 120] }) })
    expect(fast.inUse!.screws[0]!.needMm[0]).toBe(0)
  })

  it('of two planks with resin between moves less at its screws than planks alone', () => {
    const planks: PieceDocument = {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, grain: 90 })),
      supports: {
        legs: [
          [-140, -90],
          [140, -90],
          [140, 90],
          [-140, 90]
        ]
      }
    }
    const work = worked({ piece: planks })
    const season = work.seasons[0]!
    const screw = work.inUse!.screws[0]!
    const free = 2 * Math.abs((season.toDampMm![1] * 140) / season.acrossMm)
    expect(screw.along).toBe('x')
    expect(screw.needMm[0]).toBeLessThan(free)
    // The planks reach from 50 to 140 mm of the 140; a little more is held along by the resin.
    expect(screw.needMm[0]).toBeGreaterThan((0.85 * free * 90) / 140)
  })

  it('tips where its middle of mass stands outside, and not where nothing hangs over', () => {
    expect(use(board(rails(400))).tipsAtG).toBeNull()
    const legs: Supports = {
      legs: [
        [100, -100],
        [300, -100],
        [300, 100]
      ],
      held: 'loose'
    }
    expect(use(board(legs)).tipsAtG).toBe(0)
  })

  it('says which place does not lie under the piece, and when all stand on one line', () => {
    expect(() =>
      use(
        board({
          legs: [
            [-500, 0],
            [100, 0],
            [0, 100]
          ]
        })
      )
    ).toThrow(
      'supports.legs[0]: found a place at [-500, 0], beside the finished piece; allowed: places inside its outline'
    )
    expect(() =>
      use(
        board({
          legs: [
            [-100, 0],
            [100, 0],
            [0, 0]
          ]
        })
      )
    ).toThrow('supports that stand on one line')
    expect(() =>
      use(
        board({
          ...rails(300),
          legs: [
            [-100, 0],
            [100, 0],
            [0, 50]
          ]
        })
      )
    ).toThrow()
  })
})

describe('what has to be lifted', () => {
  it('is the casting with its mould when it leaves that, and the bare piece in the end', () => {
    const work = worked({ piece: PLAIN })
    const [out, , ...rest] = work.moves
    const last = work.moves.at(-1)!
    expect(work.steps[out!.step]!.kind).toBe('demould')
    expect(out!.mouldG).toBeGreaterThan(0)
    const poured = work.stack.pours[0]!.massG + work.floating.reduce((sum, f) => sum + f.massG, 0)
    expect(out!.massG - out!.mouldG).toBeCloseTo(poured, 6)
    expect(rest.length).toBeGreaterThan(0)
    const mass = massOf(finishedVolumes(work.stack), key =>
      key.startsWith('timber') ? work.floating[0]!.densityKgM3 / 1000 : 1100 / 0.95 / 1000
    )
    expect(Math.abs(last.massG / mass - 1)).toBeLessThan(0.05)
  })
})
