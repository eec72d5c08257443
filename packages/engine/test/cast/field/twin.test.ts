import { describe, expect, it } from 'vitest'
import type { FieldMaterial, ResinMaterial } from '../../../src/cast/field/field-problem.ts'
import { runField } from '../../../src/cast/field/field-run.ts'
import { once } from '../../resin/rows.ts'
import { altered, CLASSES } from '../../resin/sets.ts'
import { explicitField } from './field-twin.ts'
import { KERNELS } from './kernels.ts'
import { halved, type MouldCase, problemOf, twinOf, twinPour, worstPeak } from './mould-case.ts'

const BOARD: FieldMaterial = { kind: 'inert', kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 22 }
const TIMBER: FieldMaterial = { kind: 'inert', kWmK: 0.16, rhoCpJm3K: 1.02e6, startC: 20 }
const daily = (t: number): number => 22 + 3 * Math.sin((2 * Math.PI * t) / 86_400)

/**
 * A mould of 190 by 140 mm with one corner off, board below and round, an island of timber that ends half way up, and
 * up to three pours; columns and layers that are no multiples of four, layers of unequal height.
 */
function mould(resins: readonly ResinMaterial[], untilS: number): MouldCase {
  const last = resins.length - 1
  return {
    size: [19, 14, 10],
    dxM: 0.01,
    dyM: 0.01,
    dzM: [0.009, 0.009, 0.005, 0.005, 0.005, 0.006, 0.006, 0.005, 0.005, 0.005],
    cell: (ix, iy, iz) => {
      if (ix < 6 && iy < 3) return -1
      const wall = ix === 0 || ix === 18 || iy === 0 || iy === 13 || (ix < 7 && iy < 4)
      if (wall) return iz < 9 || ix > 9 ? 0 : -1
      if (iz < 2) return 0
      if (iz < 6 && (ix - 11) ** 2 / 16 + (iy - 7) ** 2 / 9 <= 1) return 1
      // in one corner the island is hollow below: air under resin is never, air under timber is
      if (iz === 5 && ix > 15 && iy > 10) return 1
      if (iz < 5 && ix > 15 && iy > 10) return -1
      if (iz < 5) return 2
      if (iz < 7) return 2 + Math.min(1, last)
      if (iz < 9) return ix > 9 && last > 2 ? 5 : 2 + Math.min(2, last)
      return -1
    },
    materials: [BOARD, TIMBER, ...resins],
    films: { floor: 5.9, side: 7.7, up: 10, down: 5, sideways: 8 },
    ambientC: daily,
    untilS
  }
}

const slow = (atS: number): ResinMaterial => ({
  kind: 'resin',
  resin: CLASSES.deep,
  atS,
  startC: 24,
  rateFactor: 4
})
const quick = altered(CLASSES.medium, {}, { m: 0.813, n: 1.74, diffusion: null })
const H = 3600

// The heavy count: cells of half the size, and the twin in quarter steps.
const FINE = process.env['CASTWRIGHT_TWIN'] === 'fine'

const CASES: readonly {
  readonly name: string
  readonly mould: MouldCase
  readonly dt: number
  readonly pours: readonly (readonly number[])[]
}[] = [
  {
    name: 'three pours, the last half of stones, k(α), diffusion limit',
    mould: mould(
      [
        { ...slow(0), pour: 0 },
        { ...slow(6 * H), startC: 27, pour: 1 },
        { ...slow(11 * H), pour: 2 },
        { ...slow(11 * H), pour: 2, stones: { k: 1.7, rhoCp: 1.05, share: 0.6 } }
      ],
      17 * H
    ),
    dt: 16,
    pours: [[2], [3], [4, 5]]
  },
  {
    name: 'two pours that mix themselves while liquid, multiplier 3',
    mould: mould(
      [
        { ...slow(0), liquidMultiplier: 3 },
        { ...slow(5 * H), liquidMultiplier: 3, startC: 20 }
      ],
      12 * H
    ),
    dt: 16,
    pours: [[2], [3]]
  },
  {
    name: 'one pour with exponents that are no whole numbers and no diffusion limit',
    mould: mould([{ kind: 'resin', resin: quick, atS: 0, startC: 23, rateFactor: 0.4 }], 14 * H),
    dt: 8,
    pours: [[2]]
  }
]

describe('the cast against its slow explicit twin on the same grid', () => {
  for (const { name, mould: coarse, dt, pours } of CASES) {
    const c = FINE ? halved(coarse) : coarse
    const twin = once(() => explicitField(twinOf(c), FINE ? dt / 4 : dt))
    for (const [kernel, make] of KERNELS)
      it(`${name}, ${kernel} kernel`, () => {
        const ours = runField(problemOf(c), make)
        expect(Math.abs(ours.energy.closure)).toBeLessThan(1e-3)
        expect(ours.energy.releasedJ).toBeGreaterThan(1e4)
        pours.forEach((own, i) => {
          const m = c.materials[own[0]!] as ResinMaterial
          const theirs = twinPour(c, twin(), own, m.atS)
          const pour = ours.pours[i]!
          const text = `pour ${i + 1}: ${JSON.stringify(theirs)} ${pour.peakC} ${pour.meanGelS} ${pour.mostGelS}`
          // the pour must have done something, or the check says nothing
          expect(theirs.peakC, text).toBeGreaterThan(30)
          expect(Math.abs(pour.peakC - theirs.peakC), text).toBeLessThan(0.2)
          expect(Math.abs(pour.meanGelS! / theirs.meanGelS - 1), text).toBeLessThan(2e-3)
          expect(Math.abs(pour.mostGelS! / theirs.mostGelS - 1), text).toBeLessThan(2e-3)
        })
        expect(worstPeak(c, twin(), ours), 'worst cell').toBeLessThan(0.25)
      })
  }
})
