import { describe, expect, it } from 'vitest'
import { RESINS } from '../../src/catalogue/resin.ts'
import { RESIN_ELASTIC } from '../../src/catalogue/resin-elastic.ts'
import { TIMBERS } from '../../src/catalogue/timber.ts'
import { ELASTIC } from '../../src/catalogue/timber-elastic.ts'
import type { Bow, BowRow } from '../../src/fits/bow.ts'
import { CELLS, cellsOf } from '../../src/fits/bow-cells.ts'
import { contractionOf, filmContraction } from '../../src/fits/bow-resin.ts'
import { timberElastic } from '../../src/fits/bow-timber.ts'
import { unlikeBowOf } from '../../src/fits/bow-unlike.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { strainAfterGel } from '../../src/resin/shrinkage.ts'
import { bounds } from '../../src/shape/measure.ts'
import { coreAt, coresAfter } from '../../src/stack/core.ts'
import { gradientCupMm, twoLayerCupMm } from '../../src/timber/cup.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'
import { soundPiece } from '../findings/sound-piece.ts'
import { chance } from '../stack/random.ts'

const bow = (piece: PieceDocument): Bow => worked({ piece }).bow!
const at = (of: Bow, when: BowRow['when']) => of.rows.filter(r => r.when === when)

/** A board with a skin of resin over it, as it lies in the mould. */
const skinned = (more: Partial<PieceDocument> = {}): PieceDocument => ({
  ...PLAIN,
  outline: { rectangle: [300, 200] },
  flatten: { back: 0, front: 0 },
  timbers: [
    {
      id: 'board',
      species: 'ash-white',
      outline: { rectangle: [306, 206] },
      thickness: 20,
      moisture: 8.5,
      grain: 90
    }
  ],
  pours: [{ id: 'skin', resin: 'deep', depth: 24 }],
  ...more
})

