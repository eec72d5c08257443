import type { Operation } from '../../piece/patch.ts'
import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { filledCut } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, cutSpot, howMuch } from './spot.ts'

/** A cut that went in at the wrong place. */
export const holeMisplaced: Condition = {
  kind: 'hole misplaced',
  about: 'a hole or pocket was cut in the wrong place',
  found: () => [],
  questions: at => [
    ...askBy(at, 'How far from where it was to be, in mm?'),
    {
      key: 'along',
      asks: 'Is it off to the right or left, or away or towards you, seen from the front?',
      options: [
        { word: 'right', means: 'along x' },
        { word: 'left', means: 'against x' },
        { word: 'away', means: 'along y' },
        { word: 'near', means: 'against y' }
      ]
    },
    {
      key: 'shows',
      asks: 'Does it show on the finished piece?',
      options: [
        { word: 'yes', means: 'what fills it will be seen' },
        { word: 'no', means: 'it lies behind or under something' }
      ]
    }
  ],
  refused: () => [],
  ways
}

const WAYS = { right: [1, 0], left: [-1, 0], away: [0, 1], near: [0, -1] } as const

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const cut = cutSpot(at)
  const by = howMuch(at, 5)
  if (cut === null) return [noCut()]
  const typed = built.document.cuts![cut.index]!
  const { shape } = typed
  const [ux, uy] = WAYS[(at.answers.get('along') ?? 'right') as keyof typeof WAYS]
  const [x, y] = cut.value.shape?.at ?? [0, 0]
  const moved = [tenth(x + ux * by), tenth(y + uy * by)]
  const noShape = shape === undefined ? 'it runs along a line: it has no place of its own to move' : null
  const astray = {
    ...typed,
    id: freeName(built, `${cut.id} astray`),
    shape: { ...shape, at: moved }
  } as CutDocument & { id: string }
  delete (astray as { for?: unknown }).for
  const through = typed.through === true
  const across = cut.value.shape?.circle
  const shows = at.answers.get('shows')
  const clear = sameMix(built, built.entries.pours.find(p => p.value.kind === 'cast')?.index ?? 0)
  const small = across === undefined ? null : across
  return [
    {
      id: 'fill',
      does: `Fill it with resin and cut ${cut.id} anew`,
      how: [
        ...(through ? ['tape its far side tight'] : []),
        'wipe the hole, seal its timber with a brush of resin, let it turn tacky',
        'fill it in one or two goes, a little proud; level it when it is hard',
        `cut ${cut.id} where it belongs, with a test cut in scrap first`
      ],
      hazards: [
        'mixing-resin',
        'leftover-in-cup',
        'sanding-cured-resin',
        'router-by-hand',
        'machine-cutting'
      ],
      patch: noShape !== null ? [] : filledCut(built, astray, { ...clear, resin: 'medium' } as PourDocument),
      gives: [shows === 'no' ? 'nothing that shows' : 'the filling stays to be seen'],
      handsMin: 40,
      waitDays: 0,
      chance: 'usually works',
      excluded: noShape,
      favoured: shows === 'no' ? 'it does not show' : null
    },
    {
      id: 'widen',
      does: `Widen ${cut.id} so that it takes in both`,
      how: [
        `cut it ${formatMm(by)} wider towards where it belongs`,
        'pack the part that goes in, or choose a wider one'
      ],
      hazards: ['router-by-hand', 'machine-cutting', 'sanding-cured-resin'],
      patch:
        noShape !== null
          ? []
          : small !== null
            ? [
                { op: 'replace', path: `/cuts/${cut.index}/shape/circle`, value: tenth(small + by) },
                place(built.document.cuts![cut.index]!, cut.index, [
                  tenth(x + (ux * by) / 2),
                  tenth(y + (uy * by) / 2)
                ])
              ]
            : [
                {
                  op: 'replace',
                  path: `/cuts/${cut.index}/shape`,
                  value: { union: [shape, { ...shape, at: moved }] }
                }
              ],
      gives: [`${formatMm(by)} of what holds the part`],
      handsMin: 20,
      waitDays: 0,
      chance: 'about even',
      excluded: noShape
    },
    {
      id: 'move',
      does: `Let ${cut.id} be where it is`,
      how: ['what belongs to it moves with it: cover, part, its other half'],
      hazards: [],
      patch: noShape !== null ? [] : [place(typed, cut.index, moved)],
      gives: ['the place as it was drawn'],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded: noShape
    }
  ]
}

function place(typed: CutDocument, index: number, at: readonly number[]): Operation {
  return { op: typed.shape!.at === undefined ? 'add' : 'replace', path: `/cuts/${index}/shape/at`, value: at }
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
