import type { Operation } from '../../piece/patch.ts'
import { decimals, formatMm } from '../../quantity/format.ts'
import { finishedThickness } from '../../stack/stack.ts'
import { otherFace } from '../../steps/step.ts'
import type { Condition, RescueCase, Trouble, TroubleCase, WayDraft } from '../condition.ts'
import { flattenMore, floodOver, topFace } from '../patch/cut-patch.ts'
import type { PourDocument } from '../patch/pour-patch.ts'
import { sameMix, tenth } from '../patch/pour-patch.ts'
import { askBy, howMuch, isDone } from './spot.ts'

/** Thinner than planned by more than this is told, mm (practice: what a planer or a sled is off). */
const LEAST_MM = 0.3
/** Left of the depth of a cut that is made shallower, and of what a face is flattened by, mm (practice). */
const LEAST_CUT_MM = 1
const LEAST_FLATTEN_MM = 0.3
/** A flood is no thinner than this, it breaks up, and no thicker in two goes than that, mm (practice). */
const LEAST_FLOOD_MM = 0.5
const MOST_FLOODS_MM = 6

/** A piece that is thinner than it was planned. */
export const thicknessUnder: Condition = {
  kind: 'thickness under',
  about: 'the piece is thinner than planned',
  found,
  questions: at => [
    ...askBy(at, 'How much thinner than planned is it, in mm?'),
    {
      key: 'part',
      asks: 'Is a bought-in part to be flush, or may it stand out?',
      options: [
        { word: 'flush', means: 'then its pocket keeps its depth' },
        { word: 'out', means: 'then its pocket may be less deep' }
      ]
    }
  ],
  refused: () => [],
  ways
}

function found({ plan, built }: RescueCase): Trouble[] {
  const read = built.readings.filter(r => r.kind === 'thickness')
  const by = finishedThickness(plan.stack) - finishedThickness(built.stack)
  if (read.length === 0 || by <= LEAST_MM) return []
  return [
    {
      kind: 'thickness under',
      of: null,
      byMm: Math.round(by * 100) / 100,
      says: `the finished piece will be ${formatMm(finishedThickness(built.stack))} thick; ${formatMm(finishedThickness(plan.stack))} was planned`,
      readings: read.map(r => r.id)
    }
  ]
}

function ways(at: TroubleCase): WayDraft[] {
  const { built, state } = at
  const by = howMuch(at, 1)
  const face = topFace(built)
  const left = built.steps.flatMap((s, i) =>
    s.kind === 'flatten' && !isDone(state.steps[i]!.progress) ? [s.face as 'front' | 'back'] : []
  )
  const spare = left.find(f => built.piece.flatten[f] - by >= LEAST_FLATTEN_MM)
  const shallow = built.entries.cuts.filter(
    c =>
      c.value.finishedDepth !== undefined &&
      c.value.finishedDepth - by >= LEAST_CUT_MM &&
      !isMade(at, c.index)
  )
  const first = built.entries.pours.find(p => p.value.kind === 'cast')?.index ?? 0
  const flush = at.answers.get('part') === 'flush'
  return [
    {
      id: 'flatten-less',
      does:
        spare === undefined ? 'Take less off the other face' : `Take ${tenth(by)} mm less off the ${spare}`,
      how: ['see first that it comes flat with so little'],
      hazards: ['machine-cutting', 'router-by-hand', 'sanding-cured-resin', 'sanding-timber'],
      patch: spare === undefined ? [] : flattenMore(built, spare, -by),
      gives: ['what it was to be flattened by: marks of the mould may stay'],
      handsMin: 0,
      waitDays: 0,
      chance: 'about even',
      excluded: spare === undefined ? 'no flattening is left that has so much to give' : null
    },
    {
      id: 'shallower',
      does: `Cut ${shallow.map(c => c.id).join(', ') || 'the pockets'} ${tenth(by)} mm less deep`,
      how: ['reckon each cut from the thickness as it is'],
      hazards: ['machine-cutting', 'router-by-hand'],
      patch: shallow.map(c => depthLess(at, c.index, c.value.finishedDepth! - by)),
      gives: [`what goes in stands out by ${formatMm(by)}`],
      handsMin: 10,
      waitDays: 0,
      chance: 'usually works',
      excluded:
        shallow.length === 0
          ? 'no cut that is still to be made can be so much less deep'
          : flush
            ? 'what goes in is to be flush'
            : null
    },
    {
      id: 'flood',
      does: `Build it up by a flood of ${tenth(by)} mm on the ${otherOf(at, face)}`,
      how: [
        `sand the face matt, dam it, flood it in one go up to ${MOST_FLOODS_MM / 2} mm, in two beyond that`
      ],
      hazards: ['sanding-cured-resin', 'mixing-resin', 'pouring', 'leftover-in-cup'],
      patch: floodOver(built, otherOf(at, face), Math.max(LEAST_FLOOD_MM, by), {
        ...sameMix(built, first),
        resin: 'thin'
      } as PourDocument),
      gives: ['resin lies over the timber of that face'],
      handsMin: 45,
      waitDays: 0,
      chance: 'usually works',
      excluded: by > MOST_FLOODS_MM ? 'so much is a layer, not a flood' : null,
      favoured: flush ? 'what goes in is to be flush' : null
    },
    {
      id: 'accept',
      does: `Let it be ${decimals(finishedThickness(built.stack), 1)} mm thick`,
      how: ['look at each cut from the other face: what is left over it'],
      hazards: [],
      patch: [],
      gives: [`${formatMm(by)} of the thickness`],
      handsMin: 0,
      waitDays: 0,
      chance: 'usually works'
    }
  ]
}

function isMade({ built, state }: TroubleCase, index: number): boolean {
  const k = built.steps.findIndex(s => s.kind === 'cut' && s.cut!.index === index)
  return k >= 0 && isDone(state.steps[k]!.progress)
}

function depthLess({ built }: TroubleCase, index: number, mm: number): Operation {
  return {
    op: built.document.cuts![index]!.finishedDepth === undefined ? 'add' : 'replace',
    path: `/cuts/${index}/finishedDepth`,
    value: tenth(mm)
  }
}

// The face without cuts takes a flood more easily.
function otherOf({ built }: TroubleCase, face: 'front' | 'back'): 'front' | 'back' {
  const cut = (f: 'front' | 'back') => built.piece.cuts.some(c => c.face === f)
  return cut(face) && !cut(otherFace(face)) ? otherFace(face) : face
}
