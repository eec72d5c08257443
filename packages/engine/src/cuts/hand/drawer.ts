import { CUTTERS } from '../../catalogue/cutter.ts'
import { find } from '../../catalogue/find.ts'
import type { Shop } from '../../piece/shop-schema.ts'

/** A straight bit of the router. mm. */
export interface RouterBit {
  readonly diameterMm: number
  readonly lengthMm: number
  readonly shankMm: number
  /** How far its tip comes below the foot of the router. */
  readonly reachMm: number
}

/** What lies in the drawer: the maker's own, else the usual sizes of the catalogue. */
export interface Drawer {
  readonly bits: readonly RouterBit[]
  /** With a bearing of the bit's own diameter on the shank. */
  readonly bearings: readonly { readonly diameterMm: number; readonly lengthMm: number }[]
  readonly bushesMm: readonly number[]
  readonly drills: readonly DrillBit[]
  /** Included angles of V bits, degrees, each with the greatest width it cuts. */
  readonly vs: readonly { readonly angleDeg: number; readonly widthMm: number }[]
  readonly ownDrills: boolean
}

/** A bit of the drill. */
export interface DrillBit {
  readonly diameterMm: number
  /** How deep it drills; null where the maker names the diameter alone. */
  readonly lengthMm: number | null
  /** Point ahead of the full diameter, mm. */
  readonly tipMm: number
  /** Leaves a flat floor. */
  readonly flat: boolean
  readonly name: string
}

/** How far the tip comes out beyond the edges, where the shop does not say, mm (practice). */
const NECK_MM = 10
const DRILLS = new Set(['drill', 'brad-point', 'forstner'])

export function drawerOf(shop: Shop): Drawer {
  const { hand } = shop
  const sizes = (id: string) => find('cutter', id)!.sizes
  const own = shop.cutters.flatMap(c => {
    const record = find('cutter', c.kind)
    return record === null ? [] : [{ record, ...c }]
  })
  const straight = own.filter(c => c.record.kind === 'straight' && !c.record.bearing)
  const bearing = own.filter(c => c.record.kind === 'straight' && c.record.bearing)
  const bits =
    hand.bits.length > 0
      ? hand.bits.map(b => bit(b.diameter, b.length, b.shank, b.reach))
      : straight.length > 0
        ? straight.map(b => bit(b.diameter, b.length))
        : sizes('router-straight').map(s => bit(s.diameterMm, s.cuttingLengthMm))
  const bearings =
    hand.bearings.length > 0
      ? hand.bearings.map(b => ({ diameterMm: b.diameter, lengthMm: b.length }))
      : bearing.length > 0
        ? bearing.map(b => ({ diameterMm: b.diameter, lengthMm: b.length }))
        : sizes('router-template').map(s => ({ diameterMm: s.diameterMm, lengthMm: s.cuttingLengthMm }))
  const named = hand.drill.map(d => drillOfSize(d, d >= FLAT_FROM_MM))
  const listed = own.filter(c => DRILLS.has(c.record.kind)).map(c => drill(c.record.id, c.diameter, c.length))
  const usual = CUTTERS.filter(c => DRILLS.has(c.kind)).flatMap(c =>
    c.sizes.map(s => drill(c.id, s.diameterMm, s.cuttingLengthMm))
  )
  const ownDrills = named.length + listed.length > 0
  const ownVs = own.filter(c => c.record.kind === 'v')
  return {
    bits: [...bits].sort((a, b) => a.diameterMm - b.diameterMm || b.lengthMm - a.lengthMm),
    bearings: [...bearings].sort((a, b) => a.diameterMm - b.diameterMm),
    bushesMm: [...hand.bushes].sort((a, b) => a - b),
    drills: ownDrills ? [...named, ...listed] : usual,
    vs:
      ownVs.length > 0
        ? ownVs.map(c => ({ angleDeg: c.angle ?? c.record.pointAngleDeg ?? 60, widthMm: c.diameter }))
        : CUTTERS.filter(c => c.kind === 'v').map(c => ({
            angleDeg: c.pointAngleDeg ?? 60,
            widthMm: Math.max(...c.sizes.map(s => s.diameterMm))
          })),
    ownDrills
  }
}

function bit(diameterMm: number, lengthMm: number, shankMm = 8, reachMm = lengthMm + NECK_MM): RouterBit {
  return { diameterMm, lengthMm, shankMm, reachMm }
}

/** From this diameter on a bit named by its diameter alone is taken to be one with a flat floor, mm (practice). */
const FLAT_FROM_MM = 14

/** A bit known by its diameter alone. */
export function drillOfSize(diameterMm: number, flat: boolean): DrillBit {
  return { ...drill(flat ? 'forstner' : 'brad-point', diameterMm, 0), lengthMm: null }
}

function drill(id: string, diameterMm: number, lengthMm: number): DrillBit {
  const record = find('cutter', id)!
  return {
    diameterMm,
    lengthMm,
    tipMm: record.tipPerDiameter * diameterMm,
    flat: record.kind === 'forstner',
    name: record.name
  }
}
