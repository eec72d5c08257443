import type { CutterForm } from '../../catalogue/cutter-shape.ts'
import { decimals } from '../../quantity/format.ts'
import { vDepthMm } from './chip.ts'
import type { Cutter } from './cutters.ts'

/** What a cut asks of its cutter. */
export type CutterNeed = {
  /** Depth from the face it starts on, mm. */
  readonly depthMm: number
  /** It has to go straight down into the solid, because there is no room for a ramp or helix. */
  readonly plunges?: boolean
} & (
  | {
      /** A pocket, a hole milled round, a slot: a flat end. An outline wants no wider a kerf than it needs. */
      readonly kind: 'clear' | 'outline'
      /** Smallest inside radius to be left, Infinity without inside corners; narrowest place it has to pass. */
      readonly insideRadiusMm: number
      readonly widthMm: number
    }
  /** A groove with a round floor as wide as the cutter. */
  | { readonly kind: 'round'; readonly widthMm: number }
  /** A groove or line of a V. */
  | { readonly kind: 'v'; readonly angleDeg: number; readonly widthMm: number }
  | { readonly kind: 'drill'; readonly diameterMm: number }
  | { readonly kind: 'flatten' }
  /** A slot with an undercut for a screw head. */
  | { readonly kind: 'keyhole'; readonly headMm: number; readonly shankMm: number }
)

/** The cutter, why it, and what to mind. */
export interface CutterChoice {
  readonly cutter: Cutter
  readonly why: string
  readonly limits: readonly string[]
}

/** None does: what would, in words, and the largest diameter that would do; null where no size helps. */
export interface NoCutter {
  readonly none: {
    readonly largestMm: number | null
    readonly says: string
    readonly reason: 'kind' | 'size' | 'reach'
  }
}

const FORMS: Readonly<Record<CutterNeed['kind'], readonly CutterForm[]>> = {
  clear: ['flat'],
  outline: ['flat'],
  round: ['ball'],
  v: ['v'],
  drill: ['drill'],
  flatten: ['surfacing', 'flat'],
  keyhole: ['keyhole']
}
const WORDS: Readonly<Record<CutterNeed['kind'], string>> = {
  clear: 'flat end mill',
  outline: 'flat end mill',
  round: 'ball-nose end mill',
  v: 'V bit',
  drill: 'drill',
  flatten: 'surfacing bit',
  keyhole: 'keyhole cutter'
}
/** How far sizes may miss what is asked for exactly, mm: a drill's own tolerance. */
const EXACT_MM = 0.05
/** Edges longer than so many diameters whip and chatter (practice). */
const SLENDER = 5
/** A cutter that just fills a corner dwells in it and chatters: the corner is at least so much rounder (practice). */
const CORNER_ROOM = 1.05
/**
 * Beyond so wide a small spindle only pushes harder: a pocket's cutter, an outline's, whose kerf
 * is all waste, and a flattening bit that is not the shop's own.
 */
const STOUT_MM = { clear: 8, outline: 6.35, flatten: 25.4 } as const

/**
 * The largest cutter that fits, is long enough and goes down as the cut needs, up to 8 mm for a pocket and 6.35 for an
 * outline (common practice on a small spindle), and the next larger where those do not reach; among equals an end mill,
 * then the one with the shorter edges, which is the stiffer. One whose edges are as long as the cut is deep goes before
 * any whose are not; where there is none, one whose shank is no thicker than its edges goes deeper in passes, up to its
 * holder.
 */
