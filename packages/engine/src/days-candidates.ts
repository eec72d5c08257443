import type { ClashMember } from './calendar/solve/problem.ts'
import type { Gap } from './calendar/task.ts'
import type { Days, WayOut } from './days-answer.ts'
import type { Changed } from './days-changed.ts'
import type { Operation } from './piece/patch.ts'
import type { Shop } from './piece/shop-schema.ts'
import type { PlanInput } from './work.ts'

/** A way out that is to be tried: what it says, and what it changes. */
export type Candidate = Pick<WayOut, 'id' | 'says' | 'risk' | 'on' | 'patch'> & {
  readonly change: Partial<Changed>
}

/** Ids that are told apart: coming back at a moment, and letting a window pass. */
export const COME_BACK = 'come back'
export const LET_PASS = 'let it pass'
/** How much sooner, later and warmer is tried (practice). */
const EARLIER_MIN = 120
const LATER_MIN = 180
const WARMER_K = 4
const DAYS_OF_WEEK = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const
const NAMES = {
  mon: 'Monday',
  tue: 'Tuesday',
  wed: 'Wednesday',
  thu: 'Thursday',
  fri: 'Friday',
  sat: 'Saturday',
  sun: 'Sunday'
} as const
/** Hours where the shop gives none. */
const USUAL = ['07:00-22:00']

/** What may mend a clash, each to be planned anew: hours, windows, resins, room, help. */
export function candidates(
  inputs: readonly PlanInput[],
  days: Days,
  members: readonly ClashMember[]
): Candidate[] {
  const { shop } = inputs[0]!
  const out: Candidate[] = []
  const hours = (id: string, says: string, risk: string, next: NonNullable<Shop['hours']>) =>
    out.push({
      id,
      says,
      risk,
      on: 'shop',
      patch: [{ op: 'add', path: '/hours', value: next } as Operation],
      change: { inputs: inputs.map(i => ({ ...i, shop: { ...i.shop, hours: next } })) }
    })
  for (const gap of softOf(days, members))
    out.push({
      id: LET_PASS,
      says: `Let it pass, and then: ${gap.late ?? 'take it as it is'}.`,
      risk: 'a bond made by sanding instead of by itself',
      on: 'plan',
      patch: null,
      change: { givenUp: [gap.says] }
    })
  out.push(...letGo(inputs, days, members))
  if (shop.hours !== undefined) {
    hours(
      'earlier',
      'An earlier alarm: open the bench two hours sooner.',
      'none for the piece',
      moved(shop.hours, EARLIER_MIN, 0)
    )
    hours(
      'later',
      'Stay three hours longer in the evening.',
      'none for the piece',
      moved(shop.hours, 0, LATER_MIN)
    )
    if (shop.hours.sat.length === 0)
      hours('saturday', 'Work on Saturday as well.', 'none for the piece', {
        ...shop.hours,
        sat: shop.hours.fri.length > 0 ? shop.hours.fri : USUAL
      })
    else {
      const next = dayMore(shop.hours)
      if (next !== null)
        hours('day more', `Work on ${NAMES[next.day]} as well.`, 'none for the piece', {
          ...shop.hours,
          [next.day]: next.hours
        })
    }
  }
  const cast = inputs.some(i => i.piece.value.pours.length > 0)
  if (cast) {
    const climate = {
      ...shop.climate,
      night: shop.climate.night + WARMER_K,
      day: shop.climate.day + WARMER_K
    }
    out.push({
      id: 'warmer',
      says: `Warm the room to ${climate.night} to ${climate.day} °C.`,
      risk: 'pours get hotter and windows shorter: check the piece again',
      on: 'shop',
      patch: [{ op: 'add', path: '/climate', value: climate } as Operation],
      change: { inputs: inputs.map(i => ({ ...i, shop: { ...i.shop, climate } })) }
    })
    if (inputs.length === 1) out.push(...otherResins(inputs[0]!))
  }
  const peaks = days.problem.tasks.filter(t => t.id.endsWith(': peak') && t.fixed === null)
  if (peaks.length > 0)
    out.push({
      id: COME_BACK,
      says: 'Come back for an hour outside your hours, when the pour is hottest.',
      risk: 'nobody sees it overheat when you are held up',
      on: 'plan',
      patch: null,
      change: { givenUp: peaks.map(t => t.says) }
    })
  out.push({
    id: 'help',
    says: 'Have somebody help: two pairs of hands, and somebody by the pour outside your hours.',
    risk: 'none for the piece',
    on: 'plan',
    patch: null,
    change: { hands: 2 }
  })
  return out
}

