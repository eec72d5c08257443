import { tintOf } from '../cast/fill.ts'
import { mixLots } from '../cost/mix-lots.ts'
import type { Work } from '../findings/work.ts'
import type { Lengths } from '../piece/lengths.ts'
import { lengthsOf } from '../piece/lengths.ts'
import type { Plan } from '../plan.ts'
import { decimals, formatMass, formatMinutes, scaleWords } from '../quantity/format.ts'
import { aboutTime, roughTime } from '../quantity/rough.ts'
import { RUNAWAY_ABOVE_C } from '../resin/limits.ts'
import type { Step } from '../steps/step.ts'
import { curveSheet } from './curve.ts'
import { capital } from './model.ts'
import { curveWords, rowsOf } from './page-card.ts'
import { mixAmounts, scantTints, vesselWords, weighed } from './run-mix.ts'
import type { RunAmounts, RunDetail, RunFact, RunTable } from './run-part.ts'
import { blank, detail, fact } from './run-part.ts'

const MIXING = {
  'two cups': 'Stir A and B, pour over into a clean vessel, stir again. Scrape neither.',
  'one cup':
    'Stir A and B, walls and foot of the vessel too. What clings to them is never quite mixed: do not scrape it out.',
  paddle: 'Stir A and B with a slow paddle, walls and foot too.'
} as const

/** A pour: what is weighed, to where it is filled, by when it is out of the vessel, what it does then. */
export function pourDetail(plan: Plan, work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const step = work.steps[i]!
  const { index, value } = step.pour!
  const pour = plan.pours[index]!
  const amounts = pourAmounts(work, index)
  const does: string[] = []
  const { batches } = work.rounds[index]!
  if (batches !== null && !batches.split.possible && amounts === null)
    does.push(`No batch can be given: ${batches.split.says}.`)
  if (amounts !== null) {
    if (amounts.batches > 1)
      does.push(
        `Mix ${amounts.batches} batches one after another, each out of its vessel before the next is stirred.`
      )
    does.push(MIXING[value.mixing])
    const batchG = amounts.mixedG / amounts.batches
    does.push(...scantTints(work.materials.tints[index]!, batchG, work.shop.scale.resolution))
  }
  does.push(fillTo(plan, work, step, i))
  value.stones.forEach((s, j) => {
    if (s.set === 'into the pour')
      does.push(`Set ${work.materials.stones[index]![j]!.name} into it while it flows.`)
  })
  return detail({
    does,
    facts: pourFacts(plan, work, index, amounts),
    amounts,
    table: marblingTable(work, index, amounts),
    ...courseOf(plan, index, L),
    blanks: [
      ...(amounts === null
        ? []
        : [blank('Mixed', 'g', scaleWords(amounts.totalG * amounts.batches, amounts.places))]),
      ...(pour.kind === 'cast' ? [blank('Level', L.unit, L.of(pour.stack.liquidLevel, 1, 1))] : []),
      blank('Mix at', L.degree, pour.cast === null ? null : L.degrees(pour.cast.startC)),
      blank('First stir at', 'h:min'),
      blank('Last out at', 'h:min')
    ]
  })
}

/** What goes into each batch of a pour; null when it cannot be split. */
function pourAmounts(work: Work, index: number): RunAmounts | null {
  const L = lengthsOf(work.shop)
  const { batches, blanks } = work.rounds[index]!
  if (batches === null || batches.mixed === null) return null
  const { split, mixed } = batches
  const vessel = vesselWords(
    mixed.vesselMl,
    !mixed.chosen && split.possible ? split.vessel.diameterMm : null,
    L
  )
  return mixAmounts({
    mixedG: batches.mixedG,
    batches: mixed.count,
    mix: work.materials.resins[index]!.mix,
    tint: work.materials.tints[index]!,
    resolution: work.shop.scale.resolution,
    blanks,
    vessel,
    lot: mixLots(work.needs, work.shop, { pour: index })?.sure ?? null
  })
}

