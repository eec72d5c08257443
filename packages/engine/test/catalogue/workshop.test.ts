import { describe, expect, it } from 'vitest'
import { BOARDS } from '../../src/catalogue/board.ts'
import { ROOMS } from '../../src/catalogue/climate.ts'
import { COATS } from '../../src/catalogue/coat.ts'
import { CUTTERS } from '../../src/catalogue/cutter.ts'
import { LINERS } from '../../src/catalogue/liner.ts'
import { STONES } from '../../src/catalogue/stone.ts'

const get = <Row extends { readonly id: string }>(rows: readonly Row[], id: string): Row => {
  const row = rows.find(r => r.id === id)
  if (row === undefined) throw new Error(`no row ${id}`)
  return row
}

describe('stones', () => {
  it('take the packing of their form, sphere limits for beads', () => {
    expect(get(STONES, 'glass-beads').packing).toEqual([0.55, 0.64])
    expect(get(STONES, 'river-gravel').packing).toEqual([0.58, 0.62])
    expect(get(STONES, 'crushed-stone').packing).toEqual([0.5, 0.58])
    expect(get(STONES, 'crushed-stone-graded').packing).toEqual([0.65, 0.75])
    expect(get(STONES, 'sand').packing).toEqual([0.58, 0.65])
    expect(get(STONES, 'shell-pieces').packing).toEqual([0.3, 0.45])
    expect(get(STONES, 'mica-flake').packing).toEqual([0.15, 0.3])
    // No random heap of one size packs closer than spheres shaken down; mixed sizes and sand do.
    for (const s of STONES) {
      const most = s.id === 'crushed-stone-graded' ? 0.75 : s.kind === 'sand' ? 0.65 : 0.64
      expect(s.packing[1], s.id).toBeLessThanOrEqual(most)
    }
  })

  // Makers: hardness 3 to 5 can be levelled with timber, harder wants diamond.
  it('tell the soft that can be flattened from the hard that cannot', () => {
    const hard = STONES.filter(s => s.mohs[1] > 5).map(s => s.id)
    for (const id of [
      'quartz-pebbles',
      'river-gravel',
      'glass-beads',
      'lapis-chips',
      'turquoise-chips',
      'sand'
    ]) {
      expect(hard).toContain(id)
    }
    for (const id of ['shell-pieces', 'limestone-chips', 'malachite-chips', 'mica-flake', 'pine-cones']) {
      expect(hard).not.toContain(id)
    }
  })

  it('call everything that grew porous, and ask for it dry', () => {
    for (const s of STONES.filter(s => s.kind === 'organic')) {
      expect(s.porous, s.id).toBe(true)
      expect(s.note, s.id).toMatch(/dry until/)
    }
  })

  it('let quartz, glass and mica sink in resin and dry plants float', () => {
    for (const s of STONES) {
      if (s.kind === 'organic') expect(s.densityKgM3, s.id).toBeLessThan(1100)
      else expect(s.densityBandKgM3[0], s.id).toBeGreaterThan(2000)
      expect(s.densityKgM3, s.id).toBe((s.densityBandKgM3[0] + s.densityBandKgM3[1]) / 2)
    }
  })
})

