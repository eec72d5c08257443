import { turned } from '../../../engine/src/draw/shape-place.ts'
import type { Handle } from '../../../engine/src/draw/shape-resize.ts'
import type { PageView } from '../../../engine/src/sheets/page-data.ts'
import type { Held } from './held.ts'

type Pair = readonly [number, number]

/** A place where the part in hand is taken hold of, mm on the plan. */
export type Grip = { readonly key: string; readonly at: Pair } & (
  | { readonly kind: 'pull'; readonly handle: Handle }
  | { readonly kind: 'turn'; readonly foot: Pair }
  /** `roomMm`: how far away the nearer of its neighbours stands, mm on the sheet. */
  | { readonly kind: 'vertex'; readonly ring: number; readonly index: number; readonly roomMm: number }
  | { readonly kind: 'between'; readonly ring: number; readonly index: number }
)

/** How far from the part its turn handle stands, mm on the sheet, and how near the rim of the sheet it may, mm. */
const STAND_OFF_MM = 7
const RIM_MM = 3

/** Grips of the part in hand, for hands that need `reachMm` on the sheet round each. */
export function gripsOf(held: Held, view: PageView, kind: 'size' | 'points', reachMm: number): Grip[] {
  const reach = reachMm / view.scale
  return kind === 'points' ? points(held, view.scale, reach) : sides(held, view, reach)
}

function sides({ frame, handles }: Held, view: PageView, reach: number): Grip[] {
  // Between two corners that stand close there is no room for the middle of their side.
  const room = (handle: Handle) =>
    handle.includes(' ') || (/left|right/.test(handle) ? frame.heightMm : frame.widthMm) > 3 * reach
  const pulls = handles
    .filter(h => room(h.handle))
    .map((h): Grip => ({ kind: 'pull', key: h.handle, handle: h.handle, at: h.at }))
  return [...pulls, turner(frame, view)]
}

// Beyond the far side; where the sheet ends there, beyond the near one.
function turner(frame: Held['frame'], view: PageView): Grip {
  const half = frame.heightMm / 2
  const off = STAND_OFF_MM / view.scale
  const spot = (v: number): Pair => {
    const [dx, dy] = turned(0, v, frame.turnDeg)
    return [frame.x + dx, frame.y + dy]
  }
  const onSheet = ([x, y]: Pair) => {
    const [sx, sy] = [
      view.originX + (view.face === 'back' ? -x : x) * view.scale,
      view.originY + y * view.scale
    ]
    return sx > RIM_MM && sx < view.widthMm - RIM_MM && sy > RIM_MM && sy < view.heightMm - RIM_MM
  }
  const side = onSheet(spot(half + off)) || !onSheet(spot(-half - off)) ? 1 : -1
  return { kind: 'turn', key: 'turn', at: spot(side * (half + off)), foot: spot(side * half) }
}

function points({ vertices }: Held, scale: number, reach: number): Grip[] {
  const out: Grip[] = []
  for (const [k, v] of vertices.entries()) {
    const ring = vertices.filter(o => o.ring === v.ring)
    const next = vertices[k + 1]?.ring === v.ring ? vertices[k + 1]! : ring[0]!
    const last = vertices[k - 1]?.ring === v.ring ? vertices[k - 1]! : ring.at(-1)!
    const away = (o: { x: number; y: number }) => Math.hypot(o.x - v.x, o.y - v.y)
    const own = { ring: v.ring, index: v.index }
    const roomMm = Math.min(away(next), away(last)) * scale
    out.push({ kind: 'vertex', key: `${v.ring} ${v.index}`, ...own, at: [v.x, v.y], roomMm })
    if (away(next) >= 3 * reach)
      out.push({
        kind: 'between',
        key: `${v.ring} ${v.index} between`,
        ...own,
        at: [(v.x + next.x) / 2, (v.y + next.y) / 2]
      })
  }
  return out
}

/** The grip a press means: the nearest one; null where the middle of the part is nearer and it is moved. */
export function nearestGrip(grips: readonly Grip[], at: Pair, middle: Pair): Grip | null {
  let best: Grip | null = null
  let nearest = Math.hypot(at[0] - middle[0], at[1] - middle[1])
  for (const g of grips) {
    const off = Math.hypot(at[0] - g.at[0], at[1] - g.at[1])
    if (off < nearest) [best, nearest] = [g, off]
  }
  return best
}
