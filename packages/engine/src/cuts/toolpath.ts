/**
 * One move of the tip of the cutter, to a place in the coordinates of the setting: x, y, z in mm, z up, 0 where the
 * setting's zero lies. An arc runs in the x-y plane about (cx, cy), rising evenly to z; ending where it starts it is a
 * full turn.
 */
export type Move =
  | { readonly kind: 'rapid'; readonly x: number; readonly y: number; readonly z: number }
  | {
      readonly kind: 'line'
      readonly x: number
      readonly y: number
      readonly z: number
      readonly feedMmMin: number
    }
  | {
      readonly kind: 'arc'
      readonly x: number
      readonly y: number
      readonly z: number
      readonly cx: number
      readonly cy: number
      readonly clockwise: boolean
      readonly feedMmMin: number
    }
  | { readonly kind: 'dwell'; readonly seconds: number }

/** A place at which work can begin anew after a stop: the cutter is up, the next moves enter the work safely. */
export interface Pass {
  /** "pass 2 of 4, 3.0 deep" */
  readonly name: string
  /** The first move of it, by index. */
  readonly from: number
}

/** What one cutter does from safe height to safe height. It starts and ends above the work at the clearance height. */
export interface Toolpath {
  readonly moves: readonly Move[]
  readonly passes: readonly Pass[]
}

/** Writes moves one after another. It starts nowhere: the first move must be a rapid at the clearance height. */
export class PathPen {
  readonly moves: Move[] = []
  readonly passes: Pass[] = []
  x = Number.NaN
  y = Number.NaN
  z = Number.NaN
  readonly clearMm: number

  /** @param clearMm height, in the coordinates of the setting, at which the cutter crosses the work */
  constructor(clearMm: number) {
    this.clearMm = clearMm
  }

  /** Lifts to the clearance height if it is not there, and crosses to x, y. */
  over(x: number, y: number): void {
    this.lift()
    if (x === this.x && y === this.y) return
    this.push({ kind: 'rapid', x, y, z: this.clearMm })
  }

  lift(): void {
    if (Number.isNaN(this.x) || this.z >= this.clearMm) return
    this.push({ kind: 'rapid', x: this.x, y: this.y, z: this.clearMm })
  }

  /** Down at rapid speed to a height that is known to be free, above the work. */
  down(z: number): void {
    if (z < this.z) this.push({ kind: 'rapid', x: this.x, y: this.y, z })
  }

  line(x: number, y: number, z: number, feedMmMin: number): void {
    if (x === this.x && y === this.y && z === this.z) return
    this.push({ kind: 'line', x, y, z, feedMmMin })
  }

  arc(x: number, y: number, z: number, cx: number, cy: number, clockwise: boolean, feedMmMin: number): void {
    this.push({ kind: 'arc', x, y, z, cx, cy, clockwise, feedMmMin })
  }

  dwell(seconds: number): void {
    this.moves.push({ kind: 'dwell', seconds })
  }

  /** From here on: a pass that can be begun anew. Lifts first. One in which nothing was done is none. */
  pass(name: string): void {
    this.lift()
    if (this.passes.at(-1)?.from === this.moves.length) this.passes.pop()
    this.passes.push({ name, from: this.moves.length })
  }

  done(): Toolpath {
    this.lift()
    return { moves: this.moves, passes: this.passes }
  }

  private push(move: Exclude<Move, { kind: 'dwell' }>): void {
    this.moves.push(move)
    this.x = move.x
    this.y = move.y
    this.z = move.z
  }
}
