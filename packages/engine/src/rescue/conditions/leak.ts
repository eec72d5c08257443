import { pouredG } from '../../piece/standing-readings.ts'
import { formatMass, formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, layerOn, mixedMore, sameMix, tenth } from '../patch/pour-patch.ts'
import {
  askBy,
  bonding,
  curedAnewDays,
  howMuch,
  mouldAnewDays,
  notOn,
  pourSpot,
  TOP_UP_HAZARDS
} from './spot.ts'

/** More gone in than fits by this share is asked about (the finding of the running total cautions at it too: practice). */
const EXCESS = 0.1

/** A mould that leaks. */
export const leak: Condition = {
  kind: 'leak',
  about: 'resin runs out of the mould, or more goes in than fits',
  found,
  questions: at => [
    ...askBy(at, 'By how much has the level fallen, in mm?'),
    {
      key: 'runs',
      asks: 'Does it still run?',
      options: [
        { word: 'yes', means: 'stop it first: nothing else is of use' },
        { word: 'no', means: 'it has stopped, or gelled in the gap' }
      ]
    },
    {
      key: 'where',
      asks: 'Where does it come out?',
      options: [
        { word: 'corner', means: 'stopped from outside' },
        { word: 'under', means: 'between wall and base: stopped from outside, all along' },
        { word: 'timber', means: 'through a crack of the timber: it draws resin for hours' },
        { word: 'unseen', means: 'look under the base, and into hollow timber' }
      ]
    },
    {
      key: 'stage',
      asks: 'How does what is left in the mould behave?',
      options: [
        { word: 'liquid', means: 'more can be poured into it at once' },
        { word: 'gelled', means: 'more is a layer of its own' }
      ]
    }
  ],
  refused: () => [],
  ways
}

// More has left the vessels than the mould should hold.
function found({ plan, built }: RescueCase): Trouble[] {
  return built.entries.pours.flatMap(({ id, index }): Trouble[] => {
    const read = built.readings.flatMap(r => (r.kind === 'poured' && r.pour === id ? [r] : []))
    const sum = pouredG(read, id)
    const need = plan.stack.pours[index]!.massG * plan.quantity.blanks
    if (need <= 0 || sum <= need * (1 + EXCESS)) return []
    return [
      {
        kind: 'leak',
        of: id,
        byMm: null,
        says: `${formatMass(sum)} have gone into ${id}, and ${formatMass(need)} fill it: it may run out somewhere, or into a hollow`,
        readings: read.map(r => r.id)
      }
    ]
  })
}

function ways(at: TroubleCase): WayDraft[] {
  const { built, plan } = at
  const spot = pourSpot(at)
  const { index, entry } = spot
  const by = howMuch(at, 2)
  const wanted = plan.stack.pours[index]!.level
  const lostG =
    (plan.stack.pours[index]!.surfaceMm2 * by * plan.stack.pours[index]!.massG) /
    Math.max(1, plan.stack.pours[index]!.liquidMl) /
    1000
  const id = freeName(built, `${entry.id} rest`)
  const stage = at.answers.get('stage')
  const where = at.answers.get('where')
  const stop = [
    'a tray under it, nothing that can burn near, gloves on',
    where === 'timber'
      ? 'press clay or wax into the crack from below and from the end grain'
      : 'press clay, wax or hot glue on it from outside; a clamp across the corner'
  ]
  const gone = notOn(at, spot)
  return [
    {
      id: 'stop-and-fill',
      does: `Stop it and pour ${formatMass(lostG)} after it at once`,
      how: [
        ...stop,
        'watch it for ten minutes: does the level stand?',
        `mix ${formatMass(lostG)} more and pour it in`
      ],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: mixedMore(built, index, lostG),
      gives: [`${formatMass(lostG)} of resin`],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        gone ?? (stage === 'gelled' ? 'what is in the mould has gelled: more is a layer of its own' : null),
      favoured: stage === 'liquid' ? 'what is in the mould is still liquid' : null
    },
    {
      id: 'layer-later',
      does: `Let it gel, then pour the missing ${tenth(by)} mm as a layer`,
      how: [
        ...stop,
        'let what is in gel: it closes the gap by itself',
        'pour a spoonful along the gap and wait: does it stand?',
        ...bonding(spot).how,
        `pour ${id}`
      ],
      hazards: [...TOP_UP_HAZARDS],
      patch: layerOn(built, index, wanted - by, {
        ...sameMix(built, index),
        id,
        height: tenth(wanted)
      } as PourDocument),
      gives: [
        `${formatMass(lostG)} of resin`,
        ...(built.piece.pours[index]!.marbling === undefined
          ? []
          : [`its marbled face lies ${formatMm(by)} under a plain layer`])
      ],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded: gone,
      favoured:
        stage === 'gelled'
          ? 'what is in the mould has gelled'
          : at.answers.get('runs') === 'no'
            ? 'it no longer runs'
            : null
    },
    {
      id: 'start-over',
      does: 'Draw it off, line the mould anew, and pour again',
      how: [
        'draw the resin off into flat metal trays, outdoors, thin',
        'wipe the mould with alcohol, seal all joints, let the sealant cure, test it with water',
        `weigh and pour ${entry.id} anew, and let it cure as long as the first pour would have`
      ],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: mixedMore(built, index, plan.stack.pours[index]!.massG),
      gives: [`all resin of ${entry.id}`],
      handsMin: 180,
      waitDays: mouldAnewDays(at) + curedAnewDays(spot),
      chance: 'about even',
      excluded: gone ?? (stage === 'gelled' ? 'it has gelled: it no longer comes out' : null)
    }
  ]
}
