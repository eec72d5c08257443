import type { StepTime } from '../../cast/clock.ts'
import { dowelPinOf } from '../../catalogue/dowel-pin.ts'
import type { Season } from '../../fits/season.ts'
import type { Piece, Pins } from '../../piece/piece-schema.ts'
import type { Shop } from '../../piece/shop-schema.ts'
import type { Stack } from '../../stack/stack.ts'
import { settingsOf } from '../../steps/setting.ts'
import { deviationsMm } from '../../tolerance/iso286.ts'
import type { Pair as Chosen, Ear } from './chosen.ts'
import { chosenPair, earsFor } from './chosen.ts'
import type { About, Datum } from './frame.ts'
import { datumOf } from './frame.ts'
import { movingOf } from './growth.ts'
import type { IndexPlan } from './index-plan.ts'
import { indexPlan } from './index-plan.ts'
import type { Misfit } from './misfit.ts'
import { misfitOf } from './misfit.ts'
import type { Ground, HoleFault } from './offer.ts'
import { faultAt, groundOf, inEar } from './offer.ts'
import type { PinHole, WrongPlacing } from './placing.ts'
import { seatOf, wrongPlacings } from './placing.ts'

/** A pin and its holes; places on the plan, mm. */
export interface Pin {
  readonly x: number
  readonly y: number
  readonly diameterMm: number
  /** What the hole is drilled or milled to: the pin at its largest and the play. */
  readonly holeMm: number
  /** How much longer than wide, in line with the pins; 0: round. */
  readonly slotMm: number
  /** Depth in the piece from the face that is up then, null right through; and in the bed. */
  readonly depthMm: number | null
  readonly bedMm: number
  /** Pin as it is sold: name, and the longest that does not stand out; null: turned or cut by the maker. */
  readonly pin: { readonly name: string; readonly lengthMm: number } | null
  readonly inEar: boolean
  /** What is against the place; null: nothing. */
  readonly fault: HoleFault | null
}

/** How both faces are tied to one datum. */
export interface PinPlan {
  /** Cuts or markings by machine on both faces: it has to be turned over true. */
  readonly needed: boolean
  /** Places from the document, or chosen. */
  readonly given: boolean
  readonly datum: Datum
  readonly pins: readonly Pin[]
  readonly playMm: number
  readonly toleranceMm: number
  /** Turned over right, its holes meet the pins. */
  readonly goesOn: boolean
  readonly wrong: readonly WrongPlacing[]
  readonly misfit: Misfit | null
  /** Ears that would take the pins, where the casting offers no place. */
  readonly ears: readonly Ear[] | null
  /** How a piece longer than the bed is moved along it; null: it lies on it whole, or cannot be moved. */
  readonly index: IndexPlan | null
  /** Why a piece longer than the bed cannot be moved along; null else. */
  readonly noIndex: string | null
}

/** What the plan knows beyond the stack: without it no timber moves between the settings. */
export interface PinFacts {
  readonly seasons: readonly Season[]
  readonly clock: readonly StepTime[]
}

const DEFAULTS: Omit<Pins, 'at' | 'about' | 'slot'> = {
  diameter: [8, 6],
  depth: 20,
  play: 0.05,
  tolerance: 0.3
}
/** Repeatability taken for a machine that says none, mm (schema default). */
const MACHINE_MM = 0.1
/** Room over the end of a pin, mm; least web under a blind hole, mm (practice). */
const OVER_PIN_MM = 1
const LEAST_WEB_MM = 3
/** A slot is longer than the movement it takes by this, mm (practice). */
const SLOT_OVER_MM = 1

/** Cuts and markings on both faces that a machine makes. */
function bothFaces(piece: Piece): boolean {
  const faces = new Set([...piece.cuts, ...piece.markings].filter(c => c.way === 'machine').map(c => c.face))
  return faces.size === 2
}

/** Whether a machine makes anything of the piece. */
function machineCuts(piece: Piece): boolean {
  const cuts = [...piece.cuts, ...piece.markings]
  return cuts.length === 0 || [...cuts, ...piece.edges].some(c => c.way === 'machine')
}

/**
 * Pins of a piece: as the document gives them, else two on the line it is turned over about, as far apart as the
 * casting offers, of two diameters so that it goes on one way only.
 *
 * On the line a hole is its own image, so the pattern is alike about it; two diameters make it unlike across it.
 *
 * Limits: a hole is round and square to the face; patterns that fit a quarter turn are not looked for.
 */
