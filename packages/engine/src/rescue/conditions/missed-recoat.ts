import type { Operation } from '../../piece/patch.ts'
import { formatMinutes } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import { flattenMore, topFace } from '../patch/cut-patch.ts'
import { beginsAfter } from '../patch/pour-patch.ts'
import type { PourSpot } from './spot.ts'
import { inMould, isPoured, spotOf, TOP_UP_HAZARDS } from './spot.ts'

/** Washing, drying and sanding a layer before the next one, min (practice). */
const PREPARE_MIN = 45
const HOUR = 60
const DAY = 24 * HOUR

/** The next layer was not poured while the one below could still bond. */
export const missedRecoat: Condition = {
  kind: 'missed recoat',
  about: 'the time went by in which the next layer bonds by itself',
  found,
  questions: () => [
    {
      key: 'blush',
      asks: 'Does the face feel greasy or waxy, or was the night damp?',
      options: [
        { word: 'yes', means: 'wash it with water before it is sanded: sanding alone smears it in' },
        { word: 'no', means: 'sanding is enough, washing does no harm' }
      ]
    },
    {
      key: 'sands',
      asks: 'Does paper make dust on it, or does it clog?',
      options: [
        { word: 'dust', means: 'it can be sanded now' },
        { word: 'clogs', means: 'it is not hard yet: wait' }
      ]
    }
  ],
  refused: () => [],
  ways
}

// Past the late end of the recoat window, by the pour's own cast, with a layer left to pour.
function found(at: RescueCase): Trouble[] {
  return at.built.entries.pours.flatMap((entry): Trouble[] => {
    if (entry.value.kind !== 'cast' || !isPoured(at, entry.index)) return []
    const { next, cast, ageMin } = spotOf(at, entry)
    const close = cast?.windows.recoat.closeBand[1] ?? null
    if (next === null || close === null || ageMin === null || ageMin <= close || !inMould(at)) return []
    return [
      {
        kind: 'missed recoat',
        of: entry.id,
        byMm: null,
        says: `${entry.id} was begun ${formatMinutes(ageMin)} ago; the next layer bonds by itself until ${formatMinutes(close)} at the latest`,
        readings: at.built.readings.filter(r => 'pour' in r && r.pour === entry.id).map(r => r.id)
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const spot = belowSpot(at)
  const { next, ageMin, cast, entry } = spot
  if (next === null)
    return [
      {
        id: 'nothing-left',
        does: 'Go on',
        how: [],
        hazards: [],
        patch: [],
        gives: [],
        handsMin: 0,
        waitDays: 0,
        chance: 'usually works',
        excluded: `no layer is left to pour on ${entry.id}: nothing has to bond to it`
      }
    ]
  const now = ageMin ?? cast?.windows.recoat.close ?? DAY
  const hard = Math.max(now + PREPARE_MIN, cast?.windows.sand.open ?? 2 * DAY, 2 * DAY)
  const wash =
    at.answers.get('blush') === 'no'
      ? 'sand it matt with 120 to 150'
      : 'wash it with warm water and a pad, dry it, sand it matt with 120 to 150'
  const clean = `${wash}, vacuum, wipe with a clean cloth`
  const clogs = at.answers.get('sands') === 'clogs'
  const face = topFace(built)
  return [
    {
      id: 'sand-now',
      does: `Wash, sand and pour ${next.id} now`,
      how: [clean, `pour ${next.id}`],
      hazards: [...TOP_UP_HAZARDS, 'sanding-cured-resin'],
      patch: beginsAfter(built, next.index, now + PREPARE_MIN),
      gives: [
        'a seam between the two layers may show from the edge',
        'the bond is that of a keyed face, not of one casting'
      ],
      handsMin: PREPARE_MIN,
      waitDays: 0,
      chance: 'usually works',
      excluded: clogs ? 'paper clogs on it: it is not hard enough to be sanded' : null,
      favoured: at.answers.get('sands') === 'dust' ? 'paper makes dust on it' : null
    },
    {
      id: 'let-harden',
      does: `Let ${entry.id} harden, then sand and pour ${next.id}`,
      how: [
        `leave it until it sands to dust: about ${formatMinutes(hard)} after it was poured`,
        clean,
        `pour ${next.id}`
      ],
      hazards: [...TOP_UP_HAZARDS, 'sanding-cured-resin'],
      patch: beginsAfter(built, next.index, hard),
      gives: ['a seam between the two layers may show from the edge'],
      handsMin: PREPARE_MIN,
      waitDays: 0,
      chance: 'usually works',
      favoured: clogs ? 'it cannot be sanded yet' : null
    },
    {
      id: 'without',
      does: `Leave ${next.id} out`,
      how: [`go on with ${entry.id} as the last layer; flatten the ${face} down to it`],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
      patch: without(at, spot),
      gives: [
        `${next.id}, and its ${Math.round(built.stack.pours[next.index]!.depth * 10) / 10} mm of thickness`
      ],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        usedBy(at, next.id) ??
        (built.entries.pours.some(p => p.index > next.index && p.value.kind === 'cast')
          ? 'other layers come on it'
          : null)
    }
  ]
}

// The layer named, or the one under the layer that waits.
function belowSpot(at: TroubleCase): PourSpot {
  const { entries } = at.built
  const poured = entries.pours.filter(p => p.value.kind === 'cast' && isPoured(at, p.index))
  const named = entries.pours.find(p => p.id === at.trouble.of)
  return spotOf(at, named ?? poured.at(-1) ?? entries.pours[0]!)
}

function usedBy(at: TroubleCase, pour: string): string | null {
  const part = at.built.entries.hardware.find(h => h.value.castIn === pour)
  return part === undefined ? null : `${part.id} is cast into it`
}

function without(at: TroubleCase, { next, index }: PourSpot): Operation[] {
  const { built } = at
  const i = next!.index
  const lower = built.stack.castHeight - built.stack.pours[index]!.level
  const names = built.document.pours.flatMap((p, k): Operation[] =>
    k > i && p.id === undefined ? [{ op: 'add', path: `/pours/${k}/id`, value: `pour ${k + 1}` }] : []
  )
  const steps = (built.document.steps ?? [])
    .flatMap((s, k) => ('what' in s && s.what === next!.id ? [k] : []))
    .reverse()
    .map((k): Operation => ({ op: 'remove', path: `/steps/${k}` }))
  return [
    ...names,
    ...steps,
    { op: 'remove', path: `/pours/${i}` },
    ...flattenMore(built, topFace(built), lower)
  ]
}
