import { describe, expect, it } from 'vitest'
import { bowAfter } from '../../src/findings/bow-after.ts'
import { facesUnlike } from '../../src/findings/faces-unlike.ts'
import { liftHeavy } from '../../src/findings/lift-heavy.ts'
import { sagsInUse } from '../../src/findings/sags-in-use.ts'
import { slotsShort } from '../../src/findings/slots-short.ts'
import { tipsOver } from '../../src/findings/tips-over.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { worked } from '../cases/asked.ts'
import { soundPiece } from '../findings/sound-piece.ts'
import { chance } from '../stack/random.ts'

/** Sound pieces made odd: planed to a leaf, soaked, flooded, cast face down, on legs that stand anywhere. */
function oddPiece(seed: number): PieceDocument {
  const { span, is, pick } = chance(seed + 1000)
  const piece = soundPiece(seed)
  const [w, h] = (piece.outline as { rectangle: [number, number] }).rectangle
  const timbers = piece.timbers!.map(t => ({
    ...t,
    ...(is(0.3) ? { thickness: span(0.3, 3) } : {}),
    ...(is(0.3) ? { moisture: pick([0, 30, 60]) } : {})
  }))
  const place = (): [number, number] => [
    Math.round(span(2 - w / 2, w / 2 - 2)),
    Math.round(span(2 - h / 2, h / 2 - 2))
  ]
  const many = <T>(least: number, most: number, of: () => T) =>
    Array.from({ length: Math.floor(span(least, most + 1)) }, of)
  return {
    ...piece,
    timbers,
    ...(is(0.4) ? { flatten: { back: span(0, 8), front: span(0, 30) } } : {}),
    ...(is(0.3) ? { finish: { front: { coat: 'flood-coat' } } } : {}),
    supports: {
      ...(is(0.6)
        ? { legs: many(3, 8, place) }
        : { rails: many(2, 4, () => ({ from: place(), to: place() })) }),
      load: is(0.5) ? span(0, 90_000) : 0,
      leaning: is(0.5) ? span(0, 90_000) : 0,
      held: pick(['slots', 'round holes', 'loose'])
    }
  }
}

const CHECKS = [bowAfter, facesUnlike, sagsInUse, tipsOver, slotsShort, liftHeavy]

describe('odd pieces on odd legs', () => {
  it('are all reckoned, with figures in order', () => {
    const raised = new Set<string>()
    for (let seed = 1; seed <= 30; seed++) {
      const work = worked({ piece: oddPiece(seed) })
      // Planed away altogether, there is nothing to tell.
      if (work.bow === null || work.inUse === null) continue
      for (const row of work.bow.rows)
        for (const face of [row.front, row.back]) {
          expect(face.mm, `seed ${seed}`).toBeGreaterThanOrEqual(face.bandMm[0] - 1e-9)
          expect(face.mm).toBeLessThanOrEqual(face.bandMm[1] + 1e-9)
        }
      const use = work.inUse
      expect(use.massG).toBeGreaterThanOrEqual(0)
      expect(use.tipsAtG ?? 0).toBeGreaterThanOrEqual(0)
      for (const s of use.screws) expect(s.needMm[1]).toBeGreaterThanOrEqual(s.needMm[0])
      for (const check of CHECKS)
        for (const found of check.run(work)) {
          raised.add(check.id)
          expect(found.says).not.toMatch(/NaN|Infinity|undefined/)
        }
    }
    // The pieces are odd enough for every check but the one that asks the mass of them.
    expect([...raised].sort()).toEqual(
      CHECKS.map(c => c.id)
        .filter(id => id !== 'lift-heavy')
        .sort()
    )
  })
})
