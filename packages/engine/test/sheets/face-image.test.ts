import { deflateSync, inflateSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { bounds } from '../../src/shape/measure.ts'
import { faceImage, pixelFor, variesOnPlan } from '../../src/sheets/face-image.ts'
import { seenColour } from '../../src/sheets/look.ts'
import { coreModelOf } from '../../src/sheets/model.ts'
import { crc32, pngFile } from '../../src/sheets/png.ts'
import { coreAt } from '../../src/stack/core.ts'
import { BOARDS, PANEL, planOf, TABLE } from './pieces.ts'

const colourAt = (image: ReturnType<typeof faceImage>, column: number, row: number) => [
  ...image.rgba.subarray(4 * (row * image.width + column), 4 * (row * image.width + column) + 4)
]
const hex = (bytes: readonly number[]) =>
  `#${bytes
    .slice(0, 3)
    .map(b => b.toString(16).padStart(2, '0'))
    .join('')}`

describe('the picture of a face', () => {
  const model = coreModelOf(planOf(TABLE).work)
  const pixelMm = 6

  it('shows on the front what the core at each place looks like, left to right and from the top', () => {
    const image = faceImage(model, { face: 'front', pixelMm })
    const { box } = image
    let off = 0
    let far = 0
    for (let row = 3; row < image.height; row += 4) {
      for (let column = 2; column < image.width; column += 5) {
        const [x, y] = [box.minX + (column + 0.5) * pixelMm, box.maxY - (row + 0.5) * pixelMm]
        const seen = seenColour(model.looks, coreAt(model.geometry, model.events, x, y), 'front')
        const bytes = colourAt(image, column, row)
        if (seen === null || bytes[3] === 0) continue
        const want = [1, 3, 5].map(k => Number.parseInt(seen.slice(k, k + 2), 16))
        far = Math.max(far, ...want.map((v, k) => Math.abs(v - bytes[k]!)))
        if (hex(bytes) !== seen) off++
      }
    }
    // Heights of a slanted side are told apart by a tenth of a millimetre.
    expect(far).toBeLessThanOrEqual(4)
    expect(off).toBeLessThan(40)
  })

  it('shows the back as it is seen when the piece is turned over left to right', () => {
    const image = faceImage(model, { face: 'back', pixelMm })
    const { box } = image
    const [column, row] = [20, Math.floor(image.height / 4)]
    const x = box.maxX - (column + 0.5) * pixelMm
    const y = box.maxY - (row + 0.5) * pixelMm
    const core = coreAt(model.geometry, model.events, x, y)
    expect(hex(colourAt(image, column, row))).toBe(seenColour(model.looks, core, 'back'))
  })

  it('leaves open what lies level where only the rest is wanted', () => {
    const image = faceImage(model, { face: 'front', pixelMm: 2, varyingOnly: true })
    const covered = image.rgba.filter((v, k) => k % 4 === 3 && v > 0).length
    // The slanted live edges of the two slabs are all that varies.
    expect(covered).toBeGreaterThan(1000)
    expect(covered).toBeLessThan((image.width * image.height) / 5)
    expect(variesOnPlan(model)).toBe(true)
    expect(variesOnPlan(coreModelOf(planOf(PANEL).work))).toBe(false)
    // A juice groove with a round floor.
    expect(variesOnPlan(coreModelOf(planOf(BOARDS).work))).toBe(true)
  })

  it('is as fine as asked, and no larger than asked', () => {
    const box = bounds(model.geometry.outline)
    expect(pixelFor(box, 1e9, 0.5)).toBe(0.5)
    const image = faceImage(model, { face: 'front', pixelMm: pixelFor(box, 10_000, 0.5) })
    expect(image.width * image.height).toBeGreaterThan(9_000)
    expect(image.width * image.height).toBeLessThan(10_400)
  })
})

describe('a picture as a file', () => {
  it('has chunks whose remainder is that of the standard', () => {
    // PNG, annex D: CRC-32 of ISO 3309. The check value of "123456789" is that of the catalogue of such codes (memory);
    // the end chunk of every PNG file is the twelve bytes below.
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
    const end = pngFile(
      { width: 1, height: 1, rgba: new Uint8ClampedArray(4), box: bounds({ rings: [] }) },
      deflateSync
    )
    expect([...end.slice(-12)]).toEqual([0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82])
  })

  it('holds every pixel, row by row', () => {
    const rgba = Uint8ClampedArray.from({ length: 4 * 6 }, (_, k) => (k * 37) % 256)
    const file = pngFile({ width: 3, height: 2, rgba, box: bounds({ rings: [] }) }, deflateSync)
    const view = new DataView(file.buffer)
    expect([view.getUint32(16), view.getUint32(20)]).toEqual([3, 2])
    const at = 8 + 25 + 13
    const rows = inflateSync(file.slice(at + 8, at + 8 + view.getUint32(at)))
    expect([rows[0], rows[13]]).toEqual([0, 0])
    expect([...rows.subarray(1, 13), ...rows.subarray(14, 26)]).toEqual([...rgba])
  })
})