describe('the bow of a piece', () => {
  it('of equal planks with a river of one pour between them is none', () => {
    for (const row of bow(PLAIN).rows) {
      expect(row.front.bandMm[1]).toBeLessThan(1e-6)
      expect(row.back.bandMm[1]).toBeLessThan(1e-6)
    }
  })

  it('in use of a skin over a board is Timoshenko’s strip, within 15 %', () => {
    // The strip is narrow; along the grain the board holds the skin, which adds its ν to the pull across.
    const work = worked({ piece: skinned() })
    const season = work.seasons[0]!
    const elastic = timberElastic(work.materials.timbers[0]!, 'flat')
    const { nu12, e2MPa } = elastic
    expect(nu12).toBeGreaterThan(0)
    const points = ['driest', 'dampest'] as const
    const rows = points.map(when => at(work.bow!, when)[0]!)
    const strips = [season.toDryMm, season.toDampMm].map(moved =>
      twoLayerCupMm(
        {
          thickness1Mm: 4,
          modulus1MPa: RESIN_ELASTIC.modulusMPa,
          thickness2Mm: 20,
          modulus2MPa: e2MPa,
          strainMismatch: moved![1] / season.acrossMm
        },
        300
      )
    )
    // What the seasons alone do is the difference between the two: the cure is in both. 0.65 of it is left by creep.
    const signed = rows.map(r => (r.front.hollow ? 1 : -1) * r.front.mm)
    expect(rows[1]!.front.along).toBe('x')
    const ours = (signed[1]! - signed[0]!) / 0.65
    const theirs = strips[1]! - strips[0]!
    expect(ours / theirs).toBeGreaterThan(0.85)
    expect(ours / theirs).toBeLessThan(1.15)
  })

  it('is hollow on the side that shrinks: resin when it cures, timber when it dries', () => {
    const rows = bow(skinned())
    expect(at(rows, 'demoulded')[0]!.front.hollow).toBe(true)
    expect(at(rows, 'demoulded')[0]!.back.hollow).toBe(false)
    expect(at(rows, 'driest')[0]!.back.hollow).toBe(true)
    expect(at(rows, 'dampest')[0]!.front.hollow).toBe(true)
  })

  it('turns with the piece, and goes to the other face when it is cast face down', () => {
    const piece = skinned()
    const turned = skinned({
      outline: { rectangle: [200, 300] },
      timbers: [{ ...piece.timbers![0]!, outline: { rectangle: [206, 306] }, grain: 0 }]
    })
    const down = skinned({ down: 'front' })
    const [a, b, c] = [bow(piece), bow(turned), bow(down)]
    a.rows.forEach((row, k) => {
      // Cells are looked at in another pattern, but they are all alike here.
      expect(b.rows[k]!.front.mm).toBeCloseTo(row.front.mm, 9)
      expect(b.rows[k]!.front.along).not.toBe(row.front.along)
      expect(c.rows[k]!.back.mm).toBeCloseTo(row.front.mm, 9)
      expect(c.rows[k]!.back.hollow).toBe(row.front.hollow)
    })
  })

  it('is gone on the face that was just flattened, and the other face has what that set free', () => {
    const rows = bow(skinned({ flatten: { back: 1, front: 1 } }))
    const [back, front] = at(rows, 'flattened')
    expect(back!.flattens!.face).toBe('back')
    expect(back!.back.mm).toBe(0)
    expect(back!.front.mm).toBeGreaterThan(0)
    expect(front!.front.mm).toBe(0)
    expect(front!.back.mm).toBeGreaterThan(0)
    expect(front!.flattens!.before.mm).toBeCloseTo(back!.front.mm, 12)
  })

  it('left by the planned order is that of its rows, and another order leaves less where one turn is added', () => {
    const { rows, order } = bow(skinned({ flatten: { back: 2, front: 1 } }))
    const way = (name: string) => order.find(o => o.way === name)!
    const last = rows.filter(r => r.when === 'flattened').at(-1)!
    // Cores of the day against cores clipped to the planes of that day.
    expect(way('as planned').leavesMm).toBeCloseTo(last[way('as planned').face].mm, 6)
    expect(way('as planned').face).toBe('back')
    expect(way('other way round').face).toBe('front')
    expect(way('once more').leavesMm).toBeLessThan(way('other way round').leavesMm)
    expect(way('same depth').leavesMm).toBeGreaterThan(way('as planned').leavesMm)
    // The other way round really planned gives what it promised.
    const steps = [
      'make mould',
      'set timber',
      'pour',
      'wait',
      'demould',
      'front',
      'turn over',
      'back',
      'deliver'
    ]
    const given = skinned({
      flatten: { back: 2, front: 1 },
      steps: steps.map(s =>
        s === 'front' || s === 'back'
          ? { do: 'flatten', face: s }
          : s === 'pour'
            ? { do: 'pour', what: 'skin' }
            : s === 'wait'
              ? { do: 'wait', for: '9 d' }
              : { do: s }
      ) as NonNullable<PieceDocument['steps']>
    })
    const turned = at(bow(given), 'flattened').at(-1)!
    expect(turned.front.mm / way('other way round').leavesMm).toBeGreaterThan(0.9)
    expect(turned.front.mm / way('other way round').leavesMm).toBeLessThan(1.1)
  })

  it('left by any order is none where the stack is alike towards both faces', () => {
    const { order } = bow(PLAIN)
    expect(order.map(o => o.way)).toEqual(['as planned', 'other way round', 'once more'])
    for (const o of order) expect(o.leavesMm).toBeLessThan(1e-6)
    expect(bow(skinned()).order).toEqual([])
  })

  it('under a flood coat on one face is that of a skin, and none under one on each', () => {
    const coated = (finish: NonNullable<PieceDocument['finish']>) =>
      worked({ piece: skinned({ pours: [{ id: 'skin', resin: 'deep', depth: 20 }], finish }) })
    const both = coated({ both: { coat: 'flood-coat' } })
    for (const row of both.bow!.rows) expect(row.front.bandMm[1]).toBeLessThan(1e-6)
    const one = coated({ front: { coat: 'flood-coat' }, back: { coat: 'epoxy-seal' } })
    const film = one.faces[0].filmMm[1]
    const season = one.seasons[0]!
    expect(film).toBeGreaterThan(1.9)
    const step = at(one.bow!, 'coated')[0]!
    expect(step.front).toMatchObject({ hollow: true, along: 'x' })
    const strip = twoLayerCupMm(
      {
        thickness1Mm: film,
        modulus1MPa: RESIN_ELASTIC.modulusMPa,
        thickness2Mm: 20,
        modulus2MPa: timberElastic(one.materials.timbers[0]!, 'flat').e2MPa,
        strainMismatch: (season.toDampMm![1] - season.toDryMm![1]) / season.acrossMm
      },
      300
    )
    const signed = (['driest', 'dampest'] as const).map(when => {
      const { hollow, mm } = at(one.bow!, when)[0]!.front
      return hollow ? mm : -mm
    })
    expect((signed[1]! - signed[0]!) / 0.65 / strip).toBeGreaterThan(0.85)
    expect((signed[1]! - signed[0]!) / 0.65 / strip).toBeLessThan(1.15)
  })

  it('is none once the skin is planed off, and less the thinner it is', () => {
    const left = (front: number) => at(bow(skinned({ flatten: { back: 1, front } })), 'dampest')[0]!.front.mm
    const bows = [1, 2, 3].map(left)
    expect(bows[0]).toBeGreaterThan(bows[1]!)
    expect(bows[1]).toBeGreaterThan(bows[2]!)
    expect(left(4.2)).toBeLessThan(1e-6)
  })

  it('grows with shrinkage, and lies within its band', () => {
    const at5 = at(
      bow(skinned({ pours: [{ id: 'skin', resin: 'deep', depth: 24, shrinkage: 3 }] })),
      'demoulded'
    )[0]!
    const at6 = at(
      bow(skinned({ pours: [{ id: 'skin', resin: 'deep', depth: 24, shrinkage: 6 }] })),
      'demoulded'
    )[0]!
    expect(at6.front.mm).toBeGreaterThan(at5.front.mm)
    for (let seed = 1; seed <= 12; seed++)
      for (const row of bow(soundPiece(seed)).rows)
        for (const face of [row.front, row.back]) {
          expect(face.mm).toBeGreaterThanOrEqual(face.bandMm[0] - 1e-12)
          expect(face.mm).toBeLessThanOrEqual(face.bandMm[1] + 1e-12)
        }
  })

  it('is not told where a family is not predicted', () => {
    expect(
      worked({ piece: skinned({ pours: [{ id: 'skin', resin: 'polyester', depth: 24 }] }) }).bow
    ).toBeNull()
  })

  it('lets more pass over a longer piece, and less when less is wanted', () => {
    expect(bow(PLAIN).flatnessMm).toBe(0.5)
    expect(bow({ ...PLAIN, kind: 'dial' }).flatnessMm).toBe(0.3)
    const wanted = bow(skinned({ flatness: 0.2, outline: { rectangle: [300, 200] } }))
    expect(wanted.rows[0]!.front.limitMm).toBeCloseTo(0.2, 12)
  })
})

