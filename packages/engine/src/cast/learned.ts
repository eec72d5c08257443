import { decimals, formatMinutes } from '../quantity/format.ts'
import type { ResinResult } from '../resin/column-result.ts'
import { activityFrom, LEAST_FACTOR, MOST_FACTOR } from './activity.ts'
import type { CastInput } from './bed.ts'
import type { PourSigns } from './pour-signs.ts'

/** What readings taught of a resin's activity in one pour. Plain data. */
export interface Learned {
  /** Times the speed that the resin was taken to have. */
  readonly factor: number
  readonly band: readonly [number, number]
  /** Band of times that is left: times × (1 ± this). */
  readonly timeBand: number
  /** Signs it rests on; none where it was taken over from an earlier pour of the same resin. */
  readonly signs: readonly string[]
  /** In one sentence. */
  readonly says: string
  /** Readings that could not be used, each with the reason. */
  readonly unused: readonly string[]
  /** What the signs that do not go together say; null when they do. */
  readonly disagree: string | null
}

/** What is known of a resin before a pour of it: from its class, or from its pours before. */
export interface Prior {
  readonly factor: number
  readonly timeBand: number
}

/** Batches of one resin differ by this in speed: ratio by the scale, stirring, age (practice, no source). */
const BATCH_DOUBT = 0.05

/** The learned state of a pour without signs of its own: what pours of the same resin before it taught. */
export function takenOver(prior: Prior, unused: readonly string[]): Learned {
  return {
    factor: prior.factor,
    band: [prior.factor * (1 - prior.timeBand), prior.factor * (1 + prior.timeBand)],
    timeBand: prior.timeBand,
    signs: [],
    says:
      prior.factor === 1
        ? 'nothing learned from its readings'
        : `taken ${paceWords(prior.factor)}, as the pour of this resin before it read`,
    unused,
    disagree: null
  }
}

/** Learns a pour's activity from its signs. `run` is the pour at a factor on the speed that was taken. */
export function learn(
  input: CastInput,
  index: number,
  signs: PourSigns,
  prior: Prior,
  run: (factor: number) => ResinResult
): Learned {
  if (signs.signs.length === 0) return takenOver(prior, signs.unused)
  const { record } = input.choices[index]!
  const found = activityFrom(signs.signs, prior, record.model!.kinetics, run)
  const { factor, band, timeBand, odd, alone } = found
  const strange = factor < LEAST_FACTOR * 1.05 || factor > MOST_FACTOR / 1.05
  return {
    factor,
    band,
    timeBand,
    signs: signs.words,
    says: `it cures ${paceWords(factor)} (${decimals(band[0], 2)} to ${decimals(band[1], 2)} times), by ${signs.words.join(', ')}`,
    unused: signs.unused,
    disagree: strange
      ? `${signs.words.join(', ')}: no resin of this class is so ${factor > 1 ? 'fast' : 'slow'}; a moment is wrong, or the class`
      : odd.length === 0
        ? null
        : `${signs.words.map((w, i) => (alone[i] === null ? w : `${w} (${decimals(alone[i]!, 2)} times the rate)`)).join(', ')}: they do not go together; ${odd.map(i => signs.words[i]).join(' and ')} ${odd.length === 1 ? 'stands' : 'stand'} apart`
  }
}

/** What a pour leaves for the next of the same resin. */
export function priorAfter(learned: Learned): Prior {
  return { factor: learned.factor, timeBand: Math.hypot(learned.timeBand, BATCH_DOUBT) }
}

/** Minutes as the words of a sign say them. */
export const spokenMinutes = formatMinutes

function paceWords(factor: number): string {
  const percent = Math.round(Math.abs(factor - 1) * 100)
  if (percent < 3) return 'at the speed it was taken for'
  return `${percent} % ${factor > 1 ? 'faster' : 'slower'} than taken`
}