// A task that was put by hand may go where it fits.
function letGo(inputs: readonly PlanInput[], days: Days, members: readonly ClashMember[]): Candidate[] {
  const [input] = inputs
  if (input === undefined || inputs.length > 1) return []
  const { value, document } = input.piece
  return members.flatMap((m): Candidate[] => {
    if (m.kind !== 'fixed' || !value.placed.some(p => p.task === m.id)) return []
    const placed = value.placed.filter(p => p.task !== m.id)
    const says = days.problem.tasks.find(t => t.id === m.id)?.says ?? m.id
    return [
      {
        id: `let go ${m.id}`,
        says: `Let “${says}” go where it fits.`,
        risk: 'none for the piece',
        on: 'piece',
        patch: [{ op: 'replace', path: '/placed', value: placed } as Operation],
        change: {
          inputs: [{ ...input, piece: { document: { ...document, placed }, value: { ...value, placed } } }]
        }
      }
    ]
  })
}

function otherResins(input: PlanInput): Candidate[] {
  const { value } = input.piece
  return value.pours.flatMap((pour, i): Candidate[] =>
    ['medium', 'deep', ...input.shop.resins.map(r => r.id)]
      .filter(resin => pour.kind === 'cast' && resin !== pour.resin)
      .map(resin => ({
        id: `resin ${resin}`,
        says: `Pour ${pour.id ?? `pour ${i + 1}`} with the resin ${resin}.`,
        risk: 'another depth, heat and window: check the piece again',
        on: 'piece',
        patch: [{ op: 'replace', path: `/pours/${i}/resin`, value: resin } as Operation],
        change: {
          inputs: [
            {
              ...input,
              piece: {
                ...input.piece,
                value: { ...value, pours: value.pours.map((p, k) => (k === i ? { ...p, resin } : p)) }
              }
            }
          ]
        }
      }))
  )
}

/** The windows of a clash that can be let pass. */
export function softOf(days: Days, members: readonly ClashMember[]): Gap[] {
  const found = members.flatMap(m =>
    m.kind === 'gap' && m.side === 'most' && days.problem.gaps[m.gap]!.soft ? [days.problem.gaps[m.gap]!] : []
  )
  return found.filter((g, i) => found.findIndex(h => h.says === g.says) === i)
}

function moved(hours: NonNullable<Shop['hours']>, sooner: number, later: number): NonNullable<Shop['hours']> {
  const out = { ...hours }
  for (const day of DAYS_OF_WEEK) {
    const list = hours[day]
    out[day] = list.map((span, i) => {
      const [a, b] = span.split('-').map(minutes) as [number, number]
      const from = i === 0 ? Math.max(0, a - sooner) : a
      const to = i === list.length - 1 ? Math.min(1440, b + later) : b
      return `${clock(from)}-${clock(to)}`
    })
  }
  return out
}

function minutes(text: string): number {
  const [h, m] = text.split(':').map(Number)
  return h! * 60 + m!
}

// The closed day after one that is open, with the hours of that.
function dayMore(hours: NonNullable<Shop['hours']>) {
  for (const [k, day] of DAYS_OF_WEEK.entries()) {
    const next = DAYS_OF_WEEK[(k + 1) % DAYS_OF_WEEK.length]!
    if (hours[day].length > 0 && hours[next].length === 0) return { day: next, hours: hours[day] }
  }
  return null
}

const two = (x: number) => String(x).padStart(2, '0')

/** A minute of the day as 07:30. */
export function clock(min: number): string {
  return `${two(Math.floor(min / 60))}:${two(min % 60)}`
}
