import type { PourCast } from '../cast/cast.ts'
import type { StepTime } from '../cast/clock.ts'
import type { Materials } from '../cast/facts.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Shop } from '../piece/shop-schema.ts'
import type { Stack } from '../stack/stack.ts'
import { acrossAfterFilmMm, depthAfterFilmMm } from '../tolerance/film.ts'
import type { Across, Measured } from './across.ts'
import { acrossOf, acrossShape, followed } from './across.ts'
import type { LivingAir } from './air.ts'
import { beginsMin, cureShare, cutShare, errorMm, formerShare, seasonShare, warmthShare } from './cause.ts'
import type { Season } from './season.ts'
import type { Band, Share } from './share.ts'
import { exactly, together } from './share.ts'
import type { Walls } from './walls.ts'
import { wallsAt } from './walls.ts'

/** Dry film of the finish of a face, mm, all coats together; `floods` when it levels itself. */
export interface FaceFilm {
  readonly filmMm: Band
  readonly coats: number
  readonly floods: boolean
}

/** What the build does to sizes, beyond the stack. */
export interface FitFacts {
  readonly materials: Materials
  readonly seasons: readonly Season[]
  readonly air: LivingAir
  readonly casts: readonly (PourCast | null)[]
  readonly clock: readonly StepTime[]
  readonly shop: Shop
  readonly films: Readonly<Record<Face, FaceFilm>>
}

/** A hole through the whole build. Sizes across, mm. */
export interface SizeChain {
  readonly of: 'cut' | 'former'
  readonly index: number
  readonly measured: Measured
  /** As drawn: what is cut, or the former. */
  readonly drawnMm: number
  readonly shares: readonly Share[]
  /** What it ends at. */
  readonly finalMm: Band
  /** Depth it ends at, from the face with its coats; null right through and for formers. */
  readonly depthMm: Band | null
  /** Coats that reach its walls, of the face that gives most. */
  readonly coats: number
  /** A self-levelling coat runs over it while it is open. */
  readonly flooded: boolean
  readonly walls: Walls
}

/**
 * The size of every pocket, bore, slot and former's hole from the drawing to the piece in use, in the order of the
 * steps:
 *
 *   final = drawn + 2·(cut or class + cure + coats + season + warmth)          each on a side
 *   depth = depth at the end of the stack − film on the floor + film on the face
 *
 * A coat reaches the walls of a hole that is open on its face when it is laid on: cut before, not masked, not yet
 * filled by its part. Right through, both faces' coats reach them. Coats before the cut take nothing.
 *
 * Source: the stack (order, faces), tolerance/film, {@link Share} causes.
 * Check: 3 coats of 25 µm on a Ø 10 hole: 9.85 across; masked, or cut after: 10.
 *
 * Limits: grooves of one width and plane shapes; the width of a V is the line's own matter; a wall film runs
 * from none to the thick end of the coat, since brushes, cloths and sprays reach walls unevenly.
 */
export function sizeChains(stack: Stack, facts: FitFacts): SizeChain[] {
  const filled = new Set(stack.piece.pours.flatMap(p => p.into ?? []))
  const cuts = stack.entries.cuts.flatMap(({ id, index, value }) => {
    const done = stack.cuts[index]!
    const across = acrossOf(stack, index)
    if (filled.has(id) || value.kind === 'outline' || value.kind === 'rebate') return []
    if (done.step === null || across === null) return []
    return [cutChain(stack, facts, index, across)]
  })
  return [...cuts, ...formerChains(stack, facts)]
}

function cutChain(stack: Stack, facts: FitFacts, index: number, across: Across): SizeChain {
  const { id, value } = stack.entries.cuts[index]!
  const { finished, floor, side, step: made } = stack.cuts[index]!
  const step = stack.steps.indexOf(made!)
  const [low, high] = [stack.finishedLow, stack.finishedHigh]
  const [from, to] = finished === null ? [low, high] : side === 'low' ? [low, floor] : [floor, high]
  const walls = wallsAt(stack, across.places, from, to)
  const { mm: drawnMm, measured, share } = followed(stack, across, walls)
  const coat = coatsOn(stack, facts, step, {
    id,
    part: value.for,
    masked: value.mask === true,
    face: value.through === true ? null : value.face
  })
  const shares = present([
    cutShare(facts.shop, value, drawnMm),
    cureShare(walls, stack.piece, facts.materials, facts.casts, beginsMin(facts.clock, step), drawnMm),
    coat.share,
    seasonShare(walls, facts.seasons, facts.materials, drawnMm * share),
    warmthShare(walls, facts.air, facts.shop, drawnMm)
  ])
  return {
    of: 'cut',
    index,
    measured,
    drawnMm,
    shares,
    finalMm: widened(drawnMm, together(shares)),
    depthMm: finished === null ? null : depthBand(finished, coat, errorMm(facts.shop, value.way)),
    coats: coat.coats,
    flooded: coat.flooded,
    walls
  }
}

