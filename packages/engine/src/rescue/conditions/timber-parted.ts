import { bounds } from '../../shape/measure.ts'
import { finishedThickness } from '../../stack/stack.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { filledCut, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, howMuch, REST_DAYS } from './spot.ts'

/** Width of a line that looks meant, mm, and how deep it is filled: so far, or a third of the piece (practice). */
const LINE_MM = 3
const LINE_DEEP_MM = 5
/** Narrower than this thin resin is drawn in by itself, mm (practice). */
const CREEPS_MM = 0.5

/** Timber that let go of the resin. */
export const timberParted: Condition = {
  kind: 'timber parted',
  about: 'timber and resin came apart along an edge',
  found: () => [],
  questions: at => [
    ...askBy(at, 'How wide is the gap, in mm?'),
    {
      key: 'through',
      asks: 'Does light show through it?',
      options: [
        { word: 'yes', means: 'it goes right through: tape the far side before it is filled' },
        { word: 'no', means: 'it is open at one face only' }
      ]
    },
    {
      key: 'moves',
      asks: 'Does it open and close when you press on it?',
      options: [
        { word: 'yes', means: 'it bears nothing there: it can be opened, glued and clamped' },
        { word: 'no', means: 'the rest still holds' }
      ]
    },
    {
      key: 'bark',
      asks: 'Is there bark, wax or dust on the edge that let go?',
      options: [
        { word: 'yes', means: 'nothing bonds to that: it has to come out first' },
        { word: 'no', means: 'it can be bonded as it is, keyed with paper' }
      ]
    },
    {
      key: 'dry',
      asks: 'What does the moisture meter say of it: has it dried since it was cast?',
      options: [
        { word: 'drier', means: 'it will shrink on: let it come to rest before it is filled' },
        { word: 'same', means: 'it can be filled now' }
      ]
    }
  ],
  refused: () => [],
  ways
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const timber = built.entries.timbers.find(t => t.id === at.trouble.of) ?? built.entries.timbers[0]
  const by = howMuch(at, 0.3)
  const drier = at.answers.get('dry') === 'drier'
  const rest = drier
    ? ['let it lie in the air where it will live until its weight stands still: two weeks at least']
    : []
  const bark =
    at.answers.get('bark') === 'yes' ? ['pick and brush out bark, wax and dust down to sound wood'] : []
  const tape = at.answers.get('through') === 'no' ? [] : ['tape the far side tight']
  const none = timber === undefined ? 'the piece has no timber' : null
  const line = timber === undefined ? [] : seam(at, timber.index)
  const thin = { ...sameMix(built, 0), resin: 'thin' } as PourDocument
  const groove = (width: number, depth: number): CutDocument & { id: string } =>
    ({
      id: freeName(built, `${timber?.id ?? 'timber'} seam`),
      kind: 'groove',
      face: topFace(built),
      along: { points: line },
      width,
      depth,
      way: 'saw'
    }) as CutDocument & { id: string }
  const deep = Math.min(LINE_DEEP_MM, Math.max(1, tenth(finishedThickness(built.stack) / 3)))
  return [
    {
      id: 'wick',
      does: 'Let thin resin run into the gap',
      how: [
        ...rest,
        ...bark,
        ...tape,
        'warm the edge with a hair dryer, so that it draws the resin in as it cools',
        'feed thin resin from one side until it stands, top it up, wipe off what is proud'
      ],
      hazards: ['mixing-resin', 'leftover-in-cup', 'sanding-cured-resin'],
      patch: [],
      gives: ['a fine line stays to be seen, and some grams of resin on hand'],
      handsMin: 45,
      waitDays: drier ? REST_DAYS : 0,
      chance: by < CREEPS_MM ? 'usually works' : 'about even',
      excluded:
        none ??
        (at.answers.get('bark') === 'yes' && by < CREEPS_MM
          ? 'what keeps it from bonding cannot be got out of so narrow a gap'
          : null)
    },
    {
      id: 'line',
      does: `Saw the seam ${LINE_MM} mm wide and fill it as a line`,
      how: [
        ...rest,
        ...tape,
        `saw along the seam, ${LINE_MM} mm wide, along a rail, down to sound wood and resin`,
        'seal its timber, let it turn tacky, fill it level with a tint that looks meant'
      ],
      hazards: ['sawing', 'sanding-timber', 'sanding-cured-resin', 'mixing-resin', 'leftover-in-cup'],
      patch:
        none !== null
          ? []
          : filledCut(built, groove(LINE_MM, deep), { ...thin, resin: 'medium' } as PourDocument),
      gives: ['a line that was not drawn'],
      handsMin: 90,
      waitDays: drier ? REST_DAYS : 0,
      chance: 'usually works',
      excluded: none,
      favoured: at.answers.get('bark') === 'yes' ? 'what keeps it from bonding comes out with it' : null
    },
    {
      id: 'glue',
      does: 'Open it right through, key both edges, glue and clamp',
      how: [
        ...rest,
        'saw or pull it apart along the seam',
        'sand both edges with 80, wipe them, brush them with resin, let it turn tacky',
        'thickened resin on both, clamp lightly on a flat board'
      ],
      hazards: ['sawing', 'sanding-timber', 'sanding-cured-resin', 'mixing-resin', 'leftover-in-cup'],
      patch: [],
      gives: ['the width of a saw cut'],
      handsMin: 120,
      waitDays: 2 + (drier ? REST_DAYS : 0),
      chance: 'about even',
      excluded: none ?? (at.answers.get('moves') === 'no' ? 'the rest of it still holds' : null),
      favoured: at.answers.get('moves') === 'yes' ? 'it bears nothing where it is' : null
    }
  ]
}

// The edge of the timber that faces the middle of the piece, as a line along its box.
function seam({ built }: TroubleCase, index: number): [number, number][] {
  const t = bounds(built.stack.geometry.timbers[index]!.upper)
  const o = bounds(built.stack.geometry.outline)
  const [cx, cy] = [(o.minX + o.maxX) / 2, (o.minY + o.maxY) / 2]
  const sides = [
    {
      off: Math.abs(t.maxX - cx),
      points: [
        [t.maxX, t.minY],
        [t.maxX, t.maxY]
      ]
    },
    {
      off: Math.abs(t.minX - cx),
      points: [
        [t.minX, t.minY],
        [t.minX, t.maxY]
      ]
    },
    {
      off: Math.abs(t.maxY - cy),
      points: [
        [t.minX, t.maxY],
        [t.maxX, t.maxY]
      ]
    },
    {
      off: Math.abs(t.minY - cy),
      points: [
        [t.minX, t.minY],
        [t.maxX, t.minY]
      ]
    }
  ] as const
  const inside = [...sides].sort((a, b) => a.off - b.off)[0]!
  const clampTo = (v: number, low: number, high: number) => tenth(Math.min(high, Math.max(low, v)))
  return inside.points.map(([x, y]) => [clampTo(x!, o.minX, o.maxX), clampTo(y!, o.minY, o.maxY)])
}
