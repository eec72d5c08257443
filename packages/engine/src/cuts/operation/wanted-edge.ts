import type { Piece } from '../../piece/piece-schema.ts'
import { decimals } from '../../quantity/format.ts'
import type { StackEvent } from '../../stack/event.ts'
import type { Stack } from '../../stack/stack.ts'
import { sideOf } from '../../stack/stack.ts'
import { groovePath } from '../line/groove.ts'
import { zToPlan } from '../pins/frame.ts'
import type { Place } from './bench.ts'
import { linesHere } from './in-position.ts'
import type { MachineSetting, NotMade, Wanted } from './operation.ts'

/** The V whose one side leaves a chamfer of equal legs, degrees. */
const CHAMFER_DEG = 90

/**
 * The edges of the face that is up which a machine works: a chamfer as one side of a V along the outline, as deep as
 * its leg, while the waste still holds the piece. What the V takes beyond the outline is waste.
 *
 *   included angle 90°: leg across = leg down = size
 *
 * Check: the program is proved against a V groove along the outline (proving has it as an event of the stack); the
 * section of the finished edge by closed form (test).
 * Limits: the outline of the piece alone, no opening in it; a chamfer wider than half its V is told with the V that
 * would do. A round edge wants a cutter with a bearing, which no program is made for.
 */
export function wantedOfEdges(place: Place): (Wanted | NotMade)[] {
  const { stack } = place.bench
  const { on, step } = place
  const { up } = on.setting
  const plan = outlineLines(stack)
  return edgesUp(stack.piece, up).map(({ edge, index }): Wanted | NotMade => {
    const name = `${edge.profile} of the ${up} edge`
    const { size } = edge
    if (edge.profile === 'round')
      return {
        setting: on.index,
        step: place.listed ?? step,
        at: `/edges/${index}`,
        name,
        says: `a round edge of ${decimals(size, 1)} mm wants a round-over bit of radius ${decimals(size, 1)} with a bearing, which follows the edge in a router by hand: let its way be router`,
        largestMm: null,
        reason: 'kind'
      }
    const topMm = place.topMm
    const lines = linesHere(on.position, place.lines(plan), size)
    return {
      kind: 'edges',
      at: `/edges/${index}`,
      name,
      need: { kind: 'v', angleDeg: CHAMFER_DEG, widthMm: 2 * size, depthMm: size },
      operation: 'v',
      topMm,
      floorMm: topMm - size,
      met: place.metAlong(plan, topMm - size),
      path: job => groovePath(job, lines, { kind: 'v', widthMm: 2 * size, angleDeg: CHAMFER_DEG })
    }
  })
}

/** Edges of the face up that are worked by machine. */
function edgesUp(piece: Piece, up: 'front' | 'back') {
  return piece.edges
    .map((edge, index) => ({ edge, index }))
    .filter(({ edge }) => edge.way === 'machine' && (edge.face === 'both' || edge.face === up))
}

function outlineLines({ geometry }: Pick<Stack, 'geometry'>): Float64Array[] {
  return geometry.outline.rings.map(ring => Float64Array.of(...ring, ring[0]!, ring[1]!))
}

/** What the edge work of one program takes, as proving holds it against: a V along the outline. Heights as cast. */
export function edgeEvents(
  stack: Stack,
  place: { readonly on: MachineSetting; readonly topMm: number },
  at: string
): StackEvent[] {
  const index = Number(at.slice('/edges/'.length))
  const edge = stack.piece.edges[index]
  if (edge === undefined) return []
  return [
    {
      kind: 'mark',
      index: 0,
      removal: {
        side: sideOf(stack.piece, place.on.setting.up),
        floor: zToPlan(place.on.frame, place.topMm - edge.size),
        region: null,
        lines: outlineLines(stack),
        profile: { kind: 'v', widthMm: 2 * edge.size, angleDeg: CHAMFER_DEG }
      }
    }
  ]
}
