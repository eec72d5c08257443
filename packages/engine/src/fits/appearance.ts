import type { Materials } from '../cast/facts.ts'
import type { Bands } from '../catalogue/pigment-optics.ts'
import { differenceOfBands, JUST_NOTICED } from '../colour/difference.ts'
import { hexOf } from '../colour/srgb.ts'
import { behindAir, laidOn, outsideBands } from '../colour/stacked.ts'
import type { CoreInterval } from '../stack/core.ts'
import { coreAt } from '../stack/core.ts'
import type { CutCover } from '../stack/cover.ts'
import { alone } from '../stack/cut-way.ts'
import type { Stack } from '../stack/stack.ts'
import type { Seen, Strength } from './core-colour.ts'
import { differenceAt, seenBetween } from './core-colour.ts'
import type { Looks } from './looks.ts'
import { looksOf } from './looks.ts'
import type { TimberUnder } from './timber-under.ts'
import { timbersUnder } from './timber-under.ts'

/** What a blind cut from behind does to the colour in front of it, where it shows most. */
export interface CutSeen {
  readonly cut: number
  readonly x: number
  readonly y: number
  /** The pour its floor lies in, by index, and what is left of it there, mm. */
  readonly pour: number
  readonly leftMm: number
  readonly seen: Seen
  /**
   * What must be left of that pour for the difference to be 1: with pigment as strong as it is known, as strong
   * and as weak as it may be. null: not even the whole layer does.
   */
  readonly needMm: {
    readonly low: number
    readonly central: number | null
    readonly high: number | null
  } | null
}

/** How a pour looks by itself. */
export interface PourSeen {
  /** Its finished depth over a wall, "#rrggbb". */
  readonly colour: `#${string}`
  /** From the side, against the pour that lies on it: ΔE00; null for the last, and for what lies elsewhere. */
  readonly besideNext: number | null
}

/** The computed colours of a piece: how it looks, and what would show that should not. */
export interface Appearance {
  readonly looks: Looks
  readonly pours: readonly PourSeen[]
  readonly cuts: readonly CutSeen[]
  /** Timbers under pours that are said to hide them. */
  readonly under: readonly TimberUnder[]
}

/** Path of light through a layer seen from the edge, mm: deep enough for its own colour. */
const EDGE_MM = 40
/** Least that is left for a need to be sought, mm. */
const LEAST_MM = 0.01

/** Stage: colours, and covers of cuts from behind. */
export function appearanceOf(stack: Stack, materials: Materials, covers: readonly CutCover[]): Appearance {
  const looks = looksOf(stack, materials)
  return {
    looks,
    pours: stack.pours.map((p, i): PourSeen => {
      const next = stack.pours[i + 1]
      const touches =
        next !== undefined &&
        stack.piece.pours[i]!.kind === 'cast' &&
        stack.piece.pours[i + 1]!.kind === 'cast' &&
        Math.abs(next.floor - p.level) < 1e-6
      return {
        colour: hexOf(outsideBands(over(looks, i, p.depth))),
        besideNext: touches
          ? differenceOfBands(
              outsideBands(over(looks, i, EDGE_MM)),
              outsideBands(over(looks, i + 1, EDGE_MM))
            )
          : null
      }
    }),
    cuts: covers.flatMap(cover => cutSeen(stack, looks, cover) ?? []),
    under: timbersUnder(stack, looks)
  }
}

function over(looks: Looks, pour: number, mm: number): Bands {
  const { scatterPerMm: s, absorbPerMm: k } = looks.pours[pour]!
  const turned = ((s[0] + s[1] + s[2]) / 3) * mm
  const band = (b: 0 | 1 | 2) => laidOn(s[b], k[b], mm, behindAir(looks.wall[b], turned))
  return [band(0), band(1), band(2)]
}

function cutSeen(stack: Stack, looks: Looks, cover: CutCover): CutSeen | null {
  const event = stack.events.find(e => e.kind === 'cut' && e.index === cover.cut)
  const { face, through } = stack.piece.cuts[cover.cut]!
  // The front is looked at. What is filled again is seen as an inlay.
  if (event === undefined || event.kind !== 'cut' || face !== 'back' || through) return null
  const id = stack.entries.cuts[cover.cut]!.id
  if (stack.piece.pours.some(p => p.into?.includes(id))) return null
  const own = alone(stack, event)
  const before = own.filter(e => e !== event)
  const sits = looks.inCuts[cover.cut]!
  let worst: (CutSeen & { readonly without: readonly CoreInterval[] }) | null = null
  const done = new Set<string>()
  for (const { x, y } of [...cover.layers, ...cover.ways]) {
    const core = coreAt(stack.geometry, own, x, y)
    const first = core[looks.frontUp ? 0 : core.length - 1]
    if (first === undefined || first.material.kind !== 'pour') continue
    const key = core.map(p => `${p.material.kind}${p.material.index} ${(p.to - p.from).toFixed(3)}`).join()
    if (done.has(key)) continue
    done.add(key)
    const without = coreAt(stack.geometry, before, x, y)
    const seen = seenBetween(looks, core, without, 'front', sits)
    if (worst !== null && worst.seen.band[1] >= seen.band[1]) continue
    worst = {
      cut: cover.cut,
      x,
      y,
      pour: first.material.index,
      leftMm: first.to - first.from,
      seen,
      needMm: null,
      without
    }
  }
  if (worst === null) return null
  const { without, ...found } = worst
  return { ...found, needMm: found.seen.band[1] < JUST_NOTICED ? null : needOf(looks, found, without, sits) }
}

function needOf(
  looks: Looks,
  { pour }: CutSeen,
  without: readonly CoreInterval[],
  sits: Bands | null
): CutSeen['needMm'] {
  const up = looks.frontUp
  const layer = without.find(p => p.material.kind === 'pour' && p.material.index === pour)!
  const whole = layer.to - layer.from
  // The core with so much of the layer left, and nothing behind it.
  const left = (mm: number): CoreInterval[] =>
    up
      ? without.filter(p => p.to > layer.to - mm).map(p => (p === layer ? { ...p, from: p.to - mm } : p))
      : without.filter(p => p.from < layer.from + mm).map(p => (p === layer ? { ...p, to: p.from + mm } : p))
  const need = (strength: Strength): number | null => {
    const shows = (mm: number) =>
      differenceAt(looks, left(mm), without, 'front', strength, sits) > JUST_NOTICED
    if (shows(whole)) return null
    let [low, high] = [LEAST_MM, whole]
    if (!shows(low)) return low
    for (let i = 0; i < 40; i++) {
      const middle = (low + high) / 2
      if (shows(middle)) low = middle
      else high = middle
    }
    return high
  }
  const [low, central, high] = [need('strong'), need('as known'), need('weak')]
  return low === null ? null : { low, central, high }
}
