// The computed colour of a square of 400 mm at half a millimetre: two banks with slanted live edges, a creek between
// them, a groove with a round floor and a scale, so that heights vary over much of the plan. Beside it: the same core
// asked at every pixel by itself.
import { readPiece } from '../packages/engine/dist/src/index.js'

const SIDE_MM = 400
const PIXEL_MM = 0.5
/** Pixels asked one by one for the peer, spread over the plan; the rest is extrapolated. */
const ASKED = 4000

function square() {
  const bank = (side, shift) => {
    const points = []
    for (let x = -204; x <= 204; x += 4) {
      const y = 46 + 14 * Math.sin(0.021 * x + 0.6 * side) + 5 * Math.sin(0.083 * x) + shift
      points.push([x, Number((side * y).toFixed(2))])
    }
    points.push([204, side * 204], [-204, side * 204])
    return { polygon: points }
  }
  return {
    castwright: 1,
    name: 'Square of colour',
    about: 'Invented, for measuring.',
    outline: { rectangle: [SIDE_MM, SIDE_MM], corner: 12 },
    timbers: [1, -1].map(side => ({
      id: side > 0 ? 'north' : 'south',
      species: 'walnut-black',
      outline: bank(side, 0),
      underside: bank(side, -26),
      thickness: 26,
      moisture: 8.5
    })),
    pours: [{ id: 'creek', resin: 'deep', fill: 'timber', tint: [{ pigment: 'blue-tint', percent: 0.01 }] }],
    cuts: [
      {
        id: 'groove',
        kind: 'groove',
        face: 'front',
        along: {
          points: [
            [-150, -150],
            [150, -150],
            [150, 150],
            [-150, 150],
            [-150, -150]
          ]
        },
        width: 12,
        profile: 'round',
        depth: 5
      }
    ]
  }
}

async function model() {
  const engine = '../packages/engine/dist/src'
  const { plan, usualShop } = await import(`${engine}/index.js`)
  const { coreModelOf } = await import(`${engine}/sheets/model.js`)
  const input = { piece: readPiece(JSON.stringify(square()), 'square'), shop: usualShop() }
  return coreModelOf(plan(input, { asOf: '2026-11-20T09:00+01:00', effort: 'preview' }).work)
}

// All threads of the process, garbage collection too: the machine is shared.
const cpuMs = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

async function picture(calls) {
  const { faceImage } = await import('../packages/engine/dist/src/sheets/face-image.js')
  const m = await model()
  let ms = 0
  let image = null
  for (let k = 0; k < calls; k++) {
    const from = cpuMs()
    image = faceImage(m, { face: 'front', pixelMm: PIXEL_MM })
    ms = cpuMs() - from
  }
  return { ms, note: `${image.width} × ${image.height} pixels` }
}

async function oneByOne() {
  const { coreAt } = await import('../packages/engine/dist/src/stack/core.js')
  const m = await model()
  const n = (SIDE_MM / PIXEL_MM) ** 2
  const ask = k => {
    const x = -SIDE_MM / 2 + ((k * 0.7548776662) % 1) * SIDE_MM
    const y = -SIDE_MM / 2 + ((k * 0.569840291) % 1) * SIDE_MM
    return coreAt(m.geometry, m.events, x, y).length
  }
  let sum = 0
  for (let k = 0; k < ASKED; k++) sum += ask(k)
  const from = cpuMs()
  for (let k = 0; k < ASKED; k++) sum += ask(k)
  const ms = ((cpuMs() - from) * n) / ASKED
  return {
    ms,
    note: `extrapolated from ${ASKED} of ${n} pixels, ${(sum / (2 * ASKED)).toFixed(1)} parts a core`
  }
}

export const variants = [
  {
    name: 'colour one by one',
    about: 'cores of a square of 400 mm, a pixel of 0.5 mm at a time (CPU)',
    run: oneByOne
  },
  {
    name: 'colour first',
    about: 'picture of that square in its colours, first in its process (CPU)',
    bar: 'under 300',
    peer: 'colour one by one',
    run: () => picture(1)
  },
  {
    name: 'colour warm',
    about: 'the same, fifth in its process (CPU)',
    bar: 'under 300',
    peer: 'colour one by one',
    run: () => picture(5)
  }
]
