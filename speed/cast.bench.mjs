// The cast of the whole mould, both kernels, beside the plain explicit scheme on the same grid with the same tables.
// Times are CPU times. The explicit scheme is not run to its end: 25 steps with one, two and three pours, four times
// over, the fastest of them times the steps that its stability asks for.
import { castCase, cpuMs, engine } from './cast-case.mjs'
import { explicitStepper } from './cast-explicit.mjs'

const HOUR = 3600
const STEPS = 25
const FINE = { errorK: 0.005, change: 0.004, longestS: 900 }

const caseOf = (e, full) => (full ? { resin: e.RESINS.find(r => r.id === 'deep').model, factor: 3 } : {})
const kernelOf = (e, name) => (name === 'plain' ? e.plainKernel : e.wasmKernel)
const memory = () => `${Math.round(process.resourceUsage().maxRSS / 1024)} MB`

/** The explicit scheme over the whole run, extrapolated, ms. */
async function explicit(full) {
  const e = await engine()
  const problem = castCase(caseOf(e, full))
  const resins = problem.materials.filter(m => m.kind === 'resin')
  let ms = 0
  let all = 0
  const starts = [0, 20 * HOUR, 44 * HOUR, problem.untilS]
  for (let phase = 0; phase < 3; phase++) {
    const cells = e.cellsOf(problem)
    const kernel = e.plainKernel({
      shape: cells.shape,
      dxM: problem.dxM,
      dyM: problem.dyM,
      dzM: cells.dzM
    })
    kernel.setResins(resins)
    let number = 0
    problem.materials.forEach((m, i) => {
      const own = m.kind === 'resin' ? ++number : 0
      if (m.kind === 'inert' || m.atS <= starts[phase]) e.placeMaterial(problem, cells, kernel, i, own)
    })
    // somewhere on the way: warm in the middle, cured by more than half
    const conversion = kernel.conversion()
    const { nx, nz, first } = cells.shape
    for (let c = first; c < conversion.length; c++)
      if (kernel.resin[c] > 0) {
        conversion[c] = 0.6 + 0.3 * Math.sin(0.003 * c)
        kernel.tempC[c] += 10 * (1 + Math.sin(0.001 * c))
      }
    kernel.conduct(nz, 0)
    e.filmConductance(e.facesOf(problem, cells, kernel), kernel)
    const dt = longestStable(kernel, nx * nz, nz)
    const stepper = explicitStepper(kernel, e.flatRates(resins))
    for (let k = 0; k < 10; k++) stepper.step(dt, 23, nz)
    const times = [0, 1, 2, 3].map(
      () =>
        cpuMs(() => {
          for (let k = 0; k < STEPS; k++) stepper.step(dt, 23, nz)
        }).ms / STEPS
    )
    const steps = Math.ceil((starts[phase + 1] - starts[phase]) / dt)
    ms += steps * Math.min(...times)
    all += steps
  }
  return { ms, note: `extrapolated from ${STEPS} steps a phase to ${all}` }
}

/** Longest step at which no cell gives away more than it has, s. */
function longestStable({ capacity, film, conductances: { gx, gy, gz } }, plane, nz) {
  let dt = Number.POSITIVE_INFINITY
  for (let c = plane; c < capacity.length; c++) {
    const sum = gx[c] + gy[c] + gz[c] + gx[c - nz] + gy[c - plane] + gz[c - 1] + film[c]
    if (sum > 0) dt = Math.min(dt, capacity[c] / sum)
  }
  return dt
}

async function whole(name, full) {
  const e = await engine()
  const problem = castCase(caseOf(e, full))
  const { ms, value } = cpuMs(() => e.runField(problem, kernelOf(e, name)))
  return { ms, note: `${value.steps} steps, ${value.refused} refused; ${memory()}` }
}

/** How far both kernels are off a run with small steps: worst pour, cell, gel and energy. */
async function bars(full) {
  const e = await engine()
  const shape = caseOf(e, full)
  const problem = castCase(shape)
  const fine = e.runField(castCase({ ...shape, control: FINE }), e.plainKernel)
  const notes = ['plain', 'wasm'].map(name => {
    const r = e.runField(problem, kernelOf(e, name))
    return `${name}: ${apart(problem, r, fine)}`
  })
  return { ms: 0, note: `reference of ${fine.steps} steps; ${notes.join('; ')}` }
}

