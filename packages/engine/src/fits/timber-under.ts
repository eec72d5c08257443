import { JUST_NOTICED } from '../colour/difference.ts'
import { bounds, inside } from '../shape/measure.ts'
import type { CoreInterval } from '../stack/core.ts'
import { coreAt } from '../stack/core.ts'
import type { Stack } from '../stack/stack.ts'
import { differenceAt, type Seen, type Strength, seenBetween } from './core-colour.ts'
import type { Looks } from './looks.ts'

/** A timber under a pour that is said to hide it, where the pour is thinnest over it. */
export interface TimberUnder {
  readonly pour: number
  readonly timber: number
  readonly x: number
  readonly y: number
  readonly coverMm: number
  readonly seen: Seen
  /** Cover at which the difference is 1 with pigment as weak as it may be, mm; null: none up to 100 mm. */
  readonly needMm: number | null
}

/** Places each way over the box of a timber that are looked at. */
const PLACES = 7
/** Less than this is a smear over an edge, not a layer, mm. */
const LEAST_MM = 0.2
const MOST_MM = 100

/**
 * Timbers with a level top under pours whose document says `opaque`: the colour as it is, and as it would be were the
 * timber resin of that pour. One entry a pour and timber. Sides that lean are left out: a layer over them runs out to
 * nothing wherever they come up to the face, and is meant to.
 */
export function timbersUnder(stack: Stack, looks: Looks): TimberUnder[] {
  const out = new Map<string, TimberUnder>()
  const opaque = stack.piece.pours.flatMap((p, i) => (p.opaque === true ? [i] : []))
  if (opaque.length === 0) return []
  const up = looks.frontUp
  stack.geometry.timbers.forEach((solid, timber) => {
    if (solid.top.kind !== 'flat') return
    const b = bounds(solid.upper)
    for (let i = 1; i < PLACES; i++) {
      for (let j = 1; j < PLACES; j++) {
        const x = b.minX + ((b.maxX - b.minX) * i) / PLACES
        const y = b.minY + ((b.maxY - b.minY) * j) / PLACES
        if (!inside(solid.upper, x, y) || !inside(solid.lower, x, y) || !inside(stack.geometry.outline, x, y))
          continue
        const core = coreAt(stack.geometry, stack.events, x, y)
        const at = core.findIndex(p => p.material.kind === 'timber' && p.material.index === timber)
        const layer = core[up ? at + 1 : at - 1]
        if (at < 0 || layer === undefined || layer.material.kind !== 'pour') continue
        const pour = layer.material.index
        const coverMm = layer.to - layer.from
        if (!opaque.includes(pour) || coverMm < LEAST_MM || !touch(core[at]!, layer, up)) continue
        const key = `${pour} ${timber}`
        if ((out.get(key)?.coverMm ?? Number.POSITIVE_INFINITY) <= coverMm) continue
        out.set(key, { pour, timber, x, y, coverMm, ...judged(looks, core, at, layer) })
      }
    }
  })
  return [...out.values()]
}

function touch(timber: CoreInterval, layer: CoreInterval, up: boolean): boolean {
  return Math.abs(up ? layer.from - timber.to : timber.from - layer.to) < 1e-6
}

function judged(
  looks: Looks,
  core: readonly CoreInterval[],
  at: number,
  layer: CoreInterval
): Pick<TimberUnder, 'seen' | 'needMm'> {
  const { material } = layer
  const without = core.map((p, k) => (k === at ? { ...p, material } : p))
  const seen = seenBetween(looks, core, without, 'front')
  if (seen.band[1] < JUST_NOTICED) return { seen, needMm: null }
  const shows = (mm: number, strength: Strength) => {
    // Deeper by what the timber gives up: the rest of the core stays where it is.
    const by = mm - (layer.to - layer.from)
    const moved = core.map((p, k): CoreInterval => {
      if (p === layer) return looks.frontUp ? { ...p, from: p.from - by } : { ...p, to: p.to + by }
      if (k === at) return looks.frontUp ? { ...p, to: p.to - by } : { ...p, from: p.from + by }
      return p
    })
    return differenceAt(looks, moved, without, 'front', strength) > JUST_NOTICED
  }
  if (shows(MOST_MM, 'weak')) return { seen, needMm: null }
  let [low, high] = [LEAST_MM / 2, MOST_MM]
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (shows(middle, 'weak')) low = middle
    else high = middle
  }
  return { seen, needMm: high }
}
