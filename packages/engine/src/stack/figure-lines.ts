import type { Marking } from '../piece/piece-schema.ts'
import { union } from '../shape/combine.ts'
import { inradius } from '../shape/inradius.ts'
import type { Region } from '../shape/region.ts'
import { EMPTY } from '../shape/region.ts'
import { mirrorX, translate } from '../shape/transform.ts'
import type { Removal, Side } from './event.ts'
import { inwardOf } from './face.ts'
import { textRegion } from './figure-outline.ts'
import { textLines } from './figure-text.ts'

/**
 * Numerals of a marking on the plan, seen from the front: on the back they are mirrored, so that they read from there,
 * upright when the piece is turned about its upright line.
 */
export function figureLines(m: Marking): Float64Array[] {
  if (m.figures !== 'single line') return []
  return m.numerals.flatMap(({ text, at: [x, y], height }) =>
    textLines(text, { x, y }, height).map(line =>
      m.face === 'front' ? line : line.map((v, k) => (k % 2 === 0 ? 2 * x - v : v))
    )
  )
}

/** The same as outlines: the region that a V cuts out, as wide at the face as the figures are drawn. */
export function figureRegion(m: Marking, tolMm: number): Region {
  if (m.figures !== 'outline') return EMPTY
  return union(
    ...m.numerals.map(({ text, at: [x, y], height }) => {
      const upright = textRegion(text, { x: 0, y: 0 }, height, tolMm)
      return translate(m.face === 'front' ? upright : mirrorX(upright), x, y)
    })
  )
}

/** How far outlines of figures may stray, mm: less than is seen. */
const OUTLINE_TOL_MM = 0.004

/**
 * What figures of outlines take away: a V as wide as they are drawn at the finished face, `edge`, no deeper than they may
 * go: there the floor is flat. null for none.
 */
export function figureOutlines(m: Marking, side: Side, edge: number): Removal | null {
  const known = outlinesOf(m)
  if (known === null) return null
  const pointed = known.radiusMm / Math.tan((m.angle * Math.PI) / 360)
  const deepMm = Math.min(pointed, m.deepest ?? pointed)
  return {
    side,
    floor: edge + inwardOf(side) * deepMm,
    region: known.region,
    lines: null,
    profile: null,
    flare: { edge, angleDeg: m.angle }
  }
}

interface Outlines {
  readonly region: Region
  readonly radiusMm: number
}

// The region and its widest place, made once as long as the figures stay the same: a stack is walked at every edit.
const made = new Map<string, Outlines>()
const MOST_KEPT = 50

function outlinesOf(m: Marking): Outlines | null {
  if (m.figures !== 'outline' || m.numerals.length === 0) return null
  const key = JSON.stringify([m.face, m.numerals])
  let known = made.get(key)
  if (known === undefined) {
    const region = figureRegion(m, OUTLINE_TOL_MM)
    known = { region, radiusMm: region.rings.length === 0 ? 0 : inradius(region, 0.005).radiusMm + 0.005 }
    if (made.size >= MOST_KEPT) made.clear()
    made.set(key, known)
  }
  return known.radiusMm === 0 ? null : known
}
