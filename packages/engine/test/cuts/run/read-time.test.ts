import { describe, expect, it } from 'vitest'
import { motionTime } from '../../../src/cuts/run/motion-time.ts'
import { programTime } from '../../../src/cuts/run/read-time.ts'
import type { Move } from '../../../src/cuts/toolpath.ts'
import { readProgram } from '../../../src/proving/read/read-program.ts'

const M = { rapid: 3000, feed: 2400, plunge: 600, acceleration: 300, corner: 0.02, change: 3 }

const minutes = (...lines: string[]) => {
  const { motions } = readProgram(['G21 G90 G94 G17', ...lines, 'M2'].join('\n'))
  return programTime(motions, M).minutes
}

describe('time of a program that was read', () => {
  it('is that of the same moves as a path', () => {
    const path: Move[] = [
      { kind: 'rapid', x: 0, y: 0, z: 5 },
      { kind: 'rapid', x: 10, y: 0, z: 5 },
      { kind: 'line', x: 10, y: 0, z: -2, feedMmMin: 300 },
      { kind: 'line', x: 60, y: 0, z: -2, feedMmMin: 1200 },
      { kind: 'arc', x: 60, y: 20, z: -2, cx: 60, cy: 10, clockwise: false, feedMmMin: 1200 },
      { kind: 'arc', x: 60, y: 40, z: -3, cx: 60, cy: 30, clockwise: true, feedMmMin: 1200 }
    ]
    const read = minutes(
      'G0 X0 Y0 Z5',
      'G0 X10',
      'G1 Z-2 F300',
      'G1 X60 F1200',
      'G3 X60 Y20 I0 J10',
      'G2 X60 Y40 Z-3 I0 J10'
    )
    expect(read).toBeCloseTo(motionTime({ moves: path, passes: [] }, M).minutes, 9)
  })

  // A turned part: the same half circle lies in any plane, and its ways meet those of the lines before and after it.
  it('is the same in every plane', () => {
    const flat = minutes('G0 X0 Y0 Z0', 'G1 X20 F600', 'G3 X20 Y10 I0 J5', 'G1 X0')
    const zx = minutes('G0 X0 Y0 Z0', 'G1 Z20 F600', 'G18 G3 Z20 X10 K0 I5', 'G1 Z0')
    const yz = minutes('G0 X0 Y0 Z0', 'G1 Y20 F600', 'G19 G3 Y20 Z10 J0 K5', 'G1 Y0')
    expect(yz).toBeCloseTo(flat, 9)
    // Down along z at 600 is all the machine takes: no slower than the feed here.
    expect(zx).toBeCloseTo(flat, 9)
  })

  it('stops at a dwell and a change', () => {
    const on = minutes('G0 X0 Y0 Z0', 'G1 X50 F1200', 'G1 X100')
    const stop = minutes('G0 X0 Y0 Z0', 'G1 X50 F1200', 'G4 P0', 'G1 X100')
    // 20 mm/s lost and gained: 20/300 s more.
    expect(60 * (stop - on)).toBeCloseTo(20 / 300, 9)
    const waits = minutes('G0 X0 Y0 Z0', 'G1 X50 F1200', 'G4 P1.5', 'G1 X100')
    expect(60 * (waits - stop)).toBeCloseTo(1.5, 9)
  })
})
