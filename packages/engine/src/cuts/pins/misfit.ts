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
  const play = (x: number, y: number) =>
    offMm(pins, Math.hypot(x - first[0], y - first[1]), Math.hypot(x - second[0], y - second[1]))
  let [worst, x, y] = [Number.NEGATIVE_INFINITY, 0, 0]
  for (const ring of outline.rings)
    for (let k = 0; k < ring.length; k += 2) {
      const mm = play(ring[k]!, ring[k + 1]!)
      if (mm > worst) [worst, x, y] = [mm, ring[k]!, ring[k + 1]!]
    }
  // What moves is reckoned along and across the line of the pins, to the same place.
  const along = growthMm(moving, first, [x, first[1]])
  const across = growthMm(moving, first, [first[0], y])
  const moisture: Band = [
    Math.hypot(along[0], across[0]),
    Math.hypot(along[1], across[1]),
    Math.hypot(along[2], across[2])
  ]
  const machine = 2 * machineErrorMm
  return {
    turnDeg: (turnRad(pins) * 180) / Math.PI,
    playMm: worst,
    machineMm: machine,
    moistureMm: moisture,
    mm: [moisture[0], Math.hypot(worst, machine) + moisture[1], worst + machine + moisture[2]],
    x,
    y,
    pitchMm: growthMm(moving, first, second),
    pitchTakenMm: pitchTakenMm(pins)
  }
}
