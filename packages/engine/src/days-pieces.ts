import type { Besides } from './calendar/besides.ts'
import { withBesides } from './calendar/besides.ts'
import type { CalendarSolution } from './calendar/solve/problem.ts'
import type { Gap, Task } from './calendar/task.ts'
import type { PieceTasks } from './calendar/tasks.ts'
import { tasksOf } from './calendar/tasks.ts'
import { boughtInTurn, toldApart } from './cost/together.ts'
import type { Work } from './findings/work.ts'
import type { Piece } from './piece/piece-schema.ts'
import type { TimedProgram } from './programs/program-set.ts'
import { programsOf, taskReckoning } from './task-reckoning.ts'
import type { PlanInput } from './work.ts'
import { workOf } from './work.ts'

/** A plan that is made already. `pass`: windows that can pass are let pass. */
export interface Made {
  readonly work: Work
  readonly programs: readonly TimedProgram[] | null
  readonly besides: Besides | null
  readonly pass: boolean
}

/** The tasks of a piece, and how its pours cure at the starts they were made with. */
export type CastTasks = PieceTasks & Pick<Work, 'casts'>

/** A piece whose tasks are to be placed, and placed anew once its pours were cast at the starts chosen. */
export interface Started {
  readonly work: Work
  readonly tasks: (work: Work, chosen: ReadonlySet<number>) => CastTasks
  readonly again: (before: CastTasks, placed: CalendarSolution, originMs: number) => CastTasks
}

/** The plans of pieces that are placed together: what is bought is bought for all, for the shelf is there once. */
export function worksOf(inputs: readonly PlanInput[], originMs: number): Work[] {
  const works = inputs.map(i => workOf({ ...i, effort: 'preview', asOf: new Date(originMs).toISOString() }))
  if (works.length === 1) return works
  const names = toldApart(works.map(w => w.piece.name))
  const bought = boughtInTurn(
    works.map(({ needs, buy }, i) => ({ name: names[i]!, needs, buy })),
    inputs[0]!.shop
  )
  return works.map((w, i) => ({ ...w, buy: bought[i]! }))
}

/** A piece ready to be placed; `index` and `count` name it among several. */
export function started(
  input: PlanInput,
  work: Work,
  index: number,
  count: number,
  originMs: number,
  quick: boolean,
  made: Made | null
): Started {
  const piece = count === 1 ? '' : `${index + 1}`
  const programs = made?.programs ?? (quick ? null : programsOf(work))
  const reckoning = taskReckoning(work, { piece, originMs }, programs)
  const tasks: Started['tasks'] = (w, chosen) => {
    const own = tasksOf(w, { ...reckoning, chosen })
    return { ...named(made?.besides ? withBesides(own, made.besides) : own, piece), casts: w.casts }
  }
  return {
    work,
    tasks,
    again: (before, placed, origin) => {
      const starts = new Map<number, string>()
      for (const [pour, id] of before.mixes) {
        const own = work.piece.pours[pour]!
        const given =
          own.start !== undefined || work.steps.some(s => s.pour?.index === pour && s.begins !== undefined)
        const at = placed.placed.find(p => p.id === id)
        if (own.kind === 'seal' || given || at === undefined) continue
        starts.set(pour, new Date(origin + at.startMin * 60_000).toISOString())
      }
      if (starts.size === 0) return before
      const cast = workOf({
        ...input,
        effort: 'preview',
        piece: { ...input.piece, value: withStarts(work.piece, starts) }
      })
      // Waits stay as the piece says them: a start that was chosen is no word of the maker.
      return tasks({ ...cast, clock: work.clock, buy: work.buy }, new Set(starts.keys()))
    }
  }
}

function withStarts(piece: Piece, starts: ReadonlyMap<number, string>): Piece {
  return {
    ...piece,
    pours: piece.pours.map((p, i) => {
      const start = starts.get(i)
      return start === undefined ? p : { ...p, start }
    })
  }
}

// Several pieces: every task under the number of its piece.
function named(of: PieceTasks, piece: string): PieceTasks {
  if (piece === '') return of
  const name = (id: string) => `${piece}/${id}`
  const own = (r: string) => (r === 'mould' ? `mould ${piece}` : r)
  return {
    tasks: of.tasks.map((t): Task => ({ ...t, id: name(t.id), needs: t.needs.map(own) })),
    gaps: of.gaps.map((g): Gap => ({ ...g, before: name(g.before), after: name(g.after) })),
    reckoned: new Map([...of.reckoned].map(([id, min]) => [name(id), min])),
    mixes: new Map([...of.mixes].map(([pour, id]) => [pour, name(id)]))
  }
}
