import { timberDensity } from './cast/floating.ts'
import type { RoomRange } from './cast/room-range.ts'
import { roomRange } from './cast/room-range.ts'
import type { Edge } from './cast/whole/whole-cast.ts'
import { findingsOf } from './findings/checks.ts'
import type { Finding } from './findings/finding.ts'
import type { Work } from './findings/work.ts'
import type { PlanFace } from './finish/face-plan.ts'
import { planFace } from './finish/face-plan.ts'
import { sandingHazards } from './finish/sands-at.ts'
import type { CutSize } from './fits/cut-size.ts'
import { cutSize } from './fits/cut-size.ts'
import { bounds } from './shape/measure.ts'
import { finishedThickness } from './stack/stack.ts'
import type { Volumes } from './stack/volume.ts'
import { finishedVolumes, massOf } from './stack/volume.ts'
import { safetyOf } from './steps/safety.ts'
import type { PlanInput } from './work.ts'
import { workOf } from './work.ts'

/** A finding that the maker goes on in spite of, with the reason. */
export interface Despite {
  readonly id: string
  readonly because: string
}

export interface PlanOptions {
  /** The only source of "now": ISO 8601 with offset. */
  readonly asOf: string
  readonly effort?: 'preview' | 'full'
  readonly despite?: readonly Despite[]
}

/** stop: do not go on; caution: your judgement; ready. */
export type Verdict = 'stop' | 'caution' | 'ready'

/** Sums of a piece. mm, g, ml. */
export interface Totals {
  readonly sizeMm: readonly [x: number, y: number, thickness: number]
  readonly castHeightMm: number
  readonly massG: number
  readonly resinMixedG: number
  readonly resinPouredMl: number
  readonly pours: number
  readonly batches: number
  readonly timbers: number
  readonly pieces: number
  readonly blanks: number
  readonly stops: number
  readonly cautions: number
  readonly notes: number
  /** Material with a known price, all blanks; and how many lines of the buy list have none. */
  readonly materialCost: number
  readonly unpriced: number
  readonly currency: string
  /** Days from the first pour to the last step, waits only. */
  readonly waitDays: number
}

/** The whole answer, as plain data. The same input gives the same bytes. */
export interface Plan {
  readonly castwright: 1
  readonly name: string
  readonly asOf: string
  readonly effort: 'preview' | 'full'
  readonly verdict: Verdict
  /** Where the piece stands, in one sentence. */
  readonly says: string
  readonly despite: readonly Despite[]
  readonly totals: Totals
  /** What the cast of the whole mould was made with; null where the column stands. */
  readonly whole: PlanWhole | null
  readonly findings: readonly Finding[]
  readonly steps: readonly PlanStep[]
  readonly pours: readonly PlanPour[]
  readonly cuts: readonly PlanCut[]
  readonly timbers: readonly PlanTimber[]
  readonly mould: Work['mould']
  readonly hardware: readonly PlanHardware[]
  /** How far it bows after each step and in use; null where no bow can be told. */
  readonly bow: PlanBow | null
  /** On its legs or rails; null where the piece names none. */
  readonly inUse: Work['inUse']
  /** What is lifted or turned, by the number of the step. */
  readonly moves: Work['moves']
  readonly faces: readonly PlanFace[]
  readonly quantity: Work['quantity']
  readonly buy: Work['buy']
}

export interface PlanWhole {
  readonly effort: 'preview' | 'full'
  /** Cells along x, y and z, and their width, mm. */
  readonly cells: readonly [x: number, y: number, z: number]
  readonly widthMm: number
  readonly steps: number
  /** (heat released − lost − stored)/the largest of them. */
  readonly energyClosure: number
  /** Whether the moments of the pours and the windows they wait for agree. */
  readonly settled: boolean
  /** Rooms in which the pours stay within their limits and harden. */
  readonly room: RoomRange
}

