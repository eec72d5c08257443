import { cutSize } from '../../fits/cut-size.ts'
import type { Entry } from '../../piece/entry.ts'
import type { Operation } from '../../piece/patch.ts'
import type { Cut } from '../../piece/piece-schema.ts'
import { formatMm } from '../../quantity/format.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { addCut, leastMix } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, cutSpot, howMuch } from './spot.ts'

/** A size closer to the one wanted than this is let pass, mm: a caliper in a hole (practice). */
const SAME_MM = 0.1

// Cuts measured wider or narrower than they were to be cut.
function found({ built }: RescueCase, which: 'tight' | 'loose'): Trouble[] {
  return built.entries.cuts.flatMap(({ id, index }): Trouble[] => {
    const read = built.readings.flatMap(r => (r.kind === 'size' && r.cut === id ? [r] : []))
    const last = read.at(-1)
    const wanted = cutSize(built, index)?.cutMm ?? null
    if (last === undefined || wanted === null) return []
    const off = last.across - wanted
    if (Math.abs(off) <= SAME_MM || off < 0 !== (which === 'tight')) return []
    return [
      {
        kind: which === 'tight' ? 'fit tight' : 'fit loose',
        of: id,
        byMm: Math.round(Math.abs(off) * 100) / 100,
        says: `${id} measures ${last.across} mm across; ${Math.round(wanted * 100) / 100} mm was to be cut`,
        readings: [last.id]
      }
    ]
  })
}

/** A hole that a part does not go into. */
export const fitTight: Condition = {
  kind: 'fit tight',
  about: 'a part does not go into its hole',
  found: at => found(at, 'tight'),
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

/** A hole that a part rattles in. */
export const fitLoose: Condition = {
  kind: 'fit loose',
  about: 'a part is loose in its hole',
  found: at => found(at, 'loose'),
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

function tight(at: TroubleCase): WayDraft[] {
  const { built } = at
  const cut = cutSpot(at)
  const by = howMuch(at, 0.3)
  if (cut === null) return [noCut()]
  const coated = at.answers.get('coated')
  return [
    {
      id: 'ease',
      does: `Cut ${cut.id} ${tenth(Math.max(0.1, by))} mm wider`,
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
      excluded: by > 0.6 ? `${formatMm(by)} is much for a stick and paper` : null,
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

function sizeless(cut: Entry<Cut>): string | null {
  return cut.value.shape === undefined && cut.value.width === undefined ? 'it has no width of its own' : null
}

function hundredth(mm: number): number {
  return Math.round(mm * 100) / 100
}

function noCut(): WayDraft {
  return {
    id: 'none',
    does: 'Name the cut',
    how: [],
    hazards: [],
    patch: [],
    gives: [],
    handsMin: 0,
    waitDays: 0,
    chance: 'seldom works',
    excluded: 'the piece has no cuts'
  }
}
