import type { Work } from '../findings/work.ts'
import type { Plan, PlanStep } from '../plan.ts'
import { decimals, formatMinutes } from '../quantity/format.ts'
import { aboutTime, kilos, roughMass } from '../quantity/rough.ts'
import { wasteReachMm } from '../stack/waste.ts'
import type { Step } from '../steps/step.ts'

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
export function stepFacts(plan: Plan, work: Work, i: number): string[] {
  const step = work.steps[i]!
  switch (step.kind) {
    case 'wait':
      return step.why === undefined ? [] : [WAIT_WORDS[step.why]]
    case 'prepare timber': {
      const t = step.timber
      return t === undefined
        ? []
        : [work.materials.timbers[t.index]!.name, `${decimals(t.value.thickness, 1)} thick`]
    }
    case 'set timber': {
      const t = step.timber
      if (t === undefined) return []
      const { liftG, holdG } = plan.timbers[t.index]!
      if (t.value.held === 'screws' && holdG >= 1) {
        const most = Math.max(0, work.floating[t.index]!.hold.netLiftHighG)
        return [`screw down: ${roughMass(most, 'up')} of lift at most`]
      }
      if (liftG > 0) return [`may lift: hold down with ${roughMass(holdG)}`]
      return [holdG >= 1 ? `will not float; ${roughMass(holdG)} on it` : 'will not float']
    }
    case 'make mould':
      return [
        `${decimals(work.mould.innerLength, 0)} × ${decimals(work.mould.innerWidth, 0)} inside`,
        `walls ${decimals(work.mould.wall, 0)}`
      ]
    case 'pour':
      return pourFacts(plan, step)
    case 'set stones':
      return step.pour === undefined ? [] : stoneFacts(work, step.pour.index)
    case 'flatten':
    case 'sand':
      return [`${decimals(step.byMm ?? 0, 1)} off`, `${decimals(thicknessAfter(work, i), 1, 1)} left`]
    case 'cut': {
      const c = plan.cuts[step.cut!.index]!
      if (c.dayMm === null || c.finishedMm === null) return ['right through', c.way]
      const same = Math.abs(c.dayMm - c.finishedMm) < 0.05
      return [
        same
          ? `${decimals(c.dayMm, 1, 1)} deep`
          : `${decimals(c.dayMm, 1, 1)} as cut, ${decimals(c.finishedMm, 1, 1)} finished`,
        c.way
      ]
    }
    case 'mark': {
      const { value, index } = step.marking!
      const lines = work.stack.geometry.markingLines[index]!.length
      const figures = value.numerals.length
      return [
        `${lines} line${lines === 1 ? '' : 's'}${figures === 0 ? '' : `, ${figures} numerals`}`,
        `${decimals(value.width, 1)} wide`
      ]
    }
    case 'trim':
      return [
        `${decimals(plan.totals.sizeMm[0], 1)} × ${decimals(plan.totals.sizeMm[1], 1)} finished`,
        wasteWords(work)
      ]
    case 'coat': {
      const faces = plan.faces.filter(f => step.face === 'both' || f.face === step.face)
      const names = [...new Set(faces.flatMap(f => (f.coat === null ? [] : [f.coat])))]
      return [names.join(' and '), `${Math.max(0, ...faces.map(f => f.coats))} coats`]
    }
    case 'fit': {
      const h = plan.hardware[step.hardware!.index]!
      if (h.gapMm === null) return [h.name]
      return [
        h.name,
        h.gapMm < 0 ? `${decimals(-h.gapMm, 1)} over the edge of its hole` : `gap ${decimals(h.gapMm, 1)}`
      ]
    }
    case 'work edges':
      return work.piece.edges.map(e => `${e.profile} ${decimals(e.size, 1)}, ${e.face}`)
    case 'deliver':
      return [`${kilos(plan.totals.massG)} bare`]
    default:
      return []
  }
}

// What stands round the outline, where the plan knows of any.
function wasteWords(work: Work): string {
  const reach = wasteReachMm(work.piece, work.stack.geometry)
  return reach < 0.05 ? '' : `up to ${decimals(reach, 1)} of waste round it`
}

function pourFacts(plan: Plan, step: Step): string[] {
  const pour = plan.pours[step.pour!.index]!
  const out: string[] = []
  const { batches } = pour
  if (batches !== null)
    out.push(
      batches.split.possible && batches.split.count > 1
        ? `mix ${batches.split.count} × ${kilos(batches.split.batchG)}`
        : `mix ${kilos(batches.mixedG)}`
    )
  out.push(`${decimals(pour.stack.liquidDepth, 1, 1)} deep when poured`)
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