/** A hole that is open when coats are laid on. `face`: the one it opens on; null: both. */
interface OpenHole {
  readonly id: string
  readonly part: string | undefined
  readonly masked: boolean
  readonly face: Face | null
}

interface CoatsOn {
  readonly share: Share | null
  /** On the face it opens on, laid on after the cut, and on its floor. */
  readonly faceMm: Band
  readonly floorMm: Band
  readonly coats: number
  readonly flooded: boolean
}

// The coats laid on after the step that makes a hole.
function coatsOn(stack: Stack, { films }: FitFacts, step: number, hole: OpenHole): CoatsOn {
  const later = stack.steps.slice(step + 1)
  const fitted = later.findIndex(
    s => s.kind === 'fit' && (s.hardware!.value.in === hole.id || hole.part === s.hardware!.id)
  )
  const on = (['front', 'back'] as const).flatMap(face => {
    const laid = later.findIndex(s => s.kind === 'coat' && (s.face === 'both' || s.face === face))
    const open = !hole.masked && (fitted < 0 || laid < fitted) && (hole.face ?? face) === face
    return laid < 0 || films[face].coats === 0 ? [] : [{ face, ...films[face], open }]
  })
  const none = exactly(0)
  const thin = on.filter(c => c.open && !c.floods)
  const most = thin.reduce<Band>((a, c) => (c.filmMm[1] > a[1] ? c.filmMm : a), none)
  const all = thin.reduce((sum, c) => sum + c.filmMm[2], 0)
  return {
    share: all === 0 ? null : { cause: 'coat', sideMm: [sideOf(all), sideOf(most[1]), 0], sure: true },
    faceMm: on.find(c => c.face === hole.face)?.filmMm ?? none,
    floorMm: thin.find(c => c.face === hole.face)?.filmMm ?? none,
    coats: Math.max(0, ...thin.map(c => c.coats)),
    flooded: on.some(c => c.open && c.floods)
  }
}

/** What a film takes on a side of a hole. */
function sideOf(filmMm: number): number {
  return acrossAfterFilmMm(0, filmMm, 'hole') / 2
}

function depthBand(finishedMm: number, coat: CoatsOn, errorMm: number): Band {
  const depth = Math.max(0, finishedMm)
  const end = (face: number, floor: number) => depthAfterFilmMm(depth, floor, face) + finishedMm - depth
  // The floor of a pocket takes as much as the face, or is missed by the brush.
  const central = end(coat.faceMm[1], coat.floorMm[1])
  const most = end(coat.faceMm[2], 0)
  const least = end(coat.faceMm[0], coat.floorMm[2])
  return [
    central - Math.hypot(central - least, errorMm),
    central,
    central + Math.hypot(most - central, errorMm)
  ]
}

function formerChains(stack: Stack, facts: FitFacts): SizeChain[] {
  const out = stack.steps.findIndex(s => s.kind === 'demould')
  return stack.entries.formers.flatMap(({ id, index, value }): SizeChain[] => {
    if (!value.released || out < 0) return []
    const across = acrossShape(stack.geometry.formers[index]!.region, value.shape)
    const walls = wallsAt(stack, across.places, stack.finishedLow, stack.finishedHigh)
    const { mm: drawnMm, measured, share } = followed(stack, across, walls)
    const coat = coatsOn(stack, facts, out, { id, part: undefined, masked: false, face: null })
    const shares = present([
      formerShare(walls, stack.piece, facts.materials, facts.casts, facts.shop, drawnMm),
      coat.share,
      seasonShare(walls, facts.seasons, facts.materials, drawnMm * share),
      warmthShare(walls, facts.air, facts.shop, drawnMm)
    ])
    const finalMm = widened(drawnMm, together(shares))
    const { coats, flooded } = coat
    return [{ of: 'former', index, measured, drawnMm, shares, finalMm, depthMm: null, coats, flooded, walls }]
  })
}

function widened(drawnMm: number, side: Band): Band {
  return [drawnMm + 2 * side[0], drawnMm + 2 * side[1], drawnMm + 2 * side[2]]
}

function present(shares: readonly (Share | null)[]): Share[] {
  return shares.filter(s => s !== null)
}
