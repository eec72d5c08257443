import { describe, expect, it } from 'vitest'
import { checkPiece, checkShop } from '../../src/piece/read.ts'
import { PLAIN } from '../findings/harness.ts'

const BORE = { id: 'bore', kind: 'bore', face: 'back', shape: { circle: 8, at: [100, 0] }, depth: 6 }
const piece = (part: object, cut: object = {}) =>
  checkPiece(
    { ...PLAIN, cuts: [{ ...BORE, ...cut }], hardware: [{ kind: 'dowel-pin-8', in: 'bore', ...part }] },
    'piece'
  )

describe('what a fit cannot be', () => {
  it('a fit below zero is refused where it stands', () => {
    expect(() => piece({ clearance: -0.2 })).toThrow(
      /piece at hardware\[0\]\.clearance: found -0\.2; allowed: .*0 to 20/
    )
    expect(() => piece({ tolerance: -0.1 })).toThrow(/hardware\[0\]\.tolerance: found -0\.1; allowed/)
    expect(() => piece({ film: '-0.1 mm' })).toThrow(/hardware\[0\]\.film: found "-0\.1 mm"; allowed/)
  })
  it('a class that is none, or of a hole for a shaft, is refused with those there are', () => {
    expect(() => piece({ toleranceClass: 'H7' })).toThrow(
      /hardware\[0\]\.toleranceClass: found "H7"; allowed: .*h7/
    )
    expect(() => piece({}, { toleranceClass: 'H77' })).toThrow(
      /cuts\[0\]\.toleranceClass: found "H77"; allowed: .*H7/
    )
  })
  it('a class on a size beyond its tables is refused with the largest', () => {
    expect(() => piece({}, { toleranceClass: 'H7', shape: { circle: 81, at: [100, 0] } })).toThrow(
      /cuts\[0\]\.toleranceClass: found "H7"; allowed: a class on a size of at most 80 mm/
    )
    expect(() => piece({ toleranceClass: 'h6', diameter: 90 })).toThrow(/hardware\[0\]\.toleranceClass/)
    expect(() => piece({ toleranceClass: 'h6', diameter: 8 }, { toleranceClass: 'H7' })).not.toThrow()
  })
  it('a hand tool that is never off is refused', () => {
    expect(() => checkShop({ castwright: 1, byHand: { router: 0 } }, 'shop')).toThrow(
      /shop at byHand\.router: found 0; allowed/
    )
  })
})
