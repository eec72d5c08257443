import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { chance as chanceOf } from '../stack/random.ts'

/**
 * Seeded pieces as a careful maker would draw them: dry timber of the catalogue, pours no deeper than their
 * class takes, cover and floor kept, faces finished alike. Nothing in them is worth a stop.
 * What they vary: size, species, how many pours, tint, cuts from either face, stones, markings, coats, how many.
 */
export function soundPiece(seed: number): PieceDocument {
  const { span, pick, is: chance } = chanceOf(seed)
  const between = (a: number, b: number, step = 1) =>
    Number((Math.round(span(a, b) / step) * step).toFixed(3))

  const width = between(220, 640, 2)
  const height = between(160, 360, 2)
  const river = between(50, Math.min(160, width / 3), 2)
  const thickness = between(18, 34)
  const opaque = chance(0.5)
  // The moulds of the plan stand 9 mm from the outline; timber keeps 3 mm from their walls.
  const reach = { x: width / 2 + 6, y: height / 2 + 6 }
  const plank = reach.x - river / 2
  const species = pick([
    'ash-white',
    'walnut-black',
    'oak-european',
    'beech-european',
    'cherry-black',
    'maple-sugar'
  ])
  const timber = (id: string, side: -1 | 1) => ({
    id,
    species,
    outline: {
      rectangle: [plank, 2 * reach.y] as [number, number],
      at: [side * (river / 2 + plank / 2), 0] as [number, number]
    },
    thickness,
    moisture: between(7.5, 9, 0.1),
    rings: pick(['flat', 'rift', 'quarter'] as const),
    // Grain across the piece: the river lies along it.
    grain: 90,
    held: pick(['screws', 'weights', 'tape'] as const)
  })

  const tint = opaque
    ? [{ pigment: pick(['white-paste', 'black-paste']), percent: 4 }]
    : [{ pigment: pick(['blue-tint', 'green-tint']), percent: 0.01 }]
  const layers = Math.ceil(thickness / 18)
  const pours: NonNullable<PieceDocument['pours']> = Array.from({ length: layers }, (_, i) => ({
    id: `pour ${i + 1}`,
    resin: 'deep',
    ...(i < layers - 1 ? { depth: Math.round(thickness / layers) } : { fill: 'timber' as const }),
    tint,
    ...(opaque ? { opaque: true } : {})
  }))
  if (layers > 1 && chance(0.3))
    pours[1]!.stones = [
      {
        kind: 'river-gravel',
        placed: [
          {
            at: [0, between(-height / 4, height / 4)] as [number, number],
            size: [14, 10, 5] as [number, number, number]
          }
        ]
      }
    ]

  const cuts: NonNullable<PieceDocument['cuts']> = []
  const markings: NonNullable<PieceDocument['markings']> = []
  if (chance(0.6))
    cuts.push({
      id: 'back pocket',
      face: 'back',
      shape: {
        rectangle: [between(24, plank / 2), between(20, 60)],
        corner: 4,
        at: [-(river / 2 + plank / 2), 0]
      },
      finishedDepth: between(3, thickness - 10, 0.5)
    })
  if (opaque && chance(0.5))
    cuts.push({
      id: 'channel',
      kind: 'groove',
      face: 'back',
      along: {
        points: [
          [0, -height / 3],
          [0, height / 3]
        ]
      },
      width: 8,
      finishedDepth: between(2, 4, 0.5)
    })
  if (chance(0.4))
    markings.push({
      id: 'scale',
      linear: {
        from: [river / 2 + 12, -height / 3],
        to: [river / 2 + 12, height / 3],
        length: 8,
        at: [0, 0.25, 0.5, 0.75, 1]
      },
      width: between(1, 1.8, 0.1),
      sandedAfter: 0.3,
      filled: [{ pigment: 'black-paste', percent: 3 }]
    })

  return {
    castwright: 1,
    name: `sound piece ${seed}`,
    outline: { rectangle: [width, height], corner: between(0, 12) },
    mould: { margin: 9, bearers: 250 },
    flatten: { back: 1, front: 1 },
    ...(chance(0.3) ? { quantity: { pieces: between(2, 8), loss: 5, certainty: 90 } } : {}),
    timbers: [timber('left', -1), timber('right', 1)],
    pours,
    cuts,
    markings,
    finish: { both: { coat: pick(['hardwax-oil', 'oil-varnish', 'water-lacquer']) } },
    climate: 'heated-room'
  }
}
