/** A temperature read at the middle of a cup of mixed resin. */
export interface CupReading {
  /** Minutes since the two parts were brought together. */
  readonly timeMin: number
  readonly tempC: number
}

/**
 * A cup test: one batch left in its cup with a thermometer in the middle.
 *
 * Readings stand in order of time, 3 at least. What was not observed is null: a test that began late, has a
 * gap or ended before the peak is a test too, only with wider bands.
 */
export interface CupTest {
  readonly massG: number
  /** Inner diameter of the cup, mm. */
  readonly diameterMm: number
  readonly roomC: number
  /** Temperature of the mix at the start; null: the first reading if it is early, else the room. */
  readonly startC: number | null
  readonly readings: readonly CupReading[]
  /** When a stick drawn from it began to pull strings, as syrup does, min. */
  readonly stringsMin: number | null
  /** When nothing clung to the stick in the middle any more, min. */
  readonly gelledMin: number | null
}

/** Fewest readings that say anything of a course: a level, a slope and one to check them. */
export const LEAST_READINGS = 3