describe('coats', () => {
  // ISO 3233 and ISO 2808: dry = wet × solids. Oils sink in and are left out.
  it('have dry films that their wet films and solids give', () => {
    for (const c of COATS) {
      if (c.wetFilmUm === null || c.solidsPct === null) continue
      const least = (c.wetFilmUm[0] * c.solidsPct[0]) / 100
      const most = (c.wetFilmUm[1] * c.solidsPct[1]) / 100
      if (c.id === 'drying-oil') {
        expect(c.dryFilmUm[1]).toBeLessThan(least)
        continue
      }
      expect(c.dryFilmUm[0], c.id).toBeLessThanOrEqual(most)
      expect(c.dryFilmUm[1], c.id).toBeGreaterThanOrEqual(least)
      // Rounded ranges: neither end strays by more than a quarter.
      expect(c.dryFilmUm[1], c.id).toBeLessThanOrEqual(most * 1.25)
      expect(c.dryFilmUm[0], c.id).toBeGreaterThanOrEqual(least * 0.75)
    }
  })

  // 1 L over 1 m² is 1 mm; a flow coat of 1/8 in takes 3.175 L/m².
  it('spread by the litre as arithmetic says', () => {
    const flood = get(COATS, 'flood-coat')
    expect(flood.spreadM2PerL![1]).toBeCloseTo(1 / 2, 12)
    expect(flood.wetFilmUm![1]).toBeGreaterThanOrEqual(3175)
    for (const c of COATS) {
      if (c.wetFilmUm === null) expect(c.spreadM2PerL, c.id).toBeNull()
      else expect(c.spreadM2PerL![0] * c.wetFilmUm[1], c.id).toBeCloseTo(1000, 8)
    }
  })

  it('stop sanding early under what levels itself or soaks in', () => {
    for (const c of COATS.filter(c => c.kind === 'flood')) expect(c.lastGrit).toEqual([180, 220])
    for (const c of COATS.filter(c => c.kind === 'penetrating')) expect(c.lastGrit).toEqual([180, 240])
  })

  // Resin wants a week before load, three days at least; oil a month before another finish.
  it('keep resin from load for days and other finishes from fresh oil for a month', () => {
    for (const id of ['flood-coat', 'epoxy-seal']) expect(get(COATS, id).loadAfterDays).toEqual([3, 7])
    for (const id of ['hardwax-oil', 'drying-oil', 'oil-varnish']) {
      expect(get(COATS, id).coverAfterDays).toBeGreaterThanOrEqual(30)
      expect(get(COATS, id).note).toMatch(/rags heat by themselves/)
    }
  })

  it('has one for the sun', () => {
    expect(COATS.filter(c => c.blocksUv).map(c => c.id)).toEqual(['uv-clear'])
  })
})

describe('boards', () => {
  // Euler-Bernoulli, one span: w = 5·q·L⁴/(384·E·I). 18 mm, 510 N/m²: 11 mm at 1.2 m, 0.14 mm at 0.4 m.
  it('sag as makers found 18 mm of faced particleboard to do', () => {
    const board = get(BOARDS, 'melamine-particleboard-18')
    const inertia = (board.thicknessMm / 1000) ** 3 / 12
    const sagMm = (spanM: number): number => (1000 * 5 * 510 * spanM ** 4) / (384 * board.modulusPa * inertia)
    expect(sagMm(1.2)).toBeCloseTo(11.3, 1)
    expect(sagMm(0.4)).toBeCloseTo(0.14, 2)
  })

  it('need a liner unless resin lets go of them', () => {
    expect(BOARDS.filter(b => !b.needsRelease).map(b => b.id)).toEqual(['hdpe-sheet', 'silicone-mould'])
  })

  // EN ISO 10456, conductivity by density: straight between the tabulated points.
  it('conduct as the standard gives by density', () => {
    const between = (x: number, [x0, y0]: [number, number], [x1, y1]: [number, number]): number =>
      y0 + ((x - x0) * (y1 - y0)) / (x1 - x0)
    const particle = get(BOARDS, 'melamine-particleboard-18')
    expect(particle.conductivityWmK).toBeCloseTo(between(particle.densityKgM3, [600, 0.14], [900, 0.18]), 3)
    const mdf = get(BOARDS, 'mdf-18')
    expect(mdf.conductivityWmK).toBeCloseTo(between(mdf.densityKgM3, [600, 0.14], [800, 0.18]), 3)
    const ply = get(BOARDS, 'birch-plywood-18')
    expect(ply.conductivityWmK).toBeCloseTo(between(ply.densityKgM3, [500, 0.13], [700, 0.17]), 3)
  })

  it('are sold in the thickness that is taken', () => {
    for (const b of BOARDS) {
      expect(b.thicknessesMm, b.id).toContain(b.thicknessMm)
      expect([...b.thicknessesMm].sort((x, y) => x - y)).toEqual(b.thicknessesMm)
    }
  })
})

