import { timberDensity } from './cast/floating.ts'
import { roomRange } from './cast/room-range.ts'
import { batchesMixed } from './cost/needs.ts'
import { planMachineCut } from './cuts/run/plan-cut.ts'
import { byRank, findingsOf } from './findings/checks.ts'
import type { Finding } from './findings/finding.ts'
import { notMadeOnce } from './findings/not-made-once.ts'
import type { Work } from './findings/work.ts'
import { planFace } from './finish/face-plan.ts'
import { sandingHazards } from './finish/sands-at.ts'
import { cutSize } from './fits/cut-size.ts'
import type {
  Plan,
  PlanCut,
  PlanHardware,
  Planned,
  PlanOptions,
  PlanPour,
  PlanStep,
  PlanTimber,
  PlanWhole,
  Totals,
  Verdict
} from './plan-answer.ts'
import { bounds } from './shape/measure.ts'
import { finishedThickness } from './stack/stack.ts'
import type { Volumes } from './stack/volume.ts'
import { finishedVolumes, massOf } from './stack/volume.ts'
import { safetyOf } from './steps/safety.ts'
import type { PlanInput } from './work.ts'
import { workOf } from './work.ts'

export type {
  Despite,
  Plan,
  PlanCut,
  PlanHardware,
  Planned,
  PlanOptions,
  PlanPour,
  PlanStep,
  Totals,
  Verdict
} from './plan-answer.ts'

/**
 * The one entry point: the command line, the server and the app all ask this.
 * @throws InputProblem when the piece cannot be used
 */
export function plan(input: PlanInput, options: PlanOptions): Planned {
  const effort = options.effort ?? 'full'
  const work = workOf({ ...input, effort, asOf: options.asOf })
  const volumes = finishedVolumes(work.stack)
  return { plan: planFrom(work, findingsOf(work), volumes, { ...options, effort }), work, volumes }
}

/** A plan with more to be said of it: verdict and sums follow. Stops first. */
export function withFindings(planned: Planned, more: readonly Finding[], options: PlanOptions): Planned {
  if (more.length === 0 && options.ready === undefined) return planned
  const { work, volumes, plan: before } = planned
  const findings = byRank(notMadeOnce(before.findings, more))
  return { work, volumes, plan: planFrom(work, findings, volumes, { ...options, effort: before.effort }) }
}

/** Verdict and findings alone: what `check` asks. */
export function check(
  input: PlanInput,
  options: PlanOptions
): Pick<Plan, 'verdict' | 'says' | 'totals' | 'findings'> {
  const { verdict, says, totals, findings } = plan(input, {
    ...options,
    effort: options.effort ?? 'preview'
  }).plan
  return { verdict, says, totals, findings }
}

function planFrom(
  work: Work,
  findings: readonly Finding[],
  volumes: Volumes,
  options: Required<Pick<PlanOptions, 'effort'>> & PlanOptions
): Plan {
  const despite = (options.despite ?? []).filter(d => findings.some(f => f.id === d.id))
  const standing = findings.filter(f => !despite.some(d => d.id === f.id))
  const verdict = verdictOf(standing)
  const { piece, stack, entries } = work
  const totals = totalsOf(work, findings, volumes, options.ready ?? null)
  return {
    castwright: 1,
    name: piece.name,
    asOf: options.asOf,
    effort: options.effort,
    verdict,
    says: sentence(verdict, standing),
    despite,
    totals,
    whole: wholeOf(work),
    findings,
    steps: work.steps.map(
      (s, i): PlanStep => ({
        number: s.number,
        kind: s.kind,
        says: s.says,
        at: s.at,
        faceUp: s.up,
        inMould: s.inMould,
        startMin: work.clock[i]!.startMin,
        waitMin: work.clock[i]!.waitMin,
        lowZ: stack.states[i]!.lowZ,
        highZ: stack.states[i]!.highZ,
        safety: safetyOf(s, work.materials, {
          massG: work.moves.find(m => m.step === i)?.massG ?? totals.massG,
          food: piece.food !== 'none',
          byHand: work.shop.machine === undefined,
          timber: piece.timbers.length > 0,
          sanding: sandingHazards(work.faces, work.steps, i)
        }).map(h => ({
          line: h.lines.join(' '),
          defersTo: h.defersTo
        }))
      })
    ),
    pours: entries.pours.map((p, i): PlanPour => {
      const s = stack.pours[i]!
      const from = Math.max(s.floor, stack.finishedLow)
      const to = Math.min(s.level, stack.finishedHigh)
      return {
        id: p.id,
        kind: p.value.kind,
        resin: p.value.resin,
        stack: s,
        finishedMm: p.value.kind === 'cast' ? Math.max(0, to - from) : null,
        batches: work.batches[i]!,
        cast: work.casts[i]!,
        edge: work.whole?.edges[i] ?? null,
        hiding: work.hiding[i]!,
        seen: work.appearance.pours[i]!
      }
    }),
    cuts: entries.cuts.map(
      (c, i): PlanCut => ({
        id: c.id,
        face: c.value.face,
        kind: c.value.kind,
        // In a shop without a machine it is made by hand, whatever is written.
        way: work.hand.find(h => h.of === 'cut' && h.index === i)?.way ?? c.value.way,
        dayMm: stack.cuts[i]!.day,
        finishedMm: stack.cuts[i]!.finished,
        leftMm: work.covers.find(k => k.cut === i)?.left?.mm ?? null,
        size: cutSize(work, i),
        seen: work.appearance.cuts.find(k => k.cut === i)?.seen ?? null
      })
    ),
    timbers: entries.timbers.map(
      (t, i): PlanTimber => ({
        id: t.id,
        species: work.materials.timbers[i]!.name,
        massG: work.floating[i]!.massG,
        liftG: work.floating[i]!.hold.netLiftG,
        holdG: work.floating[i]!.hold.holdDownG,
        season: work.seasons[i]!,
        facts: work.timberFacts[i]!
      })
    ),
    mould: work.mould,
    hardware: entries.hardware.map(
      (h, i): PlanHardware => ({
        id: h.id,
        name: work.materials.hardware[i]!.name,
        count: h.value.count,
        gapMm: work.fits[i]!.gapMm,
        clearanceMm: work.fits[i]!.clearanceMm,
        wantedGapMm: work.fits[i]!.wantedGapMm,
        cutMm: work.fits[i]!.cutMm,
        shaft: work.fits[i]!.shaft,
        seen: work.partsSeen.find(p => p.hardware === i)?.seen ?? null
      })
    ),
    bow:
      work.bow === null
        ? null
        : { ...work.bow, rows: work.bow.rows.map(r => ({ ...r, step: work.steps[r.step]!.number })) },
    inUse: work.inUse,
    pins: work.pins.needed || work.pins.pins.length > 0 ? work.pins : null,
    moves: work.moves.map(m => ({ ...m, step: work.steps[m.step]!.number })),
    machine: work.machineCuts.cuts.map(c => planMachineCut(c, work.steps[c.step]!.number)),
    hand: work.hand.map(h => ({ ...h, step: work.steps[h.step]!.number })),
    faces: work.faces.map(planFace),
    quantity: work.quantity,
    buy: work.buy
  }
}