export interface PlanStep {
  readonly number: number
  readonly kind: Work['steps'][number]['kind']
  readonly says: string
  readonly at: string
  readonly faceUp: 'front' | 'back' | null
  readonly inMould: boolean
  readonly startMin: number
  readonly waitMin: number
  /** Heights of both faces as cast after the step. */
  readonly lowZ: number
  readonly highZ: number
  readonly safety: readonly { readonly line: string; readonly defersTo: readonly string[] }[]
}

export interface PlanPour {
  readonly id: string
  readonly kind: string
  readonly resin: string
  readonly stack: Work['stack']['pours'][number]
  readonly finishedMm: number | null
  readonly batches: Work['batches'][number]
  readonly cast: Work['casts'][number]
  /** How near it is to its limits; null until the whole mould was cast. */
  readonly edge: Edge | null
  readonly hiding: Work['hiding'][number]
  readonly seen: Work['appearance']['pours'][number]
}

export interface PlanCut {
  readonly id: string
  readonly face: 'front' | 'back'
  readonly kind: string
  readonly way: string
  /** Depth on the day it is made and on the finished piece, mm; null right through. */
  readonly dayMm: number | null
  readonly finishedMm: number | null
  readonly leftMm: number | null
  /** How wide it is through the build; null where a width says nothing: outlines, V lines, what is filled. */
  readonly size: CutSize | null
  /** Whether it shows from the front through what it leaves; null: of no cut from behind under resin. */
  readonly seen: Work['appearance']['cuts'][number]['seen'] | null
}

export interface PlanTimber {
  readonly id: string
  readonly species: string
  readonly massG: number
  readonly liftG: number
  readonly holdG: number
  readonly season: Work['seasons'][number]
  /** Where it will stand, how it cups, the board to start from, its seal coat and what holds it down. */
  readonly facts: Work['timberFacts'][number]
}

export interface PlanHardware {
  readonly id: string
  readonly name: string
  readonly count: number
  readonly gapMm: number | null
  /** Gap on each side in the piece in use, low, central, high; and the one wanted. null without a hole. */
  readonly clearanceMm: readonly [number, number, number] | null
  readonly wantedGapMm: number
  /** Size across to cut on the day so that the wanted gap is left in the end, mm. */
  readonly cutMm: number | null
  readonly shaft: Work['fits'][number]['shaft']
  /** Cast in: how much it shows from the front. */
  readonly seen: Work['partsSeen'][number]['seen'] | null
}

/** As {@link Work.bow}, with steps by their number. mm. */
export interface PlanBow {
  readonly flatnessMm: number
  readonly rows: NonNullable<Work['bow']>['rows']
  readonly order: NonNullable<Work['bow']>['order']
}

/** A plan with the work it was made from, for sheets that draw. */
export interface Planned {
  readonly plan: Plan
  readonly work: Work
  readonly volumes: Volumes
}

/**
 * The one entry point: the command line, the server and the app all ask this.
 * @throws InputProblem when the piece cannot be used
 */
export function plan(input: PlanInput, options: PlanOptions): Planned {
  const effort = options.effort ?? 'full'
  const work = workOf({ ...input, effort })
  const volumes = finishedVolumes(work.stack)
  return { plan: planFrom(work, findingsOf(work), volumes, { ...options, effort }), work, volumes }
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
  const totals = totalsOf(work, findings, volumes)
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
        way: c.value.way,
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
    moves: work.moves.map(m => ({ ...m, step: work.steps[m.step]!.number })),
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

function totalsOf(work: Work, findings: readonly Finding[], volumes: Volumes): Totals {
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
    batches: batches.reduce((sum, x) => sum + (x?.split.possible ? x.split.count : 0), 0),
    timbers: piece.timbers.length,
    pieces: quantity.pieces,
    blanks: quantity.blanks,
    stops: count('stop'),
    cautions: count('caution'),
    notes: count('note'),
    materialCost: buy.reduce((sum, l) => sum + (l.cost ?? 0), 0),
    unpriced: buy.filter(l => l.cost === null).length,
    currency: work.shop.currency,
    waitDays: Math.max(0, ...times) / 1440
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
