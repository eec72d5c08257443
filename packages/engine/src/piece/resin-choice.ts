import type { ResinMix, ResinRecord } from '../catalogue/resin.ts'
import { RESINS } from '../catalogue/resin.ts'
import { nearest } from './nearest.ts'
import type { Problem } from './problem.ts'
import { oneOf } from './problem.ts'
import type { Shop, ShopResin } from './shop-schema.ts'

/** The resin a pour names, with what the shop's label says over what its class says. */
export interface ResinChoice {
  readonly id: string
  readonly name: string
  /** The class's row, with model and band as what is {@link known} makes them. */
  readonly record: ResinRecord
  /** Where model and band come from: the class alone, the label's figures, or a cup test. */
  readonly known: 'class' | 'label' | 'cup'
  /** The label, when the resin is the maker's own. */
  readonly label: ShopResin | null
  /** Mixing ratio by mass. */
  readonly mix: ResinMix
  /** Density of the liquid mix, g/ml. */
  readonly densityGMl: number
  readonly shrinkagePct: number
}

/**
 * Finds a resin by name: the shop's own first, then the generic classes.
 * A problem is returned, not thrown, so that all of a piece's can be said together.
 */
export function chooseResin(name: string, shop: Shop, path: string): ResinChoice | Problem {
  const label = shop.resins.find(r => r.id === name) ?? null
  const wanted =
    label === null ? name : label.family === 'epoxy' ? (label.like ?? 'medium') : familyId(label.family)
  const record = RESINS.find(r => r.id === wanted || r.name === wanted)
  if (!record) {
    const known = [...shop.resins.map(r => r.id), ...RESINS.map(r => r.id)]
    const near = nearest(name, known)
    return {
      path,
      found: `the resin "${name}", which neither the shop nor the catalogue has`,
      allowed: oneOf(known),
      example: near === null ? '"medium"' : `"${near}"`
    }
  }
  const mix = label === null ? record.mix : labelMix(label, record.mix)
  return {
    id: name,
    name: label?.name ?? record.name,
    record,
    known: 'class',
    label,
    mix,
    densityGMl: record.model === null ? mixDensity(mix) : record.model.bulk.liquidKgM3 / 1000,
    shrinkagePct: label?.shrinkage ?? record.shrinkagePct
  }
}

function familyId(family: ResinRecord['family']): string {
  return family === 'other' ? 'other-resin' : family
}

/** A label's ratio by mass; by volume it is turned through the densities. */
function labelMix(label: ShopResin, generic: ResinMix): ResinMix {
  const densityAGMl = label.densityA ?? generic.densityAGMl
  const densityBGMl = label.densityB ?? generic.densityBGMl
  if (label.ratio === undefined)
    return { massA: generic.massA, massB: generic.massB, densityAGMl, densityBGMl }
  const { a, b, by } = label.ratio
  return by === 'mass'
    ? { massA: a, massB: b, densityAGMl, densityBGMl }
    : { massA: a * densityAGMl, massB: b * densityBGMl, densityAGMl, densityBGMl }
}

/** Density of a mix of two parts that do not change volume when mixed, g/ml. */
function mixDensity(mix: ResinMix): number {
  return (mix.massA + mix.massB) / (mix.massA / mix.densityAGMl + mix.massB / mix.densityBGMl)
}
