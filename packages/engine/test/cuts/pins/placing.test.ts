import { describe, expect, it } from 'vitest'
import type { BedPin, PinHole } from '../../../src/cuts/pins/placing.ts'
import { seatOf, wrongPlacings } from '../../../src/cuts/pins/placing.ts'
import { chance } from '../../stack/random.ts'

const hole = (x: number, y: number, d: number, through = true): PinHole => ({
  x,
  y,
  diameterMm: d + 0.05,
  slotMm: 0,
  through
})
const pin = (x: number, y: number, d: number): BedPin => ({ x, y, diameterMm: d })
// Turned over about the x line: the holes as they then lie.
const turned = (holes: readonly PinHole[]) => holes.map(h => ({ ...h, y: -h.y }))
const ways = (holes: readonly PinHole[], pins: readonly BedPin[]) => wrongPlacings(turned(holes), holes, pins)

/**
 * Slow twin: pushes the piece about on a grid, half turned or not, and looks whether each pin stands in a hole of its own that
 * it enters.
 */
function twinFits(holes: readonly PinHole[], pins: readonly BedPin[], half: boolean, reach: number): boolean {
  const sign = half ? -1 : 1
  for (let dx = -reach; dx <= reach; dx++)
    for (let dy = -reach; dy <= reach; dy++) {
      const used = pins.map(p =>
        holes.findIndex(
          h => h.diameterMm >= p.diameterMm && Math.hypot(sign * h.x + dx - p.x, sign * h.y + dy - p.y) < 0.02
        )
      )
      if (used.every(k => k >= 0) && new Set(used).size === pins.length) return true
    }
  return false
}

describe('ways to lay a piece on its pins', () => {
  it('C77: two holes of one diameter always let a half turn fit, shifted by twice the way to their middle', () => {
    const holes = [hole(-200, 0, 8), hole(230, 0, 8)]
    const [other] = ways(holes, [pin(-200, 0, 8), pin(230, 0, 8)])
    expect(other).toMatchObject({ how: 'turned about the other line', fits: true })
    expect(other!.offMm).toBeCloseTo(30, 9)
    // Symmetric about the datum it does not even shift: the picture is turned, and nothing shows it.
    expect(ways([hole(-200, 0, 8), hole(200, 0, 8)], [pin(-200, 0, 8), pin(200, 0, 8)])[0]!.offMm).toBe(0)
  })

  it('two diameters never do: the thicker pin does not enter', () => {
    const holes = [hole(-200, 0, 8), hole(230, 0, 6)]
    const all = ways(holes, [pin(-200, 0, 8), pin(230, 0, 6)])
    expect(all.map(w => w.fits)).toEqual([false, true, false])
    // Blind holes are closed on the other face: not turned over it does not go on either.
    const blind = holes.map(h => ({ ...h, through: false }))
    expect(ways(blind, [pin(-200, 0, 8), pin(230, 0, 6)]).map(w => w.fits)).toEqual([false, false, false])
  })

  it('a third pin off the line does not go on when it is turned over, in a mirrored pair it does', () => {
    const three = [hole(-200, 0, 8), hole(200, 0, 6), hole(0, 60, 6)]
    const pins3 = [pin(-200, 0, 8), pin(200, 0, 6), pin(0, 60, 6)]
    expect(seatOf(turned(three), pins3, false)).toBeNull()
    const four = [...three, hole(0, -60, 6)]
    expect(seatOf(turned(four), [...pins3, pin(0, -60, 6)], false)).toEqual({ dx: 0, dy: 0 })
  })

  it('agree with pushing the piece about place by place, in 120 seeded patterns', () => {
    for (let seed = 1; seed <= 120; seed++) {
      const { whole, pick, is } = chance(seed)
      const n = whole(2, 4)
      const pins = Array.from({ length: n }, () =>
        pin(whole(-8, 8), is(0.5) ? 0 : whole(-4, 4), pick([6, 8]))
      )
      const apart = pins.every((p, i) =>
        pins.every((q, j) => i === j || Math.hypot(p.x - q.x, p.y - q.y) >= 1)
      )
      if (!apart) continue
      const holes = pins.map(p => hole(p.x, p.y, p.diameterMm))
      for (const [lies, half] of [
        [turned(holes), false],
        [turned(holes), true],
        [holes, true]
      ] as const)
        expect(seatOf(lies, pins, half) !== null, `seed ${seed}`).toBe(twinFits(lies, pins, half, 20))
    }
  })
})
