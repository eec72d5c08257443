import type { Task } from './calendar/task.ts'
import type { Cost } from './cost/cost.ts'
import { costOf } from './cost/cost.ts'
import { wearCost } from './cost/cutter-wear.ts'
import { outsideCost } from './cost/orders.ts'
import type { Together } from './cost/together.ts'
import { batchesInAll } from './findings/batches.ts'
import type { Work } from './findings/work.ts'
import type { TimedProgram } from './programs/program-set.ts'

/** What falls on a piece of what several buy together: its lines at their prices, its share of each delivery. */
export type Share = Together['shares'][number]

/** What a build costs by its buy list, its batches, its tasks and its programs. */
export function buildCost(
  work: Work,
  tasks: readonly Task[],
  programs: readonly TimedProgram[] | null,
  share?: Share
): Cost {
  const { shop, quantity, piece, hand } = work
  const { blanks } = quantity
  return costOf({
    buy: share?.buy ?? work.buy,
    ...(share === undefined ? {} : { delivery: share.delivery }),
    tasks,
    batches: work.rounds.reduce(
      (sum, r, i) => sum + (r.batches?.mixed == null ? 0 : batchesInAll(work, i)),
      0
    ),
    blanks,
    shop,
    more: [
      ...wearCost(programs?.flatMap(p => p.made) ?? [], blanks, shop),
      ...outsideCost(hand, piece.outside, blanks, shop)
    ],
    loss: { pieces: quantity.pieces, pct: quantity.lossPct }
  })
}