export function chooseCutter(need: CutterNeed, cutters: readonly Cutter[]): CutterChoice | NoCutter {
  const [low, high] = sizeRange(need)
  const what = WORDS[need.kind]
  const kinds = cutters.filter(c => FORMS[need.kind].includes(c.shape.form) && angleFits(need, c))
  if (kinds.length === 0)
    return none('kind', need, `there is no ${kindWords(need)}; ${wanted(need)} would do`)
  const fitting = kinds.filter(
    c => c.shape.diameterMm >= low - EXACT_MM && c.shape.diameterMm <= high + 1e-9 && headFits(need, c)
  )
  if (fitting.length === 0)
    return none('size', need, `no ${what} of the right size; ${wanted(need)} would do`)
  const down = fitting.filter(c => !need.plunges || c.shape.plunges)
  if (down.length === 0)
    return none(
      'kind',
      need,
      `none of the ${what}s that fit goes straight down; ${wanted(need)} with edges that meet in the middle would do`
    )
  const deep = down.filter(c => depthOf(c) >= need.depthMm - 1e-9)
  if (deep.length === 0) {
    const best = Math.max(...down.map(depthOf))
    return none(
      'reach',
      need,
      `the ${what}s that fit reach ${decimals(best, 1)} mm, the cut is ${decimals(need.depthMm, 1)} deep; ${wanted(need)} that reaches it would do`
    )
  }
  // A slender one only where no stouter fits: stiffness falls with the fourth power of the diameter.
  const order = [...deep].sort(
    (a, b) =>
      formRank(need, a) - formRank(need, b) ||
      Number(shankRuns(need, a)) - Number(shankRuns(need, b)) ||
      b.shape.diameterMm - a.shape.diameterMm ||
      Number(b.kind === 'flat') - Number(a.kind === 'flat') ||
      a.shape.fluteMm - b.shape.fluteMm
  )
  const cutter = order[0]!
  const { diameterMm, fluteMm, shankMm, form } = cutter.shape
  const limits: string[] = []
  if (need.depthMm > SLENDER * diameterMm && form !== 'drill')
    limits.push(
      `slender: ${decimals(need.depthMm, 1)} deep is ${decimals(need.depthMm / diameterMm, 1)} times its diameter; light passes, listen for chatter`
    )
  if (shankRuns(need, cutter))
    limits.push(
      `edges ${decimals(fluteMm, 1)} long: below that its ${decimals(shankMm, 2)} mm shank runs in the cut; clear the chips`
    )
  if (form === 'flat' && need.kind === 'flatten')
    limits.push('no surfacing bit: many more passes, and steps to sand')
  return { cutter, why: why(need, cutter, kinds), limits }
}

function sizeRange(need: CutterNeed): readonly [number, number] {
  switch (need.kind) {
    case 'clear':
    case 'outline':
      return [0, Math.min((2 * need.insideRadiusMm) / CORNER_ROOM, need.widthMm)]
    case 'round':
      return [need.widthMm, need.widthMm + EXACT_MM]
    case 'v':
      return [need.widthMm, Number.POSITIVE_INFINITY]
    case 'drill':
      return [need.diameterMm, need.diameterMm + EXACT_MM]
    case 'flatten':
      return [0, Number.POSITIVE_INFINITY]
    case 'keyhole':
      return [need.headMm, Number.POSITIVE_INFINITY]
  }
}

function angleFits(need: CutterNeed, cutter: Cutter): boolean {
  return need.kind !== 'v' || Math.abs(cutter.shape.angleDeg - need.angleDeg) < 0.5
}

function headFits(need: CutterNeed, cutter: Cutter): boolean {
  return need.kind !== 'keyhole' || cutter.shape.neckMm >= need.shankMm
}

// A surfacing bit before an end mill; stout ones before still larger; the narrowest V and keyhole that is wide enough.
function formRank(need: CutterNeed, cutter: Cutter): number {
  const { form, diameterMm } = cutter.shape
  if (need.kind === 'flatten')
    return (form === 'surfacing' ? 0 : 2) + (cutter.own || diameterMm <= STOUT_MM.flatten ? 0 : 1)
  if (need.kind === 'clear' || need.kind === 'outline')
    return diameterMm <= STOUT_MM[need.kind] + 1e-9 ? 0 : diameterMm
  return need.kind === 'v' || need.kind === 'keyhole' ? diameterMm : 0
}

