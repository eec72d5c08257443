import { describe, expect, it } from 'vitest'
import { FULL, QUICK, runColumn } from '../../src/resin/column.ts'
import { columnGrid, type Layer } from '../../src/resin/column-grid.ts'
import { MOST_SAMPLES } from '../../src/resin/column-history.ts'
import { resinOf } from '../../src/resin/column-result.ts'
import { columnState, conductances, tryStep } from '../../src/resin/column-step.ts'
import { isothermalTimeS } from '../../src/resin/conversion.ts'
import { cureRate } from '../../src/resin/cure.ts'
import { BOARD_18, runSlab, slabColumn } from '../../src/resin/slab.ts'
import { rows } from './column.evidence.ts'
import { integrate } from './odex.ts'
import { checkRows } from './rows.ts'
import { ALL_SETS, altered, CLASSES, FIRST_FIT } from './sets.ts'

checkRows(rows)

const K = 273.15
const HOUR = 3600
const pour = { resin: CLASSES.deep, depthMm: 50, bed: BOARD_18, roomC: 22 }

describe('a column of one cell', () => {
  it('is the adiabatic mix and the lumped cup, against an independent integrator, on every set', () => {
    let off = 0
    for (const [name, set] of ALL_SETS)
      for (const h of [0, 9]) {
        const resin = altered(set, { kLiquidWmK: 1e6, kSlopeWmK: 0 })
        const { heatJPerKg } = set.kinetics
        const depthM = 0.01
        const untilS = 0.9 * isothermalTimeS(set.kinetics, 25, 0.6)
        const ours = resinOf(
          runColumn({
            shape: 'slab',
            layers: [{ kind: 'resin', thicknessMm: 10, cells: 1, resin, startC: 25 }],
            floor: { kind: 'insulated' },
            top: { kind: 'convective', hWm2K: h, ambientC: 20 },
            untilS,
            control: { errorK: 0.002, errorConversion: 1e-4, change: 0.005, longestS: 600 }
          })
        ).final
        const reference = integrate(
          (_, [T, a]) => {
            const rate = cureRate(set.kinetics, T! + K, a!)
            return [(heatJPerKg / 1800) * rate - (h * (T! - 20)) / (1100 * 1800 * depthM), rate]
          },
          [25, 0],
          untilS
        )
        const offK = Math.abs(ours.temp.value[0]! - reference[0]!)
        expect(offK, `${name}, h ${h}`).toBeLessThan(0.1)
        off = Math.max(off, Math.abs(ours.conversion.value[0]! - reference[1]!))
      }
    expect(off).toBeLessThan(1e-3)
  })
})

