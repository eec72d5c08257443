import type { Work } from '../findings/work.ts'
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
  const step = work.steps[i]!
  const s = work.stack.states[i]!
  const left = decimals(s.highZ - s.lowZ, 1, 1)
  return detail({
    does: orderLines(work, i),
    facts: [
      fact('Take off', decimals(step.byMm ?? 0, 1, 1), 'mm'),
      fact('Leaves', left, 'mm thick'),
      ...bowFacts(work, i, 'Then bows')
    ],
    blanks: [blank('Thickness, four corners', 'mm', left), blank('Out of flat', 'mm')]
  })
}

/** Less than this left beyond a cut is none: it opens into another hole, mm. */
const LEAST_LEFT_MM = 0.05

/** A cut: how deep from the face of that day, how large, what it leaves. */
export function cutDetail(plan: Plan, work: Work, i: number): RunDetail {
  const { index, value } = work.steps[i]!.cut!
  const cut = plan.cuts[index]!
  const region = work.stack.geometry.cutRegions[index]
  const size =
    region === null || region === undefined
      ? value.width === undefined
        ? null
        : fact(
            'Groove',
            decimals(value.width, 1),
            `mm wide, ${value.profile === 'v' ? `V of ${decimals(value.angle, 0)}°` : value.profile}`
          )
      : value.kind === 'outline'
        ? null
        : sized(bounds(region), value.shape !== undefined && 'circle' in value.shape)
  return detail({
    does: [...cutDoes(work, index), ...heldDoes(value, work.shop)],
    facts: [
      fact('Way', cut.way),
      cut.dayMm === null
        ? fact('Depth', 'right through')
        : fact('Depth', decimals(cut.dayMm, 1, 1), `mm from the ${value.face} as it is now`),
      ...(cut.finishedMm === null ||
      cut.dayMm === null ||
      (Math.abs(cut.dayMm - cut.finishedMm) < 0.05 && coatedDepth(cut) === 'mm')
        ? []
        : [fact('Finished', decimals(cut.finishedMm, 1, 1), coatedDepth(cut))]),
      ...(size === null ? [] : [size]),
      ...kindFacts(work, index),
      ...endsAt(work, index, cut.size),
      ...pocketFacts(value, work.shop),
      ...(cut.leftMm === null || cut.leftMm < LEAST_LEFT_MM
        ? []
        : [fact('Leaves', decimals(cut.leftMm, 1, 1), 'mm beyond it')])
    ],
    blanks: cut.dayMm === null ? [] : [blank('Depth', 'mm', decimals(cut.dayMm, 1, 1))]
  })
}

// A thick coat on the face makes a masked hole deeper.
function coatedDepth({ finishedMm, size }: PlanCut): string {
  const end = size?.depthMm?.[1] ?? finishedMm
  const differs = end !== null && finishedMm !== null && Math.abs(end - finishedMm) >= 0.1
  return differs ? `mm; with the coats ${decimals(end, 1, 1)}` : 'mm'
}

function sized(b: ReturnType<typeof bounds>, round: boolean) {
  return fact(
    'Size',
    round
      ? `Ø ${decimals(b.maxX - b.minX, 1)}`
      : `${decimals(b.maxX - b.minX, 1)} × ${decimals(b.maxY - b.minY, 1)}`,
    `mm, middle at ${place((b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2)}`
  )
}

/** A marking as it is cut. */
export function markDetail(work: Work, k: number): RunDetail {
  const m = work.piece.markings[k]!
  const day = work.stack.markings[k]!.day
  return detail({
    facts: [
      ...(day === null ? [] : [fact('Depth', decimals(day, 2), `mm from the ${m.face} as it is now`)]),
      fact('Cutter', `V of ${decimals(m.angle, 0)}°`),
      fact('Way', work.hand.find(h => h.of === 'marking' && h.index === k)?.way ?? m.way),
      fact('Lines, finished', decimals(m.width, 1), 'mm wide'),
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
    blanks: [blank('Width of a line as cut', 'mm')]
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
