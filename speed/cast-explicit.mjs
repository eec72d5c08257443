// The plain explicit scheme (forward in time, centred in space) with tabulated kinetics: the peer that the cast is
// measured against. Flat typed arrays, no allocation in the loop, the same cells, conductances, films and tables as
// the cast's own; only the scheme differs.

/** Lays a problem out; `rates` are the cast's own tables, `kernel` its arrays after all pours are in place. */
export function explicitStepper(kernel, rates) {
  const { shape, tempC, capacity, heat, film, resin, conductances } = kernel
  const { gx, gy, gz } = conductances
  const { nx, ny, nz, first, fromX, toX, length } = shape
  const plane = nx * nz
  const { table, at, factor } = rates
  const temp = Float64Array.from(tempC)
  const next = Float64Array.from(tempC)
  const conversion = Float64Array.from(kernel.conversion())
  const number = Uint8Array.from(resin)
  const inverse = Float64Array.from(capacity, c => 1 / c)
  const peak = new Float64Array(length).fill(-1000)
  let from = temp
  let to = next
  return {
    conversion,
    temp: () => from,
    peak,
    step(dt, ambient, layers) {
      const t0 = from
      const t1 = to
      for (let iy = 0; iy < ny; iy++)
        for (let ix = fromX[iy]; ix < toX[iy]; ix++) {
          const start = first + iy * plane + ix * nz
          for (let c = start; c < start + layers; c++) {
            const t = t0[c]
            let right =
              dt *
              (gz[c - 1] * (t0[c - 1] - t) +
                gz[c] * (t0[c + 1] - t) +
                gx[c - nz] * (t0[c - nz] - t) +
                gx[c] * (t0[c + nz] - t) +
                gy[c - plane] * (t0[c - plane] - t) +
                gy[c] * (t0[c + plane] - t) +
                film[c] * (ambient - t))
            const r = number[c]
            if (r > 0) {
              const u = conversion[c]
              let x = (t + 40) * 8
              if (x < 0) x = 0
              if (x > 3520) x = 3520
              const j = x | 0
              const dT = (x - j) * 0.125
              const p = at[2 * r] + j * 6
              const y = u * 4096
              const k = y | 0
              const dA = (y - k) * (1 / 4096)
              const q = at[2 * r + 1] + k * 6
              const chemical =
                (table[p] + table[p + 1] * dT) * (table[q] + table[q + 1] * dA) +
                (table[p + 2] + table[p + 3] * dT) * (table[q + 2] + table[q + 3] * dA)
              const limit = 1 + (table[p + 4] + table[p + 5] * dT) * (table[q + 4] + table[q + 5] * dA)
              let change = (dt * factor[r] * chemical) / limit
              if (change > 1 - u) change = 1 - u
              conversion[c] = u + change
              right += heat[c] * change
            }
            const now = t + right * inverse[c]
            t1[c] = now
            if (now > peak[c]) peak[c] = now
          }
        }
      from = t1
      to = t0
    }
  }
}
