import type { Entry } from '../../piece/entry.ts'
import type { Cut } from '../../piece/piece-schema.ts'
import { decimals } from '../../quantity/format.ts'
import { difference, intersection } from '../../shape/combine.ts'
import { inradius } from '../../shape/inradius.ts'
import { area, bounds, ringArea } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region, Ring } from '../../shape/region.ts'
import { EMPTY } from '../../shape/region.ts'
import { outlinePath } from '../area/outline-path.ts'
import { outlineStretches } from '../area/outline-stretch.ts'
import { pocketPath } from '../area/pocket-path.ts'
import { reliefPath, reliefs } from '../area/relief-path.ts'
import { restRegion } from '../area/rest-region.ts'
import { runOut } from '../area/run-out.ts'
import { turnedRound } from '../area/track.ts'
import { borePath } from '../line/bore.ts'
import { groovePath } from '../line/groove.ts'
import { vWidthMm } from '../run/chip.ts'
import type { CutterNeed } from '../run/choose.ts'
import type { Place } from './bench.ts'
import { freeGround } from './free-ground.ts'
import { cutTo, linesHere, regionHere, shareOf } from './in-position.ts'
import type { Wanted } from './operation.ts'
import { spanAlong } from './position.ts'
import { inlayWanted, keyholeWanted } from './wanted-kind.ts'

/** A flat cutter that is this much too wide still makes its slot, mm: what drawings round. */
const ROUNDING_MM = 0.02
/** Tabs of an outline that says nothing of what holds the part: count, width and thickness, mm (practice). */
const USUAL_TABS = { count: 4, widthMm: 8, thickMm: 3 }
/** A floor thinner than this is a thin wall: light passes, mm. */
const THIN_MM = 1.5
/** Corners no rounder than this are square. */
const SQUARE_MM = 0.5

/** What a cut asks of the machine. */
export function wantedOfCut(place: Place, cut: Entry<Cut>): Wanted[] {
  const { stack } = place.bench
  const depth = stack.cuts[cut.index]!
  const base = {
    name: cut.id,
    cutterId: cut.value.cutter,
    topMm: place.topMm,
    floorMm: place.floorMm(depth.floor),
    feeds: {
      ...(cut.value.allowance === undefined ? {} : { allowanceMm: cut.value.allowance }),
      ...(cut.value.direction === undefined ? {} : { climb: cut.value.direction === 'climb' })
    },
    thin: Number.isFinite(depth.floor) && Math.abs(place.floorMm(depth.floor) - place.underMm) < THIN_MM
  }
  // What another cut or the flattening has taken already: nothing is left to do.
  if (base.floorMm >= base.topMm - 1e-6) return []
  const region = stack.geometry.cutRegions[cut.index] ?? null
  if (region === null) return grooveWanted(place, cut, base)
  const onBed = place.region(region)
  const { position } = place.on
  const share = position === null ? 'all' : shareOf(position, ...spanAlong(position, onBed))
  if (share === 'none') return []
  if (cut.value.kind === 'keyhole')
    return [share === 'all' ? keyholeWanted(place, cut, base, region) : tooLong(place, base, region)]
  if (cut.value.plug !== undefined) return [inlayWanted(place, cut, base, regionHere(position, onBed))]
  if (cut.value.kind === 'outline') return [outlineWanted(place, cut, base, onBed)]
  const { circle } = cut.value.shape!
  if (circle !== undefined && cut.value.islands === undefined && share === 'all')
    return [boreWanted(place, cut, base, onBed, circle)]
  return pocketWanted(place, cut, base, onBed)
}

type Base = Pick<Wanted, 'name' | 'cutterId' | 'topMm' | 'floorMm' | 'feeds' | 'thin'>

// A keyhole slot in no single strip.
function tooLong(place: Place, base: Base, region: Region): Wanted {
  const says = 'it is longer than the machine travels, and a keyhole slot is not divided'
  const { topMm, floorMm } = base
  return {
    ...base,
    kind: 'keyhole',
    need: { kind: 'clear', insideRadiusMm: Number.POSITIVE_INFINITY, widthMm: 1e3, depthMm: topMm - floorMm },
    operation: 'keyhole',
    met: place.metIn(place.region(region), floorMm),
    path: () => ({ says, largestMm: null })
  }
}