// Levels are of the day: over the mould base in the mould, from the face that exists then outside it.
function fillTo(plan: Plan, work: Work, step: Step, i: number): string {
  const L = lengthsOf(work.shop)
  const { index } = step.pour!
  const { stack, kind } = plan.pours[index]!
  const deep = `${L.of(stack.liquidDepth, 1, 1)} ${L.unit} deep`
  if (kind === 'seal') return 'Work it thin over every side of the timber that resin will touch.'
  if (stack.side === null) {
    const rim = work.mould.wall - stack.liquidLevel
    const down = rim >= 1 ? `, ${L.of(rim, 1, 1)} ${L.unit} under the top of the walls` : ''
    return `Fill to ${L.of(stack.liquidLevel, 1, 1)} ${L.unit} over the mould base: ${deep}${down}. It cures to ${L.of(stack.level, 1, 1)}, ${L.of(stack.depth, 1, 1)} deep as cast.`
  }
  const before = work.stack.states[Math.max(0, i - 1)]!
  const over = stack.side === 'high' ? stack.liquidLevel - before.highZ : before.lowZ - stack.liquidLevel
  const face = step.up ?? 'face'
  if (Math.abs(over) < 0.05) return `Fill level with the ${face} as it is now: ${deep}.`
  return `Fill to ${L.of(Math.abs(over), 1, 1)} ${L.unit} ${over > 0 ? 'over' : 'under'} the ${face} as it is now: ${deep}.`
}

function pourFacts(plan: Plan, work: Work, index: number, amounts: RunAmounts | null): RunFact[] {
  const L = lengthsOf(work.shop)
  const pour = plan.pours[index]!
  const { cast } = pour
  const { batches } = work.rounds[index]!
  const out: RunFact[] = []
  if (amounts !== null) {
    const { allowedMin, standingMin } = batches!.mixed!
    if (allowedMin !== null)
      out.push(fact('Out of the vessel within', roughTime(allowedMin, 'down'), 'of the first stir'))
    const does = pour.kind === 'seal' ? 'brushing it on' : 'pouring'
    out.push(fact(`Stirring and ${does} take`, formatMinutes(standingMin)))
  }
  out.push(...tintFacts(pour, L), ...partFacts(work, index))
  if (cast === null) {
    out.push(fact('Heat and windows', 'not predicted', 'the label and its data sheet say'))
    return out
  }
  const { working, marbling, gelMin, recoat } = cast.windows
  if (working.close !== null) out.push(fact('Workable for', aboutTime(working.close, 'down'), 'in the mould'))
  if (marbling !== null && marbling.close !== null && work.piece.pours[index]!.marbling !== undefined)
    out.push(fact('Draw the colours', `${aboutTime(marbling.open)} to ${roughTime(marbling.close)}`))
  if (gelMin !== null) out.push(fact('Gels after about', `${roughTime(gelMin)}; leave it alone until then`))
  const [low, high] = cast.peakBandC
  out.push(
    fact(
      'Peak',
      cast.runaway ? 'runs away' : L.degrees(cast.peakC),
      cast.runaway
        ? ''
        : `${L.degree} after ${aboutTime(cast.peakMin)}; between ${L.degrees(low)} and ${high > RUNAWAY_ABOVE_C ? 'runaway' : L.degrees(high)}`
    )
  )
  if (recoat.close !== null)
    out.push(fact('Next resin bonds from', `${aboutTime(recoat.open)} to ${roughTime(recoat.close)}`))
  return out
}

// Parts cast into it, and whether the front shows them.
function partFacts(work: Work, pour: number): RunFact[] {
  return work.partsSeen
    .filter(p => p.pour === pour)
    .map(({ hardware, seen }) =>
      fact(
        `${capital(work.entries.hardware[hardware]!.id)} from the front`,
        `shows: ${seen.shows}`,
        `difference ${decimals(seen.difference, 1, 1)}`
      )
    )
}

