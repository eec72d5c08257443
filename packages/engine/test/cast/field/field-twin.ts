/**
 * The slow obvious twin of the cast in three directions: explicit Euler with small steps, one cell after another,
 * every rate by exp and pow, every conductance from its formula at every step. It shares no code with the engine.
 */
export interface TwinMaterial {
  /** k = k + kSlope·α, times the multiplier while liquid, W/(m·K). */
  readonly k: number
  readonly kSlope?: number
  readonly multiplier?: number
  readonly rhoCp: number
  readonly startC: number
  readonly atS?: number
  readonly cure?: TwinCure
}

export interface TwinCure {
  readonly k1: number
  readonly k2: number
  readonly e1: number
  readonly e2: number
  readonly m: number
  readonly n: number
  /** J/m³ of the cell. */
  readonly rhoH: number
  readonly gel: number
  /** Tg0, Tg∞, λ, offset, width; null: no diffusion limit. */
  readonly glass: readonly [number, number, number, number, number] | null
  /** η at 25 °C, its E, C1, C2 of the rise towards gel. */
  readonly eta: readonly [number, number, number, number]
}

export interface TwinCase {
  readonly size: readonly [nx: number, ny: number, nz: number]
  readonly dx: number
  readonly dy: number
  readonly dz: readonly number[]
  /** Index of the material; −1: nothing ever. */
  readonly cell: (ix: number, iy: number, iz: number) => number
  readonly materials: readonly TwinMaterial[]
  readonly films: { floor: number; side: number; up: number; down: number; sideways: number }
  readonly airC: (t: number) => number
  readonly untilS: number
}

export interface TwinResult {
  /** By material and cell; index (iz·ny + iy)·nx + ix. */
  readonly material: Int32Array
  readonly tempC: Float64Array
  readonly conversion: Float64Array
  readonly peakC: Float64Array
  readonly gelS: Float64Array
}

const R = 8.31446261815324

