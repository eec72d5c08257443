// All fits and findings of an example: every stage that reads the finished stack (seasons, timber, hiding, bow, moves,
// chains, appearance, hardware, finish) and every check. CPU times: the machine is shared.
import { EXAMPLES, example } from './example.mjs'

const engine = '../packages/engine/dist/src'

async function parts(name) {
  const { workOf } = await import(`${engine}/work.js`)
  const { findingsOf } = await import(`${engine}/findings/checks.js`)
  const { facesOf } = await import(`${engine}/finish/faces.js`)
  const { appearanceOf } = await import(`${engine}/fits/appearance.js`)
  const { bowOf } = await import(`${engine}/fits/bow.js`)
  const { sizeChains } = await import(`${engine}/fits/chain.js`)
  const { hardwareFits } = await import(`${engine}/fits/hardware.js`)
  const { movesOf } = await import(`${engine}/fits/moves.js`)
  const { seasonsOf } = await import(`${engine}/fits/season.js`)
  const { timberFactsOf } = await import(`${engine}/fits/timber-facts.js`)
  const { hidingOf } = await import(`${engine}/fits/tint.js`)
  const { coversOf } = await import(`${engine}/stack/cover.js`)
  const w = workOf({ ...example(name).read(), effort: 'preview' })
  const { piece, stack, materials, shop, readings, casts, clock } = w
  const film = ({ filmMm, coats, coat }) => ({ filmMm, coats, floods: coat?.kind === 'flood' })
  const fits = () => {
    const ids = w.entries.timbers.map(t => t.id)
    const outlines = stack.geometry.timbers.map(t => t.upper)
    const seasons = seasonsOf(piece, ids, outlines, materials, shop, readings)
    timberFactsOf(stack, materials, shop, seasons, w.floating)
    hidingOf(piece, materials, stack.pours)
    const faces = facesOf({ stack, materials, shop, readings, casts })
    bowOf({ stack, materials, casts, clock, seasons, shop, faces })
    movesOf(stack, materials, w.floating, w.mould)
    const films = { front: film(faces[0]), back: film(faces[1]) }
    const facts = { materials, seasons, air: w.air, casts, clock, shop, films }
    const chains = sizeChains(stack, facts)
    appearanceOf(stack, materials, coversOf(stack))
    hardwareFits(stack, facts, chains)
  }
  return { fits, findings: () => findingsOf(w) }
}

const cpuMs = () => {
  const { user, system } = process.cpuUsage()
  return (user + system) / 1000
}

async function measured(name, calls) {
  const { fits, findings } = await parts(name)
  const each = []
  for (let k = 0; k < calls; k++) {
    const from = cpuMs()
    fits()
    const between = cpuMs()
    const found = findings().length
    each.push({ ms: cpuMs() - from, fits: between - from, found })
  }
  // A collection of garbage falls into some call or other: the median of the last half stands for them.
  const half = each.slice(calls >> 1).sort((a, b) => a.ms - b.ms)
  const { ms, fits: part, found } = half[half.length >> 1]
  return { ms, note: `${part.toFixed(1)} of it stages; ${found} findings` }
}

export const variants = EXAMPLES.map(name => ({
  name: `fits ${name}`,
  about: `all fits and findings of ${name}, warm (CPU)`,
  bar: 'under 30',
  run: () => measured(name, 40)
}))
