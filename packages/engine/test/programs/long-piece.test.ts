import { describe, expect, it } from 'vitest'
import { machiningOf } from '../../src/cuts/operation/machining.ts'
import { placedProgram } from '../../src/cuts/write/placed-program.ts'
import { writeProgram } from '../../src/cuts/write/write-program.ts'
import type { ProgramFile } from '../../src/programs/program-set.ts'
import { programSet } from '../../src/programs/program-set.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { machineCards } from '../../src/sheets/machine-card.ts'
import { LONG_SHOP, longPiece } from './long-piece.ts'
import { setIn, workIn } from './made.ts'

const RIVER = { id: 'river', resin: 'deep', depth: 20 } as const
const work = workIn(longPiece(), LONG_SHOP)
const set = programSet(machiningOf(work)!)
const { settings } = set.machining
const positionOf = (p: ProgramFile) => settings[p.made[0]!.operation.setting]!.position!
const nameOf = (p: ProgramFile) => p.made[0]!.operation.name

describe('a tabletop of 2.4 m on a bed of 800 × 600', () => {
  it('is worked in strips that overlap, each within the travel', () => {
    expect(set.notMade).toEqual([])
    // Casting 2468, widest cutter 25.4: (800 − 2·15.7 − 60.8) of new length a strip: ⌈(2468 − 60.8)/707.8⌉ = 4.
    expect(settings).toHaveLength(8)
    for (const p of set.programs) {
      const { x, y } = tipBox(p)
      expect(x, p.file).toBeLessThanOrEqual(400)
      expect(y, p.file).toBeLessThanOrEqual(300)
    }
  })

  it('reads back and proves clean, every cut whole', () => {
    // Of the first face the feet alone: its flattening is that of the other, and takes as long.
    const own = set.programs.filter(p => settings[p.made[0]!.operation.setting]!.setting.index === 1)
    const feet = set.programs.filter(p => nameOf(p).endsWith('foot') || nameOf(p).startsWith('index'))
    for (const { programs, proof } of proveSet({ ...set, programs: [...feet, ...own] })) {
      const what = programs.map(p => p.file).join(' ')
      for (const p of programs) expect(p.complaints, what).toEqual([])
      expect(proof.reports, what).toEqual([])
      expect(proof.removedMm3, what).toBeGreaterThan(0)
    }
  }, 120_000)

  it('drills each pair of holes in one position and stands on it in the next', () => {
    const [one, two, three, four] = settings
    expect(one!.position!.stands).toEqual([])
    expect(two!.position!.stands).toEqual(one!.position!.makes)
    expect(three!.position!.stands).toEqual(two!.position!.makes)
    expect(four!.position!.makes).toEqual([])
    // On the machine: the same bed pins for every move.
    const onBed = [two!, three!, four!].map(s =>
      s.position!.stands.map(h => [h.x + s.frame.shiftX, h.y + s.frame.shiftY].map(v => v.toFixed(6)))
    )
    expect(onBed[1]).toEqual(onBed[0])
    expect(onBed[2]).toEqual(onBed[0])
    // Two diameters: end for end it does not go on.
    expect(new Set(one!.position!.makes.map(h => h.diameterMm)).size).toBe(2)
    // Turned over it is found again by holes made before; none are made.
    for (const s of settings.slice(4)) {
      expect(s.position!.stands).toHaveLength(2)
      expect(s.position!.makes).toEqual([])
    }
  })

  it('runs along the whole outline but for the tabs', () => {
    const marks: [x: number, y: number][] = []
    for (const p of set.programs.filter(q => nameOf(q).startsWith('free'))) {
      const { frame } = settings[p.made[0]!.operation.setting]!
      const { path, operation } = p.made[0]!
      expect(frame.turnDeg).toBe(0)
      let [px, py, pz] = [0, 0, 99]
      for (const m of path.moves) {
        if (m.kind === 'dwell') continue
        const deep = Math.abs(m.z - operation.job.floorMm) < 1e-6 && Math.abs(pz - m.z) < 1e-6
        const n = Math.ceil(Math.hypot(m.x - px, m.y - py))
        if (deep)
          for (let k = 0; k <= n; k++) marks.push([px + ((m.x - px) * k) / n, py + ((m.y - py) * k) / n])
        ;[px, py, pz] = [m.x, m.y, m.z]
      }
    }
    // The sides, 3 mm off the part: every millimetre is run but for 8 tabs of 10 and a cutter of 6.
    let missing = 0
    for (const y of [213, -213])
      for (let x = -1180; x <= 1180; x++)
        if (!marks.some(m => Math.abs(m[1] - y) < 0.01 && Math.abs(m[0] - x) <= 0.6)) missing++
    for (const x of [1203, -1203])
      for (let y = -195; y <= 195; y++)
        if (!marks.some(m => Math.abs(m[0] - x) < 0.01 && Math.abs(m[1] - y) <= 0.6)) missing++
    expect(missing).toBeGreaterThan(8 * 14)
    expect(missing).toBeLessThan(8 * 17)
  })

  it('says on file, header and card which position, where it lies, and on which pins', () => {
    const second = set.programs.find(p => positionOf(p).number === 2 && nameOf(p) === 'long groove')!
    expect(second.file).toContain('position-2')
    expect(second.written.text).toContain('position 2 of 4')
    expect(second.written.text).toContain('on the index pins')
    const cards = machineCards(set, 'Long', [])
    for (let n = 1; n <= 4; n++) expect(cards).toContain(`position ${n} of 4`)
  })

  it.for([
    ['long groove', 'shiftY'],
    ['hole, Ø 40', 'shiftX']
  ] as const)('a position whose %s lies 1.5 times the detection limit off in %s is caught', ([cut, axis]) => {
    const own = set.programs.filter(p => nameOf(p) === cut)
    const clean = proveSet({ ...set, programs: own })
    expect(clean[0]!.proof.reports).toEqual([])
    const by = 1.5 * clean[0]!.proof.comparison!.detectsAcrossMm
    const programs = own.map(p => {
      if (positionOf(p).number !== 2) return p
      const input = placedProgram(p.input, { turnDeg: 0, shiftX: 0, shiftY: 0, [axis]: by })
      return { ...p, input, written: writeProgram(input, set.machining.bench.machine.program) }
    })
    const kinds = proveSet({ ...set, programs }).flatMap(p => p.proof.reports.map(r => r.kind))
    expect(kinds).toContain('cut away')
  })
})

