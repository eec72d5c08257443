import { describe, expect, it } from 'vitest'
import { daysOf } from '../../src/days.ts'
import { inputOf, PANEL, reading } from '../rescue/bench.ts'

// The start of its first pour is no word of this piece: the calendar chooses it.
const FREE = { ...PANEL, pours: PANEL.pours.map(({ start: _, ...p }: { start?: string; id: string }) => p) }
const AS_OF = '2026-12-04T08:00+01:00'
const daysWith = (placed: object[], readings: ReturnType<typeof reading>[] = [], asOf = AS_OF) =>
  daysOf(inputOf(readings, { ...FREE, placed }), { asOf })
const startOf = (days: ReturnType<typeof daysWith>, id: string) =>
  days.originMs + 60_000 * days.tasks.find(t => t.task.id === id)!.startMin

describe('a task put at a moment by hand', () => {
  const free = daysWith([])
  const mix = 'pour green: mix'
  const later = new Date(startOf(free, mix) + 26 * 3_600_000).toISOString().replace('.000Z', 'Z')

  it('begins there to the minute, and what follows goes round it', () => {
    const days = daysWith([{ task: mix, at: later }])
    expect(startOf(days, mix)).toBe(Date.parse(later))
    expect(days.readyMs![0]).toBeGreaterThan(free.readyMs![0]!)
    for (const g of days.problem.gaps) {
      const [a, b] = [g.before, g.after].map(id => days.tasks.find(t => t.task.id === id)!)
      const wait =
        (g.to === 'start' ? b!.startMin : b!.endMin) - (g.from === 'start' ? a!.startMin : a!.endMin)
      expect(wait, g.says).toBeGreaterThanOrEqual(g.leastMin - 1e-6)
      if (g.mostMin !== null) expect(wait, g.says).toBeLessThanOrEqual(g.mostMin + 1)
    }
  })

  it('binds nothing once it is begun, nor when its moment is over; both names and moments are said', () => {
    const begun = daysWith(
      [{ task: mix, at: later }],
      [reading(9, { kind: 'mixed', pour: 'green', mass: 700 })],
      '2026-12-05T09:30+01:00'
    )
    expect(begun.tasks.find(t => t.task.id === mix)!.task.fixed?.why).toBe('begun')
    const over = daysWith([{ task: mix, at: '2026-12-01T09:00+01:00' }])
    expect(over.readyMs).toEqual(free.readyMs)
    expect(over.notPlaced).toEqual([expect.stringContaining('is over')])
    const unknown = daysWith([{ task: 'pour gren: mix', at: later }])
    expect(unknown.notPlaced).toEqual([expect.stringContaining('“pour green: mix”')])
  })

  it('where nothing holds it, it may be let go: a way out that is a change of the piece', () => {
    // Demoulded an hour after it was poured.
    const early = new Date(startOf(free, mix) + 3_600_000).toISOString().replace('.000Z', 'Z')
    const at = new Date(startOf(free, mix)).toISOString().replace('.000Z', 'Z')
    const days = daysWith([
      { task: 'demould', at: early },
      { task: mix, at }
    ])
    expect(days.readyMs).toBeNull()
    const way = days.waysOut.find(w => w.id === 'let go demould')!
    expect(way.patch).toEqual([{ op: 'replace', path: '/placed', value: [{ task: mix, at }] }])
    expect(way.readyDays).toBeGreaterThan(3)
  })
})
