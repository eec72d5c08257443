import type {
  ICalTemporalInstantStub,
  ICalTemporalPlainDateStub,
  ICalTemporalPlainDateTimeStub,
  ICalTemporalZonedDateTimeStub
} from 'ical-generator'
import type { ZoneClock } from '../quantity/zone-clock.ts'

/**
 * A moment as the clock of a zone shows it, to the whole minute, in the shape of Temporal (ECMA-262 proposal) that
 * ical-generator takes: it writes a Date by the clock of the machine it runs on.
 */
export class WallTime implements ICalTemporalZonedDateTimeStub, ICalTemporalPlainDateTimeStub {
  readonly year: number
  readonly month: number
  readonly day: number
  readonly hour: number
  readonly minute: number
  readonly second = 0
  readonly timeZoneId: string
  readonly #ms: number

  constructor(clock: ZoneClock, ms: number) {
    const { year, month, day, minute } = clock.shown(ms)
    this.year = year
    this.month = month
    this.day = day
    this.hour = Math.floor(minute / 60)
    this.minute = Math.floor(minute % 60)
    this.timeZoneId = clock.zone
    this.#ms = ms
  }
  toInstant(): ICalTemporalInstantStub {
    return {
      epochMilliseconds: this.#ms,
      toJSON: () => new Date(this.#ms).toJSON(),
      toZonedDateTimeISO: () => this
    }
  }
  // It keeps its zone: the file names no other.
  withTimeZone(): this {
    return this
  }
  toZonedDateTime(): this {
    return this
  }
  toPlainDateTime(): ICalTemporalPlainDateTimeStub {
    const { year, month, day, hour, minute, second } = this
    return {
      year,
      month,
      day,
      hour,
      minute,
      second,
      toPlainDate: () => this.toPlainDate(),
      toZonedDateTime: () => this,
      toJSON: () => this.toJSON()
    }
  }
  toPlainDate(): ICalTemporalPlainDateStub {
    const { year, month, day } = this
    return { year, month, day, toJSON: () => this.toJSON() }
  }
  toJSON(): string {
    return new Date(this.#ms).toJSON()
  }
}