// Whether the shank runs in the cut, below edges that are too short.
function shankRuns(need: CutterNeed, { shape }: Cutter): boolean {
  return shape.form !== 'v' && shape.form !== 'keyhole' && need.depthMm > shape.fluteMm + 1e-9
}

/** How deep a cutter goes, mm: its edges, or up to the holder where the shank is no thicker. */
export function depthOf({ shape }: Pick<Cutter, 'shape'>): number {
  if (shape.form === 'v') return shape.reachMm
  return shape.shankMm <= shape.diameterMm + 1e-9 || shape.form === 'keyhole' ? shape.reachMm : shape.fluteMm
}

function kindWords(need: CutterNeed): string {
  return need.kind === 'v' ? `V bit of ${decimals(need.angleDeg, 0)}°` : WORDS[need.kind]
}

function wanted(need: CutterNeed): string {
  const [low, high] = sizeRange(need)
  const deep = `edges at least ${decimals(need.depthMm, 1)} long`
  switch (need.kind) {
    case 'clear':
    case 'outline':
      // Where any usual one is narrow enough, its width is no advice.
      return high <= STOUT_MM[need.kind]
        ? `a flat end mill of at most ${decimals(Math.floor(high * 20 + 1e-6) / 20, 2)} mm, ${deep},`
        : `a flat end mill, ${deep},`
    case 'round':
      return `a ball-nose of ${decimals(need.widthMm, 2)} mm, ${deep},`
    case 'v':
      return `a V bit of ${decimals(need.angleDeg, 0)}°, at least ${decimals(low, 1)} mm across,`
    case 'drill':
      return `a drill of ${decimals(need.diameterMm, 2)} mm, ${deep},`
    case 'flatten':
      return 'a surfacing bit or a flat end mill'
    case 'keyhole':
      return `a keyhole cutter with a head of at least ${decimals(need.headMm, 1)} mm and a neck of at least ${decimals(need.shankMm, 1)} mm`
  }
}

function none(reason: NoCutter['none']['reason'], need: CutterNeed, says: string): NoCutter {
  const [, high] = sizeRange(need)
  const size = need.kind === 'drill' ? need.diameterMm : need.kind === 'round' ? need.widthMm : high
  return {
    none: {
      largestMm: Number.isFinite(size) && size > 0 ? size : null,
      says,
      reason
    }
  }
}

function why(need: CutterNeed, { shape }: Cutter, kinds: readonly Cutter[]): string {
  switch (need.kind) {
    case 'clear':
    case 'outline': {
      const byCorner = (2 * need.insideRadiusMm) / CORNER_ROOM <= need.widthMm
      const reason = !Number.isFinite(Math.min(need.insideRadiusMm, need.widthMm))
        ? 'nothing narrows it'
        : byCorner
          ? `inside corners of ${decimals(need.insideRadiusMm, 2)} mm take at most ${decimals((2 * need.insideRadiusMm) / CORNER_ROOM, 2)}`
          : `the narrowest place is ${decimals(need.widthMm, 2)} mm`
      return `${kinds.length === 1 ? 'the only one there is' : 'the largest that fits'}: ${reason}, and ${decimals(need.depthMm, 1)} mm deep it reaches`
    }
    case 'v':
      return `${decimals(shape.angleDeg, 0)}° as drawn; ${decimals(need.widthMm, 2)} mm wide at ${decimals(vDepthMm(shape.angleDeg, need.widthMm, shape.tipMm), 2)} mm deep`
    case 'round':
      return `as wide as the groove, ${decimals(need.widthMm, 2)} mm`
    case 'drill':
      return `as wide as the hole, ${decimals(need.diameterMm, 2)} mm`
    case 'flatten':
      return 'the widest that a small spindle drives well: fewest passes'
    case 'keyhole':
      return `its head lets ${decimals(need.headMm, 1)} mm in and its neck ${decimals(need.shankMm, 1)} mm along`
  }
}
