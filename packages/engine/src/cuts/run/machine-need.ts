import type { Cut, Marking } from '../../piece/piece-schema.ts'
import { inradius } from '../../shape/inradius.ts'
import { area, perimeter } from '../../shape/measure.ts'
import type { Region } from '../../shape/region.ts'
import { vWidthMm } from './chip.ts'
import type { CutterNeed } from './choose.ts'
import { chooseCutter } from './choose.ts'
import type { Cutter } from './cutters.ts'
import type { CutOperation } from './feeds.ts'

/** What a cut asks of its cutter, and how it is run. */
export interface MachineNeed {
  readonly need: CutterNeed
  readonly operation: CutOperation
}

/** A cutter this much too wide still makes its slot, mm: what drawings round. */
const ROUNDING_MM = 0.02

/** Of a cut with lines: a groove. */
export function grooveNeed(cut: Pick<Cut, 'profile' | 'angle' | 'width'>, depthMm: number): MachineNeed {
  const { profile, angle, width = 0 } = cut
  if (profile === 'v') return vNeed(angle, depthMm)
  if (profile === 'round') return { need: { kind: 'round', widthMm: width, depthMm }, operation: 'round' }
  return { need: clear('clear', width, depthMm), operation: 'slot' }
}

/** Of the lines of a marking. */
export function markingNeed(marking: Pick<Marking, 'angle'>, depthMm: number): MachineNeed {
  return vNeed(marking.angle, depthMm)
}

/**
 * Of a cut with a shape: the widest cutter that goes in somewhere; a hole right through for which a drill lies ready
 * is drilled.
 */
export function shapeNeed(
  cut: Pick<Cut, 'kind' | 'shape' | 'through' | 'toleranceClass' | 'islands'>,
  region: Region,
  depthMm: number,
  cutters: readonly Cutter[]
): MachineNeed | null {
  if (!(area(region) > 0)) return null
  const circle = cut.islands === undefined ? cut.shape?.circle : undefined
  if (circle !== undefined && cut.through === true && cut.toleranceClass === undefined) {
    const ready = cutters.some(
      c =>
        c.shape.form === 'drill' &&
        Math.abs(c.shape.diameterMm - circle) < ROUNDING_MM &&
        c.shape.fluteMm >= depthMm
    )
    if (ready) return { need: { kind: 'drill', diameterMm: circle, depthMm }, operation: 'drill' }
  }
  if (cut.kind === 'outline') {
    // A frame is as wide as its area over its half perimeter: quick, and only where that is too narrow looked at.
    const mean = clear('outline', (2 * area(region)) / perimeter(region), depthMm)
    const fits = !('none' in chooseCutter(mean, cutters))
    return {
      need: fits ? mean : clear('outline', widest(region), depthMm),
      operation: 'outline'
    }
  }
  const rectangle = cut.islands === undefined ? cut.shape?.rectangle : undefined
  const widthMm = circle ?? (rectangle === undefined ? widest(region) : Math.min(...rectangle))
  return { need: clear('clear', widthMm, depthMm), operation: 'clear' }
}

function widest(region: Region): number {
  return 2 * inradius(region, 0.01).radiusMm
}

function clear(kind: 'clear' | 'outline', widthMm: number, depthMm: number): CutterNeed {
  return { kind, insideRadiusMm: Number.POSITIVE_INFINITY, widthMm: widthMm + ROUNDING_MM, depthMm }
}

function vNeed(angleDeg: number, depthMm: number): MachineNeed {
  return {
    need: { kind: 'v', angleDeg, widthMm: vWidthMm(angleDeg, depthMm), depthMm },
    operation: 'v'
  }
}
