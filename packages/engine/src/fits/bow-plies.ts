import type { PourCast } from '../cast/cast.ts'
import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import { RESINS } from '../catalogue/resin.ts'
import { RESIN_ELASTIC } from '../catalogue/resin-elastic.ts'
import { grainDegOf } from '../piece/grain.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Layer, Shape } from '../plate/laminate.ts'
import { FLAT } from '../plate/laminate.ts'
import type { Plane, Stiffness } from '../plate/ply.ts'
import { isotropic, stiffnessAt, strainAt } from '../plate/ply.ts'
import { inradius } from '../shape/inradius.ts'
import type { Material } from '../stack/event.ts'
import type { Stack } from '../stack/stack.ts'
import { finishedThickness, sideOf } from '../stack/stack.ts'
import type { Cell } from './bow-cells.ts'
import type { BowMoment } from './bow-moment.ts'
import { FILM } from './bow-moment.ts'
import type { Contraction } from './bow-resin.ts'
import { filmContraction } from './bow-resin.ts'
import { timberElastic } from './bow-timber.ts'
import type { Season } from './season.ts'

export interface BowInput {
  readonly stack: Stack
  readonly materials: Materials
  readonly casts: readonly (PourCast | null)[]
  readonly clock: readonly StepTime[]
  readonly seasons: readonly Season[]
  readonly shop: Shop
  /** Finish of either face; left out: none. */
  readonly faces?: readonly FinishedFace[]
}

/** What of a face's finish counts: films of a flood coat, mm. */
interface FinishedFace {
  readonly face: Face
  readonly coat: { readonly kind: string } | null
  readonly filmMm: readonly [low: number, middle: number, high: number]
}

/** Flood coats of the finish: thickness by face, mm. */
export function floodFilms({ faces = [] }: BowInput): Map<Face, number> {
  return new Map(
    faces.flatMap(f => (f.coat?.kind === 'flood' && f.filmMm[1] > 0 ? [[f.face, f.filmMm[1]] as const] : []))
  )
}

/**
 * An inlay so many times as wide as the piece is thick counts as a layer of it: what is held at its ends alone carries
 * its full stress only about one thickness in from each (Saint-Venant; textbook), so that a third of it is left.
 */
const LOCAL = 3

/** Movement of a single board may be so much larger than its species' (season.ts). */
export const MOST_MOVEMENT = 1.25

/** What flood coats of the finish are reckoned as. */
const THIN = RESINS.find(r => r.id === 'thin')!

const NOTHING: Plane = [0, 0, 0]

/** Thinner plies, and cross-sections that hold less in the mean, are taken for nothing, mm. */
const SLIVER_MM = 0.02
const LEAST_MM = 0.1

/** Heights between which a piece is left standing. */
export type Within = readonly [low: number, high: number]
const EVERYWHERE: Within = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]

/** What each material of a piece is as a ply, and the strain it has by itself at a moment. */
export class Plies {
  private readonly input: BowInput
  private readonly cures: readonly (Contraction | null)[]
  private readonly resin: Stiffness
  private readonly narrow: readonly boolean[]
  private readonly coats: ReadonlyMap<Face, number>
  private readonly film: readonly [number, number]
  private readonly timbers: readonly { readonly stiffness: Stiffness; readonly grainDeg: number }[]

  constructor(input: BowInput, cures: readonly (Contraction | null)[]) {
    this.input = input
    this.cures = cures
    this.resin = stiffnessAt(isotropic(RESIN_ELASTIC.modulusMPa, RESIN_ELASTIC.poisson), 0)
    const { night, day } = input.shop.climate
    this.coats = floodFilms(input)
    this.film = filmContraction(THIN, (night + day) / 2)
    const { piece, geometry, entries } = input.stack
    const least = LOCAL * finishedThickness(input.stack)
    this.narrow = piece.pours.map(
      p =>
        p.kind === 'inlay' &&
        entries.cuts
          .filter(c => p.into?.includes(c.id))
          .every(c => {
            const region = geometry.cutRegions[c.index]
            return (region == null ? (c.value.width ?? 0) : 2 * inradius(region, 0.1).radiusMm) < least
          })
    )
    this.timbers = piece.timbers.map((t, i) => {
      const grainDeg = grainDegOf(t, geometry.timbers[i]!.upper)
      return {
        grainDeg,
        stiffness: stiffnessAt(timberElastic(input.materials.timbers[i]!, t.rings), grainDeg)
      }
    })
  }

