import { describe, expect, it } from 'vitest'
import { KINDS, newPiece } from '../../src/piece/kind.ts'
import { pieceSchema } from '../../src/piece/piece-schema.ts'
import { findings } from '../findings/harness.ts'

describe('kinds to start from', () => {
  for (const { kind } of KINDS) {
    it(`a ${kind} is a document and plans without a stop in the built-in shop`, () => {
      const piece = newPiece(kind)
      expect(pieceSchema.safeParse(piece).success).toBe(true)
      expect(piece.kind).toBe(kind)
      expect(findings({ piece }).filter(f => f.severity === 'stop')).toEqual([])
    })

    it(`a ${kind} says that it is invented`, () => {
      expect(newPiece(kind).about).toMatch(/invented/)
    })
  }
})
