import { describe, expect, it } from 'vitest'
import type { CalendarProblem } from '../../../src/calendar/solve/problem.ts'
import { solveCalendar } from '../../../src/calendar/solve/solve.ts'
import { days, gap, problem, seeded, task } from './problem.ts'

const HOUR = 60

/** Small problems on whole hours: five tasks at the most, three days. */
function small(seed: number): CalendarProblem {
  const r = seeded(seed)
  const n = 3 + r.below(3)
  const tasks = Array.from({ length: n }, (_, i) => {
    const attended = r.chance(0.7)
    return task(`t${i}`, HOUR * (1 + r.below(4)), {
      attended,
      needs: attended ? (r.chance(0.3) ? ['hands', 'mould'] : ['hands']) : r.chance(0.5) ? ['mould'] : [],
      notBeforeMin: r.chance(0.15) ? HOUR * r.below(20) : null,
      fixed: i === 0 && r.chance(0.3) ? { startMin: HOUR * 8, endMin: null, why: 'given' } : null
    })
  })
  const gaps = []
  for (let i = 1; i < n; i++)
    if (r.chance(0.7)) {
      const least = HOUR * r.below(8)
      gaps.push(gap(`t${r.below(i)}`, `t${i}`, least, r.chance(0.5) ? least + HOUR * r.below(6) : null))
    }
  return problem(tasks, gaps, { openings: days(3, [7, 12], [13, 19]) })
}

/** The earliest finish by trying every start on the hour; null: there is none. Slow and obvious. */
function triedFinish(p: CalendarProblem): number | null {
  const open = (s: number, e: number) => p.openings.some(([a, b]) => a <= s && e <= b)
  let best: number | null = null
  const at = new Map<string, readonly [number, number]>()
  const fits = (id: string): boolean => {
    const t = p.tasks.find(x => x.id === id)!
    const [s, e] = at.get(id)!
    for (const o of p.tasks) {
      const x = at.get(o.id)
      if (x === undefined || o === t) continue
      if (o.needs.some(n => t.needs.includes(n)) && s < x[1] && x[0] < e) return false
    }
    for (const g of p.gaps) {
      const a = at.get(g.before)
      const b = at.get(g.after)
      if (a === undefined || b === undefined) continue
      if (b[0] - a[1] < g.leastMin || (g.mostMin !== null && b[0] - a[1] > g.mostMin)) return false
    }
    return true
  }
  const place = (k: number, end: number) => {
    if (best !== null && end >= best) return
    if (k === p.tasks.length) {
      best = end
      return
    }
    const t = p.tasks[k]!
    const tries = t.fixed !== null ? [t.fixed.startMin] : Array.from({ length: 72 }, (_, h) => h * HOUR)
    for (const s of tries) {
      const e = s + t.minutes
      if (best !== null && e >= best) break
      if (t.fixed === null && (s < (t.notBeforeMin ?? 0) || (t.attended && !open(s, e)))) continue
      at.set(t.id, [s, e])
      if (fits(t.id)) place(k + 1, Math.max(end, e))
      at.delete(t.id)
    }
  }
  place(0, 0)
  return best
}

describe('against every start on the hour', () => {
  it('finds the earliest finish, or that there is none', () => {
    const seen = { placed: 0, clash: 0 }
    for (let seed = 1; seed <= 100; seed++) {
      const p = small(seed)
      const s = solveCalendar(p)
      const tried = triedFinish(p)
      if (s.kind === 'unsettled') throw new Error(`seed ${seed}: unsettled`)
      seen[s.kind]++
      expect(s.kind === 'placed' ? s.finishMin : null, `seed ${seed}`).toBe(tried)
      if (s.kind === 'placed') expect(s.proved).toBe(true)
    }
    expect(seen.placed).toBeGreaterThan(50)
    expect(seen.clash).toBeGreaterThan(3)
  })
})

interface Milp {
  solve(lp: string): { readonly Status: string; readonly ObjectiveValue: number }
}

describe('against an integer programme (highs 1.15)', () => {
  it('finds the least finish of seven jobs with release times and deadlines on one pair of hands', async () => {
    const load = (await import('highs')).default as unknown as () => Promise<Milp>
    const highs = await load()
    let feasible = 0
    for (let seed = 1; seed <= 12; seed++) {
      const r = seeded(seed + 9000)
      const n = 6 + r.below(2)
      const jobs = Array.from({ length: n }, () => {
        const d = 5 + r.below(30)
        const from = r.below(120)
        return { d, from, by: from + d + 40 + r.below(120), tail: r.below(90) }
      })
      const M = 1000
      const lines: string[] = []
      jobs.forEach((j, i) => {
        lines.push(` f${i}: c - s${i} >= ${j.d + j.tail}`)
        for (let k = i + 1; k < n; k++) {
          lines.push(` a${i}_${k}: s${k} - s${i} + ${M} y${i}_${k} >= ${j.d}`)
          lines.push(` b${i}_${k}: s${i} - s${k} - ${M} y${i}_${k} >= ${jobs[k]!.d - M}`)
        }
      })
      const binaries = jobs.flatMap((_, i) => jobs.slice(i + 1).map((_x, k) => `y${i}_${i + 1 + k}`))
      const lp = `Minimize\n obj: c\nSubject To\n${lines.join('\n')}\nBounds\n${jobs
        .map((j, i) => ` ${j.from} <= s${i} <= ${j.by - j.d}`)
        .join('\n')}\nBinary\n ${binaries.join(' ')}\nEnd`
      const exact = highs.solve(lp)
      const tasks = jobs.flatMap((j, i) => [
        task(`j${i}`, j.d, {
          attended: true,
          needs: ['hands'],
          notBeforeMin: j.from,
          dueMin: j.by,
          dueIsHard: true
        }),
        task(`dries${i}`, j.tail)
      ])
      const s = solveCalendar(
        problem(
          tasks,
          jobs.map((_, i) => gap(`j${i}`, `dries${i}`))
        )
      )
      if (exact.Status === 'Optimal') {
        feasible++
        expect(s).toMatchObject({ kind: 'placed', proved: true, finishMin: Math.round(exact.ObjectiveValue) })
      } else {
        expect(exact.Status).toBe('Infeasible')
        expect(s.kind).toBe('clash')
      }
    }
    expect(feasible).toBeGreaterThan(5)
  }, 60_000)
})

// Placed to the whole minute, the two cannot both hold; in parts of a minute they could.
it('a loop that closes only in parts of a minute is a clash, and is found at once', () => {
  const both = [task('a', 5), task('b', 5)]
  const asked = (least: number, most: number) =>
    solveCalendar(problem(both, [gap('a', 'b', least, most, { from: 'start' })])).kind
  expect(asked(7.4, 7.6)).toBe('clash')
  expect(asked(7.4, 8.2)).toBe('placed')
})
