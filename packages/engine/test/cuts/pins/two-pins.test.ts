import { describe, expect, it } from 'vitest'
import { boundMm, landFreedomMm, offMm, pitchTakenMm, turnRad } from '../../../src/cuts/pins/two-pins.ts'
import { chance } from '../../stack/random.ts'

/**
 * A rigid part laid on two pins by chance: shifted and turned, kept where both holes still go over their pins. How far
 * the place asked for then lies off, at most. Rejection, no formula.
 */
function simulated(
  { c1, c2, pitch }: { c1: number; c2: number; pitch: number },
  [px, py]: readonly [number, number],
  seed: number,
  count: number
): { most: number; turn: number } {
  const { span } = chance(seed)
  const free = Math.max(c1, c2) / 2
  const limit = (1.05 * (c1 + c2)) / (2 * pitch)
  let [most, turn] = [0, 0]
  for (let k = 0; k < count; k++) {
    const [dx, dy, a] = [span(-free, free), span(-free, free), span(-limit, limit)]
    const [c, s] = [Math.cos(a), Math.sin(a)]
    const moved = (x: number, y: number) => [dx + c * x - s * y - x, dy + s * x + c * y - y] as const
    if (Math.hypot(...moved(0, 0)) > c1 / 2 || Math.hypot(...moved(pitch, 0)) > c2 / 2) continue
    turn = Math.max(turn, Math.abs(a))
    most = Math.max(most, Math.hypot(...moved(px, py)))
  }
  return { most, turn }
}

describe('two pins', () => {
  it('turn and shift by the worked values of machining.md B6', () => {
    const pins = { clearance1Mm: 0.05, clearance2Mm: 0.05, pitchMm: 200 }
    expect(turnRad(pins)).toBeCloseTo(0.25e-3, 12)
    expect((turnRad(pins) * 180) / Math.PI).toBeCloseTo(0.014, 3)
    // 300 mm from the first pin, away from the second: 0.025 + 300 · 0.25e-3.
    expect(boundMm(pins, 300)).toBeCloseTo(0.1, 12)
    expect(offMm(pins, -300, 0)).toBeCloseTo(0.1, 12)
    expect(pitchTakenMm(pins)).toBeCloseTo(0.05, 12)
  })

  it('give way in line with a flattened pin: a land as wide as the pin half the clearance (exact limit)', () => {
    expect(landFreedomMm(8.05, 8, 8)).toBeCloseTo(0.025, 4)
    // Approximation of the source: D·c/(2·b), within c of it.
    expect(landFreedomMm(8.05, 8, 2)).toBeCloseTo((8.05 * 0.05) / 4, 1)
    expect(landFreedomMm(8.05, 8, 2)).toBeGreaterThan(3 * 0.025)
  })

  // Seeded simulation: never beyond the formula (its angle is searched in steps: 0.3 %), and it comes near to it.
  const cases = [
    { c1: 0.05, c2: 0.05, pitch: 200, at: [-300, 0], near: 0.93 },
    { c1: 0.05, c2: 0.05, pitch: 200, at: [500, 0], near: 0.93 },
    { c1: 0.1, c2: 0.04, pitch: 240, at: [-120, 0], near: 0.9 },
    { c1: 0.2, c2: 0.1, pitch: 550, at: [100, 110], near: 0.9 },
    { c1: 0.05, c2: 0.05, pitch: 600, at: [560, 110], near: 0.9 }
  ] as const
  it.each(cases)(
    'say how far a part laid on them by chance lies off: $c1 $c2 over $pitch at $at',
    ({ c1, c2, pitch, at, near }) => {
      const pins = { clearance1Mm: c1, clearance2Mm: c2, pitchMm: pitch }
      const bound = offMm(pins, at[0], at[1])
      expect(bound).toBeLessThanOrEqual(boundMm(pins, Math.hypot(at[0], at[1])) * (1 + 1e-9))
      const { most, turn } = simulated({ c1, c2, pitch }, at, 7, 60_000)
      expect(most).toBeLessThanOrEqual(bound * 1.003)
      expect(most).toBeGreaterThan(near * bound)
      expect(turn).toBeLessThanOrEqual(turnRad(pins) * (1 + 1e-6))
      expect(turn).toBeGreaterThan(0.85 * turnRad(pins))
    }
  )
})
