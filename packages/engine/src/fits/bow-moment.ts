import type { StepTime } from '../cast/clock.ts'
import type { Face } from '../piece/piece-schema.ts'
import type { Stack } from '../stack/stack.ts'

/** A moment at which the shape of the piece is asked for. */
export interface BowMoment {
  /**
   * joined: a pour is about to be stiff. cured: what the casting in the mould would do if it came out now. The
   * others: after that step.
   */
  readonly when:
    | 'joined'
    | 'cured'
    | 'demoulded'
    | 'flattened'
    | 'poured over'
    | 'coated'
    | 'driest'
    | 'dampest'
  readonly step: number
  /** The pour that joins; a flood coat by {@link FILM}. */
  readonly pour: number | null
  /** Held flat in the mould. */
  readonly held: boolean
  /** Events of the stack that have happened. */
  readonly events: number
  /** Minutes on the clock, as reckoned and at the upper end; Infinity: in use, cured to the end. */
  readonly atMin: readonly [central: number, upper: number]
  /** When each pour was made, minutes on the clock. */
  readonly pouredMin: ReadonlyMap<number, number>
}

/**
 * The moments of a build, in its order; `stiffMin`: how long after it is made a pour is stiff. Empty where nothing is
 * made; `films`: flood coats of the finish, mm, by face. In use comes last, twice: in the driest air and in the dampest.
 */
export function momentsOf(
  stack: Stack,
  clock: readonly StepTime[],
  stiffMin: (pour: number) => readonly [number, number],
  films: ReadonlyMap<Face, number> = new Map()
): BowMoment[] {
  const { steps, states } = stack
  const out: BowMoment[] = []
  const pouredMin = new Map<number, number>()
  const last = steps.length - 1
  steps.forEach((step, i) => {
    const events = states[i]!.events
    const atMin = clock[i]!.startMin
    const base = { step: i, pour: null, held: step.inMould, events, pouredMin: new Map(pouredMin) }
    if (step.kind === 'pour' && step.pour!.value.kind !== 'seal') {
      const pour = step.pour!.index
      const before = i === 0 ? 0 : states[i - 1]!.events
      const [central, upper] = stiffMin(pour)
      out.push({ ...base, when: 'joined', pour, events: before, atMin: [atMin + central, atMin + upper] })
      pouredMin.set(pour, atMin)
      // Looked at when the next thing is done with it: a wait lies between.
      const next = steps.findIndex((s, k) => k > i && s.kind !== 'wait')
      out.push({
        ...base,
        when: step.inMould ? 'cured' : 'poured over',
        atMin: both(clock[next < 0 ? last : next]!.startMin),
        pouredMin: new Map(pouredMin)
      })
    } else if (step.kind === 'coat') {
      const flooded = [...films.keys()].filter(face => step.face === 'both' || step.face === face)
      if (flooded.length === 0) return
      // Faces of one step join together: each is without stress as the piece lies then.
      for (const face of flooded)
        out.push({ ...base, when: 'joined', pour: FILM[face], held: false, atMin: both(atMin) })
      for (const face of flooded) pouredMin.set(FILM[face], atMin)
      out.push({ ...base, when: 'coated', held: false, atMin: both(atMin), pouredMin: new Map(pouredMin) })
    } else if (step.kind === 'demould')
      out.push({ ...base, when: 'demoulded', held: false, atMin: both(atMin) })
    else if (step.kind === 'flatten' && (step.face === 'front' || step.face === 'back'))
      out.push({ ...base, when: 'flattened', held: false, atMin: both(atMin) })
  })
  if (last < 0 || !(states[last]!.highZ > states[last]!.lowZ)) return []
  const inUse = {
    step: last,
    pour: null,
    held: false,
    events: states[last]!.events,
    atMin: both(Number.POSITIVE_INFINITY),
    pouredMin
  }
  out.push({ ...inUse, when: 'driest' }, { ...inUse, when: 'dampest' })
  return out
}

/** Numbers by which flood coats of the finish stand among the pours. */
export const FILM = { front: -1, back: -2 } as const

function both(min: number): readonly [number, number] {
  return [min, min]
}
