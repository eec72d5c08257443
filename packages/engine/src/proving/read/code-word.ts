import type { Block } from './block.ts'
import { G_ALLOWED, G_ELSEWHERE, G_GROUP, GROUP, gName, M_ALLOWED, M_GROUP } from './codes.ts'
import type { Complaints } from './complaint.ts'
import { WHOLE_WITHIN } from './number.ts'

const MOST_M_WORDS = 4

/** Takes a G word into the block (NISTIR 6556, 3.3.5 and table 4). */
export function takeG(block: Block, value: number, column: number, complaints: Complaints): void {
  const tenfold = Math.round(value * 10)
  const group =
    tenfold >= 0 && tenfold < 1000 && Math.abs(value * 10 - tenfold) <= 10 * WHOLE_WITHIN
      ? G_GROUP[tenfold]!
      : -1
  if (group < 0) {
    const known = G_ELSEWHERE.get(tenfold)
    complaints.fail(
      column,
      `This G code is not in the standard.${known === undefined ? '' : ` ${known}`}`,
      `G${value}`,
      G_ALLOWED
    )
  }
  if ((block.gMask & (1 << group)) !== 0)
    complaints.fail(
      column,
      'Two codes of one group stand on the line: only one can be in force.',
      `${gName(block.g[group]!)} and ${gName(tenfold)}`,
      'one of them'
    )
  if (group === GROUP.units && tenfold >= 700)
    complaints.once(
      'dialect',
      'warning',
      column,
      `${gName(tenfold)} sets ${tenfold === 700 ? 'inches' : 'millimetres'} in ISO 6983 and on the controls that follow it; in RS274/NGC it means nothing. Read as ISO 6983 has it: make sure what your control makes of it.`,
      gName(tenfold),
      'G20 for inches, G21 for millimetres'
    )
  block.gMask |= 1 << group
  block.g[group] = tenfold
  block.gColumn[group] = column
}

/** Takes an M word into the block. */
export function takeM(block: Block, value: number, column: number, complaints: Complaints): void {
  const whole = Math.round(value)
  const group = whole >= 0 && whole < 100 && Math.abs(value - whole) <= WHOLE_WITHIN ? M_GROUP[whole]! : -1
  if (group < 0) complaints.fail(column, 'This M code is not in the standard.', `M${value}`, M_ALLOWED)
  if ((block.mMask & (1 << group)) !== 0)
    complaints.fail(
      column,
      'Two codes of one group stand on the line: only one can be in force.',
      `M${block.m[group]} and M${whole}`,
      'one of them'
    )
  if (++block.mCount > MOST_M_WORDS)
    complaints.fail(column, 'The line holds too many M words.', `${block.mCount}`, `at most ${MOST_M_WORDS}`)
  block.mMask |= 1 << group
  block.m[group] = whole
  block.mColumn[group] = column
}
