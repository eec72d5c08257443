import { describe, expect, it } from 'vitest'
import { whyHotter } from '../../src/cast/hotter.ts'
import { castInputOf } from '../../src/findings/pour-depth.ts'
import type { Given } from '../findings/harness.ts'
import { mended, PLAIN } from '../findings/harness.ts'
import { asked, theOne, worked } from './asked.ts'

// Own cases that hang on the time of day, and on what came before.

describe('own cases: time', () => {
  const poured = (start: string, more: object = {}): Given => ({
    piece: { ...PLAIN, pours: [{ id: 'clear', resin: 'deep', depth: 40, start, ...more }] }
  })

  it('O6 a peak at ten to midnight while the maker sleeps: an earlier start that fits', () => {
    // Seven to eight hours to the peak: mixed at 16:30 it comes about ten to midnight.
    const late = poured('2026-03-02T16:30+01:00')
    const peakMin = worked(late).casts[0]!.peakMin
    const hour = 16.5 + peakMin / 60
    expect(hour).toBeGreaterThan(23)
    const found = theOne(late, 'peak-unattended')
    expect(found.severity).toBe('caution')
    expect(found.says).toMatch(/is hottest about (23:\d\d on Monday|00:\d\d on Tuesday), at night/)
    const after = mended(late, found.fix!)
    expect(asked(after, 'peak-unattended')).toEqual([])
    expect(asked(after, 'window-away')).toEqual([])
  })

  it('O6 an unattended peak passes when the top of its band is well under every limit', () => {
    const shallow = poured('2026-03-02T16:30+01:00', { depth: 12 })
    expect(worked(shallow).casts[0]!.peakBandC[1]).toBeLessThan(50)
    expect(asked(shallow, 'peak-unattended')).toEqual([])
  })

  it('O6 the first hour after a pour is watched; bubble passes are moments of the window', () => {
    const closing: Given = {
      ...poured('2026-03-02T16:40+01:00', { depth: 12 }),
      shop: { castwright: 1, hours: { mon: ['08:00-17:00'], tue: ['08:00-17:00'] } }
    }
    const found = theOne(closing, 'window-away')
    expect(found).toMatchObject({ value: 20, limit: 60, unit: 'min' })
    expect(found.says).toMatch(/watched for leaks and bubbles in its first hour, when nobody is at the bench/)
    expect(found.fix).toEqual([{ op: 'replace', path: '/pours/0/start', value: '2026-03-02T15:55+01:00' }])
    expect(worked(closing).casts[0]!.windows.passes.moments).toEqual([5, 15, 30, 60, 90, 120])
  })

  it('O6 a moment in UTC is read on the shop’s own clock', () => {
    // 21:30 UTC is 22:30 in Berlin in winter: at night, though UTC says evening.
    const at = (timeZone: string): Given => ({
      ...poured('2026-03-02T20:30Z', { depth: 12 }),
      shop: { castwright: 1, timeZone }
    })
    expect(asked(at('UTC'), 'window-away')).toEqual([])
    expect(asked(at('Europe/Berlin'), 'window-away').length).toBe(1)
  })

  // Peak 58 at 9 mm and 52 at 13 mm, same room and resin.
  const two = (after: string): Given => ({
    piece: {
      ...PLAIN,
      pours: [
        { id: 'deeper', resin: 'medium', depth: 9 },
        { id: 'shallower', resin: 'medium', height: 17, after }
      ]
    }
  })

  it('O9 a shallower pour that runs hotter says why, and by how much', () => {
    const given = two('4 h')
    const work = worked(given)
    const [deeper, shallower] = work.casts
    expect(work.stack.pours[1]!.liquidDepth).toBeLessThan(work.stack.pours[0]!.liquidDepth)
    expect(shallower!.peakC).toBeGreaterThan(deeper!.peakC)
    const found = theOne(given, 'hotter-shallow')
    expect(found.severity).toBe('note')
    expect(found.says).toMatch(/mostly because the layer below it still cures and is warm \(\d+ K\)/)
    // Days later the layer below is cold: nothing odd, nothing said.
    expect(asked(two('4 d'), 'hotter-shallow')).toEqual([])
  })

  it('O9 the difference taken away is the difference that made it: a warmer mix alone', () => {
    const given: Given = {
      piece: {
        ...PLAIN,
        pours: [
          { id: 'deeper', resin: 'medium', depth: 8 },
          { id: 'shallower', resin: 'medium', height: 15, after: '10 d', startTemperature: 40 }
        ]
      },
      shop: { castwright: 1, climate: { night: 21, day: 21 } }
    }
    const work = worked(given)
    const worths = whyHotter(castInputOf(work), work.casts, 1, 0)
    expect(worths[0]!.difference).toBe('mix')
    // Room without a swing, ten days between: no hour and no warm layer to speak of.
    for (const w of worths.filter(x => x.difference === 'hour' || x.difference === 'warm layer'))
      expect(Math.abs(w.kelvin)).toBeLessThan(1)
  })

  it('C05 depth, room and mix multiply: each alone passes, together they do not', () => {
    const found = theOne(
      {
        piece: {
          ...PLAIN,
          pours: [
            { id: 'first', resin: 'medium', depth: 5 },
            { id: 'second', resin: 'medium', height: 12.4, after: '7 h', startTemperature: 38 }
          ]
        },
        shop: { castwright: 1, climate: { night: 26, day: 29 } }
      },
      'factors-together'
    )
    expect(found.value).toBeGreaterThan(60)
    expect(found.says).toMatch(/Each would pass; they multiply, and together it comes to/)
    for (const [, c] of found.says.matchAll(/: (\d+) °C/g)) expect(Number(c)).toBeLessThanOrEqual(60)
  })
})
