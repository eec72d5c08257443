// One million lines over a board of 600 × 400 mm at 0.2 mm: clearing with a flat cutter of 6 mm along curved passes, a
// carved relief with a ball of 6 mm, V-grooves of 60 degrees and 6 mm; moves of 1 mm clearing, of 0.6 mm else, and
// once more with all of 0.6 mm. Beside it: the whole footprint of the cutter stamped every 0.1 mm into the same grid, footprints made beforehand, cells of one typed array.
import { readPiece } from '../packages/engine/dist/src/index.js'

const engine = '../packages/engine/dist/src'
const CELL_MM = 0.2
const [WIDE, HIGH, THICK] = [600, 400, 20]
const LINES = 1_000_000
/** Of the peer, one stretch in so many is stamped; the rest is extrapolated. */
const SHARE = 25
const STRETCH = 500

const CUTTERS = new Map(
  [
    { form: 'flat', angleDeg: 180, tipMm: 0 },
    { form: 'ball', angleDeg: 180, tipMm: 0 },
    { form: 'v', angleDeg: 60, tipMm: 0.2 }
  ].map((c, k) => [
    k + 1,
    {
      ...c,
      diameterMm: 6,
      cornerMm: 0,
      fluteMm: 22,
      shankMm: 6,
      reachMm: 30,
      holderMm: 20,
      headMm: 0,
      neckMm: 0,
      plunges: true
    }
  ])
)

function program(clearing) {
  const m = {
    count: LINES,
    kind: new Uint8Array(LINES).fill(1),
    line: Uint32Array.from({ length: LINES }, (_, k) => k + 1),
    x: new Float64Array(LINES),
    y: new Float64Array(LINES),
    z: new Float64Array(LINES),
    a: new Float64Array(LINES),
    b: new Float64Array(LINES),
    plane: new Uint8Array(LINES).fill(17),
    feed: new Float32Array(LINES).fill(1800),
    spindle: new Float32Array(LINES).fill(18_000),
    tool: new Uint16Array(LINES),
    offset: new Uint16Array(LINES).fill(1)
  }
  const [w, h] = [WIDE / 2 - 5, HIGH / 2 - 5]
  const part = (from, to, tool, long, row, zOf) => {
    const perRow = Math.floor((2 * w) / long)
    for (let k = from; k < to; k++) {
      const n = k - from
      const r = Math.floor(n / perRow)
      const i = r % 2 === 0 ? n % perRow : perRow - 1 - (n % perRow)
      const x = -w + i * long
      const y0 = -h + ((r * row) % (2 * h))
      m.x[k] = x
      m.y[k] = Math.max(-h, Math.min(h, y0 + 2 * Math.sin(0.05 * x)))
      m.z[k] = zOf(x, m.y[k], Math.floor((r * row) / (2 * h)))
      m.tool[k] = tool
    }
  }
  part(0, 400_000, 1, clearing, 2.4, (_x, _y, pass) => -1 * (pass + 1))
  part(400_000, 800_000, 2, 0.6, 1, (x, y) => -6 + 1.5 * Math.sin(0.1 * x) * Math.cos(0.08 * y))
  part(800_000, LINES, 3, 0.6, 4, (x, _y, pass) => -7 - pass - Math.sin(0.3 * x))
  return m
}

async function stackOf() {
  const { plan, usualShop } = await import(`${engine}/index.js`)
  const piece = {
    castwright: 1,
    name: 'Board',
    about: 'Invented, for measuring.',
    outline: { rectangle: [WIDE, HIGH] },
    mould: { margin: 10 },
    pours: [{ id: 'slab', resin: 'deep', depth: THICK }]
  }
  const input = { piece: readPiece(JSON.stringify(piece), 'board'), shop: usualShop() }
  return plan(input, { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }).work.stack
}

const cpuMs = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

