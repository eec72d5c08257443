import { describe, expect, it } from 'vitest'
import { plainKernel } from '../../../src/cast/field/plain-kernel.ts'
import { castPours, FULL_FINENESS, levelsOf, QUICK_FINENESS } from '../../../src/cast/whole/levels.ts'
import { rasterOf } from '../../../src/cast/whole/raster.ts'
import { peakAt } from '../../../src/cast/whole/whole-cast.ts'
import { findingsOf } from '../../../src/findings/checks.ts'
import { plan } from '../../../src/plan.ts'
import { castRun } from '../../../src/whole.ts'
import { workOf } from '../../../src/work.ts'
import { columnOf, tray, wholeOf } from './mould.ts'

const RIVER = {
  timbers: [
    { id: 'left', species: 'walnut-black', outline: { rectangle: [100, 300], at: [-75, 0] }, thickness: 30 },
    { id: 'right', species: 'walnut-black', outline: { rectangle: [100, 300], at: [75, 0] }, thickness: 30 }
  ],
  pours: [{ id: 'river', resin: 'deep', height: 32 }]
}

describe('the cast of a whole mould', () => {
  it('of a wide pour without timber is that of the column, and cooler at its sides', () => {
    const input = tray([360, 300], { pours: [{ id: 'only', resin: 'deep', depth: 40 }] })
    const column = columnOf(input).casts[0]!
    const whole = wholeOf(input)
    const own = whole.casts[0]!
    // the middle of the plan does not feel the walls: one model, two codes
    expect(Math.abs(own.peakC - column.peakC)).toBeLessThan(0.4)
    expect(own.windows.gelMin! / column.windows.gelMin!).toBeCloseTo(1, 1)
    const { map } = whole
    const level = (map.facesMm[0]! + map.facesMm[map.facesMm.length - 1]!) / 2
    expect(peakAt(map, -180, -150, level)).toBeLessThan(own.peakC - 3)
    expect(Math.abs(whole.energy.closure)).toBeLessThan(1e-3)
  })

  it('of a narrow river between timber is cooler than a column says, and gels later', () => {
    const input = tray([250, 300], RIVER)
    const column = columnOf(input).casts[0]!
    const own = wholeOf(input).casts[0]!
    expect(own.peakC).toBeLessThan(column.peakC - 3)
    expect(own.windows.recoat.open).toBeGreaterThan(column.windows.recoat.open)
  })

  it('says where a pour is hottest: in the resin, away from timber and wall, and there stands its peak', () => {
    const input = tray([250, 300], RIVER)
    const whole = wholeOf(input)
    const [x, y, z] = whole.hottest[0]!
    expect(Math.abs(x)).toBeLessThan(10)
    expect(Math.abs(y)).toBeLessThan(140)
    expect(z).toBeGreaterThan(2)
    expect(peakAt(whole.map, x, y, z)).toBeCloseTo(whole.casts[0]!.peakC, 4)
    expect(peakAt(whole.map, 1000, 0, 5)).toBeNaN()
  })

  it('holds the volumes of the stack in its cells, and each pour in as many layers as are asked for', () => {
    const { stack } = columnOf(tray([250, 300], RIVER))
    for (const fineness of [FULL_FINENESS, QUICK_FINENESS]) {
      const levels = levelsOf(stack, fineness, [])
      const raster = rasterOf(stack, fineness, levels)!
      expect(raster.nx * raster.ny * levels.dzM.length).toBeLessThanOrEqual(fineness.mostCells * 1.1)
      const river = raster.keys.findIndex(k => k.kind === 'pour') + 1
      let mm3 = 0
      raster.cells.forEach((key, c) => {
        const height = levels.dzM[c % levels.dzM.length]! * 1000
        if (key === river) mm3 += raster.dxMm * raster.dyMm * height
      })
      // cells of 2.5 % of the river's width more or less on either bank
      expect(mm3 / 1000 / stack.pours[0]!.filledMl).toBeCloseTo(1, fineness === FULL_FINENESS ? 1 : 0)
      expect(levels.dzM.length).toBeGreaterThanOrEqual(fineness.across)
    }
    expect(castPours(stack).length).toBe(1)
  })

  it('with stones in it is cooler: they take heat and give none', () => {
    const pours = (stones: object[]) => [{ id: 'only', resin: 'medium', depth: 12, stones }]
    const bare = wholeOf(tray([200, 160], { pours: pours([]) }), { effort: 'preview' }).casts[0]!
    const filled = wholeOf(
      tray([200, 160], { pours: pours([{ kind: 'river-gravel', all: true, fill: 0.4 }]) }),
      {
        effort: 'preview'
      }
    ).casts[0]!
    expect(filled.peakC).toBeLessThan(bare.peakC - 2)
  })

  it('taken step by step comes to the same bytes as at once, says how far it is, and can be left', () => {
    const input = tray([120, 100], { pours: [{ id: 'only', resin: 'medium', depth: 8 }] })
    const run = castRun(input, { effort: 'full' })!
    let before = 0
    let parts = 0
    while (!run.advance(3)) {
      expect(run.progress()).toBeGreaterThanOrEqual(before)
      before = run.progress()
      parts++
    }
    expect(parts).toBeGreaterThan(20)
    expect(run.progress()).toBe(1)
    const at = castRun(input, { effort: 'full' })!
    while (!at.advance(1e6));
    expect(JSON.stringify(run.best())).toBe(JSON.stringify(at.best()))
  })

  it('gives the preview first: within 3 K and 3 % of the full answer', () => {
    const input = tray([250, 300], RIVER)
    const full = wholeOf(input).casts[0]!
    const first = wholeOf(input, { effort: 'preview' }).casts[0]!
    expect(Math.abs(first.peakC - full.peakC)).toBeLessThan(3)
    expect(Math.abs(first.windows.recoat.open / full.windows.recoat.open - 1)).toBeLessThan(0.03)
  })

  it('answers alike on both kernels: within 0.02 °C, and with the same findings', () => {
    const input = tray([140, 120], { pours: [{ id: 'only', resin: 'medium', depth: 9 }] })
    const fast = wholeOf(input)
    const plain = wholeOf(input, { kernel: plainKernel })
    expect(Math.abs(fast.casts[0]!.peakC - plain.casts[0]!.peakC)).toBeLessThan(0.02)
    const says = (whole: typeof fast) => findingsOf(workOf({ ...input, whole })).map(f => [f.id, f.severity])
    expect(says(fast)).toEqual(says(plain))
  })

  it('is not made where a resin is not predicted, or nothing is cast', () => {
    const shop = { resins: [{ id: 'other', family: 'polyester' }] }
    const unknown = tray([100, 100], { pours: [{ resin: 'other', depth: 5 }] }, shop)
    expect(castRun(unknown, { effort: 'full' })).toBeNull()
    const flooded = tray([100, 100], {
      timbers: [{ species: 'ash-white', outline: { rectangle: [100, 100] }, thickness: 20, moisture: 8 }],
      pours: [{ kind: 'flood', resin: 'thin', depth: 2 }]
    })
    expect(castRun(flooded, { effort: 'full' })).toBeNull()
  })

  it('sets a pour that waits for the window of the one below to the window of the whole mould', () => {
    const input = tray([250, 300], {
      timbers: RIVER.timbers,
      pours: [
        { id: 'first', resin: 'deep', depth: 15 },
        { id: 'second', resin: 'deep', depth: 15 }
      ]
    })
    const whole = wholeOf(input, { effort: 'preview' })
    const [first, second] = whole.casts
    expect(whole.settled).toBe(true)
    const wait = second!.startMin - first!.startMin
    expect(Math.abs(wait / first!.windows.recoat.open - 1)).toBeLessThan(0.03)
  })

  it('stands in the plan, which says from how many cells', () => {
    const input = tray([250, 300], RIVER)
    const whole = wholeOf(input, { edges: true, effort: 'preview' })
    const made = plan({ ...input, whole }, { asOf: '2026-11-01T08:00Z' }).plan
    expect(made.pours[0]!.cast!.peakC).toBe(whole.casts[0]!.peakC)
    expect(made.pours[0]!.edge).toBe(whole.edges[0])
    expect(made.whole!.cells[0] * made.whole!.widthMm).toBeGreaterThan(250)
    expect(plan(input, { asOf: '2026-11-01T08:00Z' }).plan.whole).toBeNull()
  })
})

describe('a thermometer anywhere', () => {
  it('in the hottest place reads up to the peak; over the pour nothing; off the mould it is left out', () => {
    const input = tray([140, 120], { pours: [{ id: 'only', resin: 'medium', depth: 9 }] })
    const first = wholeOf(input)
    const hottest = first.hottest[0]!
    const whole = wholeOf(input, { probes: [hottest, [900, 0, 2], [60, 50, 1]] })
    expect(whole.probes.map(p => [p.x, p.y, p.z])).toEqual([hottest, [60, 50, 1]])
    const [hot, rim] = whole.probes
    const most = Math.max(...hot!.tempC.map(t => t ?? 0))
    expect(Math.abs(most - whole.casts[0]!.peakC)).toBeLessThan(0.01)
    expect(Math.max(...rim!.tempC.map(t => t ?? 0))).toBeLessThan(most)
    expect(hot!.min[0]).toBe(0)
    expect(hot!.tempC[0]).toBeCloseTo(whole.casts[0]!.startC, 4)
  })
})
