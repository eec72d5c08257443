import { describe, expect, it } from 'vitest'
import { pointToProgram } from '../../src/cuts/pins/frame.ts'
import { readingSchema } from '../../src/piece/reading-schema.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { readProgram } from '../../src/proving/read/read-program.ts'
import { machinePiece } from './machine-piece.ts'
import { setIn } from './made.ts'

const PIECE = machinePiece(7)
const planned = setIn(PIECE)
const [first, second] = planned.machining.settings
const reading = (r: object) => readingSchema.parse({ id: 'reading-00001', at: '2026-11-28T08:00:00Z', ...r })

// The truth is the rotation of places, worked here; what the machine is sent is read back from the text.
const TURN = (0.35 * Math.PI) / 180
const [SX, SY] = [0.62, -0.41]
const lies = (x: number, y: number): [number, number] => [
  Math.cos(TURN) * x - Math.sin(TURN) * y + SX,
  Math.sin(TURN) * x + Math.cos(TURN) * y + SY
]

describe('marks that were touched', () => {
  const marks = (
    [
      [-60, -30],
      [70, 10],
      [-10, 40]
    ] as const
  ).map((drawn, i) => {
    const [x, y] = lies(...pointToProgram(second!.frame, drawn[0], drawn[1]))
    // Each touched off by a little: something is left over.
    return { drawn, measured: [x + 0.01 * (i - 1), y] }
  })
  const set = setIn(PIECE, undefined, [reading({ kind: 'place', face: second!.setting.up, marks })])

  it('turn and shift every word of the programs of that face, and none of the other', () => {
    let turned = 0
    for (const [i, p] of set.programs.entries()) {
      const was = planned.programs[i]!
      const setting = p.made[0]!.operation.setting
      if (setting === first!.setting.index) {
        expect(p.written.text).toBe(was.written.text)
        continue
      }
      const [now, before] = [readProgram(p.written.text).motions, readProgram(was.written.text).motions]
      expect(now.count, p.file).toBe(before.count)
      for (let k = 0; k < now.count; k++) {
        if (!Number.isFinite(before.x[k]!)) continue
        const [x, y] = lies(before.x[k]!, before.y[k]!)
        // 0.02: what the marks are off, over what lies beyond them; rounding of the words besides.
        expect(Math.hypot(now.x[k]! - x, now.y[k]! - y), `${p.file} ${k}`).toBeLessThan(0.02)
        expect(now.z[k]).toBe(before.z[k])
        if (Math.hypot(x - before.x[k]!, y - before.y[k]!) > 0.1) turned++
      }
      expect(p.test?.written.text.replace(/\(Note: .*\n(\(.*\n)?/g, '')).toBe(
        was.test?.written.text.replace(/\(Note: .*\n(\(.*\n)?/g, '')
      )
    }
    expect(turned).toBeGreaterThan(1000)
  })

  it('stand in the header with what is left over, and the pins where they are met', () => {
    const text = set.programs.at(-1)!.written.text.replace(/\)\n\( */g, ' ')
    expect(text).toMatch(/As measured the piece lies turned by 0\.3[45]\d* degrees/)
    expect(text).toMatch(
      /Left at the places measured: mark 1 0\.0\d+[;,] mark 2 0\.0\d+[;,] mark 3 0\.0\d+ mm/
    )
    const [pin] = planned.machining.pins.pins
    const [x, y] = lies(...pointToProgram(second!.frame, pin!.x, pin!.y))
    const [, px, py] = /Pin 1, [\d.]+ across, stands at X(-?\d+(?:\.\d+)?) Y(-?\d+(?:\.\d+)?)/.exec(text)!
    expect(Math.hypot(Number(px) - x, Number(py) - y)).toBeLessThan(0.02)
  })

  it('are turned back before the programs are swept: they prove clean', () => {
    for (const { proof, programs } of proveSet(set)) expect(proof.reports, programs[0]!.file).toEqual([])
  })
})

describe('a thickness that was read after the first flattening', () => {
  const { states } = planned.machining.bench.stack
  const state = states[first!.setting.to]!
  const plannedMm = state.highZ - state.lowZ

  it.each([0.2, -0.2])('moves bed and through cuts of the second side: %s mm', over => {
    const thickness = Number((plannedMm + over).toFixed(3))
    const set = setIn(PIECE, undefined, [reading({ kind: 'thickness', thickness })])
    const on = set.machining.settings[1]!
    expect(on.frame.bedZ).toBeCloseTo(second!.frame.bedZ - over, 9)
    const deepest = (s: typeof set) => {
      const { z, count } = readProgram(s.programs.at(-1)!.written.text).motions
      return Math.min(...z.subarray(0, count).filter(Number.isFinite))
    }
    // Thicker: as much deeper. Thinner: as deep as planned, further into the board beneath.
    expect(deepest(set)).toBeCloseTo(deepest(planned) - Math.max(0, over), 3)
    const text = set.programs.at(-1)!.written.text.replace(/\)\n\( */g, ' ')
    expect(Number(/The bed lies at Z(-?[\d.]+) mm/.exec(text)![1])).toBeCloseTo(on.frame.bedZ, 3)
    expect(text).toMatch(over > 0 ? /planned [\d.]+: the bed lies by that much lower/ : /much higher/)
    for (const { proof, programs } of proveSet(set)) expect(proof.reports, programs[0]!.file).toEqual([])
  })
})
