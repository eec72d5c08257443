import { MOTION } from '../../../src/proving/motion.ts'
import type { Complaint } from '../../../src/proving/read/complaint.ts'
import { type ReadOptions, readProgram } from '../../../src/proving/read/read-program.ts'

/** Kind, then place, then the middle of an arc: ['line', 1, 2, 3] or ['clockwise', 1, 2, 3, 0, 0]. */
export type Made = readonly [string, ...number[]]

const NAMES: Readonly<Record<number, string>> = {
  [MOTION.rapid]: 'rapid',
  [MOTION.line]: 'line',
  [MOTION.arcClockwise]: 'clockwise',
  [MOTION.arcCounter]: 'counter',
  [MOTION.dwell]: 'dwell',
  [MOTION.stop]: 'stop',
  [MOTION.change]: 'change'
}

const round = (v: number): number => Math.round(v * 1e9) / 1e9 + 0

/** The moves of a program, rounded to 1e-9. */
export function movesOf(text: string, options: ReadOptions = {}): Made[] {
  const { motions: m } = readProgram(text, options)
  const out: Made[] = []
  for (let i = 0; i < m.count; i++) {
    const place = [m.x[i]!, m.y[i]!, m.z[i]!].map(round)
    const kind = m.kind[i]!
    if (kind === MOTION.dwell) out.push(['dwell', m.a[i]!])
    else if (kind >= MOTION.dwell) out.push([NAMES[kind]!])
    else if (kind >= MOTION.arcClockwise) out.push([NAMES[kind]!, ...place, round(m.a[i]!), round(m.b[i]!)])
    else out.push([NAMES[kind]!, ...place])
  }
  return out
}

/** Complaints of a program that are not about the whole. */
export const complaintsOf = (text: string, options: ReadOptions = {}): readonly Complaint[] =>
  readProgram(text, options).complaints.filter(c => c.column > 0)
