import { readdirSync, readFileSync } from 'node:fs'
import { beforeAll, describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { at, put } = testFolder()
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']
const PIECE = {
  ...SOUND,
  mould: {
    margin: 12,
    ears: [
      { rectangle: [40, 40], at: [-175, 0] },
      { rectangle: [40, 40], at: [175, 0] }
    ]
  },
  cuts: [
    {
      id: 'tray',
      face: 'front',
      depth: 4,
      shape: { rectangle: [60, 40], corner: 5, at: [-100, 40] }
    },
    { id: 'hollow', kind: 'bore', face: 'back', depth: 6, shape: { circle: 20, at: [100, 40] } }
  ]
}
const SHOP = {
  castwright: 1,
  machine: { x: 800, y: 600, z: 110 },
  cutters: [
    { id: 'flattening 25', kind: 'surfacing', diameter: 25.4, length: 8, flutes: 3 },
    { id: 'straight 6', kind: 'flat-end-mill', diameter: 6, length: 32, reach: 42 },
    { id: 'long 5', kind: 'flat-end-mill', diameter: 5, length: 36, reach: 42 }
  ]
}
let piece = ''
let shop = ''
beforeAll(() => {
  piece = put('panel.piece.json', JSON.stringify(PIECE))
  shop = put('some.shop.json', JSON.stringify(SHOP))
})
const cuts = (...more: string[]) => answer(['cuts', piece, '--shop', shop, ...AS_OF, ...more])

describe('cuts', () => {
  it('writes programs with test cuts that a stated scrap holds, and says what it has no room for', () => {
    const wide = cuts('--out', at('wide'))
    expect(wide.err).toContain('written to')
    expect(wide.code).toBe(0)
    const { err = '', code } = cuts('--out', at('fitted'), '--scrap', '80 x 60 x 12')
    expect(code).toBe(0)
    const flat = err.replace(/\s+/g, ' ')
    expect(flat).toMatch(
      /no test cut of \d+-front-tray\.nc: none of it goes on the scrap; a board of \d+ x \d+ x 7 mm/
    )
    const names = readdirSync(at('fitted'))
    expect(names.some(n => n.endsWith('tray-test.nc'))).toBe(false)
    const bore = names.find(n => n.includes('hollow') && n.endsWith('test.nc'))!
    const text = readFileSync(at('fitted', bore), 'utf8')
    expect(text.replace(/\)\n\( */g, ' ')).toContain('Cheap board, 80 x 60 mm, at least 12 thick')
    // All words of the test stay on the board, its rim kept.
    for (const [, axis, value] of text.replace(/\([^)]*\)/g, '').matchAll(/([XY])(-?[\d.]+)/g))
      expect(Math.abs(Number(value))).toBeLessThan(axis === 'X' ? 40 : 30)
  })

  it('takes a scrap in inches, and refuses what is no board', () => {
    const { err, code } = cuts('--scrap', '8 in x 5 in x 1/2 in')
    expect(err).not.toContain('no test cut')
    expect(code).toBe(0)
    for (const bad of ['200 x 120', '200 x 120 x -3', '200 x 120 x 1/2 in', 'a board', '9000 x 1 x 1'])
      expect(cuts('--scrap', bad)).toMatchObject({ code: 2, err: expect.stringContaining('found --scrap') })
  })

  it('writes the program that begins again at a pass, by number and by name, alone', () => {
    const file = readdirSync(at('wide')).find(n => n.endsWith('front-tray.nc'))!
    const { err, code } = cuts('--restart', file, '--from', '2', '--out', at('again'))
    expect(code).toBe(0)
    const again = file.replace('.nc', '-from-pass-2.nc')
    expect(err).toContain(again)
    expect(readdirSync(at('again')).filter(n => !n.startsWith('.'))).toEqual([again])
    const text = readFileSync(at('again', again), 'utf8')
    expect(text).toContain('(RESTART: ')
    const name = /Begins at: (.*?)\./.exec(text.replace(/\)\n\( */g, ' '))![1]!
    const named = cuts('--restart', file, '--from', name)
    expect(named.code).toBe(0)
  })

  it('offers the nearest for a file or a pass that is not there', () => {
    const file = readdirSync(at('wide')).find(n => n.endsWith('front-tray.nc'))!
    const wrong = cuts('--restart', file.replace('tray', 'trax'), '--from', '1')
    expect(wrong).toMatchObject({ code: 2, err: expect.stringContaining(`nearest: ${file}`) })
    const none = cuts('--restart', file, '--from', 'pas 1 of 1, 4 deep')
    expect(none).toMatchObject({
      code: 2,
      err: expect.stringMatching(/no pass "pas 1 of 1, 4 deep".*nearest: "pass 1 of 1, 4 deep"/s)
    })
    expect(cuts('--restart', file)).toMatchObject({ code: 2 })
  })
})