describe('liners', () => {
  it('let sealant dry overnight and keep masking tape out of moulds', () => {
    expect(get(LINERS, 'silicone-sealant').readyAfterH[0]).toBeGreaterThanOrEqual(12)
    expect(get(LINERS, 'masking-tape')).toMatchObject({ releases: false, seals: false })
    expect(get(LINERS, 'release-tape').releases).toBe(true)
    expect(LINERS.every(l => l.cautions.length > 0)).toBe(true)
  })
})

describe('cutters', () => {
  // Cone beyond the full diameter: 118° 0.300 D, 90° 0.5 D, 60° 0.866 D.
  it('have the points that their angles give', () => {
    expect(get(CUTTERS, 'drill').tipPerDiameter).toBeCloseTo(0.3, 3)
    expect(get(CUTTERS, 'v-90').tipPerDiameter).toBeCloseTo(0.5, 12)
    expect(get(CUTTERS, 'v-60').tipPerDiameter).toBeCloseTo(0.866, 3)
    for (const c of CUTTERS.filter(c => c.kind === 'v')) {
      for (const s of c.sizes) expect(s.cuttingLengthMm, c.id).toBeCloseTo(s.diameterMm * c.tipPerDiameter, 1)
    }
  })

  it('do not plunge without an edge across the end', () => {
    for (const id of ['surfacing', 'roundover', 'chamfer', 'router-template']) {
      expect(get(CUTTERS, id).canPlunge, id).toBe(false)
    }
    for (const id of ['drill', 'forstner', 'brad-point', 'v-60', 'flat-end-mill']) {
      expect(get(CUTTERS, id).canPlunge, id).toBe(true)
    }
  })

  it('are there in every kind that a cut may ask for', () => {
    expect([...new Set(CUTTERS.map(c => c.kind))].sort()).toEqual(
      [
        ...['ball', 'brad-point', 'bull', 'chamfer', 'drill', 'flat', 'forstner', 'keyhole', 'roundover'],
        ...['straight', 'surfacing', 'v']
      ].sort()
    )
  })
})

describe('rooms', () => {
  /** Equilibrium moisture, Wood Handbook equation 4-5, %. */
  function equilibrium(tempC: number, humidityPct: number): number {
    const h = humidityPct / 100
    const w = 349 + 1.29 * tempC + 0.0135 * tempC ** 2
    const k = (0.805 + 0.000736 * tempC - 0.00000273 * tempC ** 2) * h
    const k1 = 6.27 - 0.00938 * tempC - 0.000303 * tempC ** 2
    const k2 = 1.91 + 0.0407 * tempC - 0.000293 * tempC ** 2
    return (1800 / w) * (k / (1 - k) + (k1 * k + 2 * k1 * k2 * k ** 2) / (1 + k1 * k + k1 * k2 * k ** 2))
  }

  // Makers keep timber for indoors between 6 and 12 %.
  it('bring timber in a heated room to what makers dry it to', () => {
    const room = get(ROOMS, 'heated-room')
    expect(equilibrium(room.dry.tempC, room.dry.humidityPct)).toBeCloseTo(6.2, 1)
    expect(equilibrium(room.damp.tempC, room.damp.humidityPct)).toBeLessThan(12)
  })

  it('are damper in the damp season, in air and in timber', () => {
    for (const r of ROOMS) {
      const dry = equilibrium(r.dry.tempC, r.dry.humidityPct)
      const damp = equilibrium(r.damp.tempC, r.damp.humidityPct)
      expect(damp - dry, r.id).toBeGreaterThan(2)
      expect(damp, r.id).toBeLessThan(22)
      for (const air of [r.dry, r.damp]) {
        expect(air.tempC, r.id).toBeGreaterThanOrEqual(r.tempC[0])
        expect(air.tempC, r.id).toBeLessThanOrEqual(r.tempC[1])
      }
      expect(r.humidityPct).toEqual([r.dry.humidityPct, r.damp.humidityPct])
    }
  })

  it('span the year in the room that holds winter and summer', () => {
    const [year, winter, summer] = ['heated-room', 'heated-room-winter', 'heated-room-summer'].map(id =>
      get(ROOMS, id)
    )
    expect(year!.damp.humidityPct).toBe(summer!.damp.humidityPct)
    expect(year!.dry.humidityPct).toBeLessThan(winter!.damp.humidityPct)
  })
})
