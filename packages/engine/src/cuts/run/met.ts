import type { CutMaterial } from '../../catalogue/chip-load.ts'
import type { PigmentKind } from '../../catalogue/pigment.ts'
import type { StoneRecord } from '../../catalogue/stone.ts'
import type { TimberRecord } from '../../catalogue/timber-record.ts'
import type { Material } from '../../stack/event.ts'

/** What a cutter meets on its way. */
export interface Met {
  readonly material: CutMaterial
  /** In a maker's words: "ash, white", "cast resin". */
  readonly name: string
  /** Resin that holds mineral or metal, which takes an edge many times sooner. */
  readonly filled?: true
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

/**
 * What a stretch of a core is to a cutter.
 *
 * @param timbers records by index, as the stack counts them
 * @param filled pours that hold mineral or metal, by index: see {@link filledPours}
 */
export function metOf(
  material: Material,
  timbers: readonly Pick<TimberRecord, 'name' | 'density12KgM3' | 'gravity12'>[],
  filled: ReadonlySet<number> = new Set()
): Met {
  switch (material.kind) {
    case 'timber':
      return timberMet(timbers[material.index]!)
    case 'former':
      return { material: 'board', name: 'the former' }
    default:
      return material.kind === 'pour' && filled.has(material.index)
        ? { material: 'resin', name: 'filled resin', filled: true }
        : { material: 'resin', name: 'cast resin' }
  }
}

/** Scratch hardness, Mohs, up to which what lies in resin cuts like timber: plant matter, mica. */
const SOFT_MOHS = 2.5
/** Colours that are grains of metal or mineral. */
const GRAINS: readonly PigmentKind[] = ['metallic', 'glow']

/** Pours whose resin holds stones, metal or mineral powder, by index. */
export function filledPours(materials: {
  readonly stones: readonly (readonly Pick<StoneRecord, 'mohs'>[])[]
  readonly tints: readonly (readonly { readonly pigment: { readonly kind: PigmentKind } }[])[]
}): ReadonlySet<number> {
  const out = new Set<number>()
  for (const [i, list] of materials.stones.entries()) if (list.some(s => s.mohs[1] > SOFT_MOHS)) out.add(i)
  for (const [i, list] of materials.tints.entries())
    if (list.some(t => GRAINS.includes(t.pigment.kind))) out.add(i)
  return out
}

/** Each material once, in the order met. */
export function metOnce(met: readonly Met[]): Met[] {
  return met.filter((m, i) => met.findIndex(o => o.name === m.name && o.material === m.material) === i)
}
