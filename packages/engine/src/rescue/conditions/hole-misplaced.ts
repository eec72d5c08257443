import { shiftEntry } from '../../draw/entry-shift.ts'
import type { Entry } from '../../piece/entry.ts'
import type { Operation } from '../../piece/patch.ts'
import type { Cut } from '../../piece/piece-schema.ts'
import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { filledCut } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix, tenth } from '../patch/pour-patch.ts'
import { noCut } from './fit-size.ts'
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
  const [ux, uy] = WAYS[(at.answers.get('along') ?? 'right') as keyof typeof WAYS]
  const astrayAt = moved(typed, ux * by, uy * by)
  const noShape = astrayAt === null ? 'its path cannot be moved' : null
  const astray = { ...typed, ...astrayAt, id: freeName(built, `${cut.id} astray`) } as CutDocument & {
    id: string
  }
  delete (astray as { for?: unknown }).for
  const through = typed.through === true
  const shows = at.answers.get('shows')
  const clear = sameMix(built, built.entries.pours.find(p => p.value.kind === 'cast')?.index ?? 0)
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
      patch: wider(cut, typed, by, [ux, uy]),
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
      patch: astrayAt === null ? [] : placed(cut.index, astrayAt),
      gives: ['the place as it was drawn'],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded: noShape
    }
  ]
}

// A cut as it would be so far aside; null for one whose path cannot be read.
function moved(typed: CutDocument, dx: number, dy: number): Partial<CutDocument> | null {
  const copy = JSON.parse(JSON.stringify(typed)) as CutDocument
  shiftEntry(copy as unknown as Record<string, unknown>, dx, dy)
  if (copy.shape !== undefined) return { shape: copy.shape }
  return JSON.stringify(copy.along) === JSON.stringify(typed.along) ? null : { along: copy.along }
}

function placed(index: number, aside: Partial<CutDocument>): Operation[] {
  const key = aside.shape === undefined ? 'along' : 'shape'
  return [{ op: 'replace', path: `/cuts/${index}/${key}`, value: aside[key] }]
}

// Wide enough for both: a round hole and a groove stay what they are, any other shape becomes the two together.
function wider(
  cut: Entry<Cut>,
  typed: CutDocument,
  by: number,
  [ux, uy]: readonly [number, number]
): Operation[] {
  const half = moved(typed, (ux * by) / 2, (uy * by) / 2)
  const whole = moved(typed, ux * by, uy * by)
  if (half === null || whole === null) return []
  const at = `/cuts/${cut.index}`
  if (cut.value.shape?.circle !== undefined)
    return [
      ...placed(cut.index, half),
      { op: 'replace', path: `${at}/shape/circle`, value: tenth(cut.value.shape.circle + by) }
    ]
  if (cut.value.shape !== undefined)
    return [{ op: 'replace', path: `${at}/shape`, value: { union: [typed.shape, whole.shape] } }]
  if (cut.value.width === undefined) return []
  return [
    { op: 'replace', path: `${at}/width`, value: tenth(cut.value.width + by) },
    ...placed(cut.index, half)
  ]
}
