import { z } from 'zod'
import { dialectField } from './dialect-field.ts'
import { id, length, number, size, span, whole, words, yesNo } from './field.ts'

/** The machine, and what it can take. Defaults are of a small gantry machine: common practice, measure yours. */
export const machineField = z
  .strictObject({
    x: size('travel along x'),
    y: size('travel along y'),
    z: size('travel up and down', 1000).default(80),
    error: length('repeats within', 0.001, 2).default(0.1),
    spindle: number('spindle power, W', 50, 20_000).default(800),
    slowest: number('slowest turn of the spindle, 1/min', 100, 60_000).default(8000),
    fastest: number('fastest turn of the spindle, 1/min', 1000, 60_000).default(24_000),
    rapid: number('rapid speed, mm/min', 100, 60_000).default(3000),
    feed: number('greatest feed along the work, mm/min', 50, 30_000).default(2500),
    plunge: number('greatest feed straight down, mm/min', 10, 10_000).default(800),
    acceleration: number('how fast it gains speed, mm/s²', 5, 20_000).default(300),
    corner: length('how far it may round a corner to pass it at speed', 0.001, 1).default(0.02),
    force: number('sideways push the frame stands before it gives, N', 5, 2000).default(60),
    holder: length('diameter of the nut that holds the cutter', 5, 100).default(35),
    change: span('a change of cutter with its height taken anew', 0.1, 60).default(3),
    spoilboard: length('thickness of the board that lies under the work', 0, 100).default(18),
    program: dialectField.prefault({})
  })
  .superRefine((machine, ctx) => {
    if (machine.slowest > machine.fastest)
      ctx.addIssue({
        code: 'custom',
        message: 'slowest turn above the fastest',
        path: ['slowest'],
        params: { meaning: true, allowed: `at most the fastest, ${machine.fastest}` }
      })
  })
  .meta({
    description: 'the machine; left out: flattening by hand, and no check of what fits on it',
    sample: [{ x: 800, y: 600 }]
  })

/** A cutter of the shop. What is left out comes from its kind in the catalogue. */
export const cutterField = z
  .strictObject({
    id: id('what cuts call it'),
    kind: words('a cutter of the catalogue', 80),
    diameter: size('diameter', 100),
    length: size('cutting length', 200),
    flutes: whole('flutes', 1, 8).default(2),
    angle: number('included angle, degrees', 10, 180).optional(),
    corner: length('radius of the corner of a bull-nose', 0.05, 50).optional(),
    tip: length('width of the blunt tip of a V', 0, 10).optional(),
    shank: size('diameter of the shank', 40).optional(),
    reach: size('how far it stands out of the holder', 300).optional(),
    fastest: number('fastest turn marked on it, 1/min (EN 847-1)', 500, 60_000).optional(),
    plunges: yesNo('its edges meet in the middle: it may go straight down').optional(),
    price: number('price of a new one', 0, 1e6).optional(),
    life: span('it cuts until it is worn; left out: by the way it cuts, as usual', 1).optional(),
    head: length('height of the head of a keyhole cutter', 0.5, 40).optional(),
    neck: length('diameter of the neck of a keyhole cutter', 0.5, 40).optional()
  })
  .meta({
    description: 'a cutter',
    sample: [{ id: 'six', kind: 'flat-end-mill', diameter: 6, length: 22 }]
  })
