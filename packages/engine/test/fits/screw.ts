import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'

/** EN 1995-1-1 10.4.5, pilot of the threaded part, 0.7·d (memory), worked by hand, mm. */
export const EUROCODE: readonly (readonly [diameterMm: number, pilotMm: number])[] = [
  [3, 2.1],
  [3.5, 2.45],
  [4, 2.8],
  [4.5, 3.15],
  [5, 3.5],
  [6, 4.2]
]

/** Middle of the pilot of a wood screw in a species, away from the end of the board, mm. */
export function screwIn(species: string, diameterMm: number): number {
  const kind = `wood-screw-${String(diameterMm).replace('.', '-')}`
  const { fits } = worked({
    piece: {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, species })),
      cuts: [{ id: 'hole', kind: 'bore', face: 'back', shape: { circle: 3, at: [100, 0] }, depth: 10 }],
      hardware: [{ id: 'screw', kind, in: 'hole' }]
    }
  })
  const { lowMm, highMm } = fits[0]!.pilot!
  return (lowMm + highMm) / 2
}
