import { describe, expect, it } from 'vitest'
import { runColumn } from '../../src/resin/column.ts'
import type { InertLayer, Profile } from '../../src/resin/column-grid.ts'
import { rows } from './conduction.evidence.ts'
import { profileAt } from './profile.ts'
import { checkRows } from './rows.ts'

checkRows(rows)

const FINE = { errorK: 0.002, errorConversion: 1, change: 1, longestS: 1e9 }
const block = (
  thicknessMm: number,
  kWmK: number,
  startC: InertLayer['startC'],
  cells: number
): InertLayer => ({
  kind: 'inert',
  thicknessMm,
  cells,
  kWmK,
  rhoCpJm3K: 1e6,
  startC
})

describe('conduction through layers', () => {
  it('is exact at rest on any grid: a straight line in each layer, flux by the sum of resistances', () => {
    for (const cells of [1, 3, 10]) {
      const result = runColumn({
        shape: 'slab',
        layers: [block(18, 0.12, 20, cells), block(30, 0.2, 20, cells), block(5, 50, 20, cells)],
        floor: { kind: 'fixed', tempC: 80 },
        top: { kind: 'convective', hWm2K: 9, ambientC: 20 },
        untilS: 1e7,
        control: { ...FINE, longestS: 1e5 }
      })
      const resistances = [0.018 / 0.12, 0.03 / 0.2, 0.005 / 50, 1 / 9]
      const flux = 60 / resistances.reduce((a, b) => a + b, 0)
      const middle = result.layers[1]!.final.temp
      for (let i = 0; i < cells; i++) {
        const expected = 80 - flux * (resistances[0]! + middle.positionMm[i]! / 1000 / 0.2)
        expect(middle.value[i]).toBeCloseTo(expected, 6)
      }
    }
  })

  it('is second order in space: a sine between cold walls, against its exact decay', () => {
    const Lm = 0.1
    const untilS = 3000
    const exact = (mm: number): number =>
      50 * Math.sin((Math.PI * mm) / 100) * Math.exp((-(Math.PI ** 2) * 1e-6 * untilS) / Lm ** 2)
    const error = (cells: number): number => {
      const positionMm = Array.from({ length: cells }, (_, i) => ((i + 0.5) * 100) / cells)
      const start: Profile = { positionMm, value: positionMm.map(x => 50 * Math.sin((Math.PI * x) / 100)) }
      const result = runColumn({
        shape: 'slab',
        layers: [block(100, 1, start, cells)],
        floor: { kind: 'fixed', tempC: 0 },
        top: { kind: 'fixed', tempC: 0 },
        untilS,
        control: { ...FINE, errorK: 1e-4 }
      })
      const { temp } = result.layers[0]!.final
      return Math.max(...positionMm.map((x, i) => Math.abs(temp.value[i]! - exact(x))))
    }
    const [a, b, c] = [error(8), error(16), error(32)]
    expect(Math.log2(a / b)).toBeGreaterThan(1.9)
    expect(Math.log2(b / c)).toBeGreaterThan(1.9)
    expect(c).toBeLessThan(0.02)
  })

  it('gives a sphere the steady profile of a point sink: A − B/r in a shell about a core of high conductivity', () => {
    // core 20 mm, shell to 60 mm; the core starts hot and the shell's outer face is cold: at late times
    // the shell is quasi-steady, so T falls as 1/r between the core's surface and the outside
    const result = runColumn({
      shape: 'sphere',
      layers: [
        { ...block(20, 1e4, 100, 10), rhoCpJm3K: 1e9 },
        { ...block(40, 0.2, 0, 60), rhoCpJm3K: 1e3 }
      ],
      floor: { kind: 'insulated' },
      top: { kind: 'fixed', tempC: 0 },
      untilS: 5000,
      control: FINE
    })
    const core = result.layers[0]!.final.temp.value[0]!
    const shell = result.layers[1]!.final.temp
    for (const mm of [5, 15, 30]) {
      const expected = (core * (1 / (20 + mm) - 1 / 60)) / (1 / 20 - 1 / 60)
      expect(profileAt(shell, mm) / expected).toBeCloseTo(1, 2)
    }
  })

  it('follows a daily swing of the air with the amplitude and lag of a lumped body', () => {
    // a thin sheet of high conductivity: τ = ρ·cp·d/h; amplitude 1/√(1 + ω²τ²), lag atan(ωτ)
    const tau = (1e6 * 0.05) / 10
    const w = (2 * Math.PI) / 86_400
    const untilS = 20 * 86_400
    const result = runColumn({
      shape: 'slab',
      layers: [block(50, 1e5, 20, 4)],
      floor: { kind: 'insulated' },
      top: { kind: 'convective', hWm2K: 10, ambientC: t => 20 + 5 * Math.sin(w * t) },
      untilS,
      control: { ...FINE, longestS: 900 }
    })
    const expected = 20 + (5 / Math.sqrt(1 + (w * tau) ** 2)) * Math.sin(w * untilS - Math.atan(w * tau))
    expect(result.layers[0]!.final.temp.value[0]).toBeCloseTo(expected, 2)
    expect(Math.abs(result.energy.closure)).toBeLessThan(1e-10)
  })

  it('does not overshoot when a hot layer meets a cold one, however long the step may be', () => {
    const result = runColumn({
      shape: 'slab',
      layers: [block(20, 0.2, 0, 20), block(20, 0.2, 100, 20)],
      floor: { kind: 'insulated' },
      top: { kind: 'insulated' },
      untilS: 400,
      control: { errorK: 5, errorConversion: 1, change: 1, longestS: 1e9 }
    })
    for (const layer of result.layers)
      for (let i = 0; i < 20; i++) {
        expect(layer.final.temp.value[i]).toBeGreaterThan(-2)
        expect(layer.final.temp.value[i]).toBeLessThan(102)
      }
  })
})