// From what depth it hides, where it is to; else how much light a tint lets through.
function tintFacts({ hiding, kind }: Plan['pours'][number], L: Lengths): RunFact[] {
  if (kind === 'seal') return []
  if (hiding.meant && hiding.depth !== null) {
    const { centralMm, lowMm, highMm } = hiding.depth
    const known = hiding.tested ? 'by your card' : 'a hiding card says it more sharply'
    return [
      fact(
        'Hides from',
        L.of(centralMm, 1, 1),
        `${L.unit}; between ${L.of(lowMm, 1)} and ${L.of(highMm, 1)}, ${known}`
      )
    ]
  }
  return hiding.light > 0.99
    ? []
    : [fact('Lets through', `${decimals(100 * hiding.light, 0)} %`, 'of the light')]
}

/** Width of the curves on the run sheet, mm. */
const COURSE_MM = 118

function courseOf(plan: Plan, index: number, L: Lengths): Pick<RunDetail, 'course' | 'windows'> {
  const { cast, id } = plan.pours[index]!
  const rows = rowsOf(plan, index)
  if (cast === null || rows.length === 0) return { course: null, windows: null }
  return {
    course: {
      sheet: curveSheet(cast, { widthMm: COURSE_MM, rows, shown: L.shown }),
      words: curveWords(cast, id, rows, L.shown)
    },
    windows: {
      title: 'When, since it was poured; and what would say it more sharply',
      head: ['What', 'Likeliest', 'Within the band', 'Sharper by'],
      rows: rows.map(r => [r.label, r.says, r.band === '' ? '–' : r.band, r.sharper])
    }
  }
}

// Colours poured into each other: each with its share of every batch.
function marblingTable(work: Work, index: number, amounts: RunAmounts | null): RunTable | null {
  const { marbling } = work.piece.pours[index]!
  if (marbling === undefined || amounts === null) return null
  const { resolution } = work.shop.scale
  const batchG = amounts.mixedG / amounts.batches
  return {
    title: 'Colours, of each batch',
    head: ['Colour', 'Mix', 'Pigment'],
    rows: marbling.map((m, k) => {
      const ownG = (batchG * m.share) / 100
      const tint = tintOf(m.tint)
      return [
        String(k + 1),
        `${scaleWords(weighed(ownG, resolution), amounts.places)} g`,
        tint.length === 0
          ? 'none'
          : tint
              .map(
                t => `${t.pigment.name} ${scaleWords(weighed(ownG * t.share, resolution), amounts.places)} g`
              )
              .join(', ')
      ]
    })
  }
}

/** Stones that are set: what they weigh and where they go. */
export function stonesDetail(plan: Plan, work: Work, i: number): RunDetail {
  const L = lengthsOf(work.shop)
  const { index, value } = work.steps[i]!.pour!
  const pour = plan.pours[index]!.stack
  const records = work.materials.stones[index]!
  const each = pour.stonesMl / Math.max(1, value.stones.length)
  return detail({
    does: value.stones.map((s, j) => {
      const placed =
        s.placed !== undefined
          ? `Set ${s.placed.length} ×`
          : s.all === undefined
            ? 'Fill the zone with'
            : 'Fill the whole pour with'
      const when = s.set === 'on the tacky layer' ? 'on the layer below while it is tacky' : s.set
      const heated = s.heated === undefined ? '' : `, heated once to ${L.degrees(s.heated)} ${L.degree}`
      return `${placed} ${records[j]!.name}: washed and dry${heated}${s.sealed ? ', sealed all over' : ''}, ${when}.`
    }),
    facts: [
      fact('Stones in all', formatMass(records.reduce((sum, r) => sum + (each * r.densityKgM3) / 1000, 0))),
      fact('Rest on', L.of(pour.floor, 1, 1), `${L.unit} over the mould base`),
      fact('Covered at', L.of(pour.liquidLevel, 1, 1), `${L.unit} over the mould base`)
    ]
  })
}