function grooveWanted(place: Place, cut: Entry<Cut>, base: Base): Wanted[] {
  const { profile, angle, width = 0 } = cut.value
  const plan = place.bench.stack.geometry.cutLines[cut.index]!
  const depthMm = base.topMm - base.floorMm
  const wide = profile === 'v' ? vWidthMm(angle, depthMm) : width
  const lines = linesHere(place.on.position, place.lines(plan), wide / 2)
  if (lines.length === 0) return []
  const need: CutterNeed =
    profile === 'v'
      ? { kind: 'v', angleDeg: angle, widthMm: vWidthMm(angle, depthMm), depthMm }
      : profile === 'round'
        ? { kind: 'round', widthMm: width, depthMm }
        : {
            kind: 'clear',
            insideRadiusMm: Number.POSITIVE_INFINITY,
            widthMm: width + ROUNDING_MM,
            depthMm
          }
  return [
    {
      ...base,
      kind: 'groove',
      need,
      operation: profile === 'v' ? 'v' : profile === 'round' ? 'round' : 'slot',
      met: place.metAlong(plan, base.floorMm),
      path: job => groovePath(job, lines, { kind: profile, widthMm: width, angleDeg: angle })
    }
  ]
}

function boreWanted(place: Place, cut: Entry<Cut>, base: Base, region: Region, circle: number): Wanted {
  const b = bounds(region)
  const bore = {
    x: (b.minX + b.maxX) / 2,
    y: (b.minY + b.maxY) / 2,
    diameterMm: circle,
    through: cut.value.through === true
  }
  const depthMm = base.topMm - base.floorMm
  // A drill of the size where there is one and the floor may keep its cone; else a flat cutter, round.
  const drill: CutterNeed = { kind: 'drill', diameterMm: circle, depthMm }
  const mill: CutterNeed = {
    kind: 'clear',
    insideRadiusMm: Number.POSITIVE_INFINITY,
    widthMm: circle + ROUNDING_MM,
    depthMm
  }
  const drilled =
    cut.value.through === true &&
    cut.value.toleranceClass === undefined &&
    place.bench.box.cutters.some(
      c =>
        c.shape.form === 'drill' &&
        Math.abs(c.shape.diameterMm - circle) < ROUNDING_MM &&
        c.shape.fluteMm >= depthMm
    )
  return {
    ...base,
    kind: 'bore',
    name: `${base.name}, Ø ${decimals(circle, 2)}`,
    need: drilled ? drill : mill,
    operation: drilled ? 'drill' : 'clear',
    met: place.metIn(region, base.floorMm),
    path: job => borePath(job, [bore])
  }
}

function outlineWanted(place: Place, cut: Entry<Cut>, base: Base, region: Region): Wanted {
  const { tabs, skin } = cut.value
  // A frame of waste leaves the part in its middle; a plain shape is an opening.
  const parts = region.rings.filter(r => ringArea(r) < 0)
  const outside = parts.length > 0
  const kept: Region = outside ? { rings: parts.map(turnedRound) } : region
  const { position } = place.on
  const divided = position !== null && shareOf(position, ...spanAlong(position, region)) === 'part'
  const widthMm = outside ? kerfMm(region, parts) : 2 * inradius(region, 0.01).radiusMm
  const held =
    skin !== undefined || tabs === false
      ? null
      : typeof tabs === 'object'
        ? { count: tabs.count, widthMm: tabs.width, thickMm: tabs.thick }
        : cut.value.through === true
          ? USUAL_TABS
          : null
  return {
    ...base,
    kind: 'outline',
    name: held === null ? base.name : `${base.name}, ${held.count} tabs`,
    need: {
      kind: 'outline',
      insideRadiusMm: Number.POSITIVE_INFINITY,
      widthMm: widthMm + ROUNDING_MM,
      depthMm: base.topMm - base.floorMm
    },
    operation: 'outline',
    met: place.metIn(region, base.floorMm),
    path: job => {
      const options = {
        side: outside ? 'outside' : 'inside',
        tabs: held,
        ...(skin === undefined ? {} : { skinMm: skin }),
        underMm: place.underMm
      } as const
      const { diameterMm } = job.cutter
      const half = diameterMm / 2
      if (!divided) {
        // The kerf as the cutter makes it: open where it breaks out of the material.
        const free = outside ? freeGround(place, kerfOf(kept, diameterMm), diameterMm) : EMPTY
        return outlinePath(job, kept, free.rings.length === 0 ? options : { ...options, free })
      }
      return outlineStretches(job, kept, options, lines => linesHere(position, lines, half))
    }
  }
}

