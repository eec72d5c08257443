// The cast that speed is measured on: a mould 600 × 400 mm inside, walls and base of board 18 mm, two islands of
// timber 12 mm high, pours of 15, 12 and 10 mm at 0, 20 and 44 h, 72 h in a room of 23 ± 2 °C. Cells 5 mm wide and
// about 1.25 mm high; layers end on cell faces. Resin: the data of the first trial of the scheme, twice as quick as a
// deep-pour resin; `full`: a deep-pour resin of the catalogue, its conductivity and diffusion limit changing with cure.
const dist = '../packages/engine/dist/src'
export const engine = async () => ({
  ...(await import(`${dist}/cast/field/field-run.js`)),
  ...(await import(`${dist}/cast/field/field-cells.js`)),
  ...(await import(`${dist}/cast/field/plain-kernel.js`)),
  ...(await import(`${dist}/cast/field/plain-rates.js`)),
  ...(await import(`${dist}/cast/field/wasm-kernel.js`)),
  ...(await import(`${dist}/cast/field/field-problem.js`)),
  RESINS: (await import(`${dist}/catalogue/resin.js`)).RESINS
})

const HOUR = 3600
const trial = {
  kinetics: {
    k2At25PerS: 3.2e-5,
    k1OverK2At25: 2 / 32,
    e1JPerMol: 58_000,
    e2JPerMol: 56_000,
    m: 0.7,
    n: 1.6,
    heatJPerKg: 350_000,
    gelConversion: 0.6,
    tg0C: -40,
    tgInfC: 60,
    lambda: 0.42,
    diffusion: null
  },
  flow: { eta25PaS: 0.3, etaEJPerMol: 52_000, c1: 1.5, c2: 1 },
  bulk: { liquidKgM3: 1100, curedKgM3: 1157, kLiquidWmK: 0.2, kSlopeWmK: 0, cpJkgK: 1900 }
}

/**
 * The case in cells `widthMm` wide and about `heightMm` (board: `boardMm`) high, `across` by `along` moulds large;
 * `factor` scales the cure rate.
 */
export function castCase({
  widthMm = 5,
  heightMm = 1.25,
  boardMm = 1.25,
  factor = 2,
  resin = trial,
  across = 1,
  along = 1,
  control
} = {}) {
  // walls of four cells of 4.5 mm, drawn as wide as the others
  const wall = Math.max(1, Math.round(18 / (0.9 * widthMm)))
  const nx = across * Math.round(600 / widthMm) + 2 * wall
  const ny = along * Math.round(400 / widthMm) + 2 * wall
  const dzM = []
  const part = []
  const add = (mm, cells, name) => {
    for (let i = 0; i < cells; i++) {
      dzM.push(mm / cells / 1000)
      part.push(name)
    }
  }
  const fit = mm => Math.max(2, Math.round(mm / heightMm))
  add(18, Math.max(2, Math.round(18 / boardMm)), 'board')
  add(12, fit(12), 'low')
  add(3, Math.max(1, Math.round(3 / heightMm)), 'first')
  add(12, fit(12), 'second')
  add(10, fit(10), 'third')
  const nz = dzM.length
  const cells = new Uint8Array(nx * ny * nz)
  for (let iy = 0; iy < ny; iy++)
    for (let ix = 0; ix < nx; ix++) {
      const walled = ix < wall || iy < wall || ix >= nx - wall || iy >= ny - wall
      const x = ((ix - wall + 0.5) * widthMm) % 600
      const y = ((iy - wall + 0.5) * widthMm) % 400
      const island =
        ((x - 180) / 120) ** 2 + ((y - 200) / 90) ** 2 < 1 ||
        ((x - 430) / 100) ** 2 + ((y - 180) / 120) ** 2 < 1
      for (let iz = 0; iz < nz; iz++) {
        const name = part[iz]
        const material =
          walled || name === 'board'
            ? 1
            : name === 'low'
              ? island
                ? 2
                : 3
              : { first: 3, second: 4, third: 5 }[name]
        cells[(iy * nx + ix) * nz + iz] = material
      }
    }
  return {
    nx,
    ny,
    dxM: widthMm / 1000,
    dyM: widthMm / 1000,
    dzM,
    cells,
    materials: [
      { kind: 'inert', kWmK: 0.12, rhoCpJm3K: 1.19e6, startC: 23 },
      { kind: 'inert', kWmK: 0.15, rhoCpJm3K: 0.992e6, startC: 23 },
      ...[0, 20, 44].map(h => ({ kind: 'resin', resin, atS: h * HOUR, startC: 23, rateFactor: factor }))
    ],
    films: { floor: 9, side: 9, up: 9, down: 9, sideways: 9 },
    ambientC: t => 23 + 2 * Math.sin((2 * Math.PI * t) / 86_400),
    untilS: 72 * HOUR,
    ...(control ? { control } : {})
  }
}

/** CPU time of the process spent in `work`, ms: the wall clock of a shared machine says little. */
export function cpuMs(work) {
  const from = process.cpuUsage()
  const value = work()
  const used = process.cpuUsage(from)
  return { ms: (used.user + used.system) / 1000, value }
}
