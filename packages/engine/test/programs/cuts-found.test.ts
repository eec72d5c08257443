import { describe, expect, it } from 'vitest'
import { foundInCuts, provedSet } from '../../src/cuts-found.ts'
import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ProgramSet } from '../../src/programs/program-set.ts'
import { proveSet } from '../../src/programs/prove-set.ts'
import { unreachedOf } from '../../src/programs/unreached.ts'
import { programsPart } from '../../src/sheets/page-programs.ts'
import { programTable } from '../../src/sheets/run-programs.ts'
import { SHOP } from './machine-piece.ts'
import { setIn } from './made.ts'
import { LAYERED } from './proved-piece.ts'

const pocketOf = (shape: object): PieceDocument => ({
  ...LAYERED,
  hardware: [],
  cuts: [{ id: 'pocket', face: 'front', kind: 'pocket', shape, depth: 4 } as never]
})

describe('where a program does what it should not', () => {
  it('is told with file, place and lines of that file', () => {
    const set = setIn({ ...LAYERED, hardware: [], cuts: LAYERED.cuts!.slice(0, 2) }, SHOP)
    const spoiled: ProgramSet = {
      ...set,
      programs: set.programs.map(p =>
        p.file.includes('pocket')
          ? {
              ...p,
              written: {
                ...p.written,
                text: p.written.text.replaceAll(/F(\d[\d.]*)/g, (_, f) => `F${3 * Number(f)}`)
              }
            }
          : p
      )
    }
    const [found] = foundInCuts(spoiled, proveSet(spoiled))
    const { finding, place } = found!
    expect(finding.id).toBe('too-much-at-once')
    const { files, lines, x, y, met } = place!
    expect(files).toHaveLength(1)
    // The words name the same file, line and place.
    const line = Number(/line (\d+)/.exec(finding.says)![1])
    expect(finding.says.startsWith(files[0]!)).toBe(true)
    expect(lines.some(([a, b]) => a <= line && line <= b)).toBe(true)
    const near = /X(\S+) Y(\S+) /.exec(finding.says)!
    expect(x!).toBeCloseTo(Number(near[1]), 0)
    expect(y!).toBeCloseTo(Number(near[2]), 0)
    expect(met).toMatch(/^\d+ mm³ a minute at once$/)
    // On lists: the program itself says what it met, the others that they met nothing.
    const listed = provedSet({ set: spoiled, found: foundInCuts(spoiled, proveSet(spoiled)) })
    expect(listed.met!.get(files[0]!)).toBe(`Caution: ${met}`)
    expect([...listed.met!.values()].filter(w => w === 'nothing met')).toHaveLength(set.programs.length - 1)
    const table = programTable(listed)!
    expect(table.head.at(-1)).toBe('Proved')
    expect(table.rows.find(r => r[0] === files[0])!.at(-1)).toBe(`Caution: ${met}`)
    const page = programsPart(listed, true)!.text
    for (const p of set.programs) expect(page).toContain(p.file)
    expect(page).toContain(`Caution: ${met}`)
  })
})

describe('what no cutter comes to', () => {
  // A pocket 4 deep with square corners, by a cutter of radius 3. One corner keeps what lies outside the quarter circle;
  // a strip beside the walls is not counted: the sum over small squares between none and three cells of it (slow twin).
  const corners = (stripMm: number) => {
    const step = 0.01
    let cells = 0
    for (let x = stripMm + step / 2; x < 3; x += step)
      for (let y = stripMm + step / 2; y < 3; y += step) if (Math.hypot(3 - x, 3 - y) > 3) cells++
    return 4 * cells * step ** 2
  }

  it('four square corners keep the radius of the cutter', () => {
    // (4 − π)·r², closed form.
    expect(corners(0)).toBeCloseTo((4 - Math.PI) * 9, 1)
    const set = setIn(pocketOf({ rectangle: [30, 20] }), SHOP)
    const step = proveSet(set).find(s => s.programs.some(p => p.file.includes('pocket')))!
    const left = unreachedOf(set, step.programs, step.proof)!
    expect(left).toMatchObject({ radiusMm: 3 })
    expect(left.mostMm).toBeCloseTo(4, 1)
    expect(left.areaMm2).toBeGreaterThan(corners(0.6))
    expect(left.areaMm2).toBeLessThan(corners(0))
    // In one of the corners, 15 and 10 from the middle.
    expect(Math.hypot(15 - Math.abs(left.x), 10 - Math.abs(left.y))).toBeLessThan(3 * Math.SQRT2 - 3 + 0.3)
    expect(left.says).toMatch(/radius 3 mm .*up to 4 mm stays.* by hand/)
  })

  it('corners as round as the cutter are reached', () => {
    const set = setIn(pocketOf({ rectangle: [30, 20], corner: 3 }), SHOP)
    for (const s of proveSet(set)) expect(unreachedOf(set, s.programs, s.proof)).toBeNull()
  })
})