function apart(problem, r, fine) {
  const off = key => Math.max(...r.pours.map((p, i) => Math.abs(p[key] / fine.pours[i][key] - 1)))
  const peak = Math.max(...r.pours.map((p, i) => Math.abs(p.peakC - fine.pours[i].peakC)))
  let cell = 0
  for (let iz = 0; iz < problem.dzM.length; iz++) {
    const [ours, theirs] = [r.peakMap(iz), fine.peakMap(iz)]
    for (let i = 0; i < ours.length; i++)
      if (!Number.isNaN(theirs[i])) cell = Math.max(cell, Math.abs(ours[i] - theirs[i]))
  }
  const percent = x => `${(100 * x).toFixed(3)} %`
  return `peak ${peak.toFixed(3)} °C, worst cell ${cell.toFixed(3)} °C, gel mean ${percent(off('meanGelS'))}, 95 % ${percent(off('mostGelS'))}, energy ${r.energy.closure.toExponential(1)}`
}

// layers in fours, which the kernels pad to; height tells more than width
const PREVIEWS = {
  wasm: { widthMm: 15, heightMm: 3, boardMm: 4.5 },
  plain: { widthMm: 20, heightMm: 4, boardMm: 9 }
}

async function preview(name) {
  const e = await engine()
  const problem = castCase({ ...PREVIEWS[name], control: e.QUICK_FIELD })
  let done
  for (let k = 0; k < 8; k++) {
    const now = cpuMs(() => e.runField(problem, kernelOf(e, name)))
    if (!done || (k > 3 && now.ms < done.ms)) done = now
  }
  const full = e.runField(castCase(), e.wasmKernel)
  const peaks = done.value.pours.map((p, i) => (p.peakC - full.pours[i].peakC).toFixed(2))
  const gels = done.value.pours.map(
    (p, i) => `${(100 * (p.firstGelS / full.pours[i].firstGelS - 1)).toFixed(1)} %`
  )
  const { nx, ny, dzM } = problem
  return {
    ms: done.ms,
    note: `${nx} × ${ny} × ${dzM.length}, ${done.value.steps} steps; peaks off the full run by ${peaks.join(', ')} °C, first gel by ${gels.join(', ')}`
  }
}

async function larger(across, along) {
  const e = await engine()
  const problem = castCase({ across, along })
  const { ms, value } = cpuMs(() => e.runField(problem, e.wasmKernel))
  const cells = problem.cells.length
  return {
    ms,
    note: `${(cells / 1e6).toFixed(2)} million cells, ${value.steps} steps, ${((ms * 1e6) / cells / value.steps).toFixed(1)} ns a cell and step; ${memory()}`
  }
}

const kinds = [
  ['', false, 'constant conductivity'],
  [' full', true, 'conductivity and diffusion limit changing with cure']
]
export const variants = [
  ...kinds.flatMap(([suffix, full, what]) => [
    {
      name: `cast explicit${suffix}`,
      about: `cast 600 × 400 × 40 mm, three pours, 72 h, ${what}: plain explicit scheme with tables (CPU)`,
      run: () => explicit(full)
    },
    {
      name: `cast plain${suffix}`,
      about: 'the same, plain kernel, first in its process (CPU)',
      bar: '60 times faster, under 300 MB',
      peer: `cast explicit${suffix}`,
      run: () => whole('plain', full)
    },
    {
      name: `cast wasm${suffix}`,
      about: 'the same, WebAssembly kernel, first in its process (CPU)',
      bar: '100 times faster, under 300 MB',
      peer: `cast explicit${suffix}`,
      run: () => whole('wasm', full)
    },
    {
      name: `cast bars${suffix}`,
      about: 'the same against a run with a tenth of the step error',
      bar: 'peak 0.2 °C, gel 0.2 %, energy 0.1 %',
      runs: 1,
      run: () => bars(full)
    }
  ]),
  {
    name: 'cast preview wasm',
    about: 'preview of that cast, WebAssembly kernel, warm (CPU)',
    bar: 'under 100, peak 1.5 °C',
    run: () => preview('wasm')
  },
  {
    name: 'cast preview plain',
    about: 'preview of that cast, plain kernel, warm (CPU)',
    bar: 'under 100, peak 3 °C',
    run: () => preview('plain')
  },
  ...[
    [1, 1],
    [2, 1],
    [2, 2],
    [4, 2]
  ].map(([across, along]) => ({
    name: `cast ${across * along}`,
    about: `cast of a mould ${across * 600} × ${along * 400} mm, WebAssembly kernel (CPU)`,
    peer: 'cast 1',
    runs: 1,
    run: () => larger(across, along)
  }))
]
