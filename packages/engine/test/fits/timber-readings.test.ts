import { expect, it } from 'vitest'
import { findingsOf } from '../../src/findings/checks.ts'
import { worked } from '../cases/asked.ts'
import { PLAIN } from '../findings/harness.ts'
import { chance } from '../stack/random.ts'

/** Odd readings of every kind, in any order and number: plain numbers and findings, never an error. Seeded. */
it('whatever is measured of timber, the plan stays plain numbers', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const { span, whole, pick, is } = chance(seed)
    const drying = is(0.5)
    const first = span(50, 5000)
    const readings = Array.from({ length: whole(0, 14) }, (_, i) => {
      const common = {
        id: `reading-${seed}-${i}`,
        timber: pick(['left', 'left', 'left', 'right', 'gone']),
        at: new Date(Date.UTC(2026, 0, 1) + whole(0, 80) * 86_60_000).toISOString().replace('.000Z', 'Z')
      }
      const wet = span(1, 100)
      return pick([
        {
          ...common,
          kind: 'weight',
          mass: drying ? first * (1 - 0.004 * i) : span(1, 9000),
          ...(is(0.3) ? { moisture: span(0, 60) } : {})
        },
        {
          ...common,
          kind: 'weight',
          timber: 'left',
          at: new Date(Date.UTC(2026, 0, 1 + 5 * i)).toISOString().replace('.000Z', 'Z'),
          mass: first * (1 - 0.004 * i)
        },
        { ...common, kind: 'sample', wet, dry: wet / span(1, 3) },
        {
          ...common,
          kind: 'moisture',
          moisture: pick([0, 60, span(5, 20)]),
          ...(is(0.5) ? { way: pick(['pins', 'pinless', 'oven-dry']) } : {}),
          ...(is(0.5) ? { depth: pick([0.1, 200, span(1, 20)]) } : {}),
          ...(is(0.5) ? { setting: pick(['ash-white', 'oak', 'nothing known']) } : {}),
          ...(is(0.5) ? { temperature: pick([-10, 60, span(0, 30)]) } : {})
        }
      ])
    })
    const more = {
      thickness: pick([0.2, 20, 20, 60]),
      pith: pick([1, 60, 2000]),
      charredTop: pick([0, 0, 1, 20]),
      rough: { cup: pick([0, 2, 100]), twist: pick([0, 200]) },
      flush: pick(['nothing', 'metal', 'resin'])
    }
    const piece = {
      ...PLAIN,
      timbers: PLAIN.timbers!.map(t => ({ ...t, ...more })),
      pours: [{ id: 'clear', resin: 'deep', depth: Math.min(20, more.thickness) }]
    }
    const shop = {
      castwright: 1 as const,
      storage: { temperature: pick([-20, 20, 45]), humidity: pick([1, 50, 99]) }
    }
    let work: ReturnType<typeof worked>
    try {
      work = worked({ piece: piece as typeof PLAIN, shop, readings })
    } catch (e) {
      throw new Error(`seed ${seed}: ${(e as Error).message}`)
    }
    const said = JSON.stringify([work.seasons, work.timberFacts], (_, v) =>
      typeof v === 'number' && !Number.isFinite(v) ? 'not a number' : v
    )
    expect(said, `seed ${seed}`).not.toContain('not a number')
    for (const f of findingsOf(work))
      expect(f.says, `seed ${seed} ${f.id}`).not.toMatch(/NaN|undefined|Infinity/)
    for (const s of work.seasons) {
      expect(s.moisturePct).toBeGreaterThanOrEqual(0)
      expect(s.bandPct[0]).toBeLessThanOrEqual(s.bandPct[1])
    }
  }
}, 60_000)
