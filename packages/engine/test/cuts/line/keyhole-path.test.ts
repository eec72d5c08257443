import { describe, expect, it } from 'vitest'
import { keyholePath } from '../../../src/cuts/line/keyhole-path.ts'
import { cutterOf, faultsOf, jobOf, pathOf, tipPlaces } from './carved.ts'

const slot = { from: [10, 0], to: [10, 14], neckMm: 5, headMm: 11, highMm: 6 } as const
const cutter = cutterOf('keyhole', 11, { neckMm: 5, headMm: 3.5, shankMm: 5 })

describe('a keyhole slot', () => {
  const job = jobOf(cutter, -10, { depthMm: 4 })
  const path = pathOf(keyholePath(job, [slot]))

  it('goes down and up at its entry only, along and back between', () => {
    expect(faultsOf(path, job)).toEqual([])
    let [x, y, z] = [0, 0, 5]
    for (const m of path.moves) {
      if (m.kind === 'dwell') continue
      // Under the face it goes up and down at the entry alone, and along the line of the slot.
      if (Math.min(z, m.z) < 0 && m.z !== z) expect([x, y, m.x, m.y]).toEqual([10, 0, 10, 0])
      if (m.kind === 'line') expect(m.x).toBe(10)
      if (m.kind === 'rapid') expect(Math.min(z, m.z)).toBeGreaterThanOrEqual(0)
      ;[x, y, z] = [m.x, m.y, m.z]
    }
  })

  it('leaves the lips and opens the whole head under them', () => {
    const places = tipPlaces(path, 0.1)
    // The slow twin: the head of the cutter sweeps [z, z + 3.5] within 5.5 of the tip, the neck all above within 2.5.
    const open = (px: number, py: number, pz: number) => {
      for (let k = 0; k < places.length; k += 3) {
        const d = Math.hypot(places[k]! - px, places[k + 1]! - py)
        const z = places[k + 2]!
        if (pz >= z && d < 2.5) return true
        if (pz >= z && pz <= z + 3.5 && d < 5.5) return true
      }
      return false
    }
    for (const z of [-9.9, -8, -6, -4.1]) {
      expect(open(14.9, 14, z)).toBe(true)
      expect(open(10, 19.3, z)).toBe(true)
      expect(open(15.6, 10, z)).toBe(false)
    }
    for (const z of [-3.9, -2, -0.1]) {
      expect(open(12.6, 14, z)).toBe(false)
      expect(open(12.4, 14, z)).toBe(true)
      expect(open(15, 0, z)).toBe(true)
    }
    expect(open(10, 10, -10.1)).toBe(false)
  })

  it('of a cutter that does not fit names one that would', () => {
    const named = (more: Parameters<typeof cutterOf>[2], across = 11) =>
      keyholePath(jobOf(cutterOf('keyhole', across, { neckMm: 5, headMm: 3.5, shankMm: 5, ...more }), -10), [
        slot
      ])
    expect(named({}, 9)).toMatchObject({ largestMm: 11 })
    expect(named({ neckMm: 4 })).toHaveProperty('says')
    expect(named({ headMm: 7 })).toHaveProperty('says')
    expect(named({ plunges: false })).toHaveProperty('says')
    expect(keyholePath(jobOf(cutterOf('flat', 11), -10), [slot])).toHaveProperty('says')
    expect(named({})).toHaveProperty('moves')
  })
})
