import { formatMm } from '../../quantity/format.ts'
import type { Condition, TroubleCase, WayDraft } from '../condition.ts'
import type { CutDocument } from '../patch/cut-patch.ts'
import { FLOOD_MM, filledCut, flattenMore, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { freeName, sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, howMuch, inMould, pourSpot } from './spot.ts'

/** The hole that opens it: wider than deep by this, and deeper than it reaches by that, mm (practice). */
const WIDER_MM = 3
const DEEPER_MM = 1
/** More than this is not flattened off for a bubble that is closed, mm (practice). */
const MOST_OFF_MM = 4

/** A bubble or a void in a layer. */
export const bubble: Condition = {
  kind: 'bubble',
  about: 'a bubble or a void in a layer, or one that opened when it was flattened',
  found: () => [],
  questions: at => [
    ...askBy(at, 'How deep does it reach under the face, in mm?'),
    {
      key: 'open',
      asks: 'Is it open at the face?',
      options: [
        { word: 'yes', means: 'it can be filled as it is' },
        { word: 'no', means: 'it has to be opened first' }
      ]
    },
    {
      key: 'again',
      asks: 'Do new ones still come up?',
      options: [
        { word: 'yes', means: 'timber or an inclusion still gives off air: seal it first' },
        { word: 'no', means: 'what is there is all' }
      ]
    },
    {
      key: 'at',
      asks: 'Where is it, seen from the front: x and y in mm, for example 40,10?',
      options: [],
      free: 'point'
    }
  ],
  refused: () => [],
  ways
}

function ways(at: TroubleCase): WayDraft[] {
  const { built } = at
  const { index, entry, next } = pourSpot(at)
  const by = howMuch(at, 2)
  const face = topFace(built)
  const typed = at.answers.get('at')
  const [x, y] = (typed?.split(/[ ,]+/).map(Number) ?? []) as number[]
  const place = Number.isFinite(x) && Number.isFinite(y) ? [x!, y!] : null
  const hole = {
    id: freeName(built, 'opened bubble'),
    kind: 'bore',
    face,
    shape: { circle: tenth(by + WIDER_MM), at: place ?? [0, 0] },
    depth: tenth(by + DEEPER_MM),
    way: 'drill'
  } as CutDocument & { id: string }
  const thin = { ...sameMix(built, index), resin: 'thin' } as PourDocument
  const air =
    at.answers.get('again') === 'yes'
      ? ['it still gives off air: first brush a thin coat over it and let it turn tacky']
      : []
  return [
    {
      id: 'next-fills',
      does: next === null ? 'Let the next layer fill it' : `Open it and let ${next.id} fill it`,
      how: [
        ...air,
        'open it wide with a knife or a burr, blow the dust out, wet it with resin by a stick',
        `pour ${next?.id ?? 'the next layer'}`
      ],
      hazards: ['mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: [],
      gives: [],
      handsMin: 15,
      waitDays: 0,
      chance: 'usually works',
      excluded: next === null ? 'no layer is left to pour' : !inMould(at) ? 'it is out of the mould' : null
    },
    {
      id: 'fill',
      does: 'Drill it open and fill it drop by drop',
      how: [
        ...air,
        'drill or rout it open, wider than deep, no undercut',
        'wipe it with alcohol, fill it a little proud with the same tint, pick bubbles out with a needle',
        'level it when it is hard'
      ],
      hazards: ['drilling', 'mixing-resin', 'leftover-in-cup', 'sanding-cured-resin'],
      patch: filledCut(built, hole, thin),
      gives: ['a ring may show where old and new resin meet'],
      handsMin: 45,
      waitDays: 0,
      chance: 'usually works',
      excluded: place === null && at.answers.get('at') !== undefined ? 'its place is not two numbers' : null,
      favoured: at.answers.get('open') === 'yes' ? 'it is open already' : null
    },
    {
      id: 'flatten',
      does: `Flatten ${tenth(by)} mm more off the ${face}`,
      how: ['take it off in passes until it is gone; others may open'],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
      patch: flattenMore(built, face, by),
      gives: [`${formatMm(by)} of the thickness`],
      handsMin: 0,
      waitDays: 0,
      chance: 'about even',
      excluded:
        at.answers.get('open') === 'no' && by > MOST_OFF_MM
          ? 'it lies deeper than flattening should go'
          : null
    },
    {
      id: 'flood',
      does: `Close it under a flood on the ${face}`,
      how: [
        ...air,
        'open it and fill it first: a flood alone sinks into it',
        'dam the face, flood it, go over it with the heat gun'
      ],
      hazards: ['sanding-cured-resin', 'mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: floodOver(built, face, FLOOD_MM, thin),
      gives: [`resin lies over the timber of the ${face} too`],
      handsMin: 45,
      waitDays: 0,
      chance: 'usually works',
      excluded: next !== null ? `${next.id} comes on ${entry.id} anyway` : null
    }
  ]
}
