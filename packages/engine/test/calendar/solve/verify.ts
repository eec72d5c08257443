import type { CalendarProblem, CalendarSolution } from '../../../src/calendar/solve/problem.ts'

/**
 * Everything that is wrong with a calendar, minute by minute and from the problem alone: shares no code with the
 * solver.
 */
export function wrongs(p: CalendarProblem, s: CalendarSolution): string[] {
  const out: string[] = []
  const at = new Map(s.placed.map(x => [x.id, x]))
  const open = (t: number) => p.openings.some(([a, b]) => a <= t && t + 1 <= b)
  if (s.placed.length !== p.tasks.length) out.push('tasks missing')
  for (const t of p.tasks) {
    const x = at.get(t.id)!
    const d = Math.ceil(t.minutes - 1e-6)
    if (t.fixed !== null) {
      if (Math.abs(x.startMin - t.fixed.startMin) > 1e-9) out.push(`${t.id} was moved`)
      if (t.fixed.endMin !== null && Math.abs(x.endMin - t.fixed.endMin) > 1e-9)
        out.push(`${t.id} ends elsewhere`)
      continue
    }
    if (x.startMin < p.asOfMin) out.push(`${t.id} before now`)
    if (!Number.isInteger(x.startMin)) out.push(`${t.id} not at a whole minute`)
    if (t.notBeforeMin !== null && x.startMin < t.notBeforeMin - 1e-9) out.push(`${t.id} before its date`)
    if (t.dueIsHard === true && t.dueMin !== null && x.endMin > t.dueMin + 1e-9)
      out.push(`${t.id} after its end`)
    if (x.latestStartMin < x.startMin) out.push(`${t.id} later than its latest`)
    if (!t.attended || !t.mayPause) {
      if (Math.abs(x.endMin - x.startMin - d) > 1e-9)
        out.push(`${t.id} lasts ${x.endMin - x.startMin}, not ${d}`)
      if (t.attended)
        for (let m = x.startMin; m < x.endMin; m++) if (!open(m)) out.push(`${t.id} at ${m}: closed`)
    } else {
      let worked = 0
      for (let m = x.startMin; m < x.endMin; m++) if (open(m)) worked++
      if (worked !== d) out.push(`${t.id} works ${worked}, not ${d}`)
      if (d > 0 && (!open(x.startMin) || !open(x.endMin - 1))) out.push(`${t.id} begins or ends closed`)
      const parts = x.parts.reduce((sum, [a, b]) => sum + b - a, 0)
      if (d > 0 && parts !== d) out.push(`${t.id} parts make ${parts}, not ${d}`)
    }
  }
  const past = (id: string) => {
    const f = p.tasks.find(t => t.id === id)!.fixed
    return f !== null && f.why !== 'given'
  }
  for (const g of p.gaps) {
    if (past(g.before) && past(g.after)) continue
    const a = at.get(g.before)!
    const b = at.get(g.after)!
    const apart = (g.to === 'end' ? b.endMin : b.startMin) - (g.from === 'end' ? a.endMin : a.startMin)
    if (apart < g.leastMin - 1e-6) out.push(`${g.before} to ${g.after}: ${apart} under ${g.leastMin}`)
    if (g.mostMin !== null && apart > g.mostMin + 1e-6)
      out.push(`${g.before} to ${g.after}: ${apart} over ${g.mostMin}`)
  }
  const names = new Set(p.tasks.flatMap(t => t.needs))
  for (const r of names) {
    const users = p.tasks.filter(t => t.needs.includes(r)).map(t => ({ t, x: at.get(t.id)! }))
    for (const { x } of users) {
      if (x.endMin <= x.startMin) continue
      const there = users.filter(
        u => u.x.startMin <= x.startMin && u.x.endMin > x.startMin && u.x.endMin > u.x.startMin
      )
      if (there.length > (p.capacity?.[r] ?? 1) && !there.every(u => u.t.fixed !== null))
        out.push(`${r} held by ${there.length} at ${x.startMin}`)
    }
  }
  const last = Math.max(...s.placed.map(x => x.endMin))
  if (Math.abs(last - s.finishMin) > 1e-9) out.push(`finish said ${s.finishMin}, is ${last}`)
  if (s.boundMin > s.finishMin + 1e-9) out.push('bound above the finish')
  return out
}
