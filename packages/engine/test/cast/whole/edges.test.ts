import { describe, expect, it } from 'vitest'
import { plan } from '../../../src/plan.ts'
import { tray, wholeOf } from './mould.ts'

const pourOf = (depth: number) => ({ pours: [{ id: 'only', resin: 'deep', depth }] })
const full = { edges: true, effort: 'preview' } as const

describe('how near a pour is to its limit', () => {
  const depth = 36
  const input = tray([260, 200], pourOf(depth))
  const whole = wholeOf(input, full)
  const edge = whole.edges[0]!

  it('at the greatest depth found, the top of the band of a plan of that depth stands at the limit', () => {
    const liquid = plan(input, { asOf: '2026-11-01T08:00Z' }).plan.pours[0]!.stack
    const cured = (edge.depthMm! * liquid.depth) / liquid.liquidDepth
    const there = wholeOf(tray([260, 200], pourOf(cured)), { effort: 'preview' })
    expect(Math.abs(there.casts[0]!.peakBandC[1] - edge.limitC)).toBeLessThan(1.5)
  })

  it('in the room found, the top of the band stands at the limit', () => {
    const there = wholeOf(
      tray([260, 200], pourOf(depth), { climate: { night: 22 + edge.roomK!, day: 22 + edge.roomK! } }),
      { effort: 'preview' }
    )
    expect(Math.abs(there.casts[0]!.peakBandC[1] - edge.limitC)).toBeLessThan(1.5)
  })

  it('depth and room agree on the side of the limit, and both raise the peak', () => {
    const over = whole.casts[0]!.peakBandC[1] > edge.limitC
    expect(edge.roomK! < 0).toBe(over)
    expect(edge.perMm).toBeGreaterThan(0)
    expect(edge.perK).toBeGreaterThan(0)
  })

  it('a mix 10 °C warmer is hotter and leaves less time to work', () => {
    expect(edge.warmer.peakK).toBeGreaterThan(0)
    expect(edge.warmer.workingMin!).toBeLessThan(0)
  })

  it('a thin pour of a slow resin has no edge', () => {
    const thin = wholeOf(tray([260, 200], pourOf(6)), full).edges[0]!
    expect(thin.depthMm).toBeNull()
    expect(thin.roomK).toBeNull()
  })

  it('allowed depth falls as the room warms (C05)', () => {
    const at = (room: number) =>
      wholeOf(tray([260, 200], pourOf(depth), { climate: { night: room, day: room } }), full).edges[0]!
        .depthMm!
    expect(at(26)).toBeLessThan(edge.depthMm! - 1)
  })
})
