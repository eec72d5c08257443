import { describe, expect, it } from 'vitest'
import { cutter, Program } from '../program.ts'
import { pocket, pocketStack, proofOf } from './pocket.ts'

const kinds = (stack: Parameters<typeof proofOf>[0], program: Program, more = {}) =>
  proofOf(stack, program, more).reports.map(r => r.kind)

describe('what no cutter of a program reaches', () => {
  it('is no fault: the corners of a square pocket, (1 − π/4)·r² each', () => {
    const { reports, comparison } = proofOf(pocketStack(0), pocket())
    expect(reports).toEqual([])
    const { areaMm2, mostMm } = comparison!.unreached
    expect(mostMm).toBeCloseTo(6, 3)
    // Of each corner a cell along its edges is not spoken of: two walls of 3 mm and the arc of π/2 · 3 mm, at most.
    const corners = (4 - Math.PI) * 9
    expect(areaMm2).toBeLessThan(corners)
    expect(areaMm2).toBeGreaterThan(corners - 4 * 0.2 * (6 + 1.5 * Math.PI))
    expect(proofOf(pocketStack(), pocket()).comparison!.unreached.areaMm2).toBe(0)
  })

  it('does not hide what it could have reached: a floor too high, a wall that was not gone to', () => {
    const square = pocketStack(0)
    const { detectsUpMm, detectsAcrossMm } = proofOf(square, pocket()).comparison!
    expect(kinds(square, pocket(0, 0, 1.5 * detectsUpMm))).toContain('left standing')
    expect(kinds(square, pocket(1.5 * detectsAcrossMm, 0))).toEqual(['left standing', 'cut away'])
    const thin = { cutterByTool: new Map([[1, cutter({ diameterMm: 5 })]]) }
    expect(kinds(square, pocket(), thin)).toContain('left standing')
  })

  it('the floor of a V under a blunt tip, tip/2 over tan(θ/2); a sharp tip goes there', () => {
    const line = pocketStack(3, {
      cuts: [
        {
          id: 'line',
          face: 'front',
          kind: 'groove',
          profile: 'v',
          angle: 60,
          along: {
            points: [
              [-20, 0.1],
              [20, 0.1]
            ]
          },
          depth: 2
        }
      ]
    })
    const tipMm = 0.3
    const v = (tip: number) => ({
      cutterByTool: new Map([[1, cutter({ form: 'v', angleDeg: 60, tipMm: tip })]])
    })
    const along = (z: number) =>
      new Program().rapid(-20, 0.1, 5).line(-20, 0.1, z, 300).line(20, 0.1, z).rapid(20, 0.1, 5)
    const above = tipMm / 2 / Math.tan(Math.PI / 6)
    const { reports, comparison } = proofOf(line, along(-2 + above), v(tipMm))
    expect(reports).toEqual([])
    expect(comparison!.unreached.mostMm).toBeCloseTo(above, 1)
    // A sharp one could have gone to the floor, and does not.
    expect(kinds(line, along(-2 + above), v(0))).toEqual(['left standing'])
    expect(kinds(line, along(-2), v(0))).toEqual([])
    // The same place 1.5 times what is told apart too high or too low.
    const off = 1.5 * comparison!.detectsUpMm
    expect(kinds(line, along(-2 + above + off), v(tipMm))).toEqual(['left standing'])
    expect(kinds(line, along(-2 + above - off), v(tipMm))).toEqual(['cut away'])
  })
})
