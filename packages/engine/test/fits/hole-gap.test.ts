import { describe, expect, it } from 'vitest'
import type { Part } from '../../src/fits/hardware.ts'
import { gapOf } from '../../src/fits/hardware.ts'
import { regionOfSound } from '../../src/shape/region.ts'

const part = (widthMm: number): Part => ({
  shape: 'round',
  widthMm,
  lengthMm: widthMm,
  depthMm: 5,
  cornerMm: 0
})

/** A hole of n equal sides, its corners on a circle. */
const polygon = (n: number, radiusMm: number) =>
  regionOfSound([
    Float64Array.from({ length: 2 * n }, (_, k) => {
      const a = (2 * Math.PI * Math.floor(k / 2)) / n
      return radiusMm * (k % 2 === 0 ? Math.cos(a) : Math.sin(a))
    })
  ])

/** A circle is flattened within this, half in and half out, mm. */
const FLATTENED_MM = 0.01

describe('the gap of a round part in a hole', () => {
  // The sides of a polygon stand r·cos(π/n) from its middle.
  it.each([6, 60, 70, 4000])('of %i sides is to the nearest of them', n => {
    for (const [across, x] of [
      [20, 0],
      [20, 3],
      [40, 0]
    ] as const) {
      const wall = 15 * Math.cos(Math.PI / n)
      const gap = gapOf(part(across), 0, x, 0, polygon(n, 15))
      // Moved towards a corner it comes near the two sides beside it.
      const nearest = wall - x * Math.cos(Math.PI / n) - across / 2
      expect(gap).toBeGreaterThan(nearest - FLATTENED_MM)
      expect(gap).toBeLessThan(nearest + FLATTENED_MM)
    }
  })
})
