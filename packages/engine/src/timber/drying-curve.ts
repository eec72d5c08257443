/**
 * The curve of a drying log (drying-log.ts, where its equations stand) from its five parameters in units of their
 * standard deviations.
 */
export interface DryingStart {
  readonly dryG: number
  readonly firstPct: number
  readonly airPct: number
  readonly airSpread: number
  readonly ratePerDay: number
  readonly sigmaG: number
}

/** Standard deviations of the parameters: ln m_d, M_0 (points), ln κ, ln F; that of M_e is the air's. */
const SPREAD = { dry: 0.15, first: 15, rate: 1, age: 1.2 } as const
/** Middle of F beforehand. */
const AGE = 0.05
/** Beyond it the profile is the first mode to fifteen figures, and older is the same. */
const MOST_AGE = 0.5

export interface DryingCurve {
  readonly dryG: number
  readonly settles: number
  readonly mean: (day: number) => number
  readonly core: (day: number) => number
  /** Day on which the core comes to a moisture; infinite when it never does. */
  readonly coreDay: (pct: number) => number
}

/** The curve at `theta`: ln m_d, M_0, M_e, ln κ, ln F. */
export function dryingCurve(theta: ArrayLike<number>, start: DryingStart): DryingCurve {
  const dryG = start.dryG * Math.exp(SPREAD.dry * theta[0]!)
  const first = start.firstPct + SPREAD.first * theta[1]!
  const settles = Math.max(0, start.airPct + start.airSpread * theta[2]!)
  const rate = start.ratePerDay * Math.exp(SPREAD.rate * theta[3]!)
  const age = Math.min(MOST_AGE, AGE * Math.exp(SPREAD.age * theta[4]!))
  const even = (first - settles) / meanLeft(age)
  const top = (4 / Math.PI) * even
  const mode = (fo: number) => Math.exp(-Math.PI * Math.PI * fo)
  return {
    dryG,
    settles,
    mean: day => settles + even * meanLeft(Math.max(0, age + rate * day)),
    // The first mode stands above the even start while the core has not yet begun to dry.
    core: day => settles + Math.min(even, top * mode(age + rate * day)),
    coreDay: pct => {
      if (even <= 0 || pct >= settles + even) return 0
      if (pct <= settles) return Number.POSITIVE_INFINITY
      return Math.max(0, (Math.log(top / (pct - settles)) / Math.PI ** 2 - age) / rate)
    }
  }
}

/** Below this the front has not met its like from the other face: Crank's law for short times holds within 1e-6. */
const SHORT_FO = 0.02

/**
 * Share of the change that is still to come in the mean: 1 − meanFraction of settle.ts within 2e-6, in five terms
 * where that takes dozens; a fit asks for it thousands of times. Check: the two against each other (test).
 */
export function meanLeft(fo: number): number {
  if (fo < SHORT_FO) return 1 - 4 * Math.sqrt(fo / Math.PI)
  let left = 0
  for (let odd = 1; odd <= 9; odd += 2) left += Math.exp(-odd * odd * Math.PI * Math.PI * fo) / (odd * odd)
  return (8 / Math.PI ** 2) * left
}
