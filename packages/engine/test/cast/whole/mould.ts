import type { WholeCast } from '../../../src/cast/whole/whole-cast.ts'
import type { WholeOptions } from '../../../src/cast/whole/whole-run.ts'
import type { Work } from '../../../src/findings/work.ts'
import { checkPiece, checkShop } from '../../../src/piece/read.ts'
import { castRun } from '../../../src/whole.ts'
import type { PlanInput } from '../../../src/work.ts'
import { workOf } from '../../../src/work.ts'

/** A tray of a size with pours and what else is given; invented. */
export function tray(
  size: readonly [number, number],
  rest: Record<string, unknown>,
  shop: Record<string, unknown> = {}
): PlanInput {
  const piece = {
    castwright: 1,
    name: 'a tray for tests (invented)',
    outline: { rectangle: size },
    ...rest
  }
  return {
    piece: checkPiece(piece, 'piece'),
    shop: checkShop({ castwright: 1, climate: { night: 22, day: 22 }, ...shop }, 'shop').value,
    source: 'piece'
  }
}

/** The column's answer of a piece. */
export function columnOf(input: PlanInput): Work {
  return workOf({ ...input, effort: 'full' })
}

/** The whole cast of a piece, to its end. */
export function wholeOf(input: PlanInput, options: Partial<WholeOptions> = {}): WholeCast {
  const run = castRun(input, { effort: 'full', edges: false, ...options })
  if (run === null) throw new Error('nothing to cast')
  while (!run.advance(500));
  return run.best()!
}
