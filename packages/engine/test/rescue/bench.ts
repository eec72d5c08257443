import { checkPiece, usualShop } from '../../src/piece/read.ts'
import type { Reading } from '../../src/piece/reading-schema.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import type { PlanInput } from '../../src/work.ts'

/** A panel of two boards and two pours between them, as a bench finds it. Invented. */
export const PANEL = {
  castwright: 1,
  name: 'Bench panel',
  outline: { rectangle: [400, 260] },
  timbers: [
    {
      id: 'left',
      species: 'oak-white',
      outline: { rectangle: [120, 266], at: [-143, 0] },
      thickness: 26,
      moisture: 8.5
    },
    {
      id: 'right',
      species: 'oak-white',
      outline: { rectangle: [120, 266], at: [143, 0] },
      thickness: 26,
      moisture: 8.5
    }
  ],
  pours: [
    {
      id: 'green',
      resin: 'deep',
      depth: 12,
      tint: [{ pigment: 'green-paste', percent: 2 }],
      start: '2026-12-05T09:00+01:00'
    },
    { id: 'clear', resin: 'deep', height: 25 }
  ],
  cuts: [
    {
      id: 'pocket',
      face: 'back',
      shape: { rectangle: [60, 40], at: [-140, 0], corner: 4 },
      finishedDepth: 8,
      way: 'router'
    }
  ],
  finish: { both: { coat: 'hardwax-oil' } }
}

let n = 0
/** A reading of 5 December 2026, at an hour of it. */
export function reading(hour: number, more: object): Reading {
  const ms = Date.parse('2026-12-05T00:00+01:00') + Math.round(hour * 60) * 60_000
  const at = `${new Date(ms + 3_600_000).toISOString().slice(0, 16)}+01:00`
  return readingSchema.parse({ id: `reading-${String(++n).padStart(4, '0')}`, at, ...more })
}

export function inputOf(
  readings: readonly Reading[] = [],
  piece: object = PANEL,
  shop = usualShop()
): PlanInput {
  return { piece: checkPiece(piece, 'bench'), shop, readings, effort: 'preview' }
}

export const AS_OF = '2026-12-06T12:00+01:00'