async function proving(clearing) {
  const { proveProgram } = await import(`${engine}/proving/judge/prove.js`)
  const stack = await stackOf()
  const motions = program(clearing)
  const ask = {
    stack,
    up: 'front',
    datum: { x0: 0, y0: 0, zeroMm: stack.castHeight, about: 'x' },
    events: stack.events.length,
    wantedEvents: null,
    mask: null,
    cutterByTool: CUTTERS,
    motions,
    cellMm: CELL_MM,
    guards: {
      things: [],
      envelope: null,
      bedDeepMm: 1,
      closed: [],
      mostMm3Min: null,
      held: 'waste',
      tolMm: 0.05
    }
  }
  const from = cpuMs()
  const running = proveProgram(ask)
  let step = running.next()
  while (!step.done) step = running.next()
  const ms = cpuMs() - from
  const mb = process.resourceUsage().maxRSS / 1024
  return {
    ms,
    note: `${step.value.cells} cells, ${(step.value.removedMm3 / 1000).toFixed(1)} ml taken, ${mb.toFixed(0)} MB in all`
  }
}

function heightAt(c, r) {
  if (c.form === 'ball') return 3 - Math.sqrt(9 - r * r)
  if (c.form === 'v') return Math.max(0, (r - c.tipMm / 2) / Math.tan(Math.PI / 6))
  return 0
}

function stamping(clearing) {
  const motions = program(clearing)
  const nx = Math.round((WIDE + 20) / CELL_MM)
  const ny = Math.round((HIGH + 20) / CELL_MM)
  const top = new Float32Array(nx * ny)
  const prints = [...CUTTERS.values()].map(c => {
    const reach = Math.round(c.diameterMm / 2 / CELL_MM)
    const offsets = []
    const heights = []
    for (let j = -reach; j <= reach; j++)
      for (let i = -reach; i <= reach; i++) {
        const r = Math.hypot(i, j) * CELL_MM
        if (r > c.diameterMm / 2) continue
        offsets.push(j * nx + i)
        heights.push(heightAt(c, r))
      }
    return { offsets: Int32Array.from(offsets), heights: Float32Array.from(heights) }
  })
  const from = cpuMs()
  let done = 0
  let stamps = 0
  for (let start = 1; start + STRETCH <= LINES; start += STRETCH * SHARE) {
    for (let k = start; k < start + STRETCH; k++) {
      done++
      const { offsets, heights } = prints[motions.tool[k] - 1]
      const [x0, y0, z0] = [motions.x[k - 1], motions.y[k - 1], motions.z[k - 1]]
      const [dx, dy, dz] = [motions.x[k] - x0, motions.y[k] - y0, motions.z[k] - z0]
      const n = Math.max(1, Math.ceil(Math.sqrt(dx * dx + dy * dy + dz * dz) / 0.1))
      for (let s = 1; s <= n; s++) {
        const t = s / n
        const i = Math.floor((x0 + t * dx + WIDE / 2 + 10) / CELL_MM)
        const j = Math.floor((y0 + t * dy + HIGH / 2 + 10) / CELL_MM)
        const at = j * nx + i
        const z = z0 + t * dz
        for (let q = 0; q < offsets.length; q++) {
          const p = at + offsets[q]
          const h = z + heights[q]
          if (h < top[p]) top[p] = h
        }
        stamps++
      }
    }
  }
  const ms = ((cpuMs() - from) * LINES) / done
  return { ms, note: `extrapolated from ${done} lines, ${(stamps / done).toFixed(1)} stamps a line` }
}

/** Length of the moves of the clearing, mm. */
const [USUAL, SHORT] = [1, 0.6]

export const variants = [
  {
    name: 'prove by stamping',
    about: 'a program of a million lines at 0.2 mm, footprints stamped every 0.1 mm (CPU)',
    run: () => stamping(USUAL)
  },
  {
    name: 'prove',
    about: 'that program swept and judged (CPU)',
    bar: '1/10, under 500 MB',
    peer: 'prove by stamping',
    run: () => proving(USUAL)
  },
  {
    name: 'prove short by stamping',
    about: 'the same with all moves of 0.6 mm, footprints stamped every 0.1 mm (CPU)',
    run: () => stamping(SHORT)
  },
  {
    name: 'prove short',
    about: 'that program swept and judged (CPU)',
    bar: '1/10, under 500 MB',
    peer: 'prove short by stamping',
    run: () => proving(SHORT)
  }
]
