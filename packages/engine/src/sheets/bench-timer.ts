import type { Window } from '../cast/window.ts'
import type { Work } from '../findings/work.ts'
import { stepKeys } from '../steps/step-key.ts'

/** A span of time at the bench, ms since 1970; the ends are as soft as the doubt of them. */
export interface BenchTimer {
  readonly says: string
  readonly kind: 'best' | 'until' | 'moment' | 'wait'
  readonly openMs: number
  readonly closeMs: number | null
  /** Earliest and latest that it may open, earliest and latest that it may close; null: it has no doubt, or no end. */
  readonly openBandMs: readonly [number, number] | null
  readonly closeBandMs: readonly [number, number] | null
  readonly basis: string
}

const MIN = 60_000

/** When each pour was made, by what was recorded: poured, else mixed, else begun; null: not yet. */
function pourMoments(work: Work): (number | null)[] {
  const keys = stepKeys(work.steps)
  return work.entries.pours.map(p => {
    const at = (kind: 'poured' | 'mixed') => {
      const own = work.readings.filter(r => r.kind === kind && r.pour === p.id)
      return own.length === 0 ? null : Math.max(...own.map(r => Date.parse(r.at)))
    }
    const k = work.steps.findIndex(s => s.kind === 'pour' && s.pour!.index === p.index)
    const began = work.readings.filter(r => r.kind === 'began' && k >= 0 && r.step === keys[k])
    return at('poured') ?? at('mixed') ?? (began.length === 0 ? null : Date.parse(began.at(-1)!.at))
  })
}

/** When a step was said to be done; null: not yet. */
export function doneMoment(work: Work, key: string): number | null {
  const own = work.readings.filter(r => r.kind === 'done' && r.step === key)
  return own.length === 0 ? null : Date.parse(own.at(-1)!.at)
}

/**
 * The times that matter at step `i`, counted from what was recorded: windows of the pour itself once it is poured, of the
 * pour before it where the next must bond, waits. Empty while what they count from has not happened.
 */
export function benchTimers(work: Work, i: number): BenchTimer[] {
  const step = work.steps[i]!
  const moments = pourMoments(work)
  if (step.kind === 'pour') {
    const { index } = step.pour!
    const own = moments[index] ?? null
    return own === null ? bondTimers(work, i, moments) : ownTimers(work, index, own)
  }
  if (step.kind === 'set stones') return bondTimers(work, i, moments)
  if (step.kind !== 'wait') return []
  if (step.why === 'recoat') return bondTimers(work, i, moments)
  return waitTimers(work, i, moments)
}

function ownTimers(work: Work, pour: number, fromMs: number): BenchTimer[] {
  const cast = work.casts[pour]
  if (!cast) return []
  const { windows: w } = cast
  const { value } = work.entries.pours[pour]!
  const out: BenchTimer[] = [timer('Workable', 'until', { ...w.working, open: 0 }, fromMs)]
  if (value.marbling !== undefined && w.marbling !== null)
    out.push(timer('Draw the colours', 'best', w.marbling, fromMs))
  if (w.stones !== null) out.push(timer('Drop the stones', 'best', w.stones, fromMs))
  for (const [k, at] of w.passes.moments.entries())
    out.push({
      says: `Bubbles, pass ${k + 1} of ${w.passes.moments.length}`,
      kind: 'moment',
      openMs: fromMs + at * MIN,
      closeMs: null,
      openBandMs: null,
      closeBandMs: null,
      basis: w.passes.basis
    })
  return out
}

// The layer before it takes the next by itself within its window.
function bondTimers(work: Work, i: number, moments: readonly (number | null)[]): BenchTimer[] {
  const before = work.steps.slice(0, i).findLast(s => s.kind === 'pour')
  if (before === undefined) return []
  const { index, id } = before.pour!
  const fromMs = moments[index] ?? null
  const cast = work.casts[index]
  if (fromMs === null || !cast) return []
  return [timer(`${id} bonds by itself`, 'best', cast.windows.recoat, fromMs)]
}

function waitTimers(work: Work, i: number, moments: readonly (number | null)[]): BenchTimer[] {
  const step = work.steps[i]!
  const waitMin = work.clock[i]!.waitMin
  const last = work.steps.slice(0, i).findLast(s => s.kind === 'pour')
  const keys = stepKeys(work.steps)
  const before = i === 0 ? null : doneMoment(work, keys[i - 1]!)
  const byPour = step.why === 'demould' || step.why === 'machine'
  const cast = last === undefined ? null : work.casts[last.pour!.index]
  const poured = last === undefined ? null : (moments[last.pour!.index] ?? null)
  if (byPour && cast && poured !== null) {
    const window = step.why === 'demould' ? cast.windows.demould : cast.windows.machine
    return [
      timer(
        step.why === 'demould' ? 'Out of the mould' : 'Hard enough for the cutter',
        'wait',
        window,
        poured
      )
    ]
  }
  if (before === null) return []
  return [
    {
      says: 'Wait over',
      kind: 'wait',
      openMs: before + waitMin * MIN,
      closeMs: null,
      openBandMs: null,
      closeBandMs: null,
      basis: 'counted from the step before'
    }
  ]
}

function timer(says: string, kind: BenchTimer['kind'], w: Window, fromMs: number): BenchTimer {
  const at = (min: number | null) => (min === null ? null : fromMs + min * MIN)
  const span = ([a, b]: readonly [number | null, number | null]) => {
    const [from, to] = [at(a), at(b)]
    return from === null || to === null ? null : ([from, to] as const)
  }
  return {
    says,
    kind,
    openMs: fromMs + w.open * MIN,
    closeMs: at(w.close),
    openBandMs: span(w.openBand),
    closeBandMs: span(w.closeBand),
    basis: w.basis
  }
}
