import { describe, expect, it } from 'vitest'
import type { CutterShape } from '../../../src/catalogue/cutter-shape.ts'
import { type Proof, type ProveAsk, proveProgram } from '../../../src/proving/judge/prove.ts'
import type { ReportKind } from '../../../src/proving/judge/report.ts'
import type { Stack } from '../../../src/stack/stack.ts'
import { plainPiece, stackOf } from '../../stack/build.ts'
import { cutter, Program } from '../program.ts'

/** 80 × 50 mm of resin, 20 thick, in a mould with 15 mm of waste round it; a pocket of 30 × 20 mm, 6 deep, from the front. */
export function pocketStack(): Stack {
  return stackOf(
    plainPiece({
      outline: { rectangle: [80, 50] },
      mould: { margin: 15 },
      pours: [{ resin: 'medium', depth: 20 }],
      cuts: [
        { id: 'pocket', face: 'front', kind: 'pocket', shape: { rectangle: [30, 20], corner: 3 }, depth: 6 }
      ]
    }),
    { levelFall: 0 }
  )
}

export function proofOf(stack: Stack, program: Program, more: Partial<ProveAsk> = {}): Proof {
  const cut = stack.events.findIndex(e => e.kind === 'cut')
  const running = proveProgram({
    stack,
    up: 'front',
    datum: { x0: 0, y0: 0, zeroMm: stack.castHeight, about: 'x' },
    events: cut,
    wantedEvents: cut + 1,
    mask: null,
    cutterByTool: new Map<number, CutterShape>([[1, cutter()]]),
    motions: program.motions(),
    cellMm: 0.2,
    guards: {
      things: [],
      envelope: null,
      bedDeepMm: 1,
      closed: [],
      mostMm3Min: null,
      held: 'waste',
      tolMm: 0.05
    },
    ...more
  })
  for (;;) {
    const step = running.next()
    if (step.done) return step.value
  }
}

/** The pocket in rings from the middle outwards, two passes; moved, turned, deeper as a test wants. */
export function pocket(dx = 0, dy = 0, dz = 0, half: [number, number] = [15, 10]): Program {
  const p = new Program()
  p.rapid(dx, dy, 5 + dz)
  p.rapid(dx, dy, 1 + dz)
  for (const z of [-3, -6]) {
    p.line(dx, dy, z + dz, 300)
    for (let r = 1; r <= 12; r++) {
      const a = Math.min(half[0] - 3, r * 2)
      const b = Math.min(half[1] - 3, r * 2)
      p.line(dx - a, dy - b, z + dz)
      p.line(dx + a, dy - b, z + dz)
      p.line(dx + a, dy + b, z + dz)
      p.line(dx - a, dy + b, z + dz)
      p.line(dx - a, dy - b, z + dz)
    }
    p.line(dx, dy, z + dz)
  }
  p.rapid(dx, dy, 5 + dz)
  return p
}

const kinds = (proof: Proof): ReportKind[] => proof.reports.map(r => r.kind)

describe('a program over the piece', () => {
  it('that cuts what is wanted raises nothing', () => {
    const proof = proofOf(pocketStack(), pocket())
    expect(proof.reports).toEqual([])
    // The pocket: 30 × 20 less its corners of 3 mm, 6 deep; cells of 0.2 mm on its edge.
    const mm3 = (600 - (4 - Math.PI) * 9) * 6
    expect(Math.abs(proof.removedMm3 - mm3)).toBeLessThan(100 * 6 * 0.1)
    expect(proof.deepestMm).toBe(-6)
  })

  it('says where it is off by 1.5 times what is told apart', () => {
    const sound = proofOf(pocketStack(), pocket())
    const across = 1.5 * sound.comparison!.detectsAcrossMm
    const up = 1.5 * sound.comparison!.detectsUpMm
    for (const p of [pocket(across, 0), pocket(0, -across)])
      expect(kinds(proofOf(pocketStack(), p)).sort()).toEqual(['cut away', 'left standing'])
    expect(kinds(proofOf(pocketStack(), pocket(0, 0, -up)))).toEqual(['cut away'])
    expect(kinds(proofOf(pocketStack(), pocket(0, 0, up)))).toEqual(['left standing'])
    expect(kinds(proofOf(pocketStack(), pocket(0, 0, 0, [10, 15])))).toContain('cut away')
    const thin = new Map([[1, cutter({ diameterMm: 4 })]])
    expect(kinds(proofOf(pocketStack(), pocket(), { cutterByTool: thin }))).toContain('left standing')
  })

  it('names the line of a rapid move through material', () => {
    const p = pocket()
    p.rapid(20, 0, -3)
    const proof = proofOf(pocketStack(), p)
    const hit = proof.reports.find(r => r.kind === 'rapid through material')!
    expect(hit.line).toBe(p.lines)
    expect(hit.value).toBeCloseTo(3, 2)
  })
})
