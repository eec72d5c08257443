import { expect, test } from 'vitest'
import { proveSet } from '../../src/programs/prove-set.ts'
import { machinePiece } from './machine-piece.ts'
import { setIn } from './made.ts'

// Truth is the stack: what is left after a step is known without any path (stack/walk.ts). Paths are read back as text.
test.for(Array.from({ length: 60 }, (_, i) => i + 1))(
  'programs of seeded piece %i read back and prove clean',
  seed => {
    const set = setIn(machinePiece(seed))
    expect(set.notMade).toEqual([])
    expect(set.programs.length).toBeGreaterThan(4)
    for (const { programs, proof } of proveSet(set)) {
      const what = programs.map(p => p.file).join(' ')
      for (const p of programs) expect(p.complaints, what).toEqual([])
      expect(proof.reports, what).toEqual([])
      expect(proof.removedMm3, what).toBeGreaterThan(0)
    }
  }
)