describe('order of the scheme', () => {
  const layers: readonly Layer[] = [
    { kind: 'inert', thicknessMm: 18, cells: 6, kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 22 },
    { kind: 'resin', thicknessMm: 40, cells: 16, resin: CLASSES.deep, startC: 26 }
  ]

  it('is two in time, with the air changing, the conductivity following α, and steps of one length', () => {
    const airK = (t: number): number => 22 + K + 4 * Math.sin(t / 14_000)
    const endS = 6 * HOUR
    const at = (steps: number): Float64Array => {
      const state = columnState(columnGrid('slab', layers), 1 / 6, 1 / 9)
      conductances(state, state.tempK, state.conversion, state.scratch.conductance)
      const dt = endS / steps
      for (let i = 0; i < steps; i++) {
        const now = airK(i * dt)
        const then = airK((i + 1) * dt)
        tryStep(state, dt, now, now, then, then)
        const { tempK, conversion } = state
        state.tempK = state.nextK
        state.conversion = state.nextConversion
        state.nextK = tempK
        state.nextConversion = conversion
      }
      return state.tempK
    }
    const exact = at(5120)
    const error = (steps: number): number =>
      at(steps).reduce((most, t, i) => Math.max(most, Math.abs(t - exact[i]!)), 0)
    const [a, b, c] = [error(40), error(80), error(160)]
    expect(Math.log2(a / b)).toBeGreaterThan(1.8)
    expect(Math.log2(b / c)).toBeGreaterThan(1.85)
  })

  it('is two in space: mean temperature of a reacting pour on its way up', () => {
    const at = (cells: number) =>
      resinOf(
        runColumn({
          shape: 'slab',
          layers: [{ kind: 'resin', thicknessMm: 25, cells, resin: FIRST_FIT.b, startC: 25 }],
          floor: { kind: 'convective', hWm2K: 20, ambientC: 25 },
          top: { kind: 'fixed', tempC: 25 },
          untilS: 2.5 * HOUR,
          control: { errorK: 0.004, errorConversion: 1e-4, change: 0.005, longestS: 300 }
        })
      ).history.meanC.at(-1)!
    const [a, b, c, finest] = [at(8), at(16), at(32), at(128)]
    expect(Math.log2(Math.abs(a - finest) / Math.abs(b - finest))).toBeGreaterThan(1.7)
    expect(Math.log2(Math.abs(b - finest) / Math.abs(c - finest))).toBeGreaterThan(1.7)
  })

  it('holds the accuracy that its settings state', () => {
    for (const [resin, depthMm] of [
      [CLASSES.deep, 50],
      [CLASSES.medium, 10],
      [CLASSES.medium, 15],
      [CLASSES.thin, 3]
    ] as const) {
      const problem = slabColumn({ ...pour, resin, depthMm }, 48 * HOUR)
      const run = (control: typeof FULL) => resinOf(runColumn({ ...problem, control }))
      const fine = run({
        errorK: FULL.errorK / 16,
        errorConversion: FULL.errorConversion / 16,
        change: 0.008,
        longestS: 450
      })
      const full = run(FULL)
      const quick = run(QUICK)
      expect(Math.abs(full.peakC - fine.peakC)).toBeLessThan(0.1)
      expect(Math.abs(full.firstGelS! / fine.firstGelS! - 1)).toBeLessThan(0.003)
      expect(Math.abs(quick.peakC - fine.peakC)).toBeLessThan(0.5)
      expect(Math.abs(quick.firstGelS! / fine.firstGelS! - 1)).toBeLessThan(0.01)
    }
  })
})

describe('heat', () => {
  it('is neither made nor lost: the balance closes to rounding, also through a runaway', () => {
    for (const [resin, depthMm] of [
      [CLASSES.deep, 50],
      [CLASSES.thin, 20],
      [FIRST_FIT.b, 60]
    ] as const)
      for (const kLiquidMultiplier of [1, 3]) {
        const { energy } = runSlab({ ...pour, resin, depthMm, kLiquidMultiplier }, 48 * HOUR).column
        expect(Math.abs(energy.closure)).toBeLessThan(1e-10)
        expect(energy.releasedJ).toBeGreaterThan(0)
      }
  })

  it('is shared alike by both sides of a symmetric pour', () => {
    const result = runColumn({
      shape: 'slab',
      layers: [{ kind: 'resin', thicknessMm: 40, cells: 31, resin: CLASSES.deep, startC: 22 }],
      floor: { kind: 'convective', hWm2K: 8, ambientC: 22 },
      top: { kind: 'convective', hWm2K: 8, ambientC: 22 },
      untilS: 12 * HOUR
    })
    const { value } = resinOf(result).final.temp
    for (let i = 0; i < 15; i++) expect(value[i]! - value[30 - i]!).toBeCloseTo(0, 8)
    expect(resinOf(result).peakAtMm).toBeCloseTo(20, 6)
  })

  it('is the same for half a pour on a plane of symmetry', () => {
    const whole = runColumn({
      shape: 'slab',
      layers: [{ kind: 'resin', thicknessMm: 60, cells: 40, resin: CLASSES.deep, startC: 22 }],
      floor: { kind: 'convective', hWm2K: 8, ambientC: 22 },
      top: { kind: 'convective', hWm2K: 8, ambientC: 22 },
      untilS: 12 * HOUR
    })
    const half = runColumn({
      shape: 'slab',
      layers: [{ kind: 'resin', thicknessMm: 30, cells: 20, resin: CLASSES.deep, startC: 22 }],
      floor: { kind: 'insulated' },
      top: { kind: 'convective', hWm2K: 8, ambientC: 22 },
      untilS: 12 * HOUR
    })
    expect(resinOf(half).peakC).toBeCloseTo(resinOf(whole).peakC, 6)
  })
})

