import { GAS_CONSTANT } from '../../src/resin/constant.ts'
import type { ResinModel } from '../../src/resin/model.ts'

/** The ball of the course as plain ordinary differential equations, for the independent integrator. */
export function ball(resin: ResinModel, radiusM: number, shells: number, h: number, roomK: number) {
  const { kinetics: k, bulk } = resin
  const dx = radiusM / shells
  const rate = (T: number, a: number): number => {
    const x = 1 / T - 1 / 298.15
    const tg = k.tg0C + ((k.tgInfC - k.tg0C) * k.lambda * a) / (1 - (1 - k.lambda) * a)
    const fd = 1 / (1 + Math.exp((tg - (T - 273.15) - 15) / 6))
    const k1 = k.k2At25PerS * k.k1OverK2At25 * Math.exp((-k.e1JPerMol / GAS_CONSTANT) * x)
    const k2 = k.k2At25PerS * Math.exp((-k.e2JPerMol / GAS_CONSTANT) * x)
    return fd * (k1 + k2 * Math.max(a, 0) ** k.m) * Math.max(1 - a, 0) ** k.n
  }
  return (_: number, y: number[]): number[] => {
    const out = new Array<number>(2 * shells).fill(0)
    const lead = (i: number): number => bulk.kLiquidWmK + bulk.kSlopeWmK * y[shells + i]!
    for (let i = 0; i < shells; i++) {
      out[shells + i] = rate(y[i]!, y[shells + i]!)
      const [inner, outer] = [i * dx, (i + 1) * dx]
      const next =
        i + 1 < shells
          ? (y[i]! - y[i + 1]!) / (dx / 2 / lead(i) + dx / 2 / lead(i + 1))
          : (y[i]! - roomK) / (dx / 2 / lead(i) + 1 / h)
      const before = i === 0 ? 0 : (y[i - 1]! - y[i]!) / (dx / 2 / lead(i - 1) + dx / 2 / lead(i))
      const volume = (outer ** 3 - inner ** 3) / 3
      out[i] =
        (before * inner ** 2 - next * outer ** 2) / (bulk.liquidKgM3 * bulk.cpJkgK * volume) +
        (out[shells + i]! * k.heatJPerKg) / bulk.cpJkgK
    }
    return out
  }
}
