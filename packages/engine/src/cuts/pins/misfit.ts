import type { Region } from '../../shape/region.ts'
import type { Band, Moving } from './growth.ts'
import { growthMm } from './growth.ts'
import type { TwoPins } from './two-pins.ts'
import { offMm, pitchTakenMm, turnRad } from './two-pins.ts'

/**
 * How far what is cut from the second face may miss what was cut from the first, at the farthest place of the piece.
 *
 *   play       the piece shifts and turns on its pins (two-pins.ts); drilled in place, it lies true in the first setting
 *   machine    the line of the pins is off by what the machine repeats to: 2·e (machining.md B7)
 *   moisture   timber moves between the settings, reckoned from the first pin
 *
 *   central = √(play² + machine²) + moisture      high = play + machine + high moisture      low = low moisture
 *
 * Source: derived; independent shares are added by their squares (JCGM 100:2008, 5.1.2; memory), what is known to
 * come in one sense is added as it is.
 *
 * Limits: greatest play, not the likeliest; squareness and bow of the bed are not in it.
 */
export interface Misfit {
  readonly turnDeg: number
  readonly playMm: number
  readonly machineMm: number
  readonly moistureMm: Band
  readonly mm: Band
  /** Place of the piece where it is greatest. */
  readonly x: number
  readonly y: number
  /** How the distance of the holes changes between the settings, and how much play takes, mm. */
  readonly pitchMm: Band
  readonly pitchTakenMm: number
}

type Place = readonly [x: number, y: number]

export function misfitOf(
  outline: Region,
  [first, second]: readonly [Place, Place],
  pins: TwoPins,
  machineErrorMm: number,
  moving: readonly Moving[]
): Misfit {
  const [dx, dy] = [second[0] - first[0], second[1] - first[1]]
  const long = Math.max(1e-9, Math.hypot(dx, dy))
  const play = (x: number, y: number) => {
    const [px, py] = [x - first[0], y - first[1]]
    return offMm(pins, (px * dx + py * dy) / long, (py * dx - px * dy) / long)
  }
  // What moves is reckoned along and across the line of the pins, to the same place.
  const moisture = (x: number, y: number): Band => {
    const along = growthMm(moving, first, [x, first[1]])
    const across = growthMm(moving, first, [first[0], y])
    return [0, 1, 2].map(k => Math.hypot(along[k]!, across[k]!)) as unknown as Band
  }
  const machine = 2 * machineErrorMm
  const all = outermost(outline).map(([x, y]) => {
    const [playMm, moistureMm] = [play(x, y), moisture(x, y)]
    const mm: Band = [
      moistureMm[0],
      Math.hypot(playMm, machine) + moistureMm[1],
      playMm + machine + moistureMm[2]
    ]
    return { x, y, playMm, moistureMm, mm }
  })
  const worst = all.reduce((a, b) => (b.mm[1] > a.mm[1] + 1e-12 ? b : a))
  return {
    ...worst,
    turnDeg: (turnRad(pins) * 180) / Math.PI,
    machineMm: machine,
    pitchMm: growthMm(moving, first, second),
    pitchTakenMm: pitchTakenMm(pins)
  }
}

/** Directions in which the outermost places are looked for: the share of play is convex, so it is greatest there. */
const DIRECTIONS = 16

function outermost(outline: Region): Place[] {
  const out: Place[] = []
  for (let k = 0; k < DIRECTIONS; k++) {
    const a = (2 * Math.PI * (k + 0.5)) / DIRECTIONS
    let [most, x, y] = [Number.NEGATIVE_INFINITY, 0, 0]
    for (const ring of outline.rings)
      for (let i = 0; i < ring.length; i += 2) {
        const reach = ring[i]! * Math.cos(a) + ring[i + 1]! * Math.sin(a)
        if (reach > most) [most, x, y] = [reach, ring[i]!, ring[i + 1]!]
      }
    if (!out.some(p => p[0] === x && p[1] === y)) out.push([x, y])
  }
  return out
}
