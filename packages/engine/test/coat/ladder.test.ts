import { describe, expect, it } from 'vitest'
import type { Grade } from '../../src/coat/grain.ts'
import { GRADES, gradeOf, skippedBetween, stepRatio } from '../../src/coat/grain.ts'
import type { Sanding } from '../../src/coat/ladder.ts'
import { gradesBetween, LARGEST_STEP, ladderBy, ladderTo, stepAllowed } from '../../src/coat/ladder.ts'

const face = (areaM2: number, ...sanded: Sanding['sanded'][number][]): Sanding => ({
  sanded,
  areaM2,
  discMm: 150
})
const grits = (ladder: { steps: readonly { grade: Grade }[] }) => ladder.steps.map(s => s.grade.grit)
const chain = (...numbers: number[]) => numbers.map(gradeOf)

describe('the rule of steps', () => {
  // Chains of common practice, as makers write them down.
  it.each([[[80, 120, 180, 240, 320]], [[120, 180, 240, 320, 400, 600, 800, 1000, 1500, 2000, 2500]]])(
    '%j is allowed throughout',
    numbers => {
      const grades = chain(...numbers)
      for (let i = 1; i < grades.length; i++)
        expect(stepAllowed(grades[i - 1]!, grades[i]!), `${numbers[i]}`).toBe(true)
    }
  )

  it('220 to 800 is not, nor 80 to 220', () => {
    expect(stepAllowed(gradeOf(220), gradeOf(800))).toBe(false)
    expect(stepAllowed(gradeOf(80), gradeOf(220))).toBe(false)
  })

  it('what is put between brings every step within it, and none is spare', () => {
    for (const coarse of GRADES)
      for (const fine of GRADES) {
        if (fine.grit <= coarse.grit) continue
        const all = [coarse, ...gradesBetween(coarse, fine), fine]
        for (let i = 1; i < all.length; i++) {
          const gap = skippedBetween(all[i - 1]!, all[i]!)
          // Neighbours of the standard are never further apart than that.
          if (gap.length > 0) expect(stepRatio(all[i - 1]!, all[i]!)).toBeLessThanOrEqual(LARGEST_STEP + 1e-9)
        }
        for (let i = 1; i + 1 < all.length; i++)
          expect(stepRatio(all[i - 1]!, all[i + 1]!)).toBeGreaterThan(LARGEST_STEP)
      }
    expect(gradesBetween(gradeOf(220), gradeOf(800)).map(g => g.grit)).toEqual([360, 600])
  })
})

describe('the ladder', () => {
  it('ends at the grade asked for, coarse to fine, every step within the rule', () => {
    for (const marks of [0, 20, 60, 120, 300])
      for (const last of GRADES.filter(g => g.grit >= 60))
        for (const sanding of [face(1, 'timber'), face(0.2, 'resin'), face(1.2, 'timber', 'resin')]) {
          const { steps } = ladderTo(sanding, marks, last.grit)
          expect(steps[steps.length - 1]!.grade).toBe(last)
          for (let i = 1; i < steps.length; i++)
            expect(stepAllowed(steps[i - 1]!.grade, steps[i]!.grade)).toBe(true)
          // A step within the rule is clear in two passes, by both materials.
          for (const s of steps.slice(1)) expect(s.passes).toBe(2)
        }
  })

  it('is the quickest of all that are allowed: every ladder tried', () => {
    const every = (from: Grade, last: Grade): Grade[][] =>
      from === last
        ? [[last]]
        : GRADES.filter(g => g.grit <= last.grit && g.grit > from.grit && stepAllowed(from, g)).flatMap(g =>
            every(g, last).map(rest => [from, ...rest])
          )
    for (const [marks, last] of [
      [60, 240],
      [60, 320],
      [30, 220]
    ] as const) {
      const sanding = face(0.8, 'timber', 'resin')
      const found = ladderTo(sanding, marks, last)
      const starts = GRADES.filter(
        g => g.grit >= 80 && g.grit <= last && ladderBy(sanding, marks, [g]).steps[0]!.passes <= 3
      )
      const all = starts.flatMap(g => every(g, gradeOf(last)))
      expect(all.length).toBeGreaterThan(3)
      const quickest = Math.min(...all.map(grades => ladderBy(sanding, marks, grades).minutes))
      expect(found.minutes).toBeCloseTo(quickest, 9)
    }
  })

  it('begins as practice does: P80 after a sled, P150 or so after a true machine cut', () => {
    // Allowance of practice: 0.3-0.5 mm for a start at P80, 0.1-0.15 for one at P150.
    expect(grits(ladderTo(face(1, 'timber'), 120, 220))[0]).toBe(80)
    expect(grits(ladderTo(face(1, 'timber'), 60, 220))[0]).toBe(150)
    // Deeper than any grade clears in three passes: from the coarsest on, in as many as it takes.
    const deep = ladderTo(face(1, 'resin'), 300, 220).steps[0]!
    expect(deep.grade.grit).toBe(80)
    expect(deep.passes).toBe(Math.ceil(300 / (0.11 * 201)))
  })

  it('minutes by hand: two passes over 1.2 m² at half a disc of 150 mm and 30 mm/s', () => {
    const { steps, minutes } = ladderBy(face(1.2, 'timber'), 45, chain(120, 180))
    const pass = 1.2e6 / (75 * 30 * 60)
    expect(steps.map(s => s.passes)).toEqual([2, 2])
    expect(minutes).toBeCloseTo(2 * (2 + 2 * pass), 9)
    expect(steps[0]!.discs).toBeCloseTo((2 * pass) / 15, 9)
    // Half the disc, twice the time; the maker's own life of a disc stands before ours.
    const small = ladderBy({ ...face(1.2, 'timber'), discMm: 75, discMinutes: 5 }, 45, chain(120, 180))
    expect(small.minutes - 4).toBeCloseTo(2 * (minutes - 4), 9)
    expect(small.steps[0]!.discs).toBeCloseTo((4 * pass) / 5, 9)
  })

  it('a step that leaves too much out takes more passes', () => {
    const { steps } = ladderBy(face(1, 'resin'), 30, chain(220, 800))
    // Scratches of P220 in resin, middle 0.125 × 68, over 0.11 × 21.8 a pass.
    expect(steps[1]!.passes).toBe(Math.ceil((0.125 * 68) / (0.11 * 21.8)))
    expect(steps[1]!.ratio).toBeCloseTo(3.12, 2)
  })

  it('refuses what is no grade, no area, no disc', () => {
    expect(() => ladderTo(face(1, 'timber'), 60, 250)).toThrow(/no grade/)
    expect(() => ladderTo(face(-1, 'timber'), 60, 240)).toThrow(/area is -1/)
    expect(() => ladderTo({ ...face(1, 'timber'), discMm: 5 }, 60, 240)).toThrow(/disc is 5/)
    expect(() => ladderTo(face(1, 'timber'), Number.NaN, 240)).toThrow(/marks/)
  })
})
