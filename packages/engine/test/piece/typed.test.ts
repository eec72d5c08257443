import { describe, expect, it } from 'vitest'
import { checkPiece, checkShop, readPiece } from '../../src/piece/read.ts'
import { PIECES, SHOP } from './rich.ts'

const TYPED = {
  castwright: 1,
  name: 'a tray',
  outline: { rectangle: ['12 in', '1 ft'], corner: '1/2"', at: [0, '-1 1/2 in'] },
  flatten: { front: '1/32 in' },
  timbers: [{ species: 'ash-white', outline: { circle: '10 cm' }, thickness: '1 1/2 in', moisture: '9 %' }],
  pours: [
    { resin: 'medium', mass: '2 lb', pack: '1 kg', vessel: '1 gal', startTemperature: '70 °F', after: '6 h' }
  ]
}

describe('what a maker typed', () => {
  it('stays in the document as typed, and reads as numbers in the fixed units', () => {
    const { document, value } = readPiece(JSON.stringify(TYPED), 'tray')
    expect(document).toEqual(TYPED)
    expect(value.outline).toEqual({ rectangle: [304.8, 304.8], corner: 12.7, at: [0, -38.1] })
    expect(value.flatten.front).toBe(25.4 / 32)
    expect(value.timbers[0]).toMatchObject({ outline: { circle: 100 }, thickness: 38.1, moisture: 9 })
    expect(value.pours[0]).toMatchObject({ mass: 907.18474, pack: 1000, vessel: 3785.411784, after: 360 })
    expect(value.pours[0]!.startTemperature).toBeCloseTo(190 / 9, 12)
  })

  it('comes out of the document as it went in, to the byte', () => {
    const text = JSON.stringify(TYPED)
    expect(JSON.stringify(readPiece(text, 'tray').document)).toBe(text)
    for (const piece of PIECES) {
      expect(JSON.stringify(checkPiece(piece, 'p').document)).toBe(JSON.stringify(piece))
    }
    expect(JSON.stringify(checkShop(SHOP, 's').document)).toBe(JSON.stringify(SHOP))
  })

  it('gets no default written into it', () => {
    const { document, value } = readPiece(JSON.stringify(TYPED), 'tray')
    expect(document).not.toHaveProperty('down')
    expect(value.down).toBe('back')
    expect(document.flatten).toEqual({ front: '1/32 in' })
    expect(value.flatten.back).toBe(1)
  })

  it('reads the same value twice over: a value read is a document too', () => {
    for (const piece of PIECES) {
      const once = checkPiece(piece, 'p').value
      expect(checkPiece(JSON.parse(JSON.stringify(once)), 'p').value).toEqual(once)
    }
  })
})
