import { describe, expect, it } from 'vitest'
import type { MotionLimits } from '../../../src/cuts/run/motion-segment.ts'
import { segmentsOf } from '../../../src/cuts/run/motion-segment.ts'
import { motionTime, runMinutes, segmentsTime } from '../../../src/cuts/run/motion-time.ts'
import type { Move } from '../../../src/cuts/toolpath.ts'
import { chance } from '../../stack/random.ts'

const M: MotionLimits = {
  rapid: 3000,
  feed: 2400,
  plunge: 600,
  acceleration: 300,
  corner: 0.02,
  change: 3
}
const start: Move = { kind: 'rapid', x: 0, y: 0, z: 0 }
const line = (x: number, y: number, z = 0, feedMmMin = 2400): Move => ({ kind: 'line', x, y, z, feedMmMin })
const seconds = (moves: readonly Move[], limits = M) => 60 * motionTime({ moves, passes: [] }, limits).minutes

// Straight after the definitions, apart from the code: circle that leaves a corner by δ, found by halving.
function cornerMms(turnRad: number, shorter: number, limits: MotionLimits): number {
  const half = (Math.PI - turnRad) / 2
  let low = 0
  let high = 1e6
  for (let i = 0; i < 200; i++) {
    const r = (low + high) / 2
    // The middle of a circle that touches both sides lies r/sin(half) from the corner.
    const leaves = r / Math.sin(half) - r
    const touches = r / Math.tan(half)
    if (leaves > limits.corner || touches > shorter / 2) high = r
    else low = r
  }
  return Math.sqrt(limits.acceleration * low)
}

