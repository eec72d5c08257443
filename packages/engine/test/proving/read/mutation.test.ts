import { describe, expect, it } from 'vitest'
import { MOTION } from '../../../src/proving/motion.ts'
import { complaintText } from '../../../src/proving/read/complaint.ts'
import { type ProgramReading, readProgram } from '../../../src/proving/read/read-program.ts'
import { mutateProgram, PROGRAMS } from './mutation.ts'

const COUNT = Number(process.env['CASTWRIGHT_MUTATIONS'] ?? 1000)
/** Longest one program may take, ms. */
const MOST_MS = 2000

/** What no reading may show; null when all is well. */
function fault(text: string, { motions: m, complaints, facts }: ProgramReading): string | null {
  const lines = text.split('\n')
  if (complaints.length > 200) return 'too many complaints kept'
  if (facts.errors + facts.warnings + facts.notes < complaints.length) return 'complaints not counted'
  for (const c of complaints) {
    if (c.line > lines.length) return `complaint on line ${c.line}`
    if (c.column < 0 || c.column > (lines[c.line - 1]?.length ?? 0) + 1)
      return `column of ${complaintText(c)}`
    if (c.says === '' || /undefined|NaN|\[object/.test(c.says + c.allowed)) return complaintText(c)
  }
  for (let i = 0; i < m.count; i++) {
    if (m.kind[i]! > MOTION.change) return `kind ${m.kind[i]}`
    if (m.line[i]! < 1 || m.line[i]! > lines.length) return `line ${m.line[i]}`
    if (i > 0 && m.line[i]! < m.line[i - 1]!) return `order at ${i}`
    for (const v of [m.x[i]!, m.y[i]!, m.z[i]!])
      if (Math.abs(v) > 1e6 || Math.abs(v) === Number.POSITIVE_INFINITY) return `place ${v}`
    const arc = m.kind[i] === MOTION.arcClockwise || m.kind[i] === MOTION.arcCounter
    for (const v of [m.a[i]!, m.b[i]!, m.feed[i]!, m.spindle[i]!])
      if (!Number.isFinite(v)) return `number ${v} in move ${i}`
    if (m.feed[i]! < 0) return 'feed below 0'
    if (arc) {
      const [p, q] = m.plane[i] === 17 ? [m.x, m.y] : m.plane[i] === 18 ? [m.z, m.x] : [m.y, m.z]
      const near = (k: number): number => Math.hypot(p[k]! - m.a[i]!, q[k]! - m.b[i]!)
      // The widest of the two tolerances, 0.0002 inch, and what a large number's last digit is worth.
      if (!(Math.abs(near(i) - near(i - 1)) < 0.0052)) return `arc ${i} ends ${near(i) - near(i - 1)} off`
    }
  }
  return null
}

describe('mutated programs', () => {
  it(`neither crash nor hang, and give only sound moves, ${COUNT} seeds`, () => {
    let clean = 0
    for (let seed = 1; seed <= COUNT; seed++) {
      const text = mutateProgram(seed)
      let began = performance.now()
      const reading = readProgram(text)
      let took = performance.now() - began
      if (took >= MOST_MS) {
        // A busy machine may stall one: what was slow is read once more.
        began = performance.now()
        readProgram(text)
        took = performance.now() - began
      }
      expect(took, `seed ${seed} took ${Math.round(took)} ms`).toBeLessThan(MOST_MS)
      expect(fault(text, reading), `seed ${seed}`).toBeNull()
      if (reading.facts.errors === 0) clean++
    }
    // Not all are broken for good: a good share is still read to the end.
    expect(clean).toBeGreaterThan(COUNT / 20)
    expect(clean).toBeLessThan((COUNT * 3) / 4)
  }, 600_000)

  it('are the same for the same seed, and start from programs read without an error', () => {
    expect(mutateProgram(7)).toBe(mutateProgram(7))
    expect(mutateProgram(7)).not.toBe(mutateProgram(8))
    for (const text of PROGRAMS) {
      const reading = readProgram(text)
      expect(reading.complaints.filter(c => c.severity === 'error').map(complaintText)).toEqual([])
      expect(reading.motions.count).toBeGreaterThan(1)
    }
  })
})
