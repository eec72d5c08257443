import type { Operation } from '../../piece/patch.ts'
import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { addCut, leastMix } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix } from '../patch/pour-patch.ts'
import { fitTroubles, noCut, sizeless } from './fit-size.ts'
import { askBy, cutSpot, howMuch } from './spot.ts'

/** A hole that a part rattles in. */
export const fitLoose: Condition = {
  kind: 'fit loose',
  about: 'a part is loose in its hole',
  found: at => fitTroubles(at, 'loose'),
  questions: at => [
    ...askBy(at, 'How much too wide is it, in mm?'),
    {
      key: 'out',
      asks: 'Is the part to come out again one day (a battery, a movement)?',
      options: [
        { word: 'yes', means: 'then nothing is glued in for good' },
        { word: 'no', means: 'then it may be bedded' }
      ]
    }
  ],
  refused: () => [],
  ways: loose
}

function loose(at: TroubleCase): WayDraft[] {
  const { built } = at
  const cut = cutSpot(at)
  const by = howMuch(at, 0.5)
  if (cut === null) return [noCut()]
  const out = at.answers.get('out')
  const hardware = built.entries.hardware.find(h => h.value.in === cut.id)
  const again = {
    ...built.document.cuts![cut.index]!,
    id: freeName(built, `${cut.id} again`)
  } as CutDocument & { id: string }
  const lined: Operation[] = [
    ...(built.document.cuts![cut.index]!.id === undefined
      ? [{ op: 'add', path: `/cuts/${cut.index}/id`, value: cut.id } as Operation]
      : []),
    ...(built.document.cuts![cut.index]!.for === undefined
      ? []
      : [{ op: 'remove', path: `/cuts/${cut.index}/for` } as Operation]),
    ...addCut(built, again),
    {
      op: 'add',
      path: '/pours/-',
      value: {
        ...sameMix(built, built.entries.pours[0]!.index),
        id: freeName(built, `${cut.id} lining`),
        resin: 'medium',
        kind: 'inlay',
        into: [cut.id],
        mixed: leastMix(built),
        fill: 'cut'
      } as PourDocument
    },
    ...(hardware === undefined
      ? []
      : [{ op: 'replace', path: `/hardware/${hardware.index}/in`, value: again.id } as Operation])
  ]
  return [
    {
      id: 'bed',
      does: 'Bed the part in silicone or felt',
      how: ['a bead or a strip all round, pressed in with its face down on a flat board, left a day'],
      hazards: [],
      patch:
        hardware === undefined
          ? []
          : [
              {
                op: built.document.hardware![hardware.index]!.clearance === undefined ? 'add' : 'replace',
                path: `/hardware/${hardware.index}/clearance`,
                value:
                  Math.round(
                    ((hardware.value.clearance ?? built.fits[hardware.index]?.wantedGapMm ?? 0) + by / 2) *
                      100
                  ) / 100
              }
            ],
      gives: ['a gap that shows where nothing covers it'],
      handsMin: 15,
      waitDays: 1,
      chance: 'usually works',
      favoured: out === 'yes' ? 'it comes out again' : null
    },
    {
      id: 'sleeve',
      does: 'Wrap the part: tape, veneer or a turned sleeve',
      how: [`something ${formatMm(by / 2)} thick all round, glued to the part, not to the hole`],
      hazards: ['sanding-timber'],
      patch: [],
      gives: [],
      handsMin: 30,
      waitDays: 0,
      chance: 'usually works'
    },
    {
      id: 'fill',
      does: `Fill ${cut.id} with resin and cut it anew`,
      how: [
        'tape a far side tight, seal the timber, fill it level',
        'when it is hard, cut it again by the right size, with a test cut first'
      ],
      hazards: [
        'mixing-resin',
        'leftover-in-cup',
        'sanding-cured-resin',
        'router-by-hand',
        'machine-cutting'
      ],
      patch: lined,
      gives: ['a rim of resin shows round it'],
      handsMin: 50,
      waitDays: 0,
      chance: 'usually works',
      excluded: sizeless(cut)
    }
  ]
}
