import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { answer } from '../src/main.ts'
import { SOUND, testFolder } from './folder.ts'

const { at, put } = testFolder()
const sound = put('sound.piece.json', JSON.stringify(SOUND))
const AS_OF = ['--as-of', '2026-11-20T09:00+01:00']

describe('thermometers in the cast', () => {
  it('write their courses beside the hottest of each level; what lies off the mould is said', () => {
    const { out, err, code } = answer([
      'cast',
      sound,
      '--quick',
      '--out',
      at('cast'),
      '--probe',
      '0,0,5; 900,0,5',
      ...AS_OF
    ])
    expect([code, err]).toEqual([0, expect.stringContaining('no thermometer at 900, 0, 5')])
    expect(out).toMatch(/top of the band at 60 °C/)
    expect(out).toMatch(/the room\n {2}holds from [\d.]+ °C/)
    const rows = readFileSync(at('cast', 'probes.csv'), 'utf8').trim().split('\r\n')
    expect(rows[0]).toBe('minutes,"0 0 5 mm, °C"')
    const temps = rows.slice(1).map(r => Number(r.split(',')[1]))
    const json = JSON.parse(readFileSync(at('cast', 'cast.json'), 'utf8'))
    const peaks = json.pours.map((p: { cast: { peakC: number } }) => p.cast.peakC)
    expect(Math.max(...temps)).toBeLessThanOrEqual(Math.max(...peaks) + 1e-3)
    expect(Math.max(...temps)).toBeGreaterThan(temps[0]!)
    const heights = readFileSync(at('cast', 'heights.csv'), 'utf8').trim().split('\r\n').slice(1)
    const hottest = Math.max(...heights.map(h => Number(h.split(',')[2])))
    expect(Math.abs(hottest - Math.max(...peaks))).toBeLessThan(0.01)
    expect(Math.abs(json.whole.energyClosure)).toBeLessThan(1e-3)
  })

  for (const wrong of ['0,0', 'a,b,c', '1,2,', ''])
    it(`refuses "${wrong}" in words, and writes nothing`, () => {
      const { out, err, code } = answer(['cast', sound, '--out', at('none'), '--probe', wrong, ...AS_OF])
      expect([out, code]).toEqual(['', 2])
      expect(err).toMatch(/--probe/)
      expect(existsSync(at('none'))).toBe(false)
    })
})
