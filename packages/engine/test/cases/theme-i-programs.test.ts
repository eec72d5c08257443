import { describe, expect, it } from 'vitest'
import { pocketPath } from '../../src/cuts/area/pocket-path.ts'
import { writeProgram } from '../../src/cuts/write/write-program.ts'
import { MOTION } from '../../src/proving/motion.ts'
import { readProgram } from '../../src/proving/read/read-program.ts'
import { rectangle } from '../../src/shape/build.ts'
import { flat, job, pathOf } from '../cuts/area/painted.ts'
import { dialect, program, run } from '../cuts/write/sample.ts'
import { pocketStack, proofOf } from '../proving/judge/pocket.ts'
import { Program } from '../proving/program.ts'

const part = (diameterMm: number) => ({
  shape: flat(diameterMm),
  parts: [
    {
      name: 'pocket',
      path: pathOf(pocketPath(job(flat(diameterMm), 6), rectangle(30, 20, 3, 0.02, 0, 0))),
      topMm: 0
    }
  ]
})
const { text } = writeProgram(
  program([run(part(6).parts[0]!.path, part(6)), run(part(4).parts[0]!.path, { ...part(4), number: 2 })], {
    clearMm: 5,
    bedMm: -20,
    stock: { minX: -55, maxX: 55, minY: -40, maxY: 40, minZ: -20, maxZ: 0 },
    checkAt: { x: 0, y: 0, topMm: 0 }
  }),
  dialect({ changes: 'in the program' })
)
const cutterByTool = new Map([[1, flat(6)], [2, flat(4)]]) // biome-ignore format: numbers

/** What the sweep over the piece says of a program; the second cutter so much longer than it is taken to be. */
function proved(of: string, longerMm = 0): string[] {
  // The first cutter stands in the spindle when the program begins.
  const { motions } = readProgram(of, { tool: 1 })
  const z = motions.z.map((h, i) => (motions.tool[i] === 2 ? h - longerMm : h))
  return proofOf(pocketStack(), new Program(), { cutterByTool, motions: { ...motions, z } }).reports.map(
    r => r.kind
  )
}

describe('a second cutter', () => {
  it('C72 stops for its height after the change, 5 mm over the face, and proves clean', () => {
    const change = text.slice(text.indexOf('T2 M6'))
    const stop = change.indexOf('\nM0\n')
    expect(stop).toBeGreaterThan(0)
    expect(stop).toBeLessThan(change.indexOf(' M3'))
    expect(change.slice(0, stop)).toMatch(/Z5\.0\n/)
    expect(change.slice(0, stop)).toMatch(
      /\(MSG, Cutter 2 in, its height set\. The tip must stand 5\.0 mm over the face/
    )
    expect(proved(text)).toEqual([])
  })

  it('C72 is told of where that stop is struck out', () => {
    const [before, after] = text.split('T2 M6')
    const struck = `${before}T2 M6${after!.replace('\nM0\n', '\n')}`
    expect(proved(struck)).toContain('cutter not measured')
  })

  it('C72 15 mm longer than the first and not set again cuts a trench in rapid moves and goes right through', () => {
    const { motions } = readProgram(text)
    expect([...motions.kind.subarray(0, motions.count)].filter(k => k === MOTION.stop)).toHaveLength(2)
    const says = proved(text, 15)
    expect(says).toContain('rapid through material')
    expect(says).toContain('far face')
    expect(says).toContain('cut away')
  })
})
