import { strokeReadAtMm } from '../colour/contrast.ts'
import type { Work } from '../findings/work.ts'
import { lengthsIn } from '../piece/lengths.ts'
import type { Plan, PlanStep } from '../plan.ts'
import { formatMinutes } from '../quantity/format.ts'
import { aboutTime, kilos, roughMass } from '../quantity/rough.ts'
import type { ShownUnits } from '../quantity/shown-units.ts'
import { lengthIn, METRIC, massIn } from '../quantity/shown-units.ts'
import { wasteReachMm } from '../stack/waste.ts'
import type { Step } from '../steps/step.ts'
import { bowPhrase } from './bow-words.ts'
import { kindWords } from './cut-kind-words.ts'
import { dryingWords } from './drying-words.ts'
import { coatBrief, floodWords } from './run-coat.ts'
import { bandWords, endGap, maskedOn, sizeFacts } from './run-fit.ts'
import { handPhrases } from './run-hand.ts'
import { machinePhrases } from './run-machine.ts'
import { pinPhrases, turnPhrase } from './run-pins.ts'
import { sandingWords } from './run-sanding.ts'
import { heldPhrases } from './run-tabs.ts'
import { liftPhrase, usePhrases } from './use-words.ts'

const WAIT_WORDS = {
  recoat: 'until the next pour can bond',
  demould: 'until it is hard enough to handle',
  machine: 'until it is hard enough to cut',
  sand: 'until the filling can be sanded',
  load: 'until the coat bears use'
} as const

/** What a step is called on the run sheet. */
export function stepWords(step: Step, planned: PlanStep): string {
  if (step.kind === 'wait')
    return `Wait ${step.why === undefined ? formatMinutes(planned.waitMin) : aboutTime(planned.waitMin)}`
  return planned.says
}

