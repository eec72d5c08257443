import { chance } from '../stack/random.ts'

/**
 * Timber that dries, by another integrator than the model's series: explicit finite volumes through the thickness with
 * a resistance at both surfaces, weighed on a scale that scatters. Seeded.
 */
export interface World {
  readonly thicknessMm: number
  readonly dryG: number
  readonly airPct: number
  readonly settlesPct: number
  readonly weighings: readonly { readonly day: number; readonly massG: number }[]
  readonly firstPct: number
  readonly lastPct: number
  /** Day on which the core has come to a moisture. */
  readonly coreDay: (pct: number) => number
}

const CELLS = 16
/** A world is followed until its core has come this near to its balance, points. */
const LEAST_OVER_PCT = 1

export function world(seed: number, weeks: number): World {
  const { span } = chance(seed)
  const thicknessMm = span(18, 55)
  const airPct = span(7.5, 11)
  const settlesPct = airPct * (1 + span(-0.13, 0.13))
  const diffusion = span(1.2e-10, 4.5e-10)
  // Resistance of the surface as millimetres of timber.
  const skinMm = span(0.2, 4)
  const greenPct = span(17, 24)
  const driedDays = span(0, 25)
  const dryG = span(1500, 6000)
  const dx = thicknessMm / CELLS
  const perDay = diffusion * 86_400 * 1e6
  const dt = (0.2 * dx * dx) / perDay
  const across = 1 / (skinMm + dx / 2)
  let u = new Float64Array(CELLS).fill(greenPct)
  const mean = () => u.reduce((a, b) => a + b, 0) / CELLS
  const core = () => (u[CELLS / 2 - 1]! + u[CELLS / 2]!) / 2
  const step = () => {
    const next = u.slice()
    for (let i = 0; i < CELLS; i++) {
      const left = i === 0 ? (settlesPct - u[0]!) * across : (u[i - 1]! - u[i]!) / dx
      const right = i === CELLS - 1 ? (settlesPct - u[i]!) * across : (u[i + 1]! - u[i]!) / dx
      next[i] = u[i]! + ((left + right) * perDay * dt) / dx
    }
    u = next
  }
  const history: { day: number; mean: number; core: number }[] = []
  for (let day = -driedDays; day < 7 * weeks || core() > settlesPct + LEAST_OVER_PCT; day += dt) {
    if (day >= -dt) history.push({ day: Math.max(0, day), mean: mean(), core: core() })
    step()
  }
  const on = (day: number) => history.find(h => h.day >= day)!
  // Three even draws: variance 1.
  const normal = () => span(-1, 1) + span(-1, 1) + span(-1, 1)
  const weighings = Array.from({ length: weeks }, (_, i) => ({
    day: 7 * i,
    massG: Math.round(dryG * (1 + on(7 * i).mean / 100) * (1 + 0.0008 * normal()))
  }))
  return {
    thicknessMm,
    dryG,
    airPct,
    settlesPct,
    weighings,
    firstPct: on(0).mean,
    lastPct: on(7 * (weeks - 1)).mean,
    coreDay: pct => history.find(h => h.core <= pct)?.day ?? Number.POSITIVE_INFINITY
  }
}
