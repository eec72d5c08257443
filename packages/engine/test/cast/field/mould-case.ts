import type { FieldMaterial, FieldProblem, ResinMaterial } from '../../../src/cast/field/field-problem.ts'
import type { FieldResult } from '../../../src/cast/field/field-result.ts'
import type { ResinModel } from '../../../src/resin/model.ts'
import type { TwinCase, TwinMaterial, TwinResult } from './field-twin.ts'

/** A cast in the words of the tests: cells by a function, materials once, for the engine and for the twin. */
export interface MouldCase {
  readonly size: readonly [nx: number, ny: number, nz: number]
  readonly dxM: number
  readonly dyM: number
  readonly dzM: readonly number[]
  /** Index of the material; −1: nothing ever. */
  readonly cell: (ix: number, iy: number, iz: number) => number
  readonly materials: readonly FieldMaterial[]
  readonly films: FieldProblem['films']
  readonly ambientC: (timeS: number) => number
  readonly untilS: number
}

export function problemOf(c: MouldCase, control?: FieldProblem['control']): FieldProblem {
  const [nx, ny, nz] = c.size
  const cells = new Uint8Array(nx * ny * nz)
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++)
      for (let iz = 0; iz < nz; iz++) cells[(iy * nx + ix) * nz + iz] = c.cell(ix, iy, iz) + 1
  const { dxM, dyM, dzM, materials, films, ambientC, untilS } = c
  const problem = { nx, ny, dxM, dyM, dzM, cells, materials, films, ambientC, untilS }
  return control ? { ...problem, control } : problem
}

/** The same mould in cells of half the size in all directions. */
export function halved(c: MouldCase): MouldCase {
  const [nx, ny, nz] = c.size
  return {
    ...c,
    size: [2 * nx, 2 * ny, 2 * nz],
    dxM: c.dxM / 2,
    dyM: c.dyM / 2,
    dzM: c.dzM.flatMap(h => [h / 2, h / 2]),
    cell: (ix, iy, iz) => c.cell(ix >> 1, iy >> 1, iz >> 1)
  }
}

export function twinOf(c: MouldCase): TwinCase {
  return {
    size: c.size,
    dx: c.dxM,
    dy: c.dyM,
    dz: c.dzM,
    cell: c.cell,
    materials: c.materials.map(m =>
      m.kind === 'resin' ? twinResin(m) : { k: m.kWmK, rhoCp: m.rhoCpJm3K, startC: m.startC }
    ),
    films: c.films,
    airC: c.ambientC,
    untilS: c.untilS
  }
}

function twinResin(r: ResinMaterial): TwinMaterial {
  const { kinetics: k, flow, bulk }: ResinModel = r.resin
  const stones = r.stones ?? { k: 1, rhoCp: 1, share: 1 }
  const factor = r.rateFactor ?? 1
  return {
    k: bulk.kLiquidWmK * stones.k,
    kSlope: bulk.kSlopeWmK * stones.k,
    multiplier: r.liquidMultiplier ?? 1,
    rhoCp: bulk.liquidKgM3 * bulk.cpJkgK * stones.rhoCp,
    startC: r.startC,
    atS: r.atS,
    cure: {
      k1: factor * k.k2At25PerS * k.k1OverK2At25,
      k2: factor * k.k2At25PerS,
      e1: k.e1JPerMol,
      e2: k.e2JPerMol,
      m: k.m,
      n: k.n,
      rhoH: bulk.liquidKgM3 * k.heatJPerKg * stones.share,
      gel: k.gelConversion,
      glass: k.diffusion ? [k.tg0C, k.tgInfC, k.lambda, k.diffusion.offsetK, k.diffusion.widthK] : null,
      eta: [flow.eta25PaS, flow.etaEJPerMol, flow.c1, flow.c2]
    }
  }
}

/** What the twin says of a pour: materials `own`, poured at `atS`. */
export function twinPour(
  c: MouldCase,
  twin: TwinResult,
  own: readonly number[],
  atS: number
): {
  readonly peakC: number
  readonly meanGelS: number
  readonly mostGelS: number
  readonly firstGelS: number
} {
  const [nx, ny] = c.size
  let peakC = -1e9
  const gels: { readonly s: number; readonly volume: number }[] = []
  for (let i = 0; i < twin.material.length; i++) {
    if (!own.includes(twin.material[i]!)) continue
    peakC = Math.max(peakC, twin.peakC[i]!)
    gels.push({ s: twin.gelS[i]! - atS, volume: c.dzM[Math.floor(i / (nx * ny))]! })
  }
  gels.sort((a, b) => a.s - b.s)
  const whole = gels.reduce((sum, g) => sum + g.volume, 0)
  let below = 0
  let mostGelS = Number.NaN
  for (const g of gels) {
    below += g.volume
    if (Number.isNaN(mostGelS) && below >= 0.95 * whole * (1 - 1e-9)) mostGelS = g.s
  }
  const meanGelS = gels.reduce((sum, g) => sum + (g.s * g.volume) / whole, 0)
  return { peakC, meanGelS, mostGelS, firstGelS: gels[0]!.s }
}

/** Largest difference of the highest temperatures of single cells, K. */
export function worstPeak(c: MouldCase, twin: TwinResult, ours: FieldResult): number {
  const [nx, ny, nz] = c.size
  let most = 0
  for (let iz = 0; iz < nz; iz++)
    for (let iy = 0; iy < ny; iy++)
      for (let ix = 0; ix < nx; ix++) {
        const i = (iz * ny + iy) * nx + ix
        if (twin.material[i]! < 0) continue
        const off = Math.abs(ours.at(ix, iy, iz).peakC - twin.peakC[i]!)
        if (!(off <= most)) most = off
      }
  return most
}
