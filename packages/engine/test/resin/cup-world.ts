/**
 * A world in which cup tests are made and pours poured, that shares no code with the engine: explicit
 * Heun steps on a radial or flat grid, every rate by exp and pow, other exponents, other geometry.
 *
 * The truth is drawn evenly from ranges; the seed decides all.
 */
export interface Truth {
  /** Rate constants at 25 °C, 1/s, activation energies, J/mol. */
  readonly k1: number
  readonly k2: number
  readonly e1: number
  readonly e2: number
  readonly m: number
  readonly n: number
  /** J/kg. */
  readonly heat: number
  readonly gel: number
  readonly tg: readonly [tg0C: number, tgInfC: number, lambda: number]
  readonly eta25: number
  readonly etaE: number
  readonly c1: number
  readonly c2: number
  /** Viscosity at which this maker says "strings", Pa·s. */
  readonly strings: number
  /** Film coefficient of this maker's cups. */
  readonly hCup: number
}

/** One course of resin in the world. */
export interface Told {
  readonly timeS: number[]
  readonly centreC: number[]
  readonly peakC: number
  /** First gel anywhere, gel in the middle, and when the mean strings, min; Infinity if not. */
  readonly firstGelMin: number
  readonly middleGelMin: number
  readonly stringsMin: number
}

export interface Body {
  /** Exponent of the area: 0 slab, 1 cylinder, 2 sphere. */
  readonly j: 0 | 1 | 2
  readonly sizeM: number
  readonly hOuter: number
  /** Below a slab; 0 at a centre. */
  readonly hInner: number
  readonly roomC: number
  readonly startC: number
  readonly untilS: number
}

const R = 8.31446261815324
const RHO = 1100
const CP = 1800

