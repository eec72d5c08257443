import { describe, expect, it } from 'vitest'
import { PIGMENTS, type PigmentRecord } from '../../src/catalogue/pigment.ts'
import {
  clearShape,
  INTERNAL_REFLECTION,
  insideReflectance,
  linearOf,
  ratioOfSeen,
  SURFACE_REFLECTION
} from '../../src/catalogue/pigment-optics.ts'

const byId = (id: string): PigmentRecord => {
  const row = PIGMENTS.find(p => p.id === id)
  if (row === undefined) throw new Error(`no pigment ${id}`)
  return row
}

/** Pigment in a mix of 1100 kg/m³, kg/m³, from its share in %. */
const concentration = (p: PigmentRecord, percent: number): number =>
  (percent / 100) * p.pigmentFraction * 1100

/** Kubelka-Munk, deep layer, then the surface forward: what is seen. Written apart from the catalogue's inverse. */
function seen(k: number, s: number): number {
  const ratio = k / s
  const inside = 1 + ratio - Math.sqrt(ratio * ratio + 2 * ratio)
  const k1 = 0.0465
  const k2 = 0.6
  return ((1 - k1) * (1 - k2) * inside) / (1 - k2 * inside)
}

const encode = (linear: number): number =>
  255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055)

describe('strength of pigments', () => {
  // Rutile 0.5 m²/g, 1 % of the mix: S 5.5 /mm, hidden (K = 0, SX 11.7) at 2.1 mm.
  it('scatters with 1 % of titanium dioxide as the white it stands for', () => {
    const white = byId('white-powder')
    const s = white.scatterM2PerG * concentration(white, 1)
    expect(s).toBeCloseTo(5.5, 10)
    expect(11.7 / s).toBeCloseTo(2.13, 2)
  })

  // Pearl 0.05 m²/g, 3 % of the mix: S 1.65 /mm, about 7 mm.
  it('scatters with 3 % of pearl as the pearl it stands for', () => {
    const pearl = byId('strong-pearl')
    const s = pearl.scatterM2PerG * concentration(pearl, 3)
    expect(s).toBeCloseTo(1.65, 10)
    expect(11.7 / s).toBeCloseTo(7.1, 1)
    // The estimate behind it: flakes of 0.6 µm, half facing, a fifth returned, 0.03 to 0.07.
    const flake = ((1 / (2.85 * 0.6)) * 0.2) / 2
    expect(flake).toBeGreaterThan(0.03)
    expect(flake).toBeLessThan(0.07)
  })

  // Carbon black K* 5 to 10 m²/g: 0.05 % hides in about 1 to 2 mm (lightness within 1 of a white behind).
  it('hides with 0.05 % of carbon black in about a millimetre', () => {
    const black = byId('black-paste')
    expect(black.absorbM2PerG).toBeCloseTo(7.5, 10)
    const k = black.absorbM2PerG * 0.0005 * 1100
    // L* = 903.3·Y near black: L* 1 is Y 0.0011 of a white of 0.8; in and out, exp(−2KX).
    const depth = Math.log(0.8 * 903.3) / (2 * k)
    expect(depth).toBeGreaterThan(0.6)
    expect(depth * 2).toBeGreaterThan(1)
    expect(depth).toBeLessThan(2)
  })

  // Beer-Lambert: 50 to 125 L/(g·cm) decadic; half the light through a centimetre needs about 3 ppm.
  it('halves the light of a centimetre with about 3 parts in a million of dye', () => {
    for (const p of PIGMENTS.filter(p => p.kind === 'dye')) {
      const strongest = Math.max(...p.absorbBandsM2PerG)
      const decadic = (10 * strongest) / Math.LN10 // m²/g to L/(g·cm)
      expect(decadic, p.id).toBeGreaterThanOrEqual(50)
      expect(decadic, p.id).toBeLessThanOrEqual(125)
      const kgM3 = Math.LN2 / (strongest * 10) // over 10 mm
      expect((kgM3 / 1100) * 1e6, p.id).toBeGreaterThan(2)
      expect((kgM3 / 1100) * 1e6, p.id).toBeLessThan(4.5)
    }
  })

  it('gives tint paste at its loadings the dye that pure dye brings at its own', () => {
    const dye = byId('blue-dye')
    const tint = byId('blue-tint')
    // Both guidances overlap once the dye in the paste is counted.
    expect(tint.loadingPct[0] * tint.pigmentFraction).toBeLessThan(dye.loadingPct[1])
    expect(tint.loadingPct[1] * tint.pigmentFraction).toBeGreaterThan(dye.loadingPct[0])
  })
})

