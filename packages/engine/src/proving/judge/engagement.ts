import type { Tally } from '../sweep/tally.ts'

/**
 * How much a cutter takes: volume over way and over time, looked at over at least the radius of the cutter (and 1 mm),
 * so that a single short move says nothing.
 *
 *   mm³ a minute = Σ volume / Σ (way / feed)          mm² = Σ volume / Σ way
 *
 * Limits: the feed is taken as written; machines are slower in corners. Check: a slot by hand (judge.test.ts).
 */
export class Engagement {
  /** Most taken, mm³ a minute and mm² of cross-section, and the line of the first. */
  readonly peak = { mm3Min: 0, mm2: 0, line: 0 }
  private readonly mostMm3Min: number
  private readonly over: Tally
  private long = 0
  private minutes = 0
  private volume = 0

  /** @param mostMm3Min null: no limit; @param over is told of what is past it */
  constructor(mostMm3Min: number | null, over: Tally) {
    this.mostMm3Min = mostMm3Min ?? Number.POSITIVE_INFINITY
    this.over = over
  }

  /** A move on the plan of some length, mm, and what it took, mm³. It starts at x, y, z. */
  add(
    volume: number,
    way: number,
    feed: number,
    radius: number,
    line: number,
    x: number,
    y: number,
    z: number
  ): void {
    this.long += way
    this.minutes += way / feed
    this.volume += volume
    if (this.long < Math.max(1, radius)) return
    const mm3Min = this.volume / this.minutes
    const mm2 = this.volume / this.long
    if (mm3Min > this.peak.mm3Min) {
      this.peak.mm3Min = mm3Min
      this.peak.line = line
    }
    if (mm2 > this.peak.mm2) this.peak.mm2 = mm2
    if (mm3Min > this.mostMm3Min) this.over.add(line, mm3Min, x, y, z)
    this.long = 0
    this.minutes = 0
    this.volume = 0
  }
}
