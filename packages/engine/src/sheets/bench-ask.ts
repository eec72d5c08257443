import { mixLots } from '../cost/mix-lots.ts'
import type { Work } from '../findings/work.ts'
import { MOST_LOT } from '../piece/reading-schema.ts'
import type { Plan } from '../plan.ts'

/** A reading the bench asks for: what is pressed, the record it makes, and the number it takes, if any. */
export interface BenchAsk {
  readonly says: string
  /** All of the record but its id, its moment and its number. */
  readonly record: Readonly<Record<string, unknown>>
  readonly number: { readonly field: string; readonly unit: string; readonly planned: number | null } | null
  /** Words it takes beside the number, if any: what is offered for them, and what stood in the one before. */
  readonly words: {
    readonly field: string
    readonly says: string
    readonly most: number
    readonly offered: readonly string[]
    readonly before: string
  } | null
  /** Worth a large button of its own: what sharpens the windows that follow. */
  readonly large: boolean
}

const press = (says: string, record: BenchAsk['record']): BenchAsk => ({
  says,
  record,
  number: null,
  words: null,
  large: true
})

const typed = (
  says: string,
  record: BenchAsk['record'],
  [field, unit, planned]: readonly [string, string, number | null],
  large = false
): BenchAsk => ({ says, record, number: { field, unit, planned }, words: null, large })

/** What may be read at step `i`: the most telling first; then what may be read at any time. */
export function benchAsks(plan: Plan, work: Work, i: number): BenchAsk[] {
  return [...stepAsks(plan, work, i), ...anyTime(work, i)]
}

function stepAsks(plan: Plan, work: Work, i: number): BenchAsk[] {
  const step = work.steps[i]!
  switch (step.kind) {
    case 'make mould':
      return [typed('Water test: lost in an hour', { kind: 'water test', over: 60 }, ['lost', 'g', 0])]
    case 'prepare timber': {
      const { id, index } = step.timber!
      const planned = work.seasons[index]!.moisturePct
      return [
        typed('Moisture', { kind: 'moisture', timber: id }, ['moisture', '%', tenths(planned)], true),
        typed('Weight', { kind: 'weight', timber: id }, ['mass', 'g', null])
      ]
    }
    case 'pour': {
      const { id, index } = step.pour!
      const batch = work.rounds[index]?.batches
      const pour = work.stack.pours[index]!
      const mixed = batch === undefined || batch === null ? null : Math.round(batch.mixedG)
      const level = work.piece.pours[index]!.kind === 'cast' ? tenths(pour.level) : null
      return [
        {
          ...typed('Mixing now', { kind: 'mixed', pour: id }, ['mass', 'g', mixed], true),
          words: lotAsked(work, index)
        },
        typed('Poured', { kind: 'poured', pour: id }, ['mass', 'g', mixed], true),
        ...(level === null
          ? []
          : [typed('Level over the mould base', { kind: 'height', pour: id }, ['height', 'mm', level], true)])
      ]
    }
    case 'wait':
    case 'set stones': {
      const id = pourBefore(work, i)
      if (id === null) return []
      return [
        press('It strings now', { kind: 'stage', pour: id, stage: 'strings' }),
        press('Tacky: print, no smear', { kind: 'stage', pour: id, stage: 'tacky' }),
        press('Gelled: nothing clings', { kind: 'stage', pour: id, stage: 'gelled' }),
        press('Hard', { kind: 'stage', pour: id, stage: 'hard' })
      ]
    }
    case 'demould':
      return [press('Out of the mould', { kind: 'demoulded' })]
    case 'flatten': {
      const face = step.face === 'back' ? 'back' : 'front'
      const after = plan.steps[i + 1] ?? plan.steps[i]!
      const thick = tenths(after.highZ - after.lowZ)
      return [
        typed('Thickness', { kind: 'thickness' }, ['thickness', 'mm', thick], true),
        typed('Out of flat, greatest', { kind: 'flatness', face }, ['out', 'mm', 0])
      ]
    }
    case 'cut':
      return step.cut === undefined
        ? []
        : [typed('Across it', { kind: 'size', cut: step.cut.id }, ['across', 'mm', null])]
    case 'coat': {
      const face = step.face === 'back' ? 'back' : 'front'
      return [typed('Dry film', { kind: 'film', face }, ['film', 'mm', null])]
    }
    default:
      return []
  }
}

// The lot is given once: of the same resin it comes up again, and what the shelf holds of it is offered.
function lotAsked(work: Work, pour: number): BenchAsk['words'] {
  const { readings, needs, shop, piece, entries } = work
  const alike = new Set(
    entries.pours.flatMap(e => (e.value.resin === piece.pours[pour]!.resin ? [e.id] : []))
  )
  const before = readings.flatMap(r => (r.kind === 'mixed' && alike.has(r.pour) ? [r.lot ?? ''] : []))
  return {
    field: 'lot',
    says: 'Lot of resin and hardener',
    most: MOST_LOT,
    offered: mixLots(needs, shop, { pour })?.offered ?? [],
    before: before.at(-1) ?? ''
  }
}

function anyTime(work: Work, i: number): BenchAsk[] {
  const pour = pourBefore(work, i + 1)
  return [
    typed(
      pour === null ? 'Temperature of the room' : `Temperature of ${pour}`,
      { kind: 'temperature', ...(pour === null ? {} : { pour }) },
      ['temperature', '°C', null]
    ),
    typed('Humidity of the room', { kind: 'humidity' }, ['humidity', '%', null])
  ]
}

/** The pour that was made last before step `i`. */
function pourBefore(work: Work, i: number): string | null {
  return work.steps.slice(0, i).findLast(s => s.kind === 'pour')?.pour?.id ?? null
}

function tenths(x: number): number {
  return Math.round(x * 10) / 10
}