function wholeOf({ whole, materials, shop }: Work): PlanWhole | null {
  if (whole === null) return null
  const { map, effort, steps, settled, energy } = whole
  return {
    effort,
    cells: [map.nx, map.ny, map.facesMm.length - 1],
    widthMm: Math.max(map.dxMm, map.dyMm),
    steps,
    energyClosure: energy.closure,
    settled,
    room: roomRange(materials.resins, whole.edges, shop)
  }
}

function verdictOf(findings: readonly Finding[]): Verdict {
  if (findings.some(f => f.severity === 'stop')) return 'stop'
  return findings.some(f => f.severity === 'caution') ? 'caution' : 'ready'
}

function sentence(verdict: Verdict, findings: readonly Finding[]): string {
  const first = findings[0]
  if (verdict === 'ready' || first === undefined) return 'Ready: nothing stands against it.'
  return verdict === 'stop'
    ? `Not ready to pour. ${first.says}`
    : `It can go on, with your judgement. ${first.says}`
}

function totalsOf(work: Work, findings: readonly Finding[], volumes: Volumes, ready: string | null): Totals {
  const { piece, stack, batches, buy, quantity } = work
  const b = bounds(stack.geometry.outline)
  const count = (severity: Finding['severity']) => findings.filter(f => f.severity === severity).length
  const times = work.clock.map(t => t.startMin + t.waitMin)
  return {
    sizeMm: [b.maxX - b.minX, b.maxY - b.minY, finishedThickness(stack)],
    castHeightMm: stack.castHeight,
    massG: massOf(volumes, key => densityOf(work, key)),
    resinMixedG: batches.reduce((sum, x) => sum + (x?.mixedG ?? 0), 0),
    resinPouredMl: stack.pours.reduce((sum, p) => sum + p.liquidMl, 0),
    pours: piece.pours.length,
    batches: batchesMixed(batches),
    timbers: piece.timbers.length,
    pieces: quantity.pieces,
    blanks: quantity.blanks,
    stops: count('stop'),
    cautions: count('caution'),
    notes: count('note'),
    materialCost: buy.reduce((sum, l) => sum + (l.cost ?? 0), 0),
    unpriced: buy.filter(l => l.cost === null).length,
    currency: work.shop.currency,
    waitDays: Math.max(0, ...times) / 1440,
    ready
  }
}

// Density of a material of the finished piece, g/ml; the stones of a pour are mixed into it by volume.
function densityOf(work: Work, key: string): number {
  const [kind, number] = key.split(' ')
  const i = Number(number)
  if (kind === 'timber') return timberDensity(work.materials.timbers[i]!, work.seasons[i]!.moisturePct) / 1000
  if (kind === 'pour') {
    const pour = work.stack.pours[i]!
    const model = work.materials.resins[i]!.record.model
    const cured = model === null ? work.materials.resins[i]!.densityGMl : model.bulk.curedKgM3 / 1000
    const share = pour.filledMl > 0 ? pour.stonesMl / pour.filledMl : 0
    const stones = work.materials.stones[i]!
    const stone =
      stones.length === 0 ? 0 : stones.reduce((sum, s) => sum + s.densityKgM3, 0) / stones.length / 1000
    return cured * (1 - share) + stone * share
  }
  return work.materials.markingResins[i]?.densityGMl ?? 1.1
}