describe('laws of a pour', () => {
  it('runs hotter and gels sooner when deeper, warmer, faster, or unmixed', () => {
    const base = runSlab(pour, 48 * HOUR).resin
    const hotter = [{ depthMm: 55 }, { roomC: 24 }, { rateFactor: 1.2 }, { startC: 28 }].map(
      change => runSlab({ ...pour, ...change }, 48 * HOUR).resin
    )
    for (const r of hotter) {
      expect(r.peakC).toBeGreaterThan(base.peakC)
      expect(r.firstGelS!).toBeLessThan(base.firstGelS!)
    }
    const mixed = runSlab({ ...pour, kLiquidMultiplier: 3 }, 48 * HOUR).resin
    expect(mixed.peakC).toBeLessThan(base.peakC)
    expect(mixed.firstGelS!).toBeGreaterThan(base.firstGelS!)
  })

  it('is cooler on a board that holds heat than on the same resistance without', () => {
    const resistance = { layers: [], hFloorWm2K: 1 / (1 / 6 + 0.018 / 0.12) }
    const medium = { ...pour, resin: CLASSES.medium, depthMm: 10 }
    const onBoard = runSlab(medium, 12 * HOUR).resin.peakC
    const without = runSlab({ ...medium, bed: resistance }, 12 * HOUR).resin.peakC
    expect(without - onBoard).toBeGreaterThan(5)
  })

  it('never exceeds the adiabatic rise when it loses heat only upwards and is no thicker than a skin', () => {
    const { peakC } = runSlab({ ...pour, resin: CLASSES.thin, depthMm: 3 }, 12 * HOUR).resin
    expect(peakC).toBeLessThan(22 + 340 / 1.8)
  })

  it('gives the same bytes for the same input', () => {
    const one = runSlab(pour, 24 * HOUR).resin
    const other = runSlab(pour, 24 * HOUR).resin
    expect(other).toEqual(one)
  })
})

describe('pours upon pours', () => {
  it('can be stopped and taken up again where it was', () => {
    const problem = slabColumn(pour, 30 * HOUR)
    const whole = resinOf(runColumn(problem))
    const first = runColumn({ ...problem, untilS: 8 * HOUR })
    const [board, resin] = problem.layers
    const again = runColumn({
      ...problem,
      untilS: 22 * HOUR,
      layers: [
        { ...board!, startC: first.layers[0]!.final.temp },
        {
          ...resin!,
          startC: resinOf(first).final.temp,
          startConversion: resinOf(first).final.conversion
        } as Layer
      ]
    })
    const end = resinOf(again).final
    for (let i = 0; i < 40; i++) {
      expect(end.temp.value[i]).toBeCloseTo(whole.final.temp.value[i]!, 1)
      expect(end.conversion.value[i]).toBeCloseTo(whole.final.conversion.value[i]!, 3)
    }
  })

  it('warms a fresh pour with the heat of the one below, and tells the two apart', () => {
    const below = runSlab({ ...pour, depthMm: 30 }, 5 * HOUR)
    const lower: Layer = {
      kind: 'resin',
      thicknessMm: 30,
      resin: CLASSES.deep,
      startC: below.resin.final.temp,
      startConversion: below.resin.final.conversion
    }
    const upper: Layer = { kind: 'resin', thicknessMm: 20, resin: CLASSES.medium, startC: 22 }
    const air = { kind: 'convective', hWm2K: 9, ambientC: 22 } as const
    const both = runColumn({ shape: 'slab', layers: [lower, upper], floor: air, top: air, untilS: 24 * HOUR })
    const [old, fresh] = [resinOf(both, 0), resinOf(both, 1)]
    const alone = runColumn({
      shape: 'slab',
      layers: [{ ...lower, startC: 22, startConversion: 1 }, upper],
      floor: air,
      top: air,
      untilS: 24 * HOUR
    })
    expect(fresh.peakC).toBeGreaterThan(resinOf(alone, 1).peakC)
    expect(old.history.meanConversion[0]).toBeCloseTo(below.resin.history.meanConversion.at(-1)!, 6)
    expect(fresh.history.meanConversion[0]).toBe(0)
    expect(resinOf(alone, 0).firstGelS).toBe(0)
    expect(Math.abs(both.energy.closure)).toBeLessThan(1e-10)
    expect(() => resinOf(both, 2)).toThrow(/resin layer 2/)
  })
})

