import { expect, it } from 'vitest'
import { area } from '../../src/shape/measure.ts'
import { plainPiece, stackOf } from '../stack/build.ts'

const svg = (width: number) =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="100mm" viewBox="0 0 200 100"><rect id="board" x="10" y="10" width="${width}" height="40"/></svg>`
const areaOf = (width: number) => {
  const piece = plainPiece({
    timbers: [
      { species: 'ash-white', outline: { file: 'b.svg', part: 'board', at: [-60, 40] }, thickness: 10 }
    ]
  })
  return area(stackOf(piece, {}, { 'b.svg': svg(width) }).geometry.timbers[0]!.upper)
}

it('a drawing of the same name is read anew when its text is another, and alike when it is the same', () => {
  expect(areaOf(60)).toBeCloseTo(2400, 6)
  expect(areaOf(70)).toBeCloseTo(2800, 6)
  expect(areaOf(60)).toBeCloseTo(2400, 6)
})
