import { describe, expect, it } from 'vitest'
import { arcsDrawn } from './arcs-drawn.ts'

describe('arcs drawn by lot', () => {
  // Practice: an arc that falls apart into lines makes the file long and the wall faceted.
  it.each([
    ['3 decimals', {}, 1],
    ['4 decimals of an inch', { units: 'inch' as const }, 1],
    ['6 decimals', { decimals: 6 }, 1],
    ['2 decimals', { decimals: 2 }, 0.9]
  ])('of 1 to 500 mm stay arcs at %s', (_, change, least) => {
    const drawn = arcsDrawn(change, 1000, 1, 500)
    const stayed = drawn.filter(d => d.written.every(w => w.kind === 'arc') && d.written.length <= 8).length
    expect(stayed / drawn.length).toBeGreaterThanOrEqual(least)
  })

  it('end where they are meant to end, rounded', () => {
    for (const d of arcsDrawn({}, 500, 0.01, 1000)) {
      const end = d.written.at(-1)!
      expect(Math.abs(end.x - d.arc.x)).toBeLessThanOrEqual(0.0005 + 1e-9)
      expect(Math.abs(end.y - d.arc.y)).toBeLessThanOrEqual(0.0005 + 1e-9)
      expect(Math.abs(end.z - d.arc.z)).toBeLessThanOrEqual(0.0005 + 1e-9)
    }
  })

  it('are chords of no more than they must be where there are no arcs', () => {
    for (const d of arcsDrawn({ arcs: false }, 200, 1, 500)) {
      expect(d.written.every(w => w.kind === 'line')).toBe(true)
      // 360° by 2·acos(1 − e/R), or eight to the turn.
      const one = Math.min(Math.PI / 4, 2 * Math.acos(1 - 0.01 / d.radiusMm))
      expect(d.written.length).toBeLessThanOrEqual(Math.ceil((2 * Math.PI) / one))
    }
  })
})
