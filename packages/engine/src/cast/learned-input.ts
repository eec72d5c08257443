import type { CastInput } from './bed.ts'
import type { Learned } from './learned.ts'

/** The cast's input with one pour's resin as its readings left it: its speed, and the band of its times. */
export function withLearned<T extends Pick<CastInput, 'speeds' | 'choices'>>(
  input: T,
  index: number,
  learned: (Pick<Learned, 'factor'> & Partial<Pick<Learned, 'timeBand'>>) | null
): T {
  if (learned === null) return input
  const { factor, timeBand } = learned
  return {
    ...input,
    speeds: input.speeds.map((s, i) => (i === index ? { ...s, factor: s.factor * factor } : s)),
    choices: input.choices.map((c, i) =>
      i === index && timeBand !== undefined
        ? { ...c, record: { ...c.record, band: { ...c.record.band, time: timeBand } } }
        : c
    )
  }
}

/** The same for every pour: what batches and findings go by afterwards. */
export function afterReadings(
  input: Pick<CastInput, 'speeds' | 'choices'>,
  casts: readonly ({ readonly learned: Learned | null } | null)[]
): Pick<CastInput, 'speeds' | 'choices'> {
  return casts.reduce<Pick<CastInput, 'speeds' | 'choices'>>(
    (all, cast, i) => (cast?.learned ? withLearned(all, i, cast.learned) : all),
    input
  )
}
