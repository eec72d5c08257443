import { describe, expect, it } from 'vitest'
import { find } from '../../src/catalogue/find.ts'
import { HARDWARE, leastPocket } from '../../src/catalogue/hardware.ts'
import { METRIC_SCREWS } from '../../src/catalogue/hardware-screw.ts'

describe('movements', () => {
  const movement = find('hardware', 'quartz-movement')!

  // Dial 1/16 on 1/4 in board; the thread should stand out by 1/8 in: 11.1 mm, so the 12-14 thread.
  it('take the thread that makers pick for a dial of 5/16 in', () => {
    const dialMm = (5 / 16) * 25.4
    expect(dialMm + 25.4 / 8).toBeCloseTo(11.1, 1)
    const fits = movement.shaft!.lengths.find(l => l.greatestDialMm >= dialMm)
    expect(fits?.threadMm).toEqual([12, 14])
    expect(movement.shaft!.beyondDialMm[0]).toBeCloseTo(25.4 / 8, 1)
  })

  // Thread 8.5, less 3.2: a web of at most 5.3; 25 mm stock less 16 and 6 leaves 3 and passes.
  it('allow the web that the shortest thread leaves', () => {
    const short = movement.shaft!.lengths.find(l => l.threadMm[0] === 8.5)!
    expect(short.threadMm[0] - movement.shaft!.beyondDialMm[0]).toBeCloseTo(5.3, 10)
    expect(short.greatestDialMm).toBeGreaterThanOrEqual(25 - 16 - 6)
    expect(movement.body!.depthMm).toBe(16)
  })

  it('never promise a dial thicker than the shorter thread less 4', () => {
    for (const m of HARDWARE.filter(h => h.shaft !== null)) {
      for (const l of m.shaft!.lengths) {
        expect(l.threadMm[0] - l.greatestDialMm, `${m.id} ${l.threadMm}`).toBeGreaterThanOrEqual(4)
        expect(l.threadMm[0] - l.greatestDialMm, `${m.id} ${l.threadMm}`).toBeLessThanOrEqual(5)
      }
    }
  })

  // Pocket 58-60 square, 17 deep (common practice).
  it('ask for the usual pocket', () => {
    expect(movement.pocket).toEqual({
      shape: 'rectangle',
      widthMm: 58,
      lengthMm: 58,
      depthMm: 17,
      clearanceMm: 1,
      overDepthMm: 1
    })
  })
})

describe('pockets', () => {
  it('are the body with its clearance on each side', () => {
    for (const h of HARDWARE) {
      if (h.pocket === null || h.body === null) continue
      expect(h.pocket).toEqual(leastPocket(h.body, h.pocket.clearanceMm, h.pocket.overDepthMm))
      if (h.pocket.shape === 'round' && h.body.shape === 'round') {
        expect(h.pocket.diameterMm - h.body.diameterMm, h.id).toBeCloseTo(2 * h.pocket.clearanceMm, 12)
      }
      expect(h.pocket.depthMm, h.id).toBeGreaterThanOrEqual(h.body.depthMm)
    }
  })

  it('of a cell are its holder and 2 mm', () => {
    const holder = find('hardware', 'cell-holder')!
    if (holder.pocket?.shape !== 'rectangle' || holder.body?.shape !== 'rectangle')
      throw new Error('no pocket')
    expect(holder.pocket.widthMm - holder.body.widthMm).toBe(2)
    // R6 of IEC 60086: 14.5 × 50.5 goes in.
    expect(holder.body.widthMm).toBeGreaterThan(14.5)
    expect(holder.body.lengthMm).toBeGreaterThan(50.5)
  })
})

describe('screws', () => {
  // ISO 273 fine/medium/coarse; tap drills = major less pitch, to a tenth (ISO 261 coarse pitches).
  it('have the clearance holes of the standard', () => {
    const published = {
      M3: [3.2, 3.4, 3.6],
      M4: [4.3, 4.5, 4.8],
      M5: [5.3, 5.5, 5.8],
      M6: [6.4, 6.6, 7],
      M8: [8.4, 9, 10]
    }
    for (const [name, holes] of Object.entries(published)) {
      expect(METRIC_SCREWS.find(s => s.name === name)?.clearanceMm, name).toEqual(holes)
    }
  })

  it('have tap drills of the diameter less the pitch', () => {
    for (const s of METRIC_SCREWS) expect(Math.abs(s.majorMm - s.pitchMm - s.tapDrillMm)).toBeLessThan(0.06)
  })

  it('have pilots between 0.55 and 0.8 of the wood screw, near the 0.7 of EN 1995-1-1', () => {
    const screws = HARDWARE.filter(h => h.id.startsWith('wood-screw'))
    expect(screws).toHaveLength(6)
    for (const s of screws) {
      const shank = s.holes.find(h => h.what === 'shank')!.diameterMm[0]
      const pilot = s.holes.find(h => h.what === 'pilot')!.diameterMm
      expect(pilot[0] / shank, s.id).toBeGreaterThanOrEqual(0.55)
      expect(pilot[1] / shank, s.id).toBeLessThanOrEqual(0.801)
    }
  })

  it('have inserts with the thread that goes in', () => {
    for (const h of HARDWARE.filter(h => h.kind === 'threaded insert')) {
      const major = h.thread!.majorMm
      expect(major, h.id).toBeGreaterThan(0)
      expect(h.body?.shape === 'round' && h.body.diameterMm > major, h.id).toBe(true)
    }
  })
})

describe('what must not be cast in', () => {
  it('is every cell, driver and switch', () => {
    for (const h of HARDWARE.filter(h => ['cell', 'power', 'switch', 'movement'].includes(h.kind))) {
      expect(h.needsAccess, h.id).toBe(true)
    }
  })

  it('is every mains part but the bare tube, and a licensed electrician is named', () => {
    const mains = HARDWARE.filter(h => h.mains)
    expect(mains.map(h => h.id).sort()).toEqual([
      ...['cable-mains', 'lamp-holder', 'lamp-tube', 'led-driver', 'switch-plate']
    ])
    for (const h of mains) {
      expect(h.note, h.id).toMatch(/licensed electrician/)
      if (h.id !== 'lamp-tube') expect(h.needsAccess, h.id).toBe(true)
    }
  })

  it('holds magnets below the 80 °C of their standard type', () => {
    const magnets = HARDWARE.filter(h => h.kind === 'magnet')
    expect(magnets.length).toBeGreaterThan(0)
    for (const m of magnets) expect(m.heatLimitC, m.id).toBe(80)
  })
})
