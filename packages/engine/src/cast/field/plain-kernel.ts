import type { FieldKernel, FieldLayout } from './field-kernel.ts'
import { type FlatRates, flatRates } from './plain-rates.ts'
import { sweepAlongX, sweepAlongY } from './plain-sweep-xy.ts'
import { sweepZ } from './plain-sweep-z.ts'

/** The kernel in plain TypeScript, 64 bits, rates from tables: the fallback, and the twin of the one in WebAssembly. */
export function plainKernel(layout: FieldLayout): FieldKernel {
  const { shape } = layout
  const { nx, ny, nz, first, length } = shape
  const array = (): Float64Array => new Float64Array(length)
  const tempC = array()
  const peakC = array().fill(-1000)
  const gelS = array()
  const capacity = array().fill(1)
  const heat = array()
  const kBase = array()
  const kSlope = array()
  const film = array()
  const resin = array()
  const gx = array()
  const gy = array()
  const gz = array()
  const source = array()
  // conductivity of each cell as `conduct` takes it, W/(m·K); beyond the grid it stays 0
  const now = array()
  let increment = array()
  let tried = array()
  let conversion = array()
  let triedConversion = array()
  const upper = new Float64Array(4 * nz * Math.max(nx, ny))
  let rates: FlatRates = flatRates([])
  const plane = nx * nz
  // what `conduct` finds after a pour: numbers of resins in a byte, and how far up each column anything stands
  const number = new Uint8Array(length)
  const tops = new Int32Array(nx * ny)
  // hottest cell of each resin after the last step; below any temperature where it has not been poured by then
  const hot = new Float64Array(256)
  const COLD = -1000
  hot.fill(COLD)
  return {
    shape,
    tempC,
    peakC,
    gelS,
    capacity,
    heat,
    kBase,
    kSlope,
    conductances: { gx, gy, gz },
    film,
    resin,
    source,
    increment: () => increment,
    tried: () => tried,
    conversion: () => conversion,
    triedConversion: () => triedConversion,
    setResins: resins => {
      rates = flatRates(resins)
    },
    conduct: (layers, ahead) => {
      const { dxM, dyM, dzM } = layout
      const alongX = (2 * dyM) / dxM
      const alongY = (2 * dxM) / dyM
      const floor = dxM * dyM
      for (let c = first; c < first + ny * plane; c++) {
        const u = conversion[c]!
        now[c] = kBase[c]! + kSlope[c]! * (u + ahead * (u - triedConversion[c]!))
        number[c] = resin[c]!
      }
      for (let c0 = first; c0 < first + ny * plane; c0 += nz) {
        for (let iz = 0; iz < layers; iz++) {
          const c = c0 + iz
          const here = now[c]!
          if (!(here > 0)) continue
          const right = now[c + nz]!
          const behind = now[c + plane]!
          // the highest layer has nothing above it: the next number belongs to another column
          const over = iz + 1 < nz ? now[c + 1]! : 0
          const height = dzM[iz]!
          gx[c] = (alongX * height * here * right) / (here + right)
          gy[c] = (alongY * height * here * behind) / (here + behind)
          gz[c] = over > 0 ? (2 * floor * here * over) / (height * over + dzM[iz + 1]! * here) : 0
        }
      }
      // nothing is joined across the edge of the plan
      for (let iy = 0; iy < ny; iy++) gx.fill(0, first + iy * plane + (nx - 1) * nz, first + (iy + 1) * plane)
      for (let column = 0; column < nx * ny; column += 4) {
        let top = 0
        for (let k = 0; k < 4; k++) {
          const c0 = first + (column + k) * nz
          for (let iz = layers - 1; iz >= top; iz--) if (kBase[c0 + iz]! > 0) top = iz + 1
        }
        tops.fill(top, column, column + 4)
      }
    },
    stepZ: step =>
      sweepZ(
        shape,
        {
          tempC,
          increment,
          tried,
          conversion,
          triedConversion,
          capacity,
          heat,
          film,
          number,
          tops,
          gx,
          gy,
          gz,
          gelS,
          source
        },
        rates,
        upper,
        step
      ),
    sweepX: step => sweepAlongX(shape, gx, capacity, tried, tops, upper, step),
    sweepY: step => sweepAlongY(shape, gy, capacity, tried, tops, upper, increment, step),
    finish: () => {
      hot.fill(COLD)
      for (let column = 0; column < nx * ny; column++) {
        const c0 = first + column * nz
        const end = c0 + tops[column]!
        for (let c = c0; c < end; c++) {
          const t = tempC[c]! + tried[c]!
          tempC[c] = t
          if (t > peakC[c]!) peakC[c] = t
          const r = number[c]!
          if (t > hot[r]!) hot[r] = t
        }
      }
      const spare = increment
      increment = tried
      tried = spare
      const before = conversion
      conversion = triedConversion
      triedConversion = before
    },
    hottest: (wanted, fromLayer, toLayer) => {
      if (hot[wanted]! > COLD) return hot[wanted]!
      let most = COLD
      for (let c0 = first; c0 < first + ny * plane; c0 += nz)
        for (let c = c0 + fromLayer; c < c0 + toLayer; c++)
          if (resin[c] === wanted && tempC[c]! > most) most = tempC[c]!
      return most
    }
  }
}
