import { z } from 'zod'
import { choice, length, point, size, yesNo } from './field.ts'

/** Pins that tie both faces to one datum: the piece is turned over onto them. */
export const pinsField = z
  .strictObject({
    at: z
      .array(point('middle of a pin'))
      .min(2)
      .max(6)
      .optional()
      .meta({
        description: 'where they stand, seen from the front; left out: chosen in the waste',
        sample: [
          [
            [-285, 0],
            [285, 0]
          ]
        ]
      }),
    diameter: z
      .union([size('diameter of every pin', 30), z.array(size('diameter', 30)).min(1).max(6)])
      .default([8, 6])
      .meta({ description: 'diameters, pin by pin; the last goes for the rest', sample: [[8, 6]] }),
    depth: length('depth of the holes in the piece and in the bed', 3, 200).default(20),
    about: choice('line it is turned over about: x: left stays left; y: near stays near', [
      'x',
      'y'
    ]).optional(),
    play: length('how much wider the hole is than the pin', 0, 2).default(0.05),
    slot: yesNo(
      'the second hole is a slot in line with the pins; left out: where the pitch moves'
    ).optional(),
    tolerance: length('how far what is cut from both faces may miss', 0.01, 20).default(0.3)
  })
  .meta({
    id: 'pins',
    description: 'pins that tie both faces to one datum',
    sample: [{ diameter: [8, 6] }]
  })
