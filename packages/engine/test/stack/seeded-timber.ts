import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import type { Chance } from './random.ts'
import type { Box, Point, Wave } from './seeded-shape.ts'
import { boxOf, mm, wavyOf } from './seeded-shape.ts'

type TimberDocument = NonNullable<PieceDocument['timbers']>[number]

/** One timber inside a box, or two: a cookie with an island in its hole. */
export function seededTimber(c: Chance, strip: Box, index: number): TimberDocument[] {
  const w = strip.maxX - strip.minX
  const h = strip.maxY - strip.minY
  const at: Point = [mm((strip.minX + strip.maxX) / 2), mm((strip.minY + strip.maxY) / 2)]
  // How far the lower edge lies inside the upper one (negative: outside): up to a fifth of the half size.
  const slant = c.is(0.5) ? c.span(-0.2, 0.25) * Math.min(w / 2, h / 2, 80) : 0
  const common = () => ({
    species: c.pick(['oak-european', 'ash-white', 'walnut-black']),
    thickness: mm(c.span(10, 40)),
    ...(c.is(0.15) ? { base: mm(c.span(2, 6)) } : {}),
    ...(c.is(0.3) ? { level: mm(c.span(0.2, 1.5)) } : {}),
    ...seededTop(c, strip)
  })
  const id = `timber ${String.fromCharCode(97 + index)}`
  const make = (edge: (inset: number) => ShapeDocument): Pick<TimberDocument, 'outline' | 'underside'> => {
    const [upper, lower] = slant >= 0 ? [0, slant] : [-slant, 0]
    return { outline: edge(upper), ...(Math.abs(slant) > 0.5 ? { underside: edge(lower) } : {}) }
  }
  switch (c.pick(['live', 'live', 'blob', 'cookie', 'block', 'round'] as const)) {
    case 'live': {
      const points = c.whole(8, 24)
      const waves = seededWaves(c)
      return [{ id, ...common(), ...make(inset => ({ polygon: live(strip, inset, points, waves) })) }]
    }
    case 'block': {
      const corner = mm(c.span(0, 6))
      const rectangle = (inset: number): ShapeDocument => ({
        rectangle: [mm(0.8 * w - 2 * inset), mm(0.8 * h - 2 * inset)],
        corner,
        at
      })
      return [{ id, ...common(), ...make(rectangle) }]
    }
    case 'round': {
      const d = 0.9 * Math.min(w, h)
      return [{ id, ...common(), ...make(inset => ({ circle: mm(d - 2 * inset), at })) }]
    }
    case 'blob': {
      const waves = seededWaves(c)
      const points = c.whole(24, 60)
      const blob = (inset: number): ShapeDocument => ({
        polygon: wavyOf(at, w / 2.2 - inset, h / 2.2 - inset, points, waves)
      })
      return [{ id, ...common(), ...make(blob) }]
    }
    case 'cookie': {
      const waves = seededWaves(c)
      const hole = seededWaves(c)
      const points = c.whole(30, 50)
      // A hole in a slanted timber opens the other way.
      const cookie = (inset: number): ShapeDocument => ({
        polygon: wavyOf(at, w / 2.2 - inset, h / 2.2 - inset, points, waves),
        holes: [wavyOf(at, w / 5 + inset / 3, h / 5 + inset / 3, 28, hole)]
      })
      const out: TimberDocument[] = [{ id, ...common(), ...make(cookie) }]
      if (c.is(0.5) && Math.min(w, h) > 60) {
        const island: Point[] = wavyOf(at, w / 10, h / 10, 24, hole)
        out.push({
          id: `${id} island`,
          species: 'ash-white',
          thickness: mm(c.span(10, 40)),
          outline: { polygon: island }
        })
      }
      return out
    }
  }
}

function seededWaves(c: Chance): Wave[] {
  return [2, 3, 7].map(k => ({ k, size: 0.04 * c.next(), phase: c.span(0, 2 * Math.PI) }))
}

// A board with two live edges: straight ends, sides that wave within the strip.
function live(strip: Box, inset: number, points: number, waves: readonly Wave[]): Point[] {
  const w = strip.maxX - strip.minX
  const deep = 0.12 * w
  const wave = (t: number, shift: number) =>
    waves.reduce((sum, v) => sum + 0.5 * (1 + Math.sin(v.k * 4 * t + v.phase + shift)) * (v.size / 0.04), 0) /
    3
  const right: Point[] = []
  const left: Point[] = []
  for (let i = 0; i <= points; i++) {
    const t = i / points
    const y = mm(strip.minY + t * (strip.maxY - strip.minY))
    right.push([mm(strip.maxX - inset - deep * wave(t, 0)), y])
    left.push([mm(strip.minX + inset + deep * wave(t, 2)), y])
  }
  return [...right, ...left.reverse()]
}

function seededTop(c: Chance, strip: Box): Pick<TimberDocument, 'crown' | 'measured'> {
  const kind = c.pick(['flat', 'flat', 'crown', 'grid'] as const)
  if (kind === 'flat') return {}
  if (kind === 'crown') return { crown: { rise: mm(c.span(-3, 5)), along: c.pick([0, 90, 37, -20]) } }
  const columns = c.whole(2, 5)
  const rows = c.whole(2, 5)
  // Mostly over the whole strip, at times less than it.
  const cover = c.pick([1, 1, 0.7])
  const b = boxOf([
    [strip.minX, strip.minY],
    [strip.maxX, strip.maxY]
  ])
  const [w, h] = [(b.maxX - b.minX) * cover, (b.maxY - b.minY) * cover]
  return {
    measured: {
      from: [mm(b.minX + (b.maxX - b.minX - w) / 2), mm(b.minY + (b.maxY - b.minY - h) / 2)],
      step: [mm(w / (columns - 1)), mm(h / (rows - 1))],
      rises: Array.from({ length: rows }, () => Array.from({ length: columns }, () => mm(c.span(-1.5, 3))))
    }
  }
}
