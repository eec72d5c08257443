import { expect, it } from 'vitest'
import { forChords } from '../../../src/proving/sweep/chords.ts'

const TOL_MM = 0.002

// Closed form: what chords of sagitta s leave of a circle is 2/3·s deep in the mean, all round.
for (const r of [0.05, 3, 45, 600])
  it(`chords of a circle of ${r} mm lie within 0.002 mm of it, ends on it`, () => {
    for (const clockwise of [true, false]) {
      let [x, y, twice, deepest, n] = [r, 0, 0, 0, 0]
      forChords(r, 0, 0, r, 0, -1, 0, 0, clockwise, (p, q) => {
        expect(Math.abs(Math.hypot(p, q) - r)).toBeLessThan(1e-9)
        deepest = Math.max(deepest, r - Math.hypot((x + p) / 2, (y + q) / 2))
        twice += x * q - p * y
        x = p
        y = q
        n++
      })
      expect(deepest).toBeLessThan(TOL_MM + 1e-9)
      // No finer than it has to be: half as many chords would be past it.
      if (n > 8) expect(4 * deepest).toBeGreaterThan(TOL_MM)
      const short = Math.PI * r * r - Math.abs(twice) / 2
      expect(short).toBeGreaterThan(0)
      expect(short).toBeLessThan((2 / 3) * TOL_MM * 2 * Math.PI * r + 1e-9)
      expect(Math.sign(twice)).toBe(clockwise ? -1 : 1)
    }
  })
