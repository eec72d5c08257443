import type { Operation } from '../../piece/patch.ts'
import { formatMinutes, formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, layerOn, levelIs, sameMix } from '../patch/pour-patch.ts'
import { bonding, isPoured, notOn, pourSpot, spotOf, TOP_UP_HAZARDS } from './spot.ts'

/** Depth of a marbled layer laid on top, mm (practice: enough to draw in, little enough to stay cool). */
const LAYER_MM = 4

/** The minutes in which colours can be drawn into each other went by. */
export const missedMarbling: Condition = {
  kind: 'missed marbling',
  about: 'the minutes in which colours are drawn into each other went by',
  found,
  questions: () => [
    {
      key: 'now',
      asks: 'How does a stick move in it now?',
      options: [
        { word: 'honey', means: 'a trail still closes slowly: coarse strokes may hold' },
        { word: 'gelled', means: 'a trail stays open or tears: leave it alone' },
        { word: 'hard', means: 'it is a layer to build on' }
      ]
    },
    {
      key: 'drawn',
      asks: 'Are the colours in it already?',
      options: [
        { word: 'yes', means: 'then they lie as they were poured' },
        { word: 'no', means: 'then the other colours can go into a layer of their own' }
      ]
    }
  ],
  refused: () => [],
  ways
}

// Past the late end of the marbling window, by the pour's own cast, and nobody has logged the marbling as done.
function found(at: RescueCase): Trouble[] {
  return at.built.entries.pours.flatMap((entry): Trouble[] => {
    if (entry.value.marbling === undefined || !isPoured(at, entry.index)) return []
    const { cast, ageMin, covered } = spotOf(at, entry)
    const close = cast?.windows.marbling?.closeBand?.[1] ?? cast?.windows.marbling?.close ?? null
    const k = at.built.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === entry.index)
    const done = at.built.readings.some(r => r.kind === 'done' && r.step === at.state.steps[k]?.key)
    if (covered || done || close === null || ageMin === null || ageMin <= close) return []
    return [
      {
        kind: 'missed marbling',
        of: entry.id,
        byMm: null,
        says: `${entry.id} was begun ${formatMinutes(ageMin)} ago; it can be marbled until ${formatMinutes(close)} at the latest, and nothing says that it was`,
        readings: []
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const spot = pourSpot(at)
  const { index, entry, next } = spot
  const { built } = at
  const { marbling } = built.document.pours[index]!
  const now = at.answers.get('now')
  const main = [...(marbling ?? [])].sort((a, b) => Number(b.share) - Number(a.share))[0]
  const plain: Operation[] =
    marbling === undefined
      ? []
      : [
          { op: 'remove', path: `/pours/${index}/marbling` },
          {
            op: built.document.pours[index]!.tint === undefined ? 'add' : 'replace',
            path: `/pours/${index}/tint`,
            value: main?.tint ?? []
          }
        ]
  const id = freeName(built, `${entry.id} marbled`)
  const level = built.stack.pours[index]!.level
  const layer = {
    ...sameMix(built, index),
    id,
    height: Math.round((level + LAYER_MM) * 10) / 10,
    ...(marbling === undefined ? {} : { marbling })
  } as PourDocument
  const nextLevel = next === null ? 0 : built.stack.pours[next.index]!.level
  const gone = spot.covered ? 'another layer stands on it already' : null
  return [
    {
      id: 'coarse',
      does: 'Draw a few coarse strokes now',
      how: [
        'a broad spatula, five to eight slow strokes, no more: each one tears',
        'then a pass of the heat gun held high'
      ],
      hazards: ['mixing-resin'],
      patch: [],
      gives: ['fine veins: what is drawn now is coarse'],
      handsMin: 10,
      waitDays: 0,
      chance: 'seldom works',
      excluded:
        now === undefined
          ? 'only while a trail still closes: answer now'
          : now === 'honey'
            ? gone
            : 'it no longer flows',
      favoured: now === 'honey' ? 'it still flows' : null
    },
    {
      id: 'marbled-layer',
      does: `Marble a layer of ${LAYER_MM} mm on top of it`,
      how: [...bonding(spot).how, `pour ${id} and draw it in its own minutes: put the alarm on before`],
      hazards: [...TOP_UP_HAZARDS],
      patch: [
        ...plain,
        ...layerOn(built, index, level, layer),
        ...(next === null || nextLevel - level < LAYER_MM + 3
          ? []
          : shifted(levelIs(built, next.index, nextLevel), next.index))
      ],
      gives: [`the pattern lies in ${formatMm(LAYER_MM)}, not through the whole depth`],
      handsMin: 20,
      waitDays: 0,
      chance: 'usually works',
      excluded: notOn(at, spot),
      favoured: at.answers.get('drawn') === 'no' ? 'the other colours are still to go in' : null
    },
    {
      id: 'plain',
      does: `Leave ${entry.id} as it is`,
      how: ['let it cure untouched, and go on'],
      hazards: [],
      patch: plain,
      gives: ['the marbling'],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      favoured:
        at.answers.get('drawn') === 'yes' && now !== 'honey'
          ? 'the colours are in it: it has a pattern of its own'
          : null
    }
  ]
}

/** A patch of a pour that has moved by one in the list. */
function shifted(patch: readonly Operation[], index: number): Operation[] {
  return patch.map(op => ({ ...op, path: op.path.replace(`/pours/${index}/`, `/pours/${index + 1}/`) }))
}