export function explicitField(c: TwinCase, dt: number): TwinResult {
  const [nx, ny, nz] = c.size
  const cells = nx * ny * nz
  const at = (ix: number, iy: number, iz: number): number => (iz * ny + iy) * nx + ix
  const material = new Int32Array(cells).fill(-1)
  for (let iz = 0; iz < nz; iz++)
    for (let iy = 0; iy < ny; iy++)
      for (let ix = 0; ix < nx; ix++) material[at(ix, iy, iz)] = c.cell(ix, iy, iz)
  const stands = (ix: number, iy: number): boolean => {
    if (ix < 0 || iy < 0 || ix >= nx || iy >= ny) return false
    for (let iz = 0; iz < nz; iz++) if (material[at(ix, iy, iz)]! >= 0) return true
    return false
  }
  const tempC = new Float64Array(cells).fill(Number.NaN)
  const conversion = new Float64Array(cells)
  const peakC = new Float64Array(cells).fill(-1e9)
  const gelS = new Float64Array(cells).fill(Number.POSITIVE_INFINITY)
  const k = new Float64Array(cells)
  const into = new Float64Array(cells)
  const here = new Uint8Array(cells)
  const place = (from: number, to: number): void => {
    for (let i = 0; i < cells; i++) {
      const m = c.materials[material[i]!]
      if (!m || !((m.atS ?? 0) > from && (m.atS ?? 0) <= to)) continue
      here[i] = 1
      tempC[i] = m.startC
      peakC[i] = m.startC
    }
  }
  place(-1, 0)
  const steps = Math.round(c.untilS / dt)
  for (let s = 0; s < steps; s++) {
    const t = s * dt
    const air = c.airC(t)
    // conductivity now
    for (let i = 0; i < cells; i++) {
      if (here[i] === 0) continue
      const m = c.materials[material[i]!]!
      k[i] = m.k + (m.kSlope ?? 0) * conversion[i]!
      if (m.cure && (m.multiplier ?? 1) !== 1 && conversion[i]! < 0.3) {
        const [eta25, e, c1, c2] = m.cure.eta
        const fresh = eta25 * Math.exp((e / R) * (1 / (tempC[i]! + 273.15) - 1 / 298.15))
        const eta = fresh * (m.cure.gel / (m.cure.gel - conversion[i]!)) ** (c1 + c2 * conversion[i]!)
        if (eta < 10) k[i]! *= m.multiplier!
      }
    }
    into.fill(0)
    // between neighbours: half a cell, then half the other
    const flow = (a: number, b: number, area: number, da: number, db: number): void => {
      const q = (area * (tempC[a]! - tempC[b]!)) / (da / 2 / k[a]! + db / 2 / k[b]!)
      into[a]! -= q
      into[b]! += q
    }
    // to the air: half a cell, then the film
    const lose = (a: number, film: number, area: number, depth: number): void => {
      if (film > 0) into[a]! -= (area * (tempC[a]! - air)) / (depth / 2 / k[a]! + 1 / film)
    }
    for (let iz = 0; iz < nz; iz++)
      for (let iy = 0; iy < ny; iy++)
        for (let ix = 0; ix < nx; ix++) {
          const a = at(ix, iy, iz)
          if (here[a] === 0) continue
          const { dx, dy } = c
          const dz = c.dz[iz]!
          const right = ix + 1 < nx && here[a + 1] === 1
          const behind = iy + 1 < ny && here[a + nx] === 1
          const above = iz + 1 < nz && here[a + nx * ny] === 1
          if (right) flow(a, a + 1, dy * dz, dx, dx)
          else lose(a, stands(ix + 1, iy) ? c.films.sideways : c.films.side, dy * dz, dx)
          if (behind) flow(a, a + nx, dx * dz, dy, dy)
          else lose(a, stands(ix, iy + 1) ? c.films.sideways : c.films.side, dx * dz, dy)
          if (above) flow(a, a + nx * ny, dx * dy, dz, c.dz[iz + 1]!)
          else lose(a, c.films.up, dx * dy, dz)
          if (!(ix > 0 && here[a - 1] === 1))
            lose(a, stands(ix - 1, iy) ? c.films.sideways : c.films.side, dy * dz, dx)
          if (!(iy > 0 && here[a - nx] === 1))
            lose(a, stands(ix, iy - 1) ? c.films.sideways : c.films.side, dx * dz, dy)
          if (iz === 0) lose(a, c.films.floor, dx * dy, dz)
          else if (here[a - nx * ny] === 0) lose(a, c.films.down, dx * dy, dz)
        }
    for (let iz = 0; iz < nz; iz++) {
      const volume = c.dx * c.dy * c.dz[iz]!
      for (let a = at(0, 0, iz); a < at(0, 0, iz + 1); a++) {
        if (here[a] === 0) continue
        const m = c.materials[material[a]!]!
        let heatW = 0
        if (m.cure) {
          const before = conversion[a]!
          const rate = rateOf(m.cure, tempC[a]!, before)
          const after = Math.min(1, before + dt * rate)
          heatW = (m.cure.rhoH * (after - before) * volume) / dt
          conversion[a] = after
          if (before < m.cure.gel && after >= m.cure.gel)
            gelS[a] = t + (dt * (m.cure.gel - before)) / (after - before)
        }
        tempC[a]! += (dt * (into[a]! + heatW)) / (m.rhoCp * volume)
        peakC[a] = Math.max(peakC[a]!, tempC[a]!)
      }
    }
    place(t, t + dt)
  }
  return { material, tempC, conversion, peakC, gelS }
}

function rateOf(c: TwinCure, tempC: number, a: number): number {
  const inverse = 1 / (tempC + 273.15) - 1 / 298.15
  const k1 = c.k1 * Math.exp((-c.e1 / R) * inverse)
  const k2 = c.k2 * Math.exp((-c.e2 / R) * inverse)
  let rate = (k1 + k2 * a ** c.m) * (1 - a) ** c.n
  if (c.glass) {
    const [tg0, tgInf, lambda, offset, width] = c.glass
    const tg = tg0 + ((tgInf - tg0) * lambda * a) / (1 - (1 - lambda) * a)
    rate /= 1 + Math.exp((tg - tempC - offset) / width)
  }
  return rate
}
