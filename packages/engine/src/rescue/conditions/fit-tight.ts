import type { Entry } from '../../piece/entry.ts'
import type { Operation } from '../../piece/patch.ts'
import type { Cut } from '../../piece/piece-schema.ts'
import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import { tenth } from '../patch/pour-patch.ts'
import { fitTroubles, noCut, sizeless } from './fit-size.ts'
import { askBy, cutSpot, howMuch } from './spot.ts'

/** More than this is not taken off by hand, and less than that no cutter takes, mm (practice). */
const MOST_BY_HAND_MM = 0.6
const LEAST_CUT_MM = 0.1

/** A hole that a part does not go into. */
export const fitTight: Condition = {
  kind: 'fit tight',
  about: 'a part does not go into its hole',
  found: at => fitTroubles(at, 'tight'),
  questions: at => [
    ...askBy(at, 'How much too narrow is it, in mm?'),
    {
      key: 'coated',
      asks: 'Is the hole coated already?',
      options: [
        { word: 'yes', means: 'the film stands in it: it can be scraped out' },
        { word: 'no', means: 'then it can be plugged while its face is coated' }
      ]
    },
    {
      key: 'damp',
      asks: 'Is the air damper now than where it will live?',
      options: [
        { word: 'yes', means: 'timber swells: it may open by itself' },
        { word: 'no', means: 'it stays as it is' }
      ]
    }
  ],
  refused: () => [],
  ways: tight
}

function tight(at: TroubleCase): WayDraft[] {
  const { built } = at
  const cut = cutSpot(at)
  const by = howMuch(at, 0.3)
  if (cut === null) return [noCut()]
  const coated = at.answers.get('coated')
  return [
    {
      id: 'ease',
      does: `Cut ${cut.id} ${tenth(Math.max(LEAST_CUT_MM, by))} mm wider`,
      how: [
        'a last pass along its wall, by the program or by the template shimmed out; try the part after each tenth'
      ],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin'],
      patch: wider(at, cut, by),
      gives: [],
      handsMin: 25,
      waitDays: 0,
      chance: 'usually works',
      excluded: sizeless(cut)
    },
    {
      id: 'sand',
      does: 'Ease it by hand',
      how: [
        'find where it binds: pencil or lipstick on the part',
        'scrape or sand there with 120 on a stick, little by little'
      ],
      hazards: ['sanding-cured-resin'],
      patch: [],
      gives: [],
      handsMin: 30,
      waitDays: 0,
      chance: 'usually works',
      excluded: by > MOST_BY_HAND_MM ? `${formatMm(by)} is much for a stick and paper` : null,
      favoured: coated === 'yes' ? 'a film is soon scraped out' : null
    },
    {
      id: 'mask',
      does: `Plug ${cut.id} while its face is coated`,
      how: ['tape or a turned plug in it, out again while the film is soft'],
      hazards: [],
      patch: [
        {
          op: built.document.cuts![cut.index]!.mask === undefined ? 'add' : 'replace',
          path: `/cuts/${cut.index}/mask`,
          value: true
        }
      ],
      gives: ['the walls of the hole are bare'],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        coated === 'yes'
          ? 'it is coated already'
          : built.document.cuts![cut.index]!.mask
            ? 'it is plugged already'
            : null,
      favoured: coated === 'no' ? 'it is not coated yet' : null
    },
    {
      id: 'wait',
      does: 'Keep it a week in the air where it will live, and try again',
      how: ['never press it in: timber that is pressed splits weeks later'],
      hazards: [],
      patch: [],
      gives: [],
      handsMin: 0,
      waitDays: 7,
      chance: at.answers.get('damp') === 'yes' ? 'about even' : 'seldom works',
      excluded: at.answers.get('damp') === 'no' ? 'the air is not damper here' : null
    }
  ]
}

function wider({ built }: TroubleCase, cut: Entry<Cut>, by: number): Operation[] {
  const typed = built.document.cuts![cut.index]!
  const at = `/cuts/${cut.index}`
  const { value } = cut
  if (value.width !== undefined)
    return [{ op: 'replace', path: `${at}/width`, value: tenth(value.width + by) }]
  if (value.shape?.circle !== undefined)
    return [{ op: 'replace', path: `${at}/shape/circle`, value: hundredth(value.shape.circle + by) }]
  if (value.shape === undefined) return []
  return [
    {
      op: typed.shape!.grow === undefined ? 'add' : 'replace',
      path: `${at}/shape/grow`,
      value: hundredth((value.shape.grow ?? 0) + by / 2)
    }
  ]
}

function hundredth(mm: number): number {
  return Math.round(mm * 100) / 100
}
