import type { PieceDocument } from '../../src/piece/piece-schema.ts'
import type { ShapeDocument } from '../../src/piece/shape-field.ts'
import type { Chance } from './random.ts'
import { chance } from './random.ts'
import type { Box, Point } from './seeded-shape.ts'
import { boxOf, mm, organic, wavy } from './seeded-shape.ts'
import { seededTimber } from './seeded-timber.ts'

type TimberDocument = NonNullable<PieceDocument['timbers']>[number]
type PourDocument = PieceDocument['pours'][number]
type CutDocument = NonNullable<PieceDocument['cuts']>[number]
type MarkingDocument = NonNullable<PieceDocument['markings']>[number]
type FormerDocument = NonNullable<NonNullable<PieceDocument['mould']>['formers']>[number]

/**
 * A sound piece drawn by lot: what a maker could draw. The same seed always gives the same piece.
 *
 * Outline a circle, a rounded rectangle, a wavy polygon or a curved path of 150 to 900 mm; 0 to 4 timbers beside
 * each other (live edges, cookies with a hole and an island in it, blocks) with undercut or flared sides and
 * flat, crowned or measured tops; 1 to 4 pours by depth, height, mass or to the timber, some behind a dam, with
 * stones, a flood, an inlay; pockets, bores, grooves of three profiles and cuts right through from both faces,
 * often over each other; formers, scales, allowances.
 */
export function seededPiece(seed: number): PieceDocument {
  const c = chance(seed)
  const { outline, box } = seededOutline(c)
  const margin = mm(c.span(4, 14))
  const { timbers, formers } = seededTimbers(c, box)
  const { pours, thick } = seededPours(c, box, timbers)
  const cuts = seededCuts(c, box, outline, thick)
  const late = latePours(c, cuts, box)
  const markings = seededMarkings(c, box)
  return {
    castwright: 1,
    name: `seeded piece ${seed}`,
    outline,
    down: c.is(0.2) ? 'front' : 'back',
    tolerance: c.pick([0.02, 0.1, 0.2, 0.2]),
    mould: {
      margin,
      formers,
      ears: c.is(0.15)
        ? [{ rectangle: [44, 60], at: [mm(box.maxX + margin + 18), mm((box.minY + box.maxY) / 2)] }]
        : []
    },
    flatten: { back: mm(c.pick([0, 0.5, 1, 1.5])), front: mm(c.pick([0, 0.6, 1, 2])) },
    timbers,
    pours: [...pours, ...late],
    cuts,
    markings,
    finish: c.is(0.5) ? { both: { coat: 'hardwax-oil' } } : {}
  }
}

function seededOutline(c: Chance): { outline: ShapeDocument; box: Box } {
  const kind = c.pick(['circle', 'rectangle', 'rectangle', 'polygon', 'path'] as const)
  const at: Point = c.is(0.3) ? [mm(c.span(-200, 300)), mm(c.span(-200, 300))] : [0, 0]
  const [w, h] = [mm(c.span(150, 900)), mm(c.span(150, 450))]
  if (kind === 'circle') {
    const circle = mm(c.span(150, 600))
    return { outline: { circle, at }, box: boxAbout(at, circle, circle) }
  }
  if (kind === 'rectangle') {
    const corner = mm(c.span(0, 40))
    return { outline: { rectangle: [w, h], corner, at }, box: boxAbout(at, w, h) }
  }
  if (kind === 'polygon') {
    const polygon = wavy(c, at, w / 2, h / 2, c.whole(30, 70), 0.06)
    return { outline: { polygon }, box: boxOf(polygon) }
  }
  const { path, points } = organic(c, w / 2, h / 2)
  const box = boxOf(points)
  return {
    outline: { path, at },
    box: {
      minX: box.minX + at[0],
      maxX: box.maxX + at[0],
      minY: box.minY + at[1],
      maxY: box.maxY + at[1]
    }
  }
}

function boxAbout(at: Point, w: number, h: number): Box {
  return { minX: at[0] - w / 2, maxX: at[0] + w / 2, minY: at[1] - h / 2, maxY: at[1] + h / 2 }
}