  /**
   * The plies of one cross-section at its m-th moment, side by side by their share of it.
   * @param joined shape of the section when what a material is joined it; undefined: flat and unstrained
   * @param within heights between which it stands
   */
  layers(
    cells: readonly Cell[],
    m: number,
    moment: BowMoment,
    end: 0 | 1,
    joined: (material: Material) => Shape | undefined,
    [low, high]: Within = EVERYWHERE
  ): Layer[] {
    const total = cells.reduce((sum, c) => sum + c.count, 0)
    const layers: Layer[] = []
    for (const cell of cells) {
      const core = cell.cores[m]!
      for (const [k, { from, to, material: own }] of core.entries()) {
        const material = this.local(own) ? (core[k - 1] ?? core[k + 1])?.material : own
        if (material === undefined || this.local(material)) continue
        const stiffness = this.stiffness(material)
        if (stiffness === null || Math.min(to, high) - Math.max(from, low) < SLIVER_MM) continue
        layers.push({
          lowMm: Math.max(from, low),
          highMm: Math.min(to, high),
          stiffness,
          share: cell.count / total,
          free: this.free(material, moment, end),
          joined: joined(material) ?? FLAT
        })
      }
    }
    const left = layers.reduce((sum, l) => sum + l.share! * (l.highMm - l.lowMm), 0)
    return left < LEAST_MM ? [] : [...layers, ...this.films(moment, end, joined)]
  }

  // Flood coats that are on by then, over the finished faces.
  private films(moment: BowMoment, end: 0 | 1, joined: (material: Material) => Shape | undefined): Layer[] {
    const { stack } = this.input
    return [...this.coats].flatMap(([face, mm]): Layer[] => {
      if (!moment.pouredMin.has(FILM[face])) return []
      const high = sideOf(stack.piece, face) === 'high'
      const e = this.film[end]
      return [
        {
          lowMm: high ? stack.finishedHigh : stack.finishedLow - mm,
          highMm: high ? stack.finishedHigh + mm : stack.finishedLow,
          stiffness: this.resin,
          free: [e, e, 0],
          joined: joined({ kind: 'pour', index: FILM[face] }) ?? FLAT
        }
      ]
    })
  }

  /** Whether it is too narrow to be a layer of the piece. */
  local({ kind, index }: Material): boolean {
    return kind === 'marking' || (kind === 'pour' && this.narrow[index]!)
  }

  /** null: a plug that comes out again. */
  stiffness({ kind, index }: Material): Stiffness | null {
    return kind === 'former' ? null : kind === 'timber' ? this.timbers[index]!.stiffness : this.resin
  }

  /** Direction of the grain of a timber, degrees from x. */
  grainDeg(timber: number): number {
    return this.timbers[timber]!.grainDeg
  }

  /** Strain it has by itself at a moment, as reckoned (0) or at the upper end of its band (1). */
  free({ kind, index }: Material, moment: BowMoment, end: 0 | 1): Plane {
    if (kind === 'pour') {
      const cure = this.cures[index] ?? null
      const poured = moment.pouredMin.get(index)
      if (cure === null || poured === undefined) return NOTHING
      const e = cure.at(moment.atMin[end] - poured)[end]
      return [e, e, 0]
    }
    if (kind !== 'timber' || (moment.when !== 'driest' && moment.when !== 'dampest')) return NOTHING
    const season = this.input.seasons[index]!
    const moved = moment.when === 'driest' ? season.toDryMm : season.toDampMm
    if (moved === null || !(season.acrossMm > 0)) return NOTHING
    const points = (moment.when === 'driest' ? season.dryPct : season.dampPct) - season.moisturePct
    const more = end === 1 ? MOST_MOVEMENT : 1
    const limit = (e: number) => Math.min(0.15, Math.max(-0.15, e))
    return strainAt(
      limit(more * LONGITUDINAL_PER_PCT * points),
      limit((more * moved[1]) / season.acrossMm),
      this.timbers[index]!.grainDeg
    )
  }
}

/** Along the grain, per % of moisture: total shrinkage 0.1 to 0.2 % (Wood Handbook; memory), as timber/movement. */
export const LONGITUDINAL_PER_PCT = 0.00005