it('a piece that fits lies there whole; one that is too wide both ways is not moved along', () => {
  const short = setIn(
    longPiece({ outline: { rectangle: [700, 420] }, timbers: [], pours: [RIVER], cuts: [] }),
    LONG_SHOP
  )
  expect(short.machining.settings.every(s => s.position === null)).toBe(true)
  const wide = workIn(
    longPiece({ outline: { rectangle: [2400, 900] }, timbers: [], pours: [RIVER], cuts: [] }),
    LONG_SHOP
  )
  expect(wide.pins.index).toBeNull()
  expect(wide.pins.noIndex).toMatch(/across/)
  // No waste, no pins.
  const bare = workIn(longPiece({ mould: { margin: 10 }, timbers: [], pours: [RIVER] }), LONG_SHOP)
  expect(bare.pins.index).toBeNull()
  expect(bare.pins.noIndex).toMatch(/no place/)
})

function tipBox(p: ProgramFile): { x: number; y: number } {
  let [x, y] = [0, 0]
  for (const run of p.input.runs)
    for (const part of run.parts)
      for (const m of part.path.moves) {
        if (m.kind === 'dwell') continue
        x = Math.max(x, Math.abs(m.x))
        y = Math.max(y, Math.abs(m.y))
      }
  return { x, y }
}
