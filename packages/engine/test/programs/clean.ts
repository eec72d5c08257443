import { expect, test } from 'vitest'
import { proveSet } from '../../src/programs/prove-set.ts'
import { machinePiece } from './machine-piece.ts'
import { setIn } from './made.ts'

/** Seeded pieces that are proved; more for the heavy counts. */
const PIECES = Number(process.env['CASTWRIGHT_PROVED'] ?? 60)

/**
 * Programs of every second seeded piece, made, written, read back and swept. Truth is the stack: what is left after a
 * step is known without any path (stack/walk.ts).
 */
export function provesClean(first: 1 | 2): void {
  const seeds = Array.from({ length: Math.ceil(PIECES / 2) }, (_, i) => first + 2 * i)
  test.for(seeds)('programs of seeded piece %i read back and prove clean', seed => {
    const set = setIn(machinePiece(seed))
    expect(set.notMade).toEqual([])
    expect(set.programs.length).toBeGreaterThan(4)
    for (const { programs, proof } of proveSet(set)) {
      const what = programs.map(p => p.file).join(' ')
      for (const p of programs) expect(p.complaints, what).toEqual([])
      expect(proof.reports, what).toEqual([])
      expect(proof.removedMm3, what).toBeGreaterThan(0)
    }
  })
}