function kerfOf(kept: Region, diameterMm: number): Region {
  return difference(offset(kept, diameterMm, { join: 'round', tolMm: 0.02 }), kept)
}

// How wide the waste drawn round the part is, at its widest: the cutter cuts no wider than what is given up.
function kerfMm(region: Region, parts: readonly Ring[]): number {
  return area(region) > 0 && parts.length > 0 ? 2 * inradius(region, 0.005).radiusMm + 0.01 : 0
}

function pocketWanted(place: Place, cut: Entry<Cut>, base: Base, region: Region): Wanted[] {
  const depthMm = base.topMm - base.floorMm
  const widthMm = 2 * inradius(region, 0.01).radiusMm + ROUNDING_MM
  const corner = cut.value.shape?.corner
  const met = place.metIn(region, base.floorMm)
  const { tolMm, stack } = place.bench
  // A rebate runs out over the edge of the piece.
  const worked = (diameterMm: number) =>
    cut.value.kind === 'rebate'
      ? runOut(region, place.region(stack.geometry.outline), diameterMm, tolMm)
      : region
  const { position } = place.on
  const divided = position !== null && shareOf(position, ...spanAlong(position, region)) === 'part'
  const here = (whole: Region) => (divided ? cutTo(position, whole) : whole)
  const need = (insideRadiusMm: number): CutterNeed => ({
    kind: 'clear',
    insideRadiusMm,
    widthMm,
    depthMm
  })
  const first: Wanted = {
    ...base,
    kind: 'pocket',
    need: need(Number.POSITIVE_INFINITY),
    operation: 'clear',
    met,
    path: job => {
      const { diameterMm } = job.cutter
      const whole = here(worked(diameterMm))
      const free = freeGround(place, whole, diameterMm)
      return pocketPath(job, whole, free.rings.length === 0 ? {} : { free })
    },
    after: cutter => {
      const { diameterMm } = cutter.shape
      if (cut.value.corners === 'relieved') {
        const corners = reliefs(worked(diameterMm), diameterMm, tolMm).filter(({ cx, cy }) => {
          const u = position?.axis === 'y' ? cy : cx
          return !divided || shareOf(position, u - diameterMm, u + diameterMm) === 'all'
        })
        if (corners.length === 0) return []
        return [
          {
            ...base,
            kind: 'corners',
            name: `${base.name}, corners`,
            cutterId: cutter.id,
            need: need(Number.POSITIVE_INFINITY),
            operation: 'clear',
            met,
            path: job => reliefPath(job, corners)
          }
        ]
      }
      const radius = corner !== undefined && corner > SQUARE_MM ? corner : smallestRadius(place, cut, depthMm)
      if (radius === null || radius >= diameterMm / 2 - 1e-9) return []
      const rest = restRegion(worked(diameterMm), diameterMm)
      // What stays beside the piece, in the waste, is nobody's corner.
      const left = divided
        ? regionHere(position, intersection(rest.region, region))
        : intersection(rest.region, region)
      if (left.rings.length === 0) return []
      return [
        {
          ...base,
          kind: 'corners',
          name: `${base.name}, corners`,
          cutterId: undefined,
          need: need(radius),
          operation: 'clear',
          met,
          path: job => pocketPath(job, left, { free: rest.cleared })
        }
      ]
    }
  }
  return [first]
}

// A part with square corners goes in: the smallest flat cutter that reaches the floor takes the corners, as the check
// of the corners reckons with. What holds no part keeps the corners of its cutter.
function smallestRadius(place: Place, cut: Entry<Cut>, depthMm: number): number | null {
  if (cut.value.for === undefined) return null
  const flat = place.bench.box.cutters.filter(
    c => c.own && c.shape.form === 'flat' && c.shape.fluteMm >= depthMm
  )
  if (flat.length === 0) return null
  return (1.05 * Math.min(...flat.map(c => c.shape.diameterMm))) / 2
}
