import { describe, expect, it } from 'vitest'
import { airCut } from '../../../src/cuts/write/air-cut.ts'
import { testCut } from '../../../src/cuts/write/test-cut.ts'
import { writeProgram } from '../../../src/cuts/write/write-program.ts'
import type { Dialect } from '../../../src/piece/dialect-field.ts'
import { MOTION } from '../../../src/proving/motion.ts'
import { complaintText } from '../../../src/proving/read/complaint.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'
import { dialect, drawn, program, run } from './sample.ts'

const DIALECTS: readonly Partial<Dialect>[] = [
  {},
  { decimals: 2, lineNumbers: true },
  { units: 'inch', cycles: true },
  { arcs: false, changes: 'in the program', air: 'M8' },
  { comments: false, spindleWait: 0, zero: 'bed', decimals: 6 }
]

// The reader shares no code with the writer: it holds every line against the whole standard.
describe('the reader of programs', () => {
  it.each(DIALECTS.map(d => [JSON.stringify(d), d] as const))(
    'has nothing against one in %s',
    (_, change) => {
      const d = dialect(change)
      for (let seed = 1; seed <= 10; seed++) {
        const cut = program([run(drawn(seed))])
        for (const p of [cut, airCut(cut), testCut(cut).program!]) {
          const { complaints, motions } = readProgram(writeProgram(p, d).text)
          expect(complaints.map(complaintText), `seed ${seed}`).toEqual([])
          expect(motions.count).toBeGreaterThan(20)
          const end = motions.count - 1
          const last = [...motions.kind].slice(0, end + 1).lastIndexOf(MOTION.rapid)
          expect(motions.z[last]! - (d.zero === 'bed' ? -p.bedMm : 0)).toBeGreaterThanOrEqual(
            p.clearMm - 0.02
          )
        }
      }
    }
  )
})
