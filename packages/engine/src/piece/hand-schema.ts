import { z } from 'zod'
import { length, mass, size, yesNo } from './field.ts'

/** What stands ready to cut by hand. Everything has a default: the usual sizes of the trade. */
export const handField = z
  .strictObject({
    bushes: z
      .array(size('outer diameter of a guide bush', 80))
      .max(20)
      .default([17, 24, 30])
      .meta({
        description: 'guide bushes of the router, outer diameters; measure yours',
        sample: [[17, 24]]
      }),
    bits: z
      .array(
        z.strictObject({
          diameter: size('diameter', 100),
          length: size('length of its edges', 200),
          shank: size('diameter of the shank', 30).default(8),
          reach: size(
            'how far its tip comes below the foot of the router; left out: 10 mm more than its edges',
            250
          ).optional()
        })
      )
      .max(60)
      .default([])
      .meta({
        description: 'straight bits of the router; left out: those of the catalogue',
        sample: [[{ diameter: 8, length: 20 }]]
      }),
    bearings: z
      .array(z.strictObject({ diameter: size('diameter', 100), length: size('length of its edges', 200) }))
      .max(40)
      .default([])
      .meta({
        description:
          'straight bits with a bearing of their own diameter on the shank; left out: those of the catalogue',
        sample: [[{ diameter: 16, length: 25 }]]
      }),
    template: size('thickness of the board that templates are made of', 60).default(9),
    routerBase: size('diameter of the foot of the router', 500).default(160),
    routerMass: mass('the router', 200, 20_000).default(4000),
    sled: z
      .strictObject({
        bit: size('diameter of the flattening cutter', 120).default(32),
        rails: size('length of the rails; left out: as long as is needed').optional(),
        span: size('greatest span of the carriage; left out: as wide as is needed').optional(),
        strips: length('how far the rails stand above the work', 0, 200).default(6),
        beamThickness: size('thickness of each of the two beams of the carriage', 100).default(18),
        beamHeight: size('height of each of them', 300).default(60)
      })
      .prefault({})
      .meta({ description: 'the sled the router flattens on', sample: [{ bit: 32, rails: 1200 }] }),
    saw: z
      .strictObject({
        kerf: size('width of its cut', 10).default(3),
        leave: length('what is left outside the line for the plane', 0, 20).default(0.5)
      })
      .prefault({})
      .meta({ description: 'the saw', sample: [{ kerf: 2.4 }] }),
    drill: z
      .array(size('diameter of a bit', 150))
      .max(200)
      .default([])
      .meta({
        description: 'bits of the drill; left out: those among the cutters, else those of the catalogue',
        sample: [[3, 6, 9, 25]]
      }),
    press: yesNo('a drill press or a stand: holes come out square').default(false)
  })
  .prefault({})
  .meta({ description: 'what stands ready to cut by hand', sample: [{ bushes: [17, 24, 30] }] })
