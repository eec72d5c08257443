import { describe, expect, it } from 'vitest'
import { tasksOf } from '../../src/calendar/tasks.ts'
import { findingsOf } from '../../src/findings/checks.ts'
import { InputProblem } from '../../src/piece/problem.ts'
import { checkPiece } from '../../src/piece/read.ts'
import { stepDocument } from '../../src/steps/step-document.ts'
import { workOf } from '../../src/work.ts'
import { EXAMPLES, exampleInput } from '../calendar/example-work.ts'

const originMs = Date.parse('2026-11-30T08:00:00+01:00')

describe.each(EXAMPLES)('the usual order of %s, written out', name => {
  const input = exampleInput(name)
  const derived = workOf(input)
  const steps = derived.steps.map(stepDocument)
  const piece = checkPiece({ ...(input.piece.document as object), steps }, name)
  const written = workOf({ ...input, piece })

  it('keeps steps, clock and what each wait is for', () => {
    expect(written.faults).toEqual([])
    expect(written.steps.map(s => [s.kind, s.why, s.up, s.inMould, s.face, s.waitMin])).toEqual(
      derived.steps.map(s => [s.kind, s.why, s.up, s.inMould, s.face, s.waitMin])
    )
    expect(written.clock).toEqual(derived.clock)
  })

  it('asks for the same tasks and waits', () => {
    const of = (work: typeof written) => tasksOf(work, { piece: '', originMs })
    expect(of(written).tasks.map(t => [t.id, t.minutes])).toEqual(
      of(derived).tasks.map(t => [t.id, t.minutes])
    )
    expect(of(written).gaps).toEqual(of(derived).gaps)
  })

  it('finds the same', () => {
    // What would mend it may be told otherwise where the order is the document's own.
    const of = (work: typeof written) => findingsOf(work).map(f => [f.id, f.severity, f.at])
    expect(of(written)).toEqual(of(derived))
  })
})

describe('a wait of a written order', () => {
  it('says how long or until what', () => {
    const input = exampleInput('meadow-boards')
    const steps = workOf(input).steps.map(s => (s.kind === 'wait' ? { do: 'wait' } : stepDocument(s)))
    const piece = checkPiece({ ...(input.piece.document as object), steps }, 'piece')
    expect(() => workOf({ ...input, piece })).toThrow(InputProblem)
    expect(() => workOf({ ...input, piece })).toThrow(/neither how long nor until what/)
  })

  it('lets all that was filled before it harden at once, as long as the slowest, and levels each', () => {
    const filled = (id: string, y: number) => ({
      id,
      face: 'front',
      filled: [{ pigment: 'white-paste', percent: 3 }],
      linear: { from: [-50, y], to: [50, y], length: 6, at: [0, 1] }
    })
    const input = exampleInput('meadow-boards', {
      piece: { quantity: 1, markings: [filled('upper', 30), filled('lower', -30)] }
    })
    const derived = workOf(input).steps
    expect(derived.filter(s => s.why === 'sand').length).toBe(3)
    const first = derived.findIndex(s => s.kind === 'fill')
    const steps = derived.filter((_, i) => i !== first + 1).map(stepDocument)
    const piece = checkPiece({ ...(input.piece.document as object), steps }, 'piece')
    const work = workOf({ ...input, piece })
    const { tasks, gaps } = tasksOf(work, { piece: '', originMs })
    expect(tasks.filter(t => t.kind === 'level').map(t => t.says)).toEqual([
      'Scrape upper level',
      'Scrape lower level'
    ])
    const wait = work.clock[work.steps.findIndex((s, i) => i > first && s.kind === 'wait')]!.waitMin
    for (const id of ['upper', 'lower'])
      expect(gaps.find(g => g.before === `fill ${id}` && g.after === `fill ${id}: level`)?.leastMin).toBe(
        wait
      )
    const twice = workOf(input).clock.reduce((s, c) => s + c.waitMin, 0)
    expect(twice - work.clock.reduce((s, c) => s + c.waitMin, 0)).toBe(wait)
  })
})
