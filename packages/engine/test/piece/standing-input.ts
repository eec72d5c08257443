import { checkPiece, usualShop } from '../../src/piece/read.ts'
import type { Reading } from '../../src/piece/reading-schema.ts'
import type { PlanInput } from '../../src/work.ts'

/** A small piece of one pour that readings are taken of. */
export const given = {
  castwright: 1,
  name: 'Readings',
  outline: { rectangle: [200, 120] },
  pours: [{ id: 'clear', resin: 'deep', depth: 12, start: '2026-12-05T09:00+01:00' }]
}

export function inputOf(readings: readonly Reading[]): PlanInput {
  return { piece: checkPiece(given, 'given'), shop: usualShop(), readings, effort: 'preview' }
}
