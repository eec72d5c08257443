import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import { flattenMore, topFace } from '../patch/cut-patch.ts'
import { levelIs, tenth } from '../patch/pour-patch.ts'
import { heightTroubles } from './heights.ts'
import { askBy, howMuch, pourSpot } from './spot.ts'

/** A layer under this shows every speck and hides little, mm (practice). */
const LEAST_LAYER_MM = 3

/** A pour that stands higher than it was planned. */
export const heightOver: Condition = {
  kind: 'height over',
  about: 'a pour stands higher than planned',
  found: at => heightTroubles(at, 'over'),
  questions: at => [
    ...askBy(at, 'How much higher than planned does it stand, in mm?'),
    {
      key: 'liquid',
      asks: 'Is it still liquid?',
      options: [
        { word: 'yes', means: 'then some of it can be taken out' },
        { word: 'no', means: 'then it stands as it is' }
      ]
    },
    {
      key: 'thickness',
      asks: 'May the piece be thicker than it was drawn?',
      options: [
        { word: 'yes', means: 'then nothing has to come off' },
        { word: 'no', means: 'then it is flattened or the next layer is thinner' }
      ]
    }
  ],
  refused: () => [],
  ways
}

function ways(at: TroubleCase): WayDraft[] {
  const { index, entry, next, last } = pourSpot(at)
  const { built, plan } = at
  const by = howMuch(at, 1)
  const stands = plan.stack.pours[index]!.level + by
  const face = topFace(built)
  const nextLevel = next === null ? 0 : plan.stack.pours[next.index]!.level
  const fits = nextLevel - stands >= LEAST_LAYER_MM
  const thicker = at.answers.get('thickness')
  return [
    {
      id: 'take-out',
      does: 'Take the resin that is too much out again',
      how: [
        'draw it off with a syringe or a ladle while it flows, into a metal tray, outdoors',
        'read the height again, and log it'
      ],
      hazards: ['mixing-resin', 'leftover-in-cup'],
      patch: levelIs(built, index, plan.stack.pours[index]!.level),
      gives: ['bubbles and streaks where it was drawn'],
      handsMin: 20,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        at.answers.get('liquid') === 'yes'
          ? null
          : at.answers.get('liquid') === 'no'
            ? 'it has set'
            : 'only while it is liquid: answer liquid',
      favoured: at.answers.get('liquid') === 'yes' ? 'it is liquid' : null
    },
    {
      id: 'next-thinner',
      does: next === null ? 'Pour the next layer thinner' : `Pour ${next.id} ${tenth(by)} mm thinner`,
      how: [`pour ${next?.id ?? 'the next layer'} to the height it was to have`],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch:
        next === null ? [] : [...levelIs(built, index, stands), ...levelIs(built, next.index, nextLevel)],
      gives: [`${formatMm(by)} of ${next?.id ?? 'the next layer'}`],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        next === null
          ? 'no layer is left to pour on it'
          : fits
            ? null
            : `${next.id} would be thinner than ${LEAST_LAYER_MM} mm`
    },
    {
      id: 'flatten',
      does: `Flatten ${tenth(by)} mm more off the ${face}`,
      how: [`flatten the ${face} in several passes; let the cutter and the resin cool between them`],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
      patch: [...levelIs(built, index, stands), ...flattenMore(built, face, by)],
      gives: [last ? 'resin that is poured only to be cut off' : `${formatMm(by)} off what lies on it`],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      excluded: thicker === 'yes' ? 'the piece may be thicker' : null,
      favoured: thicker === 'no' ? 'the piece is to be as thick as drawn' : null
    },
    {
      id: 'thicker-piece',
      does:
        next === null
          ? `Let the piece be ${tenth(by)} mm thicker`
          : `Let what follows stand ${tenth(by)} mm higher`,
      how: [last ? 'take off no more than was planned' : `pour what follows ${formatMm(by)} higher`],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: [
        ...levelIs(built, index, stands),
        ...(next === null ? [] : levelIs(built, next.index, nextLevel + by))
      ],
      gives: [
        last ? `the resin of ${entry.id} runs over the timber on the ${face}` : `${formatMm(by)} more resin`
      ],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works',
      excluded: thicker === 'no' ? 'the piece is to be as thick as drawn' : null,
      favoured: thicker === 'yes' ? 'the piece may be thicker' : null
    }
  ]
}
