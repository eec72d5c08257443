import { describe, expect, it } from 'vitest'
import { bound, FIGURES } from './figures.ts'
import { slab, swept } from './slab.ts'

describe('swept volumes against closed forms', () => {
  for (const f of FIGURES)
    it(f.name, () => {
      for (const cell of [0.4, 0.2, 0.1]) {
        const off = swept(slab(cell), f.cutter, f.way) - f.mm3
        expect(Math.abs(off), `at ${cell} mm: ${off.toFixed(2)} of ${f.mm3.toFixed(1)} mm³`).toBeLessThan(
          Math.min(bound(f, cell), Math.SQRT2 * cell * f.walls)
        )
      }
    })
})
