import { describe, expect, it } from 'vitest'
import type { CalendarProblem, ClashMember } from '../../../src/calendar/solve/problem.ts'
import { quickCalendar, solveCalendar } from '../../../src/calendar/solve/solve.ts'
import { days, gap, problem, seeded, task } from './problem.ts'

const memberKey = (m: ClashMember): string =>
  m.kind === 'gap' ? `gap ${m.gap} ${m.side}` : 'id' in m ? `${m.kind} ${m.id}` : m.kind

const hand = { attended: true, needs: ['hands'] }

/** The problem with only these members asked: written out on the problem itself. */
function only(p: CalendarProblem, members: readonly ClashMember[]): CalendarProblem {
  const has = (m: ClashMember) => members.some(x => memberKey(x) === memberKey(m))
  const hours = has({ kind: 'hours' })
  return {
    ...p,
    asOfMin: has({ kind: 'as of' }) ? p.asOfMin : -1_000_000,
    openings: hours ? p.openings : [[-1_000_000, 2_000_000]],
    gaps: p.gaps.map((g, gapAt) => ({
      ...g,
      leastMin: has({ kind: 'gap', gap: gapAt, side: 'least' }) ? g.leastMin : -1_000_000,
      mostMin: has({ kind: 'gap', gap: gapAt, side: 'most' }) ? g.mostMin : null
    })),
    tasks: p.tasks.map(t => {
      // What was begun is so: no clash names it, and nothing gives it up.
      if (t.fixed?.why === 'begun') {
        const { startMin } = t.fixed
        return {
          ...t,
          fixed: { startMin, endMin: Math.max(startMin + t.minutes, p.asOfMin), why: 'done' } as const
        }
      }
      if (t.fixed?.why === 'done') return t
      const kept = has({ kind: 'task', id: t.id })
      return {
        ...t,
        minutes: kept ? t.minutes : 0,
        attended: kept && t.attended,
        needs: kept ? t.needs : [],
        fixed: has({ kind: 'fixed', id: t.id }) ? t.fixed : null,
        notBeforeMin: has({ kind: 'not before', id: t.id }) ? t.notBeforeMin : null,
        dueMin: has({ kind: 'due', id: t.id }) ? t.dueMin : null
      }
    })
  }
}

function everyMember(p: CalendarProblem): ClashMember[] {
  return [
    { kind: 'hours' },
    { kind: 'as of' },
    ...p.gaps.flatMap((g, k): ClashMember[] => [
      { kind: 'gap', gap: k, side: 'least' },
      ...(g.mostMin === null ? [] : [{ kind: 'gap', gap: k, side: 'most' } as const])
    ]),
    ...p.tasks.flatMap((t): ClashMember[] => [
      ...(t.fixed === null ? [{ kind: 'task', id: t.id } as const] : []),
      ...(t.fixed === null ? [] : [{ kind: 'fixed', id: t.id } as const]),
      ...(t.dueIsHard === true ? [{ kind: 'due', id: t.id } as const] : [])
    ])
  ]
}

/** Whether any set of so many members clashes, by trying them all. */
function anyOf(p: CalendarProblem, size: number): boolean {
  const all = everyMember(p)
  const pick = (from: number, taken: ClashMember[]): boolean => {
    if (taken.length === size) return quickCalendar(only(p, taken)).kind !== 'placed'
    for (let i = from; i < all.length; i++) if (pick(i + 1, [...taken, all[i]!])) return true
    return false
  }
  return pick(0, [])
}

function clashing(seed: number): CalendarProblem {
  const r = seeded(seed)
  const begun = { startMin: -60 * r.below(20), endMin: null, why: 'begun' } as const
  const n = 3 + r.below(2)
  const tasks = [
    task('t0', 30, { ...hand, fixed: begun }),
    ...Array.from({ length: n }, (_, i) =>
      task(`t${i + 1}`, 20 + r.below(300), {
        ...(r.chance(0.8) ? hand : {}),
        ...(r.chance(0.3) ? { dueMin: 600 + r.below(900), dueIsHard: true } : {})
      })
    )
  ]
  const gaps = tasks.slice(1).map((t, i) => {
    const least = r.below(500)
    return gap(`t${r.below(i + 1)}`, t.id, least, r.chance(0.6) ? least + r.below(300) : null)
  })
  return problem(tasks, gaps, { openings: days(4, [8, 12], [13, 18]), asOfMin: 60 * r.below(30) })
}

describe('the smallest clashing set', () => {
  it('names the window missed in the night', () => {
    const poured = { startMin: 0, endMin: 30, why: 'done' } as const
    const p = problem(
      [
        task('pour green', 30, { ...hand, fixed: poured }),
        task('pour clear', 30, hand),
        task('sand', 90, hand)
      ],
      [gap('pour green', 'pour clear', 60, 300), gap('pour clear', 'sand', 1440)],
      { openings: days(9, [7, 22]), asOfMin: 40 }
    )
    const s = solveCalendar(p)
    expect(s.kind === 'clash' && s.smallest).toBe(true)
    expect(s.kind === 'clash' && s.members.map(memberKey).sort()).toEqual(
      ['gap 0 most', 'hours', 'task pour clear'].sort()
    )
  })

  it('clashes by itself, loses the clash with any one member, and none smaller clashes', () => {
    let clashes = 0
    let minimum = 0
    for (let seed = 1; seed <= 90; seed++) {
      const p = clashing(seed)
      const s = solveCalendar(p)
      if (s.kind !== 'clash') continue
      clashes++
      expect(s.irreducible, `seed ${seed}`).toBe(true)
      expect(solveCalendar(only(p, s.members)).kind, `seed ${seed}`).toBe('clash')
      for (const m of s.members)
        expect(
          solveCalendar(
            only(
              p,
              s.members.filter(x => x !== m)
            )
          ).kind,
          `seed ${seed} without ${memberKey(m)}`
        ).toBe('placed')
      if (!s.smallest) continue
      minimum++
      for (let size = 1; size < Math.min(4, s.members.length); size++)
        expect(anyOf(p, size), `seed ${seed} of ${size}`).toBe(false)
    }
    expect(clashes).toBeGreaterThan(25)
    expect(minimum).toBeGreaterThan(0.9 * clashes)
  })
})