/** The figures of a step, in few words, each a phrase. */
export function stepFacts(plan: Plan, work: Work, i: number, shown: ShownUnits = METRIC): string[] {
  const mm = (value: number, most: number, least = 0) => lengthIn(shown, value, most, least)
  const L = lengthsIn(shown)
  const mass = (g: number, metric: (g: number) => string) => massIn(shown, g, metric)
  const step = work.steps[i]!
  switch (step.kind) {
    case 'wait':
      return step.why === undefined ? [] : [WAIT_WORDS[step.why]]
    case 'prepare timber': {
      const t = step.timber
      return t === undefined
        ? []
        : [
            work.materials.timbers[t.index]!.name,
            `${mm(t.value.thickness, 1)} thick`,
            ...[dryingWords(work.seasons[t.index]!)].filter(words => words !== '')
          ]
    }
    case 'set timber': {
      const t = step.timber
      if (t === undefined) return []
      const { liftG, holdG } = plan.timbers[t.index]!
      if (t.value.held === 'screws' && holdG >= 1) {
        const most = Math.max(0, work.floating[t.index]!.hold.netLiftHighG)
        return [`screw down: ${mass(most, g => roughMass(g, 'up'))} of lift at most`]
      }
      if (liftG > 0) return [`may lift: hold down with ${mass(holdG, roughMass)}`]
      return [holdG >= 1 ? `will not float; ${mass(holdG, roughMass)} on it` : 'will not float']
    }
    case 'make mould':
      return [
        `${mm(work.mould.innerLength, 0)} × ${mm(work.mould.innerWidth, 0)} inside`,
        `walls ${mm(work.mould.wall, 0)}`,
        work.entries.formers.length === 0 ? '' : `with ${work.entries.formers.map(f => f.id).join(', ')}`
      ]
    case 'pour':
      return [...pourFacts(plan, step, shown), ...floodWords(work, i, L), ...sandingWords(work, i)]
    case 'set stones':
      return step.pour === undefined ? [] : stoneFacts(work, step.pour.index)
    case 'flatten':
    case 'sand':
      return [
        `${mm(step.byMm ?? 0, 1)} off`,
        `${mm(thicknessAfter(work, i), 1, 1)} left`,
        ...(step.kind === 'flatten' ? machinePhrases(work, i, L) : []),
        ...sandingWords(work, i),
        ...bows(work, i, shown)
      ]
    case 'demould':
      return [...bows(work, i, shown), ...liftPhrase(work, i, shown)]
    case 'turn over':
      return [...turnPhrase(work, i), ...liftPhrase(work, i, shown)]
    case 'drill pins':
      return pinPhrases(work, shown)
    case 'cut': {
      const c = plan.cuts[step.cut!.index]!
      const ends = sizeFacts(work, step.cut!.index, c.size, L)
      const tools = [
        ...kindWords(work, step.cut!.index, L),
        ...handPhrases(work, i, L),
        ...machinePhrases(work, i, L),
        ...heldPhrases(step.cut!.value, work.shop, L)
      ]
      if (c.dayMm === null || c.finishedMm === null) return ['right through', c.way, ...tools, ...ends]
      const same = Math.abs(c.dayMm - c.finishedMm) < 0.05
      return [
        same
          ? `${mm(c.dayMm, 1, 1)} deep`
          : `${mm(c.dayMm, 1, 1)} as cut, ${mm(c.finishedMm, 1, 1)} finished`,
        c.way,
        ...tools,
        ...ends
      ]
    }
    case 'mark': {
      const { value, index } = step.marking!
      const lines = work.stack.geometry.markingLines[index]!.length
      const figures = value.numerals.length
      return [
        `${lines} line${lines === 1 ? '' : 's'}${figures === 0 ? '' : `, ${figures} numerals`}`,
        `${mm(value.width, 1)} wide`,
        ...machinePhrases(work, i, L),
        `told apart up to ${L.run(strokeReadAtMm(value.width) / 1000)}`
      ]
    }
    case 'trim':
      return [
        `${mm(plan.totals.sizeMm[0], 1)} × ${mm(plan.totals.sizeMm[1], 1)} finished`,
        wasteWords(work, shown)
      ]
    case 'coat': {
      const masked = maskedOn(work, step.face ?? 'both')
      return [
        ...sandingWords(work, i),
        ...coatBrief(work.faces.filter(f => step.face === 'both' || f.face === step.face)),
        ...bows(work, i, shown),
        masked.length === 0 ? '' : `mask ${masked.join(', ')}`
      ]
    }
    case 'fit': {
      const h = plan.hardware[step.hardware!.index]!
      if (h.gapMm === null) return [h.name]
      if (h.gapMm < 0) return [h.name, `${mm(-h.gapMm, 1)} over the edge of its hole`]
      const ends = endGap(h.gapMm, h.clearanceMm)
      return [h.name, `gap ${mm(h.gapMm, 1)}`, ends === null ? '' : `in the end ${bandWords(ends, L)}`]
    }
    case 'work edges':
      return work.piece.edges.map(e => `${e.profile} ${mm(e.size, 1)}, ${e.face}`)
    case 'deliver':
      return [`${mass(plan.totals.massG, kilos)} bare`, ...bows(work, i, shown), ...usePhrases(work, shown)]
    default:
      return []
  }
}

function bows(work: Work, i: number, shown: ShownUnits = METRIC): string[] {
  const words = bowPhrase(work, i, shown)
  return words === null ? [] : [words]
}

// What stands round the outline, where the plan knows of any.
function wasteWords(work: Work, shown: ShownUnits): string {
  const reach = wasteReachMm(work.piece, work.stack.geometry)
  return reach < 0.05 ? '' : `up to ${lengthIn(shown, reach, 1)} of waste round it`
}

function pourFacts(plan: Plan, step: Step, shown: ShownUnits): string[] {
  const pour = plan.pours[step.pour!.index]!
  const out: string[] = []
  const { batches } = pour
  const mixed = batches?.mixed ?? null
  if (batches !== null)
    out.push(
      mixed !== null && mixed.count > 1
        ? `mix ${mixed.count} × ${massIn(shown, mixed.batchG, kilos)}`
        : `mix ${massIn(shown, batches.mixedG, kilos)}`
    )
  out.push(`${lengthIn(shown, pour.stack.liquidDepth, 1, 1)} deep when poured`)
  const { meant, depth } = pour.hiding
  if (meant && depth !== null && pour.kind !== 'seal')
    out.push(`hides from ${lengthIn(shown, depth.centralMm, 1, 1)}`)
  return out
}

function stoneFacts(work: Work, pour: number): string[] {
  return work.piece.pours[pour]!.stones.map((s, j) => {
    const name = work.materials.stones[pour]![j]!.name
    return s.placed === undefined ? name : `${s.placed.length} ${name}`
  })
}

function thicknessAfter(work: Work, i: number): number {
  const s = work.stack.states[i]!
  return s.highZ - s.lowZ
}