describe('looks of pigments', () => {
  it('come back from absorption and scattering, band by band', () => {
    for (const p of PIGMENTS.filter(p => p.scatterM2PerG > 0)) {
      for (const [i, k] of p.absorbBandsM2PerG.entries()) {
        // The forward surface uses 0.0465, the exact reflection is 0.046521: white shifts by less than 0.1.
        expect(Math.abs(encode(seen(k, p.scatterM2PerG)) - p.srgb[i]!), `${p.id} ${i}`).toBeLessThan(0.1)
      }
    }
  })

  it('of clear colours keep the order of their bands, strongest band 1', () => {
    expect(Math.max(...clearShape([40, 110, 200]))).toBe(1)
    for (const p of PIGMENTS.filter(p => p.scatterM2PerG === 0)) {
      const shade = [...p.srgb.entries()].sort((a, b) => a[1] - b[1]).map(([i]) => i)
      const absorb = [...p.absorbBandsM2PerG.entries()].sort((a, b) => b[1] - a[1]).map(([i]) => i)
      expect(absorb, p.id).toEqual(shade)
    }
  })

  // Fresnel at normal incidence, n 1.55: 4.65 %; Saunderson's pair turned round by hand for R_m 0.5.
  it('pass the surface both ways', () => {
    expect(SURFACE_REFLECTION).toBeCloseTo(0.04652, 5)
    expect(INTERNAL_REFLECTION).toBe(0.6)
    const inside = insideReflectance(0.5)
    expect(((1 - SURFACE_REFLECTION) * 0.4 * inside) / (1 - 0.6 * inside)).toBeCloseTo(0.5, 12)
    expect(() => ratioOfSeen(0)).toThrow(/0/)
    expect(() => ratioOfSeen(0.99)).toThrow(/0.99/)
    expect(() => ratioOfSeen(Number.NaN)).toThrow(/NaN/)
  })

  // IEC 61966-2-1: 188 is 0.5028 linear; below 0.04045 the straight part.
  it('read sRGB by the standard', () => {
    expect(linearOf([188, 10, 255])[0]).toBeCloseTo(0.5029, 4)
    expect(linearOf([188, 10, 255])[1]).toBeCloseTo(10 / 255 / 12.92, 12)
    expect(linearOf([188, 10, 255])[2]).toBe(1)
  })
})

describe('handling of pigments', () => {
  it('keeps the common loadings and caps', () => {
    expect(byId('white-paste').loadingPct).toEqual([2, 5])
    expect(byId('white-powder').loadingPct).toEqual([1, 3])
    expect(byId('mica-pearl').loadingPct).toEqual([0.5, 2])
    expect(byId('strong-pearl').loadingPct).toEqual([2, 5])
    expect(byId('blue-dye').loadingPct).toEqual([0.0005, 0.01])
    expect(byId('blue-tint').loadingPct).toEqual([0.05, 0.3])
    for (const p of PIGMENTS) expect(p.loadingPct[1], p.id).toBeLessThanOrEqual(p.capPct)
    for (const p of PIGMENTS.filter(p => p.kind.endsWith('paste'))) expect(p.capPct, p.id).toBe(6)
  })

  it('has no colour for a family it was not made for', () => {
    expect(byId('white-paste').families).toEqual(['epoxy'])
    expect(byId('white-paste-polyurethane').families).toEqual(['polyurethane'])
    expect(byId('blue-dye').families).not.toContain('polyurethane')
    expect(byId('water-paint').families).toEqual([])
    for (const p of PIGMENTS.filter(p => p.families.includes('polyurethane') && p.pigmentFraction === 1)) {
      expect(p.note, p.id).toMatch(/dry it first/)
    }
  })

  it('says that what dissolves bleeds, and what scatters does not', () => {
    for (const p of PIGMENTS) {
      expect(p.bleeds, p.id).toBe(p.scatterM2PerG === 0)
      expect(p.dissolvesIn.length > 0, p.id).toBe(p.bleeds)
    }
  })

  it('mixes the density of a paste from its two parts by volume', () => {
    // 100 g: 50 g at 4.2 and 50 g at 1.14 g/ml are 11.90 + 43.86 ml.
    expect(byId('white-paste').densityGMl).toBeCloseTo(100 / 55.76, 2)
    for (const p of PIGMENTS.filter(p => p.kind === 'opaque-paste')) {
      expect(p.densityGMl, p.id).toBeGreaterThan(1.14)
      expect(p.densityGMl, p.id).toBeLessThan(2)
    }
  })
})
