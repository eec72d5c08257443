import type { CutMaterial } from '../../catalogue/chip-load.ts'
import type { TimberRecord } from '../../catalogue/timber-record.ts'
import type { Material } from '../../stack/event.ts'

/** What a cutter meets on its way. */
export interface Met {
  readonly material: CutMaterial
  /** In a maker's words: "ash, white", "cast resin". */
  readonly name: string
}

/** Density at 12 % below which timber cuts as softwood, and above which it cuts as dense, kg/m³ (practice). */
const SOFT_BELOW_KGM3 = 550
const DENSE_ABOVE_KGM3 = 800
/** Specific gravity at 12 % to density, kg/m³: 1000 × 1.12, with its water. */
const GRAVITY_TO_DENSITY = 1120

/** How a timber cuts, by its density at 12 %. Without a figure: as hardwood. */
export function timberMet(record: Pick<TimberRecord, 'name' | 'density12KgM3' | 'gravity12'>): Met {
  const density =
    record.density12KgM3 ?? (record.gravity12 === null ? null : record.gravity12 * GRAVITY_TO_DENSITY)
  const material =
    density === null
      ? 'hardwood'
      : density < SOFT_BELOW_KGM3
        ? 'softwood'
        : density > DENSE_ABOVE_KGM3
          ? 'dense'
          : 'hardwood'
  return { material, name: record.name }
}

/** What a stretch of a core is to a cutter. @param timbers records by index, as the stack counts them */
export function metOf(
  material: Material,
  timbers: readonly Pick<TimberRecord, 'name' | 'density12KgM3' | 'gravity12'>[]
): Met {
  switch (material.kind) {
    case 'timber':
      return timberMet(timbers[material.index]!)
    case 'former':
      return { material: 'board', name: 'the former' }
    default:
      return { material: 'resin', name: 'cast resin' }
  }
}

/** Each material once, in the order met. */
export function metOnce(met: readonly Met[]): Met[] {
  return met.filter((m, i) => met.findIndex(o => o.name === m.name && o.material === m.material) === i)
}
