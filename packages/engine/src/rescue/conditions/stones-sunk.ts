import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, layerOn, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, notOn, pourSpot, TOP_UP_HAZARDS } from './spot.ts'

/** A layer that a second set of stones lies in, mm (practice). */
const SECOND_MM = 6

/** Stones that sank deeper than they were to lie. */
export const stonesSunk: Condition = {
  kind: 'stones sunk',
  about: 'stones lie deeper than they were to',
  found: () => [],
  questions: at => [
    ...askBy(at, 'How much deeper do they lie, in mm?'),
    {
      key: 'seen',
      asks: 'Are they still to be seen from the front?',
      options: [
        { word: 'yes', means: 'then only the depth is lost' },
        { word: 'no', means: 'then it needs others above them' }
      ]
    }
  ],
  refused: () => [],
  ways: sunk
}

function sunk(at: TroubleCase): WayDraft[] {
  const spot = pourSpot(at)
  const { index, entry, next } = spot
  const { built } = at
  const level = built.stack.pours[index]!.level
  const id = freeName(built, `${entry.id} second stones`)
  const stones = (built.document.pours[index]!.stones ?? []).map(s => ({
    ...s,
    from: undefined,
    to: undefined,
    set: 'on the tacky layer'
  }))
  const layer = JSON.parse(
    JSON.stringify({ ...sameMix(built, index), id, height: tenth(level + SECOND_MM), stones })
  ) as PourDocument
  const seen = at.answers.get('seen')
  return [
    {
      id: 'leave',
      does: 'Leave them where they lie',
      how: [
        'go on as planned; take a photo of where they lie, and lay it on the plan before anything is cut'
      ],
      hazards: [],
      patch: [],
      gives: [
        'the depth they were to have',
        'keep-clear places as they were drawn: cuts from behind may now meet them'
      ],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded: seen === 'no' ? 'they are not to be seen' : null,
      favoured: seen === 'yes' ? 'they are still to be seen' : null
    },
    {
      id: 'second-set',
      does: `Set a second lot on the tacky layer and pour ${SECOND_MM} mm over it`,
      how: [
        'wait until the layer is tacky; set stones on it, dry and sealed',
        `pour ${id} slowly from one side`
      ],
      hazards: [...TOP_UP_HAZARDS],
      patch: layerOn(built, index, level, layer),
      gives: [`${formatMm(SECOND_MM)} of what was to be clear`],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded: notOn(at, spot) ?? (stones.length === 0 ? `${entry.id} has no stones` : null),
      favoured: seen === 'no' ? 'the first lot is not to be seen' : null
    },
    {
      id: 'next-clear',
      does:
        next === null ? 'Pour the next layer clear' : `Pour ${next.id} clear, so that they show from above`,
      how: ['leave the tint out of what comes over them'],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch:
        next === null || built.document.pours[next.index]!.tint === undefined
          ? []
          : [{ op: 'remove', path: `/pours/${next.index}/tint` }],
      gives: ['the tint of what lies over them'],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        next === null
          ? 'no layer is left to pour'
          : built.piece.pours[next.index]!.tint.length === 0
            ? `${next.id} is clear already`
            : null
    }
  ]
}