// Timbers and formers each in a strip of their own, from left to right.
function seededTimbers(c: Chance, box: Box): { timbers: TimberDocument[]; formers: FormerDocument[] } {
  const count = c.pick([0, 1, 1, 2, 2, 2, 3, 4])
  const plugs = c.is(0.25) ? 1 : 0
  const strips = Math.max(1, count + plugs)
  const wide = (box.maxX - box.minX) / strips
  const timbers: TimberDocument[] = []
  const formers: FormerDocument[] = []
  const plugAt = plugs === 0 ? -1 : c.whole(0, strips - 1)
  for (let i = 0; i < count + plugs; i++) {
    const strip: Box = {
      minX: box.minX + i * wide + 4,
      maxX: box.minX + (i + 1) * wide - 4,
      minY: box.minY + 1,
      maxY: box.maxY - 1
    }
    if (i === plugAt) {
      const most = Math.min(strip.maxX - strip.minX, strip.maxY - strip.minY, 68)
      const middle: Point = [mm((strip.minX + strip.maxX) / 2), mm((strip.minY + strip.maxY) / 2)]
      formers.push({
        id: 'plug',
        shape: { circle: mm(c.span(0.4, 0.9) * most), at: middle },
        from: c.is(0.7) ? 0 : 3,
        ...(c.is(0.3) ? { to: mm(c.span(6, 14)) } : {})
      })
    } else timbers.push(...seededTimber(c, strip, timbers.length))
  }
  return { timbers, formers }
}

function seededPours(c: Chance, box: Box, timbers: readonly TimberDocument[]) {
  const pours: PourDocument[] = []
  let level = 0
  const stones = () => (c.is(0.2) ? { stones: [seededStones(c, box)] } : {})
  if (timbers.length > 0 && c.is(0.15)) pours.push({ id: 'seal', kind: 'seal', depth: 0.2, resin: 'thin' })
  // What a mass comes to, and which floor a dam's side has, depends on the timber: then no heights are given.
  const dam = c.is(0.25)
  let sure = !dam
  if (dam) {
    const split = mm(c.span(0.3, 0.7) * (box.maxX - box.minX) + box.minX)
    const half = (from: number, to: number): ShapeDocument => ({
      rectangle: [mm(to - from), mm(box.maxY - box.minY + 200)],
      at: [mm((from + to) / 2), mm((box.minY + box.maxY) / 2)]
    })
    const [a, b] = [mm(c.span(4, 14)), mm(c.span(4, 14))]
    pours.push({ id: 'left', resin: 'medium', depth: a, region: half(box.minX - 100, split), ...stones() })
    pours.push({ id: 'right', resin: 'medium', depth: b, region: half(split, box.maxX + 100) })
    level = Math.max(a, b)
  }
  const count = c.whole(1, dam ? 2 : 4)
  const area = (box.maxX - box.minX + 16) * (box.maxY - box.minY + 16)
  for (let i = 0; i < count; i++) {
    const deep = mm(c.span(4, 16))
    const id = `pour ${String.fromCharCode(97 + i)}`
    const lowest = Math.min(...timbers.map(t => Number(t.thickness) + Number(t.base ?? 0)))
    if (i === count - 1 && timbers.length > 0 && sure && lowest > level + 6 && c.is(0.4)) {
      pours.push({ id, resin: 'medium', fill: 'timber', ...stones() })
      level = Math.max(level, lowest)
    } else if (i > 0 && sure && c.is(0.25)) {
      pours.push({ id, resin: 'medium', height: mm(level + deep) })
      level += deep
    } else if (c.is(0.25)) {
      pours.push({ id, resin: 'medium', mass: mm((area * deep * 1.1) / 1000) })
      sure = false
      level += deep
    } else {
      // Over a dam the depth is reckoned from the lower side: make sure that it covers both.
      pours.push({ id, resin: 'medium', depth: mm(dam && i === 0 ? level + deep : deep), ...stones() })
      level += deep
    }
  }
  const tops = timbers.map(t => Number(t.thickness) + Number(t.base ?? 0))
  return { pours, thick: Math.max(level, ...tops) }
}

function seededStones(c: Chance, box: Box): NonNullable<PourDocument['stones']>[number] {
  const at: Point = [mm(c.span(box.minX, box.maxX)), mm(c.span(box.minY, box.maxY))]
  const fill = mm(c.span(0.2, 0.6))
  switch (c.pick(['all', 'zone', 'placed'] as const)) {
    case 'all':
      return { kind: 'river-gravel', all: true, fill }
    case 'zone':
      return { kind: 'river-gravel', zone: { circle: mm(c.span(40, 120)), at }, fill }
    case 'placed':
      return { kind: 'river-gravel', placed: [{ at, size: [22, 18, 5] }] }
  }
}

