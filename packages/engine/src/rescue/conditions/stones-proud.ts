import { formatMm } from '../../quantity/format.ts'
import type { Condition, Question, WayDraft } from '../condition.ts'
import { flattenMore, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, layerOn, levelIs, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, bonding, howMuch, notOn, pourSpot, TOP_UP_HAZARDS } from './spot.ts'

/** Resin that lies over a stone, mm: less than this and flattening meets it (practice). */
const OVER_MM = 1
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
    const { index, entry, next } = spot
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
        patch: layerOn(built, index, level, cover),
        gives: next === null ? [`the piece is cast ${formatMm(by + OVER_MM)} higher`] : [],
        handsMin: 15,
        waitDays: 0,
        chance: 'usually works',
        excluded: notOn(at, spot) ?? (bury ? 'the next layer covers them anyway' : null)
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
