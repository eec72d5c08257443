import { describe, expect, it } from 'vitest'
import { worked } from '../cases/asked.ts'
import type { Given } from '../findings/harness.ts'
import { PLAIN } from '../findings/harness.ts'

const two = (first: object, second: object, more: object = {}): Given => ({
  piece: {
    ...PLAIN,
    pours: [
      { id: 'first', resin: 'medium', depth: 5, ...first },
      { id: 'second', resin: 'medium', height: 10, ...second }
    ],
    ...more
  },
  shop: { castwright: 1, climate: { night: 15, day: 25 } }
})
const starts = (given: Given) => worked(given).casts.map(c => c!.startMin)

describe('when a casting is made', () => {
  it('by two moments of the document: what lies between them', () => {
    expect(starts(two({ start: '2026-03-02T09:00+01:00' }, { start: '2026-03-02T20:30+01:00' }))).toEqual([
      0, 690
    ])
  })

  it('by a wait of the document, and by the waits of its own order', () => {
    expect(starts(two({}, { after: '11 h' }))).toEqual([0, 660])
    const steps = [
      { do: 'make mould' },
      { do: 'set timber' },
      { do: 'pour', what: 'first' },
      { do: 'wait', for: '12 h' },
      { do: 'pour', what: 'second' },
      { do: 'wait', for: '7 d' },
      { do: 'demould' }
    ]
    expect(starts(two({}, {}, { steps }))).toEqual([0, 720])
  })

  it('else by the recoat window of the one below', () => {
    const { casts } = worked(two({}, {}))
    expect(casts[1]!.startMin).toBe(casts[0]!.windows.recoat.open)
  })

  it('at its own hour of the day: a pour at three in the morning starts cold, one at three in the afternoon warm', () => {
    const at = (time: string) => worked(two({ start: `2026-03-02T${time}+01:00` }, {})).casts[0]!.startC
    // The room is a sine between 15 and 25 °C, warmest at three in the afternoon.
    expect(at('15:00')).toBeCloseTo(25, 6)
    expect(at('03:00')).toBeCloseTo(15, 6)
    expect(at('09:00')).toBeCloseTo(20, 6)
    expect(worked(two({}, {})).casts[0]!.startC).toBeCloseTo(20, 6)
  })
})

describe('stones dropped into a pour', () => {
  const stones = (from: string, more: object = {}): Given => ({
    piece: {
      ...PLAIN,
      pours: [
        {
          id: 'clear',
          resin: 'deep',
          depth: 20,
          stones: [
            {
              kind: 'quartz-pebbles',
              placed: [{ at: [0, 0], size: [2, 2, 2] }],
              set: 'into the pour',
              from,
              ...more
            }
          ]
        }
      ]
    }
  })
  const window = (from: string, more: object = {}) => worked(stones(from, more)).casts[0]!.windows.stones

  it('open later the higher they are wanted, and only where they are dropped in', () => {
    const [low, high] = [window('3 mm')!, window('16 mm')!]
    expect(low.reached && high.reached).toBe(true)
    expect(high.open).toBeGreaterThan(low.open)
    expect(low.open).toBeGreaterThan(0)
    expect(low.close!).toBeGreaterThan(low.open)
    expect(window('3 mm', { set: 'on the tacky layer' })).toBeNull()
  })

  it('have no moment that serves sand and pebbles alike', () => {
    const both = {
      placed: [
        { at: [0, 0], size: [0.2, 0.2, 0.2] },
        { at: [9, 0], size: [12, 12, 12] }
      ]
    }
    expect(window('10 mm', both)).toMatchObject({ reached: false })
  })
})