describe('the bow of a piece whose faces are finished unlike', () => {
  it('of a board alone is that of its gradient: C·ΔM/t over its width', () => {
    const work = worked({ piece: { ...skinned(), pours: [{ id: 'skin', resin: 'deep', depth: 20 }] } })
    const { stack, materials, casts, clock, seasons, shop } = work
    const season = seasons[0]!
    for (const open of ['front', 'back'] as const) {
      const bow = unlikeBowOf({ stack, materials, casts, clock, seasons, shop }, open)!
      const free = gradientCupMm({
        coefficientPerPct: season.coefficientPerPct!,
        moistureDifferencePct: (season.dampPct - season.dryPct) / 2,
        widthMm: 300,
        thicknessMm: 20
      })
      // The open face swells and stands up; 0.65 of it is left by creep.
      expect(bow.mm / (0.65 * free)).toBeCloseTo(1, 6)
      expect(bow).toMatchObject({ along: 'x', overMm: 300, hollow: false })
    }
  })
})

describe('what a pour pulls', () => {
  it('is nothing before it is stiff, and never more than all that falls after gel', () => {
    const work = worked({ piece: skinned() })
    const { kinetics } = RESINS.find(r => r.id === 'deep')!.model!
    const cast = work.casts[0]!
    const pull = contractionOf(cast, kinetics, [0.05, 0.05], 20.5)
    const [central, upper] = pull.stiffMin
    expect(upper).toBeLessThan(central)
    expect(upper).toBeGreaterThan(cast.windows.gelMin!)
    expect(pull.at(upper - 1)).toEqual([-0, -0].map(Math.abs))
    const end = pull.at(Number.POSITIVE_INFINITY)
    const most =
      strainAfterGel(0.05, kinetics.gelConversion) + RESIN_ELASTIC.expansionPerK * (cast.peakC - 19)
    expect(-end[0]).toBeGreaterThan(0)
    expect(-end[1]).toBeGreaterThan(-end[0])
    expect(-end[1]).toBeLessThan(most)
    // It only ever grows while the room does not warm it.
    expect(-pull.at(central + 60)[0]).toBeLessThanOrEqual(-end[0])
  })
})

