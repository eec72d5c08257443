import { describe, expect, it } from 'vitest'
import type { Proof } from '../../../src/proving/judge/prove.ts'
import type { ReportKind } from '../../../src/proving/judge/report.ts'
import { circle } from '../../../src/shape/build.ts'
import { cutter, Program } from '../program.ts'
import { GUARDS, pocket, pocketStack, proofOf } from './pocket.ts'

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

const only = (proof: Proof, kind: ReportKind) => proof.reports.find(r => r.kind === kind)

/** Down at a place, along a line and up again; the piece is plain resin, 20 mm thick, and nothing is wanted of it. */
function cut(program: Program, z: number, from: [number, number] = [-20, 0], to: [number, number] = [20, 0]) {
  return program
    .rapid(...from, 5)
    .line(...from, z, 200)
    .line(...to, z)
    .rapid(...to, 5)
}
const free = { wantedEvents: null }
const short = (more: object) => ({ ...free, cutterByTool: new Map([[1, cutter(more)]]) })

describe('what is wrong with a program', () => {
  it('straight down with a cutter that does not cut in its middle', () => {
    const dull = { ...free, cutterByTool: new Map([[1, cutter({ plunges: false })]]) }
    const hit = only(proofOf(pocketStack(), cut(new Program(), -2), dull), 'plunge')!
    expect([hit.line, hit.count]).toEqual([2, 1])
    expect(hit.value).toBeCloseTo(2, 4)
    // Down a ramp it may go, and straight down into what is open already.
    const ramp = new Program().rapid(-20, 0, 5).line(-20, 0, 0.1).line(20, 0, -2).rapid(20, 0, 5)
    ramp.rapid(0, 0, 5).line(0, 0, -1)
    expect(kinds(proofOf(pocketStack(), ramp, dull))).toEqual([])
  })

  it('deeper than its edges, with a shank or holder too thick', () => {
    const deep = cut(cut(new Program(), -5), -9)
    const edges = proofOf(pocketStack(), cut(new Program(), -9), short({ fluteMm: 8 }))
    expect(kinds(edges)).toEqual(['deeper than its edges'])
    expect(edges.reports[0]!.value).toBeCloseTo(9, 4)
    expect(edges.reports[0]!.limit).toBe(8)
    // In two passes the edges are long enough; a shank of the cutter's width then rubs on nothing.
    expect(kinds(proofOf(pocketStack(), deep, short({ fluteMm: 8 })))).toEqual([])
    const shank = proofOf(pocketStack(), deep, short({ fluteMm: 8, shankMm: 8 }))
    expect(kinds(shank)).toEqual(['shank rubs'])
    expect(shank.reports[0]!.value).toBeCloseTo(9, 4)
    const holder = proofOf(pocketStack(), deep, short({ reachMm: 8.5 }))
    expect(kinds(holder)).toEqual(['holder rubs'])
    expect(kinds(proofOf(pocketStack(), deep, short({ reachMm: 9.1 })))).toEqual([])
  })

  it('pins, clamps and parts in the way', () => {
    const region = circle(8, 0.01, 10, 0)
    const things = [
      { kind: 'clamp' as const, name: 'clamp', region, fromMm: -20, toMm: 12 },
      { kind: 'hardware' as const, name: 'magnet', region: circle(8, 0.01, 0, 20), fromMm: -15, toMm: -10 }
    ]
    const met = proofOf(pocketStack(), cut(new Program(), -2), { ...free, guards: { ...GUARDS, things } })
    expect(kinds(met)).toEqual(['clamp'])
    const hit = only(met, 'clamp')!
    expect([hit.name, hit.line]).toEqual(['clamp', 3])
    expect(hit.value).toBeCloseTo(14, 4)
    const over = cut(new Program(), -9.9, [-20, 20], [20, 20])
    expect(
      only(proofOf(pocketStack(), over, { ...free, guards: { ...GUARDS, things } }), 'hardware')
    ).toBeUndefined()
    const into = cut(new Program(), -10.2, [-20, 20], [20, 20])
    const part = only(proofOf(pocketStack(), into, { ...free, guards: { ...GUARDS, things } }), 'hardware')!
    expect(part.value).toBeCloseTo(0.2, 4)
  })

  it('says a clamp that is run into once, whatever else of the cutter would meet it', () => {
    const region = circle(8, 0.01, 10, 0)
    const things = [{ kind: 'clamp' as const, name: 'clamp', region, fromMm: -20, toMm: 12 }]
    // Edges of 4 mm and a holder 5 mm above the tip: 14 mm of clamp are past both.
    const stubby = short({ fluteMm: 4, reachMm: 5, holderMm: 30 })
    const guarded = { ...stubby, guards: { ...GUARDS, things } }
    expect(kinds(proofOf(pocketStack(), cut(new Program(), -2), guarded))).toEqual(['clamp'])
    // Through it with a rapid, and with a cutter that does not plunge.
    const rapid = new Program().rapid(0, 0, 20).rapid(0, 0, 2).rapid(20, 0, 2).rapid(20, 0, 20)
    expect(kinds(proofOf(pocketStack(), rapid, guarded))).toEqual(['clamp'])
    // Past it, so that the holder alone meets it: said of the holder, by the name of the clamp.
    const beside = cut(new Program(), -2, [-12, -10], [-2, -10])
    const held = proofOf(pocketStack(), beside, guarded).reports
    expect(held.map(r => [r.kind, r.name])).toEqual([['holder rubs', 'clamp']])
    // What is cut of the piece is still measured: 6 mm deep with edges of 4.
    const deep = proofOf(pocketStack(), cut(new Program(), -6), guarded)
    expect(kinds(deep)).toContain('deeper than its edges')
    expect(only(deep, 'deeper than its edges')!.value).toBeCloseTo(6, 4)
  })

  it('out of the travel of the machine', () => {
    const envelope = { minX: -15, maxX: 30, minY: -30, maxY: 30, minZ: -30, maxZ: 20 }
    const proof = proofOf(pocketStack(), cut(new Program(), -2), {
      ...free,
      guards: { ...GUARDS, envelope }
    })
    expect(kinds(proof)).toEqual(['outside the machine'])
    expect(proof.reports[0]).toMatchObject({ value: 5, lines: [[1, 2]], count: 2 })
  })

  it('too much at once: width × depth × feed', () => {
    const guards = { ...GUARDS, mostMm3Min: 11_000 }
    const proof = proofOf(pocketStack(), cut(new Program(), -2), { ...free, guards })
    expect(kinds(proof)).toEqual(['too much at once'])
    // A full slot of 6 × 2 mm at 1000 mm a minute, 40 mm long, half of the hole it starts in open already.
    const mm2 = 12 - (Math.PI * 9) / 40
    expect(Math.abs(proof.peak.mm3Min - 1000 * mm2)).toBeLessThan(200)
    expect(Math.abs(proof.peak.mm2 - mm2)).toBeLessThan(0.2)
    const calm = { ...free, guards: { ...GUARDS, mostMm3Min: 12_500 } }
    expect(kinds(proofOf(pocketStack(), cut(new Program(), -2), calm))).toEqual([])
  })

  it('with the spindle off, without a feed', () => {
    const off = new Program()
    off.spindle = 0
    expect(kinds(proofOf(pocketStack(), cut(off, -2), free))).toEqual(['spindle off'])
    const still = new Program().rapid(0, 0, 5).line(0, 0, 2, 0).rapid(0, 0, 5)
    expect(proofOf(pocketStack(), still, free).reports).toMatchObject([{ kind: 'feed missing', line: 2 }])
  })

  it('with a cutter that was not measured after its change, or that nobody knows', () => {
    const two = {
      ...free,
      cutterByTool: new Map([
        [1, cutter()],
        [2, cutter({ diameterMm: 3 })]
      ])
    }
    const changed = (offset: number, stop: boolean) => {
      const p = cut(new Program(), -2).change(2, offset)
      return cut(stop ? p.stop() : p, -3)
    }
    expect(proofOf(pocketStack(), changed(0, false), two).reports).toMatchObject([
      { kind: 'cutter not measured', value: 2, line: 7 }
    ])
    expect(kinds(proofOf(pocketStack(), changed(2, false), two))).toEqual([])
    expect(kinds(proofOf(pocketStack(), changed(0, true), two))).toEqual([])
    expect(kinds(proofOf(pocketStack(), changed(2, false), free))).toEqual(['cutter unknown'])
  })
})