/** Evenly spread numbers of a seed (mulberry32). */
export function seeded(seed: number): () => number {
  let a = seed >>> 0
  return () => {
    a = (a + 0x6d2b79f5) >>> 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}

/** Runs a body; ends early once all is gelled and cooling. */
export function run(truth: Truth, body: Body): Told {
  const { j, sizeM, hOuter, hInner, roomC, startC, untilS } = body
  // Coarser where it is thin: a film is even in temperature, and fine cells force steps of a fraction of a second.
  const N = Math.max(5, Math.min(12, Math.round(sizeM / 0.0008)))
  const dx = sizeM / N
  const area = Float64Array.from({ length: N + 1 }, (_, f) => (f * dx) ** j)
  const volume = Float64Array.from(
    { length: N },
    (_, i) => (((i + 1) * dx) ** (j + 1) - (i * dx) ** (j + 1)) / (j + 1)
  )
  const total = volume.reduce((s, v) => s + v, 0)
  let T = new Float64Array(N).fill(startC)
  let a = new Float64Array(N)
  const [tg0, tgInf, lambda] = truth.tg
  const dT = new Float64Array(N)
  const da = new Float64Array(N)
  const slopes = (temp: Float64Array, cure: Float64Array): void => {
    dT.fill(0)
    for (let f = 0; f <= N; f++) {
      let q: number
      if (f === 0) q = hInner > 0 ? (roomC - temp[0]!) / (1 / hInner + dx / 2 / (0.17 + 0.04 * cure[0]!)) : 0
      else if (f === N) q = (temp[N - 1]! - roomC) / (1 / hOuter + dx / 2 / (0.17 + 0.04 * cure[N - 1]!))
      else
        q =
          (temp[f - 1]! - temp[f]!) /
          (dx / 2 / (0.17 + 0.04 * cure[f - 1]!) + dx / 2 / (0.17 + 0.04 * cure[f]!))
      q *= f === 0 ? (j === 0 ? 1 : 0) : area[f]!
      if (f > 0) dT[f - 1]! -= q
      if (f < N) dT[f]! += q
    }
    for (let i = 0; i < N; i++) {
      const x = Math.min(1, Math.max(0, cure[i]!))
      const inverse = 1 / (temp[i]! + 273.15) - 1 / 298.15
      const chemical =
        (truth.k1 * Math.exp((-truth.e1 / R) * inverse) +
          truth.k2 * Math.exp((-truth.e2 / R) * inverse) * x ** truth.m) *
        (1 - x) ** truth.n
      const tg = tg0 + ((tgInf - tg0) * lambda * x) / (1 - (1 - lambda) * x)
      da[i] = chemical / (1 + Math.exp((tg - temp[i]! - 15) / 6))
      dT[i] = dT[i]! / (RHO * CP * volume[i]!) + (da[i]! * truth.heat) / CP
    }
  }
  const stable = (0.35 * dx * dx * RHO * CP) / 0.21
  const timeS = [0]
  const centreC = [startC]
  let peakC = startC
  let firstGelMin = Number.POSITIVE_INFINITY
  let middleGelMin = Number.POSITIVE_INFINITY
  let stringsMin = Number.POSITIVE_INFINITY
  let t = 0
  let before = { centre: 0, most: 0, viscosity: -10 }
  while (t < untilS) {
    slopes(T, a)
    let fastest = 1e-12
    for (let i = 0; i < N; i++) fastest = Math.max(fastest, da[i]!)
    const dt = Math.min(stable, 0.004 / fastest, 120, untilS - t)
    const k1T = dT.slice()
    const k1a = da.slice()
    const midT = T.map((x, i) => x + dt * k1T[i]!)
    const midA = a.map((x, i) => x + dt * k1a[i]!)
    slopes(midT, midA)
    T = T.map((x, i) => x + (dt / 2) * (k1T[i]! + dT[i]!))
    a = a.map((x, i) => Math.min(1, x + (dt / 2) * (k1a[i]! + da[i]!)))
    t += dt
    let mean = 0
    let cure = 0
    let most = 0
    for (let i = 0; i < N; i++) {
      mean += (volume[i]! * T[i]!) / total
      cure += (volume[i]! * a[i]!) / total
      most = Math.max(most, a[i]!)
      peakC = Math.max(peakC, T[i]!)
    }
    const fresh = truth.eta25 * Math.exp((truth.etaE / R) * (1 / (mean + 273.15) - 1 / 298.15))
    const viscosity =
      cure < truth.gel
        ? Math.log(fresh) + (truth.c1 + truth.c2 * cure) * Math.log(truth.gel / (truth.gel - cure))
        : 50
    const passed = (was: number, is: number, level: number): number => {
      const part = is > 49 ? 1 : (level - was) / (is - was)
      return (t - dt * (1 - Math.min(1, Math.max(0, part)))) / 60
    }
    const level = Math.log(truth.strings)
    if (stringsMin === Number.POSITIVE_INFINITY && viscosity >= level)
      stringsMin = before.viscosity < -9 ? t / 60 : passed(before.viscosity, viscosity, level)
    if (firstGelMin === Number.POSITIVE_INFINITY && most >= truth.gel)
      firstGelMin = passed(before.most, most, truth.gel)
    if (middleGelMin === Number.POSITIVE_INFINITY && a[0]! >= truth.gel)
      middleGelMin = passed(before.centre, a[0]!, truth.gel)
    before = { centre: a[0]!, most, viscosity }
    timeS.push(t)
    centreC.push(T[0]! + (T[0]! - T[1]!) / 8)
  }
  return { timeS, centreC, peakC, firstGelMin, middleGelMin, stringsMin }
}

/** What a thermometer of that lag shows at the asked times, with errors that hang together (AR(1)). */
export function shown(
  told: Told,
  timesMin: readonly number[],
  lagS: number,
  noise: { readonly sigmaK: number; readonly hangs: number },
  random: () => number
): { timeMin: number; tempC: number }[] {
  const bell = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  let lagged = told.centreC[0]!
  let error = noise.sigmaK * bell()
  let k = 0
  const last = told.timeS.length - 1
  return timesMin.map(timeMin => {
    while (k < last && told.timeS[k + 1]! <= timeMin * 60) {
      // small Euler steps of the lag
      const span = told.timeS[k + 1]! - told.timeS[k]!
      const parts = Math.max(1, Math.ceil(span / (lagS / 10)))
      for (let p = 0; p < parts; p++) {
        const at = told.centreC[k]! + ((told.centreC[k + 1]! - told.centreC[k]!) * (p + 0.5)) / parts
        lagged += ((at - lagged) * (span / parts)) / lagS
      }
      k++
    }
    // and on to the moment itself, within the step
    const rest = timeMin * 60 - told.timeS[k]!
    const now =
      k < last && rest > 0
        ? told.centreC[k]! +
          ((told.centreC[k + 1]! - told.centreC[k]!) * rest) / (told.timeS[k + 1]! - told.timeS[k]!)
        : told.centreC[k]!
    const seen = lagged + (now - lagged) * (1 - Math.exp(-Math.max(0, rest) / lagS))
    error = noise.hangs * error + Math.sqrt(1 - noise.hangs ** 2) * noise.sigmaK * bell()
    return { timeMin, tempC: Math.round((seen + error) * 10) / 10 }
  })
}
