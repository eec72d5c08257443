import { describe, expect, it } from 'vitest'
import { complaintText } from '../../../src/proving/read/complaint.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'

const last = (r: ReturnType<typeof readProgram>): string => complaintText(r.complaints.at(-1)!)

describe('bounds', () => {
  it('more lines than are read: one complaint with the line, what came before is kept', () => {
    const r = readProgram(`G21 F9\n${'G0 X1 Y1 Z1\n'.repeat(500)}`, { mostLines: 100 })
    expect(r.facts.lines).toBe(100)
    expect(r.motions.count).toBe(99)
    expect(r.complaints).toHaveLength(1)
    expect(last(r)).toBe(
      'line 101: The program has too many lines. The reading stops here. Found: more than 100. Allowed: at most 100.'
    )
    expect(r.facts.stopped).toMatch(/too many lines/)
  })

  it('ten million short lines are read, one more is refused, in seconds and little memory', () => {
    const began = performance.now()
    const r = readProgram('\n'.repeat(10_000_001))
    expect(last(r)).toMatch(/^line 10000001: The program has too many lines/)
    // Some 0.5 s at rest on the machine at hand.
    expect(performance.now() - began).toBeLessThan(20_000)
    // Room for moves is laid out for what a text of that length may hold: 10 MB, some 27 MB of moves, given back.
    expect(r.motions.x.buffer.byteLength).toBeLessThan(1000)
  }, 60_000)

  it('more moves than are read, by lines or by one cycle', () => {
    const text = `G21 F9\n${'G0 X1 Y1 Z1\n'.repeat(500)}`
    const r = readProgram(text, { mostMotions: 200 })
    expect(r.motions.count).toBe(200)
    expect(last(r)).toMatch(/^line 202: The program asks for more moves/)
    const cycles = `G21 F9\nG0 X1 Y1 Z1\n${'G83 X1 R0 Z-1 Q0.001\n'.repeat(50)}`
    expect(last(readProgram(cycles, { mostMotions: 10_000 }))).toMatch(/asks for more moves/)
  })

  it('all errors: a hundred thousand bad lines cost no more than good ones', () => {
    const began = performance.now()
    const r = readProgram('G1 X[[1/0]]\n'.repeat(100_000))
    expect([r.facts.errors, r.complaints.length]).toEqual([100_000, 200])
    expect(performance.now() - began).toBeLessThan(10_000)
  })

  it('a binary file, one line of five megabytes, deep brackets: reported, no hang', () => {
    let noise = ''
    for (let k = 0; k < 50_000; k++) noise += String.fromCharCode((k * 2654435761) >>> 24)
    expect(readProgram(noise).facts.errors).toBeGreaterThan(10)
    expect(readProgram('X'.repeat(5_000_000)).complaints[0]).toMatchObject({ line: 1, column: 257 })
    expect(readProgram('['.repeat(5_000_000)).facts.errors).toBe(1)
    expect(readProgram(`G0 X${'#'.repeat(200)}1`).complaints[0]!.says).toMatch(/within each other/)
  })

  it('three hundred thousand lines are kept whole', () => {
    const lines = ['G21 F600', 'G0 X0 Y0 Z0']
    for (let k = 0; k < 300_000; k++) lines.push(`G1 X${k % 1000}.25 Y-${k % 777}`)
    lines.push('M2')
    const { motions, facts } = readProgram(lines.join('\n'))
    expect([motions.count, facts.errors]).toEqual([300_001, 0])
    for (let k = 0; k < 300_000; k += 7919)
      expect([motions.x[k + 1], motions.y[k + 1]! + 0, motions.line[k + 1], motions.feed[k + 1]]).toEqual([
        (k % 1000) + 0.25,
        0 - (k % 777),
        k + 3,
        600
      ])
  })
})
