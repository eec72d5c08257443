import type { TintPigment } from '../cast/facts.ts'
import type { ResinChoice } from '../piece/resin-choice.ts'
import type { Work } from './work.ts'

/** A mix with pigments in it: a pour, a colour of a marbled one, the filling of a marking. */
export interface Tinted {
  /** What a maker calls it. */
  readonly id: string
  /** JSON Pointer of the list of pigments. */
  readonly at: string
  readonly tint: readonly TintPigment[]
  readonly resin: ResinChoice
}

/** Every tinted mix of a piece. */
export function tintedOf({ entries, materials }: Work): Tinted[] {
  return [
    ...entries.pours.flatMap(({ id, at, index, value }): Tinted[] => [
      { id, at: `${at}/tint`, tint: materials.tints[index]!, resin: materials.resins[index]! },
      ...(value.marbling ?? []).map(
        (_, j): Tinted => ({
          id: `colour ${j + 1} of ${id}`,
          at: `${at}/marbling/${j}/tint`,
          tint: materials.marblingTints[index]![j]!,
          resin: materials.resins[index]!
        })
      )
    ]),
    ...entries.markings.map(
      ({ id, at, index }): Tinted => ({
        id: `the filling of ${id}`,
        at: `${at}/filled`,
        tint: materials.markingTints[index]!,
        resin: materials.markingResins[index]!
      })
    )
  ].filter(t => t.tint.length > 0)
}
