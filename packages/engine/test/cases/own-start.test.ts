import { describe, expect, it } from 'vitest'
import { mended } from '../findings/harness.ts'
import { asked } from './asked.ts'

const piece = (start: string) => ({
  castwright: 1 as const,
  name: 'two layers at given moments',
  outline: { rectangle: [400, 300] as [number, number] },
  pours: [
    { id: 'river', resin: 'deep', depth: 25, start: '2026-11-27T10:00+01:00' },
    { id: 'two', resin: 'deep', depth: 20, start }
  ]
})

describe('a pour at a moment of the maker’s own', () => {
  it('before the layer below has gelled is too early: the moment counts, not the usual wait', () => {
    const [found] = asked({ piece: piece('2026-11-27T20:55+01:00') }, 'recoat-window')
    expect(found!.value).toBeCloseTo(655, 0)
    expect(found!.says).toMatch(/two is poured 10 h 55 after river/)
  })

  it('inside the window says nothing; before the pour below is too early as well', () => {
    expect(asked({ piece: piece('2026-11-28T08:00+01:00') }, 'recoat-window')).toEqual([])
    expect(asked({ piece: piece('2026-11-27T09:00+01:00') }, 'recoat-window')).toHaveLength(1)
  })

  it('at night is said of that moment', () => {
    const found = asked({ piece: piece('2026-11-28T02:00+01:00') }, 'window-away').filter(f =>
      f.at.includes('/1')
    )
    expect(found.length).toBeGreaterThan(0)
    for (const f of found) expect(f.says).toMatch(/02:00|01:00/)
  })

  it('moved to the moment that is offered is said no more, neither as away nor as too early or late', () => {
    const given = { piece: piece('2026-11-28T02:00+01:00') }
    const [found] = asked(given, 'window-away').filter(f => f.at.includes('/1'))
    const moved = mended(given, found!.fix!)
    expect(asked(moved, 'window-away').filter(f => f.at.includes('/1'))).toEqual([])
    expect(asked(moved, 'recoat-window')).toEqual([])
  })

  it('is offered no other moment once it is poured', () => {
    const at = '2026-11-28T02:00+01:00'
    const readings = [{ id: 'poured-01', at, kind: 'poured', pour: 'two', mass: 2000 }] as const
    const [found] = asked({ piece: piece(at), readings }, 'window-away').filter(f => f.at.includes('/1'))
    expect(found!.says).toMatch(/Be there then, or have somebody there\.$/)
    expect(found!.fix).toBeNull()
  })

  it('is offered no moment at which the layer below has not gelled', () => {
    const { pours, ...rest } = piece('')
    const waits = { piece: { ...rest, pours: [pours[0]!, { id: 'two', resin: 'deep', depth: 20 }] } }
    for (const f of asked(waits, 'window-away').filter(f => f.at.includes('/1')))
      expect(f.says).not.toMatch(/on Friday it would fit/)
  })
})