describe('what a flood coat pulls', () => {
  it('is no more than all that falls after gel, and nothing of a family that is not predicted', () => {
    const thin = RESINS.find(r => r.id === 'thin')!
    const [central, upper] = filmContraction(thin, 20.5)
    expect(-central).toBeGreaterThan(0)
    expect(-upper).toBeGreaterThan(-central)
    expect(-upper).toBeLessThan(
      strainAfterGel(thin.shrinkageBandPct[1] / 100, thin.model!.kinetics.gelConversion)
    )
    expect(filmContraction(RESINS.find(r => r.id === 'polyester')!, 20.5)).toEqual([0, 0])
  })
})

describe('elastic constants by the rings', () => {
  it('of walnut are those of its row', () => {
    const walnut = TIMBERS.find(t => t.id === 'walnut-black')!
    const along = 1.1 * walnut.modulus12MPa!
    const flat = timberElastic(walnut, 'flat')
    expect(flat.e1MPa).toBeCloseTo(along, 6)
    expect(flat.e2MPa).toBeCloseTo(0.056 * along, 6)
    expect(timberElastic(walnut, 'quarter').e2MPa).toBeCloseTo(0.106 * along, 6)
    expect(timberElastic(walnut, 'quarter').g12MPa).toBeCloseTo(0.085 * along, 6)
  })

  it('are softest across with the rings at 45°, for every species measured', () => {
    for (const row of ELASTIC.filter(r => r.shearRadialTangentialRatio !== null)) {
      const timber = TIMBERS.find(t => t.id === row.id)
      if (timber === undefined) continue
      const of = (rings: 'flat' | 'rift' | 'quarter') => timberElastic(timber, rings).e2MPa
      expect(of('rift'), row.id).toBeLessThan(Math.max(of('flat'), of('quarter')))
    }
  })
})

describe('cores over the plan', () => {
  it('are the cores of the first so many events', () => {
    for (let seed = 1; seed <= 10; seed++) {
      const { stack } = worked({ piece: soundPiece(seed) })
      const { span } = chance(seed)
      const counts = stack.states.map(s => s.events)
      for (let k = 0; k < 20; k++) {
        const [x, y] = [span(-200, 200), span(-100, 100)]
        const played = coresAfter(stack.geometry, stack.events, x, y, counts)
        counts.forEach((count, i) => {
          expect(played[i]).toEqual(coreAt(stack.geometry, stack.events.slice(0, count), x, y))
        })
      }
    }
  })

  it('meet an edge at its share of the piece, within a tenth of a cell', () => {
    for (const edge of [-37, -12.5, 3, 41]) {
      const { stack } = worked({
        piece: {
          ...PLAIN,
          timbers: [
            {
              id: 'left',
              species: 'ash-white',
              outline: {
                polygon: [
                  [-153, -103],
                  [edge, -103],
                  [edge, 103],
                  [-153, 103]
                ]
              },
              thickness: 20,
              moisture: 8.5
            }
          ]
        }
      })
      const cells = cellsOf(stack, bounds(stack.geometry.outline), [stack.states.at(-1)!.events])
      const share =
        cells.columns.reduce((sum, column) => {
          const all = column.reduce((n, c) => n + c.count, 0)
          const timber = column.reduce(
            (n, c) => n + (c.cores[0]!.some(p => p.material.kind === 'timber') ? c.count : 0),
            0
          )
          return sum + timber / all
        }, 0) / CELLS
      expect(Math.abs(share - (edge + 150) / 300) * CELLS).toBeLessThan(0.1)
    }
  })
})
