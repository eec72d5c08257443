import { describe, expect, it } from 'vitest'
import { compareSeeds, PIECES } from './twin-compare.ts'

// The pieces are shared out over two files, which run beside each other.
describe('volumes of the stack, against solids of a general boolean library (manifold-3d 3.2.1)', () => {
  it(`agree within 0.1 % on the odd half of ${PIECES} seeded pieces`, { timeout: 600_000 }, () => {
    const worst = compareSeeds(1)
    expect(worst.share, worst.what).toBeLessThan(1e-3)
  })
})
