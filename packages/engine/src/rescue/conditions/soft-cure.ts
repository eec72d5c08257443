import { formatMinutes, formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import { FLOOD_MM, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { beginsAfter, freeName, layerOn, mixedMore, sameMix, tenth } from '../patch/pour-patch.ts'
import {
  curedAnewDays,
  howMuch,
  isPoured,
  mouldAnewDays,
  notOn,
  pourSpot,
  spotOf,
  TOP_UP_HAZARDS
} from './spot.ts'

const DAY = 24 * 60
/** Warmth that brings on a slow cure, °C, and for how many days (practice; the resin's own sheet comes first). */
const WARM_C = '25 to 30 °C'
const WARM_DAYS = 4
/** Colder than this many resins stop short, °C (practice: sheets ask for 18 to 25 °C). */
const COLD_C = 18
/** Left of a layer at the least when its face is scraped off, mm: less comes out as a whole (practice). */
const LEFT_MM = 0.5

/** A layer that stays soft or sticky. */
export const softCure: Condition = {
  kind: 'soft cure',
  about: 'a layer stays soft or sticky',
  found,
  questions: () => [
    {
      key: 'where',
      asks: 'Is it soft all over, only on the face, or in patches?',
      options: [
        { word: 'all', means: 'the ratio, or the cold' },
        { word: 'face', means: 'only a skin: damp, or air' },
        { word: 'patches', means: 'what was not stirred in: sides and bottom of the cup' }
      ]
    },
    {
      key: 'ratio',
      asks: 'Are you sure of the ratio: weighed, and by the label of this very resin?',
      options: [
        { word: 'sure', means: 'then warmth and time may do it' },
        { word: 'unsure', means: 'then wait, and see whether warmth changes anything within two days' },
        { word: 'off', means: 'then it never hardens: it comes out' }
      ]
    },
    {
      key: 'cold',
      asks: `Was the room under ${COLD_C} °C at night?`,
      options: [
        { word: 'yes', means: 'warm it: it goes on where it stopped' },
        { word: 'no', means: 'warmth helps less' }
      ]
    },
    { key: 'by', asks: 'How deep is it soft, in mm?', options: [], free: 'mm' }
  ],
  refused: () => [],
  ways
}

// Read as tacky or stringing after the late end of the span in which it is hard enough to sand.
function found(at: RescueCase): Trouble[] {
  return at.built.entries.pours.flatMap((entry): Trouble[] => {
    if (!isPoured(at, entry.index)) return []
    const { cast } = spotOf(at, entry)
    const begun = entry.value.start
    // The resin is judged as it was labelled: what its slowness taught must not excuse it.
    const sand = at.plan.casts[entry.index]?.windows.sand
    const late = sand?.openBand[1] ?? sand?.open ?? null
    if (cast === null || begun === undefined || late === null) return []
    const soft = at.built.readings.filter(
      r =>
        r.kind === 'stage' &&
        r.pour === entry.id &&
        (r.stage === 'strings' || r.stage === 'tacky') &&
        (Date.parse(r.at) - Date.parse(begun)) / 60_000 > late
    )
    const harder = at.built.readings.some(
      r => r.kind === 'stage' && r.pour === entry.id && r.stage === 'hard'
    )
    if (soft.length === 0 || harder) return []
    return [
      {
        kind: 'soft cure',
        of: entry.id,
        byMm: null,
        says: `${entry.id} was still tacky ${formatMinutes((Date.parse(soft.at(-1)!.at) - Date.parse(begun)) / 60_000)} after it was begun; it should be hard enough to sand after ${formatMinutes(late)} at the latest`,
        readings: soft.map(r => r.id)
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const spot = pourSpot(at)
  const { index, entry, next, covered, last } = spot
  const { where, ratio, cold } = Object.fromEntries(at.answers) as Record<string, string | undefined>
  const deep = Math.min(howMuch(at, 1), built.stack.pours[index]!.depth - LEFT_MM)
  const level = built.stack.pours[index]!.level
  const off = ratio === 'off'
  const warmed =
    next === null
      ? []
      : beginsAfter(built, next.index, (spotOf(at, entry).ageMin ?? 2 * DAY) + WARM_DAYS * DAY)
  const id = freeName(built, `${entry.id} anew`)
  const layer = { ...sameMix(built, index), id, height: tenth(level) } as PourDocument
  return [
    {
      id: 'warm',
      does: `Keep it at ${WARM_C} for ${WARM_DAYS} days`,
      how: [
        `warm the room or a tent over it to ${WARM_C}, not one spot of it`,
        'press a nail into it each day, and log what it does'
      ],
      hazards: ['hot-piece'],
      patch: warmed,
      gives: [],
      handsMin: 20,
      waitDays: next === null ? WARM_DAYS : 0,
      chance: cold === 'yes' ? 'usually works' : 'about even',
      excluded: off
        ? 'the ratio is off: warmth does not mend that'
        : where === 'patches'
          ? 'what was never stirred in does not harden'
          : null,
      favoured: cold === 'yes' ? 'it was cold' : null
    },
    {
      id: 'scrape',
      does: `Take off what is soft, ${tenth(deep)} mm, and pour it anew`,
      how: [
        'scrape off what is soft, wipe the rest with alcohol and paper, gloves on',
        'when what is left is hard, sand it matt, wipe it',
        `pour ${id} to ${formatMm(level)} as cast`
      ],
      hazards: [...TOP_UP_HAZARDS, 'sanding-cured-resin'],
      patch: layerOn(built, index, level - deep, layer),
      gives: ['a seam may show from the edge'],
      handsMin: 90,
      waitDays: 1,
      chance: 'usually works',
      excluded:
        notOn(at, spot) ??
        (where === 'all' && off ? 'it is soft all through: nothing under it is hard' : null),
      favoured: where === 'face' || where === 'patches' ? 'under it, it is hard' : null
    },
    {
      id: 'seal-over',
      does: `Close it under a flood of ${FLOOD_MM} mm on the ${topFace(built)}`,
      how: [
        'wipe the tack off with alcohol, let it rest a day',
        'sand it as far as it sands, then flood it with a fresh, well stirred mix'
      ],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup', 'sanding-cured-resin'],
      patch: floodOver(built, topFace(built), FLOOD_MM, { ...sameMix(built, index), resin: 'thin' }),
      gives: ['what lies under it stays softer'],
      handsMin: 45,
      waitDays: 1,
      chance: 'about even',
      excluded: !last
        ? 'layers come on it anyway'
        : off || where === 'all'
          ? 'what is soft all through stays soft under it'
          : null
    },
    {
      id: 'take-out',
      does: `Take all of ${entry.id} out and pour it anew`,
      how: [
        'chisel and scrape it out; warmed to 50 to 60 °C it comes off more easily',
        'wash timber and mould with alcohol, line and seal the mould anew',
        `weigh and mix ${entry.id} by the label, in two cups`,
        'let it cure as long as the first pour would have'
      ],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup', 'hot-piece'],
      patch: mixedMore(built, index, built.stack.pours[index]!.massG),
      gives: ['all resin of the pour', 'stones and colour in it'],
      handsMin: 240,
      waitDays: mouldAnewDays(at) + curedAnewDays(spot),
      chance: 'about even',
      excluded: covered
        ? 'another layer stands on it'
        : ratio === 'sure' && where === 'face'
          ? 'under the face it is hard'
          : null,
      favoured: off ? 'the ratio was off' : null
    }
  ]
}
