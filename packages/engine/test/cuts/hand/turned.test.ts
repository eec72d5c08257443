import { describe, expect, it } from 'vitest'
import { turnsOf, turnWords } from '../../../src/cuts/hand/turned.ts'
import { polygon, rectangle } from '../../../src/shape/build.ts'

const hole = (x: number, y: number, diameterMm = 8) => ({ x, y, diameterMm })
const edge = rectangle(200, 100, 0, 0.01)

describe('a drilling template laid on wrongly', () => {
  it('C77 four dowels alike about both middles: every wrong turn fits and loses nothing', () => {
    const turns = turnsOf(edge, [hole(-80, -30), hole(-80, 30), hole(80, -30), hole(80, 30)])
    expect(new Set(Object.values(turns))).toEqual(new Set(['harmless']))
    expect(turnWords(turns)).toContain('fall in the same places')
  })

  it('C77 one dowel moved: every wrong turn still fits the edge and the holes are astray', () => {
    const turns = turnsOf(edge, [hole(-80, -30), hole(-80, 30), hole(80, -30), hole(70, 30)])
    expect(new Set(Object.values(turns))).toEqual(new Set(['astray']))
    expect(turnWords(turns)).toContain('one stop off the middle')
  })

  it('C77 a pattern alike under a half turn alone', () => {
    const turns = turnsOf(edge, [hole(-80, -30), hole(80, 30)])
    expect(turns).toEqual({
      'half turned': 'harmless',
      'turned over, left to right': 'astray',
      'turned over, top to bottom': 'astray'
    })
  })

  it('holes of unlike size are not the same hole', () => {
    expect(turnsOf(edge, [hole(-80, 0), hole(80, 0, 10)])['half turned']).toBe('astray')
  })

  it('a trapezium off the origin is alike left and right only', () => {
    const roof = polygon(Float64Array.of(500, 300, 700, 300, 650, 400, 550, 400))
    expect(turnsOf(roof, [hole(560, 320), hole(640, 320)])).toEqual({
      'half turned': 'seen',
      'turned over, left to right': 'harmless',
      'turned over, top to bottom': 'seen'
    })
  })

  it('an L is seen whichever way it is turned', () => {
    const l = polygon(Float64Array.of(0, 0, 100, 0, 100, 30, 30, 30, 30, 60, 0, 60))
    const turns = turnsOf(l, [hole(15, 15)])
    expect(new Set(Object.values(turns))).toEqual(new Set(['seen']))
    expect(turnWords(turns)).toBeNull()
  })
})
