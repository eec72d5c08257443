import type { Bands } from '../catalogue/pigment-optics.ts'
import { differenceOfBands, type Shows, showsOf } from '../colour/difference.ts'
import { behindAir, laidOn, outsideBands } from '../colour/stacked.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { CoreInterval } from '../stack/core.ts'
import type { Looks, MixLook } from './looks.ts'

/**
 * How a core looks, and what of it an eye would miss.
 *
 * What lies behind all is a wall where the piece is open through, a dark hollow where a cut is closed by what the piece
 * hangs on; each layer is laid on what the one before shows; timber and voids end the look. A void inside is such a
 * hollow, or what sits in it. Cores come as the stack gives them,
 * from low to high.
 *
 * Limits: those of stacked.ts. Stones are not in a core. Light that comes in from the sides is left out.
 */
export type Strength = 'weak' | 'as known' | 'strong'

/** A gap of more than this is a hollow, mm. */
export const HOLLOW_MM = 1
/** A timber's side is seen where it ends so far inside its level faces, mm. */
const SIDE_MM = 0.3

/**
 * Reflectance inside of a core looked at from a face; null of nothing. `sits` takes the place of every hollow; `spread`
 * times as much of the light counts as turned before it meets air.
 */
export function insideOfCore(
  looks: Looks,
  core: readonly CoreInterval[],
  face: Face,
  strength: Strength = 'as known',
  sits: Bands | null = null,
  spread = 1
): Bands | null {
  const n = core.length
  if (n === 0) return null
  const up = (face === 'front') === looks.frontUp
  const out: [number, number, number] = [0, 0, 0]
  // From the near face to the first body that ends the look, and back with the layers before it.
  let turned = 0
  let first = n - 1
  let body: Bands | null = null
  for (let i = n - 1; i >= 0; i--) {
    const part = core[up ? i : n - 1 - i]!
    first = i
    if (part.material.kind === 'timber') {
      body = timberSeen(looks, part.material.index, up ? part.to : part.from, up)
      break
    }
    turned += turnedBy(looks, part, strength)
    const before = i === 0 ? null : core[up ? i - 1 : n - i]!
    const end = before === null ? looks.faces[up ? 0 : 1] : up ? before.to : before.from
    if (Math.abs((up ? part.from : part.to) - end) > HOLLOW_MM) {
      body = air(sits ?? looks.hollow, spread * turned)
      break
    }
  }
  put(out, body ?? air(looks.wall, spread * turned))
  for (let i = first; i < n; i++) lay(out, looks, core[up ? i : n - 1 - i]!, strength)
  return out
}

function air(seen: Bands, turned: number): Bands {
  return [behindAir(seen[0], turned), behindAir(seen[1], turned), behindAir(seen[2], turned)]
}

/** A core's colour as seen from a face, linear in light; null of nothing. */
export function seenOf(looks: Looks, core: readonly CoreInterval[], face: Face): Bands | null {
  const inside = insideOfCore(looks, core, face)
  return inside === null ? null : outsideBands(inside)
}

/** The mix of a part of a core; null of timber and formers. */
function mixOf(looks: Looks, { kind, index }: CoreInterval['material']): MixLook | null {
  return kind === 'pour' ? looks.pours[index]! : kind === 'marking' ? looks.markings[index]! : null
}

function strengthOf(mix: MixLook, strength: Strength): number {
  return strength === 'as known' ? 1 : strength === 'strong' ? mix.doubt : 1 / mix.doubt
}

// S·X of a layer, the middle of its bands.
function turnedBy(looks: Looks, { material, from, to }: CoreInterval, strength: Strength): number {
  const mix = mixOf(looks, material)
  if (mix === null) return 0
  const [r, g, b] = mix.scatterPerMm
  return ((r + g + b) / 3) * (to - from) * strengthOf(mix, strength)
}

function lay(
  out: [number, number, number],
  looks: Looks,
  { material, from, to }: CoreInterval,
  strength: Strength
): void {
  const mix = mixOf(looks, material)
  if (mix === null) return
  const mm = (to - from) * strengthOf(mix, strength)
  for (let b = 0; b < 3; b++) out[b] = laidOn(mix.scatterPerMm[b]!, mix.absorbPerMm[b]!, mm, out[b]!)
}

/** What is seen of a timber that ends at height `end` towards the eye: its wood, or the char of its side. */
export function timberSeen(looks: Looks, index: number, end: number, up: boolean): Bands {
  const t = looks.timbers[index]!
  if (t.char === null || Math.abs(end - looks.faces[up ? 1 : 0]) <= SIDE_MM) return t.wood
  return (up ? end < t.highMm - SIDE_MM : end > t.lowMm + SIDE_MM) ? t.char : t.wood
}

/** How much something behind shows: difference ΔE00 with and without it, with both ends of the pigments' strength. */
export interface Seen {
  readonly difference: number
  readonly band: readonly [low: number, high: number]
  readonly shows: Shows
}

/** Ends of the strength besides the middle, in the order of a {@link Seen}'s figures. */
const STRENGTHS = ['as known', 'strong', 'weak'] as const

/**
 * The difference from a face between a core as it is and one without the thing in question. `sits`: what sits in
 * the void, which shows beside the hollow: the worse of both counts.
 */
export function seenBetween(
  looks: Looks,
  core: readonly CoreInterval[],
  without: readonly CoreInterval[],
  face: Face,
  sits: Bands | null = null
): Seen {
  const at = STRENGTHS.map(strength => differenceAt(looks, core, without, face, strength, sits))
  return { difference: at[0]!, band: [Math.min(...at), Math.max(...at)], shows: showsOf(at[0]!) }
}

/**
 * The same at one strength. How much of the light is diffuse before it meets the air of a void is known within a
 * factor of two: of both ends the worse counts, so that no chance likeness hides a void. An opening right through,
 * where nothing is seen, differs by 100.
 */
export function differenceAt(
  looks: Looks,
  core: readonly CoreInterval[],
  without: readonly CoreInterval[],
  face: Face,
  strength: Strength,
  sits: Bands | null = null
): number {
  let worst = 0
  for (const spread of SPREADS) {
    const bare = insideOfCore(looks, without, face, strength, null, spread)
    for (const held of sits === null ? [null] : [null, sits]) {
      const own = insideOfCore(looks, core, face, strength, held, spread)
      if (own === null || bare === null) return own === bare ? 0 : 100
      worst = Math.max(worst, differenceOfBands(outsideBands(own), outsideBands(bare)))
    }
  }
  return worst
}

const SPREADS = [0.5, 2] as const

function put(out: [number, number, number], bands: Bands): void {
  out[0] = bands[0]
  out[1] = bands[1]
  out[2] = bands[2]
}
