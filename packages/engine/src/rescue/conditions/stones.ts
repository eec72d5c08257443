import { formatMm } from '../../quantity/format.ts'
import type { Condition, Question, TroubleCase, WayDraft } from '../condition.ts'
import { flattenMore, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, levelIs, pourAfter, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, bonding, howMuch, inMould, pourSpot, TOP_UP_HAZARDS } from './spot.ts'

/** Resin that lies over a stone, mm: less than this and flattening meets it (practice). */
const OVER_MM = 1
/** A layer that a second set of stones lies in, mm (practice). */
const SECOND_MM = 6

const MATTER: Question = {
  key: 'cut',
  asks: 'Does a cutter or a planer go over them later?',
  options: [
    { word: 'yes', means: 'then they must lie under it, or come out' },
    { word: 'no', means: 'then they may stay as they lie' }
  ]
}

/** Stones that stand out of their layer. */
export const stonesProud: Condition = {
  kind: 'stones proud',
  about: 'stones stand out of their layer',
  found: () => [],
  questions: at => [...askBy(at, 'How far do the highest stand out, in mm?'), MATTER],
  refused: () => [],
  ways: at => {
    const spot = pourSpot(at)
    const { index, entry, next, covered } = spot
    const { built } = at
    const by = howMuch(at, 1)
    const level = built.stack.pours[index]!.level
    const id = freeName(built, `${entry.id} cover`)
    const cover = { ...sameMix(built, index), id, height: tenth(level + by + OVER_MM) } as PourDocument
    const nextLevel = next === null ? 0 : built.stack.pours[next.index]!.level
    const bury = next !== null && nextLevel - level >= by + OVER_MM
    const face = topFace(built)
    const cutLater = at.answers.get('cut')
    return [
      {
        id: 'next-covers',
        does:
          next === null
            ? 'Let the next layer cover them'
            : `Let ${next.id} cover them${bury ? '' : `, ${tenth(level + by + OVER_MM - nextLevel)} mm higher`}`,
        how: [
          'brush resin over what stands out first: bare stone keeps air',
          `pour ${next?.id ?? 'the next layer'} slowly, from one side`
        ],
        hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
        patch: next === null || bury ? [] : levelIs(built, next.index, level + by + OVER_MM),
        gives: bury ? [] : [`${formatMm(level + by + OVER_MM - nextLevel)} more resin`],
        handsMin: 10,
        waitDays: 0,
        chance: 'usually works',
        excluded: next === null ? 'no layer is left to pour' : null
      },
      {
        id: 'cover',
        does: `Pour ${tenth(by + OVER_MM)} mm over them`,
        how: [
          ...bonding(spot).how,
          'brush resin over what stands out first: bare stone keeps air',
          `pour ${id}`
        ],
        hazards: [...TOP_UP_HAZARDS],
        patch: [...levelIs(built, index, level), ...pourAfter(built, index, cover)],
        gives: next === null ? [`the piece is cast ${formatMm(by + OVER_MM)} higher`] : [],
        handsMin: 15,
        waitDays: 0,
        chance: 'usually works',
        excluded: covered
          ? 'another layer stands on it already'
          : !inMould(at)
            ? 'it is out of the mould: nothing holds the resin'
            : bury
              ? 'the next layer covers them anyway'
              : null
      },
      {
        id: 'grind',
        does: 'Grind them down level',
        how: [
          'a diamond pad, wet, by hand or with a grinder; no cutter of steel or carbide',
          'rinse, dry, look for stones that came loose'
        ],
        hazards: ['wet-sanding', 'sanding-cured-resin'],
        patch: [],
        gives: ['their tops: cut stone looks otherwise than whole stone'],
        handsMin: 60,
        waitDays: 0,
        chance: 'about even',
        favoured: cutLater === 'yes' ? 'a cutter goes over them' : null
      },
      {
        id: 'flatten-less',
        does: `Take ${tenth(by)} mm less off the ${face}`,
        how: ['stop the flattening above them, and level the rest with a flood'],
        hazards: ['machine-cutting', 'sanding-cured-resin', 'mixing-resin', 'pouring', 'leftover-in-cup'],
        patch: [
          ...flattenMore(built, face, -by),
          ...floodOver(built, face, by + OVER_MM, { ...sameMix(built, index), resin: 'thin' } as PourDocument)
        ],
        gives: [`resin lies over the timber of the ${face} too`],
        handsMin: 30,
        waitDays: 0,
        chance: 'about even',
        excluded:
          built.piece.flatten[face] < by
            ? `only ${formatMm(built.piece.flatten[face])} come off the ${face}`
            : cutLater === 'no'
              ? 'no cutter goes over them'
              : null
      }
    ] satisfies WayDraft[]
  }
}

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
  const { index, entry, next, covered } = spot
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
      patch: [...levelIs(built, index, level), ...pourAfter(built, index, layer)],
      gives: [`${formatMm(SECOND_MM)} of what was to be clear`],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded: covered
        ? 'another layer stands on it already'
        : !inMould(at)
          ? 'it is out of the mould'
          : stones.length === 0
            ? `${entry.id} has no stones`
            : null,
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