describe('the history of a run', () => {
  it('starts at nothing, ends at the end, rises in time and in conversion, and is finite throughout', () => {
    const { history, final } = runSlab(pour, 72 * HOUR).resin
    const { timeS, meanConversion } = history
    expect(timeS[0]).toBe(0)
    expect(timeS.at(-1)).toBe(72 * HOUR)
    for (let i = 1; i < timeS.length; i++) {
      expect(timeS[i]!).toBeGreaterThan(timeS[i - 1]!)
      expect(meanConversion[i]!).toBeGreaterThanOrEqual(meanConversion[i - 1]!)
    }
    for (const values of Object.values(history) as Float64Array[]) {
      expect(values.length).toBe(timeS.length)
      expect(values.every(Number.isFinite)).toBe(true)
    }
    expect(history.outerConversion.at(-1)).toBe(final.conversion.value[39])
  })

  it('stays bounded over a long run of many steps and still shows the peak', () => {
    const control = { ...FULL, longestS: 60 }
    const problem = slabColumn(pour, 72 * HOUR)
    const result = runColumn({ ...problem, control })
    const { history, peakC } = resinOf(result)
    expect(result.steps).toBeGreaterThan(4 * MOST_SAMPLES)
    expect(history.timeS.length).toBeLessThanOrEqual(MOST_SAMPLES)
    expect(history.timeS.length).toBeGreaterThan(MOST_SAMPLES / 3)
    expect(Math.max(...history.maxC)).toBeGreaterThan(peakC - 0.05)
    for (let i = 1; i < history.timeS.length; i++)
      expect(history.timeS[i]!).toBeGreaterThan(history.timeS[i - 1]!)
  })

  it('ends early when told to stop above a temperature', () => {
    const problem = { ...slabColumn({ ...pour, depthMm: 75 }, 72 * HOUR), stopAboveC: 60 }
    const result = runColumn(problem)
    expect(result.timeS).toBeLessThan(20 * HOUR)
    expect(resinOf(result).peakC).toBeGreaterThan(60)
    expect(resinOf(result).peakC).toBeLessThan(65)
    expect(resinOf(result).history.timeS.at(-1)).toBe(result.timeS)
  })
})

describe('input at the door', () => {
  const bad: readonly (readonly [RegExp, () => unknown])[] = [
    [/0 layers/, () => runColumn({ ...slabColumn(pour, 1), layers: [] })],
    [/thickness in mm is 0/, () => runSlab({ ...pour, depthMm: 0 }, 1)],
    [/thickness in mm is NaN/, () => runSlab({ ...pour, depthMm: Number.NaN }, 1)],
    [/start temperature in °C is 500/, () => runSlab({ ...pour, startC: 500 }, 1)],
    [/start conversion is -0.1/, () => runSlab({ ...pour, startConversion: -0.1 }, 1)],
    [/rate factor is 0/, () => runSlab({ ...pour, rateFactor: 0 }, 1)],
    [/liquid multiplier is 0.5/, () => runSlab({ ...pour, kLiquidMultiplier: 0.5 }, 1)],
    [/length of the run in s is -1/, () => runSlab(pour, -1)],
    [/temperature outside in °C is NaN/, () => runSlab({ ...pour, airC: () => Number.NaN }, 1)],
    [/film coefficient/, () => runSlab({ ...pour, hTopWm2K: -1 }, 1)],
    [
      /does not rise/,
      () =>
        runColumn({
          ...slabColumn(pour, 1),
          layers: [
            {
              kind: 'inert',
              thicknessMm: 1,
              kWmK: 1,
              rhoCpJm3K: 1e6,
              startC: { positionMm: [1, 1], value: [1, 1] }
            }
          ]
        })
    ]
  ]
  it('is refused with the value and what is allowed', () => {
    for (const [message, call] of bad) expect(call, String(message)).toThrow(message)
  })
})