function seededCuts(c: Chance, box: Box, outline: ShapeDocument, thick: number): CutDocument[] {
  const cuts: CutDocument[] = []
  const place = (): Point => [
    mm(box.minX + c.span(0.15, 0.85) * (box.maxX - box.minX)),
    mm(box.minY + c.span(0.15, 0.85) * (box.maxY - box.minY))
  ]
  const deep = (most: number) => {
    const depth = mm(Math.max(0.3, c.span(0.1, most) * thick))
    return c.is(0.3) ? { finishedDepth: depth } : { depth }
  }
  const face = () => c.pick(['front', 'back'] as const)
  const one = (at: Point, side: 'front' | 'back', most: number): CutDocument => {
    const size = mm(c.span(8, 70))
    switch (c.pick(['pocket', 'pocket', 'bore', 'groove', 'groove', 'through', 'ring'] as const)) {
      case 'pocket':
        return {
          kind: 'pocket',
          face: side,
          shape: { rectangle: [size, mm(c.span(8, 60))], corner: 3, at, turn: c.pick([0, 0, 30, -15]) },
          ...deep(most)
        }
      case 'bore':
        return { kind: 'bore', face: side, shape: { circle: size, at }, ...deep(most) }
      case 'ring':
        return {
          kind: 'rebate',
          face: side,
          shape: { difference: [{ circle: size + 20 }, { circle: size }], at },
          ...deep(most)
        }
      case 'through':
        return { kind: 'bore', face: side, shape: { circle: mm(c.span(4, 20)), at }, through: true }
      case 'groove': {
        const points: Point[] = [at]
        for (let k = c.whole(1, 3); k > 0; k--) {
          const [x, y] = points[points.length - 1]!
          points.push([mm(x + c.span(10, 60)), mm(y + c.span(-40, 40))])
        }
        const profile = c.pick(['flat', 'v', 'round'] as const)
        if (profile === 'v')
          return {
            kind: 'groove',
            face: side,
            along: { points },
            profile,
            angle: c.pick([60, 90]),
            depth: mm(c.span(1, 5))
          }
        return {
          kind: 'groove',
          face: side,
          along: { points },
          profile,
          width: mm(c.span(3, 12)),
          ...deep(0.5)
        }
      }
    }
  }
  for (let n = c.whole(0, 4); n > 0; n--) cuts.push(one(place(), face(), 0.7))
  if (c.is(0.5)) {
    // Over each other, from both faces; together sometimes deeper than the piece.
    const at = place()
    cuts.push(one(at, 'front', 0.6), one(at, 'back', 0.6))
  }
  if (c.is(0.3)) {
    const wide: ShapeDocument = { rectangle: [3000, 3000], at: [mm((box.minX + box.maxX) / 2), 0] }
    cuts.push({ kind: 'outline', face: face(), shape: { difference: [wide, outline] }, through: true })
  }
  return cuts.map((cut, i) => ({ id: `cut ${i + 1}`, ...cut }))
}

// What is poured out of the mould: a flood over a face, resin into a cut.
function latePours(c: Chance, cuts: readonly CutDocument[], box: Box): PourDocument[] {
  const out: PourDocument[] = []
  if (c.is(0.2))
    out.push({
      id: 'flood',
      resin: 'thin',
      kind: 'flood',
      face: c.pick(['front', 'back']),
      depth: mm(c.span(0.8, 3))
    })
  else if (c.is(0.05))
    out.push({
      id: 'pool',
      resin: 'thin',
      kind: 'flood',
      face: 'front',
      depth: 1.5,
      region: { circle: 60, at: [mm((box.minX + box.maxX) / 2), mm((box.minY + box.maxY) / 2)] }
    })
  const fillable = cuts.filter(cut => cut.kind !== 'outline')
  if (fillable.length > 0 && c.is(0.4)) {
    const cut = c.pick(fillable)
    out.push({ id: 'inlay', kind: 'inlay', into: [cut.id!], resin: 'thin', fill: 'cut' })
  }
  return out
}

function seededMarkings(c: Chance, box: Box): MarkingDocument[] {
  if (c.is(0.6)) return []
  const middle: Point = [mm((box.minX + box.maxX) / 2), mm((box.minY + box.maxY) / 2)]
  const small = Math.min(box.maxX - box.minX, box.maxY - box.minY)
  const common = {
    id: 'scale',
    face: c.pick(['front', 'front', 'back'] as const),
    width: mm(c.span(0.8, 3)),
    angle: c.pick([60, 60, 90]),
    ...(c.is(0.7) ? { filled: [{ pigment: 'white-paste', percent: 3 }] } : {}),
    ...(c.is(0.3) ? { sandedAfter: 0.4 } : {})
  }
  if (c.is(0.5)) {
    const lines = c.whole(4, 9)
    return [
      {
        ...common,
        radial: {
          centre: middle,
          radius: mm(0.42 * small),
          length: mm(0.1 * small),
          at: Array.from({ length: lines }, (_, i) => mm((360 * i) / lines))
        }
      }
    ]
  }
  return [
    {
      ...common,
      linear: {
        from: [mm(middle[0] - 0.3 * small), middle[1]],
        to: [mm(middle[0] + 0.3 * small), middle[1]],
        length: 8,
        at: [0, 0.1, 0.25, 0.45, 0.7, 1]
      }
    }
  ]
}
