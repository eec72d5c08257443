import { solveCalendar } from '../../../src/calendar/solve/solve.ts'
import type { Evidence } from '../../evidence.ts'
import { table } from '../../evidence.ts'
import { WORKED, workedProblem } from './cpm-tables.ts'

const model = 'calendar/solve'

export const rows: readonly Evidence[] = WORKED.flatMap(w => {
  const ours = () => {
    const s = solveCalendar(workedProblem(w))
    if (s.kind !== 'placed') throw new Error('no calendar')
    return s
  }
  return [
    {
      model,
      what: `${w.name}: finish`,
      source: 'critical path method, worked by hand in the test',
      confidence: 'derived',
      unit: 'min',
      published: w.finish,
      tolerance: 0,
      why: 'whole minutes',
      ours: () => ours().finishMin
    } satisfies Evidence,
    table({
      model,
      what: `${w.name}: early and late starts`,
      source: 'critical path method, worked by hand in the test',
      confidence: 'derived',
      unit: 'min',
      tolerance: 0,
      why: 'whole minutes',
      cells: 2 * w.rows.length,
      worst: () => {
        const at = new Map(ours().placed.map(p => [p.id, p]))
        return Math.max(
          ...w.rows.flatMap(([id, , , early, late]) => [
            Math.abs(at.get(id)!.startMin - early),
            Math.abs(at.get(id)!.latestStartMin - late)
          ])
        )
      }
    })
  ]
})
