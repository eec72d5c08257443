import { converter, differenceCiede2000 } from 'culori'
import { describe, expect, it } from 'vitest'
import { labOf, linearOfLab } from '../../src/colour/cielab.ts'
import { difference, showsOf } from '../../src/colour/difference.ts'
import { encodedOf, hexOf, linearOfHex, linearOfXyz, xyzOf } from '../../src/colour/srgb.ts'
import { chance } from '../stack/random.ts'
import { PAIRS } from './ciede2000-pairs.ts'

const other = differenceCiede2000()
const toLab65 = converter('lab65')

describe('difference of two colours', () => {
  it('is that of the 34 published pairs, to their four decimals', () => {
    expect(PAIRS).toHaveLength(34)
    for (const [l1, a1, b1, l2, a2, b2, published] of PAIRS) {
      expect(difference([l1, a1, b1], [l2, a2, b2]), `${l1} ${a1} ${b1}`).toBeCloseTo(published, 4)
      expect(difference([l2, a2, b2], [l1, a1, b1])).toBeCloseTo(published, 4)
    }
  })

  it('agrees with another library over 20 000 seeded pairs', () => {
    const { span } = chance(20260114)
    let worst = 0
    for (let i = 0; i < 20_000; i++) {
      const one = [span(0, 100), span(-100, 100), span(-100, 100)] as const
      const near = i % 2 === 0 ? 3 : 100
      const two = [
        Math.min(100, Math.max(0, one[0] + span(-near, near))),
        one[1] + span(-near, near),
        one[2] + span(-near, near)
      ] as const
      const theirs = other(
        { mode: 'lab65', l: one[0], a: one[1], b: one[2] },
        { mode: 'lab65', l: two[0], a: two[1], b: two[2] }
      )
      worst = Math.max(worst, Math.abs(difference(one, two) - theirs))
    }
    expect(worst).toBeLessThan(1e-6)
  })

  it('is nothing from a colour to itself, and the eye sees it from 1, plainly beyond 2', () => {
    expect(difference([41, 12, -30], [41, 12, -30])).toBe(0)
    expect(difference([41, 0, 0], [41, 0, 0])).toBe(0)
    expect([0.99, 1, 2, 2.01].map(showsOf)).toEqual(['no', 'faint', 'faint', 'yes'])
  })
})

describe('sRGB', () => {
  it('comes back for every one of 256 steps, and its two halves meet', () => {
    for (let i = 0; i < 256; i++) {
      const hex = `#${i.toString(16).padStart(2, '0')}${(255 - i).toString(16).padStart(2, '0')}80`
      expect(hexOf(linearOfHex(hex))).toBe(hex)
    }
    expect(encodedOf(0.0031308 + 1e-9) - encodedOf(0.0031308)).toBeLessThan(1e-4)
    expect(encodedOf(-1)).toBe(0)
    expect(encodedOf(7)).toBe(255)
  })

  // IEC 61966-2-1: the matrix and its inverse as published are each other's within their figures.
  it('comes back through tristimulus values and through CIELAB', () => {
    const { span } = chance(8)
    for (let i = 0; i < 500; i++) {
      const bands = [span(0, 1), span(0, 1), span(0, 1)] as const
      const [back, lab] = [linearOfXyz(xyzOf(bands)), linearOfLab(labOf(bands))]
      for (let b = 0; b < 3; b++) {
        expect(back[b]!).toBeCloseTo(bands[b]!, 6)
        expect(lab[b]!).toBeCloseTo(bands[b]!, 6)
      }
    }
  })

  it('gives the CIELAB of another library', () => {
    const { span } = chance(9)
    for (let i = 0; i < 500; i++) {
      const hex = hexOf([span(0, 1) ** 2, span(0, 1) ** 2, span(0, 1) ** 2])
      const theirs = toLab65(hex)!
      const [l, a, b] = labOf(linearOfHex(hex))
      // Theirs has another matrix, made from chromaticities; a hundredth is a hundredth of what is noticed.
      expect(Math.abs(l - theirs.l)).toBeLessThan(1e-2)
      expect(Math.abs(a - theirs.a)).toBeLessThan(2e-2)
      expect(Math.abs(b - theirs.b)).toBeLessThan(2e-2)
    }
  })

  it('has white at (100, 0, 0) and black at nothing', () => {
    const [l, a, b] = labOf([1, 1, 1])
    // The published matrix has seven figures: its rows come to the white within 1e-7.
    expect(l).toBeCloseTo(100, 4)
    expect(Math.hypot(a, b)).toBeLessThan(1e-3)
    for (const x of labOf([0, 0, 0])) expect(x).toBeCloseTo(0, 9)
  })
})
