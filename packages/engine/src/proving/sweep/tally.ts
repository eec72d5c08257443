/** Ranges of lines kept of one kind of report; all are counted. */
const KEPT = 50

/** One kind of thing that happened: in which lines, how often, and where it was worst. Adding allocates next to nothing. */
export class Tally {
  /** Moves in which it happened, as far as they follow one another. */
  count = 0
  /** Times it was seen: places times moves. */
  places = 0
  readonly ranges: [from: number, to: number][] = []
  worst = Number.NEGATIVE_INFINITY
  worstLine = 0
  x = Number.NaN
  y = Number.NaN
  z = Number.NaN
  private last = -1

  add(line: number, value: number, x: number, y: number, z: number): void {
    this.places++
    if (value > this.worst) {
      this.worst = value
      this.worstLine = line
      this.x = x
      this.y = y
      this.z = z
    }
    if (line === this.last) return
    this.count++
    const open = this.ranges[this.ranges.length - 1]
    // Lines that follow one another, or nearly, are one range; beyond those kept the last one stays as it is.
    if (open !== undefined && this.last === open[1] && line > open[1] && line <= open[1] + 2) open[1] = line
    else if (this.ranges.length < KEPT) this.ranges.push([line, line])
    this.last = line
  }
}
