// Volumes of the live-edge example with outlines of 20,000 vertices each, beside the clipping library's own calls.
import { example } from './example.mjs'

const VERTICES = 20_000

/** The example with each outline redrawn with many vertices: a ripple far below what can be sawn. */
async function dense() {
  const { readPiece } = await import('../packages/engine/dist/src/index.js')
  const e = example('heron-table')
  const piece = JSON.parse(e.text)
  const edge = (y0, side, shift) => {
    const points = []
    const n = VERTICES - 2
    for (let i = 0; i < n; i++) {
      const x = -365 + (730 * i) / (n - 1)
      const y =
        y0 + 18 * Math.sin(0.0105 * x + 0.4) + 6 * Math.sin(0.041 * x) + 0.05 * Math.sin(9 * x) + shift
      points.push([Number(x.toFixed(4)), Number((side * y).toFixed(4))])
    }
    points.push([365, side * 225], [-365, side * 225])
    return points
  }
  piece.timbers.forEach((t, i) => {
    const side = i === 0 ? -1 : 1
    t.outline = { polygon: edge(64, side, 0) }
    t.underside = { polygon: edge(64, side, -10) }
  })
  return { piece: readPiece(JSON.stringify(piece), 'dense'), files: e.files }
}

async function parts() {
  const engine = '../packages/engine/dist/src'
  const { usualShop } = await import(`${engine}/index.js`)
  const { materialsOf, factsOf } = await import(`${engine}/cast/facts.js`)
  const { entriesOf } = await import(`${engine}/piece/entry.js`)
  const { geometryOf } = await import(`${engine}/stack/geometry.js`)
  const { orderOf } = await import(`${engine}/steps/order.js`)
  const { walk } = await import(`${engine}/stack/walk.js`)
  const { finishedVolumes } = await import(`${engine}/stack/volume.js`)
  const { piece: read, files } = await dense()
  const piece = read.value
  const shop = usualShop()
  const entries = entriesOf(piece, 'dense')
  const materials = materialsOf(piece, shop, 'dense')
  const geometry = geometryOf(piece, entries, files, 'dense')
  const steps = orderOf(piece, entries)
  const facts = factsOf(piece, materials)
  return { piece, entries, geometry, steps, facts, walk, finishedVolumes }
}

async function free(calls) {
  const p = await parts()
  let ms = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    p.walk(p.piece, p.entries, p.geometry, p.steps, p.facts)
    ms = performance.now() - from
  }
  return { ms }
}

async function finished(calls) {
  const p = await parts()
  const stack = p.walk(p.piece, p.entries, p.geometry, p.steps, p.facts)
  let ms = 0
  for (let k = 0; k < calls; k++) {
    const from = performance.now()
    p.finishedVolumes(stack)
    ms = performance.now() - from
  }
  return { ms }
}

async function clipper(what) {
  const { geometry } = await parts()
  const { union, difference } = await import('../packages/engine/dist/src/shape/combine.js')
  const [a, b] = geometry.timbers.map(t => t.upper)
  let ms = 0
  for (let k = 0; k < 8; k++) {
    const from = performance.now()
    if (what === 'union') union(a, b)
    else difference(geometry.mould, a)
    ms = performance.now() - from
  }
  return { ms }
}

export const variants = [
  {
    name: 'clip union',
    about: 'clipping library: one union of two outlines of 20,000 vertices',
    run: () => clipper('union')
  },
  {
    name: 'clip difference',
    about: 'clipping library: one difference of the mould and such an outline',
    run: () => clipper('difference')
  },
  {
    name: 'stack warm',
    about: 'stack with every pour volume, four outlines of 20,000 vertices, fifth in its process',
    bar: 'under 50',
    peer: 'clip difference',
    run: () => free(5)
  },
  {
    name: 'stack first',
    about: 'the same, first in its process',
    peer: 'clip difference',
    run: () => free(1)
  },
  {
    name: 'finished warm',
    about: 'volumes of the finished piece of that stack, third in its process',
    peer: 'clip difference',
    run: () => finished(3)
  }
]
