import { describe, expect, it } from 'vitest'
import { rescues } from '../../src/rescue/rescues.ts'
import { inputOf, reading } from './bench.ts'

const ASK = { asOf: '2026-12-12T08:00+01:00' }
const note = (words: string, more: object = {}) => reading(20, { kind: 'note', note: words, ...more })
const found = (...readings: ReturnType<typeof reading>[]) =>
  rescues(inputOf(readings), ASK).map(r => [r.trouble.kind, r.trouble.of, r.trouble.byMm])

describe('a note that speaks of a trouble is asked about', () => {
  it.each([
    ['a bubble of 2 mm stays in clear', ['bubble', 'clear', 2]],
    ['left has parted at the far end, 0,4 mm', ['timber parted', 'left', 0.4]],
    ['the bit snapped in pocket', ['cutter broken', 'pocket', null]],
    ['pocket is off by 6 mm', ['hole misplaced', 'pocket', 6]],
    ['green: two stones stick up 2 mm', ['stones proud', 'green', 2]],
    ['stones sank in green', ['stones sunk', 'green', null]]
  ])('%s', (words, trouble) => {
    expect(found(note(words))).toEqual([trouble])
  })

  it('with the words of the note and a question, never a cause; its ways are those of the trouble', () => {
    const [r] = rescues(inputOf([note('left has parted')]), ASK)
    expect(r!.trouble.says).toBe(
      'a note of 2026-12-05 20:00 says “left has parted”: has timber parted from the resin?'
    )
    expect(r!.trouble.says).not.toMatch(/because|caused|due to/)
    expect(r!.ways.length).toBeGreaterThan(1)
  })

  it('by the step it was written at, or the only entry of its kind; else by none', () => {
    expect(found(note('foam at the rim', { step: 'pour green' }))).toEqual([['bubble', 'green', null]])
    expect(found(note('foam at the rim'))).toEqual([['bubble', null, null]])
    expect(found(note('the cutter broke'))).toEqual([['cutter broken', 'pocket', null]])
  })

  it('not where it says that it is not so, once the trouble is logged, or once the note is withdrawn', () => {
    for (const words of ['no bubbles at all', 'without any gap', 'came out clean', 'never leaks'])
      expect(found(note(words)), words).toEqual([])
    const n = note('a bubble in clear')
    const logged = reading(21, { kind: 'trouble', trouble: 'bubble', of: 'clear' })
    expect(found(n, logged)).toEqual([['bubble', 'clear', null]])
    expect(rescues(inputOf([n, logged]), ASK)[0]!.trouble.readings).toEqual([logged.id])
    expect(found(n, reading(21, { kind: 'withdrawn', reading: n.id }))).toEqual([])
  })
})