describe('machine time', () => {
  it('is that of a trapezoid for a long move and of a triangle for a short one', () => {
    // 40 mm/s: 100/40 + 40/300.
    expect(seconds([start, line(100, 0)])).toBeCloseTo(100 / 40 + 40 / 300, 12)
    // 2 mm never reach 40 mm/s (that takes 2.67 + 2.67): 2·√(2/300).
    expect(seconds([start, line(2, 0)])).toBeCloseTo(2 * Math.sqrt(2 / 300), 12)
    // Rapid at 50 mm/s; down no faster than 10 mm/s; a dwell as it says.
    expect(seconds([start, { kind: 'rapid', x: 0, y: 80, z: 0 }])).toBeCloseTo(80 / 50 + 50 / 300, 12)
    expect(seconds([start, line(0, 0, -10)])).toBeCloseTo(10 / 10 + 10 / 300, 12)
    expect(seconds([start, { kind: 'dwell', seconds: 1.5 }])).toBe(1.5)
  })

  it('passes straight joints at speed and stops to turn back', () => {
    expect(seconds([start, line(50, 0), line(100, 0)])).toBeCloseTo(100 / 40 + 40 / 300, 9)
    expect(seconds([start, line(50, 0), line(50, 0), line(100, 0)])).toBeCloseTo(100 / 40 + 40 / 300, 9)
    expect(seconds([start, line(50, 0), line(0, 0)])).toBeCloseTo(2 * (50 / 40 + 40 / 300), 9)
  })

  // Right angle, rounded by 0.02: R = 0.02·sin45/(1 − sin45) = 0.04828, v = √(300·0.04828) = 3.806 mm/s.
  it('of a square follows from the speed in its corners', () => {
    const v = Math.sqrt(300 * 0.02 * (Math.SQRT1_2 / (1 - Math.SQRT1_2)))
    expect(v).toBeCloseTo(3.806, 3)
    const side = (u: number, w: number) => {
      const ways = (40 ** 2 - u ** 2) / 600 + (40 ** 2 - w ** 2) / 600
      return (40 - u) / 300 + (40 - w) / 300 + (60 - ways) / 40
    }
    const square = [start, line(60, 0), line(60, 60), line(0, 60), line(0, 0)]
    expect(seconds(square)).toBeCloseTo(side(0, v) + 2 * side(v, v) + side(v, 0), 9)
  })

  it('of a circle is held by what turns it', () => {
    const circle = (r: number): Move[] => [
      { kind: 'rapid', x: r, y: 0, z: 0 },
      { kind: 'arc', x: r, y: 0, z: 0, cx: 0, cy: 0, clockwise: false, feedMmMin: 2400 }
    ]
    // R 3: √(300·3) = 30 mm/s, under the feed; R 10: 54.8, so the feed of 40 holds.
    expect(seconds(circle(3))).toBeCloseTo((2 * Math.PI * 3) / 30 + 30 / 300, 9)
    expect(seconds(circle(10))).toBeCloseTo((2 * Math.PI * 10) / 40 + 40 / 300, 9)
  })

  it('is the same for an arc and for the lines that stand for it, clockwise or not, rising or not', () => {
    for (const clockwise of [false, true]) {
      const sign = clockwise ? -1 : 1
      const r = 4
      const arc: Move[] = [
        { kind: 'rapid', x: r, y: 0, z: 0 },
        { kind: 'arc', x: 0, y: sign * r, z: 1, cx: 0, cy: 0, clockwise, feedMmMin: 2400 },
        { kind: 'arc', x: 0, y: -sign * r, z: 3, cx: 0, cy: 0, clockwise, feedMmMin: 2400 }
      ]
      const chords: Move[] = [arc[0]!]
      const n = 600
      for (let i = 1; i <= n; i++) {
        const t = (sign * (1.5 * Math.PI * i)) / n
        chords.push(line(r * Math.cos(t), r * Math.sin(t), (3 * i) / n))
      }
      expect(seconds(chords) / seconds(arc)).toBeCloseTo(1, 2)
    }
  })

  it('comes to length over feed where nothing has to be gained', () => {
    const c = chance(5)
    const moves: Move[] = [start]
    let length = 0
    for (let i = 0; i < 40; i++) {
      const before = moves[moves.length - 1] as { x: number; y: number }
      const next = line(c.span(-50, 50), c.span(-50, 50))
      length += Math.hypot((next as { x: number }).x - before.x, (next as { y: number }).y - before.y)
      moves.push(next)
    }
    const t = seconds(moves, { ...M, acceleration: 1e12 })
    expect(t / (length / 40)).toBeCloseTo(1, 3)
    expect(t).toBeGreaterThanOrEqual(length / 40)
  })

  it('is never less than length over feed, less with more acceleration, and the sum of its parts', () => {
    for (let seed = 1; seed <= 60; seed++) {
      const { moves, passes } = randomPath(seed, 40)
      let before = Number.POSITIVE_INFINITY
      for (const acceleration of [20, 100, 500, 3000]) {
        const limits = { ...M, acceleration }
        const t = motionTime({ moves, passes }, limits)
        const s = segmentsOf(moves, limits)
        let least = 0
        for (let i = 0; i < s.count; i++)
          least += s.kind[i] === 2 ? s.lengthMm[i]! : s.lengthMm[i]! === 0 ? 0 : s.lengthMm[i]! / s.most[i]!
        expect(60 * t.minutes, `seed ${seed}`).toBeGreaterThanOrEqual(least - 1e-9)
        expect(t.minutes, `seed ${seed}`).toBeLessThanOrEqual(before + 1e-12)
        before = t.minutes
        expect(t.byKind.cutting + t.byKind.rapid + t.byKind.standing).toBeCloseTo(t.minutes, 12)
        expect(t.passes.reduce((a, p) => a + p.minutes, 0)).toBeCloseTo(t.minutes, 12)
        expect(t.longest!.minutes).toBe(Math.max(...t.passes.map(p => p.minutes)))
        expect(segmentsTime(s, limits).minutes).toBe(t.minutes)
      }
    }
  })

  it('is that of a slow walk in small steps of time', () => {
    for (let seed = 101; seed <= 106; seed++) {
      const { moves } = randomPath(seed, 12, false)
      const ours = seconds(moves)
      expect(walked(moves, M, 4e-5) / ours, `seed ${seed}`).toBeCloseTo(1, 2.5)
    }
  })

  it('adds the changes of cutter', () => {
    const one = motionTime({ moves: [start, line(100, 0)], passes: [] }, M)
    expect(runMinutes([one, one], 1, M)).toBeCloseTo(2 * one.minutes + 3, 12)
  })
})

