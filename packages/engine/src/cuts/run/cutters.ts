import type { CutterKind, CutterRecord, CutterSize } from '../../catalogue/cutter.ts'
import { CUTTERS } from '../../catalogue/cutter.ts'
import type { CutterForm, CutterShape } from '../../catalogue/cutter-shape.ts'
import { find, nearestIds } from '../../catalogue/find.ts'
import type { Shop, ShopCutter } from '../../piece/shop-schema.ts'
import { decimals } from '../../quantity/format.ts'
import { machineOf } from './machine.ts'

/** A cutter that can be put in, of the shop or of the usual sizes. */
export interface Cutter {
  /** What cuts call it. Of a usual size: kind and diameter. */
  readonly id: string
  /** "flat end mill 6 mm" */
  readonly name: string
  readonly kind: CutterKind
  readonly shape: CutterShape
  readonly flutes: number
  /** Fastest turn marked on it, 1/min; null: none known. */
  readonly fastestRpm: number | null
  /** Lies in the shop; else a usual size of the trade. */
  readonly own: boolean
}

/** What there is to choose from. */
export interface CutterBox {
  readonly cutters: readonly Cutter[]
  /** Said where none is the shop's own; null else. */
  readonly says: string | null
  /** Cutters of the shop whose kind the catalogue does not have, with the nearest that it has. */
  readonly unknown: readonly { readonly index: number; readonly id: string; readonly nearest: string }[]
}

/** Where cutters run: in the machine's spindle, a hand router or a drill. */
export type RunsIn = CutterRecord['runsIn'][number]

const FORM: Readonly<Partial<Record<CutterKind, CutterForm>>> = {
  flat: 'flat',
  straight: 'flat',
  ball: 'ball',
  bull: 'bull',
  v: 'v',
  surfacing: 'surfacing',
  drill: 'drill',
  // Its brad goes as deep as a cone of the same height, which holds all that it takes.
  'brad-point': 'drill',
  forstner: 'drill',
  keyhole: 'keyhole'
}

/** Shanks that are sold: the least that carries the diameter, else the largest a small collet takes (practice), mm. */
const SHANKS_MM = [3.175, 6, 8]
/** What stands out beyond the edges so that the nut clears the work, mm (practice). */
const CLEAR_MM = 6
/** Radius of the corner of a bull-nose, of its diameter, where none is given: 0.5 of 6, 1 of 8 to 12 (practice). */
const CORNER_SHARE = 1 / 12
/** Head and neck of a keyhole cutter where not given, of its diameter (practice). */
const HEAD_SHARE = 0.5
/** Width of the tip of a V that nobody measured, mm: as sold new (practice). */
const V_TIP_MM = 0.1

/** What of a shop's cutter gives its shape; the rest comes from the kind. */
export type CutterGiven = Pick<ShopCutter, 'diameter' | 'length'> &
  Partial<Omit<ShopCutter, 'diameter' | 'length'>>

/**
 * The solid a cutter sweeps, mm. What the shop leaves out comes from the kind: angle and plunging from the catalogue,
 * shank, stick-out, tip and corner from common practice.
 *
 * @param holderMm diameter of the nut above it
 * @returns null where the kind is not in the catalogue, or is formed as no path is made for (round-over, chamfer)
 */
export function cutterShapeOf(given: CutterGiven & { kind: string }, holderMm: number): CutterShape | null {
  const record = find('cutter', given.kind)
  const form = record === null ? undefined : FORM[record.kind]
  return record === null || form === undefined ? null : shapeOf(record, form, given, holderMm)
}

function shapeOf(record: CutterRecord, form: CutterForm, given: CutterGiven, holderMm: number): CutterShape {
  const { diameter, length } = given
  const drill = form === 'drill'
  const shank =
    given.shank ??
    (drill
      ? Math.min(diameter, 10)
      : (SHANKS_MM.find(s => s >= diameter) ?? SHANKS_MM[SHANKS_MM.length - 1]!))
  const usual = record.sizes.find(s => Math.abs(s.diameterMm - diameter) < 1e-6)
  return {
    form,
    diameterMm: diameter,
    cornerMm: form === 'bull' ? Math.min(given.corner ?? diameter * CORNER_SHARE, diameter / 2) : 0,
    angleDeg: form === 'v' || drill ? (given.angle ?? record.pointAngleDeg ?? spur(record)) : 180,
    tipMm: form === 'v' ? Math.min(given.tip ?? V_TIP_MM, diameter) : 0,
    fluteMm: length,
    shankMm: shank,
    reachMm: Math.max(given.reach ?? length + CLEAR_MM, length),
    holderMm,
    headMm: form === 'keyhole' ? (given.head ?? usual?.headMm ?? diameter * HEAD_SHARE) : 0,
    neckMm: form === 'keyhole' ? Math.min(given.neck ?? usual?.neckMm ?? diameter * HEAD_SHARE, diameter) : 0,
    plunges: given.plunges ?? record.canPlunge
  }
}

// The cone as high as the spur of a bit without a point angle.
function spur(record: CutterRecord): number {
  return record.tipPerDiameter === 0 ? 180 : (360 / Math.PI) * Math.atan(1 / (2 * record.tipPerDiameter))
}

/**
 * The cutters a cut may choose from: those of the shop that run there; where the shop lists none, the usual sizes of
 * the catalogue, and that is said. Without a machine the nut is taken as of a small one.
 */
export function cuttersOf(shop: Pick<Shop, 'cutters' | 'machine'>, runsIn: RunsIn = 'machine'): CutterBox {
  const { holder } = machineOf(shop)
  const unknown = shop.cutters.flatMap(({ id, kind }, index) =>
    find('cutter', kind) === null ? [{ index, id, nearest: nearestIds('cutter', kind, 1)[0]! }] : []
  )
  const own = shop.cutters.flatMap((c): Cutter[] => {
    const record = find('cutter', c.kind)
    const form = record === null ? undefined : FORM[record.kind]
    if (record === null || form === undefined || !record.runsIn.includes(runsIn)) return []
    return [
      {
        id: c.id,
        name: nameOf(record, c.diameter),
        kind: record.kind,
        shape: shapeOf(record, form, c, holder),
        flutes: c.flutes,
        fastestRpm: c.fastest ?? null,
        own: true
      }
    ]
  })
  if (shop.cutters.length > 0) return { cutters: own, says: null, unknown }
  return {
    cutters: CUTTERS.filter(r => r.runsIn.includes(runsIn)).flatMap(record => usualOf(record, holder)),
    says: 'from the usual sizes: nothing in the shop yet',
    unknown
  }
}

function usualOf(record: CutterRecord, holder: number): Cutter[] {
  const form = FORM[record.kind]
  if (form === undefined || record.bearing) return []
  return record.sizes.map((size: CutterSize) => ({
    id: `${record.id} ${decimals(size.diameterMm, 3)}`,
    name: nameOf(record, size.diameterMm),
    kind: record.kind,
    shape: shapeOf(record, form, { diameter: size.diameterMm, length: size.cuttingLengthMm }, holder),
    flutes: Math.min(2, Math.max(...record.flutes)),
    fastestRpm: null,
    own: false
  }))
}

function nameOf(record: CutterRecord, diameterMm: number): string {
  return `${record.name} ${decimals(diameterMm, 3)} mm`
}
