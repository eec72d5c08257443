import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan, PlanCut } from '../plan.ts'
import { decimals, scaleWords } from '../quantity/format.ts'
import { bounds } from '../shape/measure.ts'
import { bowFacts, orderLines } from './bow-words.ts'
import { kindFacts } from './cut-kind-words.ts'
import { cutDoes, endsAt } from './run-fit.ts'
import { fillMix, mlWords } from './run-mix.ts'
import { place } from './run-mould.ts'
import type { RunDetail } from './run-part.ts'
import { blank, detail, fact } from './run-part.ts'
import { heldDoes, pocketFacts } from './run-tabs.ts'

/** What comes off a face, and what that leaves. */
export function flattenDetail(work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const step = work.steps[i]!
  const s = work.stack.states[i]!
  const left = L.of(s.highZ - s.lowZ, 1, 1)
  return detail({
    does: orderLines(work, i),
    facts: [
      fact('Take off', L.of(step.byMm ?? 0, 1, 1), L.unit),
      fact('Leaves', left, `${L.unit} thick`),
      ...bowFacts(work, i, 'Then bows')
    ],
    blanks: [blank('Thickness, four corners', L.unit, left), blank('Out of flat', L.unit)]
  })
}

/** Less than this left beyond a cut is none: it opens into another hole, mm. */
const LEAST_LEFT_MM = 0.05

/** A cut: how deep from the face of that day, how large, what it leaves. */
export function cutDetail(plan: Plan, work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const { index, value } = work.steps[i]!.cut!
  const cut = plan.cuts[index]!
  const region = work.stack.geometry.cutRegions[index]
  const size =
    region === null || region === undefined
      ? value.width === undefined
        ? null
        : fact(
            'Groove',
            L.of(value.width, 1),
            `${L.unit} wide, ${value.profile === 'v' ? `V of ${decimals(value.angle, 0)}°` : value.profile}`
          )
      : value.kind === 'outline'
        ? null
        : sized(bounds(region), value.shape !== undefined && 'circle' in value.shape, L)
  return detail({
    does: [...cutDoes(work, index), ...heldDoes(value, work.shop)],
    facts: [
      fact('Way', cut.way),
      cut.dayMm === null
        ? fact('Depth', 'right through')
        : fact('Depth', L.of(cut.dayMm, 1, 1), `${L.unit} from the ${value.face} as it is now`),
      ...(cut.finishedMm === null ||
      cut.dayMm === null ||
      (Math.abs(cut.dayMm - cut.finishedMm) < 0.05 && coatedDepth(cut, L) === L.unit)
        ? []
        : [fact('Finished', L.of(cut.finishedMm, 1, 1), coatedDepth(cut, L))]),
      ...(size === null ? [] : [size]),
      ...kindFacts(work, index),
      ...endsAt(work, index, cut.size),
      ...pocketFacts(value, work.shop, L),
      ...(cut.leftMm === null || cut.leftMm < LEAST_LEFT_MM
        ? []
        : [fact('Leaves', L.of(cut.leftMm, 1, 1), `${L.unit} beyond it`)])
    ],
    blanks: cut.dayMm === null ? [] : [blank('Depth', L.unit, L.of(cut.dayMm, 1, 1))]
  })
}

// A thick coat on the face makes a masked hole deeper.
function coatedDepth({ finishedMm, size }: PlanCut, L: Lengths): string {
  const end = size?.depthMm?.[1] ?? finishedMm
  const differs = end !== null && finishedMm !== null && Math.abs(end - finishedMm) >= 0.1
  return differs ? `${L.unit}; with the coats ${L.of(end, 1, 1)}` : L.unit
}

function sized(b: ReturnType<typeof bounds>, round: boolean, L: Lengths) {
  return fact(
    'Size',
    round ? `Ø ${L.of(b.maxX - b.minX, 1)}` : `${L.of(b.maxX - b.minX, 1)} × ${L.of(b.maxY - b.minY, 1)}`,
    `${L.unit}, middle at ${place((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2, L)}`
  )
}

/** A marking as it is cut. */
export function markDetail(work: Work, k: number): RunDetail {
  const L = lengthsOf(work.shop)
  const m = work.piece.markings[k]!
  const day = work.stack.markings[k]!.day
  return detail({
    facts: [
      ...(day === null ? [] : [fact('Depth', L.of(day, 2), `${L.unit} from the ${m.face} as it is now`)]),
      fact('Cutter', `V of ${decimals(m.angle, 0)}°`),
      fact('Way', work.hand.find(h => h.of === 'marking' && h.index === k)?.way ?? m.way),
      fact('Lines, finished', L.of(m.width, 1), `${L.unit} wide`),
      ...(m.numerals.length === 0
        ? []
        : [
            fact(
              'Figures',
              m.numerals.map(n => n.text).join(', '),
              m.figures === 'outline' ? 'as outlines, the depth by their width' : 'as single lines'
            )
          ])
    ],
    blanks: [blank('Width of a line as cut', L.unit)]
  })
}

/** What fills the lines of a marking. */
export function fillDetail(work: Work, k: number): RunDetail {
  const mix = fillMix(work, k)
  const { figures, numerals } = work.piece.markings[k]!
  const outlined = figures === 'outline' && numerals.length > 0
  return detail({
    does: ['Press it into the lines and draw it off across them; what stands proud is sanded later.'],
    facts: [
      fact('The lines hold', mlWords(mix.linesMl), `ml${outlined ? ', figures not counted' : ''}`),
      fact('Resin', mix.resin)
    ],
    amounts: mix.amounts,
    blanks: [
      blank('Mixed', 'g', scaleWords(mix.amounts.totalG, mix.amounts.places)),
      blank('First stir at', 'h:min')
    ]
  })
}