function randomPath(seed: number, count: number, mixed = true) {
  const c = chance(seed)
  const moves: Move[] = [start]
  let at = { x: 0, y: 0, z: 0 }
  for (let i = 0; i < count; i++) {
    const kind = mixed ? c.pick(['line', 'line', 'rapid', 'arc', 'dwell'] as const) : 'line'
    if (kind === 'dwell') {
      moves.push({ kind, seconds: c.span(0, 2) })
      continue
    }
    if (kind === 'arc') {
      const r = c.span(0.5, 20)
      const turn = c.span(0, 2 * Math.PI)
      const on = c.span(0.1, 6)
      const clockwise = c.is(0.5)
      const cx = at.x - r * Math.cos(turn)
      const cy = at.y - r * Math.sin(turn)
      const end = clockwise ? turn - on : turn + on
      at = { x: cx + r * Math.cos(end), y: cy + r * Math.sin(end), z: at.z + (c.is(0.3) ? c.span(-2, 2) : 0) }
      moves.push({ kind, ...at, cx, cy, clockwise, feedMmMin: c.span(200, 2400) })
      continue
    }
    const far = c.pick([0.3, 3, 30])
    at = {
      x: at.x + c.span(-far, far),
      y: at.y + c.span(-far, far),
      z: at.z + c.span(-1, 1) * (c.is(0.3) ? 5 : 0)
    }
    moves.push(kind === 'rapid' ? { kind, ...at } : { kind, ...at, feedMmMin: c.span(200, 2400) })
  }
  return {
    moves,
    passes: [
      { name: 'one', from: 0 },
      { name: 'two', from: Math.floor(count / 2) }
    ]
  }
}

/** Seconds of a path of lines: every step it gains speed if from there it can still slow down for all to come. */
function walked(moves: readonly Move[], limits: MotionLimits, step: number): number {
  const a = limits.acceleration
  const points = moves.filter(m => m.kind !== 'dwell').map(m => [m.x, m.y, m.z] as const)
  const feeds = moves.flatMap(m => (m.kind === 'line' ? [m.feedMmMin] : []))
  const legs = feeds.map((feed, i) => {
    const d = [0, 1, 2].map(k => points[i + 1]![k]! - points[i]![k]!)
    const length = Math.hypot(...d)
    const down = d[2]! < 0 ? (limits.plunge * length) / -d[2]! : Number.POSITIVE_INFINITY
    return { d, length, most: Math.min(feed, limits.feed, down) / 60 }
  })
  // What is allowed from a place on: (place, speed); corners and the slower of two moves.
  const ends: { at: number; v: number }[] = []
  let sum = 0
  for (const [i, leg] of legs.entries()) {
    sum += leg.length
    const next = legs[i + 1]
    if (next === undefined) {
      ends.push({ at: sum, v: 0 })
      continue
    }
    const dot = leg.d.reduce((t, x, k) => t + x * next.d[k]!, 0) / (leg.length * next.length)
    const turn = Math.acos(Math.min(1, Math.max(-1, dot)))
    const v = Math.min(leg.most, next.most, cornerMms(turn, Math.min(leg.length, next.length), limits))
    ends.push({ at: sum, v })
  }
  let place = 0
  let v = 0
  let t = 0
  let leg = 0
  while (place < sum - 1e-9 && t < 1000) {
    while (leg < legs.length - 1 && place >= ends[leg]!.at) leg++
    const braking = Math.sqrt(
      Math.min(...ends.slice(leg).map(e => e.v * e.v + 2 * a * Math.max(0, e.at - place)))
    )
    v = Math.max(Math.min(v + a * step, legs[leg]!.most, braking), 1e-3)
    place += v * step
    t += step
  }
  return t
}