export function pinPlan(stack: Stack, piece: Piece, shop: Shop, facts?: PinFacts): PinPlan {
  const wanted = { ...DEFAULTS, ...piece.pins }
  const needed = bothFaces(piece)
  const { outline } = stack.geometry
  const sizes = typeof wanted.diameter === 'number' ? [wanted.diameter] : wanted.diameter
  const diameterOf = (i: number) => sizes[Math.min(i, sizes.length - 1)]!
  const two = [diameterOf(0), diameterOf(1)] as const
  const places = piece.pins?.at
  let ground0: Ground | null = null
  const groundHere = () => {
    ground0 ??= groundOf(stack, shop)
    return ground0
  }
  const along = machineCuts(piece)
    ? indexPlan(stack, shop, groundHere, {
        diametersMm: two,
        playMm: wanted.play,
        bedMm: wanted.depth
      })
    : null
  const none: PinPlan = {
    needed,
    given: places !== undefined,
    datum: datumOf(outline, wanted.about ?? 'x'),
    pins: [],
    playMm: wanted.play,
    toleranceMm: wanted.tolerance,
    goesOn: false,
    wrong: [],
    misfit: null,
    ears: null,
    index: typeof along === 'string' ? null : along,
    noIndex: typeof along === 'string' ? along : null
  }
  if (!needed && piece.pins === undefined) return none

  // The holes it is moved along on tie its faces too.
  if (none.index !== null && places === undefined) return none

  const ground = groundHere()
  const moving = facts === undefined ? [] : movingOf(stack, facts.seasons, facts.clock, shop)
  const errorMm = shop.machine?.error ?? MACHINE_MM
  const clearance = { clearance1Mm: wanted.play, clearance2Mm: wanted.play }
  const misfit = (at: readonly (readonly [number, number])[]) => {
    const [a, b] = farthest(at)
    const pitchMm = Math.hypot(b[0] - a[0], b[1] - a[1])
    return misfitOf(outline, [a, b], { ...clearance, pitchMm }, errorMm, moving)
  }
  let at = places
  let about: About = wanted.about ?? 'x'
  if (at === undefined) {
    const options: { line: About; pair: Chosen; misfit: Misfit }[] = []
    // Left stays left unless the other line ties the faces so much better that it matters.
    for (const line of wanted.about === undefined ? (['x', 'y'] as const) : [wanted.about]) {
      const pair = chosenPair(ground, line, two)
      if (pair === null) continue
      options.push({ line, pair, misfit: misfit(pair) })
      if (options[0]!.misfit.mm[2] <= wanted.tolerance) break
    }
    const best = options.find(o => o.misfit.mm[2] <= wanted.tolerance) ?? least(options)
    if (best === undefined)
      return {
        ...none,
        ears: stack.steps.some(s => s.kind === 'make mould') ? earsFor(ground, about, two) : null
      }
    at = best.pair.map(p => [p[0], p[1]] as [number, number])
    about = best.line
  }
  const datum = datumOf(outline, about, at)
  const found = misfit(at)
  const moves = Math.max(...found.pitchMm.map(Math.abs))
  const slotted = wanted.slot ?? moves > found.pitchTakenMm
  const [locating, other] = farthest(at)
  const pins = at.map(([x, y], i): Pin => {
    const diameterMm = diameterOf(i)
    const sold = dowelPinOf(diameterMm)
    const over = sold === null ? 0 : deviationsMm(diameterMm, sold.toleranceClass).upperMm
    const { depthMm, engagedMm } = depths(stack, ground.day, wanted.depth)
    const room = engagedMm + wanted.depth - OVER_PIN_MM
    const lengthMm = sold?.lengthsMm.filter(l => l <= room).at(-1)
    return {
      x,
      y,
      diameterMm,
      holeMm: Number((diameterMm + over + wanted.play).toFixed(3)),
      // Every hole but the one it is placed by may have to give way.
      slotMm:
        slotted && at[i] !== locating && (at.length === 2 || at[i] === other) ? 2 * moves + SLOT_OVER_MM : 0,
      depthMm,
      bedMm: wanted.depth,
      pin: sold === null || lengthMm === undefined ? null : { name: sold.name, lengthMm },
      inEar: inEar(ground, x, y),
      fault: faultAt(ground, x, y, diameterMm)
    }
  })
  const first: PinHole[] = pins.map(p => ({
    x: p.x - datum.x0,
    y: p.y - datum.y0,
    diameterMm: p.holeMm,
    slotMm: p.slotMm,
    through: p.depthMm === null
  }))
  const turned = first.map(h => (about === 'x' ? { ...h, y: -h.y } : { ...h, x: -h.x }))
  const bed = pins.map((p, i) => ({ x: first[i]!.x, y: first[i]!.y, diameterMm: p.diameterMm }))
  return {
    ...none,
    datum,
    pins,
    goesOn: seatOf(turned, bed, false, wanted.play / 2) !== null,
    wrong: wrongPlacings(turned, first, bed, wanted.play / 2),
    misfit: found
  }
}

function least<T extends { readonly misfit: Misfit }>(options: readonly T[]): T | undefined {
  return options.reduce<T | undefined>(
    (best, o) => (best === undefined || o.misfit.mm[2] < best.misfit.mm[2] ? o : best),
    undefined
  )
}

// The two pins that stand farthest apart, in the order of the document: the first is the one it is placed by.
function farthest<P extends readonly [number, number]>(at: readonly P[]): readonly [P, P] {
  let pair: readonly [P, P] = [at[0]!, at[1]!]
  let most = -1
  for (let i = 0; i < at.length; i++)
    for (let j = i + 1; j < at.length; j++) {
      const mm = Math.hypot(at[i]![0] - at[j]![0], at[i]![1] - at[j]![1])
      if (mm > most) [pair, most] = [[at[i]!, at[j]!], mm]
    }
  return pair
}

// Depth of a hole in the piece as it is drilled, and how much of a pin it takes once the piece is turned over.
function depths(stack: Stack, day: number, depth: number): { depthMm: number | null; engagedMm: number } {
  const settings = settingsOf(stack.steps)
  const state = stack.states[Math.max(0, day)]
  const last = settings.at(-1)
  const then = last === undefined ? undefined : stack.states[last.to]
  const thick = state === undefined ? stack.castHeight : state.highZ - state.lowZ
  const left = then === undefined ? thick : then.highZ - then.lowZ
  if (depth >= thick - LEAST_WEB_MM) return { depthMm: null, engagedMm: left }
  // Its open end is flattened after it is drilled.
  const first = settings[0]
  const flat = stack.steps
    .slice(Math.max(0, day), (first?.to ?? 0) + 1)
    .reduce((sum, s) => sum + (s.kind === 'flatten' ? (s.byMm ?? 0) : 0), 0)
  return { depthMm: depth, engagedMm: Math.max(0, depth - flat) }
}
