import { describe, expect, it } from 'vitest'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import { coreAt, coresAfter, coreWithAndWithout } from '../../src/stack/core.ts'
import { reachOf } from '../../src/stack/event-reach.ts'
import { stackOf } from './build.ts'
import { chance } from './random.ts'

const at = (i: number): [number, number] => [-80 + 40 * (i % 5), -30 + 30 * Math.floor(i / 5)]

const crowded: PieceDocument = {
  castwright: 1,
  name: 'crowded',
  outline: { rectangle: [200, 100] },
  timbers: [
    { id: 't', species: 'ash-white', outline: { rectangle: [60, 90], at: [-60, 0] }, thickness: 18 },
    {
      species: 'ash-white',
      outline: { rectangle: [30, 80], at: [60, 0] },
      underside: { rectangle: [50, 60], at: [62, 3] },
      thickness: 22
    }
  ],
  pours: [
    { id: 'p', resin: 'medium', depth: 14 },
    { id: 'q', resin: 'medium', depth: 10 },
    { id: 'i', kind: 'inlay', into: ['c3', 'c7'], resin: 'thin', fill: 'cut' },
    { id: 'f', kind: 'flood', face: 'front', resin: 'thin', depth: 2 }
  ],
  cuts: [
    ...Array.from({ length: 10 }, (_, i) => ({
      id: `c${i}`,
      face: i % 2 === 0 ? ('front' as const) : ('back' as const),
      shape: { circle: 14 + i, at: at(i) },
      depth: 3 + i
    })),
    ...(['flat', 'v', 'round'] as const).map((profile, i) => ({
      id: `g${i}`,
      kind: 'groove' as const,
      face: 'front' as const,
      along: { points: [[-70, 20 - 20 * i] as [number, number], [70, 25 - 20 * i] as [number, number]] },
      ...(profile === 'v' ? {} : { width: 6 }),
      profile,
      depth: 3
    }))
  ]
}

describe('events boxed by where they reach', () => {
  const { geometry: g, events } = stackOf(crowded)
  // Every list is played as it stands the first time it is asked for: a fresh copy each time is the slow twin.
  const plain = (x: number, y: number) => coreAt(g, [...events], x, y)

  it('are boxed from the second asking, and again when the list has grown', () => {
    const list = events.slice(0, -1)
    expect(reachOf(g, list)).toBeNull()
    expect(reachOf(g, list)?.length).toBe(4 * list.length)
    list.push(events.at(-1)!)
    expect(reachOf(g, list)).toBeNull()
    expect(reachOf(g, list)?.length).toBe(4 * list.length)
    expect(reachOf(g, events.slice(0, 3))).toBeNull()
  })

  it('give the cores that all of them, played one by one, give', () => {
    const c = chance(7)
    let air = 0
    for (let n = 0; n < 4000; n++) {
      const [x, y] = [c.span(-125, 125), c.span(-75, 75)]
      const core = coreAt(g, events, x, y)
      expect(core).toEqual(plain(x, y))
      if (core.length === 0) air++
    }
    expect(air).toBeGreaterThan(0)
  })

  it('lose nothing on the edges of the boxes themselves', () => {
    const reach = reachOf(g, events)!
    for (let k = 0; k < reach.length; k += 4) {
      const [x0, y0, x1, y1] = reach.slice(k, k + 4) as unknown as [number, number, number, number]
      if (!Number.isFinite(x0)) continue
      for (const x of [x0, (x0 + x1) / 2, x1])
        for (const y of [y0, (y0 + y1) / 2, y1]) expect(coreAt(g, events, x, y)).toEqual(plain(x, y))
    }
  })

  it('give the cores after each event as well', () => {
    const counts = events.map((_, i) => i + 1)
    for (let i = 0; i < 10; i++) {
      const [x, y] = at(i)
      coresAfter(g, events, x, y, counts).forEach((core, k) => {
        expect(core).toEqual(coreAt(g, events.slice(0, k + 1), x, y))
      })
    }
  })

  it('give the core with all events and with all but one, whichever that is', () => {
    for (let i = 0; i < 10; i++) {
      const [x, y] = at(i)
      for (let own = 0; own < events.length; own += 7) {
        const { core, without } = coreWithAndWithout(g, events, x, y, own)
        expect(core).toEqual(coreAt(g, events, x, y))
        expect(without).toEqual(
          coreAt(
            g,
            events.filter((_, k) => k !== own),
            x,
            y
          )
        )
      }
    }
  })
})
