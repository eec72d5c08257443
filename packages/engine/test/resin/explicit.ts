/**
 * The slow obvious twin of the column: explicit Euler in time, one cell after another, every rate by exp and
 * pow, conductivities and viscosity straight from their formulas. It shares no code with the engine.
 */
export interface TwinLayer {
  readonly cells: number
  readonly widthM: number
  readonly rhoCp: number
  readonly startC: number
  /** Inert: a constant; resin: k = kLiquid + kSlope·α, times the multiplier while liquid. */
  readonly k: number
  readonly kSlope?: number
  readonly multiplier?: number
  readonly resin?: {
    readonly k1: number
    readonly k2: number
    readonly e1: number
    readonly e2: number
    readonly m: number
    readonly n: number
    readonly rhoH: number
    readonly gel: number
    readonly tg: readonly [number, number, number] | null
    readonly eta: readonly [number, number, number, number]
  }
}

export interface TwinResult {
  readonly tempC: number[]
  readonly conversion: number[]
  readonly peakC: number
  readonly firstGelS: number
}

const R = 8.31446261815324

export function explicitColumn(
  shape: 'slab' | 'cylinder' | 'sphere',
  layers: readonly TwinLayer[],
  floor: { readonly h: number; readonly airC: (t: number) => number },
  top: { readonly h: number; readonly airC: (t: number) => number },
  dt: number,
  steps: number
): TwinResult {
  const j = { slab: 0, cylinder: 1, sphere: 2 }[shape]
  const cells = layers.flatMap(layer => Array.from({ length: layer.cells }, () => layer))
  const T = cells.map(layer => layer.startC)
  const a = cells.map(() => 0)
  const faces = [0]
  for (const c of cells) faces.push(faces.at(-1)! + c.widthM)
  const area = faces.map(r => r ** j)
  const volume = cells.map((_, i) => (faces[i + 1]! ** (j + 1) - faces[i]! ** (j + 1)) / (j + 1))
  let peakC = -1e9
  let firstGelS = Number.POSITIVE_INFINITY
  for (let s = 0; s < steps; s++) {
    const t = s * dt
    const half = cells.map((c, i) => {
      let k = c.k + (c.kSlope ?? 0) * a[i]!
      if (c.resin && (c.multiplier ?? 1) !== 1) {
        const [eta25, eEta, c1, c2] = c.resin.eta
        const fresh = eta25 * Math.exp((eEta / R) * (1 / (T[i]! + 273.15) - 1 / 298.15))
        const eta =
          a[i]! < c.resin.gel
            ? fresh * (c.resin.gel / (c.resin.gel - a[i]!)) ** (c1 + c2 * a[i]!)
            : Number.POSITIVE_INFINITY
        if (a[i]! < 0.3 && eta < 10) k *= c.multiplier!
      }
      return c.widthM / (2 * k)
    })
    const into = cells.map(() => 0)
    for (let f = 0; f <= cells.length; f++) {
      let q = 0
      if (f === 0) q = j === 0 && floor.h > 0 ? (floor.airC(t) - T[0]!) / (half[0]! + 1 / floor.h) : 0
      else if (f === cells.length) q = (T[f - 1]! - top.airC(t)) / (half[f - 1]! + 1 / top.h)
      else q = (T[f - 1]! - T[f]!) / (half[f - 1]! + half[f]!)
      q *= area[f]!
      if (f > 0) into[f - 1]! -= q
      if (f < cells.length) into[f]! += q
    }
    for (let i = 0; i < cells.length; i++) {
      const { resin, rhoCp } = cells[i]!
      let rate = 0
      if (resin) {
        const inverse = 1 / (T[i]! + 273.15) - 1 / 298.15
        const k1 = resin.k1 * Math.exp((-resin.e1 / R) * inverse)
        const k2 = resin.k2 * Math.exp((-resin.e2 / R) * inverse)
        rate = (k1 + k2 * a[i]! ** resin.m) * (1 - a[i]!) ** resin.n
        if (resin.tg) {
          const [tg0, tgInf, lambda] = resin.tg
          const tg = tg0 + ((tgInf - tg0) * lambda * a[i]!) / (1 - (1 - lambda) * a[i]!)
          rate /= 1 + Math.exp((tg - T[i]! - 15) / 6)
        }
      }
      T[i]! += (dt * into[i]!) / (rhoCp * volume[i]!) + (dt * rate * (resin?.rhoH ?? 0)) / rhoCp
      const before = a[i]!
      a[i]! += dt * rate
      if (resin && before < resin.gel && a[i]! >= resin.gel)
        firstGelS = Math.min(firstGelS, t + (dt * (resin.gel - before)) / (a[i]! - before))
      if (resin) peakC = Math.max(peakC, T[i]!)
    }
  }
  return { tempC: T, conversion: a, peakC, firstGelS }
}
