import type { Entry } from '../../piece/entry.ts'
import type { Cut, Marking } from '../../piece/piece-schema.ts'
import { inradius } from '../../shape/inradius.ts'
import { area } from '../../shape/measure.ts'
import { offset } from '../../shape/offset.ts'
import type { Region } from '../../shape/region.ts'
import { figureLines, figureRegion } from '../../stack/figure-lines.ts'
import { pocketPath } from '../area/pocket-path.ts'
import { keyholePath } from '../line/keyhole-path.ts'
import { markingPath } from '../line/marking.ts'
import { vCarvePath } from '../line/v-carve.ts'
import { vDepthMm, vWidthMm } from '../run/chip.ts'
import type { Place } from './bench.ts'
import { linesHere, regionHere, shareOf } from './in-position.ts'
import type { Wanted } from './operation.ts'
import { spanAlong } from './position.ts'

type Base = Pick<Wanted, 'name' | 'cutterId' | 'topMm' | 'floorMm' | 'feeds' | 'thin'>

/** A keyhole slot: one cutter, down at its entry, along and back. */
export function keyholeWanted(place: Place, cut: Entry<Cut>, base: Base, plan: Region): Wanted {
  const { along, width, head, lip, depth, finishedDepth } = cut.value
  const line = Float64Array.from(along!.points!.flat())
  const [run] = place.lines([line])
  const [ax, ay, bx, by] = run!
  return {
    ...base,
    kind: 'keyhole',
    need: { kind: 'keyhole', headMm: head!, shankMm: width!, depthMm: base.topMm - base.floorMm },
    operation: 'keyhole',
    met: place.metIn(place.region(plan), base.floorMm),
    path: job =>
      keyholePath(job, [
        {
          from: [ax!, ay!],
          to: [bx!, by!],
          neckMm: width!,
          headMm: head!,
          highMm: (depth ?? finishedDepth!) - lip!
        }
      ])
  }
}

/** A cutter just as round as a corner fits it: the choice of a cutter asks for a little more room (see there). */
const CORNER_ROOM = 1.05

/** The pocket of an inlay: cleared with a cutter that its corners take. */
export function inlayWanted(place: Place, cut: Entry<Cut>, base: Base, region: Region): Wanted {
  return {
    ...base,
    kind: 'pocket',
    need: {
      kind: 'clear',
      insideRadiusMm: cut.value.plug!.corner * CORNER_ROOM,
      widthMm: 2 * inradius(region, 0.01).radiusMm,
      depthMm: base.topMm - base.floorMm
    },
    operation: 'clear',
    met: place.metIn(region, base.floorMm),
    path: job => pocketPath(job, region)
  }
}

/** Numerals of a marking: as lines of its width, or as outlines that the V fills to their edges. */
export function figuresWanted(
  place: Place,
  marking: Entry<Marking>,
  topMm: number,
  floorMm: number
): Wanted[] {
  const m = marking.value
  const base = {
    kind: 'figures',
    name: `${marking.id}, figures`,
    cutterId: m.cutter,
    topMm,
    operation: 'v'
  } as const
  const plan = figureLines(m)
  if (plan.length > 0) {
    const depthMm = topMm - floorMm
    const lines = linesHere(place.on.position, place.lines(plan), vWidthMm(m.angle, depthMm) / 2)
    if (lines.length === 0) return []
    return [
      {
        ...base,
        floorMm,
        need: { kind: 'v', angleDeg: m.angle, widthMm: vWidthMm(m.angle, depthMm), depthMm },
        met: place.metAlong(plan, floorMm),
        path: job => markingPath(job, lines, m.angle)
      }
    ]
  }
  const outlines = figureRegion(m, FIGURE_TOL_MM)
  if (area(outlines) === 0) return []
  const { position } = place.on
  const whole = place.region(outlines)
  const region = regionHere(position, whole)
  if (region.rings.length === 0) return []
  const divided = position !== null && area(region) < area(whole) && dividesPart(position, whole)
  // What is sanded off after the cut goes on top: outlines are drawn as they are to be in the finished face.
  const sandedMm = Math.max(0, topMm - floorMm - vDepthMm(m.angle, m.width))
  const radiusMm = inradius(region, 0.01).radiusMm
  const pointedMm = vDepthMm(m.angle, 2 * radiusMm)
  const flatAtMm = m.deepest !== undefined && m.deepest < pointedMm - HAIR_MM ? m.deepest : null
  const wideMm = vWidthMm(m.angle, (flatAtMm ?? pointedMm) + sandedMm)
  const depthMm = vDepthMm(m.angle, wideMm)
  const floor = topMm - depthMm - (flatAtMm === null ? HAIR_MM : 0)
  const flat = flatAtMm === null ? null : flatFloor(place, base, region, m, flatAtMm, floor)
  return [
    ...(flat === null ? [] : [flat.wanted]),
    {
      ...base,
      floorMm: floor,
      need: { kind: 'v', angleDeg: m.angle, widthMm: wideMm, depthMm },
      met: place.metIn(region, floor),
      path: job => {
        if (divided)
          return {
            says: 'a figure longer than the machine travels is not carved in two: make it smaller',
            largestMm: null
          }
        const made = vCarvePath(region, job, topMm - sandedMm, flat?.halfMm() ?? null)
        return 'says' in made ? made : made.path
      }
    }
  ]
}

// The floor of figures wider than the V goes deep: cleared by a flat cutter, before the V runs along its walls.
function flatFloor(
  place: Place,
  { name, topMm }: { readonly name: string; readonly topMm: number },
  region: Region,
  m: Marking,
  deepMm: number,
  floorMm: number
): { wanted: Wanted; halfMm: () => number | null } | null {
  const floor = offset(region, -vWidthMm(m.angle, deepMm) / 2, { join: 'round', tolMm: FIGURE_TOL_MM })
  if (area(floor) === 0) return null
  // The widest that still goes into most of it; what it leaves the V goes over.
  const widthMm = 2 * inradius(floor, 0.01).radiusMm
  let halfMm: number | null = null
  return {
    halfMm: () => halfMm,
    wanted: {
      kind: 'pocket',
      name: `${name}, floor`,
      need: {
        kind: 'clear',
        insideRadiusMm: widthMm / 4,
        widthMm,
        depthMm: topMm - floorMm
      },
      operation: 'clear',
      topMm,
      floorMm,
      met: place.metIn(floor, floorMm),
      path: job => pocketPath(job, floor),
      after: cutter => {
        halfMm = cutter.shape.diameterMm / 2
        return []
      }
    }
  }
}

// Whether a figure, each ring by itself, goes into no strip.
function dividesPart(position: NonNullable<Place['on']['position']>, { rings }: Region): boolean {
  return rings.some(r => shareOf(position, ...spanAlong(position, { rings: [r] })) === 'part')
}

/** So much deeper is allowed than is wanted at the widest place, so that nothing is cut off by rounding, mm. */
const HAIR_MM = 0.02
/** How far outlines of figures may stray, mm: less than is seen. */
const FIGURE_TOL_MM = 0.004
